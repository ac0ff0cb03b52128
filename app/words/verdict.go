package words

import (
	"math"
	"strconv"
	"strings"
	"unicode"

	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

// Reading writes what was typed, as it stood on the display.
func Reading(l assess.Line) string {
	switch {
	case l.Skipped:
		return say("not done")
	case !l.Answered:
		return "–"
	case l.Unread != nil:
		return AsTyped(l.Answer.Reading.Text)
	case l.Derived && !l.Verdict.HasValue:
		return Typed(l.Typed)
	case l.Derived:
		return printedIn(unitOf(l.Verdict), l.Verdict.Value, 2*l.Verdict.Std)
	case l.Repeats.Count > 1:
		return Mean(l) + " (" + strconv.Itoa(l.Repeats.Count) + "×)"
	}
	return Typed(l.Typed)
}

// Mean is what several readings of one point average to, as the display would
// show it with one digit more.
func Mean(l assess.Line) string {
	if l.Measured.State != quantity.Number {
		return Typed(quantity.Typed{State: l.Measured.State})
	}
	return printedIn(units.Show(l.Typed).Unit, l.Measured.Shown, l.Typed.Step)
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
	return strings.TrimSuffix(printedIn(u, si, doubt), " "+u.Name)
}

func percent(fraction float64) string {
	return decimal(math.Abs(fraction)*100, 0) + " %"
}

// Limit writes what a limit asks for.
func Limit(l spec.Limit) string {
	if l.Open {
		return say("must read open line")
	}
	low, high, unit := side(l, l.Low), side(l, l.High), LimitUnit(l).Name
	switch {
	case l.Ratio:
		return say("alike within %s", percent(l.High))
	case math.IsInf(l.Low, -1):
		return say("at most %s %s", high, unit)
	case math.IsInf(l.High, 1):
		return say("at least %s %s", low, unit)
	}
	return say("%s to %s %s", low, high, unit)
}

func side(l spec.Limit, si float64) string {
	return Plain(LimitUnit(l).Figure(si, l.Unit))
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
		return say("over 99 %")
	case p < 0.01:
		return say("under 1 %")
	}
	return percent(p)
}

// Because gives the one-sentence reason for a verdict on a check.
func Because(c check.Check, v spec.Verdict) string {
	limit := Limit(v.Limit)
	switch v.Reason {
	case spec.Within:
		if v.Limit.Open {
			return say("%s on a range this high is as good as open. %s", Doubt(v), noProof)
		}
		return say("%s lies inside the limit (%s).", Doubt(v), limit)
	case spec.Below:
		return say("%s is under the limit (%s): %s", Doubt(v), limit, low(c.Measures))
	case spec.Above:
		return say("%s is over the limit (%s): %s", Doubt(v), limit, high(c.Measures))
	case spec.Leaks:
		return say("It must read open line, yet current gets through (%s): %s", Doubt(v), leakMeans(c))
	case spec.LineBroken:
		if c.Measures == spec.WindingHeat {
			return openWhenHot
		}
		if c.Measures == spec.DiodeFromGround {
			return diodeBroken
		}
		return say("Open line where it must conduct (%s): a broken wire, joint or contact.", limit)
	case spec.OpenAsMust:
		return say("Open line, as it must be. %s", noProof)
	case spec.CoolerHot:
		return say("By its ohms the winding would be at %s, cooler than before the run: turns may touch each other when warm.", Doubt(v))
	case spec.AtLeastRead:
		return say("The adapter shows %s; the pulse itself is higher still, so the limit (%s) is met.", Doubt(v), limit)
	}
	return undecided(v, limit)
}

