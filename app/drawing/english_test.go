package drawing

import (
	"fmt"

	"coilbook/engine/check"
)

// English are the words that pictures are tried with here.
func English() Words {
	return Words{
		Red: "red", Black: "black", Core: "bare core metal", Case: "bare metal",
		Apart: "plug apart", Joined: "plug together", Turns: "starter turns",
		Gap: "gap", Leaf: "feeler leaf", Pickup: "pickup",
		Battery: "battery", Fuse: "fuse", Bulb: "bulb", Resistor: "known resistor",
		Series: "battery, fuse, lit bulb, known resistor and winding in one ring", Inside: "probes inside the clips",
		Swapped: "probes swapped", Hot: "hot", Adapter: "adapter", Box: "ignition box", Coil: "ignition coil",
		Idles: "engine idles", At3000: "3000 rpm", At5000: "5000 rpm", KeyOn: "key on", Lamp: "lamp on",
		NeverCrank: "key off, never crank", Regulator: "regulator", Unplugged: "regulator unplugged", SparkPlug: "spark plug", GoodPlug: "good plug",
		BareLead: "bare lead", Cap: "plug cap", KillOff: "kill wire off", Eyes: "eyes only", Yes: "yes", No: "no",
	}
}

func statorLabel(b check.Build) string {
	if b.StatorPoles == 1 {
		return "stator, 1 pole"
	}
	return fmt.Sprintf("stator, %d poles", b.StatorPoles)
}
