package check

import (
	"fmt"

	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// Method is a group of checks that a plan holds only when asked for: a better
// way to measure with the same meter.
type Method string

// Methods.
const (
	// VoltAmp measures milliohms: a bulb sets a current through a known resistor
	// and the winding, and the drops over both are compared.
	VoltAmp Method = "volt-amp"
	// HotWinding reads ohms again right after a run.
	HotWinding Method = "hot-winding"
	// PeakHold reads the height of pulses through an adapter.
	PeakHold Method = "peak-hold"
	// ResistorCheck is part of the meter's self-check.
	ResistorCheck Method = "resistor-check"
)

// Methods lists those that a build has something to measure for.
func Methods(b Build) []Method {
	out := []Method{VoltAmp, HotWinding}
	if b.Exciter || b.Pickup {
		out = append(out, PeakHold)
	}
	return out
}

// checks are those of the method, beside the first checks of a plan.
func (m Method) checks(b Build, first []Check) []Check {
	var out []Check
	switch m {
	case VoltAmp:
		out = voltAmpChecks(b)
	case HotWinding:
		out = hotChecks(first)
	case PeakHold:
		out = peakChecks(b)
	case ResistorCheck:
		out = []Check{knownResistor()}
	}
	for i := range out {
		out[i].Method = m
	}
	return out
}

// voltAmpChecks reads, for each winding, the drop over the known resistor and
// then that over the winding, both on the millivolt range.
func voltAmpChecks(b Build) []Check {
	if b.GroundedEnd() {
		return dropsOf("1-core", Charge(1), Core, []int{1})
	}
	var out []Check
	for _, p := range b.Pairs() {
		out = append(out, dropsOf(fmt.Sprintf("%d-%d", p[0], p[1]), Charge(p[0]), Charge(p[1]), p[:])...)
	}
	return out
}

func dropsOf(name string, red, black Terminal, leads []int) []Check {
	drop := Check{
		Part: ChargeWinding, Function: meter.VoltsDC, Expected: 0.15, Minutes: 1, Leads: leads, Feeds: true,
		Traps:    []Trap{ProbesInside, ReadTogether, WarmBulb},
		Cautions: []Caution{BulbAlways, ProbesOff, BatteryShort, BatteryGas, HotBulb, LowRangeDies},
	}
	known, winding := drop, drop
	known.ID, known.Measures, known.Red, known.Black = ID("volt-amp-known-"+name), spec.ResistorDrop, ResistorA, ResistorB
	winding.ID, winding.Measures, winding.Red, winding.Black = ID("volt-amp-winding-"+name), spec.WindingDrop, red, black
	return []Check{known, winding}
}

// hotChecks repeat cold readings of the plan at the same terminals. One run
// serves them all.
func hotChecks(first []Check) []Check {
	var out []Check
	for _, c := range first {
		switch c.Measures {
		case spec.PickupResistance, spec.ExciterResist, spec.ChargePair, spec.ChargeGrounded:
			out = append(out, hot(c))
		}
	}
	if len(out) > 0 {
		out[0].Minutes = 12
	}
	return out
}

func hot(cold Check) Check {
	return Check{
		ID: "hot-" + cold.ID, Measures: spec.HotResistance, Part: cold.Part, Function: meter.Ohms, Expected: cold.Expected * 1.5,
		Red: cold.Red, Black: cold.Black, Leads: cold.Leads, Minutes: 1, Feeds: true,
		Traps:    []Trap{CooledDown, StillPlugged, ClipsTouch},
		Cautions: []Caution{HotParts, RotatingParts, ExhaustIndoor, InNeutral, ShockExciter, ShockIgnition, KeyOff},
	}
}

func peakChecks(b Build) []Check {
	peak := Check{
		Function: meter.VoltsDC, Expected: 400, Plug: Together, Engine: Cranking, Minutes: 3, PeakHold: true,
		Traps: []Trap{AdapterTurned, LowInput, WeakBattery, ClipsTouch},
		Cautions: []Caution{ShockExciter, ShockIgnition, StoredCharge, AdapterRating, MeterRating, InNeutral, RotatingParts,
			ExhaustIndoor, BatteryGas},
	}
	var out []Check
	add := func(id ID, m spec.Measurand, p Part, expected float64, red, black Terminal) {
		c := peak
		c.ID, c.Measures, c.Part, c.Expected, c.Red, c.Black = id, m, p, expected, red, black
		out = append(out, c)
	}
	if b.Exciter {
		add("exciter-peak", spec.ExciterPeak, Exciter, 400, ExciterLead, Core)
	}
	if b.Pickup {
		add("pickup-peak", spec.PickupPeak, Pickup, 15, PickupA, PickupB)
	}
	add("box-peak", spec.BoxPeak, IgnitionBox, 400, BoxOutput, Core)
	return out
}
