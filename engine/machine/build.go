// Package machine is a virtual machine: how its generator, regulator, battery
// and ignition are built and joined, what each part measures, and what a fault
// does to it. From that it works out, by formulas, what a meter would show at
// any check. Everything inside is in SI units; temperatures are in °C.
//
// A fault changes parts (a wire's resistance, a flux, a diode), never a reading.
package machine

import (
	"fmt"

	"coilbook/engine/check"
)

// Connection is how the charge winding is joined to its leads.
type Connection string

// Connections. A grounded end has its other end on the core.
const (
	Star        Connection = "star"
	Delta       Connection = "delta"
	SinglePhase Connection = "single-phase"
	GroundedEnd Connection = "grounded-end"
	TwoPhase    Connection = "two-phase" // two windings, each with two leads
)

// Phases is how many windings there are.
func (c Connection) Phases() int {
	return map[Connection]int{Star: 3, Delta: 3, SinglePhase: 1, GroundedEnd: 1, TwoPhase: 2}[c]
}

// Leads is how many charge leads come out.
func (c Connection) Leads() int {
	return map[Connection]int{Star: 3, Delta: 3, SinglePhase: 2, GroundedEnd: 1, TwoPhase: 4}[c]
}

// Regulating is how a regulator-rectifier keeps the voltage down.
type Regulating string

// Ways of regulating. A shunt regulator shorts the leads to its ground, a series
// regulator stops to conduct, both behind a full bridge; a half-wave regulator is
// a series regulator on one lead of a winding whose other end is grounded.
const (
	Shunt    Regulating = "shunt"
	Series   Regulating = "series"
	HalfWave Regulating = "half-wave"
)

// Feed is where the ignition box takes its power from.
type Feed string

// Feeds.
const (
	ACFed      Feed = "ac-fed"      // an exciter coil
	BatteryFed Feed = "battery-fed" // the switched supply
)

// Chemistry is the kind of the battery.
type Chemistry string

// Chemistries.
const (
	Flooded Chemistry = "flooded"
	AGM     Chemistry = "agm"
	LFP     Chemistry = "lfp"
)

// Build is a machine's architecture.
type Build struct {
	MagnetPoles int        // even, 2 to 36
	StatorPoles int        // 1 to 36, the wrapped exciter pole with them
	Charge      Connection // of the charge winding
	Lighting    bool       // a lighting winding with one end grounded
	Regulating  Regulating
	Battery     Chemistry
	Volts       int // of the battery, 6 or 12
	Ignition    Feed
	Pickups     int  // 1 or 2
	GroundLead  bool // a lead of the plug that goes to the core
	Kick        bool // started by foot: no starter
}

// Usual is the architecture that check.DefaultBuild is seen as from outside.
func Usual() Build {
	return Build{
		MagnetPoles: 12, StatorPoles: 12, Charge: Star, Regulating: Shunt, Battery: AGM, Volts: 12,
		Ignition: ACFed, Pickups: 1, GroundLead: true,
	}
}

// Exciter reports whether a pole is wrapped to feed the ignition box.
func (b Build) Exciter() bool { return b.Ignition == ACFed }

// Known is what a user sees of the build.
func (b Build) Known() check.Build {
	return check.Build{
		StatorPoles: b.StatorPoles, ChargeLeads: b.Charge.Leads(), Exciter: b.Exciter(),
		Pickup: b.Pickups > 0, GroundLead: b.GroundLead,
	}
}

// Valid says what is impossible about a build, or nil.
func (b Build) Valid() error {
	switch {
	case b.MagnetPoles < 2 || b.MagnetPoles > 36 || b.MagnetPoles%2 != 0:
		return fmt.Errorf("magnet poles are %d: give an even number from 2 to 36", b.MagnetPoles)
	case b.StatorPoles < check.MinPoles || b.StatorPoles > check.MaxPoles:
		return fmt.Errorf("stator poles are %d: give a number from %d to %d", b.StatorPoles, check.MinPoles, check.MaxPoles)
	case b.Charge.Phases() == 0:
		return fmt.Errorf("charge is %q: use star, delta, single-phase, grounded-end or two-phase", b.Charge)
	case b.Regulating != Shunt && b.Regulating != Series && b.Regulating != HalfWave:
		return fmt.Errorf("regulating is %q: use shunt, series or half-wave", b.Regulating)
	case (b.Regulating == HalfWave) != (b.Charge == GroundedEnd):
		return fmt.Errorf("regulating is %q on a %s winding: half-wave belongs to a grounded end and to nothing else", b.Regulating, b.Charge)
	case b.Battery != Flooded && b.Battery != AGM && b.Battery != LFP:
		return fmt.Errorf("battery is %q: use flooded, agm or lfp", b.Battery)
	case b.Volts != 6 && b.Volts != 12:
		return fmt.Errorf("volts are %d: use 6 or 12", b.Volts)
	case b.Ignition != ACFed && b.Ignition != BatteryFed:
		return fmt.Errorf("ignition is %q: use ac-fed or battery-fed", b.Ignition)
	case b.Pickups < 1 || b.Pickups > 2:
		return fmt.Errorf("pickups are %d: use 1 or 2", b.Pickups)
	}
	return nil
}
