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
var (
	newStator    = say("A rewound or another stator; look at the insulation under the tape first.")
	newRegulator = say("Another regulator. Check the winding before it gets one: a shorted one kills the next.")
	newPickup    = say("Another pickup, with its gap set anew.")
	newCoil      = say("Another ignition coil.")
	cleanJoint   = say("Clean it to bright metal, tighten it, and read the drop again.")
)

var faultsInWords = map[machine.Kind]faultWords{
	machine.PhaseOpen:       {say("A charge winding is broken"), "", say("Look for a broken wire at the solder joints first; else %s", lowerFirst(newStator))},
	machine.PhaseToCore:     {say("A charge winding touches the core"), say("# along its wire"), newStator},
	machine.PhaseShorted:    {say("Turns of a charge winding are shorted"), say("# of its turns"), newStator},
	machine.PhaseToPhase:    {say("Two charge leads touch each other"), "", say("Look at leads and plug for melted insulation, and part them; else %s", lowerFirst(newStator))},
	machine.PhaseJoint:      {say("A solder joint of a charge winding is bad"), say("# in the joint"), say("Solder the joint anew and wrap it.")},
	machine.NeutralToCore:   {say("The star point touches the core"), "", say("Lift the star point off the core and wrap it.")},
	machine.WeakMagnets:     {say("The flywheel's magnets are weak"), say("# of their strength lost"), say("Another flywheel, or have this one magnetised.")},
	machine.DiodeIsOpen:     {say("A diode of the regulator is open"), "", newRegulator},
	machine.DiodeIsShorted:  {say("A diode of the regulator is shorted"), "", newRegulator},
	machine.NoCharging:      {say("The regulator keeps everything from the battery"), "", newRegulator},
	machine.NoRegulating:    {say("The regulator never holds the voltage down"), "", say("Another regulator, and look after the battery: it was boiled. Check the regulator's ground first.")},
	machine.LowSetPoint:     {say("The regulator holds the voltage too low"), "#", newRegulator},
	machine.RegulatorGround: {say("The regulator has a bad ground"), say("# to the frame"), cleanJoint},
	machine.ChargePin:       {say("A pin of the charge plug is bad"), say("# in the pin, some of it loose"), say("Another pin or plug, crimped and greased; brown plastic says it ran hot.")},
	machine.FeedWire:        {say("The wire from the regulator to the fuse is bad"), say("# in the wire"), say("Find the green or hot place in the wire and make it anew.")},
	machine.MainFuse:        {say("The main fuse is blown"), "", say("Find out why before the next fuse goes in; same rating, never wire.")},
	machine.BatteryTerminal: {say("A clamp on the battery is bad"), say("# in the clamp, some of it loose"), cleanJoint},
	machine.Sulphated:       {say("The battery is worn out inside"), say("# times the resistance of a good one"), say("Another battery; a charger seldom brings it back.")},
	machine.CellShorted:     {say("A cell of the battery is shorted"), "", say("Another battery, and do not charge this one: it boils.")},
	machine.FlatBattery:     {say("The battery is just flat"), say("# of its charge left"), say("Charge it slowly, read it the next day, then ask why it went flat.")},
	machine.Drain:           {say("Something drains the battery with the key off"), "#", say("Pull fuses and plugs one by one until the current goes.")},
	machine.GroundStrap:     {say("The strap from engine to frame is bad"), say("# in the strap"), cleanJoint},

	machine.PickupOpen:     {say("The pickup is broken inside"), "", newPickup},
	machine.PickupShorted:  {say("Turns of the pickup are shorted"), say("# of its turns"), newPickup},
	machine.PickupToCore:   {say("The pickup's winding touches the core"), "", newPickup},
	machine.GapWide:        {say("The pickup's gap is too wide"), say("# wider than usual"), say("Set the gap with a leaf; look for a bent bracket or a slack bearing.")},
	machine.PlugPin:        {say("A pin of pickup and exciter in the plug is bad"), say("# in the pin, some of it loose"), say("Another pin or plug, crimped and greased.")},
	machine.ExciterOpen:    {say("The exciter is broken inside"), "", newStator},
	machine.ExciterShorted: {say("Turns of the exciter are shorted"), say("# of its turns"), newStator},
	machine.ExciterToCore:  {say("The exciter touches the core"), "", newStator},
	machine.BoxDead:        {say("The ignition box is dead"), "", say("Another box, but only after everything that feeds it has been read good.")},
	machine.BoxShorted:     {say("The ignition box shorts its feed"), "", say("Another box, but only after everything that feeds it has been read good.")},
	machine.KillSwitch:     {say("The kill switch stays closed"), "", say("Pull the kill wire off to be sure, then mend or replace the switch.")},
	machine.KillWire:       {say("The kill wire is chafed through"), say("# to the core"), say("Find the place, usually under a clamp or the tank, and wrap it.")},
	machine.PrimaryOpen:    {say("The ignition coil is open on its small pin's side"), "", newCoil},
	machine.PrimaryShorted: {say("Turns are shorted on the ignition coil's small pin's side"), say("# of its turns"), newCoil},
	machine.SecondaryOpen:  {say("The ignition coil is open on its spark lead's side"), "", newCoil},
	machine.SecondaryTurns: {say("Turns are shorted on the ignition coil's spark lead's side"), say("# of its turns"), newCoil},
	machine.CapBroken:      {say("The resistor in the plug cap is broken"), "", say("Another cap; cut the lead back to fresh wire.")},
	machine.PlugFouled:     {say("The spark plug is fouled"), say("# across its gap"), say("Another plug, then find out why it fouled.")},
	machine.IgnitionGround: {say("The ignition box has a bad ground"), say("# to the engine"), cleanJoint},
	machine.BoxFeed:        {say("The ignition box gets its supply through a bad wire"), say("# in the wire"), cleanJoint},
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
