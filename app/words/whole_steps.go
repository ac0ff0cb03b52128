package words

import (
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// Steps that several checks of a whole machine share.
var (
	tipsOnPosts    = text("Press the tips on the posts themselves, not on the clamps.")
	letRest        = text("Let the digits rest, then type them.")
	clipsFirst     = text("Clip them on before the engine starts, cables clear of fan and exhaust.")
	stopThenOff    = text("Let the digits rest, type them. Stop the engine first, then take the clips off.")
	outdoors       = text("Outdoors, in neutral, brake on.")
	helperCranks   = text("The helper cranks three seconds, hands off the tips.")
	highestSteady  = text("Type the highest steady number.")
	boxStaysFull   = text("Key off. Wait a minute after the last crank: the ignition box stays charged.")
	startsAnyway   = text("If it starts, stop it and crank once more for the reading.")
	onlyItsOwnLead = text("Plug together. Slide the probes in from the back, one on each side, on the same lead.")
)

// wholeSteps says how the checks around the generator are done; nil for others.
func wholeSteps(c check.Check, m meter.Meter) []string {
	switch {
	case c.Instrument == check.Eyes:
		return lookSteps(c.Looks)
	case c.Function == meter.AmpsDC:
		return currentSteps(c, m)
	case c.Function == meter.Diode && c.Instrument == check.Multimeter:
		return diodeSteps(c, m)
	}
	switch c.Measures {
	case spec.BatteryRest, spec.BatteryLamp, spec.SupplyKey, spec.BoxFeed:
		return standingSteps(c, m)
	case spec.BatteryCranking, spec.DropTerminal:
		return starterSteps(c, m)
	case spec.BatteryIdle, spec.Battery3000, spec.Battery5000, spec.DropPlus, spec.DropGround, spec.PlugDrop, spec.ChargeAC:
		return runningSteps(c, m)
	case spec.PickupCranking, spec.ExciterFree, spec.BoxOutputAC:
		return crankingSteps(c, m)
	case spec.KillWire, spec.BoxGround, spec.PinPickup, spec.PinExciter, spec.CoilPrimary, spec.CoilSecondary, spec.PlugCap, spec.PlugLeak:
		return boxSteps(c, m)
	}
	return nil
}

// standingSteps are volts of a machine that stands, with the key off or on.
func standingSteps(c check.Check, m meter.Meter) []string {
	dial := say("Dial to %s.", dialOf(c, m))
	switch c.Measures {
	case spec.BatteryRest:
		return []string{say("Key off. Best after an hour of rest: right after a ride it reads high. %s", dial), probes(c), tipsOnPosts, letRest}
	case spec.BatteryLamp:
		return []string{say("Key on, headlamp on, engine stopped. %s", dial), probes(c), tipsOnPosts, say("Let the lamp burn for half a minute, then type the number.")}
	case spec.SupplyKey:
		return []string{say("Key on, kill switch to run, engine stopped. %s", dial), probes(c), say("Slide the red tip into its plug from the back. %s", letRest)}
	}
	return []string{say("All plugs together, key on, engine stopped. %s", dial), probes(c), say("Slide both tips in from the back; they must not touch each other. %s", letRest)}
}

// starterSteps are volts under the starter's current.
func starterSteps(c check.Check, m meter.Meter) []string {
	number, held := say("Type the lowest steady number."), say("Clip them on the posts themselves, not on the clamps.")
	if c.Measures == spec.DropTerminal {
		number, held = highestSteady, say("Clip red on the lead post itself, black on the metal of the clamp around it.")
	}
	return []string{
		say("In neutral, brake on, key on. Dial to %s.", dialOf(c, m)),
		probes(c), held,
		helperCranks + " " + number,
		startsAnyway,
	}
}

// runningSteps keep fingers away from an engine that runs: clips go on before.
func runningSteps(c check.Check, m meter.Meter) []string {
	out := []string{outdoors + " " + say("Dial to %s.", dialOf(c, m))}
	switch c.Measures {
	case spec.ChargeAC:
		out = []string{
			say("Part the charge leads only. Exciter and pickup stay plugged in, or it will not run."),
			say("Is it all one plug? Then leave this check out."),
			outdoors + " " + highestFirst(c, m),
		}
	case spec.PlugDrop:
		out = append(out, onlyItsOwnLead)
	case spec.DropPlus, spec.DropGround:
		out = append(out, say("Everything stays plugged in. Scratch through paint and rust to bright metal."))
	}
	return append(out, probes(c), clipsFirst, say("Start it. %s", speedHeld(c.Engine)), stopThenOff)
}

func speedHeld(e check.Engine) string {
	switch e {
	case check.At3000:
		return say("The helper holds 3000 rpm; you keep your hands off.")
	case check.At5000:
		return say("The helper holds 5000 rpm, ten seconds at most; you keep your hands off.")
	}
	return say("Let it idle, throttle closed, hands off.")
}

// crankingSteps are AC volts of what sparks.
func crankingSteps(c check.Check, m meter.Meter) []string {
	plugged := say("Plug apart. The probes go on the generator's half.")
	if c.Measures == spec.BoxOutputAC {
		plugged = say("Leave the lead on the coil. Slide the red tip in beside the coil's small pin.")
	}
	dial := highestFirst(c, m)
	if c.Measures == spec.PickupCranking {
		dial = say("Dial to %s.", dialOf(c, m))
	}
	return []string{plugged, dial, probes(c), say("%s No lead hangs free.", readyToCrank), helperCranks + " " + highestSteady}
}

// boxSteps are ohms of box, kill wire, coil and plug.
func boxSteps(c check.Check, m meter.Meter) []string {
	dial := say("Dial to %s.", dialOf(c, m))
	switch c.Measures {
	case spec.KillWire:
		return []string{
			boxStaysFull,
			say("Take the kill wire off the ignition box; the plug stays apart. %s", dial),
			say("Key on, kill switch to run. Nobody cranks."),
			probes(c),
			say("Open line is right. Type what you see, then key off and the wire back on."),
		}
	case spec.BoxGround:
		return []string{boxStaysFull, say("The box stays plugged in. %s", dial), probes(c), say("Slide the red tip in beside the pin. %s", letRest)}
	case spec.PinPickup, spec.PinExciter:
		return []string{boxStaysFull, onlyItsOwnLead, dial, probes(c), say("A sound pin reads as the leads alone. %s", letRest)}
	case spec.CoilPrimary:
		return []string{boxStaysFull, say("Pull the lead off the coil's small pin. %s", dial), probes(c), letRest, say("Push the lead back on.")}
	case spec.CoilSecondary:
		return []string{boxStaysFull, say("Turn the cap off the spark lead. %s", dial), probes(c), say("The tip must meet the wire in the middle. %s", letRest)}
	case spec.PlugCap:
		return []string{boxStaysFull, say("Pull the cap off the plug, turn it off the spark lead. %s", dial), probes(c), letRest}
	}
	return []string{
		say("Key off. Plug out and cool, cap off it. Do not clean it yet: dirt is what you look for."),
		dial, probes(c),
		say("Fingers off the metal. Open line is right. Type what you see."),
	}
}

// currentSteps put the meter into the line: what the starter or the lamp draws
// would kill it.
func currentSteps(c check.Check, m meter.Meter) []string {
	return []string{
		say("Key off, key out. Never crank or turn the key on with the meter in series."),
		say("In open air. Loosen the minus clamp, never the plus one, and lift it off."),
		say("Red lead in the 10 A socket, black in COM. Dial to %s.", dialOf(c, m)),
		say("Touch for a moment first. A fat spark? Stop: that is more than the meter can carry."),
		say("%s Hold both until you have read.", probes(c)),
		say("Wait ten seconds, then type the number."),
		say("Take the probes off, put the minus clamp back on and tighten it."),
		say("Put the red lead back in VΩ now: in the 10 A socket the next volts reading is a short."),
	}
}
