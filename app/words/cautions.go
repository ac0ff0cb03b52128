package words

import (
	"cmp"

	"coilbook/engine/check"
)

// Trap says how a reading goes wrong.
func Trap(t check.Trap) string { return say(cmp.Or(traps.of(t), diodeTraps.of(t))) }

var traps = table[check.Trap, text]{
	{check.MetalBench, "Lay the stator on wood or card: a metal bench joins what must be apart."},
	{check.FingersOnTips, "Keep fingers off the metal tips: your body reads like a leak."},
	{check.ClipsTouch, "Clips must not touch each other or bare metal."},
	{check.StillPlugged, "Plugged in, you measure the regulator too. Pull the plug apart."},
	{check.PaintOrRust, "Scratch to bright metal: paint and rust read open."},
	{check.WarmWinding, "Let it cool: hot copper reads several percent high."},
	{check.WeakBattery, "Charge the battery first: slow cranking reads low and sparks badly."},
	{check.SlackFlywheel, "Push the flywheel both ways: a slack bearing changes the gap."},
	{check.BentLeaf, "A bent or oily leaf reads too thick."},
	{check.LeadsNotZeroed, "Take the probes-together reading first: your leads count here."},
	{check.WrongSocket, "Red in VΩ for volts and ohms, in 10 A for current only: the wrong socket shorts the battery or reads nothing."},
	{check.ProbesInside, "Probes go on the winding or resistor itself, inside the current clips: a clip's contact has a drop too."},
	{check.ReadTogether, "Read both drops within seconds: the battery sags, and the current with it."},
	{check.WarmBulb, "Wait until the bulb burns steadily: the current falls while it heats up."},
	{check.CooledDown, "Read within a minute of stopping: once it cools, the fault may hide again."},
	{check.AdapterTurned, "The wrong way round it reads next to nothing. Let it empty, swap the probe tips, crank again."},
	{check.LowInput, "A 1 MΩ meter can drag pulses down by a third or more while cranking. A 10 MΩ meter reads closer."},
	{check.FlatBattery, "A flat battery sags between readings: use one that holds 9 V or more."},
	{check.ResistorHeld, "Do not hold the resistor's wires: your body adds a path, and your hand warms it."},
}

// Caution says how someone gets hurt or a meter dies.
func Caution(c check.Caution) string { return say(cautions.of(c)) }

var cautions = table[check.Caution, text]{
	{check.ShockExciter, "The exciter gives a painful shock. Hands off the tips while it turns."},
	{check.ShockIgnition, "Ignition voltage is dangerous, above all with a pacemaker, and an ignition box stays charged after a stop. Keep clear of box, coil, cap and lead."},
	{check.MeterRating, "Exciter peaks can exceed your meter's rating and destroy it. Never probe the spark lead."},
	{check.RotatingParts, "Keep hands, sleeves and hair away from flywheel, belt and fan."},
	{check.InNeutral, "Neutral, brake on, wheels clear."},
	{check.ExhaustIndoor, "Never run an engine indoors: exhaust gas kills."},
	{check.BatteryGas, "Battery gas explodes: no sparks or flames, clips on last and off first."},
	{check.HotParts, "Exhaust and engine burn: let them cool. For a hot reading wear gloves and touch only the plug."},
	{check.MagnetPull, "Flywheel magnets pinch fingers, pull tools, and upset pacemakers."},
	{check.KeyOff, "Key off."},
	{check.BulbAlways, "Never without the bulb: it limits the current. Without it, wires and winding can burn."},
	{check.ProbesOff, "Take both probes off before you break the circuit: the winding kicks back and can kill the meter."},
	{check.BatteryShort, "A shorted battery burns skin and starts fires: rings off, no loose metal near its posts."},
	{check.HotBulb, "Bulb and resistor get hot: lay them on stone or tile, and do not hold them."},
	{check.StoredCharge, "Capacitors stay charged, in an ignition box as in an adapter: wait a minute after a stop, let the adapter's bleeder empty it, before you touch box, adapter or tips."},
	{check.AdapterRating, "The adapter's parts must take the peaks: capacitor at least 630 V, diode at least 1000 V."},
	{check.LowRangeDies, "More than its rating can kill a millivolt range. Probes on only while the bulb burns: a dark bulb can put the whole battery across them."},
}

// DeferToManual stands wherever cautions do.
var DeferToManual = text("The service manual, local rules and licensed trades come first.")