// Brief is the reason for the pad, where the limit already stands on the bar.
func Brief(c check.Check, v spec.Verdict) string {
	switch v.Reason {
	case spec.Within:
		if v.Limit.Open {
			return say("%s: as good as open.", Doubt(v))
		}
		return say("%s, inside the limit.", Doubt(v))
	case spec.Below:
		return say("%s, under the limit: %s", Doubt(v), low(c.Measures))
	case spec.Above:
		return say("%s, over the limit: %s", Doubt(v), high(c.Measures))
	case spec.Leaks:
		return say("On scale, %s: %s", Doubt(v), leakMeans(c))
	case spec.LineBroken:
		if c.Measures == spec.WindingHeat {
			return openWhenHot
		}
		if c.Measures == spec.DiodeFromGround {
			return diodeBroken
		}
		return say("Open where it must conduct: a broken wire, joint or contact.")
	case spec.OpenAsMust:
		return say("Open line, as it must be.")
	case spec.WontSettle:
		return say("No reading: a loose contact, or a broken wire. %s", Decides(v))
	case spec.NearLimit:
		return say("%s straddles the limit, %s likely in spec. %s", Doubt(v), Chance(v), Decides(v))
	case spec.TooCoarse:
		return say("This meter's doubt is as wide as the limit. %s", Decides(v))
	case spec.AtLeastRead:
		return say("At least %s %s: the pulse itself is higher still.", number(unitOf(v), v.Value, 2*v.Std), unitOf(v).Name)
	}
	return Because(c, v) + " " + Decides(v)
}

var openWhenHot = text("It conducts cold and reads open line hot: a broken wire or joint that parts when it warms up.")

// noProof is what an ohm range can never say about insulation.
var noProof = text("A meter finds a leak; it cannot prove there is none at running voltage.")

func undecided(v spec.Verdict, limit string) string {
	switch v.Reason {
	case spec.NearLimit:
		return say("%s straddles the limit (%s): %s likely to be in spec.", Doubt(v), limit, Chance(v))
	case spec.TooCoarse:
		return say("This meter's doubt (± %s) is as wide as the limit (%s).", printedIn(units.UnitFor(v.Limit.Kind, 2*v.Std).Difference(), 2*v.Std, v.Std), limit)
	case spec.RangeTooLow:
		return say("Over-range only says that it is more than this range can show.")
	case spec.PastRange:
		return say("More than this range can show, and that is over the lower limit (%s).", limit)
	case spec.WontSettle:
		return say("Digits that won't settle are no reading: a loose contact, or a broken wire that touches and parts.")
	case spec.BadLeads:
		return say("The probes held together did not read right, so nothing read through these leads counts.")
	case spec.MayBlock:
		return mayBlock
	case spec.NoLimit:
		return say("This spec profile has no limit for it.")
	case spec.PeakHidden:
		return say("Too much of the pulse is lost between adapter and meter to work it back.")
	case spec.NegativeOhms:
		return say("This reads less than the leads alone (%s): a contact has changed since they were held together.", Doubt(v))
	}
	return ""
}

func leakMeans(c check.Check) string {
	switch c.Measures {
	case spec.PhaseToPhase:
		return say("the windings touch each other; damp, dirt or fingers on the tips read the same.")
	case spec.KillWire:
		return say("the switch stays closed, or the wire is chafed through.")
	case spec.PlugLeak:
		return say("soot, wet fuel or a crack; fingers on the metal read the same.")
	}
	return say("the winding touches the core; damp, dirt or fingers on the tips read the same.")
}

var lowMeans = table[spec.Measurand, text]{
	{spec.ChargePair, "turns may be shorted."}, {spec.ChargeGrounded, "turns may be shorted, or the lead touches the core early."},
	{spec.PickupResistance, "turns may be shorted."}, {spec.ExciterResist, "turns may be shorted."},
	{spec.PickupGap, "flywheel and pickup may touch."},
	{spec.ExciterCranking, "a weak exciter, weak magnets, slow cranking, or a box that drags it down."},
	{spec.ExciterPeak, "a weak exciter, weak magnets, slow cranking, or a box that drags it down."},
	{spec.PickupPeak, "a wide gap, weak magnets, slow cranking, or shorted turns."},
	{spec.BoxPeak, "a dead or weak box, or one that gets too little from exciter or pickup."},
}

