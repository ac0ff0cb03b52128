package practice

import (
	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/rig"
)

// mostDraws bounds how often a machine or a fault is drawn anew.
const mostDraws = 200

// tryout simulates machines to see what they do, with pauses.
type tryout struct{ pause func() }

// drawn is a machine that charges and sparks, as one without a fault should; the
// typical one, should none come up.
func (t tryout) drawn(b machine.Build, c machine.Chance) machine.Machine {
	for range mostDraws {
		if m := machine.Drawn(b, c); t.works(m) {
			return m
		}
	}
	return machine.Typical(b)
}

// pool lists the kinds of faults of a level. It is part of what codes mean: a kind
// that is new enters with a new level only. A drain is none of them, as no dial
// here finds it.
func pool(l Level) []machine.Kind {
	plain := []machine.Kind{
		machine.PhaseOpen, machine.PhaseToCore, machine.NoCharging, machine.NoRegulating, machine.MainFuse, machine.PickupOpen,
		machine.ExciterOpen, machine.ExciterToCore, machine.KillSwitch, machine.PrimaryOpen, machine.SecondaryOpen, machine.BoxDead,
		machine.FlatBattery,
	}
	if l == Plain {
		return plain
	}
	return append(plain,
		machine.PhaseShorted, machine.PhaseToPhase, machine.PhaseJoint, machine.NeutralToCore, machine.WeakMagnets, machine.DiodeIsOpen,
		machine.DiodeIsShorted, machine.LowSetPoint, machine.RegulatorGround, machine.ChargePin, machine.FeedWire,
		machine.BatteryTerminal, machine.Sulphated, machine.CellShorted, machine.GroundStrap, machine.PickupShorted,
		machine.PickupToCore, machine.GapWide, machine.PlugPin, machine.ExciterShorted, machine.BoxShorted, machine.KillWire,
		machine.PrimaryShorted, machine.SecondaryTurns, machine.CapBroken, machine.PlugFouled, machine.IgnitionGround, machine.BoxFeed,
	)
}

// draw picks a fault that suits level and build, and of which the machine really
// does what its owner complains of; a dead box, should none come up.
func (t tryout) draw(l Level, sound machine.Machine, c machine.Chance) machine.Fault {
	may := pool(l)
	for range mostDraws {
		f, ok := c.Sized(may[c.Pick(len(may))], sound.Build)
		if !ok {
			continue
		}
		if l == Sly {
			f = milder(f)
			f.HotOnly = failsHot(f.Kind) && c.Pick(2) == 0
		}
		if t.troubles(sound, f) {
			return f
		}
	}
	return machine.Fault{Kind: machine.BoxDead, At: 1}
}

// A sound machine raises the battery by so many volts at speed and gives so many
// sparks in a second of cranking. A complaint needs charging so many volts behind
// a sound machine's, cranking at no more than such a share of its volts, or so many
// volts for each nominal one that bulbs suffer. Assumptions, no source.
const (
	chargesMore   = 0.4
	sparksAtLeast = 3
	chargesLess   = 0.3
	cranksLess    = 0.93
	boils         = 15.0 / 12
)

func (t tryout) works(m machine.Machine) bool {
	s := machine.State{Plug: check.Together}
	volts, charges := t.battery(m, s, check.At5000)
	n, sparks := t.sparks(m, s)
	return charges && sparks && volts > m.RestVolts()+chargesMore && n >= sparksAtLeast
}

// troubles reports whether a machine with the fault does what its owner says of
// it, as the simulation has it: warm, where only that shows it. What cannot be
// simulated troubles nobody.
func (t tryout) troubles(sound machine.Machine, f machine.Fault) bool {
	faulty, s := sound.With(f), machine.State{Plug: check.Together, Hot: f.HotOnly}
	less := func(e check.Engine, by func(good, bad float64) bool) bool {
		good, ok := t.battery(sound, s, e)
		bad, also := t.battery(faulty, s, e)
		return ok && also && by(good, bad)
	}
	switch c := complains(f); {
	case c == AllDead:
		return true
	case c == Overcharging:
		return less(check.At5000, func(_, bad float64) bool { return bad > boils*float64(sound.Build.Volts) })
	case c == CranksSlowly:
		return !sound.Build.Kick && less(check.Cranking, func(good, bad float64) bool { return bad < cranksLess*good })
	case f.Kind.Charging():
		behind := func(good, bad float64) bool { return bad < good-chargesLess }
		return less(check.At3000, behind) || less(check.At5000, behind)
	}
	good, ok := t.sparks(sound, s)
	bad, also := t.sparks(faulty, s)
	return ok && also && 2*bad < good
}

// battery is the voltage that the starter gets, or the loads, with the engine in a
// state: between the clamps.
func (t tryout) battery(m machine.Machine, s machine.State, e check.Engine) (volts float64, ok bool) {
	s.Engine = e
	p := machine.Probing{Red: check.PlusClamp, Black: check.Core, Function: meter.VoltsDC, State: s}
	with := rig.Exact(meter.Auto6000())
	with.Pause = t.pause
	d, err := rig.Show(m, p, with, "")
	return d.Value, err == nil
}

// sparks is how many there are in a second of cranking.
func (t tryout) sparks(m machine.Machine, s machine.State) (n int, ok bool) {
	s.Engine = check.Cranking
	n, err := rig.Sparks(m, s, 1, t.pause)
	return n, err == nil
}
