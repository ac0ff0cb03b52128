package words

import (
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// Words of the meter's diode range.
var (
	DiodeDial     = text("diode")
	DiodeFunction = text("Diode")
	RegulatorFree = text("regulator unplugged")
)

// diodeName names a check of the regulator's valves; empty for others.
func diodeName(c check.Check) string {
	switch c.Measures {
	case spec.DiodeToPlus:
		return say("Regulator diode, lead %d to plus", c.Leads[0])
	case spec.DiodeFromGround:
		return say("Regulator diode, ground to lead %d", c.Leads[0])
	}
	return ""
}

var diodeWhy = table[spec.Measurand, text]{
	{spec.DiodeToPlus, "Each charge lead feeds the battery through one half of the regulator-rectifier. This finds a broken or shorted one without running the engine."},
	{spec.DiodeFromGround, "The current of each lead comes back through a lower diode. The regulator's own switch may lie beside it, and reads the same when it is shorted."},
}

// diodePoint names a pin of a regulator that is unplugged.
func diodePoint(t check.Terminal) string {
	switch t {
	case check.RegulatorPlus:
		return say("the regulator's plus pin")
	case check.RegulatorBody:
		return say("bare metal of the regulator, or its ground pin")
	}
	return say("the regulator's pin for charge lead %s", string(t[len(t)-1:]))
}

func diodeSteps(c check.Check, m meter.Meter) []string {
	shows := say("One sound diode shows about 0.4 to 0.7 V.")
	if r, ok := c.Dial(m); ok && r.Unit.Name == "mV" && !m.Auto {
		shows = say("One sound diode shows about 400 to 700: these are millivolts.")
	}
	out := []string{
		say("Key off. Pull every plug of the regulator apart, its plus wire first."),
		say("The harness half of the plus wire still carries the battery: cover it."),
		say("Dial to %s: the sign is a triangle with a bar. Where the beeper shares it, press until it shows.", dialOf(c, m)),
		probes(c),
		say("Type what stands there. %s", shows),
	}
	if c.Measures == spec.DiodeToPlus {
		return append(out,
			say("Near zero is shorted. Open line is a broken diode, or a regulator with thyristors there."),
			say("On such a regulator open both ways is normal, and then on every lead."))
	}
	return append(out, say("Near zero is shorted. Open line is a broken diode."))
}

var diodeTraps = table[check.Trap, text]{
	{check.StillFed, "Any plug left together, and battery or winding answer in the diode's place; battery volts on this range can harm the meter."},
	{check.ProbesTurned, "The wrong way round a sound diode reads open line. Not sure which way your meter drives? Try it on a diode that you know."},
}

var diodeLow = table[spec.Measurand, text]{
	{spec.DiodeToPlus, "this half of the regulator is shorted, or both probes touch the same metal."},
	{spec.DiodeFromGround, "this half of the regulator is shorted, its diode or the switch beside it."},
}

var diodeHigh = table[spec.Measurand, text]{
	{spec.DiodeToPlus, "a poor contact of a probe, or more than one diode in the way."},
	{spec.DiodeFromGround, "a poor contact of a probe, or more than one diode in the way."},
}

var (
	diodeBroken = text("Open line where a diode must conduct: it is broken, or a probe stands on paint.")
	mayBlock    = text("Open line: a broken diode reads so, and so does a sound regulator with thyristors there. On such, open both ways is normal, and on every lead.")
	partedAll   = text("Pull every plug of the regulator apart, its plus wire too")
)

const compareLeads = text("Read the other leads too: if every lead reads open line, it is the kind of regulator; if one alone does, its diode is broken.")
