package words

import (
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// Steps says how a check is done, one action a line.
func Steps(c check.Check, m meter.Meter) []string {
	if steps := wholeSteps(c, m); steps != nil {
		return steps
	}
	switch c.Measures {
	case spec.LeadZero:
		return []string{
			say("Black lead in COM, red in VΩ. Dial to %s.", dialOf(c, m)),
			say("Press the two bare tips hard against each other. Let the digits rest."),
		}
	case spec.PickupGap:
		return []string{
			say("Turn the flywheel by hand until its raised bar stands opposite the pickup."),
			say("Find the thickest leaf, or stack of leaves, that slides through with light drag."),
		}
	case spec.ExciterCranking:
		return []string{
			fromTheBack,
			probes(c),
			highestFirst(c, m),
			readyToCrank,
			say("Crank three seconds, hands off the tips. Type the highest steady number."),
		}
	case spec.ResistorDrop:
		return resistorDrop(c, m)
	case spec.WindingDrop:
		return windingDrop(c, m)
	case spec.HotResistance:
		return hotResistance(c, m)
	case spec.ExciterPeak, spec.PickupPeak, spec.BoxPeak:
		return peak(c, m)
	case spec.BatteryVolts:
		return batteryVolts(c, m)
	case spec.BatteryOnAC:
		return batteryOnAC(c, m)
	case spec.KnownResistor:
		return knownResistor(c, m)
	}
	return []string{
		say("Plug apart. Dial to %s.", dialOf(c, m)),
		probes(c),
		say("Let the digits rest, then type them."),
	}
}

// Steps that several checks share.
var (
	fromTheBack  = text("Plug together. Slide the probes in from the back.")
	readyToCrank = text("Neutral, plug cap on a grounded plug.")
)

func probes(c check.Check) string {
	return say("Red on %s, black on %s.", TerminalIn(c, c.Red), TerminalIn(c, c.Black))
}

// highestFirst keeps peaks off a low range of a meter whose dial is turned.
func highestFirst(c check.Check, m meter.Meter) string {
	top, ok := m.Highest(c.Function)
	if r, _ := c.Dial(m); m.Auto || !ok || r.Label == top.Label {
		return say("Dial to %s.", dialOf(c, m))
	}
	return say("Dial to %s first; turn down to %s only if it stays well under.", Dial(c, m, top), dialOf(c, m))
}

func dialOf(c check.Check, m meter.Meter) string {
	r, _ := c.Dial(m)
	return Dial(c, m, r)
}
