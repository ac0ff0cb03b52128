package words

import (
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// Steps says how a check is done, one action a line.
func Steps(c check.Check, m meter.Meter) []string {
	switch c.Measures {
	case spec.LeadZero:
		return []string{
			"Black lead in COM, red in VΩ. Dial to " + dialOf(c, m) + ".",
			"Press the two bare tips hard against each other. Let the digits rest.",
		}
	case spec.PickupGap:
		return []string{
			"Turn the flywheel by hand until its raised bar stands opposite the pickup.",
			"Find the thickest leaf, or stack of leaves, that slides through with light drag.",
		}
	case spec.ExciterCranking:
		return []string{
			"Plug together. Slide the probes in from the back: red on " + Terminal(c.Red) + ", black on " + Terminal(c.Black) + ".",
			highestFirst(c, m) + " Neutral, plug cap on a grounded plug.",
			"Crank three seconds, hands off the tips. Type the highest steady number.",
		}
	}
	return []string{
		"Plug apart. Dial to " + dialOf(c, m) + ".",
		"Red on " + Terminal(c.Red) + ", black on " + Terminal(c.Black) + ".",
		"Let the digits rest, then type them.",
	}
}

// highestFirst keeps peaks off a low range of a meter whose dial is turned.
func highestFirst(c check.Check, m meter.Meter) string {
	top, ok := m.Highest(c.Function)
	if m.Auto || !ok {
		return "Dial to " + dialOf(c, m) + "."
	}
	return "Dial to " + Dial(c, m, top) + " first; turn down to " + dialOf(c, m) + " only if it stays well under."
}

func dialOf(c check.Check, m meter.Meter) string {
	r, _ := c.Dial(m)
	return Dial(c, m, r)
}

// Trap says how a reading goes wrong.
func Trap(t check.Trap) string { return traps[t] }

var traps = map[check.Trap]string{
	check.MetalBench:     "Lay the stator on wood or card: a metal bench joins what must be apart.",
	check.FingersOnTips:  "Keep fingers off the metal tips: your body reads like a leak.",
	check.ClipsTouch:     "Clips must not touch each other or bare metal.",
	check.StillPlugged:   "Plugged in, you measure the regulator too. Pull the plug apart.",
	check.PaintOrRust:    "Scratch to bright metal: paint and rust read open.",
	check.WarmWinding:    "Let it cool: hot copper reads several percent high.",
	check.WeakBattery:    "Charge the battery first: slow cranking reads low.",
	check.SlackFlywheel:  "Push the flywheel both ways: a slack bearing changes the gap.",
	check.BentLeaf:       "A bent or oily leaf reads too thick.",
	check.LeadsNotZeroed: "Take the probes-together reading first: your leads count here.",
	check.WrongSocket:    "Red in the 10 A socket reads nothing and can blow a fuse.",
}

// Caution says how someone gets hurt or a meter dies.
func Caution(c check.Caution) string { return cautions[c] }

var cautions = map[check.Caution]string{
	check.ShockExciter:  "The exciter gives a painful shock. Hands off the tips while it turns.",
	check.ShockIgnition: "Ignition voltage is dangerous, above all with a pacemaker, and an ignition box stays charged after a stop. Keep clear of box, coil, cap and lead.",
	check.MeterRating:   "Exciter peaks can exceed your meter's rating and destroy it. Never probe the spark lead.",
	check.RotatingParts: "Keep hands, sleeves and hair away from flywheel, belt and fan.",
	check.InNeutral:     "Neutral, brake on, wheels clear.",
	check.ExhaustIndoor: "Never run an engine indoors: exhaust gas kills.",
	check.BatteryGas:    "Battery gas explodes: no sparks or flames, clips on last and off first.",
	check.HotParts:      "Exhaust and engine burn: let them cool.",
	check.MagnetPull:    "Flywheel magnets pinch fingers, pull tools, and upset pacemakers.",
	check.KeyOff:        "Key off.",
}

// DeferToManual stands wherever cautions do.
const DeferToManual = "The service manual, local rules and licensed trades come first."
