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
		d, err := rig.Show(b.sound.With(f), p.Probing, b.Instrument, p.Dial)
		if err != nil {
			return false, err
		}
		if alike(p.Display, d) {
			return false, nil
		}
	}
	return true, nil
}

func (b Bench) like(k machine.Kind) []machine.Fault {
	var out []machine.Fault
	f, _ := machine.NewChance(uint64(b.Seed)).Sized(k, b.Build)
	for f.At = 1; f.At <= max(machine.Sites(k, b.Build), 1); f.At++ {
		if f.Suits(b.Build) {
			out = append(out, f)
		}
	}
	return out
}

// alike displays are those that nobody would take for different: numbers within a
// few digits and a few percent, dancing digits of about the same size. An ohm
// reading on live points means nothing, and so differs from nothing. The bounds:
// an assumption, no source.
func alike(a, b rig.Display) bool {
	within := func(share float64) bool {
		return math.Abs(a.Value-b.Value) <= math.Max(5*math.Max(a.Range.Step, b.Range.Step), share*math.Max(math.Abs(a.Value), math.Abs(b.Value)))
	}
	switch {
	case a.Live || b.Live:
		return true
	case a.State == quantity.Unsettled || b.State == quantity.Unsettled:
		return a.State != quantity.OverRange && b.State != quantity.OverRange && within(0.35)
	case a.State != b.State:
		return false
	}
	return a.State != quantity.Number || within(0.04)
}
