package words

import (
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/meter"
)

// resistorDrop builds the circuit. Its fuse is the switch, so that it is closed
// and broken away from the battery's gas.
func resistorDrop(c check.Check, m meter.Meter) []string {
	near, far := ends(c)
	return []string{
		say("Plug apart, engine stopped, flywheel still. Dial to %s, probes off.", dialOf(c, m)),
		say("Leave the fuse out. Join in one line: battery plus, fuse holder, bulb, known resistor, %s.", near),
		say("Join %s to battery minus.", far),
		say("Put the fuse in. Wait until the bulb burns steadily."),
		say("Bulb dark? Stop: the line is open somewhere. Keep the probes off."),
		say("%s Stay inside the clips.", probes(c)),
		say("Type the number. Lift the probes, leave the bulb burning: the winding comes next."),
	}
}

func windingDrop(c check.Check, m meter.Meter) []string {
	return []string{
		say("Circuit as for the known resistor, bulb burning steadily. Dial to %s.", dialOf(c, m)),
		say("%s Stay inside the clips.", probes(c)),
		say("Type the number within seconds of the one before."),
		say("Take both probes off the winding."),
		say("Only now pull the fuse."),
	}
}

// ends are the two ends of the winding between which the current runs.
func ends(c check.Check) (near, far string) {
	if len(c.Leads) == 1 {
		return Terminal(check.Charge(c.Leads[0])), Terminal(check.Core)
	}
	return Terminal(check.Charge(c.Leads[0])), Terminal(check.Charge(c.Leads[1]))
}

func hotResistance(c check.Check, m meter.Meter) []string {
	return []string{
		say("Have the meter at hand. Dial to %s.", dialOf(c, m)),
		say("Ride or run it outdoors ten minutes or more, or until it fails: once for all hot readings."),
		say("Stop, key off. Pull the plug apart at once."),
		probes(c),
		say("Let the digits rest, then type them, all within a few minutes of stopping."),
	}
}

func peak(c check.Check, m meter.Meter) []string {
	crank := say("Crank up to five seconds, hands off the tips. Type the highest number.")
	if slices.Contains(c.Needs, check.Helper) {
		crank = say("The helper cranks up to five seconds, hands off the tips. Type the highest number.")
	}
	return []string{
		say("Put the adapter on the meter: minus in COM, plus in VΩ. The probes go into the adapter."),
		highestFirst(c, m),
		fromTheBack,
		probes(c),
		readyToCrank,
		crank,
		say("Let the adapter's bleeder empty it until the meter shows nearly zero. Then take the probes off."),
	}
}

func batteryVolts(c check.Check, m meter.Meter) []string {
	return []string{
		say("Take a battery of 9 to 15 V: a 9 V block will do, or the machine's own 12 V."),
		say("Black lead in COM, red in VΩ. Dial to %s.", dialOf(c, m)),
		probes(c),
		say("Let the digits rest, then type them."),
	}
}

func batteryOnAC(c check.Check, m meter.Meter) []string {
	place := probes(c)
	if c.Swapped {
		place = say("%s The wrong way round is right here.", probes(c))
	}
	return []string{
		say("Same battery. Dial to %s.", dialOf(c, m)),
		place,
		say("Wait five seconds: the number may fall away. Type what stays, a zero too."),
	}
}

func knownResistor(c check.Check, m meter.Meter) []string {
	return []string{
		say("Resistor on wood or card, joined to nothing. Dial to %s.", dialOf(c, m)),
		probes(c),
		say("Press the tips on, fingers off the wires. Let the digits rest, then type them."),
	}
}
