package words

import (
	"cmp"

	"coilbook/engine/spec"
)

// wholeLow says what a reading under its limit may come from.
var wholeLow = table[spec.Measurand, text]{
	{spec.HotResistance, "turns may touch each other when warm."},
	{spec.BatteryRest, "a flat battery, or one with a dead cell."},
	{spec.BatteryLamp, "a flat or worn battery."},
	{spec.BatteryCranking, "a flat or worn battery, or a starter that binds."},
	{spec.BatteryIdle, "nothing charges at idle; some machines only charge above it."},
	{spec.Battery3000, "the battery is not charged: generator, regulator or what lies between."},
	{spec.Battery5000, "the battery is not charged: generator, regulator or what lies between."},
	{spec.DropPlus, "current flows backward, or the probes are the wrong way round."},
	{spec.DropGround, "current flows backward, or the probes are the wrong way round."},
	{spec.DropTerminal, "the probes are the wrong way round."},
	{spec.SupplyKey, "a poor key contact, fuse or plug."},
	{spec.KeyOffCurrent, "the probes are the wrong way round."},
	{spec.ChargeAC, "a bad winding, weak magnets, or too few turns of the engine."},
	{spec.PlugDrop, "no current runs."},
	{spec.PickupToCore, "the pickup's winding may touch the core."},
	{spec.PinPickup, "less than the leads alone."},
	{spec.PinExciter, "less than the leads alone."},
	{spec.PickupCranking, "a wide gap, slow cranking, or a pickup that is broken or shorted."},
	{spec.ExciterFree, "a weak exciter, weak magnets, or slow cranking."},
	{spec.KillWire, "the switch stays closed, or the wire is chafed through."},
	{spec.BoxGround, "less than the leads alone."},
	{spec.BoxFeed, "a poor wire, fuse or key contact on the way to the box."},
	{spec.BoxOutputAC, "a dead or weak box, or one that gets too little from exciter or pickup."},
	{spec.CoilPrimary, "turns may be shorted."},
	{spec.CoilSecondary, "turns may be shorted."},
	{spec.PlugCap, "another kind of cap, or one without a resistor."},
	{spec.PlugLeak, "soot, wet fuel or a crack lets the spark leak away."},
}

// wholeHigh says what a reading over its limit may come from.
var wholeHigh = table[spec.Measurand, text]{
	{spec.HotResistance, "a joint that parts when warm, or a winding that is too hot."},
	{spec.BatteryRest, "it came off charge a moment ago."},
	{spec.BatteryLamp, "the lamp is not on, or it came off charge a moment ago."},
	{spec.BatteryCranking, "the starter hardly draws, or did not turn."},
	{spec.BatteryIdle, "the regulator does not hold the volts down."},
	{spec.Battery3000, "the regulator does not hold the volts down, or sees too little of them."},
	{spec.Battery5000, "the regulator does not hold the volts down, or sees too little of them."},
	{spec.DropPlus, "a bad wire, fuse holder or clamp on the way to the battery."},
	{spec.DropGround, "a bad ground of regulator, frame or battery."},
	{spec.DropTerminal, "a loose or dirty clamp."},
	{spec.SupplyKey, "more than a battery gives, so something charges it."},
	{spec.KeyOffCurrent, "something draws current with the key off."},
	{spec.ChargeAC, "the engine turns faster than it should, or another kind of generator."},
	{spec.PlugDrop, "a pin that is burnt, loose or corroded."},
	{spec.PickupToCore, "another kind of pickup."},
	{spec.PinPickup, "a pin that is burnt, loose or corroded."},
	{spec.PinExciter, "a pin that is burnt, loose or corroded."},
	{spec.PickupCranking, "another kind of pickup, or a quick starter."},
	{spec.ExciterFree, "another kind of exciter, or a quick starter."},
	{spec.KillWire, "the wire may be broken."},
	{spec.BoxGround, "a bad ground: rust, paint or a loose screw."},
	{spec.BoxFeed, "more than a battery gives, so something charges it."},
	{spec.BoxOutputAC, "the coil may be open, so that nothing loads the box."},
	{spec.CoilPrimary, "a poor joint, or another kind of coil."},
	{spec.CoilSecondary, "a break in the winding or the lead, or another kind of coil."},
	{spec.PlugCap, "the resistor in the cap is burnt out."},
	{spec.PlugLeak, "nothing leaks."},
}

// low and high say what a reading outside of its limit may come from.
func low(m spec.Measurand) string {
	return say(cmp.Or(lowMeans.of(m), wholeLow.of(m), diodeLow.of(m)))
}

func high(m spec.Measurand) string {
	return say(cmp.Or(highMeans.of(m), wholeHigh.of(m), diodeHigh.of(m)))
}
