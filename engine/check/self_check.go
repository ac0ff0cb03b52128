package check

import (
	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// selfChecks learn about the meter from a battery and the meter's own leads.
func selfChecks() []Check {
	battery := Check{
		Part: MeterItself, Expected: 15, Red: BatteryPlus, Black: BatteryMinus, Minutes: 0.5, Feeds: true,
		Traps: []Trap{WrongSocket, FlatBattery}, Cautions: []Caution{BatteryShort, BatteryGas},
	}
	dc, ac, swapped := battery, battery, battery
	dc.ID, dc.Measures, dc.Function = "battery-dc", spec.BatteryVolts, meter.VoltsDC
	ac.ID, ac.Measures, ac.Function = "battery-ac", spec.BatteryOnAC, meter.VoltsAC
	swapped.ID, swapped.Measures, swapped.Function = "battery-ac-swapped", spec.BatteryOnAC, meter.VoltsAC
	swapped.Red, swapped.Black, swapped.Swapped = BatteryMinus, BatteryPlus, true
	return []Check{leadZero(), dc, ac, swapped}
}

// knownResistor compares the ohm range with a resistor whose value is printed
// on it.
func knownResistor() Check {
	return Check{
		ID: "known-resistor", Measures: spec.KnownResistor, Part: MeterItself, Function: meter.Ohms, Expected: 190,
		Red: ResistorA, Black: ResistorB, Minutes: 1, Feeds: true,
		Traps: []Trap{ResistorHeld, LeadsNotZeroed}, Cautions: []Caution{KeyOff},
	}
}
