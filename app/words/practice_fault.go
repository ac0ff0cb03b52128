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
type faultWords struct{ name, much, remedy string }

// Fault names what can be wrong, in a phrase that starts a line.
func Fault(k machine.Kind) string { return faultsInWords[k].name }

// FaultRemedy says what to do about a fault. The service manual comes first.
func FaultRemedy(k machine.Kind) string { return faultsInWords[k].remedy }

// Remedies that several faults share.
const (
	newStator    = "A rewound or another stator; look at the insulation under the tape first."
	newRegulator = "Another regulator. Check the winding before it gets one: a shorted one kills the next."
	newPickup    = "Another pickup, with its gap set anew."
	newCoil      = "Another ignition coil."
	cleanJoint   = "Clean it to bright metal, tighten it, and read the drop again."
)

var faultsInWords = map[machine.Kind]faultWords{
	machine.PhaseOpen:       {"A charge winding is broken", "", "Look for a broken wire at the solder joints first; else " + lowerFirst(newStator)},
	machine.PhaseToCore:     {"A charge winding touches the core", "# along its wire", newStator},
	machine.PhaseShorted:    {"Turns of a charge winding are shorted", "# of its turns", newStator},
	machine.PhaseToPhase:    {"Two charge leads touch each other", "", "Look at leads and plug for melted insulation, and part them; else " + lowerFirst(newStator)},
	machine.PhaseJoint:      {"A solder joint of a charge winding is bad", "# in the joint", "Solder the joint anew and wrap it."},
	machine.NeutralToCore:   {"The star point touches the core", "", "Lift the star point off the core and wrap it."},
	machine.WeakMagnets:     {"The flywheel's magnets are weak", "# of their strength lost", "Another flywheel, or have this one magnetised."},
	machine.DiodeIsOpen:     {"A diode of the regulator is open", "", newRegulator},
	machine.DiodeIsShorted:  {"A diode of the regulator is shorted", "", newRegulator},
	machine.NoCharging:      {"The regulator keeps everything from the battery", "", newRegulator},
	machine.NoRegulating:    {"The regulator never holds the voltage down", "", "Another regulator, and look after the battery: it was boiled. " + "Check the regulator's ground first."},
	machine.LowSetPoint:     {"The regulator holds the voltage too low", "#", newRegulator},
	machine.RegulatorGround: {"The regulator has a bad ground", "# to the frame", cleanJoint},
	machine.ChargePin:       {"A pin of the charge plug is bad", "# in the pin, some of it loose", "Another pin or plug, crimped and greased; brown plastic says it ran hot."},
	machine.FeedWire:        {"The wire from the regulator to the fuse is bad", "# in the wire", "Find the green or hot place in the wire and make it anew."},
	machine.MainFuse:        {"The main fuse is blown", "", "Find out why before the next fuse goes in; same rating, never wire."},
	machine.BatteryTerminal: {"A clamp on the battery is bad", "# in the clamp, some of it loose", cleanJoint},
	machine.Sulphated:       {"The battery is worn out inside", "# times the resistance of a good one", "Another battery; a charger seldom brings it back."},
	machine.CellShorted:     {"A cell of the battery is shorted", "", "Another battery, and do not charge this one: it boils."},
	machine.FlatBattery:     {"The battery is just flat", "# of its charge left", "Charge it slowly, read it the next day, then ask why it went flat."},
	machine.Drain:           {"Something drains the battery with the key off", "#", "Pull fuses and plugs one by one until the current goes."},
	machine.GroundStrap:     {"The strap from engine to frame is bad", "# in the strap", cleanJoint},

	machine.PickupOpen:     {"The pickup is broken inside", "", newPickup},
	machine.PickupShorted:  {"Turns of the pickup are shorted", "# of its turns", newPickup},
	machine.PickupToCore:   {"The pickup's winding touches the core", "", newPickup},
	machine.GapWide:        {"The pickup's gap is too wide", "# wider than usual", "Set the gap with a leaf; look for a bent bracket or a slack bearing."},
	machine.PlugPin:        {"A pin of pickup and exciter in the plug is bad", "# in the pin, some of it loose", "Another pin or plug, crimped and greased."},
	machine.ExciterOpen:    {"The exciter is broken inside", "", newStator},
	machine.ExciterShorted: {"Turns of the exciter are shorted", "# of its turns", newStator},
	machine.ExciterToCore:  {"The exciter touches the core", "", newStator},
	machine.BoxDead:        {"The ignition box is dead", "", "Another box, but only after everything that feeds it has been read good."},
	machine.BoxShorted:     {"The ignition box shorts its feed", "", "Another box, but only after everything that feeds it has been read good."},
	machine.KillSwitch:     {"The kill switch stays closed", "", "Pull the kill wire off to be sure, then mend or replace the switch."},
	machine.KillWire:       {"The kill wire is chafed through", "# to the core", "Find the place, usually under a clamp or the tank, and wrap it."},
	machine.PrimaryOpen:    {"The ignition coil is open on its small pin's side", "", newCoil},
	machine.PrimaryShorted: {"Turns are shorted on the ignition coil's small pin's side", "# of its turns", newCoil},
	machine.SecondaryOpen:  {"The ignition coil is open on its spark lead's side", "", newCoil},
	machine.SecondaryTurns: {"Turns are shorted on the ignition coil's spark lead's side", "# of its turns", newCoil},
	machine.CapBroken:      {"The resistor in the plug cap is broken", "", "Another cap; cut the lead back to fresh wire."},
	machine.PlugFouled:     {"The spark plug is fouled", "# across its gap", "Another plug, then find out why it fouled."},
	machine.IgnitionGround: {"The ignition box has a bad ground", "# to the engine", cleanJoint},
	machine.BoxFeed:        {"The ignition box gets its supply through a bad wire", "# in the wire", cleanJoint},
}