var highMeans = table[spec.Measurand, text]{
	{spec.LeadZero, "worn leads, loose sockets or a flat meter battery."}, {spec.CoreContinuity, "a bad ground joint, or paint under the probe."},
	{spec.ChargePair, "a poor joint or a wrong pair of leads."}, {spec.ChargeGrounded, "a poor joint, or paint under the probe."},
	{spec.PickupResistance, "a poor joint, or another kind of pickup."}, {spec.ExciterResist, "a poor joint, or another kind of exciter."},
	{spec.PickupGap, "the pulse may be too weak to fire."},
	{spec.WindingHeat, "hotter than its enamel is made for: a shorted or overloaded winding."},
}

// Balance gives the one-sentence reason for the verdict on leads that should
// read alike.
func Balance(b assess.Balance) string {
	v := b.Verdict
	switch v.Reason {
	case spec.AllAlike:
		return say("The windings are alike within %s. %s", percent(v.Limit.High), ShortSeen(b))
	case spec.OneDiffers:
		return say("%s differ from the mean by %s: shorted turns, or a poor joint, in one winding.", leadsOf(b.Checks[v.Worst]), Doubt(v))
	case spec.BadLeads:
		return undecided(v, Limit(v.Limit))
	case spec.TooCoarse, spec.NearLimit:
		if !v.HasValue {
			return say("The windings have less resistance than this meter can tell from its leads.")
		}
		return say("%s differ from the mean by %s. On this range a difference under %s stays in doubt. %s", leadsOf(b.Checks[v.Worst]), Doubt(v), percent(v.Limit.High+1.645*v.Std), ShortSeen(b))
	}
	if b.Missing > 0 {
		return say("Needs a reading of every pair.")
	}
	return say("The readings cannot be compared: take all of them as numbers on one range.")
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
		return say("With this meter no short of turns within one winding can be seen this way.")
	case b.Most >= 1:
		return say("With this meter a short of less than %s of one winding is seen less often than not.", atLeast(b.Half))
	}
	return say("With this meter a short of less than %s of one winding cannot be ruled out.", atLeast(b.Most))
}

// atLeast rounds a share up to a whole percent.
func atLeast(share float64) string { return strconv.Itoa(int(math.Ceil(share*100-1e-9))) + " %" }

func leadsOf(c check.Check) string {
	if len(c.Leads) < 2 {
		return say("Lead 1 and core")
	}
	return say("Leads %d and %d", c.Leads[0], c.Leads[1])
}

// Remedy says what would decide an open verdict.
func Remedy(r spec.Remedy) string { return say(remedies.of(r)) }

var remedies = table[spec.Remedy, text]{
	{spec.MendLeads, "Mend or swap the leads, press the tips together again."},
	{spec.ZeroLeads, "Take the probes-together reading first."},
	{spec.HigherRange, "Turn the dial to a higher range and read again."},
	{spec.CleanContact, "Clean and dry plug and contact, press harder, read again."},
	{spec.Repeat, "Read it again."},
	{spec.LetItCool, "Let it cool and read again."},
	{spec.GiveAmbient, "Say how warm the air is: copper changes with it."},
	{spec.FactorySpec, "The figure from the service manual would narrow the limit."},
	{spec.BetterMeter, "A better meter has less doubt."},
	{spec.RetakeOne, "Take the reading that stands apart again."},
	{spec.TurnAdapter, "Swap the probe tips on the adapter, crank again."},
	{spec.HigherInput, "Use a meter of 10 MΩ, or an adapter with a larger capacitor."},
	{spec.CompareLeads, compareLeads},
	{spec.VoltAmp, "A bulb and a known resistor in series measure milliohms with the same meter."},
}

// Decides joins what would decide a verdict, most useful first.
func Decides(v spec.Verdict) string {
	if len(v.Remedies) == 0 {
		return ""
	}
	return say("To decide: %s", lowerFirst(Remedy(v.Remedies[0])))
}

// lowerFirst puts a sentence's start inside another. A short form such as CDI stays
// as it is.
func lowerFirst(s string) string {
	r := []rune(s)
	if len(r) == 0 || len(r) > 1 && unicode.IsUpper(r[1]) {
		return s
	}
	r[0] = unicode.ToLower(r[0])
	return string(r)
}

func upperFirst(s string) string {
	r := []rune(s)
	if len(r) == 0 {
		return s
	}
	r[0] = unicode.ToUpper(r[0])
	return string(r)
}
