package check

import (
	"fmt"

	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// diodeChecks read the regulator's valves one by one with the meter's diode range,
// each in the direction in which a sound diode conducts: a broken one blocks that
// way, a shorted one drops next to nothing. A single lead whose other end sits on
// the core is rectified by one thyristor and has no lower diode.
func diodeChecks(b Build) []Check {
	var out []Check
	add := func(id string, m spec.Measurand, lead int, red, black Terminal) {
		out = append(out, Check{
			ID: ID(fmt.Sprintf("%s-%d", id, lead)), Measures: m, Part: Regulator, Function: meter.Diode, Expected: 1, Red: red, Black: black,
			Plug: RegulatorApart, Minutes: 0.3, Leads: []int{lead}, Needs: []Access{SidePanel, RegulatorParted},
			Traps:    []Trap{StillFed, ProbesTurned, PaintOrRust, ClipsTouch},
			Cautions: []Caution{KeyOff, BatteryShort, HotParts},
		})
	}
	for lead := 1; lead <= b.ChargeLeads; lead++ {
		add("diode-plus", spec.DiodeToPlus, lead, RegulatorLead(lead), RegulatorPlus)
	}
	if b.GroundedEnd() {
		return out
	}
	for lead := 1; lead <= b.ChargeLeads; lead++ {
		add("diode-ground", spec.DiodeFromGround, lead, RegulatorBody, RegulatorLead(lead))
	}
	return out
}
