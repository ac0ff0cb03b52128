package practice

import (
	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/rig"
)

// Probe is one reading that the user took.
type Probe struct {
	machine.Probing
	Dial    string // the range's label, "" where the meter picks it
	Display rig.Display
}

// Show is what the meter shows.
func (b Bench) Show(p machine.Probing, dial string) (Probe, error) {
	d, err := rig.Show(b.hidden, p, b.Instrument, dial)
	return Probe{p, dial, d}, err
}

// Trace is the waveform at two points, for who wants to see it.
func (b Bench) Trace(p machine.Probing) (rig.Trace, error) {
	return rig.Look(b.hidden, p, b.Instrument)
}

// Minutes is what a reading costs after the one before it (nil for the first):
// the touch of the probes, and what changes between them. Common practice, no
// source.
func (p Probe) Minutes(before *Probe) float64 {
	was := machine.State{Plug: check.Together}
	if before != nil {
		was = before.State
	}
	cost := 0.5
	if p.Plug != was.Plug {
		cost++
		if p.Plug == check.RegulatorApart || was.Plug == check.RegulatorApart {
			cost++ // more of them
		}
	}
	if p.Engine != was.Engine && p.Engine != check.Stopped {
		cost += 2
	}
	switch {
	case p.Hot && !was.Hot:
		cost += 15
	case was.Hot && !p.Hot: // it has to cool down
		cost += 30
	}
	return cost
}
