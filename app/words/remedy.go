package words

import (
	"slices"
	"strconv"

	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/machine"
	"coilbook/engine/session"
)

// Words of what to do about a finding.
var (
	MatchTitle    = text("What to buy: match these")
	MaterialTitle = text("What you need")
	NeverTitle    = text("Never")
	HomeTitle     = text("Can I ride home?")
	LeaveTitle    = text("Leave these alone")
	LeaveHint     = text("Readings speak for them: do not buy or take them apart.")
	UnknownTitle  = text("What stays unknown")
)

// thing is what a fault asks to be bought or fetched: how it must match, and what
// it must never be put together with, on any build and as the build has it. All of it:
// common practice, no source.
type thing struct {
	match, never     []text
	matchOn, neverOn func(session.Setup) []string // nil where no build changes it
}

// thingFor is by kind, so that a fault that is added without one fails a test.
var thingFor = table[machine.Kind, thing]{
	{machine.PhaseOpen, statorThing}, {machine.PhaseToCore, statorThing}, {machine.PhaseShorted, statorThing}, {machine.PhaseToPhase, statorThing},
	{machine.NeutralToCore, insulationThing}, {machine.PhaseJoint, solderThing}, {machine.WeakMagnets, flywheelThing},
	{machine.ExciterOpen, statorThing}, {machine.ExciterShorted, statorThing}, {machine.ExciterToCore, statorThing},
	{machine.DiodeIsOpen, regulatorThing}, {machine.DiodeIsShorted, regulatorThing}, {machine.NoCharging, regulatorThing},
	{machine.NoRegulating, regulatorThing}, {machine.LowSetPoint, regulatorThing},
	{machine.RegulatorGround, contactThing}, {machine.FeedWire, wireThing}, {machine.BatteryTerminal, contactThing}, {machine.GroundStrap, contactThing},
	{machine.IgnitionGround, contactThing}, {machine.BoxFeed, wireThing}, {machine.KillWire, insulationThing},
	{machine.ChargePin, pinThing}, {machine.PlugPin, pinThing}, {machine.MainFuse, fuseThing},
	{machine.Sulphated, batteryThing}, {machine.CellShorted, batteryThing}, {machine.FlatBattery, chargerThing}, {machine.Drain, nothingThing},
	{machine.PickupOpen, pickupThing}, {machine.PickupShorted, pickupThing}, {machine.PickupToCore, pickupThing}, {machine.GapWide, gapThing},
	{machine.BoxDead, boxThing}, {machine.BoxShorted, boxThing}, {machine.KillSwitch, switchThing},
	{machine.PrimaryOpen, coilThing}, {machine.PrimaryShorted, coilThing}, {machine.SecondaryOpen, coilThing}, {machine.SecondaryTurns, coilThing},
	{machine.CapBroken, capThing}, {machine.PlugFouled, sparkPlugThing},
}

// Match lists what a part for this fault must have in common with the old one on
// this build.
func Match(k machine.Kind, s session.Setup) []string {
	t := thingFor.of(k)
	return listed(t.match, t.matchOn, s)
}

// NeverPair lists what must not be put together.
func NeverPair(k machine.Kind, s session.Setup) []string {
	t := thingFor.of(k)
	return listed(t.never, t.neverOn, s)
}

func listed(always []text, on func(session.Setup) []string, s session.Setup) []string {
	out := said(always)
	if on != nil {
		out = append(out, on(s)...)
	}
	return out
}

// MatchHeading is over the list of Match.
func MatchHeading(a diagnose.Action) string {
	if a == diagnose.Replace {
		return MatchTitle
	}
	return MaterialTitle
}

// OnBenchSound is what to do with a stator that shows no fault.
var OnBenchSound = text("Fit it, and read its volts AC at 3000 rpm: a few shorted turns hide from an ohm meter.")

// Home says whether one can ride home with a finding, and what to look out for; ""
// where nothing is to be ridden. By the readings alone: brakes, lights and the law
// come first.
func Home(f diagnose.Finding, s session.Setup) string {
	if s.Aim == check.Bench {
		return ""
	}
	named, ok := found(f)
	switch {
	case f.Action == diagnose.NotListed || f.Action == diagnose.Open || !ok:
		return say("Do not count on it: the cause is not known. Have it fetched, or go only as far as you can push it back.")
	case f.Action == diagnose.NoFault:
		return say("Yes, with care: nothing was found, so it may fail again. Keep to roads where you can stop.")
	case named.Fault.HotOnly:
		return say("Perhaps, in short legs: it fails when hot and comes back when cold. Expect it to stop without warning; never where you cannot pull over.")
	}
	if named.Fault.Double() {
		return doubleHome(named.Fault, s)
	}
	return ways.of(wayHome.of(named.Fault.Kind))(s)
}

// way is a class of faults by what they mean for the road.
type way int

const (
	onTheBattery way = iota + 1 // nothing charges: it runs while the battery lasts
	heats                       // something grows hot
	tooHigh                     // the volts run away
	mendFirst                   // quick to mend, and not before
	startOnly                   // it runs once it is started
	parked                      // only standing still is the trouble
	noSpark                     // it will not run
	misfires                    // it runs badly and may stop
	noStop                      // it runs only without its kill wire
)

