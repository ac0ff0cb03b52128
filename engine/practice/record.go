package practice

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
)

// Record is what is kept of a bench: its code, what was probed, and the fault
// that was named. The displays follow from these, so they are not kept.
type Record struct {
	Code   string
	Taken  []Taken
	Named  machine.Kind // "" until a fault is named
	Placed Taken        // where probes and dial are now
}

// Taken is one reading, as the user set it up.
type Taken struct {
	machine.Probing
	Dial string // the range's label, "" where the meter picks it
}

// Errors of DecodeRecord.
var (
	ErrNewerRecord = errors.New("the record is of a newer version")
	ErrBadRecord   = errors.New("the record is damaged")
)

// recordVersion is that of the text; MostTaken bounds a record's readings.
const (
	recordVersion = 1
	MostTaken     = 400
)

type recordJSON struct {
	Version  int         `json:"version"`
	Code     string      `json:"code"`
	Readings []takenJSON `json:"readings,omitempty"`
	Named    string      `json:"named,omitempty"`
	Placed   takenJSON   `json:"placed"`
}

type takenJSON struct {
	Red      string `json:"red"`
	Black    string `json:"black"`
	Function string `json:"function"`
	Range    string `json:"range,omitempty"`
	Apart    bool   `json:"plugApart,omitempty"`
	// Unplugged is the regulator, the generator's plug with it.
	Unplugged bool   `json:"regulatorApart,omitempty"`
	Engine    string `json:"engine,omitempty"`
	Key       bool   `json:"key,omitempty"`
	Hot       bool   `json:"hot,omitempty"`
}

// engines are the names of the engine's states in a record, by their numbers.
var engines = []string{"", "cranking", "idling", "3000", "5000"}

// Encode writes the record as one line of JSON. Decoding it gives the same record.
func (r Record) Encode() (string, error) {
	out := recordJSON{Version: recordVersion, Code: r.Code, Named: string(r.Named), Placed: r.Placed.json()}
	for _, t := range r.Taken {
		out.Readings = append(out.Readings, t.json())
	}
	text, err := json.Marshal(out)
	return string(text), err
}

// DecodeRecord reads a record: ErrNewerRecord or ErrBadRecord say why it cannot.
// Its code opens a bench, and its fault is one that the bench can have.
func DecodeRecord(text string) (Record, error) {
	var in recordJSON
	if err := json.Unmarshal([]byte(text), &in); err != nil {
		return Record{}, fmt.Errorf("%w: %w", ErrBadRecord, err)
	}
	if in.Version > recordVersion {
		return Record{}, ErrNewerRecord
	}
	b, err := named(in.Code)
	if err != nil {
		return Record{}, fmt.Errorf("%w: %w", ErrBadRecord, err)
	}
	if named := machine.Kind(in.Named); named != "" && !slices.Contains(b.Choices(), named) || len(in.Readings) > MostTaken {
		return Record{}, ErrBadRecord
	}
	out := Record{Code: b.Code(), Named: machine.Kind(in.Named)}
	for _, t := range in.Readings {
		taken, ok := t.taken()
		if !ok {
			return Record{}, ErrBadRecord
		}
		out.Taken = append(out.Taken, taken)
	}
	var ok bool
	if out.Placed, ok = in.Placed.taken(); !ok {
		return Record{}, ErrBadRecord
	}
	return out, nil
}

func (t Taken) json() takenJSON {
	return takenJSON{
		Red: string(t.Red), Black: string(t.Black), Function: t.Function.String(), Range: t.Dial,
		Apart: t.Plug == check.Apart, Unplugged: t.Plug == check.RegulatorApart, Engine: engines[t.Engine], Key: t.Key, Hot: t.Hot,
	}
}

func (t takenJSON) taken() (Taken, bool) {
	f, ok := meter.FunctionNamed(t.Function)
	engine := slices.Index(engines, t.Engine)
	if !ok || engine < 0 {
		return Taken{}, false
	}
	plug := check.Together
	switch {
	case t.Unplugged:
		plug = check.RegulatorApart
	case t.Apart:
		plug = check.Apart
	}
	return Taken{machine.Probing{
		Red: check.Terminal(t.Red), Black: check.Terminal(t.Black), Function: f,
		State: machine.State{Plug: plug, Engine: check.Engine(engine), Key: t.Key, Hot: t.Hot},
	}, t.Range}, true
}
