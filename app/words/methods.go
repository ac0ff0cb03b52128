package words

import "coilbook/engine/check"

// Method names a better way to measure.
func Method(m check.Method) string { return methods[m].name }

// MethodHint says in one line what a method is good for.
func MethodHint(m check.Method) string { return methods[m].hint }

// MethodNeeds lists what a method asks to have at hand.
func MethodNeeds(m check.Method) []string { return methods[m].needs }

// MethodTime says how many checks a method adds and how long they take.
func MethodTime(checks []check.Check) string {
	minutes := 0.0
	for _, c := range checks {
		minutes += c.Minutes
	}
	return say("%s, about %s.", count(len(checks), "%d check", "%d checks"), count(int(minutes+0.5), "%d minute", "%d minutes"))
}

var methods = map[check.Method]struct {
	name, hint string
	needs      []string
}{
	check.VoltAmp: {
		name: say("Milliohms with a bulb"),
		hint: say("Finds a few shorted turns that the ohm range cannot see."),
		needs: []string{
			say("A charged 12 V battery"),
			say("A 5 A fuse in a holder"),
			say("A 12 V bulb, 3 to 21 W: a weaker one if the number runs over"),
			say("A resistor of known value, about the winding's ohms: 1 %, 5 W or more"),
			say("Wires with clips"),
		},
	},
	check.HotWinding: {
		name:  say("Ohms when hot"),
		hint:  say("Finds a winding that fails only when it is hot."),
		needs: []string{say("A machine that runs for ten minutes, or until it fails"), say("Gloves"), say("The meter ready beside the machine")},
	},
	check.PeakHold: {
		name: say("Peak volts with an adapter"),
		hint: say("Shows the height of ignition pulses, which ordinary AC volts miss."),
		needs: []string{
			say("A peak-hold adapter: diode, capacitor and bleeder resistor"),
			say("Its ratings: capacitor 630 V or more, diode 1000 V or more"),
			say("A meter with 10 MΩ input, if you have one"),
			say("A charged starting battery, or a helper on the kick starter"),
		},
	},
	check.ResistorCheck: {
		name:  say("Ohm range against a known resistor"),
		hint:  say("Shows how true your meter's ohms are."),
		needs: []string{say("A resistor of known value, 20 to 190 Ω, 1 % or better")},
	},
}
