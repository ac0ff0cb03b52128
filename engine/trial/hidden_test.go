// Package trial_test lets the diagnosis find faults of hidden machines. They are
// simulated by engine/rig, whose physics the diagnosis does not use, with figures
// that lie wider and elsewhere than it thinks, a cheap meter, no limits, and one
// reading in a hundred a slip.
package trial_test

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/rig"
)

var hiddenBuilds = []machine.Build{
	machine.Usual(),
	{MagnetPoles: 12, StatorPoles: 18, Charge: machine.Star, Regulating: machine.Shunt, Battery: machine.Flooded, Volts: 12, Ignition: machine.BatteryFed, Pickups: 1},
	{MagnetPoles: 12, StatorPoles: 12, Charge: machine.Delta, Regulating: machine.Shunt, Battery: machine.AGM, Volts: 12, Ignition: machine.BatteryFed, Pickups: 1, GroundLead: true},
	{MagnetPoles: 8, StatorPoles: 8, Charge: machine.SinglePhase, Regulating: machine.Shunt, Battery: machine.AGM, Volts: 12, Ignition: machine.ACFed, Pickups: 1, GroundLead: true},
}

type hidden struct {
	m     machine.Machine
	f     fault.Fault
	in    rig.Instrument
	build machine.Build
}

// shifted is a machine whose figures lie wider and elsewhere than the diagnosis
// thinks.
func shifted(b machine.Build, c machine.Chance) machine.Machine {
	m := machine.Drawn(b, c)
	m.Magnets.Flux *= 0.97 * c.About(0.06)
	for i := range m.Phases {
		m.Phases[i].Ohms *= 1.05
		m.Phases[i].Henry *= 0.93 * c.About(0.08)
	}
	m.Exciter.Ohms *= c.About(0.12)
	m.Pickups[0].Ohms *= c.About(0.12)
	m.Battery.Ohms *= 1.1 * c.About(0.2)
	m.Battery.Accept *= 0.9 * c.About(0.2)
	m.Regulator.SetPoint += -0.1 + 0.1*c.Normal()
	m.Box.Trigger *= c.About(0.1)
	return m
}

func volts(m machine.Machine, e check.Engine) float64 {
	d, _ := rig.Show(m, machine.Probing{Red: check.PlusClamp, Black: check.Core, Function: meter.VoltsDC, State: machine.State{Plug: check.Together, Engine: e, Key: true}}, rig.Exact(meter.Auto6000()), "")
	return d.Value
}

func complains(m machine.Machine, s fault.Symptom) bool {
	st := machine.State{Plug: check.Together, Engine: check.Cranking, Key: true}
	switch s {
	case fault.WontCharge:
		return volts(m, check.At5000) < m.RestVolts()+0.5 || volts(m, check.Cranking) < 9.8 || m.Harness.Drain > 0.02 || m.Battery.Charge < 0.3
	case fault.Overcharges:
		return volts(m, check.At5000) > 15
	case fault.NoSpark:
		n, _ := rig.Sparks(m, st, 1)
		return n < 2
	case fault.CutsOutHot:
		n, _ := rig.Sparks(m, st, 1)
		st.Hot = true
		h, _ := rig.Sparks(m, st, 1)
		return n >= 2 && h < 2
	}
	return true
}

func draw(s fault.Symptom, faults []fault.Fault, c machine.Chance) hidden {
	for {
		total := 0.0
		for _, f := range faults {
			total += math.Pow(f.Weights[s], 0.85)
		}
		x := c.Uniform() * total
		var f fault.Fault
		for _, f = range faults {
			if x -= math.Pow(f.Weights[s], 0.85); x < 0 && f.Weights[s] > 0 {
				break
			}
		}
		b := hiddenBuilds[c.Pick(len(hiddenBuilds))]
		m := shifted(b, c)
		if f.ID != fault.None {
			one := machine.Fault{Kind: f.Kind, HotOnly: f.HotOnly, Size: machine.Size(f.Kind, b, math.Pow(c.Uniform(), 1.3)), At: 1 + c.Pick(max(machine.Sites(f.Kind, b), 1))}
			if !one.Suits(b) {
				continue
			}
			m = m.With(one)
			if !complains(m, s) {
				continue
			}
		}
		return hidden{m, f, rig.DrawnInstrument(meter.Cheap(), c), b}
	}
}

// answer is what the hidden machine answers, as typed.
func (h hidden) answer(c check.Check, k machine.Kit, luck machine.Chance) (diagnose.Evidence, bool) {
	e := diagnose.Evidence{Check: c.ID}
	if c.Instrument == check.Eyes {
		yes, err := rig.Seen(h.m, c, luck.Uniform())
		if yes {
			e.Value = 1
		}
		return e, err == nil
	}
	var d rig.Display
	var err error
	if c.Function == meter.AmpsDC && c.Instrument == check.Multimeter {
		v := h.m.Predict(c, h.in.Meter, k).Value
		d = rig.Display{Value: math.Round(v/0.01) * 0.01, Range: meter.Range{Step: 0.01}}
	} else {
		d, err = rig.Check(h.m, c, h.in, k)
	}
	if err != nil || d.Unread {
		return e, false
	}
	e.State, e.Value = d.State, d.Value
	if luck.Uniform() < 0.01 {
		slip(&e, luck)
	}
	if c.Function == meter.Ohms && c.Instrument == check.Multimeter && e.State == quantity.Number {
		e.Value = math.Max(e.Value-0.25, 0)
		e.Doubt = 0.12
	}
	a := d.Range.Accuracy
	e.Doubt = math.Hypot(e.Doubt, a.HalfWidth(e.Value, d.Range.Step)/math.Sqrt(3))
	return e, true
}

// patient is a hidden machine with the answers that it gave: whoever asks again
// is told the same.
type patient struct {
	hidden
	number  uint64
	answers map[check.ID]diagnose.Evidence
	spoil   check.ID // a check whose reading is a slip for sure
}

func (p *patient) says(c check.Check) (diagnose.Evidence, bool) {
	if e, ok := p.answers[c.ID]; ok {
		return e, e.Check != ""
	}
	luck := machine.NewChance(p.number)
	for _, r := range c.ID {
		luck = machine.NewChance(uint64(luck.Uniform()*(1<<53)) ^ uint64(r))
	}
	e, ok := p.answer(c, machine.Kit{}, luck)
	if ok && p.spoil == c.ID {
		slip(&e, luck)
	}
	if !ok {
		e = diagnose.Evidence{}
	}
	p.answers[c.ID] = e
	return e, ok
}

func slip(e *diagnose.Evidence, luck machine.Chance) {
	switch luck.Pick(3) {
	case 0:
		e.Value *= 10
	case 1:
		e.Value /= 10
	case 2:
		e.State = quantity.OverRange
	}
}