// FaultIs says what was wrong in a sentence: what, where, how much, and when.
func FaultIs(f machine.Fault, b machine.Build) string {
	out := Fault(f.Kind)
	if place := faultPlace(f, b); place != "" {
		out += ", " + place
	}
	if much := faultsInWords[f.Kind].much; much != "" {
		out += " (" + strings.Replace(much, "#", faultSize(f, b), 1) + ")"
	}
	if f.HotOnly {
		out += ", but only when it is warm"
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
		return "leads " + at + " and " + strconv.Itoa(f.At+1)
	case machine.ChargePin:
		return "that of lead " + at
	case machine.DiodeIsOpen, machine.DiodeIsShorted:
		switch {
		case b.Regulating == machine.HalfWave:
			return "its only one"
		case f.At > leads:
			return "from ground to lead " + strconv.Itoa(f.At-leads)
		}
		return "from lead " + at + " to plus"
	}
	return ""
}

func phasePlace(phase int, c machine.Connection) string {
	at := strconv.Itoa(phase)
	switch c {
	case machine.Star:
		return "the one behind lead " + at
	case machine.Delta:
		return "the one between leads " + at + " and " + strconv.Itoa(phase%3+1)
	case machine.TwoPhase:
		return "the one between leads " + strconv.Itoa(2*phase-1) + " and " + strconv.Itoa(2*phase)
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
		return short(f.Size) + " V on a battery of " + strconv.Itoa(b.Volts) + " V"
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
		return strconv.FormatFloat(v, 'f', 0, 64)
	case v >= 9.95:
		return strconv.FormatFloat(v, 'f', 1, 64)
	}
	return strconv.FormatFloat(v, 'f', 2, 64)
}

// FaultGroups lists the parts that faults are named by, in the order of the board.
func FaultGroups() []check.Part {
	return []check.Part{
		check.ChargeWinding, check.Flywheel, check.Regulator, check.Wiring, check.Battery, check.Pickup, check.Exciter,
		check.IgnitionBox, check.KillCircuit, check.IgnitionCoil, check.SparkPlug,
	}
}
