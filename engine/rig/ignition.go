package rig

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/transient"
)

// wireIgnition lays exciter, pickups, box, kill circuit and coil.
func (r *Rig) wireIgnition() {
	r.wirePickups()
	box, n := r.parts.Box, r.node
	ground, charged, out := n(check.BoxGround), r.c.Node("box-charged"), n(check.CoilPrimary)
	r.join(n(check.BoxPickup), ground, box.Input)
	if r.made.Build.Exciter() {
		r.contact(ground, transient.Ground, box.Ground)
		r.feedFromExciter(charged)
	} else {
		r.feedFromBattery(charged)
	}
	r.c.Capacitor(charged, out, box.Farad, 0)
	small := transient.Junction{Volts: 0.7, Ohms: 0.1}
	r.c.Thyristor(charged, ground, small, r.trigger())
	r.c.Diode(ground, charged, small)
	r.c.Diode(charged, ground, transient.Junction{Volts: box.Clamp, Ohms: 50})
	r.wireKill()
	r.wireSpark()
}

func (r *Rig) wirePickups() {
	pins := r.parts.Harness.OtherPins
	a, b := r.node(check.PickupA), r.node(check.PickupB)
	r.wireCoil(a, b, r.parts.Pickups[0], r.passed(0, 0))
	if r.state.BoxPlugged() {
		r.contact(a, r.node(check.BoxPickup), pins)
		r.contact(b, r.node(check.BoxGround), pins)
	}
	if r.made.Build.Pickups > 1 {
		r.wireCoil(r.node(check.PickupTwo), transient.Ground, r.parts.Pickups[1], r.passed(1, math.Pi))
	}
}

// passed is the emf of a pickup that the reluctor passes at an angle.
func (r *Rig) passed(i int, at float64) emfOf {
	return func(share float64) transient.Source {
		return r.turn.pulses(r.parts.Pickups[i].Turns*share, r.parts.Reluctor, at)
	}
}

func (r *Rig) feedFromExciter(charged transient.Node) {
	n, box := r.node, r.parts.Box
	r.wireCoil(n(check.ExciterLead), transient.Ground, r.parts.Exciter, r.linked(r.parts.Exciter, 0))
	if r.state.BoxPlugged() {
		r.contact(n(check.ExciterLead), n(check.BoxExciter), r.parts.Harness.OtherPins)
	}
	small := transient.Junction{Volts: 0.7, Ohms: 1}
	if box.Shorted {
		r.join(n(check.BoxExciter), charged, 1)
	} else {
		r.c.Diode(n(check.BoxExciter), charged, small)
	}
	r.c.Diode(n(check.BoxGround), n(check.BoxExciter), small)
}

func (r *Rig) feedFromBattery(charged transient.Node) {
	n, box := r.node, r.parts.Box
	feed, ground := n(check.BoxFeed), n(check.BoxGround)
	if r.state.Off != check.KillWireOff {
		r.join(n(check.KillWire), feed, machine.KillPull)
	}
	raised := r.c.Node("box-raised")
	nominal := float64(r.made.Build.Volts)
	// The converter's output follows its supply, by one step behind.
	supply := 0.0
	r.c.Switch(feed, ground, 1e9, func(s *transient.State) bool { supply = s.Between(feed, ground); return true })
	r.c.Supply(raised, ground, transient.Func(func(t float64) float64 {
		if supply < machine.ConvertsFrom*nominal || t-r.spark.fired < restsFor {
			return 0
		}
		return box.Volts * supply / nominal
	}), box.Source)
	r.c.Diode(raised, charged, transient.Junction{Volts: 0.7, Ohms: 1})
}

// wireBoxSupply is what a battery-fed box is to the supply.
func (r *Rig) wireBoxSupply() {
	box, ground := r.parts.Box, r.node(check.BoxGround)
	r.contact(ground, transient.Ground, box.Ground)
	r.contact(r.node(check.KeyOut), r.node(check.BoxFeed), box.Feed)
	r.join(r.node(check.BoxFeed), ground, box.Draw)
}

// gateFor is how long a pickup's pulse holds the gate, in s: it comes through a
// capacitor. An assumption, no source.
const gateFor = 0.3e-3

// restsFor is how long the converter of a battery-fed box rests after each
// discharge, in s: otherwise it would keep burning in the thyristor. An
// assumption, no source.
const restsFor = 1.5e-3

// trigger fires the box at a pickup's pulse; the discharge is followed in fine
// steps.
func (r *Rig) trigger() transient.Gate {
	in, ground, kill, feed := r.node(check.BoxPickup), r.node(check.BoxGround), r.node(check.KillWire), r.node(check.BoxFeed)
	box, batteryFed := r.parts.Box, !r.made.Build.Exciter()
	armed := true
	return func(s *transient.State) bool {
		if box.Dead || r.turn.still() {
			return false
		}
		above := s.Between(in, ground) > box.Trigger
		if !above {
			armed = true
			return false
		}
		if batteryFed && s.Between(kill, ground) < s.Between(feed, ground)/2 {
			return false
		}
		if armed {
			armed = false
			r.spark.fired = s.Time()
			s.Refine(15e-6, 0.8e-3)
		}
		return s.Time()-r.spark.fired < gateFor
	}
}

// wireKill lays the circuit that stops the engine.
func (r *Rig) wireKill() {
	wire := r.node(check.KillWire)
	if r.parts.Kill.Stuck || !r.state.Key {
		r.join(wire, transient.Ground, machine.KillContact)
	}
	r.join(wire, transient.Ground, r.parts.Kill.Chafed)
}

// sparkGap is the plug's gap: it breaks down at a voltage and burns until its
// current dies.
type sparkGap struct {
	burns  bool
	sparks int // those that one discharge strikes again count once
	last   float64
	fired  float64 // when the box fired last
	peak   float64
}

func (r *Rig) wireSpark() {
	p := r.parts.Spark
	lead, end := r.node(check.SparkLead), r.node(check.CapEnd)
	r.wireSparkCoils(lead)
	if r.state.Off != check.SparkPlugOff {
		r.join(lead, end, p.Cap)
	}
	if r.state.Off != check.CapOff {
		r.join(end, transient.Ground, p.Fouling)
	}
	gap := &r.spark
	gap.last, gap.fired = -1, -1
	r.c.Switch(end, transient.Ground, sparkOhms, func(s *transient.State) bool {
		v := math.Abs(s.Volts(end))
		gap.peak = max(gap.peak, v)
		switch {
		case !gap.burns && v > p.Kilovolts*1e3:
			gap.burns = true
			if s.Time()-gap.last > sparkTime {
				gap.sparks++
			}
			gap.last = s.Time()
		case gap.burns && v < sparkOhms*sparkAmps:
			gap.burns = false
		}
		return gap.burns
	})
}

// A burning spark is a resistance that goes out below a current. Assumptions, no
// source.
const (
	sparkOhms = 5e3
	sparkAmps = 5e-3
	sparkTime = 2e-3 // s, longer than one discharge
)
