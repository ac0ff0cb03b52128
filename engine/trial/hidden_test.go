// Package trial_test lets the diagnosis find faults of hidden machines. They are
// simulated by engine/rig, whose physics the diagnosis does not use, with figures
// that lie wider and elsewhere than it thinks, a cheap meter, no limits, and one
// reading of the meter in a hundred a slip. The current with the key off alone is
// worked out as the diagnosis does: rig has no ammeter.
package trial_test

import (
	"math"
	"slices"

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

// besideShare is how often the second fault of a hidden double sits where the diagnosis
// thinks it does.
const besideShare = 0.8

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
	m.Regulator.Silicon.Volts += 0.03
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
	case fault.FlatStanding:
		return m.Harness.Drain > 0.02 || volts(m, check.At5000) < m.RestVolts()+0.5 || volts(m, check.Cranking) < 9.8
	case fault.NoSpark, fault.WeakSpark:
		n, _ := rig.Sparks(m, st, 1, nil)
		return n < 2
	case fault.CutsOutHot:
		n, _ := rig.Sparks(m, st, 1, nil)
		st.Hot = true
		h, _ := rig.Sparks(m, st, 1, nil)
		return n >= 2 && h < 2
	}
	return true
}

// often is how much of the faults' weight some of them have among hidden machines.
func often(s fault.Symptom, faults []fault.Fault, which func(fault.Fault) bool) float64 {
	total := 0.0
	for _, f := range faults {
		if which(f) {
			total += math.Pow(f.Weights[s], 0.85)
		}
	}
	return total
}

// picked is one of them, by where a number falls in their weight.
func picked(s fault.Symptom, faults []fault.Fault, which func(fault.Fault) bool, x float64) (f fault.Fault) {
	for _, f = range faults {
		if !which(f) {
			continue
		}
		if x -= math.Pow(f.Weights[s], 0.85); x < 0 && f.Weights[s] > 0 {
			break
		}
	}
	return f
}

func double(f fault.Fault) bool { return f.Double() }
func single(f fault.Fault) bool { return !f.Double() }

// struckBy is a fault of a kind on a hidden machine, with luck of its own.
func struckBy(k machine.Kind, hot bool, b machine.Build, c machine.Chance) machine.Fault {
	return machine.Fault{Kind: k, HotOnly: hot, Size: machine.Size(k, b, math.Pow(c.Uniform(), 1.3)), At: 1 + c.Pick(max(machine.Sites(k, b), 1))}
}

// draw makes a hidden machine. Doubles come from a stream of their own, so that a
// catalogue with more of them leaves most of the others as they were.
func draw(s fault.Symptom, faults []fault.Fault, c, doubles machine.Chance) hidden {
	ones, twos := often(s, faults, single), often(s, faults, double)
	for {
		f := picked(s, faults, single, c.Uniform()*ones)
		twice := doubles.Uniform()*(ones+twos) < twos
		if twice {
			f = picked(s, faults, double, doubles.Uniform()*twos)
		}
		b := hiddenBuilds[c.Pick(len(hiddenBuilds))]
		m := shifted(b, c)
		if f.ID != fault.None {
			luck := c
			if twice {
				luck = doubles
			}
			one := struckBy(f.Kind, f.HotOnly, b, luck)
			all := []machine.Fault{one}
			if twice {
				two := struckBy(f.With, false, b, luck)
				if luck.Uniform() < besideShare {
					two.At = one.Beside(f.With, b, luck)
				}
				all = append(all, two)
			}
			if slices.ContainsFunc(all, func(one machine.Fault) bool { return !one.Suits(b) }) {
				continue
			}
			m = m.With(all...)
			if !complains(m, s) {
				continue
			}
		}
		return hidden{m, f, rig.DrawnInstrument(meter.Cheap(), c), b}
	}
}

// answer is what the hidden machine answers, as shown.
func (h hidden) answer(c check.Check, k machine.Kit, again bool, luck machine.Chance) (diagnose.Evidence, bool) {
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
	if again && e.State == quantity.Number {
		e.Value += d.Range.Step * math.Round(luck.Normal()) // the probes stand a little differently
	}
	if luck.Uniform() < 0.01 && c.ID != "lead-zero" {
		slip(&e, luck)
	}
	return e, true
}

// patient is a hidden machine with the answers that it gave: whoever asks again
// is told the same, but that a second reading of a check has a slip of its own.
type patient struct {
	hidden
	number uint64
	kit    machine.Kit
	told   map[said]diagnose.Evidence
	spoil  check.ID // a check whose first reading is a slip for sure
}

// said is the n-th answer to a check.
type said struct {
	check check.ID
	nth   int
}

func (p *patient) says(c check.Check, nth int) (diagnose.Evidence, bool) {
	key := said{c.ID, nth}
	if e, ok := p.told[key]; ok {
		return e, e.Check != ""
	}
	luck := machine.NewChance(p.number + uint64(nth)<<40)
	for _, r := range c.ID {
		luck = machine.NewChance(uint64(luck.Uniform()*(1<<53)) ^ uint64(r))
	}
	e, ok := p.answer(c, p.kit, nth > 0, luck)
	if ok && p.spoil == c.ID && nth == 0 {
		slip(&e, luck)
	}
	if !ok {
		e = diagnose.Evidence{}
	}
	p.told[key] = e
	return e, ok
}

// answers tells a conversation what it asked for.
func (p *patient) answers(c *diagnose.Conversation, asked diagnose.Choice) {
	k, nth := asked.Check, 0
	if asked.Again {
		c.Beside(k.ID)
		nth = 1
	}
	e, ok := p.says(k, nth)
	var err error
	switch {
	case !ok:
		err = c.Refuse(k.ID)
	case k.Instrument == check.Eyes:
		err = c.See(k.ID, e.Value > 0.5)
	case e.State == quantity.OverRange:
		err = c.Answer(k.ID, "OL", "")
	case e.State == quantity.Unsettled:
		err = c.Answer(k.ID, "jumps", "")
	default:
		err = c.Number(k.ID, e.Value)
	}
	if err != nil && c.Refuse(k.ID) != nil {
		panic(err)
	}
}

func slip(e *diagnose.Evidence, luck machine.Chance) {
	kind := luck.Pick(3)
	if e.Value == 0 {
		kind = 2 // ten times nothing is no slip
	}
	switch kind {
	case 0:
		e.Value *= 10
	case 1:
		e.Value /= 10
	case 2:
		e.State = quantity.OverRange
	}
}
