// Package rig is a virtual machine on the bench, simulated in time: the parts of
// a machine are wired as a circuit, the crank turns, diodes and thyristors
// switch, and a meter held to any two points shows what its detector makes of
// the waveform. It takes the machine's parts and their joints as engine/machine
// states them, with what defines a part (copper and magnets by temperature, a
// battery's rest volts), and none of the formulas there, so that the two can
// check each other.
package rig

import (
	"math"
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/transient"
)

// Rig is one machine with its circuit.
type Rig struct {
	made  machine.Machine
	state machine.State
	parts machine.Machine // as they are in this state
	turn  motion
	c     transient.Circuit
	spark sparkGap
	held  float64 // s in which what holds a peak lets go of it
	// branches whose currents are looked at
	battery, feed transient.Branch
	phases        []transient.Branch
	valves        []transient.Branch // of the regulator, shorted and broken ones left out
}

// New wires a whole machine in a state. An engine that turns has its key on, and
// one that cannot be cranked (a dead battery) stands still.
func New(m machine.Machine, s machine.State) *Rig { return wired(m, s, charging, sparking) }

// wired wires the sides that are asked for. They meet at the core alone, which is
// the reference, unless the battery feeds the ignition.
func wired(m machine.Machine, s machine.State, sides ...side) *Rig {
	if s.Engine != check.Stopped {
		s.Key = true
	}
	r := &Rig{made: m, state: s, parts: m.InState(s)}
	r.turn = r.motion()
	wants := func(one side) bool { return slices.Contains(sides, one) }
	batteryFed := !m.Build.Exciter()
	if wants(charging) || batteryFed {
		r.wireSupply()
		r.wireGenerator()
		r.wireRegulator()
	}
	if batteryFed {
		r.wireBoxSupply()
	}
	if wants(sparking) {
		r.wireIgnition()
	}
	return r
}

// side is one of two halves of a machine.
type side int

const (
	charging side = iota
	sparking
)

// sidesOf are those that two points lie on.
func sidesOf(points ...check.Terminal) []side {
	var out []side
	for _, t := range points {
		switch t {
		case check.Core, check.PlugThread:
		case check.PickupA, check.PickupB, check.PickupTwo, check.ExciterLead, check.BoxExciter, check.BoxPickup, check.BoxGround,
			check.BoxFeed, check.BoxOutput, check.KillWire, check.CoilPrimary, check.SparkLead, check.CapScrew,
			check.CapEnd, check.PlugTop:
			out = append(out, sparking)
		default:
			out = append(out, charging)
		}
	}
	return out
}

// node is a point of the machine; the core is the reference.
func (r *Rig) node(t check.Terminal) transient.Node {
	switch t {
	case check.Core, check.PlugThread:
		return transient.Ground
	case check.FuseOut:
		t = check.PlusClamp
	case check.MinusClamp:
		t = check.BatteryMinus
	case check.BoxOutput:
		t = check.CoilPrimary
	case check.CapScrew:
		t = check.SparkLead
	case check.PlugTop:
		t = check.CapEnd
	case check.KillWire:
		if r.made.Build.Exciter() {
			t = check.BoxExciter
		}
	}
	return r.c.Node(string(t))
}

// join puts a resistance between two points; +Inf leaves them apart.
func (r *Rig) join(a, b transient.Node, ohms float64) {
	if a != b && !math.IsInf(ohms, 1) {
		r.c.Resistor(a, b, max(ohms, wire))
	}
}

// wire is the least resistance between two points, in Ω.
const wire = 1e-4

// contact is a joint that may come and go: a loose one is between its best and
// its worst, by a pattern of shaking that is the same for every reading.
func (r *Rig) contact(a, b transient.Node, k machine.Contact) {
	if a == b || math.IsInf(k.Ohms, 1) {
		return
	}
	if k.Loose == 0 || r.turn.still() {
		r.join(a, b, k.Ohms)
		return
	}
	r.join(a, b, k.Ohms+k.Loose)
	// The better state is that with a second path beside it.
	beside := (k.Ohms + k.Loose) * max(k.Ohms, wire) / k.Loose
	r.c.Switch(a, b, beside, func(s *transient.State) bool { return shaken(s.Time()) })
}

// shaken is the beat of a loose contact: two rhythms that never repeat alike.
func shaken(t float64) bool {
	return math.Sin(2*math.Pi*2.3*t)+math.Sin(2*math.Pi*0.71*t+1) > 0
}

// Sparks counts the sparks of a machine in a state over some seconds of its time,
// after it has come to run steadily. A pause that is not nil is called now and then.
func Sparks(m machine.Machine, s machine.State, seconds float64, pause func()) (int, error) {
	r := wired(m, s, sparking)
	if r.turn.still() {
		return 0, nil
	}
	run, err := r.c.Start(r.step())
	if err != nil {
		return 0, err
	}
	settle, _, _ := r.timing()
	if err := r.advance(run, settle, pause, nil); err != nil {
		return 0, err
	}
	r.spark.sparks = 0
	err = r.advance(run, settle+seconds, pause, nil)
	return r.spark.sparks, err
}

// Run lets the machine run for some seconds of its time.
func (r *Rig) Run(seconds float64) error {
	run, err := r.c.Start(r.step())
	if err != nil {
		return err
	}
	return run.Advance(seconds, nil)
}