// wayHome is common practice, no source.
var wayHome = table[machine.Kind, way]{
	{machine.PhaseOpen, onTheBattery}, {machine.PhaseToCore, onTheBattery}, {machine.PhaseShorted, heats}, {machine.PhaseToPhase, heats},
	{machine.PhaseJoint, onTheBattery}, {machine.NeutralToCore, onTheBattery}, {machine.WeakMagnets, onTheBattery},
	{machine.DiodeIsOpen, onTheBattery}, {machine.DiodeIsShorted, heats}, {machine.NoCharging, onTheBattery}, {machine.NoRegulating, tooHigh},
	{machine.LowSetPoint, onTheBattery}, {machine.RegulatorGround, mendFirst}, {machine.ChargePin, heats}, {machine.FeedWire, heats},
	{machine.MainFuse, mendFirst}, {machine.BatteryTerminal, mendFirst}, {machine.Sulphated, startOnly}, {machine.CellShorted, heats},
	{machine.FlatBattery, startOnly}, {machine.Drain, parked}, {machine.GroundStrap, mendFirst},
	{machine.PickupOpen, noSpark}, {machine.PickupShorted, misfires}, {machine.PickupToCore, noSpark}, {machine.GapWide, misfires},
	{machine.PlugPin, misfires}, {machine.ExciterOpen, noSpark}, {machine.ExciterShorted, misfires}, {machine.ExciterToCore, noSpark},
	{machine.BoxDead, noSpark}, {machine.BoxShorted, noSpark}, {machine.KillSwitch, noStop}, {machine.KillWire, noStop},
	{machine.PrimaryOpen, noSpark}, {machine.PrimaryShorted, misfires}, {machine.SecondaryOpen, misfires}, {machine.SecondaryTurns, misfires},
	{machine.CapBroken, misfires}, {machine.PlugFouled, misfires}, {machine.IgnitionGround, mendFirst}, {machine.BoxFeed, mendFirst},
}

var ways = table[way, func(session.Setup) string]{
	{onTheBattery, func(s session.Setup) string {
		if s.Build.Exciter {
			return say("Yes, by daylight: nothing charges the battery, but the exciter feeds the ignition, so the engine keeps running. Lamps and starter will fade.")
		}
		return say("Only a short way, by daylight: nothing charges, and the battery feeds the ignition too. Below about 11 V on a 12 V battery it stops. Charge the battery first.")
	}},
	{heats, func(session.Setup) string {
		return say("Better not: something is carrying current that it should not, and grows hot. If you must, unplug what is at fault, ride by daylight, and stop at the first smell.")
	}},
	{tooHigh, func(session.Setup) string {
		return say("Only if you must: keep the engine slow and the headlamp on, and stop above 15 V on a 12 V battery or if the battery smells, hisses or grows hot.")
	}},
	{mendFirst, func(session.Setup) string {
		return say("Mend it first, it is quick; then yes. A fuse that blows again or a contact that grows hot ends the ride.")
	}},
	{startOnly, func(session.Setup) string {
		return say("Yes, once it runs: do not stop the engine on the way. A bad battery can also upset the regulator, so watch for lamps that grow too bright.")
	}},
	{parked, func(session.Setup) string {
		return say("Yes: it only drains while it stands. Take the minus clamp off when you park it.")
	}},
	{noSpark, func(session.Setup) string {
		return say("No: it will not run like this. Have it fetched, or mend it where it stands.")
	}},
	{misfires, func(session.Setup) string {
		return say("Only a short way, if it runs at all: it may stop without warning. Unburnt fuel makes the exhaust very hot.")
	}},
	{noStop, func(session.Setup) string {
		return say("Not before you have another way to stop the engine: with the kill wire off, only the choke or the fuel tap stops it, and that takes time.")
	}},
}

// LeaveAlone names a part that readings cleared, with the readings.
func LeaveAlone(p check.Part, before, after float64, readings []string) string {
	out := say("%s (%s at first, now %s):", Part(p), certainty(before), certainty(after)) + " "
	for i, r := range readings {
		if i > 0 {
			out += "; "
		}
		out += r
	}
	return out + "."
}

// ReadingIs names a check with what it showed, in one phrase.
func ReadingIs(c check.Check, value string) string { return lowerFirst(CheckName(c)) + ": " + value }

// StrangeReadings says that the readings fit nothing well.
func StrangeReadings(share float64) string {
	return say("The readings fit even the best suspect worse than %s of such machines would: something may be at work that is not on the list.", certainty(share))
}

// MayBeUnlisted says that the fault may be none that the program knows.
func MayBeUnlisted(p float64) string {
	return say("With %s it is something that is not on the list.", SuspectChance(p))
}

// WouldHaveTold names a check that was left out.
func WouldHaveTold(name string, minutes float64) string {
	return say("“%s” was left out (%s); it would still tell something.", name, StepMinutes(minutes))
}

// OnlyThisMuch says how sure the part is while it is not very sure.
func OnlyThisMuch(p float64) string {
	return say("The part itself is only %s sure: about one chance in %s that it is another.", certainty(p), oneIn(1-p))
}

func oneIn(p float64) string {
	for _, n := range []int{2, 3, 4, 5, 6, 8, 10, 15} {
		if p >= 1/(float64(n)+0.5) {
			return strconv.Itoa(n)
		}
	}
	return "20"
}

// unsureOf reports that the user was not sure of a field of the build.
func unsureOf(s session.Setup, field string) bool { return slices.Contains(s.Unsure, field) }
