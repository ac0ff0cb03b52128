// Package fault is the catalogue of faults that a diagnosis considers: for each,
// what it is in the machine, how often it is met for a complaint, and why that is
// thought. Some are double: two kinds, of two parts, that one cause brings together.
// The weights are data that a user can read and change, in faults.json.
package fault

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"slices"
	"sync"

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

// ID names a fault of the catalogue: a kind, "hot-" and a kind for one that shows
// only when warm, or two kinds with "-and-" between; "none" is a machine without a
// fault.
type ID string

// None is no fault at all: the complaint has another cause.
const None ID = "none"

// Fault is one of the catalogue. A double has a second kind, With, which the first
// leads to, and says in Link how.
type Fault struct {
	ID      ID                  `json:"id"`
	Kind    machine.Kind        `json:"kind,omitempty"`
	With    machine.Kind        `json:"with,omitempty"`
	HotOnly bool                `json:"hotOnly,omitempty"`
	Weights map[Symptom]float64 `json:"weights"`        // how often it is met, against the others
	Link    string              `json:"link,omitempty"` // the cause that brings the two of a double together
	// Confirm is read before the part is bought or mended, as far as the build has it: what
	// shows the fault itself, or what could pass for it.
	Confirm []check.ID `json:"confirm,omitempty"`
	Because string     `json:"because"` // why these weights
}

// Double reports a fault of two kinds.
func (f Fault) Double() bool { return f.With != "" }

// Kinds lists what it is: nothing, one kind or the two of a double, the first of them
// the one that leads to the other.
func (f Fault) Kinds() []machine.Kind {
	switch {
	case f.Kind == "":
		return nil
	case f.Double():
		return []machine.Kind{f.Kind, f.With}
	}
	return []machine.Kind{f.Kind}
}

// Parts is what the fault is a fault of.
func (f Fault) Parts() Parts {
	var out []check.Part
	for _, k := range f.Kinds() {
		out = append(out, k.Part())
	}
	return PartsOf(out...)
}

// Adds reports whether a fault is another with something more: a double that holds it.
func (f Fault) Adds(to Fault) bool {
	return f.Double() && !to.Double() && !to.HotOnly && to.Kind != "" && slices.Contains(f.Kinds(), to.Kind)
}

//go:embed faults.json
var bundled []byte

// Bundled is the catalogue that comes with the app.
func Bundled() (Catalogue, error) { return Decode(bundled) }

type file struct {
	Format  string `json:"format"`
	Version int    `json:"version"`
	About   string `json:"about"`
	Catalogue
}

// Version is that of the catalogue's format. Version 2 brought doubles, version 3 what
// is supposed of faults that are not in it and of slips, version 4 what is confirmed;
// earlier ones are read as well.
const Version = 4

// Decode reads a catalogue of any version so far. The error names the fault and what
// is wrong with it.
func Decode(text []byte) (Catalogue, error) {
	list, err := decoded(text)
	if err != nil {
		return Catalogue{}, err
	}
	return list, nil
}

func decoded(text []byte) (Catalogue, error) {
	var f file
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields() // a weight or a second kind that is misspelt would count for nothing
	if err := d.Decode(&f); err != nil {
		return f.Catalogue, fmt.Errorf("the catalogue of faults is no JSON that can be read: %w", err)
	}
	if f.Format != "coilbook faults" || f.Version < 1 || f.Version > Version {
		return f.Catalogue, fmt.Errorf("format %q of version %d is not known: use %q of version 1 to %d", f.Format, f.Version, "coilbook faults", Version)
	}
	seen, joined := map[ID]bool{}, map[[2]machine.Kind]bool{}
	for _, one := range f.Faults {
		err := one.valid()
		if err == nil && one.Double() && f.Version < 2 {
			err = errors.New("with makes it a double, which version 1 does not know: use version 2")
		}
		if err == nil && one.Confirm != nil && f.Version < 4 {
			err = errors.New("confirm is not known to versions before 4: use version 4")
		}
		if err != nil {
			return f.Catalogue, fmt.Errorf("fault %q: %w", one.ID, err)
		}
		if seen[one.ID] {
			return f.Catalogue, fmt.Errorf("fault %q stands twice: leave one out", one.ID)
		}
		seen[one.ID] = true
		if joined[[2]machine.Kind{one.With, one.Kind}] && one.Double() {
			return f.Catalogue, fmt.Errorf("fault %q stands twice, the other way round as well: leave one out", one.ID)
		}
		joined[[2]machine.Kind{one.Kind, one.With}] = true
	}
	return f.Catalogue, f.priors(f.Version)
}

func (f Fault) valid() error {
	switch {
	case f.ID != f.id():
		return fmt.Errorf("its kind asks for the id %q", f.id())
	case f.Kind != "" && !slices.Contains(machine.Kinds(), f.Kind):
		return fmt.Errorf("kind %q is not known", f.Kind)
	case f.Because == "":
		return errors.New("because is empty: say why it has these weights")
	case len(f.Weights) == 0:
		return errors.New("weights are empty: give one for a symptom")
	}
	for s, w := range f.Weights {
		if !slices.Contains(Symptoms(), s) {
			return fmt.Errorf("symptom %q is not known", s)
		}
		if !(w > 0) || math.IsInf(w, 0) {
			return fmt.Errorf("weight %v for %s is not above zero", w, s)
		}
	}
	for i, id := range f.Confirm {
		switch {
		case f.Kind == "":
			return errors.New("confirm is for a part that is bought or mended: leave it out")
		case !known()[id]:
			return fmt.Errorf("confirm: check %q is none of any build", id)
		case slices.Contains(f.Confirm[:i], id):
			return fmt.Errorf("confirm: check %q stands twice: leave one out", id)
		}
	}
	return f.validDouble()
}

// known are the ids of the checks of all builds.
var known = sync.OnceValue(func() map[check.ID]bool {
	out := map[check.ID]bool{}
	for leads := check.MinChargeLeads; leads <= check.MaxChargeLeads; leads++ {
		for _, exciter := range []bool{false, true} { // a box without one is fed by the battery
			b := check.DefaultBuild()
			b.ChargeLeads, b.Exciter = leads, exciter
			for _, c := range check.Whole(b) {
				out[c.ID] = true
			}
		}
	}
	return out
})

// validDouble is what a fault with two kinds has to hold to.
func (f Fault) validDouble() error {
	switch {
	case !f.Double() && f.Link != "":
		return errors.New("link is for a double: give with, or leave link out")
	case !f.Double():
		return nil
	case !slices.Contains(machine.Kinds(), f.With):
		return fmt.Errorf("with %q is not known", f.With)
	case f.Kind.Part() == f.With.Part():
		return fmt.Errorf("both kinds are of one part, the %s: a double is of two", f.Kind.Part())
	case f.HotOnly:
		return errors.New("hotOnly is for one kind: leave it out of a double")
	case f.Link == "":
		return errors.New("link is empty: say what brings the two together")
	}
	return nil
}

// id is the one that its kinds ask for.
func (f Fault) id() ID {
	switch {
	case f.Kind == "":
		return None
	case f.Double():
		return ID(f.Kind + "-and-" + f.With)
	case f.HotOnly:
		return ID("hot-" + f.Kind)
	}
	return ID(f.Kind)
}
