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
		"Plug apart, engine stopped, flywheel still. Dial to " + dialOf(c, m) + ", probes off.",
		"Leave the fuse out. Join in one line: battery plus, fuse holder, bulb, known resistor, " + near + ".",
		"Join " + far + " to battery minus.",
		"Put the fuse in. Wait until the bulb burns steadily.",
		"Bulb dark? Stop: the line is open somewhere. Keep the probes off.",
		probes(c) + " Stay inside the clips.",
		"Type the number. Lift the probes, leave the bulb burning: the winding comes next.",
	}
}

func windingDrop(c check.Check, m meter.Meter) []string {
	return []string{
		"Circuit as for the known resistor, bulb burning steadily. Dial to " + dialOf(c, m) + ".",
		probes(c) + " Stay inside the clips.",
		"Type the number within seconds of the one before.",
		"Take both probes off the winding.",
		"Only now pull the fuse.",
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
		"Have the meter at hand. Dial to " + dialOf(c, m) + ".",
		"Ride or run it outdoors ten minutes or more, or until it fails: once for all hot readings.",
		"Stop, key off. Pull the plug apart at once.",
		probes(c),
		"Let the digits rest, then type them, all within a few minutes of stopping.",
	}
}

func peak(c check.Check, m meter.Meter) []string {
	crank := "Crank up to five seconds"
	if slices.Contains(c.Needs, check.Helper) {
		crank = "The helper cranks up to five seconds"
	}
	return []string{
		"Put the adapter on the meter: minus in COM, plus in VΩ. The probes go into the adapter.",
		highestFirst(c, m),
		fromTheBack,
		probes(c),
		readyToCrank,
		crank + ", hands off the tips. Type the highest number.",
		"Let the adapter's bleeder empty it until the meter shows nearly zero. Then take the probes off.",
	}
}

func batteryVolts(c check.Check, m meter.Meter) []string {
	return []string{
		"Take a battery of 9 to 15 V: a 9 V block will do, or the machine's own 12 V.",
		"Black lead in COM, red in VΩ. Dial to " + dialOf(c, m) + ".",
		probes(c),
		"Let the digits rest, then type them.",
	}
}

func batteryOnAC(c check.Check, m meter.Meter) []string {
	place := probes(c)
	if c.Swapped {
		place = probes(c) + " The wrong way round is right here."
	}
	return []string{
		"Same battery. Dial to " + dialOf(c, m) + ".",
		place,
		"Wait five seconds: the number may fall away. Type what stays, a zero too.",
	}
}

func knownResistor(c check.Check, m meter.Meter) []string {
	return []string{
		"Resistor on wood or card, joined to nothing. Dial to " + dialOf(c, m) + ".",
		probes(c),
		"Press the tips on, fingers off the wires. Let the digits rest, then type them.",
	}
}
