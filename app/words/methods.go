package words

import "coilbook/engine/check"

// Method names a better way to measure.
func Method(m check.Method) string { return say(methods.of(m).name) }

// MethodHint says in one line what a method is good for.
func MethodHint(m check.Method) string { return say(methods.of(m).hint) }

// MethodNeeds lists what a method asks to have at hand.
func MethodNeeds(m check.Method) []string { return said(methods.of(m).needs) }

// MethodTime says how many checks a method adds and how long they take.
func MethodTime(checks []check.Check) string {
	minutes := 0.0
	for _, c := range checks {
		minutes += c.Minutes
	}
	return say("%s, about %s.", count(len(checks), "%d check", "%d checks"), count(int(minutes+0.5), "%d minute", "%d minutes"))
}

type methodWords struct {
	name, hint text
	needs      []text
}

var methods = table[check.Method, methodWords]{
	{check.VoltAmp, methodWords{
		name: "Milliohms with a bulb",
		hint: "Finds a few shorted turns that the ohm range cannot see.",
		needs: []text{
			"A charged 12 V battery",
			"A 5 A fuse in a holder",
			"A 12 V bulb, 3 to 21 W: a weaker one if the number runs over",
			"A resistor of known value, about the winding's ohms: 1 %, 5 W or more",
			"Wires with clips",
		},
	}},
	{check.HotWinding, methodWords{
		name:  "Ohms when hot",
		hint:  "Finds a winding that fails only when it is hot.",
		needs: []text{"A machine that runs for ten minutes, or until it fails", "Gloves", "The meter ready beside the machine"},
	}},
	{check.PeakHold, methodWords{
		name: "Peak volts with an adapter",
		hint: "Shows the height of ignition pulses, which ordinary AC volts miss.",
		needs: []text{
			"A peak-hold adapter: diode, capacitor and bleeder resistor",
			"Its ratings: capacitor 630 V or more, diode 1000 V or more",
			"A meter with 10 MΩ input, if you have one",
			"A charged starting battery, or a helper on the kick starter",
		},
	}},
	{check.ResistorCheck, methodWords{
		name:  "Ohm range against a known resistor",
		hint:  "Shows how true your meter's ohms are.",
		needs: []text{"A resistor of known value, 20 to 190 Ω, 1 % or better"},
	}},
}
