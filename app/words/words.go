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
	return terminals[t]
}

var terminals = map[check.Terminal]string{
	check.OtherProbe:  "the other probe",
	check.Core:        "bare metal of the stator core",
	check.GroundLead:  "the ground lead in the plug",
	check.PickupA:     "first pickup lead",
	check.PickupB:     "second pickup lead",
	check.ExciterLead: "the exciter lead",
	check.ReluctorGap: "between pickup and the raised bar on the flywheel",
}

// ShortTerminal names a point where there is room for one word.
func ShortTerminal(t check.Terminal) string {
	if n, ok := strings.CutPrefix(string(t), "charge-"); ok {
		return n
	}
	return map[check.Terminal]string{
		check.Core: "core", check.GroundLead: "ground", check.PickupA: "pickup 1", check.PickupB: "pickup 2",
		check.ExciterLead: "exciter", check.OtherProbe: "probe", check.ReluctorGap: "gap",
	}[t]
}

// CheckName is the short name of a check, for lists and headings.
func CheckName(c check.Check) string {
	switch c.Measures {
	case spec.LeadZero:
		return "Probes held together"
	case spec.CoreContinuity:
		return "Ground lead to core"
	case spec.ChargePair:
		return "Charge leads " + strconv.Itoa(c.Leads[0]) + " and " + strconv.Itoa(c.Leads[1])
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
	return string(c.ID)
}

// CheckQuestion is the heading of a check's own screen.
func CheckQuestion(c check.Check) string {
	switch c.Measures {
	case spec.LeadZero:
		return "Touch the probe tips together"
	case spec.ExciterCranking:
		return "Exciter volts while cranking"
	}
	return CheckName(c)
}

// Why says in one sentence what a check is good for.
func Why(c check.Check) string { return why[c.Measures] }

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
	sign := map[meter.Function]string{meter.Ohms: "Ω", meter.VoltsAC: "V~", meter.VoltsDC: "V⎓", meter.AmpsDC: "A⎓"}[c.Function]
	if c.Instrument == check.FeelerGauge {
		return "feeler gauge"
	}
	if m.Auto {
		return sign + " (auto)"
	}
	return sign + " " + strings.TrimSpace(strings.TrimRight(r.Label, "ΩVA"))
}

// Jacks says which sockets of the meter are used.
func Jacks(c check.Check) string {
	if c.Instrument == check.FeelerGauge {
		return "none"
	}
	return "COM · VΩ"
}

// Where says plug and engine state in few words.
func Where(c check.Check) string {
	switch {
	case c.Measures == spec.LeadZero:
		return "off the machine"
	case c.Engine == check.Cranking:
		return "together, cranking"
	case c.Plug == check.Together:
		return "together, stopped"
	case c.Instrument == check.FeelerGauge:
		return "stopped"
	}
	return "apart, stopped"
}

// Part names a part, as a sentence starts.
func Part(p check.Part) string {
	return map[check.Part]string{
		check.MeterLeads: "Meter leads", check.ChargeWinding: "Charge winding", check.Pickup: "Pickup",
		check.Exciter: "Exciter", check.CoreGround: "Ground lead",
	}[p]
}

// Aim names what the user came for.
func Aim(a check.Aim) string {
	return map[check.Aim]string{
		check.Bench: "Stator on the bench", check.NoCharge: "Won't charge", check.NoSpark: "No spark, or a weak one",
	}[a]
}

// AimHint says it in other words.
func AimHint(a check.Aim) string {
	return map[check.Aim]string{
		check.Bench: "check it before it goes in", check.NoCharge: "battery goes flat, lamp dim at speed",
		check.NoSpark: "won't start, or dies under load",
	}[a]
}

// Outcome is the verdict's word.
func Outcome(o spec.Outcome) string {
	return map[spec.Outcome]string{spec.InSpec: "in spec", spec.OutOfSpec: "out of spec", spec.CannotTell: "cannot tell"}[o]
}
