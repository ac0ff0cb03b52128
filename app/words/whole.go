package words

import (
	"cmp"
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
func Look(l check.Look) string { return say(looks.of(l).question) }

// lookWords name a look, ask it, and say what it is good for.
type lookWords struct{ name, question, why text }

var looks = table[check.Look, lookWords]{
	{check.FuseBlown, lookWords{
		"The main fuse, by eye", "Is the main fuse blown?",
		"Without it nothing comes from the battery, and nothing goes into it.",
	}},
	{check.PlugBurnt, lookWords{
		"The generator's plug, by eye", "Is a pin of the generator's plug brown, melted or loose?",
		"A poor pin grows hot, and the hot place shows.",
	}},
	{check.SparkAtPlug, lookWords{
		"Spark at its own plug", "Do you see a spark at the machine's own plug?",
		"Parts ignition from fuel: with a good spark the trouble lies elsewhere.",
	}},
	{check.SparkAtGoodPlug, lookWords{
		"Spark at a good plug", "Do you see a spark at the good plug?",
		"With a good plug and cap in place, only coil, box and what feeds them are left.",
	}},
	{check.SparkAtLead, lookWords{
		"Spark from the bare lead", "Do you see a spark from the bare lead to metal?",
		"Leaves cap and plug out: if it sparks now, one of them was bad.",
	}},
	{check.SparkWithoutKill, lookWords{
		"Spark without the kill wire", "Do you see a spark with the kill wire off?",
		"If it sparks now, the kill switch or its wire was stopping the engine.",
	}},
	{check.SparkWarm, lookWords{
		"Spark right after a ride", "Do you see a spark while it is still warm?",
		"Some parts fail only when they are warm, and work again once they have cooled.",
	}},
}

// Access says what to do first, so that a check can be done.
func Access(a check.Access) string {
	return say(accesses.of(a))
}

var accesses = table[check.Access, text]{
	{check.SidePanel, "Take the side panel off"},
	{check.Tank, "Shut the fuel tap, take the tank off and carry it well away"},
	{check.FlywheelCover, "Take the flywheel's cover off"},
	{check.PlugParted, "Pull the generator's plug apart"},
	{check.SparkPlugOut, "Screw the spark plug out and shut the fuel tap"},
	{check.Helper, "Have a helper for starter and throttle"},
	{check.EngineOn, "Take the machine outdoors and have it ready to start"},
	{check.HotRide, "Ride it until it is hot, or until it fails"},
	{check.PeakAdapter, "Put the peak adapter on the meter"},

	{check.RegulatorParted, partedAll},
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
	if sentence := cmp.Or(wholeNames.of(c.Measures), looks.of(c.Looks).name); sentence != "" {
		return say(sentence)
	}
	return string(c.ID)
}

var wholeNames = table[spec.Measurand, text]{
	{spec.BatteryRest, "Battery at rest"},
	{spec.BatteryLamp, "Battery with the lamp on"},
	{spec.BatteryCranking, "Battery, cranking"},
	{spec.BatteryIdle, "Battery at idle"},
	{spec.Battery3000, "Battery at 3000 rpm"},
	{spec.Battery5000, "Battery at 5000 rpm"},
	{spec.DropPlus, "Drop, regulator to battery plus"},
	{spec.DropGround, "Drop, battery minus to regulator"},
	{spec.DropTerminal, "Drop over the plus clamp"},
	{spec.SupplyKey, "Supply behind the key"},
	{spec.KeyOffCurrent, "Current with the key off"},
	{spec.PickupToCore, "Pickup to core"},
	{spec.PickupCranking, "Pickup volts, cranking"},
	{spec.PinPickup, "Pickup's pin in the plug"},
	{spec.PinExciter, "Exciter's pin in the plug"},
	{spec.ExciterFree, "Exciter volts unplugged, cranking"},
	{spec.KillWire, "Kill wire to engine metal"},
	{spec.BoxGround, "Ground of the ignition box"},
	{spec.BoxFeed, "Supply of the ignition box"},
	{spec.BoxOutputAC, "Ignition box output, cranking"},
	{spec.CoilPrimary, "Ignition coil, small pin"},
	{spec.CoilSecondary, "Ignition coil, spark lead"},
	{spec.PlugCap, "Plug cap resistance"},
	{spec.PlugLeak, "Leak across the spark plug"},
}

var wholeWhy = table[spec.Measurand, text]{
	{spec.BatteryRest, "Says how full the battery is, before anything is asked of it."},
	{spec.BatteryLamp, "A worn battery reads well at rest and sags under a small load."},
	{spec.BatteryCranking, "The starter is the hardest load there is: a worn battery breaks down under it."},
	{spec.BatteryIdle, "Compared with the battery at rest, it says whether anything charges at idle."},
	{spec.Battery3000, "Shows whether the battery is charged as it should be."},
	{spec.Battery5000, "Shows whether the regulator holds the volts down when the generator gives most."},
	{spec.DropPlus, "Volts lost on the way to the battery: a bad wire, fuse holder or clamp."},
	{spec.DropGround, "Volts lost on the way back. The regulator sees them too, and holds the battery too low."},
	{spec.DropTerminal, "A loose or dirty clamp reads well at rest and fails when the starter asks for current."},
	{spec.SupplyKey, "Shows whether the battery's volts come through fuse and key."},
	{spec.KeyOffCurrent, "Finds what empties the battery while the machine stands."},
	{spec.ChargeAC, "Shows what the generator gives by itself, without regulator and battery."},
	{spec.PlugDrop, "A poor pin takes volts as soon as current runs; with an ohm meter it looks good."},
	{spec.PickupToCore, "A pickup that touches the core loses its pulse."},
	{spec.PinPickup, "A burnt or loose pin keeps the pickup's pulse from the box."},
	{spec.PinExciter, "A burnt or loose pin keeps the exciter's volts from the box."},
	{spec.PickupCranking, "Shows whether the pickup gives a pulse at all; its height this meter cannot read."},
	{spec.ExciterFree, "Shows what the exciter gives by itself: if it drops once plugged in, box or kill circuit loads it."},
	{spec.KillWire, "A kill wire that touches metal stops the engine as if the switch were off."},
	{spec.BoxGround, "Without a good ground the ignition box cannot fire."},
	{spec.BoxFeed, "An ignition box that the battery feeds needs nearly all of its volts."},
	{spec.BoxOutputAC, "Parts box from coil: pulses here and no spark means the coil or what follows it."},
	{spec.CoilPrimary, "Finds a broken winding behind the small pin."},
	{spec.CoilSecondary, "Finds a break in the fine winding or in the spark lead."},
	{spec.PlugCap, "A resistor in the cap burns out and keeps the spark back."},
	{spec.PlugLeak, "Soot or wet fuel lets the spark's volts leak away before it can jump."},
}
