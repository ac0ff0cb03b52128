// Package check is the catalogue of checks: for each, what it measures, where
// the probes go, what is plugged and what turns, dial, traps, cautions and
// minutes. It holds facts only; the sentences for people live with the app, so
// that a bench rig can be driven by the same facts.
package check

import (
	"math"

	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

// ID names a check, e.g. "charge-pair-1-2". It is stored in sessions for ever.
type ID string

// Terminal is a point that a probe touches.
type Terminal string

// The points the bench and connector checks touch. Charge leads are numbered
// from the left of the plug: charge-1 … charge-4.
const (
	Nowhere     Terminal = ""
	OtherProbe  Terminal = "other-probe"
	Core        Terminal = "core"
	GroundLead  Terminal = "ground-lead"
	PickupA     Terminal = "pickup-a"
	PickupB     Terminal = "pickup-b"
	ExciterLead Terminal = "exciter"
	ReluctorGap Terminal = "reluctor-gap"
	BoxOutput   Terminal = "box-output" // from the ignition box to the coil
)

// The points of better methods and of the meter's self-check.
const (
	BatteryPlus  Terminal = "battery-plus"
	BatteryMinus Terminal = "battery-minus"
	ResistorA    Terminal = "resistor-a"
	ResistorB    Terminal = "resistor-b"
)

// The other points of a whole machine. With the generator's plug apart, the
// charge leads and those of pickup and exciter are the generator's side of it;
// regulator-1 … regulator-4, box-exciter and box-pickup the other side.
const (
	PlusClamp     Terminal = "plus-clamp"     // the cable on the battery's plus post
	MinusClamp    Terminal = "minus-clamp"    // the cable on its minus post
	FuseIn        Terminal = "fuse-in"        // the harness side of the main fuse
	FuseOut       Terminal = "fuse-out"       // its battery side
	RegulatorPlus Terminal = "regulator-plus" // where it feeds the harness
	RegulatorBody Terminal = "regulator-body" // its ground
	Frame         Terminal = "frame"          // bare metal of the frame
	KeyOut        Terminal = "key-out"        // what the key turns on
	LightingLead  Terminal = "lighting"       // of a lighting winding
	PickupTwo     Terminal = "pickup-2"       // live lead of a second pickup
	BoxExciter    Terminal = "box-exciter"    // where the box takes the exciter's lead
	BoxPickup     Terminal = "box-pickup"     // where it takes the pickup's
	BoxGround     Terminal = "box-ground"     // its ground pin
	BoxFeed       Terminal = "box-feed"       // its supply, if the battery feeds it
	KillWire      Terminal = "kill-wire"      // where it is grounded to stop
	CoilPrimary   Terminal = "coil-primary"   // the ignition coil's low-voltage pin
	SparkLead     Terminal = "spark-lead"     // the bare end of the high-voltage lead
	CapScrew      Terminal = "cap-screw"      // where the plug cap takes that lead
	CapEnd        Terminal = "cap-end"        // where the cap grips the plug
	PlugTop       Terminal = "plug-top"       // the spark plug's, where the cap grips it
	PlugThread    Terminal = "plug-thread"    // its metal that screws into the engine
)

// Plug says whether the generator's plug is apart or together.
type Plug int

// States of the plug.
const (
	Apart Plug = iota
	Together
	RegulatorApart // apart, and every other plug of the regulator too
)

// Engine says what the engine does during the check.
type Engine int

// States of the engine.
const (
	Stopped Engine = iota
	Cranking
	Idling
	At3000 // rpm
	At5000 // rpm
)

// Off is a part or a wire that is taken off for a check, so that nothing else is
// read with it.
type Off string

// What is taken off.
const (
	KillWireOff  Off = "kill-wire"  // off the ignition box
	CoilLeadOff  Off = "coil-lead"  // off the ignition coil's small pin
	CapOff       Off = "spark-cap"  // off the spark lead and off the plug
	SparkPlugOff Off = "spark-plug" // out of its cap
)

// Instrument is what the reading is taken with.
type Instrument int

// Instruments.
const (
	Multimeter Instrument = iota
	FeelerGauge
	Eyes // a look: yes or no
)

// Check is one reading to take. Expected is the size of reading that the range
// is chosen for, in SI.
type Check struct {
	ID         ID
	Measures   spec.Measurand
	Part       Part
	Instrument Instrument
	Function   meter.Function
	Expected   float64
	Red, Black Terminal
	Plug       Plug
	Engine     Engine
	Minutes    float64
	Traps      []Trap
	Cautions   []Caution
	Leads      []int // the charge leads concerned, from 1
	Method     Method
	// Feeds says that the reading counts only together with others: by itself it
	// has no limit and no verdict.
	Feeds bool
	// PeakHold says that a peak-hold adapter stands between probes and meter.
	PeakHold bool
	// Swapped says that the leads are on the wrong way round on purpose.
	Swapped bool
	// Off is what is taken off besides the generator's plug.
	Off Off
	// Key says that the key is on; Hot that the engine is warm from a ride.
	Key, Hot bool
	Needs    []Access // what must be got at or set going before
	Looks    Look     // the question, where eyes are the instrument
}

// Kind is the quantity of the reading.
func (c Check) Kind() quantity.Kind {
	if c.Instrument == FeelerGauge {
		return quantity.Length
	}
	return c.Function.Kind()
}

// Dial is the setting for a given meter: which range, and the unit of the
// digits to expect. ok is false for a gauge or a meter without the function.
func (c Check) Dial(m meter.Meter) (r meter.Range, ok bool) {
	if c.Instrument != Multimeter {
		return meter.Range{}, false
	}
	return m.RangeFor(c.Function, c.Expected)
}

// Unit is the unit a reading of this check is typed in unless the user says
// otherwise. A meter that picks its range itself shows the unit too, so the
// usual one is no more than a start.
func (c Check) Unit(m meter.Meter) quantity.Unit {
	if r, ok := c.Dial(m); ok && !m.Auto {
		return r.Unit
	}
	return quantity.Units(c.Kind())[0]
}

// Part is what a check speaks about.
type Part string

// Parts of the generator and the meter itself.
const (
	MeterLeads    Part = "meter-leads"
	ChargeWinding Part = "charge-winding"
	Pickup        Part = "pickup"
	Exciter       Part = "exciter"
	CoreGround    Part = "core-ground"
	IgnitionBox   Part = "ignition-box"
	MeterItself   Part = "meter"
)

// The other parts of a machine.
const (
	Flywheel     Part = "flywheel"
	Regulator    Part = "regulator"
	Battery      Part = "battery"
	Wiring       Part = "wiring" // connectors, wires, fuse, grounds
	KillCircuit  Part = "kill-circuit"
	IgnitionCoil Part = "ignition-coil"
	SparkPlug    Part = "spark-plug" // with its cap
)

// Trap is a way to get a false reading.
type Trap string

// Traps. Common practice, no source.
const (
	MetalBench     Trap = "metal-bench"
	FingersOnTips  Trap = "fingers-on-tips"
	ClipsTouch     Trap = "clips-touch"
	StillPlugged   Trap = "still-plugged"
	PaintOrRust    Trap = "paint-or-rust"
	WarmWinding    Trap = "warm-winding"
	WeakBattery    Trap = "weak-battery"
	SlackFlywheel  Trap = "slack-flywheel"
	BentLeaf       Trap = "bent-leaf"
	LeadsNotZeroed Trap = "leads-not-zeroed"
	WrongSocket    Trap = "wrong-socket"
	ProbesInside   Trap = "probes-inside-clips"
	ReadTogether   Trap = "read-together"
	WarmBulb       Trap = "warm-bulb"
	CooledDown     Trap = "cooled-down"
	AdapterTurned  Trap = "adapter-turned"
	LowInput       Trap = "low-input"
	FlatBattery    Trap = "flat-battery"
	ResistorHeld   Trap = "resistor-held"
	StillFed       Trap = "regulator-still-joined"
	ProbesTurned   Trap = "probes-turned"
)

// Caution is a way to get hurt or to ruin the meter.
type Caution string

// Cautions.
const (
	ShockExciter  Caution = "shock-exciter"
	ShockIgnition Caution = "shock-ignition"
	MeterRating   Caution = "meter-rating"
	RotatingParts Caution = "rotating-parts"
	InNeutral     Caution = "in-neutral"
	ExhaustIndoor Caution = "exhaust-indoors"
	BatteryGas    Caution = "battery-gas"
	HotParts      Caution = "hot-parts"
	MagnetPull    Caution = "magnet-pull"
	KeyOff        Caution = "key-off"
	BulbAlways    Caution = "bulb-always"
	ProbesOff     Caution = "probes-off-first"
	BatteryShort  Caution = "battery-short"
	HotBulb       Caution = "hot-bulb"
	StoredCharge  Caution = "stored-charge"
	AdapterRating Caution = "adapter-rating"
	LowRangeDies  Caution = "low-range-dies"
)

// Toward chooses the range by a limit: one that still shows a reading somewhat
// over the upper limit, so that "out of spec" is seen as a number.
func (c Check) Toward(l spec.Limit) Check {
	if !l.Open && !l.Ratio && l.High > 0 && !math.IsInf(l.High, 1) {
		c.Expected = l.High * 1.1
	}
	return c
}
