package words

import (
	"math"
	"strconv"
	"strings"

	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

// Reading writes what was typed, as it stood on the display.
func Reading(l assess.Line) string {
	switch {
	case l.Skipped:
		return "not done"
	case !l.Answered:
		return "–"
	case l.Unread != nil:
		return l.Answer.Reading.Text
	case l.Derived && !l.Verdict.HasValue:
		return Typed(l.Typed)
	case l.Derived:
		return quantity.PrintIn(unitOf(l.Verdict), l.Verdict.Value, 2*l.Verdict.Std)
	case l.Repeats.Count > 1:
		return Mean(l) + " (" + strconv.Itoa(l.Repeats.Count) + "×)"
	}
	return Typed(l.Typed)
}

// Mean is what several readings of one point average to, as the display would
// show it with one digit more.
func Mean(l assess.Line) string {
	if l.Measured.State != quantity.Number {
		return quantity.Typed{State: l.Measured.State}.String()
	}
	return quantity.PrintIn(units.Show(l.Typed).Unit, l.Measured.Shown, l.Typed.Step)
}

// Doubt writes a value with its doubt: "0.8 ± 0.1 Ω", two standard
// uncertainties, about 95 %.
func Doubt(v spec.Verdict) string {
	if !v.HasValue {
		return ""
	}
	if v.Limit.Ratio {
		return tenths(v.Value) + " ± " + tenths(2*v.Std)
	}
	u := unitOf(v)
	return number(u, v.Value, 2*v.Std) + " ± " + number(u.Difference(), 2*v.Std, 2*v.Std) + " " + u.Name
}

// unitOf is the unit that the reader chose, or else the limit's, unless the value
// would look tiny in it.
func unitOf(v spec.Verdict) quantity.Unit {
	if u, ok := units.Unit(v.Limit.Kind); ok && !v.Limit.Ratio {
		return u
	}
	if v.HasLimit && math.Abs(v.Limit.Unit.In(v.Value)) >= 0.01 {
		return v.Limit.Unit
	}
	return quantity.UnitFor(v.Limit.Kind, v.Value)
}

func number(u quantity.Unit, si, doubt float64) string {
	return strings.TrimSuffix(quantity.PrintIn(u, si, doubt), " "+u.Name)
}

func percent(fraction float64) string {
	return strconv.FormatFloat(math.Abs(fraction)*100, 'f', 0, 64) + " %"
}

// Limit writes what a limit asks for.
func Limit(l spec.Limit) string {
	if l.Open {
		return "must read open line"
	}
	low, high, unit := side(l, l.Low), side(l, l.High), LimitUnit(l).Name
	switch {
	case l.Ratio:
		return "alike within " + percent(l.High)
	case math.IsInf(l.Low, -1):
		return "at most " + high + " " + unit
	case math.IsInf(l.High, 1):
		return "at least " + low + " " + unit
	}
	return low + " to " + high + " " + unit
}

func side(l spec.Limit, si float64) string {
	return plain(LimitUnit(l).Figure(si, l.Unit))
}

// LimitUnit is the unit that a limit is written in.
func LimitUnit(l spec.Limit) quantity.Unit {
	if u, ok := units.Unit(l.Kind); ok && !l.Ratio {
		return u
	}
	return l.Unit
}

// Chance is the probability behind a verdict, never more certain than known.
func Chance(v spec.Verdict) string {
	p := v.Probability
	if v.Outcome == spec.OutOfSpec {
		p = 1 - p
	}
	return certainty(p)
}

func certainty(p float64) string {
	switch {
	case p > 0.99:
		return "over 99 %"
	case p < 0.01:
		return "under 1 %"
	}
	return percent(p)
}

// Because gives the one-sentence reason for a verdict on a check.
func Because(c check.Check, v spec.Verdict) string {
	limit := Limit(v.Limit)
	switch v.Reason {
	case spec.Within:
		if v.Limit.Open {
			return Doubt(v) + " on a range this high is as good as open. " + noProof
		}
		return Doubt(v) + " lies inside the limit (" + limit + ")."
	case spec.Below:
		return Doubt(v) + " is under the limit (" + limit + "): " + low(c.Measures)
	case spec.Above:
		return Doubt(v) + " is over the limit (" + limit + "): " + high(c.Measures)
	case spec.Leaks:
		return "It must read open line, yet current gets through (" + Doubt(v) + "): " + leakMeans(c)
	case spec.LineBroken:
		if c.Measures == spec.WindingHeat {
			return openWhenHot
		}
		if c.Measures == spec.DiodeFromGround {
			return diodeBroken
		}
		return "Open line where it must conduct (" + limit + "): a broken wire, joint or contact."
	case spec.OpenAsMust:
		return "Open line, as it must be. " + noProof
	case spec.CoolerHot:
		return "By its ohms the winding would be at " + Doubt(v) + ", cooler than before the run: turns may touch each other when warm."
	case spec.AtLeastRead:
		return "The adapter shows " + Doubt(v) + "; the pulse itself is higher still, so the limit (" + limit + ") is met."
	}
	return undecided(v, limit)
}

// Brief is the reason for the pad, where the limit already stands on the bar.
func Brief(c check.Check, v spec.Verdict) string {
	switch v.Reason {
	case spec.Within:
		if v.Limit.Open {
			return Doubt(v) + ": as good as open."
		}
		return Doubt(v) + ", inside the limit."
	case spec.Below:
		return Doubt(v) + ", under the limit: " + low(c.Measures)
	case spec.Above:
		return Doubt(v) + ", over the limit: " + high(c.Measures)
	case spec.Leaks:
		return "On scale, " + Doubt(v) + ": " + leakMeans(c)
	case spec.LineBroken:
		if c.Measures == spec.WindingHeat {
			return openWhenHot
		}
		if c.Measures == spec.DiodeFromGround {
			return diodeBroken
		}
		return "Open where it must conduct: a broken wire, joint or contact."
	case spec.OpenAsMust:
		return "Open line, as it must be."
	case spec.WontSettle:
		return "No reading: a loose contact, or a broken wire. " + Decides(v)
	case spec.NearLimit:
		return Doubt(v) + " straddles the limit, " + Chance(v) + " likely in spec. " + Decides(v)
	case spec.TooCoarse:
		return "This meter's doubt is as wide as the limit. " + Decides(v)
	case spec.AtLeastRead:
		return "At least " + number(unitOf(v), v.Value, 2*v.Std) + " " + unitOf(v).Name + ": the pulse itself is higher still."
	}
	return Because(c, v) + " " + Decides(v)
}

const openWhenHot = "It conducts cold and reads open line hot: a broken wire or joint that parts when it warms up."

// noProof is what an ohm range can never say about insulation.
const noProof = "A meter finds a leak; it cannot prove there is none at running voltage."

func undecided(v spec.Verdict, limit string) string {
	switch v.Reason {
	case spec.NearLimit:
		return Doubt(v) + " straddles the limit (" + limit + "): " + Chance(v) + " likely to be in spec."
	case spec.TooCoarse:
		return "This meter's doubt (± " + quantity.PrintIn(units.UnitFor(v.Limit.Kind, 2*v.Std).Difference(), 2*v.Std, v.Std) + ") is as wide as the limit (" + limit + ")."
	case spec.RangeTooLow:
		return "Over-range only says that it is more than this range can show."
	case spec.PastRange:
		return "More than this range can show, and that is over the lower limit (" + limit + ")."
	case spec.WontSettle:
		return "Digits that won't settle are no reading: a loose contact, or a broken wire that touches and parts."
	case spec.BadLeads:
		return "The probes held together did not read right, so nothing read through these leads counts."
	case spec.MayBlock:
		return mayBlock
	case spec.NoLimit:
		return "This spec profile has no limit for it."
	case spec.PeakHidden:
		return "Too much of the pulse is lost between adapter and meter to work it back."
	case spec.NegativeOhms:
		return "This reads less than the leads alone (" + Doubt(v) + "): a contact has changed since they were held together."
	}
	return ""
}

func leakMeans(c check.Check) string {
	switch c.Measures {
	case spec.PhaseToPhase:
		return "the windings touch each other; damp, dirt or fingers on the tips read the same."
	case spec.KillWire:
		return "the switch stays closed, or the wire is chafed through."
	case spec.PlugLeak:
		return "soot, wet fuel or a crack; fingers on the metal read the same."
	}
	return "the winding touches the core; damp, dirt or fingers on the tips read the same."
}

var lowMeans = map[spec.Measurand]string{
	spec.ChargePair: "turns may be shorted.", spec.ChargeGrounded: "turns may be shorted, or the lead touches the core early.",
	spec.PickupResistance: "turns may be shorted.", spec.ExciterResist: "turns may be shorted.",
	spec.PickupGap:       "flywheel and pickup may touch.",
	spec.ExciterCranking: "a weak exciter, weak magnets, slow cranking, or a box that drags it down.",
	spec.ExciterPeak:     "a weak exciter, weak magnets, slow cranking, or a box that drags it down.",
	spec.PickupPeak:      "a wide gap, weak magnets, slow cranking, or shorted turns.",
	spec.BoxPeak:         "a dead or weak box, or one that gets too little from exciter or pickup.",
}

var highMeans = map[spec.Measurand]string{
	spec.LeadZero: "worn leads, loose sockets or a flat meter battery.", spec.CoreContinuity: "a bad ground joint, or paint under the probe.",
	spec.ChargePair: "a poor joint or a wrong pair of leads.", spec.ChargeGrounded: "a poor joint, or paint under the probe.",
	spec.PickupResistance: "a poor joint, or another kind of pickup.", spec.ExciterResist: "a poor joint, or another kind of exciter.",
	spec.PickupGap:   "the pulse may be too weak to fire.",
	spec.WindingHeat: "hotter than its enamel is made for: a shorted or overloaded winding.",
}

// Balance gives the one-sentence reason for the verdict on leads that should
// read alike.
func Balance(b assess.Balance) string {
	v := b.Verdict
	switch v.Reason {
	case spec.AllAlike:
		return "The windings are alike within " + percent(v.Limit.High) + ". " + ShortSeen(b)
	case spec.OneDiffers:
		return leadsOf(b.Checks[v.Worst]) + " differ from the mean by " + Doubt(v) + ": shorted turns, or a poor joint, in one winding."
	case spec.BadLeads:
		return undecided(v, Limit(v.Limit))
	case spec.TooCoarse, spec.NearLimit:
		if !v.HasValue {
			return "The windings have less resistance than this meter can tell from its leads."
		}
		return leadsOf(b.Checks[v.Worst]) + " differ from the mean by " + Doubt(v) + ". On this range a difference under " + percent(v.Limit.High+1.645*v.Std) + " stays in doubt. " + ShortSeen(b)
	}
	if b.Missing > 0 {
		return "Needs a reading of every pair."
	}
	return "The readings cannot be compared: take all of them as numbers on one range."
}

// BalanceName names what was compared.
func BalanceName(b assess.Balance) string {
	if b.Verdict.Limit.Measurand == spec.FineBalance {
		return FinerTitle
	}
	return PairsAlike
}

// ShortSeen names the smallest short that these readings could have shown.
func ShortSeen(b assess.Balance) string {
	switch {
	case b.Most <= 0:
		return ""
	case b.Half >= 1:
		return "With this meter no short of turns within one winding can be seen this way."
	case b.Most >= 1:
		return "With this meter a short of less than " + atLeast(b.Half) + " of one winding is seen less often than not."
	}
	return "With this meter a short of less than " + atLeast(b.Most) + " of one winding cannot be ruled out."
}

// atLeast rounds a share up to a whole percent.
func atLeast(share float64) string { return strconv.Itoa(int(math.Ceil(share*100-1e-9))) + " %" }

func leadsOf(c check.Check) string {
	if len(c.Leads) < 2 {
		return "Lead 1 and core"
	}
	return "Leads " + strconv.Itoa(c.Leads[0]) + " and " + strconv.Itoa(c.Leads[1])
}

// Remedy says what would decide an open verdict.
func Remedy(r spec.Remedy) string { return remedies[r] }

var remedies = map[spec.Remedy]string{
	spec.MendLeads:    "Mend or swap the leads, press the tips together again.",
	spec.ZeroLeads:    "Take the probes-together reading first.",
	spec.HigherRange:  "Turn the dial to a higher range and read again.",
	spec.CleanContact: "Clean and dry plug and contact, press harder, read again.",
	spec.Repeat:       "Read it again.",
	spec.LetItCool:    "Let it cool and read again.",
	spec.GiveAmbient:  "Say how warm the air is: copper changes with it.",
	spec.FactorySpec:  "The figure from the service manual would narrow the limit.",
	spec.BetterMeter:  "A better meter has less doubt.",
	spec.RetakeOne:    "Take the reading that stands apart again.",
	spec.TurnAdapter:  "Swap the probe tips on the adapter, crank again.",
	spec.HigherInput:  "Use a meter of 10 MΩ, or an adapter with a larger capacitor.",
	spec.CompareLeads: compareLeads,
	spec.VoltAmp:      "A bulb and a known resistor in series measure milliohms with the same meter.",
}

// Decides joins what would decide a verdict, most useful first.
func Decides(v spec.Verdict) string {
	if len(v.Remedies) == 0 {
		return ""
	}
	return "To decide: " + lowerFirst(Remedy(v.Remedies[0]))
}

func lowerFirst(s string) string { return strings.ToLower(s[:1]) + s[1:] }

func upperFirst(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
