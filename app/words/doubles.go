package words

import (
	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/session"
)

// Words of two faults that come together.
var (
	BothTitle  = say("Why both")
	OrderTitle = say("Mend them in this order")
	bothRemedy = say("Mend both, in the order below: one new part beside the other bad one soon goes the same way.")
)

// doubleWords tell of two faults at once: a phrase for both, how the one leads to the
// other, what to do first, what can hurt, and the way home. All of it: common practice,
// no source.
type doubleWords struct {
	name     string
	link     string
	order    []string
	cautions []string
	home     func(session.Setup) string
}

// Cautions that several of them share.
var (
	hotParts   = say("Plug, stator cover and regulator burn skin right after a run: let them cool first.")
	liveLeads  = say("With the engine running the charge leads can give over 50 V AC: keep fingers off bare pins.")
	batteryGas = say("A battery gives off gas that explodes, most of all while it is charged: fresh air, no flame, no spark, no cigarette.")
	acid       = say("Battery acid burns skin and eyes: gloves and glasses; rinse with plenty of water at once, and see a doctor for eyes.")
	clampOrder = say("Minus clamp off first and on last, so that a spanner that touches the frame shorts nothing.")
)

// Steps that several of them share.
var (
	readWinding = say("Read the charge winding before you buy a regulator: lead to lead alike, each lead to the core open line.")
	readAgain   = say("Read the battery at 3000 rpm before the covers go on: the volts must rise and then stay below 15 V (12 V battery).")
	readDrain   = say("Read the current with the key off as well: a battery that is drained while it stands goes the same way.")
)

// doublesInWords is by id, so that a double that is added without words fails a test.
var doublesInWords = map[fault.ID]doubleWords{
	"phase-to-core-and-diode-shorted": {
		say("A charge winding touches the core, and its diode in the regulator is shorted"),
		say("A winding on the core shorts itself through the regulator's diode to ground in every other half wave. The diode runs hot until it gives way."),
		[]string{
			say("Leave the generator's plug apart until both parts are there: each of the two ruins a new one of the other."),
			say("Stator first: fit it with the plug still apart, and read every charge lead to the core. It must be an open line."),
			say("Regulator second: fit it, clean its ground to bright metal, and put the plug together last."),
			readAgain,
		},
		[]string{hotParts, liveLeads},
		fixedWay(say("Better not: winding and regulator both carry current that they should not, and grow hot. If you must, part the generator's plug, ride by daylight on the battery, and stop at the first smell.")),
	},
	"charge-pin-and-phase-turns": {
		say("A pin of the charge plug is bad, and turns of its winding are shorted"),
		say("The current that burnt the pin has cooked the varnish of its winding as well, until turns touched."),
		[]string{
			say("Read the winding on its own wires behind the plug: a burnt pin hides what the winding reads."),
			say("Plug first: cut the burnt one off on both sides. A new pin in a cooked shell, or against an old pin, burns again."),
			say("Stator second: fit it, crimp new pins to it and to the regulator's side, and grease them."),
			say("Read the drop across each pin at 3000 rpm after ten minutes: all small, all alike, and no pin warm."),
		},
		[]string{hotParts, liveLeads, say("Melted plastic may hide bare wires that touch: look before the engine turns.")},
		fixedWay(say("Better not: the plug and the winding both grow hot, and a plug can catch fire. If you must, part the plug, ride by daylight on the battery, and stop at the first smell.")),
	},
	"regulator-dead-and-battery-sulphated": {
		say("The regulator keeps everything from the battery, and the battery is worn out by it"),
		say("A regulator that lets nothing through leaves the battery flat for weeks, and a battery that stands flat sulphates."),
		[]string{
			readWinding,
			say("Regulator first: a new battery on the old regulator stands flat again and goes the same way."),
			say("Battery second: charge the new one fully before it goes in, or it loads the new regulator to its limit."),
			readAgain, readDrain,
		},
		[]string{batteryGas, acid, clampOrder},
		func(s session.Setup) string {
			if s.Build.Exciter {
				return say("Perhaps, by daylight: nothing charges and the battery holds little, but the exciter feeds the ignition. Once it runs, do not stop the engine, and do not count on lamps.")
			}
			return say("No: nothing charges, and the battery that feeds the ignition holds next to nothing. Have it fetched, or fit a charged battery for a short way by daylight.")
		},
	},
	"battery-cell-and-regulator-dead": {
		say("A cell of the battery is shorted, and the regulator has died of it"),
		say("A shorted cell takes all the current that there is, all the time. A regulator that never rests overheats."),
		[]string{
			say("Battery out first: no charger and no jump lead on it, its good cells boil."),
			readWinding,
			say("Fit the new battery, fully charged, before the new regulator runs: the shorted cell would ruin that one too."),
			readAgain,
		},
		[]string{say("A battery with a shorted cell can burst when it is charged: do not, and keep your face away."), batteryGas, acid, clampOrder},
		fixedWay(say("Better not: the battery takes what it should not, grows hot and may boil, and nothing charges it. If you must, only with another battery, by daylight, and a short way.")),
	},
	"regulator-unbound-and-battery-sulphated": {
		say("The regulator never holds the voltage down, and the battery is boiled dry"),
		say("Volts that nothing holds down boil the water out of the battery, and plates that dry out are lost."),
		[]string{
			say("Look at the regulator's ground first: a bad one lets a sound regulator go too high."),
			say("Regulator first: the old one boils a new battery as well."),
			say("Battery second, and read it at 5000 rpm before you ride: below 15 V on a 12 V battery."),
			say("Then look at lamps and ignition box: they had too many volts as well."),
		},
		[]string{batteryGas, say("A boiled battery is hot, full of gas and wet with acid: let it stand in fresh air before you touch a clamp."), acid, clampOrder},
		fixedWay(say("Only if you must: keep the engine slow and the headlamp on. Stop above 15 V on a 12 V battery, or when the battery smells, hisses or grows hot, and stand back from it.")),
	},
	"weak-magnets-and-pickup-gap": {
		say("The flywheel's magnets are weak, and the pickup's gap is too wide"),
		say("A slack crankshaft bearing lets the flywheel wander: it strikes the core, which cracks and weakens magnets, and its bump stands off from the pickup."),
		[]string{
			say("Bearing first: take hold of the flywheel and lift. If it knocks, nothing else lasts before that is mended."),
			say("Look for cracked or loose magnets and for rub marks on the core."),
			say("Flywheel second; set the gap last, with a leaf: a gap set to the old flywheel is wrong for the next."),
			say("Turn the engine once round by hand: nothing may touch. Then read the pickup while cranking."),
		},
		[]string{
			say("A magnet that breaks loose can jam the flywheel or fly out of it: do not run the engine with the cover off."),
			say("Take a flywheel off with its puller, never with a hammer, and keep fingers from between magnets and steel."),
		},
		fixedWay(say("No: a flywheel that wanders can break a magnet loose and jam at speed. Have it fetched.")),
	},
}

