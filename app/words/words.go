// Package words holds every sentence a person reads, so that one place is to be
// checked for plain English and, later, translated. It is pure: facts come in,
// text goes out.
package words

import (
	"strconv"
	"strings"

	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// Name and what it is for.
const (
	AppName = "Coilbook"
	AppJob  = "Find out why a small machine does not charge or does not spark, with a cheap meter and no signal."
)

// Terminal names a point for a probe.
func Terminal(t check.Terminal) string {
	if n, ok := strings.CutPrefix(string(t), "charge-"); ok {
		return "charge lead " + n
	}
	if n, ok := strings.CutPrefix(string(t), "regulator-"); ok && len(n) == 1 {
		return "the regulator's side of charge lead " + n
	}
	return terminals[t]
}

var terminals = map[check.Terminal]string{
	check.OtherProbe:  "the other probe",
	check.Core:        "bare metal of the stator core",
	check.GroundLead:  "the ground lead in the plug",
	check.PickupA:     "the first pickup lead",
	check.PickupB:     "the second pickup lead",
	check.ExciterLead: "the exciter lead",
	check.ReluctorGap: "between pickup and the raised bar on the flywheel",
	check.BoxOutput:   "the lead from the ignition box to the coil",

	check.BatteryPlus:  "battery plus",
	check.BatteryMinus: "battery minus",
	check.ResistorA:    "one end of the known resistor",
	check.ResistorB:    "the resistor's other end",

	check.PlusClamp:     "the cable clamp on battery plus",
	check.MinusClamp:    "the clamp that came off battery minus",
	check.FuseIn:        "the main fuse, harness side",
	check.FuseOut:       "the main fuse, battery side",
	check.RegulatorPlus: "the regulator's plus wire",
	check.RegulatorBody: "the regulator's body or ground wire",
	check.Frame:         "bare metal of the frame",
	check.KeyOut:        "the wire that the key turns on",
	check.LightingLead:  "the lighting lead",
	check.PickupTwo:     "the second pickup's live lead",
	check.BoxExciter:    "the exciter wire at the ignition box",
	check.BoxPickup:     "the pickup wire at the ignition box",
	check.BoxGround:     "the ground pin of the ignition box",
	check.BoxFeed:       "the supply pin of the ignition box",
	check.KillWire:      "the kill wire",
	check.CoilPrimary:   "the small pin of the ignition coil",
	check.SparkLead:     "the bare end of the spark lead",
	check.CapScrew:      "the cap's screw for the lead",
	check.CapEnd:        "the spring that grips the plug",
	check.PlugTop:       "the spark plug's top",
	check.PlugThread:    "its thread",
}

// ShortTerminal names a point where there is room for one word.
func ShortTerminal(t check.Terminal) string {
	if n, ok := strings.CutPrefix(string(t), "charge-"); ok {
		return n
	}
	if n, ok := strings.CutPrefix(string(t), "regulator-"); ok && len(n) == 1 {
		return "reg " + n
	}
	return map[check.Terminal]string{
		check.Core: "core", check.GroundLead: "ground", check.PickupA: "pickup 1", check.PickupB: "pickup 2",
		check.ExciterLead: "exciter", check.OtherProbe: "probe", check.ReluctorGap: "gap",
		check.BoxOutput: "box out", check.BatteryPlus: "+", check.BatteryMinus: "−", check.ResistorA: "R end 1", check.ResistorB: "R end 2",
		check.PlusClamp: "clamp +", check.MinusClamp: "clamp −", check.FuseIn: "fuse in", check.FuseOut: "fuse out", check.RegulatorPlus: "reg +",
		check.RegulatorBody: "reg body", check.Frame: "frame", check.KeyOut: "key out", check.LightingLead: "lights",
		check.PickupTwo: "pickup 3", check.BoxExciter: "box exc", check.BoxPickup: "box trig", check.BoxGround: "box gnd",
		check.BoxFeed: "box feed", check.KillWire: "kill", check.CoilPrimary: "coil pin", check.SparkLead: "HT lead",
		check.CapScrew: "screw", check.CapEnd: "cap end", check.PlugTop: "top", check.PlugThread: "thread",
	}[t]
}

// CheckName is the short name of a check, for lists and headings.
func CheckName(c check.Check) string {
	if c.Method == check.VoltAmp && !c.Feeds {
		return upperFirst(leadsIn(c)) + ", by drops"
	}
	switch c.Measures {
	case spec.LeadZero:
		return "Probes held together"
	case spec.CoreContinuity:
		return "Ground lead to core"
	case spec.ChargePair:
		return "Charge " + leadsIn(c)
	case spec.ChargeGrounded:
		return "Charge lead to core (winding)"
	case spec.ChargeToCore:
		return "Charge lead " + strconv.Itoa(c.Leads[0]) + " to core"
	case spec.PhaseToPhase:
		return "Between the two charge windings"
	case spec.PickupResistance:
		return "Pickup resistance"
	case spec.PickupGap:
		return "Pickup air gap"
	case spec.ExciterResist:
		return "Exciter resistance"
	case spec.ExciterCranking:
		return "Exciter volts, cranking"
	}
	return methodName(c)
}

func methodName(c check.Check) string {
	switch c.Measures {
	case spec.ResistorDrop:
		return "Known resistor, " + leadsIn(c)
	case spec.WindingDrop:
		return "Drop over " + leadsIn(c)
	case spec.HotResistance:
		return windingOf(c) + ", hot"
	case spec.WindingHeat:
		return "How hot: " + lowerFirst(windingOf(c))
	case spec.ExciterPeak, spec.PickupPeak, spec.BoxPeak:
		return Part(c.Part) + " peak, cranking"
	case spec.BatteryVolts:
		return "Battery on the DC range"
	case spec.BatteryOnAC:
		if c.Swapped {
			return "Battery on the AC range, leads swapped"
		}
		return "Battery on the AC range"
	case spec.KnownResistor:
		return "Known resistor"
	}
	return wholeName(c)
}

// leadsIn names the charge leads of a check inside a sentence.
func leadsIn(c check.Check) string {
	if len(c.Leads) == 1 {
		return "lead " + strconv.Itoa(c.Leads[0]) + " to core"
	}
	return "leads " + strconv.Itoa(c.Leads[0]) + " and " + strconv.Itoa(c.Leads[1])
}

// windingOf names the winding between a check's probes, as a sentence starts.
func windingOf(c check.Check) string {
	if c.Part == check.ChargeWinding {
		return "Charge " + leadsIn(c)
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
		return "Touch the probe tips together"
	case spec.ExciterCranking:
		return "Exciter volts while cranking"
	case spec.ResistorDrop:
		return "Drop over the known resistor, " + leadsIn(c)
	case spec.WindingDrop:
		return "Drop over the winding, " + leadsIn(c)
	case spec.HotResistance:
		return windingOf(c) + ", right after a run"
	case spec.ExciterPeak, spec.PickupPeak, spec.BoxPeak:
		return Part(c.Part) + " peak while cranking"
	case spec.KnownResistor:
		return "A resistor of known value"
	}
	return CheckName(c)
}

// Why says in one sentence what a check is good for.
func Why(c check.Check) string {
	if c.Swapped {
		return "About the same both ways: DC gets in. About double one way and nothing the other: a single diode."
	}
	for _, said := range []string{why[c.Measures], wholeWhy[c.Measures], diodeWhy[c.Measures]} {
		if said != "" {
			return said
		}
	}
	return looks[c.Looks].why
}

// Minutes says how long a check takes.
func Minutes(c check.Check) string {
	switch {
	case c.Minutes < 1:
		return "About half a minute."
	case c.Minutes == 1:
		return "About a minute."
	}
	return "About " + strconv.FormatFloat(c.Minutes, 'f', 0, 64) + " minutes."
}

var why = map[spec.Measurand]string{
	spec.LeadZero:         "Your leads have ohms of their own. They are taken off every small reading.",
	spec.CoreContinuity:   "A broken ground lead makes good windings look dead.",
	spec.ChargePair:       "Finds a broken winding; compared with its sisters, a shorted one.",
	spec.ChargeGrounded:   "The other end of this winding sits on the core, so it must conduct.",
	spec.ChargeToCore:     "The winding must not touch the iron it is wound on.",
	spec.PhaseToPhase:     "The two windings must not touch each other.",
	spec.PickupResistance: "Finds a broken or shorted pickup: no pulse, no spark.",
	spec.PickupGap:        "Too wide and the pulse is too weak; too narrow and metal touches.",
	spec.ExciterResist:    "Finds a broken or shorted exciter: it feeds the ignition box.",
	spec.ExciterCranking:  "Shows whether the exciter gives enough with the box drawing on it. Cranking is slower than most meters are made for; the doubt allows for it.",

	spec.ResistorDrop:  "One current runs through both, so this drop says how much. Your meter's error cancels.",
	spec.WindingDrop:   "Compared with the known resistor, it gives the winding's milliohms. A few shorted turns show.",
	spec.HotResistance: "Some breaks and shorts show only when the copper is hot.",
	spec.ExciterPeak:   "The box lives on the peak. Ordinary AC volts do not show it.",
	spec.PickupPeak:    "The pulse is short: ordinary AC volts show next to nothing of it. The adapter holds its peak.",
	spec.BoxPeak:       "Shows whether the box sends its pulse to the coil. Exciter and pickup come first: it needs both.",
	spec.BatteryVolts:  "The number to compare with: the AC range is tried on the same battery.",
	spec.BatteryOnAC:   "A battery is no AC. If the meter shows nothing, it keeps DC out of its AC range.",
	spec.KnownResistor: "Shows how true the ohm range is, with a value you know.",
}

// Meter names a described meter.
func Meter(id string) string {
	return map[string]string{
		"cheap":    "Cheap, turn-the-dial (1999 counts)",
		"auto4000": "Mid-price, picks its own range (4000 counts)",
		"auto6000": "Good, true RMS (6000 counts)",
	}[id]
}

// Dial says where the dial goes.
func Dial(c check.Check, m meter.Meter, r meter.Range) string {
	sign := map[meter.Function]string{meter.Ohms: "Ω", meter.VoltsAC: "V~", meter.VoltsDC: "V=", meter.AmpsDC: "A="}[c.Function]
	switch {
	case c.Instrument == check.FeelerGauge:
		return "feeler gauge"
	case c.Instrument == check.Eyes:
		return "eyes only"
	case c.Function == meter.Diode:
		return DiodeDial
	case m.Auto:
		return sign + " (auto)"
	}
	if number, ok := strings.CutSuffix(r.Label, " mV"); ok {
		return "m" + sign + " " + number
	}
	return strings.TrimSpace(sign + " " + strings.TrimSpace(strings.TrimRight(r.Label, "ΩVA")))
}

// Jacks says which sockets of the meter are used.
func Jacks(c check.Check) string {
	switch {
	case c.Instrument != check.Multimeter:
		return "none"
	case c.Function == meter.AmpsDC:
		return "COM · 10 A"
	}
	return "COM · VΩ"
}

// Where says plug and engine state in few words.
func Where(c check.Check) string {
	switch {
	case c.Measures == spec.LeadZero || c.Part == check.MeterItself:
		return "off the machine"
	case c.Measures == spec.HotResistance:
		return "apart, just stopped"
	}
	return plugInWords(c) + doing(c)
}

// Part names a part, as a sentence starts.
func Part(p check.Part) string {
	return map[check.Part]string{
		check.MeterLeads: "Meter leads", check.ChargeWinding: "Charge winding", check.Pickup: "Pickup",
		check.Exciter: "Exciter", check.CoreGround: "Ground lead",
		check.IgnitionBox: "Ignition box", check.MeterItself: "The meter itself",
		check.Flywheel: "Flywheel and magnets", check.Regulator: "Regulator-rectifier", check.Battery: "Battery",
		check.Wiring: "Wiring, fuse and grounds", check.KillCircuit: "Kill circuit", check.IgnitionCoil: "Ignition coil",
		check.SparkPlug: "Spark plug and cap",
	}[p]
}

// Aim names what the user came for.
func Aim(a check.Aim) string { return aims[a].name }

// AimHint says it in other words.
func AimHint(a check.Aim) string { return aims[a].hint }

var aims = map[check.Aim]struct{ name, hint string }{
	check.NoCharge:     {"Won't charge", "battery low, lamp dim at speed"},
	check.Overcharges:  {"Charges too much", "bulbs blow, battery boils dry"},
	check.FlatStanding: {"Flat after standing", "good last week, empty now"},
	check.NoSpark:      {"No spark", "it cranks and won't start"},
	check.WeakSpark:    {"Weak spark", "starts badly, misfires now and then"},
	check.CutsOutHot:   {"Cuts out when hot", "runs again once it has cooled"},
	check.Bench:        {"Stator on the bench", "check it before it goes in"},
	check.SelfCheck:    {"Check the meter itself", "learn what it is worth, with a battery and its own leads"},
}

// Outcome is the verdict's word.
func Outcome(o spec.Outcome) string {
	return map[spec.Outcome]string{spec.InSpec: "in spec", spec.OutOfSpec: "out of spec", spec.CannotTell: "cannot tell"}[o]
}
