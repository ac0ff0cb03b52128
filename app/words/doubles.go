package words

import (
	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/session"
)

// Words of two faults that come together.
var (
	BothTitle  = text("Why both")
	OrderTitle = text("Mend them in this order")
	bothRemedy = text("Mend both, in the order below: one new part beside the other bad one soon goes the same way.")
)

// doubleWords tell of two faults at once: a phrase for both, how the one leads to the
// other, what to do first, what can hurt, and the way home. All of it: common practice,
// no source.
type doubleWords struct {
	name     text
	link     text
	order    []text
	cautions []text
	home     text
	homeFed  text // where an exciter feeds the ignition; "" where that changes nothing
}

// Cautions that several of them share.
const (
	hotParts   = text("Plug, stator cover and regulator burn skin right after a run: let them cool first.")
	liveLeads  = text("With the engine running the charge leads can give over 50 V AC: keep fingers off bare pins.")
	batteryGas = text("A battery gives off gas that explodes, most of all while it is charged: fresh air, no flame, no spark, no cigarette.")
	acid       = text("Battery acid burns skin and eyes: gloves and glasses; rinse with plenty of water at once, and see a doctor for eyes.")
	clampOrder = text("Minus clamp off first and on last, so that a spanner that touches the frame shorts nothing.")
)

// Steps that several of them share.
const (
	readWinding = text("Read the charge winding before you buy a regulator: lead to lead alike, each lead to the core open line.")
	readAgain   = text("Read the battery at 3000 rpm before the covers go on: the volts must rise and then stay below 15 V (12 V battery).")
	readDrain   = text("Read the current with the key off as well: a battery that is drained while it stands goes the same way.")
)

// doublesInWords is by id, so that a double that is added without words fails a test.
var doublesInWords = table[fault.ID, doubleWords]{
	{"phase-to-core-and-diode-shorted", doubleWords{
		"A charge winding touches the core, and its diode in the regulator is shorted",
		"A winding on the core shorts itself through the regulator's diode to ground in every other half wave. The diode runs hot until it gives way.",
		[]text{
			"Leave the generator's plug apart until both parts are there: each of the two ruins a new one of the other.",
			"Stator first: fit it with the plug still apart, and read every charge lead to the core. It must be an open line.",
			"Regulator second: fit it, clean its ground to bright metal, and put the plug together last.",
			readAgain,
		},
		[]text{hotParts, liveLeads},
		"Better not: winding and regulator both carry current that they should not, and grow hot. If you must, part the generator's plug, ride by daylight on the battery, and stop at the first smell.",
		"",
	}},
	{"charge-pin-and-phase-turns", doubleWords{
		"A pin of the charge plug is bad, and turns of its winding are shorted",
		"The current that burnt the pin has cooked the varnish of its winding as well, until turns touched.",
		[]text{
			"Read the winding on its own wires behind the plug: a burnt pin hides what the winding reads.",
			"Plug first: cut the burnt one off on both sides. A new pin in a cooked shell, or against an old pin, burns again.",
			"Stator second: fit it, crimp new pins to it and to the regulator's side, and grease them.",
			"Read the drop across each pin at 3000 rpm after ten minutes: all small, all alike, and no pin warm.",
		},
		[]text{hotParts, liveLeads, "Melted plastic may hide bare wires that touch: look before the engine turns."},
		"Better not: the plug and the winding both grow hot, and a plug can catch fire. If you must, part the plug, ride by daylight on the battery, and stop at the first smell.",
		"",
	}},
	{"regulator-dead-and-battery-sulphated", doubleWords{
		"The regulator keeps everything from the battery, and the battery is worn out by it",
		"A regulator that lets nothing through leaves the battery flat for weeks, and a battery that stands flat sulphates.",
		[]text{
			readWinding,
			"Regulator first: a new battery on the old regulator stands flat again and goes the same way.",
			"Battery second: charge the new one fully before it goes in, or it loads the new regulator to its limit.",
			readAgain, readDrain,
		},
		[]text{batteryGas, acid, clampOrder},
		"No: nothing charges, and the battery that feeds the ignition holds next to nothing. Have it fetched, or fit a charged battery for a short way by daylight.",
		"Perhaps, by daylight: nothing charges and the battery holds little, but the exciter feeds the ignition. Once it runs, do not stop the engine, and do not count on lamps.",
	}},
	{"battery-cell-and-regulator-dead", doubleWords{
		"A cell of the battery is shorted, and the regulator has died of it",
		"A shorted cell takes all the current that there is, all the time. A regulator that never rests overheats.",
		[]text{
			"Battery out first: no charger and no jump lead on it, its good cells boil.",
			readWinding,
			"Fit the new battery, fully charged, before the new regulator runs: the shorted cell would ruin that one too.",
			readAgain,
		},
		[]text{"A battery with a shorted cell can burst when it is charged: do not, and keep your face away.", batteryGas, acid, clampOrder},
		"Better not: the battery takes what it should not, grows hot and may boil, and nothing charges it. If you must, only with another battery, by daylight, and a short way.",
		"",
	}},
	{"regulator-unbound-and-battery-sulphated", doubleWords{
		"The regulator never holds the voltage down, and the battery is boiled dry",
		"Volts that nothing holds down boil the water out of the battery, and plates that dry out are lost.",
		[]text{
			"Look at the regulator's ground first: a bad one lets a sound regulator go too high.",
			"Regulator first: the old one boils a new battery as well.",
			"Battery second, and read it at 5000 rpm before you ride: below 15 V on a 12 V battery.",
			"Then look at lamps and ignition box: they had too many volts as well.",
		},
		[]text{batteryGas, "A boiled battery is hot, full of gas and wet with acid: let it stand in fresh air before you touch a clamp.", acid, clampOrder},
		"Only if you must: keep the engine slow and the headlamp on. Stop above 15 V on a 12 V battery, or when the battery smells, hisses or grows hot, and stand back from it.",
		"",
	}},
	{"weak-magnets-and-pickup-gap", doubleWords{
		"The flywheel's magnets are weak, and the pickup's gap is too wide",
		"A slack crankshaft bearing lets the flywheel wander: it strikes the core, which cracks and weakens magnets, and its bump stands off from the pickup.",
		[]text{
			"Bearing first: take hold of the flywheel and lift. If it knocks, nothing else lasts before that is mended.",
			"Look for cracked or loose magnets and for rub marks on the core.",
			"Flywheel second; set the gap last, with a leaf: a gap set to the old flywheel is wrong for the next.",
			"Turn the engine once round by hand: nothing may touch. Then read the pickup while cranking.",
		},
		[]text{
			"A magnet that breaks loose can jam the flywheel or fly out of it: do not run the engine with the cover off.",
			"Take a flywheel off with its puller, never with a hammer, and keep fingers from between magnets and steel.",
		},
		"No: a flywheel that wanders can break a magnet loose and jam at speed. Have it fetched.",
		"",
	}},
}

