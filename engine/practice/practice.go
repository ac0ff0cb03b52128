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

// Bench is one hidden machine and the meter beside it.
type Bench struct {
	Level      Level
	Seed       uint32 // below Seeds
	Build      machine.Build
	Complaint  Complaint
	Instrument rig.Instrument
	sound      machine.Machine
	hidden     machine.Machine
	fault      machine.Fault
}

// Open draws the bench of a level and a seed: the same two give the same bench. It
// simulates, and so takes some tens of milliseconds.
func Open(level Level, seed uint32) Bench { return opened(level, seed, func() {}) }

func opened(level Level, seed uint32, pause func()) Bench {
	b, c := begun(level, seed)
	t := tryout{pause}
	b.sound = t.drawn(b.Build, b.chance(forMachine))
	b.fault = t.draw(level, b.sound, c)
	b.hidden = b.sound.With(b.fault)
	b.Complaint = complains(b.fault)
	b.Instrument = rig.DrawnInstrument(meters[level](), b.chance(forMeter))
	return b
}

// What a stream of numbers is for: each has its own, so that another meter leaves
// machine and fault behind a code as they are.
const (
	forFault = iota
	forMachine
	forMeter
)

func (b Bench) chance(purpose uint64) machine.Chance {
	return machine.NewChance(uint64(b.Level)<<32 | uint64(b.Seed) | purpose<<40)
}

// begun is a bench of which only the build is drawn.
func begun(level Level, seed uint32) (Bench, machine.Chance) {
	b := Bench{Level: level, Seed: seed % Seeds}
	c := b.chance(forFault)
	b.Build = builds[c.Pick(len(builds))]
	return b, c
}

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
