package practice

import (
	"coilbook/engine/machine"
	"coilbook/engine/rig"
)

// What takes long comes in steps too, each one simulation, so that a screen can
// draw between them.

// Places are the faults that a rival stands for: its kind at each place that is
// tried.
func (b Bench) Places(rival machine.Kind) []machine.Fault { return b.like(rival) }

// Unlike reports whether the machine with that fault in place of its own would
// have shown something else. A reading speaks against a rival that is unlike at
// all its places.
func (b Bench) Unlike(p Probe, f machine.Fault) (bool, error) {
	d, err := rig.Show(b.sound.With(f), p.Probing, b.Instrument, p.Dial)
	return err == nil && !alike(p.Display, d), err
}

// Starts reports whether the engine runs by itself: not where the owner says that
// it gives no spark, nor, where it stops when warm, once it is warm; nor where
// nothing feeds a box that the battery feeds.
func (b Bench) Starts(hot bool) bool {
	switch {
	case b.Complaint == AllDead:
		return b.Build.Exciter()
	case b.Complaint == FailsWarm:
		return !hot || b.fault.Kind.Charging()
	}
	return b.Complaint != NoSpark
}
