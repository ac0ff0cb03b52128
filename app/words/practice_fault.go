package words

import (
	"math"
	"strconv"
	"strings"

	"coilbook/engine/check"
	"coilbook/engine/machine"
)

// faultWords name a fault, say how much of it there is (with # for the figure),
// and what to do.
type faultWords struct{ name, much, remedy text }

// Fault names what can be wrong, in a phrase that starts a line.
func Fault(k machine.Kind) string { return say(faultsInWords.of(k).name) }

// FaultRemedy says what to do about a fault. The service manual comes first.
func FaultRemedy(k machine.Kind) string { return say(faultsInWords.of(k).remedy) }

// Remedies that several faults share.
const (
	newStator    = text("A rewound or another stator; look at the insulation under the tape first.")
	newRegulator = text("Another regulator. Check the winding before it gets one: a shorted one kills the next.")
	newPickup    = text("Another pickup, with its gap set anew.")
	newCoil      = text("Another ignition coil.")
	cleanJoint   = text("Clean it to bright metal, tighten it, and read the drop again.")
)

var faultsInWords = table[machine.Kind, faultWords]{
	{machine.PhaseOpen, faultWords{"A charge winding is broken", "", "Look for a broken wire at the solder joints first; else a rewound or another stator; look at the insulation under the tape first."}},
	{machine.PhaseToCore, faultWords{"A charge winding touches the core", "# along its wire", newStator}},
	{machine.PhaseShorted, faultWords{"Turns of a charge winding are shorted", "# of its turns", newStator}},
	{machine.PhaseToPhase, faultWords{"Two charge leads touch each other", "", "Look at leads and plug for melted insulation, and part them; else a rewound or another stator; look at the insulation under the tape first."}},
	{machine.PhaseJoint, faultWords{"A solder joint of a charge winding is bad", "# in the joint", "Solder the joint anew and wrap it."}},
	{machine.NeutralToCore, faultWords{"The star point touches the core", "", "Lift the star point off the core and wrap it."}},
	{machine.WeakMagnets, faultWords{"The flywheel's magnets are weak", "# of their strength lost", "Another flywheel, or have this one magnetised."}},
	{machine.DiodeIsOpen, faultWords{"A diode of the regulator is open", "", newRegulator}},
	{machine.DiodeIsShorted, faultWords{"A diode of the regulator is shorted", "", newRegulator}},
	{machine.NoCharging, faultWords{"The regulator keeps everything from the battery", "", newRegulator}},
	{machine.NoRegulating, faultWords{"The regulator never holds the voltage down", "", "Another regulator, and look after the battery: it was boiled. Check the regulator's ground first."}},
	{machine.LowSetPoint, faultWords{"The regulator holds the voltage too low", "#", newRegulator}},
	{machine.RegulatorGround, faultWords{"The regulator has a bad ground", "# to the frame", cleanJoint}},
	{machine.ChargePin, faultWords{"A pin of the charge plug is bad", "# in the pin, some of it loose", "Another pin or plug, crimped and greased; brown plastic says it ran hot."}},
	{machine.FeedWire, faultWords{"The wire from the regulator to the fuse is bad", "# in the wire", "Find the green or hot place in the wire and make it anew."}},
	{machine.MainFuse, faultWords{"The main fuse is blown", "", "Find out why before the next fuse goes in; same rating, never wire."}},
	{machine.BatteryTerminal, faultWords{"A clamp on the battery is bad", "# in the clamp, some of it loose", cleanJoint}},
	{machine.Sulphated, faultWords{"The battery is worn out inside", "# times the resistance of a good one", "Another battery; a charger seldom brings it back."}},
	{machine.CellShorted, faultWords{"A cell of the battery is shorted", "", "Another battery, and do not charge this one: it boils."}},
	{machine.FlatBattery, faultWords{"The battery is just flat", "# of its charge left", "Charge it slowly, read it the next day, then ask why it went flat."}},
	{machine.Drain, faultWords{"Something drains the battery with the key off", "#", "Pull fuses and plugs one by one until the current goes."}},
	{machine.GroundStrap, faultWords{"The strap from engine to frame is bad", "# in the strap", cleanJoint}},

	{machine.PickupOpen, faultWords{"The pickup is broken inside", "", newPickup}},
	{machine.PickupShorted, faultWords{"Turns of the pickup are shorted", "# of its turns", newPickup}},
	{machine.PickupToCore, faultWords{"The pickup's winding touches the core", "", newPickup}},
	{machine.GapWide, faultWords{"The pickup's gap is too wide", "# wider than usual", "Set the gap with a leaf; look for a bent bracket or a slack bearing."}},
	{machine.PlugPin, faultWords{"A pin of pickup and exciter in the plug is bad", "# in the pin, some of it loose", "Another pin or plug, crimped and greased."}},
	{machine.ExciterOpen, faultWords{"The exciter is broken inside", "", newStator}},
	{machine.ExciterShorted, faultWords{"Turns of the exciter are shorted", "# of its turns", newStator}},
	{machine.ExciterToCore, faultWords{"The exciter touches the core", "", newStator}},
	{machine.BoxDead, faultWords{"The ignition box is dead", "", "Another box, but only after everything that feeds it has been read good."}},
	{machine.BoxShorted, faultWords{"The ignition box shorts its feed", "", "Another box, but only after everything that feeds it has been read good."}},
	{machine.KillSwitch, faultWords{"The kill switch stays closed", "", "Pull the kill wire off to be sure, then mend or replace the switch."}},
	{machine.KillWire, faultWords{"The kill wire is chafed through", "# to the core", "Find the place, usually under a clamp or the tank, and wrap it."}},
	{machine.PrimaryOpen, faultWords{"The ignition coil is open on its small pin's side", "", newCoil}},
	{machine.PrimaryShorted, faultWords{"Turns are shorted on the ignition coil's small pin's side", "# of its turns", newCoil}},
	{machine.SecondaryOpen, faultWords{"The ignition coil is open on its spark lead's side", "", newCoil}},
	{machine.SecondaryTurns, faultWords{"Turns are shorted on the ignition coil's spark lead's side", "# of its turns", newCoil}},
	{machine.CapBroken, faultWords{"The resistor in the plug cap is broken", "", "Another cap; cut the lead back to fresh wire."}},
	{machine.PlugFouled, faultWords{"The spark plug is fouled", "# across its gap", "Another plug, then find out why it fouled."}},
	{machine.IgnitionGround, faultWords{"The ignition box has a bad ground", "# to the engine", cleanJoint}},
	{machine.BoxFeed, faultWords{"The ignition box gets its supply through a bad wire", "# in the wire", cleanJoint}},
}

