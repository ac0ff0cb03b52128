package words

import (
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// Answer is the word for an answer to a look.
func Answer(yes bool) string {
	if yes {
		return Yes
	}
	return No
}

// Look is the question that eyes answer with yes or no.
func Look(l check.Look) string { return looks[l].question }

// lookWords name a look, ask it, and say what it is good for.
type lookWords struct{ name, question, why string }

var looks = map[check.Look]lookWords{
	check.FuseBlown: {
		say("The main fuse, by eye"), say("Is the main fuse blown?"),
		say("Without it nothing comes from the battery, and nothing goes into it."),
	},
	check.PlugBurnt: {
		say("The generator's plug, by eye"), say("Is a pin of the generator's plug brown, melted or loose?"),
		say("A poor pin grows hot, and the hot place shows."),
	},
	check.SparkAtPlug: {
		say("Spark at its own plug"), say("Do you see a spark at the machine's own plug?"),
		say("Parts ignition from fuel: with a good spark the trouble lies elsewhere."),
	},
	check.SparkAtGoodPlug: {
		say("Spark at a good plug"), say("Do you see a spark at the good plug?"),
		say("With a good plug and cap in place, only coil, box and what feeds them are left."),
	},
	check.SparkAtLead: {
		say("Spark from the bare lead"), say("Do you see a spark from the bare lead to metal?"),
		say("Leaves cap and plug out: if it sparks now, one of them was bad."),
	},
	check.SparkWithoutKill: {
		say("Spark without the kill wire"), say("Do you see a spark with the kill wire off?"),
		say("If it sparks now, the kill switch or its wire was stopping the engine."),
	},
	check.SparkWarm: {
		say("Spark right after a ride"), say("Do you see a spark while it is still warm?"),
		say("Some parts fail only when they are warm, and work again once they have cooled."),
	},
}

// Access says what to do first, so that a check can be done.
func Access(a check.Access) string {
	return map[check.Access]string{
		check.SidePanel:     say("Take the side panel off"),
		check.Tank:          say("Shut the fuel tap, take the tank off and carry it well away"),
		check.FlywheelCover: say("Take the flywheel's cover off"),
		check.PlugParted:    say("Pull the generator's plug apart"),
		check.SparkPlugOut:  say("Screw the spark plug out and shut the fuel tap"),
		check.Helper:        say("Have a helper for starter and throttle"),
		check.EngineOn:      say("Take the machine outdoors and have it ready to start"),
		check.HotRide:       say("Ride it until it is hot, or until it fails"),
		check.PeakAdapter:   say("Put the peak adapter on the meter"),

		check.RegulatorParted: partedAll,
	}[a]
}

// TerminalIn names a point for a probe as one meets it in a check. On the machine
// the core lies under its cover: metal of the engine is the same point.
func TerminalIn(c check.Check, t check.Terminal) string {
	switch {
	case c.Function == meter.Diode:
		return diodePoint(t)
	case t == check.Core && atEngine(c):
		return say("bare engine metal")
	}
	return Terminal(t)
}

// atEngine reports a check of what only a whole machine has.
func atEngine(c check.Check) bool {
	switch c.Part {
	case check.Wiring, check.KillCircuit, check.IgnitionBox, check.IgnitionCoil, check.SparkPlug:
		return true
	}
	return c.Engine != check.Stopped || c.Measures == spec.PickupToCore
}

// plugInWords says how the generator's plug is, where it matters.
func plugInWords(c check.Check) string {
	switch asked := slices.Contains(c.Needs, check.PlugParted); {
	case c.Plug == check.RegulatorApart:
		return RegulatorFree + ", "
	case asked, c.Plug == check.Apart && len(c.Needs) == 0 && c.Instrument == check.Multimeter:
		return PlugIs(check.Apart) + ", "
	case c.Plug == check.Together:
		return PlugIs(check.Together) + ", "
	}
	return ""
}

// doing says what the engine does, or that the key is on without it.
func doing(c check.Check) string {
	switch {
	case c.Engine == check.Stopped && c.Key:
		return say("key on")
	case c.Hot:
		return say("%s, warm", EngineDoes(c.Engine, false))
	}
	return EngineDoes(c.Engine, false)
}

// wholeName names the checks around the generator.
func wholeName(c check.Check) string {
	switch c.Measures {
	case spec.ChargeAC:
		return say("Charge %s, volts AC", leadsIn(c))
	case spec.PlugDrop:
		return say("Drop across the plug, lead %d", c.Leads[0])
	}
	if n := diodeName(c); n != "" {
		return n
	}
	if n := wholeNames[c.Measures]; n != "" {
		return n
	}
	if n := looks[c.Looks].name; n != "" {
		return n
	}
	return string(c.ID)
}

var wholeNames = map[spec.Measurand]string{
	spec.BatteryRest:     say("Battery at rest"),
	spec.BatteryLamp:     say("Battery with the lamp on"),
	spec.BatteryCranking: say("Battery, cranking"),
	spec.BatteryIdle:     say("Battery at idle"),
	spec.Battery3000:     say("Battery at 3000 rpm"),
	spec.Battery5000:     say("Battery at 5000 rpm"),
	spec.DropPlus:        say("Drop, regulator to battery plus"),
	spec.DropGround:      say("Drop, battery minus to regulator"),
	spec.DropTerminal:    say("Drop over the plus clamp"),
	spec.SupplyKey:       say("Supply behind the key"),
	spec.KeyOffCurrent:   say("Current with the key off"),
	spec.PickupToCore:    say("Pickup to core"),
	spec.PickupCranking:  say("Pickup volts, cranking"),
	spec.PinPickup:       say("Pickup's pin in the plug"),
	spec.PinExciter:      say("Exciter's pin in the plug"),
	spec.ExciterFree:     say("Exciter volts unplugged, cranking"),
	spec.KillWire:        say("Kill wire to engine metal"),
	spec.BoxGround:       say("Ground of the ignition box"),
	spec.BoxFeed:         say("Supply of the ignition box"),
	spec.BoxOutputAC:     say("Ignition box output, cranking"),
	spec.CoilPrimary:     say("Ignition coil, small pin"),
	spec.CoilSecondary:   say("Ignition coil, spark lead"),
	spec.PlugCap:         say("Plug cap resistance"),
	spec.PlugLeak:        say("Leak across the spark plug"),
}

var wholeWhy = map[spec.Measurand]string{
	spec.BatteryRest:     say("Says how full the battery is, before anything is asked of it."),
	spec.BatteryLamp:     say("A worn battery reads well at rest and sags under a small load."),
	spec.BatteryCranking: say("The starter is the hardest load there is: a worn battery breaks down under it."),
	spec.BatteryIdle:     say("Compared with the battery at rest, it says whether anything charges at idle."),
	spec.Battery3000:     say("Shows whether the battery is charged as it should be."),
	spec.Battery5000:     say("Shows whether the regulator holds the volts down when the generator gives most."),
	spec.DropPlus:        say("Volts lost on the way to the battery: a bad wire, fuse holder or clamp."),
	spec.DropGround:      say("Volts lost on the way back. The regulator sees them too, and holds the battery too low."),
	spec.DropTerminal:    say("A loose or dirty clamp reads well at rest and fails when the starter asks for current."),
	spec.SupplyKey:       say("Shows whether the battery's volts come through fuse and key."),
	spec.KeyOffCurrent:   say("Finds what empties the battery while the machine stands."),
	spec.ChargeAC:        say("Shows what the generator gives by itself, without regulator and battery."),
	spec.PlugDrop:        say("A poor pin takes volts as soon as current runs; with an ohm meter it looks good."),
	spec.PickupToCore:    say("A pickup that touches the core loses its pulse."),
	spec.PinPickup:       say("A burnt or loose pin keeps the pickup's pulse from the box."),
	spec.PinExciter:      say("A burnt or loose pin keeps the exciter's volts from the box."),
	spec.PickupCranking:  say("Shows whether the pickup gives a pulse at all; its height this meter cannot read."),
	spec.ExciterFree:     say("Shows what the exciter gives by itself: if it drops once plugged in, box or kill circuit loads it."),
	spec.KillWire:        say("A kill wire that touches metal stops the engine as if the switch were off."),
	spec.BoxGround:       say("Without a good ground the ignition box cannot fire."),
	spec.BoxFeed:         say("An ignition box that the battery feeds needs nearly all of its volts."),
	spec.BoxOutputAC:     say("Parts box from coil: pulses here and no spark means the coil or what follows it."),
	spec.CoilPrimary:     say("Finds a broken winding behind the small pin."),
	spec.CoilSecondary:   say("Finds a break in the fine winding or in the spark lead."),
	spec.PlugCap:         say("A resistor in the cap burns out and keeps the spark back."),
	spec.PlugLeak:        say("Soot or wet fuel lets the spark's volts leak away before it can jump."),
}
