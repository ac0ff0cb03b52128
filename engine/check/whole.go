package check

import (
	"fmt"
	"slices"

	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// Whole lists every check of a whole machine: those of the generator, and those
// of battery, regulator, wiring and ignition around it. A diagnosis picks from
// it; the order means nothing. Minutes: common practice, no source.
func Whole(b Build) []Check {
	out := []Check{leadZero()}
	if b.GroundLead {
		out = append(out, parted(coreContinuity()))
	}
	for _, c := range chargeChecks(b) {
		out = append(out, parted(c))
	}
	out = append(out, supplyChecks()...)
	out = append(out, outputChecks(b)...)
	out = append(out, diodeChecks(b)...)
	out = append(out, generatorSparkChecks(b)...)
	out = append(out, boxChecks(b)...)
	out = append(out, heldChecks(b)...)
	return append(out, lookChecks()...)
}

func parted(c Check) Check {
	c.Needs = []Access{SidePanel, PlugParted}
	return c
}

// heldChecks read the height of pulses, for those who have an adapter.
func heldChecks(b Build) []Check {
	out := peakChecks(b)
	for i := range out {
		c := &out[i]
		c.Method, c.Key, c.Minutes, c.Needs = PeakHold, true, 1, []Access{SidePanel, Helper, PeakAdapter}
		if c.Measures == spec.BoxPeak {
			c.Needs = []Access{Tank, Helper, PeakAdapter}
		}
	}
	return out
}

var (
	runningCautions  = []Caution{RotatingParts, ExhaustIndoor, InNeutral, HotParts, BatteryGas}
	crankingCautions = []Caution{RotatingParts, InNeutral, ShockIgnition, BatteryGas}
	ignitionCautions = []Caution{ShockExciter, ShockIgnition, MeterRating, InNeutral, RotatingParts, ExhaustIndoor, BatteryGas}
)

// supplyChecks are volts around the battery, and what flows with the key off.
func supplyChecks() []Check {
	volts := func(id ID, m spec.Measurand, p Part, red, black Terminal, e Engine, key bool, minutes, expected float64) Check {
		c := Check{
			ID: id, Measures: m, Part: p, Function: meter.VoltsDC, Expected: expected, Red: red, Black: black, Plug: Together, Engine: e,
			Key: key, Minutes: minutes, Needs: []Access{SidePanel}, Traps: []Trap{WrongSocket, PaintOrRust}, Cautions: []Caution{BatteryGas, BatteryShort},
		}
		switch e {
		case Stopped:
		case Cranking:
			c.Needs, c.Cautions = append(c.Needs, Helper), crankingCautions
		default:
			c.Needs, c.Cautions = append(c.Needs, EngineOn, Helper), runningCautions
		}
		return c
	}
	current := volts("key-off-current", spec.KeyOffCurrent, Wiring, MinusClamp, BatteryMinus, Stopped, false, 3, 1)
	current.Function = meter.AmpsDC
	current.Cautions = []Caution{BatteryShort, BatteryGas, KeyOff}
	return []Check{
		volts("battery-rest", spec.BatteryRest, Battery, BatteryPlus, BatteryMinus, Stopped, false, 0.5, 15),
		volts("battery-lamp", spec.BatteryLamp, Battery, BatteryPlus, BatteryMinus, Stopped, true, 0.5, 15),
		volts("battery-cranking", spec.BatteryCranking, Battery, BatteryPlus, BatteryMinus, Cranking, true, 1, 15),
		volts("battery-idle", spec.BatteryIdle, Battery, BatteryPlus, BatteryMinus, Idling, true, 1, 15),
		volts("battery-3000", spec.Battery3000, Battery, BatteryPlus, BatteryMinus, At3000, true, 1, 19),
		volts("battery-5000", spec.Battery5000, Battery, BatteryPlus, BatteryMinus, At5000, true, 1, 19),
		volts("drop-plus", spec.DropPlus, Wiring, RegulatorPlus, BatteryPlus, At5000, true, 1.5, 1.9),
		volts("drop-ground", spec.DropGround, Wiring, BatteryMinus, RegulatorBody, At5000, true, 1.5, 1.9),
		volts("drop-terminal", spec.DropTerminal, Wiring, BatteryPlus, PlusClamp, Cranking, true, 1, 1.9),
		volts("supply-key", spec.SupplyKey, Wiring, KeyOut, BatteryMinus, Stopped, true, 1, 15),
		current,
	}
}

// outputChecks are what the generator gives: unloaded, and across its plug.
func outputChecks(b Build) []Check {
	ac := Check{
		Part: ChargeWinding, Function: meter.VoltsAC, Expected: 60, Engine: At3000, Key: true, Minutes: 1,
		Needs: []Access{SidePanel, PlugParted, EngineOn, Helper}, Traps: []Trap{ClipsTouch}, Cautions: append([]Caution{ShockExciter}, runningCautions...),
	}
	var out []Check
	add := func(id ID, m spec.Measurand, red, black Terminal, leads ...int) *Check {
		c := ac
		c.ID, c.Measures, c.Red, c.Black, c.Leads = id, m, red, black, leads
		out = append(out, c)
		return &out[len(out)-1]
	}
	if b.GroundedEnd() {
		add("charge-ac-1-core", spec.ChargeAC, Charge(1), Core, 1)
	}
	for _, p := range b.Pairs() {
		add(ID(fmt.Sprintf("charge-ac-%d-%d", p[0], p[1])), spec.ChargeAC, Charge(p[0]), Charge(p[1]), p[0], p[1])
	}
	for lead := 1; lead <= b.ChargeLeads; lead++ {
		c := add(ID(fmt.Sprintf("plug-drop-%d", lead)), spec.PlugDrop, Charge(lead), RegulatorLead(lead), lead)
		c.Part, c.Plug, c.Engine, c.Expected, c.Needs = Wiring, Together, At5000, 1, []Access{SidePanel, EngineOn, Helper}
	}
	return out
}

// generatorSparkChecks are exciter and pickup, at rest, warm and cranking.
func generatorSparkChecks(b Build) []Check {
	var out []Check
	for _, c := range sparkChecks(b) {
		switch {
		case c.Instrument == FeelerGauge:
			c.Needs = []Access{FlywheelCover}
		case c.Engine == Cranking:
			c.Needs, c.Key = []Access{SidePanel, Helper}, true
		default:
			c = parted(c)
			warm := hot(c)
			warm.Method, warm.Needs, warm.Feeds = HotWinding, []Access{SidePanel, PlugParted, HotRide}, false
			out = append(out, warm)
		}
		out = append(out, c)
	}
	if b.Pickup {
		out = append(out, Check{
			ID: "pickup-core", Measures: spec.PickupToCore, Part: Pickup, Function: meter.Ohms, Expected: 1.9e6, Red: PickupA, Black: Core,
			Minutes: 0.5, Needs: []Access{SidePanel, PlugParted}, Traps: append([]Trap{FingersOnTips, PaintOrRust}, benchTraps...), Cautions: []Caution{HotParts, KeyOff},
		}, Check{
			ID: "pickup-cranking", Measures: spec.PickupCranking, Part: Pickup, Function: meter.VoltsAC, Expected: 1, Red: PickupA, Black: PickupB,
			Engine: Cranking, Key: true, Minutes: 1, Needs: []Access{SidePanel, PlugParted, Helper}, Traps: []Trap{WeakBattery, ClipsTouch}, Cautions: crankingCautions,
		})
	}
	pin := func(id ID, m spec.Measurand, generator, box Terminal) Check {
		return Check{
			ID: id, Measures: m, Part: Wiring, Function: meter.Ohms, Expected: 1, Red: generator, Black: box, Plug: Together, Minutes: 1,
			Needs: []Access{SidePanel}, Traps: []Trap{LeadsNotZeroed, PaintOrRust}, Cautions: []Caution{StoredCharge, KeyOff},
		}
	}
	if b.Pickup {
		out = append(out, pin("pin-pickup", spec.PinPickup, PickupA, BoxPickup))
	}
	if b.Exciter {
		out = append(out, pin("pin-exciter", spec.PinExciter, ExciterLead, BoxExciter), Check{
			ID: "exciter-free-cranking", Measures: spec.ExciterFree, Part: Exciter, Function: meter.VoltsAC, Expected: 150, Red: ExciterLead, Black: Core,
			Engine: Cranking, Key: true, Minutes: 1, Needs: []Access{SidePanel, PlugParted, Helper}, Traps: []Trap{WeakBattery, ClipsTouch}, Cautions: ignitionCautions,
		})
	}
	return out
}

// boxChecks are ignition box, kill circuit, coil and cap.
func boxChecks(b Build) []Check {
	ohms := func(id ID, m spec.Measurand, p Part, red, black Terminal, expected float64, needs ...Access) Check {
		return Check{
			ID: id, Measures: m, Part: p, Function: meter.Ohms, Expected: expected, Red: red, Black: black, Minutes: 1, Needs: needs,
			Traps: []Trap{LeadsNotZeroed, PaintOrRust, FingersOnTips}, Cautions: []Caution{StoredCharge, KeyOff},
		}
	}
	kill := ohms("kill-wire", spec.KillWire, KillCircuit, KillWire, Core, 1.9e6, SidePanel, PlugParted)
	kill.Key, kill.Cautions = true, []Caution{StoredCharge, ShockExciter, InNeutral}
	out := []Check{
		kill,
		ohms("box-ground", spec.BoxGround, Wiring, BoxGround, Core, 1, SidePanel),
		ohms("coil-primary", spec.CoilPrimary, IgnitionCoil, CoilPrimary, Core, 1, Tank),
		ohms("coil-secondary", spec.CoilSecondary, IgnitionCoil, SparkLead, Core, 15e3, Tank),
		ohms("plug-cap", spec.PlugCap, SparkPlug, CapScrew, CapEnd, 15e3, Tank),
		ohms("plug-leak", spec.PlugLeak, SparkPlug, PlugTop, PlugThread, 1.9e6, SparkPlugOut),
		{
			ID: "box-output", Measures: spec.BoxOutputAC, Part: IgnitionBox, Function: meter.VoltsAC, Expected: 100, Red: BoxOutput, Black: Core,
			Plug: Together, Engine: Cranking, Key: true, Minutes: 2, Needs: []Access{Tank, Helper}, Traps: []Trap{WeakBattery, ClipsTouch}, Cautions: ignitionCautions,
		},
	}
	for i := range out {
		out[i].Off = offFor[out[i].Measures]
	}
	for _, c := range out {
		if c.Measures == spec.CoilSecondary {
			warm := hot(c)
			warm.Method, warm.Needs, warm.Feeds = HotWinding, []Access{Tank, HotRide}, false
			out = append(out, warm)
		}
	}
	if !b.Exciter {
		out = append(out, Check{
			ID: "box-feed", Measures: spec.BoxFeed, Part: Wiring, Function: meter.VoltsDC, Expected: 15, Red: BoxFeed, Black: BoxGround, Plug: Together,
			Key: true, Minutes: 1, Needs: []Access{SidePanel}, Traps: []Trap{WrongSocket}, Cautions: []Caution{BatteryShort},
		})
	}
	return out
}

// offFor is what has to be off so that a part is read by itself.
var offFor = map[spec.Measurand]Off{
	spec.KillWire: KillWireOff, spec.CoilPrimary: CoilLeadOff, spec.CoilSecondary: CapOff, spec.PlugCap: CapOff, spec.PlugLeak: SparkPlugOff,
}

// lookChecks are seen, not measured: a question with yes or no for an answer.
func lookChecks() []Check {
	look := func(id ID, l Look, p Part, e Engine, minutes float64, needs ...Access) Check {
		c := Check{ID: id, Measures: spec.Measurand(l), Part: p, Instrument: Eyes, Looks: l, Plug: Together, Engine: e, Key: e != Stopped,
			Minutes: minutes, Needs: needs, Traps: []Trap{PaintOrRust}, Cautions: []Caution{KeyOff}}
		if e != Stopped {
			c.Traps, c.Cautions = []Trap{WeakBattery}, ignitionCautions
		}
		if slices.Contains(needs, PlugParted) {
			c.Plug = Apart
		}
		return c
	}
	warm := look("spark-warm", SparkWarm, IgnitionBox, Cranking, 2, SparkPlugOut, Helper, HotRide)
	warm.Hot = true
	return []Check{
		look("fuse", FuseBlown, Wiring, Stopped, 1, SidePanel),
		look("plug-burnt", PlugBurnt, Wiring, Stopped, 1, SidePanel, PlugParted),
		look("spark", SparkAtPlug, SparkPlug, Cranking, 1.5, SparkPlugOut, Helper),
		look("spark-good-plug", SparkAtGoodPlug, SparkPlug, Cranking, 2, SparkPlugOut, Helper),
		look("spark-bare-lead", SparkAtLead, IgnitionCoil, Cranking, 2, Tank, Helper),
		look("spark-kill-off", SparkWithoutKill, KillCircuit, Cranking, 2, SidePanel, SparkPlugOut, Helper),
		warm,
	}
}
