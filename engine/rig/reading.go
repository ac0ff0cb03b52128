package rig

import (
	"math"
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/transient"
)

// Show is what an instrument shows at two points of a machine in a state. dial is
// the range chosen by hand, by its label. A point that the machine lacks is an
// open line.
func Show(m machine.Machine, p machine.Probing, in Instrument, dial string) (Display, error) {
	return wired(m, p.State, sidesOf(p.Red, p.Black)...).show(p, in, dial)
}

func (r *Rig) show(p machine.Probing, in Instrument, dial string) (Display, error) {
	if p.Function == meter.AmpsDC {
		return Display{Unread: true}, nil // no ammeter is put between here
	}
	switch p.Function {
	case meter.Ohms:
		return r.ohms(p, in, dial)
	case meter.Diode:
		return r.diodeRange(p, in, dial)
	}
	w, err := r.displays(p, in)
	if err != nil {
		return Display{}, err
	}
	return in.display(p.Function, dial, in.averages(p.Function, w)), nil
}

// averages are what each display in a row is worked out from. What rectifies an
// alternating voltage smooths it for longer than a display stands, so that each
// holds the stretch before it too.
func (in Instrument) averages(f meter.Function, w [][]sample) []float64 {
	var out []float64
	for i, stretch := range w {
		switch {
		case f == meter.VoltsDC:
			out = append(out, meanOf(stretch, func(v float64) float64 { return v }))
		case len(w) == 1:
			out = append(out, reads(in.Detector, stretch))
		case i > 0:
			out = append(out, reads(in.Detector, append(slices.Clone(w[i-1]), stretch...)))
		}
	}
	return out
}

// An ohm range drives a small current from a source too weak for the knee of a
// diode. Figures: common practice, no source.
const (
	testVolts = 0.25
	testOhms  = 1e3
	// openFrom is what the simulation takes for an open line, in Ω.
	openFrom = 1e8
	// A voltage of so many V, or one that shifts the reading by so many digits,
	// spoils an ohm reading.
	liveFrom, liveDigits = 0.02, 5
)

func (r *Rig) ohms(p machine.Probing, in Instrument, dial string) (Display, error) {
	red, black := r.node(p.Red), r.node(p.Black)
	if red == black {
		return in.display(meter.Ohms, dial, []float64{in.Leads}), nil
	}
	var test transient.Source = transient.Constant(0)
	source := r.c.Supply(red, black, transient.Func(func(t float64) float64 { return test.At(t) }), testOhms)
	before, err := r.stray(p) // what is left of a voltage once the range loads it
	if err != nil {
		return Display{}, err
	}
	test = transient.Constant(testVolts)
	s, err := r.c.AtRest(0)
	if err != nil {
		return Display{}, err
	}
	ohms, off := math.Inf(1), 0.0
	if amps := s.Amps(source); math.Abs(amps) > testVolts/openFrom {
		ohms, off = s.Between(red, black)/amps+in.Leads, math.Abs(before/amps)
	}
	d := in.display(meter.Ohms, dial, []float64{ohms})
	d.Live = math.Abs(before) > liveFrom || off > liveDigits*d.Range.Step
	return d, nil
}

// stray is the voltage between the points that has nothing to do with the meter: of
// a machine that turns, the root of its mean square over two turns.
func (r *Rig) stray(p machine.Probing) (float64, error) {
	if r.turn.still() {
		return r.volts(p)
	}
	red, black := r.node(p.Red), r.node(p.Black)
	run, err := r.c.Start(r.step())
	if err != nil {
		return 0, err
	}
	settle := 4 * math.Pi / r.turn.omega
	if err := run.Advance(settle, nil); err != nil {
		return 0, err
	}
	square := 0.0
	err = run.Advance(2*settle, func(s *transient.State) { square += s.Between(red, black) * s.Between(red, black) * s.Dt() })
	return math.Sqrt(square / settle), err
}

// volts is the voltage between the points with the machine at rest.
func (r *Rig) volts(p machine.Probing) (float64, error) {
	red, black := r.node(p.Red), r.node(p.Black)
	s, err := r.c.AtRest(0)
	if err != nil {
		return 0, err
	}
	return s.Between(red, black), nil
}

// displays are stretches of the voltage between the probes, one for each display
// in a row, with the meter's input across them.
func (r *Rig) displays(p machine.Probing, in Instrument) ([][]sample, error) {
	red, black := r.node(p.Red), r.node(p.Black)
	r.join(red, black, in.input(p.Function))
	if r.turn.still() {
		s, err := r.c.AtRest(0)
		if err != nil {
			return nil, err
		}
		return [][]sample{{{s.Between(red, black), 1}}}, nil
	}
	settle, each, count := r.timing()
	out := make([][]sample, count)
	run, err := r.c.Start(r.step())
	if err != nil {
		return nil, err
	}
	if err := r.advance(run, settle, in.Pause, nil); err != nil {
		return nil, err
	}
	for i := range out {
		out[i] = make([]sample, 0, int(each/r.step()*1.5))
		err := r.advance(run, settle+float64(i+1)*each, in.Pause, func(s *transient.State) {
			out[i] = append(out[i], sample{s.Between(red, black), s.Dt()})
		})
		if err != nil {
			return nil, err
		}
	}
	return out, nil
}

// stretch is how many steps are made between two pauses.
const stretch = 200

// advance runs until a time, with pauses.
func (r *Rig) advance(run *transient.Run, until float64, pause func(), each func(*transient.State)) error {
	for next := run.State().Time(); pause != nil && next+stretch*r.step() < until; {
		next += stretch * r.step()
		if err := run.Advance(next, each); err != nil {
			return err
		}
		pause()
	}
	return run.Advance(until, each)
}

// timing is how long the machine runs before it is read and how long each display
// averages, in s: whole turns of the crank, two of them for a four-stroke's
// compression.
func (r *Rig) timing() (settle, each float64, count int) {
	turns := 4 * math.Pi / r.turn.omega
	whole := func(t float64) float64 { return math.Ceil(t/turns) * turns }
	if r.state.Engine == check.Cranking {
		return whole(0.5 + 4*r.held), 0.4, 4 // no display waits for whole turns
	}
	return whole(0.2 + 4*r.held), whole(0.12), 2
}
