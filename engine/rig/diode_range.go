package rig

import (
	"errors"
	"math"

	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/transient"
)

// diodeRange drives the meter's small current from red to black and shows the volts
// that it finds there; more than its range holds is an open line. The curves of the
// regulator's valves are followed by straight lines that touch them where the last
// solution lay.
func (r *Rig) diodeRange(p machine.Probing, in Instrument, dial string) (Display, error) {
	red, black := r.node(p.Red), r.node(p.Black)
	if red == black {
		return in.display(meter.Diode, dial, []float64{0}), nil
	}
	drive := in.Meter.Drive
	if !(drive.Amps > 0) {
		return Display{Unread: true}, nil
	}
	r.c.Supply(red, black, transient.Constant(float64(drive.Volts)), float64(drive.Ohms()))
	const rounds, near = 60, 1e-6
	last := math.Inf(1)
	at := make([]float64, len(r.valves)) // amps
	for i := range at {
		at[i] = drive.Amps
	}
	for range rounds {
		for i, b := range r.valves {
			r.c.Bend(b, touching(r.parts.Regulator.Silicon, at[i]))
		}
		s, err := r.c.AtRest(0)
		if err != nil {
			return Display{}, err
		}
		for i, b := range r.valves {
			if amps := s.Amps(b); amps > smallest {
				at[i] = amps
			}
		}
		volts := s.Between(red, black)
		if math.Abs(volts-last) < near {
			return in.display(meter.Diode, dial, []float64{volts}), nil
		}
		last = volts
	}
	return Display{}, errors.New("the currents of a diode range do not settle")
}

// smallest is a current from which a line still touches its curve: below it a valve
// keeps the line that it had. Amperes.
const smallest = 1e-8

// touching is the straight line that touches a junction's curve at a current.
func touching(j machine.Silicon, amps float64) transient.Junction {
	const thermal = 0.02585 // kT/e at 27 °C, V
	slope := j.Emission * thermal / amps
	knee := j.Volts + j.Emission*thermal*(math.Log(amps/1e-3)-1)
	return transient.Junction{Volts: math.Max(knee, 0), Ohms: slope}
}
