//go:build !js

package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/session"
)

// lineError says what is wrong with one line of the other side.
type lineError struct{ field, reason, wayOut string }

func (e *lineError) Error() string { return e.field + ": " + e.reason + "; " + e.wayOut }

// longestLine is in bytes; a data sheet with all its lines takes a tenth of it.
const longestLine = 1 << 16

// nextLine reads a line, whole or to the end of the input. A longer one is
// skipped and gives a *lineError.
func nextLine(in *bufio.Reader) ([]byte, error) {
	var line []byte
	for {
		part, err := in.ReadSlice('\n')
		if len(line) <= longestLine {
			line = append(line, part...)
		}
		switch {
		case errors.Is(err, bufio.ErrBufferFull):
			continue
		case errors.Is(err, io.EOF) && len(line) > 0: // the end comes again
		case err != nil:
			return nil, err
		}
		switch {
		case len(line) > longestLine:
			return nil, &lineError{"line", fmt.Sprintf("is longer than %d bytes", longestLine), "shorten it"}
		case !utf8.Valid(line):
			return nil, &lineError{"line", "is not UTF-8", "encode it so"}
		}
		return line, nil
	}
}

// setting is what the first line comes to.
type setting struct {
	question diagnose.Question
	cannot   []check.Access
	leads    *float64 // Ω
}

// settingOf reads the first line.
func settingOf(line []byte) (setting, error) {
	first := struct {
		Symptom   fault.Symptom   `json:"symptom"`
		Build     check.Build     `json:"build"`
		Meter     json.RawMessage `json:"meter"`
		Cannot    []check.Access  `json:"cannot"`
		LeadsOhms *float64        `json:"leadsOhms"`
		Adapter   *float64        `json:"adapterMicrofarads"`
		Bleeder   *float64        `json:"bleederMegohms"`
	}{Build: check.DefaultBuild()}
	if err := strictly(line, &first); err != nil {
		return setting{}, err
	}
	if !slices.Contains(fault.Symptoms(), first.Symptom) {
		return setting{}, &lineError{"symptom", fmt.Sprintf("is %.40q, which is not known", first.Symptom), "use " + listed(fault.Symptoms())}
	}
	if err := builds(first.Build); err != nil {
		return setting{}, err
	}
	for i, a := range first.Cannot {
		if !slices.Contains(check.Accesses(), a) {
			return setting{}, &lineError{fmt.Sprintf("cannot[%d]", i), fmt.Sprintf("is %.40q, which is not known", a), "use " + listed(check.Accesses())}
		}
	}
	kit, err := kitOf(first.Adapter, first.Bleeder)
	if err != nil {
		return setting{}, err
	}
	with, err := meterOf(first.Meter)
	q := diagnose.Question{Symptom: first.Symptom, Build: first.Build, Meter: with, Kit: kit}
	return setting{q, first.Cannot, first.LeadsOhms}, err
}

// kitOf is a peak-hold adapter by its capacitor and its bleeder; nil is none.
func kitOf(microfarads, megohms *float64) (machine.Kit, error) {
	var k machine.Kit
	switch {
	case microfarads != nil && !(*microfarads >= session.MinAdapter && *microfarads <= session.MaxAdapter):
		return k, &lineError{"adapterMicrofarads", fmt.Sprintf("is %g", *microfarads), fmt.Sprintf("use %g to %g, or leave it out", session.MinAdapter, float64(session.MaxAdapter))}
	case megohms != nil && !(*megohms > 0):
		return k, &lineError{"bleederMegohms", fmt.Sprintf("is %g", *megohms), "use a number above 0, or leave it out"}
	case megohms != nil && microfarads == nil:
		return k, &lineError{"bleederMegohms", "goes with an adapter only", "give adapterMicrofarads too, or leave it out"}
	}
	if microfarads != nil {
		k.AdapterFarads = *microfarads * 1e-6
	}
	if megohms != nil {
		k.BleederOhms = *megohms * 1e6
	}
	return k, nil
}

