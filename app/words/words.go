// Package words holds every sentence a person reads, so that one place is to be
// checked for plain English and, later, translated. It is pure: facts come in,
// text goes out.
package words

import (
	"cmp"
	"strings"

	"coilbook/app/tongue"
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// Name and what it is for.
var (
	AppName = "Coilbook"
	AppJob  = text("Find out why a small machine does not charge or does not spark, with a cheap meter and no signal.")
)

// Terminal names a point for a probe.
func Terminal(t check.Terminal) string {
	if n, ok := strings.CutPrefix(string(t), "charge-"); ok {
		return say("charge lead %s", n)
	}
	if n, ok := strings.CutPrefix(string(t), "regulator-"); ok && len(n) == 1 {
		return say("the regulator's side of charge lead %s", n)
	}
	return say(terminals.of(t))
}

var terminals = table[check.Terminal, text]{
	{check.OtherProbe, "the other probe"},
	{check.Core, "bare metal of the stator core"},
	{check.GroundLead, "the ground lead in the plug"},
	{check.PickupA, "the first pickup lead"},
	{check.PickupB, "the second pickup lead"},
	{check.ExciterLead, "the exciter lead"},
	{check.ReluctorGap, "between pickup and the raised bar on the flywheel"},
	{check.BoxOutput, "the lead from the ignition box to the coil"},

	{check.BatteryPlus, "battery plus"},
	{check.BatteryMinus, "battery minus"},
	{check.ResistorA, "one end of the known resistor"},
	{check.ResistorB, "the resistor's other end"},

	{check.PlusClamp, "the cable clamp on battery plus"},
	{check.MinusClamp, "the clamp that came off battery minus"},
	{check.FuseIn, "the main fuse, harness side"},
	{check.FuseOut, "the main fuse, battery side"},
	{check.RegulatorPlus, "the regulator's plus wire"},
	{check.RegulatorBody, "the regulator's body or ground wire"},
	{check.Frame, "bare metal of the frame"},
	{check.KeyOut, "the wire that the key turns on"},
	{check.LightingLead, "the lighting lead"},
	{check.PickupTwo, "the second pickup's live lead"},
	{check.BoxExciter, "the exciter wire at the ignition box"},
	{check.BoxPickup, "the pickup wire at the ignition box"},
	{check.BoxGround, "the ground pin of the ignition box"},
	{check.BoxFeed, "the supply pin of the ignition box"},
	{check.KillWire, "the kill wire"},
	{check.CoilPrimary, "the small pin of the ignition coil"},
	{check.SparkLead, "the bare end of the spark lead"},
	{check.CapScrew, "the cap's screw for the lead"},
	{check.CapEnd, "the spring that grips the plug"},
	{check.PlugTop, "the spark plug's top"},
	{check.PlugThread, "its thread"},
}

// ShortTerminal names a point where there is room for one word.
func ShortTerminal(t check.Terminal) string {
	if n, ok := strings.CutPrefix(string(t), "charge-"); ok {
		return n
	}
	if n, ok := strings.CutPrefix(string(t), "regulator-"); ok && len(n) == 1 {
		return say("reg %s", n)
	}
	return say(shortTerminals.of(t))
}

var shortTerminals = table[check.Terminal, text]{
	{check.Core, "core"}, {check.GroundLead, "ground"}, {check.PickupA, "pickup 1"}, {check.PickupB, "pickup 2"},
	{check.ExciterLead, "exciter"}, {check.OtherProbe, "probe"}, {check.ReluctorGap, "gap"},
	{check.BoxOutput, "box out"}, {check.BatteryPlus, "+"}, {check.BatteryMinus, "−"}, {check.ResistorA, "R end 1"}, {check.ResistorB, "R end 2"},
	{check.PlusClamp, "clamp +"}, {check.MinusClamp, "clamp −"}, {check.FuseIn, "fuse in"}, {check.FuseOut, "fuse out"}, {check.RegulatorPlus, "reg +"},
	{check.RegulatorBody, "reg body"}, {check.Frame, "frame"}, {check.KeyOut, "key out"}, {check.LightingLead, "lights"},
	{check.PickupTwo, "pickup 3"}, {check.BoxExciter, "box exc"}, {check.BoxPickup, "box trig"}, {check.BoxGround, "box gnd"},
	{check.BoxFeed, "box feed"}, {check.KillWire, "kill"}, {check.CoilPrimary, "coil pin"}, {check.SparkLead, "HT lead"},
	{check.CapScrew, "screw"}, {check.CapEnd, "cap end"}, {check.PlugTop, "top"}, {check.PlugThread, "thread"},
}

// CheckName is the short name of a check, for lists and headings.
func CheckName(c check.Check) string {
	if c.Method == check.VoltAmp && !c.Feeds {
		return say("%s, by drops", upperFirst(leadsIn(c)))
	}
	switch c.Measures {
	case spec.LeadZero:
		return say("Probes held together")
	case spec.CoreContinuity:
		return say("Ground lead to core")
	case spec.ChargePair:
		return say("Charge %s", leadsIn(c))
	case spec.ChargeGrounded:
		return say("Charge lead to core (winding)")
	case spec.ChargeToCore:
		return say("Charge lead %d to core", c.Leads[0])
	case spec.PhaseToPhase:
		return say("Between the two charge windings")
	case spec.PickupResistance:
		return say("Pickup resistance")
	case spec.PickupGap:
		return say("Pickup air gap")
	case spec.ExciterResist:
		return say("Exciter resistance")
	case spec.ExciterCranking:
		return say("Exciter volts, cranking")
	}
	return methodName(c)
}

func methodName(c check.Check) string {
	switch c.Measures {
	case spec.ResistorDrop:
		return say("Known resistor, %s", leadsIn(c))
	case spec.WindingDrop:
		return say("Drop over %s", leadsIn(c))
	case spec.HotResistance:
		return say("%s, hot", windingOf(c))
	case spec.WindingHeat:
		return say("How hot: %s", lowerFirst(windingOf(c)))
	case spec.ExciterPeak, spec.PickupPeak, spec.BoxPeak:
		return say("%s peak, cranking", Part(c.Part))
	case spec.BatteryVolts:
		return say("Battery on the DC range")
	case spec.BatteryOnAC:
		if c.Swapped {
			return say("Battery on the AC range, leads swapped")
		}
		return say("Battery on the AC range")
	case spec.KnownResistor:
		return say("Known resistor")
	}
	return wholeName(c)
}

// leadsIn names the charge leads of a check inside a sentence.
func leadsIn(c check.Check) string {
	if len(c.Leads) == 1 {
		return say("lead %d to core", c.Leads[0])
	}
	return say("leads %d and %d", c.Leads[0], c.Leads[1])
}

// windingOf names the winding between a check's probes, as a sentence starts.
func windingOf(c check.Check) string {
	if c.Part == check.ChargeWinding {
		return say("Charge %s", leadsIn(c))
	}
	return Part(c.Part)
}

// CheckQuestion is the heading of a check's own screen.
func CheckQuestion(c check.Check) string {
	if c.Instrument == check.Eyes {
		return Look(c.Looks)
	}
	switch c.Measures {
	case spec.LeadZero:
		return say("Touch the probe tips together")
	case spec.ExciterCranking:
		return say("Exciter volts while cranking")
	case spec.ResistorDrop:
		return say("Drop over the known resistor, %s", leadsIn(c))
	case spec.WindingDrop:
		return say("Drop over the winding, %s", leadsIn(c))
	case spec.HotResistance:
		return say("%s, right after a run", windingOf(c))
	case spec.ExciterPeak, spec.PickupPeak, spec.BoxPeak:
		return say("%s peak while cranking", Part(c.Part))
	case spec.KnownResistor:
		return say("A resistor of known value")
	}
	return CheckName(c)
}

// Why says in one sentence what a check is good for.
func Why(c check.Check) string {
	if c.Swapped {
		return say("About the same both ways: DC gets in. About double one way and nothing the other: a single diode.")
	}
	return say(cmp.Or(why.of(c.Measures), wholeWhy.of(c.Measures), diodeWhy.of(c.Measures), looks.of(c.Looks).why))
}

// Minutes says how long a check takes.
func Minutes(c check.Check) string {
	switch {
	case c.Minutes < 1:
		return say("About half a minute.")
	case c.Minutes == 1:
		return say("About a minute.")
	}
	return say("About %s minutes.", decimal(c.Minutes, 0))
}

var why = table[spec.Measurand, text]{
	{spec.LeadZero, "Your leads have ohms of their own. They are taken off every small reading."},
	{spec.CoreContinuity, "A broken ground lead makes good windings look dead."},
	{spec.ChargePair, "Finds a broken winding; compared with its sisters, a shorted one."},
	{spec.ChargeGrounded, "The other end of this winding sits on the core, so it must conduct."},
	{spec.ChargeToCore, "The winding must not touch the iron it is wound on."},
	{spec.PhaseToPhase, "The two windings must not touch each other."},
	{spec.PickupResistance, "Finds a broken or shorted pickup: no pulse, no spark."},
	{spec.PickupGap, "Too wide and the pulse is too weak; too narrow and metal touches."},
	{spec.ExciterResist, "Finds a broken or shorted exciter: it feeds the ignition box."},
	{spec.ExciterCranking, "Shows whether the exciter gives enough with the box drawing on it. Cranking is slower than most meters are made for; the doubt allows for it."},

	{spec.ResistorDrop, "One current runs through both, so this drop says how much. Your meter's error cancels."},
	{spec.WindingDrop, "Compared with the known resistor, it gives the winding's milliohms. A few shorted turns show."},
	{spec.HotResistance, "Some breaks and shorts show only when the copper is hot."},
	{spec.ExciterPeak, "The box lives on the peak. Ordinary AC volts do not show it."},
	{spec.PickupPeak, "The pulse is short: ordinary AC volts show next to nothing of it. The adapter holds its peak."},
	{spec.BoxPeak, "Shows whether the box sends its pulse to the coil. Exciter and pickup come first: it needs both."},
	{spec.BatteryVolts, "The number to compare with: the AC range is tried on the same battery."},
	{spec.BatteryOnAC, "A battery is no AC. If the meter shows nothing, it keeps DC out of its AC range."},
	{spec.KnownResistor, "Shows how true the ohm range is, with a value you know."},
}

// Meter names a described meter.
func Meter(id string) string {
	return say(metersInWords.of(id))
}

var metersInWords = table[string, text]{
	{"cheap", "Cheap, turn-the-dial (1999 counts)"},
	{"auto4000", "Mid-price, picks its own range (4000 counts)"},
	{"auto6000", "Good, true RMS (6000 counts)"},
}

// Dial says where the dial goes.
func Dial(c check.Check, m meter.Meter, r meter.Range) string {
	sign := map[meter.Function]string{meter.Ohms: "Ω", meter.VoltsAC: "V~", meter.VoltsDC: "V=", meter.AmpsDC: "A="}[c.Function]
	switch {
	case c.Instrument == check.FeelerGauge:
		return say("feeler gauge")
	case c.Instrument == check.Eyes:
		return say("eyes only")
	case c.Function == meter.Diode:
		return DiodeDial
	case m.Auto:
		return say("%s (auto)", sign)
	}
	if number, ok := strings.CutSuffix(r.Label, " mV"); ok {
		return "m" + sign + " " + tongue.Number(number)
	}
	return strings.TrimSpace(sign + " " + tongue.Number(strings.TrimSpace(strings.TrimRight(r.Label, "ΩVA"))))
}

// Jacks says which sockets of the meter are used.
func Jacks(c check.Check) string {
	switch {
	case c.Instrument != check.Multimeter:
		return say("none")
	case c.Function == meter.AmpsDC:
		return "COM · 10 A"
	}
	return "COM · VΩ"
}

// Where says plug and engine state in few words.
func Where(c check.Check) string {
	switch {
	case c.Measures == spec.LeadZero || c.Part == check.MeterItself:
		return say("off the machine")
	case c.Measures == spec.HotResistance:
		return say("apart, just stopped")
	}
	return plugInWords(c) + doing(c)
}

// Part names a part, as a sentence starts.
func Part(p check.Part) string {
	return say(parts.of(p))
}

var parts = table[check.Part, text]{
	{check.MeterLeads, "Meter leads"}, {check.ChargeWinding, "Charge winding"}, {check.Pickup, "Pickup"},
	{check.Exciter, "Exciter"}, {check.CoreGround, "Ground lead"},
	{check.IgnitionBox, "Ignition box"}, {check.MeterItself, "The meter itself"},
	{check.Flywheel, "Flywheel and magnets"}, {check.Regulator, "Regulator-rectifier"}, {check.Battery, "Battery"},
	{check.Wiring, "Wiring, fuse and grounds"}, {check.KillCircuit, "Kill circuit"}, {check.IgnitionCoil, "Ignition coil"},
	{check.SparkPlug, "Spark plug and cap"},
}

// Aim names what the user came for.
func Aim(a check.Aim) string { return say(aims.of(a).name) }

// AimHint says it in other words.
func AimHint(a check.Aim) string { return say(aims.of(a).hint) }

type aimWords struct{ name, hint text }

var aims = table[check.Aim, aimWords]{
	{check.NoCharge, aimWords{"Won't charge", "battery low, lamp dim at speed"}},
	{check.Overcharges, aimWords{"Charges too much", "bulbs blow, battery boils dry"}},
	{check.FlatStanding, aimWords{"Flat after standing", "good last week, empty now"}},
	{check.NoSpark, aimWords{"No spark", "it cranks and won't start"}},
	{check.WeakSpark, aimWords{"Weak spark", "starts badly, misfires now and then"}},
	{check.CutsOutHot, aimWords{"Cuts out when hot", "runs again once it has cooled"}},
	{check.Bench, aimWords{"Stator on the bench", "check it before it goes in"}},
	{check.SelfCheck, aimWords{"Check the meter itself", "learn what it is worth, with a battery and its own leads"}},
}

// Outcome is the verdict's word.
func Outcome(o spec.Outcome) string {
	return map[spec.Outcome]string{spec.InSpec: say("in spec"), spec.OutOfSpec: say("out of spec"), spec.CannotTell: say("cannot tell")}[o]
}
