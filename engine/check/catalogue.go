package check

import (
	"fmt"
	"slices"

	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// Aim is what the user came for; it decides which checks come and in what order.
type Aim string

// Aims.
const (
	Bench        Aim = "bench"
	NoCharge     Aim = "no-charge"
	Overcharges  Aim = "overcharges"
	FlatStanding Aim = "flat-after-standing"
	NoSpark      Aim = "no-spark"
	WeakSpark    Aim = "weak-spark"
	CutsOutHot   Aim = "cuts-out-hot"
	EveryPart    Aim = "" // the same checks as Bench
	SelfCheck    Aim = "meter"
)

// Aims lists what a user can come for, but for EveryPart, which only old files hold.
func Aims() []Aim {
	return []Aim{Bench, NoCharge, Overcharges, FlatStanding, NoSpark, WeakSpark, CutsOutHot, SelfCheck}
}

// Plan lists the checks for a build in the order of least work: lead zero
// first, then one set-up after the other (plug apart, gauge, cranking), then the
// methods asked for. Minutes, traps and order: common practice, no source.
func Plan(b Build, aim Aim, methods ...Method) []Check {
	first := basic(b, aim)
	plan := first
	for _, m := range methods {
		if slices.Contains(methodsFor(b, aim), m) {
			plan = append(plan, m.checks(b, first)...)
		}
	}
	return plan
}

// methodsFor lists what has something to measure: a stored plan may ask for more.
func methodsFor(b Build, aim Aim) []Method {
	if aim == SelfCheck {
		return []Method{ResistorCheck}
	}
	return Methods(b)
}

func basic(b Build, aim Aim) []Check {
	if aim == SelfCheck {
		return selfChecks()
	}
	plan := []Check{leadZero()}
	if b.GroundLead {
		plan = append(plan, coreContinuity())
	}
	charge := chargeChecks(b)
	spark := sparkChecks(b)
	switch aim {
	case NoCharge, Overcharges, FlatStanding:
		return append(plan, charge...)
	case NoSpark, WeakSpark, CutsOutHot:
		return append(plan, spark...)
	}
	plan = append(plan, charge...)
	return append(plan, spark...)
}

// Find gives the check with an id, whether or not today's plan holds it.
func Find(plan []Check, id ID) (Check, bool) {
	for _, c := range plan {
		if c.ID == id {
			return c, true
		}
	}
	return Check{}, false
}

// Charge is the terminal of a charge lead, counted from 1.
func Charge(lead int) Terminal { return Terminal(fmt.Sprintf("charge-%d", lead)) }

// RegulatorLead is the other side of the plug from a charge lead, counted from 1.
func RegulatorLead(lead int) Terminal { return Terminal(fmt.Sprintf("regulator-%d", lead)) }

var benchTraps = []Trap{StillPlugged, MetalBench, ClipsTouch}

func leadZero() Check {
	return Check{
		ID: "lead-zero", Measures: spec.LeadZero, Part: MeterLeads, Function: meter.Ohms, Expected: 10,
		Red: OtherProbe, Black: OtherProbe, Minutes: 0.5, Traps: []Trap{FingersOnTips, WrongSocket}, Cautions: []Caution{KeyOff},
	}
}

func coreContinuity() Check {
	return Check{
		ID: "core-continuity", Measures: spec.CoreContinuity, Part: CoreGround, Function: meter.Ohms, Expected: 10,
		Red: GroundLead, Black: Core, Minutes: 0.5, Traps: []Trap{PaintOrRust, StillPlugged, ClipsTouch}, Cautions: []Caution{HotParts, KeyOff},
	}
}

func chargeChecks(b Build) []Check {
	if b.GroundedEnd() {
		return []Check{{
			ID: "charge-grounded-1", Measures: spec.ChargeGrounded, Part: ChargeWinding, Function: meter.Ohms, Expected: 10,
			Red: Charge(1), Black: Core, Minutes: 0.5, Traps: append([]Trap{LeadsNotZeroed, PaintOrRust}, benchTraps...),
			Cautions: []Caution{HotParts, KeyOff}, Leads: []int{1},
		}}
	}
	var checks []Check
	for _, p := range b.Pairs() {
		checks = append(checks, chargePair(p))
	}
	for lead := 1; lead <= b.ChargeLeads; lead++ {
		checks = append(checks, chargeToCore(lead))
	}
	if b.Phases() == 2 {
		checks = append(checks, betweenPhases())
	}
	return checks
}

func chargePair(p [2]int) Check {
	return Check{
		ID: ID(fmt.Sprintf("charge-pair-%d-%d", p[0], p[1])), Measures: spec.ChargePair, Part: ChargeWinding,
		Function: meter.Ohms, Expected: 10, Red: Charge(p[0]), Black: Charge(p[1]), Minutes: 0.5,
		Traps: append([]Trap{LeadsNotZeroed}, benchTraps...), Cautions: []Caution{HotParts, KeyOff}, Leads: p[:],
	}
}

func chargeToCore(lead int) Check {
	return Check{
		ID: ID(fmt.Sprintf("charge-core-%d", lead)), Measures: spec.ChargeToCore, Part: ChargeWinding,
		Function: meter.Ohms, Expected: 1.9e6, Red: Charge(lead), Black: Core, Minutes: 0.5,
		Traps: append([]Trap{FingersOnTips, PaintOrRust}, benchTraps...), Cautions: []Caution{HotParts, KeyOff}, Leads: []int{lead},
	}
}

func betweenPhases() Check {
	return Check{
		ID: "phase-to-phase", Measures: spec.PhaseToPhase, Part: ChargeWinding,
		Function: meter.Ohms, Expected: 1.9e6, Red: Charge(1), Black: Charge(3), Minutes: 0.5,
		Traps: append([]Trap{FingersOnTips}, benchTraps...), Cautions: []Caution{HotParts, KeyOff}, Leads: []int{1, 3},
	}
}

func sparkChecks(b Build) []Check {
	var checks []Check
	if b.Pickup {
		checks = append(checks, Check{
			ID: "pickup", Measures: spec.PickupResistance, Part: Pickup, Function: meter.Ohms, Expected: 190,
			Red: PickupA, Black: PickupB, Minutes: 1, Traps: append([]Trap{WarmWinding}, benchTraps...), Cautions: []Caution{HotParts, KeyOff},
		}, Check{
			ID: "pickup-gap", Measures: spec.PickupGap, Part: Pickup, Instrument: FeelerGauge,
			Red: ReluctorGap, Minutes: 3, Traps: []Trap{BentLeaf, SlackFlywheel}, Cautions: []Caution{RotatingParts, MagnetPull, KeyOff, HotParts},
		})
	}
	if b.Exciter {
		checks = append(checks, Check{
			ID: "exciter", Measures: spec.ExciterResist, Part: Exciter, Function: meter.Ohms, Expected: 1e3,
			Red: ExciterLead, Black: Core, Minutes: 1, Traps: append([]Trap{WarmWinding, PaintOrRust}, benchTraps...), Cautions: []Caution{HotParts, KeyOff},
		}, Check{
			ID: "exciter-cranking", Measures: spec.ExciterCranking, Part: Exciter, Function: meter.VoltsAC, Expected: 150,
			Red: ExciterLead, Black: Core, Plug: Together, Engine: Cranking, Minutes: 3,
			Traps:    []Trap{WeakBattery, ClipsTouch, PaintOrRust},
			Cautions: []Caution{ShockExciter, ShockIgnition, MeterRating, InNeutral, RotatingParts, ExhaustIndoor, BatteryGas},
		})
	}
	return checks
}
