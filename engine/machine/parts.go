package machine

import "math"

// Coil is a winding on a pole or on several: what is wound of it and what has
// become of it.
type Coil struct {
	Turns  float64
	Ohms   float64 // of the wire at 20 °C
	Henry  float64
	Joint  float64 // of joints in series, Ω; +Inf where the wire is broken
	Short  Short
	Ground Touch
}

// Short is turns that are connected across: Share of all turns of the coil, over
// a contact of Ohms. Piles is how many poles the coil is spread over; shorted
// turns couple with their own pile alone.
type Short struct {
	Share float64
	Ohms  float64
	Piles int
}

// Touch is where a wire lies on the core: At is the share of the wire between its
// first end and the place, Ohms the contact. No touch is +Inf ohms.
type Touch struct {
	At   float64
	Ohms float64
}

// Untouched is no touch.
func Untouched() Touch { return Touch{Ohms: math.Inf(1)} }

// Bridge is a contact between two charge leads, counted from 1; none is +Inf.
type Bridge struct {
	From, To int
	Ohms     float64
}

// Contact is a connector, a terminal or a wire that is one: its resistance, and
// by how much of it that comes and goes while the machine shakes.
type Contact struct {
	Ohms  float64 // +Inf is open
	Loose float64 // Ω more at the worst instant; 0 is firm
}

// WindingFactor is the share of the flux that a winding on poles links, of what
// full coils would. The usual figure for such stators, from memory.
const WindingFactor = 0.95

// Magnets are the flywheel's.
type Magnets struct {
	Flux     float64 // of one pole, Wb, at 20 °C
	PerKelv  float64 // relative change, below zero
	Strength float64 // 1 is sound
}

// Reluctor is the nose that passes the pickup.
type Reluctor struct {
	Flux   float64 // its change of the pickup's flux at the usual gap, Wb
	Arc    float64 // degrees of turn between its edges
	Edge   float64 // degrees over which an edge changes the flux
	Usual  float64 // gap that the flux is given for, m
	Gap    float64 // m
	Lambda float64 // length over which a gap acts, m: flux goes with exp(-2π·gap/Lambda)
}

// Junction is a diode or thyristor when it conducts: knee and slope.
type Junction struct{ Volts, Ohms float64 }

// Silicon is a junction at the small currents of a diode range: the volts across it
// at 1 mA and 20 °C, and its emission coefficient. Above 0.1 mA ten times the
// current adds some 60 mV times that coefficient.
type Silicon struct{ Volts, Emission float64 }

// Diode is what has become of one diode of the bridge.
type Diode int

// States of a diode.
const (
	DiodeGood Diode = iota
	DiodeOpen
	DiodeShorted
)

// Thyristors is what the regulator's thyristors do.
type Thyristors int

// What they do.
const (
	Regulate Thyristors = iota
	NeverFire
	AlwaysFire
)

// Regulator is the regulator-rectifier. Upper diodes go from a lead to plus, lower
// ones from ground to a lead, both by lead.
type Regulator struct {
	SetPoint     float64  // V between its plus and its ground
	Junction     Junction // at the currents of charging
	Silicon      Silicon  // of the same valves, at those of a meter
	Upper, Lower [4]Diode
	Thyristors   Thyristors
	Ground       Contact // its body or ground wire to the frame
}

// Battery is what stands between its posts.
type Battery struct {
	Charge  float64 // state of charge, 0 to 1
	AmpHour float64
	Ohms    float64 // of electrolyte, plates and links
	Accept  float64 // Ω more on charge: what it takes up for a volt above rest
	Layer   float64 // F across Accept
	Shorted int     // dead cells
}

// Harness joins the parts.
type Harness struct {
	ChargePins [4]Contact // of the generator's plug, by charge lead
	OtherPins  Contact    // of the same plug: exciter, pickup
	Feed       Contact    // from the regulator's plus to the fuse
	Fuse       Contact
	Plus       Contact // clamp on the battery's plus post
	Minus      Contact // clamp on the minus post, and the cable to the core
	Strap      Contact // from the core to the frame
	Key        Contact // the switch and its wires
	GroundLead Contact // from the plug's ground lead to the core
	Drain      float64 // A that flows with the key off
	Lamp       float64 // Ω of what the key turns on
}

// Starter is a load that turns the engine.
type Starter struct {
	Ohms    float64 // V over A while it cranks
	PerVolt float64 // rpm for a volt at the battery; a kick starter's rpm over the nominal volts
	Ripple  float64 // share of the speed that compression takes and gives
}

// Box is the ignition box.
type Box struct {
	Farad   float64 // of its capacitor
	Trigger float64 // V of the pickup that fires it
	Input   float64 // Ω that the pickup sees
	Clamp   float64 // V that its capacitor never passes
	Volts   float64 // that a battery-fed box charges to, at the nominal voltage
	Source  float64 // Ω behind which it does so
	Draw    float64 // Ω of a battery-fed box on its supply
	Dead    bool    // never fires
	Shorted bool    // its input diode conducts both ways
	Ground  Contact
	Feed    Contact // battery-fed: from the key
}

// Kill is the circuit that stops the engine by grounding the box.
type Kill struct {
	Stuck  bool    // the switch stays closed
	Chafed float64 // Ω from the wire to the core; +Inf is sound
}

// Spark is ignition coil, cap and plug.
type Spark struct {
	Primary, Secondary Coil
	Coupling           float64
	Cap                float64 // Ω of the cap's resistor; +Inf is broken
	Fouling            float64 // Ω across the plug's gap
	Kilovolts          float64 // at which the gap breaks down
}

// Machine is one machine.
type Machine struct {
	Build     Build
	Ambient   float64 // °C
	Rise      float64 // K by which windings are warmer than that when hot
	Magnets   Magnets
	Phases    [3]Coil // those that the build has
	Bridge    Bridge
	Neutral   Touch // of a star's neutral, At is unused
	Lighting  Coil
	Exciter   Coil
	Pickups   [2]Coil
	Reluctor  Reluctor
	Regulator Regulator
	Battery   Battery
	Harness   Harness
	Starter   Starter
	Box       Box
	Kill      Kill
	Spark     Spark
	Faults    []Fault // those that have struck, for who asks
	hotOnly   []Fault
	runs      float64 // rpm of an engine that runs by itself; 0 is as its state says
}
