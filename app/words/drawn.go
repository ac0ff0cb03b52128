package words

import (
	"coilbook/app/drawing"
	"coilbook/app/tongue"
	"coilbook/engine/check"
)

// Drawn are the few words inside the pictures. They are short: what has no room is
// cut.
func Drawn() drawing.Words {
	return drawing.Words{
		Red: say("red"), Black: say("black"), Core: say("bare core metal"), Case: say("bare metal"),
		Apart: say("plug apart"), Joined: say("plug together"), Turns: say("starter turns"),
		Gap: say("gap"), Leaf: say("feeler leaf"), Pickup: say("pickup"),
		Battery: say("battery"), Fuse: say("fuse"), Bulb: say("bulb"), Resistor: say("known resistor"),
		Series: say("battery, fuse, lit bulb, known resistor and winding in one ring"), Inside: say("probes inside the clips"),
		Swapped: say("probes swapped"), Hot: say("hot"), Adapter: say("adapter"), Box: inPicture("ignition box"), Coil: say("ignition coil"),
		Idles: say("engine idles"), At3000: say("3000 rpm"), At5000: say("5000 rpm"), KeyOn: inPicture("key on"), Lamp: say("lamp on"),
		NeverCrank: say("key off, never crank"), Regulator: say("regulator"), Unplugged: say("regulator unplugged"), SparkPlug: say("spark plug"), GoodPlug: say("good plug"),
		BareLead: say("bare lead"), Cap: say("plug cap"), KillOff: say("kill wire off"), Eyes: say("eyes only"), Yes: say("yes"), No: say("no"),
	}
}

// StatorPicture says what the picture of a stator shows.
func StatorPicture(b check.Build) string {
	return count(b.StatorPoles, "stator, %d pole", "stator, %d poles")
}

// DrawnBoard are the words on the board.
func DrawnBoard() drawing.BoardWords {
	return drawing.BoardWords{
		Machine: say("The machine"), Generator: say("generator"), Regulator: say("regulator"), Box: say("ignition box"), Battery: say("battery"),
		Red: say("red"), Black: say("black"), InHand: say("in your hand"), Apart: say("plug apart"), Joined: say("plug together"), Unplugged: RegulatorFree,
		EngineTurns: say("engine turns"), EngineStands: say("engine stands"), KeyOn: say("key on"), KeyOff: say("key off"),
		Fuse: say("fuse"), Key: say("key"), Lamp: say("lamp"), Coil: say("ignition coil"), Cap: say("spark plug with its cap"), Frame: say("frame"), Exciter: say("exciter"),
	}
}

// inPicture is say for what has another, shorter word in a picture.
func inPicture(english string) string { return tongue.In("in a picture", english) }
