// Package fault is the catalogue of faults that a diagnosis considers: for each,
// what it is in the machine, how often it is met for a complaint, and why that is
// thought. The weights are data that a user can read and change, in faults.json.
package fault

import (
	_ "embed"
	"encoding/json"
	"fmt"
	"math"
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/machine"
)

// Symptom is what the machine does.
type Symptom string

// Symptoms.
const (
	WontCharge   Symptom = "wont-charge"
	Overcharges  Symptom = "overcharges"
	NoSpark      Symptom = "no-spark"
	WeakSpark    Symptom = "weak-spark"
	CutsOutHot   Symptom = "cuts-out-hot"
	FlatStanding Symptom = "flat-after-standing"
	OnTheBench   Symptom = "bench"
)

// Symptoms lists them.
func Symptoms() []Symptom {
	return []Symptom{WontCharge, Overcharges, NoSpark, WeakSpark, CutsOutHot, FlatStanding, OnTheBench}
}

// Of is the symptom that a session's aim looks for; ok is false for an aim that
// looks for no fault.
func Of(aim check.Aim) (s Symptom, ok bool) {
	s, ok = symptomOf[aim]
	return s, ok
}

var symptomOf = map[check.Aim]Symptom{
	check.NoCharge: WontCharge, check.Overcharges: Overcharges, check.FlatStanding: FlatStanding,
	check.NoSpark: NoSpark, check.WeakSpark: WeakSpark, check.CutsOutHot: CutsOutHot, check.Bench: OnTheBench,
}

// ID names a fault of the catalogue: a kind, or "hot-" and a kind for one that
// shows only when warm; "none" is a machine without a fault.
type ID string

// None is no fault at all: the complaint has another cause.
const None ID = "none"

// Fault is one of the catalogue.
type Fault struct {
	ID      ID                  `json:"id"`
	Kind    machine.Kind        `json:"kind,omitempty"`
	HotOnly bool                `json:"hotOnly,omitempty"`
	Weights map[Symptom]float64 `json:"weights"` // how often it is met, against the others
	Because string              `json:"because"` // why these weights
}

// Part is what the fault is a fault of; "" for none.
func (f Fault) Part() check.Part {
	if f.ID == None {
		return ""
	}
	return f.Kind.Part()
}

//go:embed faults.json
var bundled []byte

// Bundled is the catalogue that comes with the app.
func Bundled() ([]Fault, error) { return Decode(bundled) }

type file struct {
	Format  string  `json:"format"`
	Version int     `json:"version"`
	About   string  `json:"about"`
	Faults  []Fault `json:"faults"`
}

// Decode reads a catalogue. The error names the fault and what is wrong with it.
func Decode(text []byte) ([]Fault, error) {
	var f file
	if err := json.Unmarshal(text, &f); err != nil {
		return nil, fmt.Errorf("the catalogue of faults is no JSON that can be read: %w", err)
	}
	if f.Format != "coilbook faults" || f.Version != 1 {
		return nil, fmt.Errorf("format %q of version %d is not known: use %q of version 1", f.Format, f.Version, "coilbook faults")
	}
	seen := map[ID]bool{}
	for _, one := range f.Faults {
		if err := one.valid(); err != nil {
			return nil, fmt.Errorf("fault %q: %w", one.ID, err)
		}
		if seen[one.ID] {
			return nil, fmt.Errorf("fault %q stands twice: leave one out", one.ID)
		}
		seen[one.ID] = true
	}
	return f.Faults, nil
}

func (f Fault) valid() error {
	want := ID(f.Kind)
	if f.HotOnly {
		want = "hot-" + want
	}
	if f.Kind == "" {
		want = None
	}
	switch {
	case f.ID != want:
		return fmt.Errorf("its kind asks for the id %q", want)
	case f.Kind != "" && !slices.Contains(machine.Kinds(), f.Kind):
		return fmt.Errorf("kind %q is not known", f.Kind)
	case f.Because == "":
		return fmt.Errorf("because is empty: say why it has these weights")
	case len(f.Weights) == 0:
		return fmt.Errorf("weights are empty: give one for a symptom")
	}
	for s, w := range f.Weights {
		if !slices.Contains(Symptoms(), s) {
			return fmt.Errorf("symptom %q is not known", s)
		}
		if !(w > 0) || math.IsInf(w, 0) {
			return fmt.Errorf("weight %v for %s is not above zero", w, s)
		}
	}
	return nil
}