func builds(b check.Build) error {
	if b.StatorPoles < check.MinPoles || b.StatorPoles > check.MaxPoles {
		return &lineError{"build.statorPoles", fmt.Sprintf("is %d", b.StatorPoles), fmt.Sprintf("use %d to %d", check.MinPoles, check.MaxPoles)}
	}
	if b.ChargeLeads < check.MinChargeLeads || b.ChargeLeads > check.MaxChargeLeads {
		return &lineError{"build.chargeLeads", fmt.Sprintf("is %d", b.ChargeLeads), fmt.Sprintf("use %d to %d", check.MinChargeLeads, check.MaxChargeLeads)}
	}
	return nil
}

// meterOf reads the id of a bundled meter or a data sheet; nothing is the default.
func meterOf(text json.RawMessage) (meter.Meter, error) {
	if len(text) == 0 || string(text) == "null" {
		return meter.Cheap(), nil
	}
	if text[0] != '{' {
		var id string
		var known []string
		for _, m := range meter.Bundled() {
			known = append(known, m.ID)
		}
		if err := json.Unmarshal(text, &id); err != nil {
			return meter.Meter{}, &lineError{"meter", "is neither an id nor a data sheet", "use " + listed(known) + ", or an object"}
		}
		m, ok := meter.ByID(id)
		if !ok {
			return meter.Meter{}, &lineError{"meter", fmt.Sprintf("is %.40q, which is not described here", id), "use " + listed(known) + ", or a data sheet"}
		}
		return m, nil
	}
	var sheet meter.Sheet
	err := strictly(text, &sheet)
	if err != nil {
		return meter.Meter{}, fmt.Errorf("meter.%w", err)
	}
	m, err := sheet.Meter()
	if err != nil {
		return meter.Meter{}, fmt.Errorf("meter.%w", err)
	}
	return m, nil
}

// answerLine is one answer of the other side.
type answerLine struct {
	Check   *check.ID `json:"check"`
	Reading *string   `json:"reading"`
	Unit    string    `json:"unit"`
	Number  *float64  `json:"number"`
	Yes     *bool     `json:"yes"`
	Refuse  *bool     `json:"refuse"`
}

func answerOf(line []byte) (answerLine, error) {
	var a answerLine
	if err := strictly(line, &a); err != nil {
		return a, err
	}
	kinds := 0
	for _, there := range []bool{a.Reading != nil, a.Number != nil, a.Yes != nil, a.Refuse != nil} {
		if there {
			kinds++
		}
	}
	switch {
	case kinds != 1:
		return a, &lineError{"line", fmt.Sprintf("holds %d answers", kinds), "give one of reading, number, yes, refuse"}
	case a.Unit != "" && a.Reading == nil:
		return a, &lineError{"unit", "goes with a reading only", "leave it out"}
	case a.Refuse != nil && !*a.Refuse:
		return a, &lineError{"refuse", "is false", "answer the check, or use true"}
	}
	return a, nil
}

// strictly decodes one object without unknown fields.
func strictly(text []byte, into any) error {
	const wayOut = "send one object"
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	err := d.Decode(into)
	if err == nil && d.Decode(&struct{}{}) != io.EOF {
		return &lineError{"line", "goes on after its object", wayOut}
	}
	var syntax *json.SyntaxError
	var kind *json.UnmarshalTypeError
	switch {
	case err == nil:
		return nil
	case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF):
		return &lineError{"line", "is empty or cut short", wayOut}
	case errors.As(err, &syntax):
		return &lineError{"line", fmt.Sprintf("is not JSON at byte %d", syntax.Offset), wayOut}
	case errors.As(err, &kind) && kind.Field == "":
		return &lineError{"line", "is a JSON " + kind.Value, wayOut}
	case errors.As(err, &kind):
		return &lineError{kind.Field, "is a JSON " + kind.Value, "use " + wanted[kind.Type.Kind().String()]}
	}
	if name, ok := strings.CutPrefix(err.Error(), "json: unknown field "); ok {
		return &lineError{strings.Trim(name, `"`), "is not a field here", "leave it out"}
	}
	return &lineError{"line", err.Error(), wayOut}
}

// wanted says by the kind of a Go type what JSON it takes.
var wanted = map[string]string{
	"string": "text in quotes", "float64": "a number", "int": "a whole number", "bool": "true or false", "slice": "a list", "struct": "an object",
}

func listed[S ~string](names []S) string {
	texts := make([]string, len(names))
	for i, n := range names {
		texts[i] = string(n)
	}
	return strings.Join(texts, ", ")
}
