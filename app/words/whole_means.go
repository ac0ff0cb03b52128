package words

import (
	"cmp"

	"coilbook/engine/spec"
)

// wholeLow says what a reading under its limit may come from.
var wholeLow = map[spec.Measurand]string{
	spec.HotResistance:   say("turns may touch each other when warm."),
	spec.BatteryRest:     say("a flat battery, or one with a dead cell."),
	spec.BatteryLamp:     say("a flat or worn battery."),
	spec.BatteryCranking: say("a flat or worn battery, or a starter that binds."),
	spec.BatteryIdle:     say("nothing charges at idle; some machines only charge above it."),
	spec.Battery3000:     say("the battery is not charged: generator, regulator or what lies between."),
	spec.Battery5000:     say("the battery is not charged: generator, regulator or what lies between."),
	spec.DropPlus:        say("current flows backward, or the probes are the wrong way round."),
	spec.DropGround:      say("current flows backward, or the probes are the wrong way round."),
	spec.DropTerminal:    say("the probes are the wrong way round."),
	spec.SupplyKey:       say("a poor key contact, fuse or plug."),
	spec.KeyOffCurrent:   say("the probes are the wrong way round."),
	spec.ChargeAC:        say("a bad winding, weak magnets, or too few turns of the engine."),
	spec.PlugDrop:        say("no current runs."),
	spec.PickupToCore:    say("the pickup's winding may touch the core."),
	spec.PinPickup:       say("less than the leads alone."),
	spec.PinExciter:      say("less than the leads alone."),
	spec.PickupCranking:  say("a wide gap, slow cranking, or a pickup that is broken or shorted."),
	spec.ExciterFree:     say("a weak exciter, weak magnets, or slow cranking."),
	spec.KillWire:        say("the switch stays closed, or the wire is chafed through."),
	spec.BoxGround:       say("less than the leads alone."),
	spec.BoxFeed:         say("a poor wire, fuse or key contact on the way to the box."),
	spec.BoxOutputAC:     say("a dead or weak box, or one that gets too little from exciter or pickup."),
	spec.CoilPrimary:     say("turns may be shorted."),
	spec.CoilSecondary:   say("turns may be shorted."),
	spec.PlugCap:         say("another kind of cap, or one without a resistor."),
	spec.PlugLeak:        say("soot, wet fuel or a crack lets the spark leak away."),
}

// wholeHigh says what a reading over its limit may come from.
var wholeHigh = map[spec.Measurand]string{
	spec.HotResistance:   say("a joint that parts when warm, or a winding that is too hot."),
	spec.BatteryRest:     say("it came off charge a moment ago."),
	spec.BatteryLamp:     say("the lamp is not on, or it came off charge a moment ago."),
	spec.BatteryCranking: say("the starter hardly draws, or did not turn."),
	spec.BatteryIdle:     say("the regulator does not hold the volts down."),
	spec.Battery3000:     say("the regulator does not hold the volts down, or sees too little of them."),
	spec.Battery5000:     say("the regulator does not hold the volts down, or sees too little of them."),
	spec.DropPlus:        say("a bad wire, fuse holder or clamp on the way to the battery."),
	spec.DropGround:      say("a bad ground of regulator, frame or battery."),
	spec.DropTerminal:    say("a loose or dirty clamp."),
	spec.SupplyKey:       say("more than a battery gives, so something charges it."),
	spec.KeyOffCurrent:   say("something draws current with the key off."),
	spec.ChargeAC:        say("the engine turns faster than it should, or another kind of generator."),
	spec.PlugDrop:        say("a pin that is burnt, loose or corroded."),
	spec.PickupToCore:    say("another kind of pickup."),
	spec.PinPickup:       say("a pin that is burnt, loose or corroded."),
	spec.PinExciter:      say("a pin that is burnt, loose or corroded."),
	spec.PickupCranking:  say("another kind of pickup, or a quick starter."),
	spec.ExciterFree:     say("another kind of exciter, or a quick starter."),
	spec.KillWire:        say("the wire may be broken."),
	spec.BoxGround:       say("a bad ground: rust, paint or a loose screw."),
	spec.BoxFeed:         say("more than a battery gives, so something charges it."),
	spec.BoxOutputAC:     say("the coil may be open, so that nothing loads the box."),
	spec.CoilPrimary:     say("a poor joint, or another kind of coil."),
	spec.CoilSecondary:   say("a break in the winding or the lead, or another kind of coil."),
	spec.PlugCap:         say("the resistor in the cap is burnt out."),
	spec.PlugLeak:        say("nothing leaks."),
}

// low and high say what a reading outside of its limit may come from.
func low(m spec.Measurand) string {
	if s := lowMeans[m]; s != "" {
		return s
	}
	return cmp.Or(wholeLow[m], diodeLow[m])
}

func high(m spec.Measurand) string {
	if s := highMeans[m]; s != "" {
		return s
	}
	return cmp.Or(wholeHigh[m], diodeHigh[m])
}