func fixedWay(sentence string) func(session.Setup) string {
	return func(session.Setup) string { return sentence }
}

// WhyBoth says how one fault of a double leads to the other; "" for any other fault.
func WhyBoth(f fault.Fault) string { return doublesInWords[f.ID].link }

// OrderOfWork lists what to do about a double, in order, so that no new part dies of
// the other old one; nil for any other fault.
func OrderOfWork(f fault.Fault) []string { return doublesInWords[f.ID].order }

// MendingCautions lists what can hurt while a double is mended; nil for any other
// fault.
func MendingCautions(f fault.Fault) []string { return doublesInWords[f.ID].cautions }

// namedFault names a fault of one kind or two.
func namedFault(f fault.Fault) string {
	if f.Double() {
		return doublesInWords[f.ID].name
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
var alsoParts = map[check.Part]string{
	check.ChargeWinding: say("the charge winding"), check.Flywheel: say("the flywheel's magnets"), check.Regulator: say("the regulator"), check.Battery: say("the battery"),
	check.Wiring: say("the wiring, its plugs and grounds"), check.Pickup: say("the pickup and its gap"), check.Exciter: say("the exciter"), check.IgnitionBox: say("the ignition box"),
	check.KillCircuit: say("the kill circuit"), check.IgnitionCoil: say("the ignition coil"), check.SparkPlug: say("the spark plug and its cap"),
}

// LookAtToo points at a part that may be at fault beside what is named.
func LookAtToo(a diagnose.AlsoPart) string {
	if a.Share >= 0.4 {
		return say("Look at %s too, before a new part goes in: in about half of such cases it is at fault as well.", alsoParts[a.Part])
	}
	return say("Look at %s too, before a new part goes in: in about 1 of %s such cases it is at fault as well.", alsoParts[a.Part], oneIn(a.Share))
}
