package rig

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/transient"
)

// Trace is a stretch of a waveform between two points: one voltage every Step
// seconds.
type Trace struct {
	Step  float64
	Volts []float64
}

// tracePoints is how many voltages a trace holds.
const tracePoints = 600

// Look is the waveform that an instrument loads and a display averages: two turns
// of an engine that cranks or stands still, four electrical periods of one that
// runs on the charging side, two turns on the other.
func Look(m machine.Machine, p machine.Probing, in Instrument) (Trace, error) {
	sides := sidesOf(p.Red, p.Black)
	r := wired(m, p.State, sides...)
	red, black := r.node(p.Red), r.node(p.Black)
	r.join(red, black, in.input(p.Function))
	if r.turn.still() {
		v, err := r.volts(p)
		t := Trace{Step: 1e-4, Volts: make([]float64, tracePoints)}
		for i := range t.Volts {
			t.Volts[i] = v
		}
		return t, err
	}
	long := 4 * math.Pi / r.turn.omega
	if p.Engine != check.Cranking && len(sides) > 0 && sides[0] == charging {
		long *= 4 / float64(r.made.Build.MagnetPoles)
	}
	settle, _, _ := r.timing()
	out := Trace{Step: long / tracePoints}
	run, err := r.c.Start(min(r.step(), out.Step))
	if err != nil {
		return Trace{}, err
	}
	if err := r.advance(run, settle, in.Pause, nil); err != nil {
		return Trace{}, err
	}
	err = r.advance(run, settle+long, in.Pause, func(s *transient.State) {
		for len(out.Volts) < tracePoints && s.Time() >= settle+float64(len(out.Volts)+1)*out.Step-1e-12 {
			out.Volts = append(out.Volts, s.Between(red, black))
		}
	})
	for err == nil && len(out.Volts) > 0 && len(out.Volts) < tracePoints {
		out.Volts = append(out.Volts, out.Volts[len(out.Volts)-1])
	}
	return out, err
}
