// Package practice is the practice bench: a hidden machine with a fault, drawn
// from a short code, that answers a user's probes as a real one would. Afterwards
// it says what was wrong, what each reading could have told, and how the guided
// checks would have gone. The machine is simulated by engine/rig.
package practice

import (
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/rig"
)

// Level is how hard a bench is.
type Level int

// Levels. Plain has clear faults and a good meter, Usual all faults and a cheap
// meter, Sly mild ones, also such as show only warm.
const (
	Plain Level = iota
	Usual
	Sly
)

// Levels lists them, the easiest first.
func Levels() []Level { return []Level{Plain, Usual, Sly} }

// Complaint is what the owner says.
type Complaint string

// Complaints.
const (
	NotCharging  Complaint = "not-charging"
	Overcharging Complaint = "overcharging"
	Drained      Complaint = "drained"
	NoSpark      Complaint = "no-spark"
	FailsWarm    Complaint = "fails-warm"
)

// Bench is one hidden machine and the meter beside it.
type Bench struct {
	Level      Level
	Seed       uint32 // below Seeds
	Build      machine.Build
	Complaint  Complaint
	Instrument rig.Instrument
	hidden     machine.Machine
	fault      machine.Fault
}

// Open draws the bench of a level and a seed: the same two give the same bench.
func Open(level Level, seed uint32) Bench {
	b := Bench{Level: level, Seed: seed % Seeds}
	c := b.chance(forFault)
	b.Build = builds[c.Pick(len(builds))]
	b.fault = draw(level, b.Build, c)
	b.hidden = b.sound().With(b.fault)
	b.Complaint = complains(b.fault)
	b.Instrument = rig.DrawnInstrument(meters[level](), b.chance(forMeter))
	return b
}

// What a stream of numbers is for: each has its own, so that a better machine or
// meter leaves the fault behind a code as it is.
const (
	forFault = iota
	forMachine
	forMeter
)

func (b Bench) chance(purpose uint64) machine.Chance {
	return machine.NewChance(uint64(b.Level)<<32 | uint64(b.Seed) | purpose<<40)
}

// sound is the hidden machine without its fault.
func (b Bench) sound() machine.Machine { return machine.Drawn(b.Build, b.chance(forMachine)) }

var meters = map[Level]func() meter.Meter{Plain: meter.Auto6000, Usual: meter.Cheap, Sly: meter.Cheap}

// builds are the architectures of benches, all invented.
var builds = [...]machine.Build{
	machine.Usual(),
	{MagnetPoles: 12, StatorPoles: 18, Charge: machine.Star, Regulating: machine.Shunt, Battery: machine.Flooded, Volts: 12,
		Ignition: machine.BatteryFed, Pickups: 1},
	{MagnetPoles: 12, StatorPoles: 12, Charge: machine.Delta, Regulating: machine.Series, Battery: machine.LFP, Volts: 12,
		Ignition: machine.BatteryFed, Pickups: 1, GroundLead: true},
	{MagnetPoles: 8, StatorPoles: 8, Charge: machine.SinglePhase, Regulating: machine.Shunt, Battery: machine.AGM, Volts: 12,
		Ignition: machine.ACFed, Pickups: 1, GroundLead: true},
	{MagnetPoles: 6, StatorPoles: 6, Charge: machine.GroundedEnd, Regulating: machine.HalfWave, Battery: machine.Flooded, Volts: 12,
		Ignition: machine.ACFed, Pickups: 1, GroundLead: true, Lighting: true, Kick: true},
}

// draw picks a fault that suits level and build.
func draw(l Level, b machine.Build, c machine.Chance) machine.Fault {
	for {
		may := pool(l)
		f, ok := c.Sized(may[c.Pick(len(may))], b)
		if !ok {
			continue
		}
		if l == Sly {
			f = milder(f)
			f.HotOnly = failsHot(f.Kind) && c.Pick(2) == 0
		}
		return f
	}
}

// pool lists the kinds of faults of a level.
func pool(l Level) []machine.Kind {
	if l != Plain {
		return machine.Kinds()
	}
	return []machine.Kind{
		machine.PhaseOpen, machine.PhaseToCore, machine.NoCharging, machine.NoRegulating, machine.MainFuse, machine.PickupOpen,
		machine.ExciterOpen, machine.ExciterToCore, machine.KillSwitch, machine.PrimaryOpen, machine.SecondaryOpen, machine.BoxDead,
		machine.FlatBattery,
	}
}

// milder is the same fault, less of it.
func milder(f machine.Fault) machine.Fault {
	switch f.Kind {
	case machine.PhaseShorted, machine.PickupShorted, machine.ExciterShorted, machine.PhaseJoint, machine.WeakMagnets:
		f.Size *= 0.7
	case machine.ChargePin, machine.FeedWire, machine.RegulatorGround:
		f.Size *= 0.5
	}
	return f
}

// failsHot are windings whose wire parts, or touches, when it grows warm.
func failsHot(k machine.Kind) bool {
	switch k {
	case machine.PickupOpen, machine.ExciterOpen, machine.PhaseToCore, machine.ExciterToCore, machine.SecondaryOpen:
		return true
	}
	return false
}

func complains(f machine.Fault) Complaint {
	switch {
	case f.HotOnly:
		return FailsWarm
	case f.Kind == machine.NoRegulating:
		return Overcharging
	case f.Kind == machine.Drain:
		return Drained
	case f.Kind.Charging():
		return NotCharging
	}
	return NoSpark
}