// FaultIs says what was wrong in a sentence: what, where, how much, and when.
func FaultIs(f machine.Fault, b machine.Build) string {
	out := Fault(f.Kind)
	if place := faultPlace(f, b); place != "" {
		out += ", " + place
	}
	if much := say(faultsInWords.of(f.Kind).much); much != "" {
		out += " (" + strings.Replace(much, "#", faultSize(f, b), 1) + ")"
	}
	if f.HotOnly {
		return say("%s, but only when it is warm.", out)
	}
	return out + "."
}

// faultPlace says where a fault sits that can sit in several places.
func faultPlace(f machine.Fault, b machine.Build) string {
	at, leads := strconv.Itoa(f.At), b.Charge.Leads()
	switch f.Kind {
	case machine.PhaseOpen, machine.PhaseToCore, machine.PhaseShorted, machine.PhaseJoint:
		return phasePlace(f.At, b.Charge)
	case machine.PhaseToPhase:
		return say("leads %s and %d", at, f.At+1)
	case machine.ChargePin:
		return say("that of lead %s", at)
	case machine.DiodeIsOpen, machine.DiodeIsShorted:
		switch {
		case b.Regulating == machine.HalfWave:
			return say("its only one")
		case f.At > leads:
			return say("from ground to lead %d", f.At-leads)
		}
		return say("from lead %s to plus", at)
	}
	return ""
}

func phasePlace(phase int, c machine.Connection) string {
	at := strconv.Itoa(phase)
	switch c {
	case machine.Star:
		return say("the one behind lead %s", at)
	case machine.Delta:
		return say("the one between leads %s and %d", at, phase%3+1)
	case machine.TwoPhase:
		return say("the one between leads %d and %d", 2*phase-1, 2*phase)
	}
	return ""
}

// faultSize writes the figure of a fault in its unit.
func faultSize(f machine.Fault, b machine.Build) string {
	switch f.Kind {
	case machine.PhaseToCore, machine.PhaseShorted, machine.WeakMagnets, machine.FlatBattery, machine.PickupShorted, machine.ExciterShorted,
		machine.PrimaryShorted, machine.SecondaryTurns:
		return strconv.Itoa(int(math.Round(f.Size*100))) + " %"
	case machine.LowSetPoint:
		return say("%s V on a battery of %d V", short(f.Size), b.Volts)
	case machine.Sulphated:
		return short(f.Size)
	case machine.Drain:
		return short(f.Size*1e3) + " mA"
	case machine.GapWide:
		return oneGap(f.Size)
	}
	if f.Size >= 1e3 {
		return short(f.Size/1e3) + " kΩ"
	}
	return short(f.Size) + " Ω"
}

// short writes a number with two or three figures.
func short(v float64) string {
	switch {
	case v >= 99.5:
		return decimal(v, 0)
	case v >= 9.95:
		return decimal(v, 1)
	}
	return decimal(v, 2)
}

// FaultGroups lists the parts that faults are named by, in the order of the board.
func FaultGroups() []check.Part {
	return []check.Part{
		check.ChargeWinding, check.Flywheel, check.Regulator, check.Wiring, check.Battery, check.Pickup, check.Exciter,
		check.IgnitionBox, check.KillCircuit, check.IgnitionCoil, check.SparkPlug,
	}
}