// doubleHome says whether one can ride home with both faults.
func doubleHome(f fault.Fault, s session.Setup) string {
	both := doublesInWords.of(f.ID)
	sentence := both.home
	if both.homeFed != "" && s.Build.Exciter {
		sentence = both.homeFed
	}
	return say(sentence)
}

// WhyBoth says how one fault of a double leads to the other; "" for any other fault.
func WhyBoth(f fault.Fault) string { return say(doublesInWords.of(f.ID).link) }

// OrderOfWork lists what to do about a double, in order, so that no new part dies of
// the other old one; nil for any other fault.
func OrderOfWork(f fault.Fault) []string { return said(doublesInWords.of(f.ID).order) }

// MendingCautions lists what can hurt while a double is mended; nil for any other
// fault.
func MendingCautions(f fault.Fault) []string { return said(doublesInWords.of(f.ID).cautions) }

// namedFault names a fault of one kind or two.
func namedFault(f fault.Fault) string {
	if f.Double() {
		return say(doublesInWords.of(f.ID).name)
	}
	return Fault(f.Kind)
}

// remedyFor says what to do about a fault of one kind or two.
func remedyFor(f fault.Fault) string {
	if f.Double() {
		return bothRemedy
	}
	return FaultRemedy(f.Kind)
}

// PartsTogether names the parts that are at fault, as a sentence starts; "" for none.
func PartsTogether(s fault.Parts) string {
	list := s.List()
	switch len(list) {
	case 0:
		return ""
	case 1:
		return Part(list[0])
	}
	return say("%s, and %s", Part(list[0]), lowerFirst(Part(list[1])))
}

// bothChance says how sure it is that two parts are at fault, and by these two faults.
func bothChance(f diagnose.Finding, s diagnose.Suspect) string {
	return say("%s, both: %s. By these two faults: %s.", PartsTogether(f.Parts), SuspectChance(f.Probability), SuspectChance(s.Probability))
}

// alsoParts name a part in the middle of a sentence, with its article.
var alsoParts = table[check.Part, text]{
	{check.ChargeWinding, "the charge winding"}, {check.Flywheel, "the flywheel's magnets"}, {check.Regulator, "the regulator"}, {check.Battery, "the battery"},
	{check.Wiring, "the wiring, its plugs and grounds"}, {check.Pickup, "the pickup and its gap"}, {check.Exciter, "the exciter"}, {check.IgnitionBox, "the ignition box"},
	{check.KillCircuit, "the kill circuit"}, {check.IgnitionCoil, "the ignition coil"}, {check.SparkPlug, "the spark plug and its cap"},
}

// LookAtToo points at a part that may be at fault beside what is named.
func LookAtToo(a diagnose.AlsoPart) string {
	if a.Share >= 0.4 {
		return say("Look at %s too, before a new part goes in: in about half of such cases it is at fault as well.", say(alsoParts.of(a.Part)))
	}
	return say("Look at %s too, before a new part goes in: in about 1 of %s such cases it is at fault as well.", say(alsoParts.of(a.Part)), oneIn(a.Share))
}
