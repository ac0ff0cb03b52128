package practice

import (
	"math"

	"coilbook/engine/machine"
	"coilbook/engine/quantity"
	"coilbook/engine/rig"
)

// Rivals are the other faults that a reading is held against: each kind that the
// build can have, at the size that such faults usually have, at every place where
// it can sit.
func (b Bench) Rivals() []machine.Kind {
	var out []machine.Kind
	for _, k := range b.Choices() {
		if k != b.fault.Kind {
			out = append(out, k)
		}
	}
	return out
}

// Speaks reports whether a reading speaks against a rival: the same machine with
// that fault in place of its own would have shown something else, wherever the
// fault sat. It simulates, and so takes its time.
func (b Bench) Speaks(p Probe, rival machine.Kind) (against bool, err error) {
	for _, f := range b.like(rival) {
		d, err := rig.Show(b.sound().With(f), p.Probing, b.Instrument, p.Dial)
		if err != nil {
			return false, err
		}
		if alike(p.Display, d) {
			return false, nil
		}
	}
	return true, nil
}

// mostPlaces bounds how many places of a rival are tried.
const mostPlaces = 3

func (b Bench) like(k machine.Kind) []machine.Fault {
	var out []machine.Fault
	f, _ := machine.NewChance(uint64(b.Seed)).Sized(k, b.Build)
	for f.At = 1; len(out) < mostPlaces && f.Suits(b.Build); f.At++ {
		out = append(out, f)
		if !k.Sited() {
			break
		}
	}
	return out
}

// alike displays are those that nobody would take for different: within a few
// digits and a few percent. The bounds: an assumption, no source.
func alike(a, b rig.Display) bool {
	if a.State != b.State {
		return false
	}
	if a.State != quantity.Number {
		return true
	}
	return math.Abs(a.Value-b.Value) <= math.Max(3*math.Max(a.Range.Step, b.Range.Step), 0.04*math.Abs(a.Value))
}
