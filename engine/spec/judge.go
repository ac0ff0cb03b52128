package spec

import (
	"math"
	"slices"

	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/winding"
)

// Reason says in one word why a verdict came out as it did.
type Reason string

// Reasons.
const (
	Within        Reason = "within"          // inside the limits, doubt and all
	Below         Reason = "below"           // under the lower limit
	Above         Reason = "above"           // over the upper limit
	NearLimit     Reason = "near-limit"      // a limit lies inside the doubt
	TooCoarse     Reason = "too-coarse"      // no reading of this meter could pass
	OpenAsMust    Reason = "open-as-must"    // open line, as it must be
	Leaks         Reason = "leaks"           // on scale where it must be open
	LineBroken    Reason = "line-broken"     // open line where it must conduct
	RangeTooLow   Reason = "range-too-low"   // over-range proves nothing on this range
	PastRange     Reason = "past-range"      // over-range, and that is enough to pass
	WontSettle    Reason = "wont-settle"     // digits never came to rest
	NoLimit       Reason = "no-limit"        // nothing to judge it by
	AllAlike      Reason = "alike"           // leads agree
	OneDiffers    Reason = "differs"         // one lead is off the others
	CannotCompare Reason = "cannot-compare"  // a reading of the group is missing or no number
	NegativeOhms  Reason = "below-lead-zero" // less than the leads alone
	BadLeads      Reason = "bad-leads"       // taken through leads that are at fault
	AtLeastRead   Reason = "at-least-read"   // what was lost could only add to it
	PeakHidden    Reason = "peak-hidden"     // too much of the pulse was lost
	CoolerHot     Reason = "cooler-when-hot" // reads less hot than cold
	MayBlock      Reason = "may-block"       // open line, as a sound thyristor and a broken diode both are
)

// Remedy is something that would decide an open verdict.
type Remedy string

// Remedies, in the order of least work.
const (
	MendLeads    Remedy = "mend-leads"
	RetakeOne    Remedy = "retake-one"
	ZeroLeads    Remedy = "zero-leads"
	HigherRange  Remedy = "higher-range"
	CleanContact Remedy = "clean-contact"
	Repeat       Remedy = "repeat"
	LetItCool    Remedy = "let-it-cool"
	GiveAmbient  Remedy = "give-ambient"
	FactorySpec  Remedy = "factory-spec"
	BetterMeter  Remedy = "better-meter"
	VoltAmp      Remedy = "volt-amp"
	HigherInput  Remedy = "higher-input"
	TurnAdapter  Remedy = "turn-adapter"
	CompareLeads Remedy = "compare-leads"
)

// Verdict is an outcome with all that it stands on. Values are SI, brought to
// the limit's condition.
type Verdict struct {
	Outcome     Outcome
	Probability float64 // that the true value conforms
	Reason      Reason
	Remedies    []Remedy
	Value, Std  float64
	HasValue    bool
	Shown       float64 // as the display showed it, before any correction
	HasShown    bool
	Limit       Limit
	HasLimit    bool
	Worst       int // of a group: the index of the reading furthest off
}

// Judge gives the verdict on one measurement.
func Judge(l Limit, m meter.Measurement, t Temperature) Verdict {
	v := Verdict{Limit: l, HasLimit: true}
	switch m.State {
	case quantity.Unsettled:
		v.Probability, v.Reason = 0.5, WontSettle
		v.Remedies = []Remedy{CleanContact, Repeat}
		return v
	case quantity.OverRange:
		return judgeOverRange(v, m)
	}
	v.Value, v.Std, v.HasValue = m.Value, m.Std, true
	v.Shown, v.HasShown = m.Shown, true
	if l.Condition.AtCelsius != nil {
		v.Value, v.Std = atReference(m, t)
	}
	v.Outcome, v.Probability = DecideBetween(v.Value, v.Std, l.Low, l.High)
	if lessThanLeads(v) {
		v.Outcome, v.Probability, v.Reason = CannotTell, 0.5, NegativeOhms
		v.Remedies = []Remedy{ZeroLeads, CleanContact, Repeat}
		return v
	}
	v.Reason = reasonFor(v)
	if v.Outcome == CannotTell {
		v.Remedies = remedies(v, m, t)
	}
	return v
}

// lessThanLeads reports a resistance below zero by more than its doubt: no part
// reads so, but leads do that have changed since they were held together.
func lessThanLeads(v Verdict) bool {
	return v.Limit.Kind == quantity.Resistance && v.Outcome != InSpec && Conformance(v.Value, v.Std, math.Inf(-1), 0) >= confidence
}

// LeadsFirst is the verdict on a reading taken through leads that are
// themselves at fault: the value stands, and nothing can be told from it.
func LeadsFirst(v Verdict) Verdict {
	v.Outcome, v.Probability, v.Reason, v.Remedies = CannotTell, 0.5, BadLeads, []Remedy{MendLeads}
	return v
}

// First puts a remedy before all others, once.
func First(r Remedy, v Verdict) Verdict {
	v.Remedies = slices.Concat([]Remedy{r}, slices.DeleteFunc(slices.Clone(v.Remedies), func(old Remedy) bool { return old == r }))
	return v
}

// JudgeHeat judges the temperature of a winding after a run that began at start;
// below is the probability that it was cooler than a temperature in °C. It cannot
// have cooled in a run: a value below where it began is none of copper, but of
// turns that touch each other when warm.
func JudgeHeat(l Limit, m meter.Measurement, start Temperature, below func(celsius float64) float64) Verdict {
	l.Low = float64(start.At) - start.HalfWidth
	v := Verdict{Limit: l, HasLimit: true, Value: m.Value, Std: m.Std, HasValue: true, Shown: m.Shown, HasShown: true}
	tooCool, tooHot := below(l.Low), 1-below(l.High)
	v.Probability = max(1-tooCool-tooHot, 0)
	switch {
	case v.Probability >= confidence:
		v.Outcome, v.Reason = InSpec, Within
	case tooCool >= confidence:
		v.Outcome, v.Reason = OutOfSpec, CoolerHot
	case tooHot >= confidence:
		v.Outcome, v.Reason = OutOfSpec, Above
	default:
		v.Reason = reasonFor(v)
		v.Remedies = []Remedy{Repeat, BetterMeter}
	}
	return v
}

// OpenWhenHot is the verdict on a winding that conducts cold and reads open line
// hot. sure says that the range would show any copper that hot.
func OpenWhenHot(l Limit, sure bool) Verdict {
	v := Verdict{Limit: l, HasLimit: true, Probability: 0.5, Reason: RangeTooLow, Remedies: []Remedy{HigherRange}}
	if sure {
		v.Outcome, v.Probability, v.Reason, v.Remedies = OutOfSpec, 0, LineBroken, nil
	}
	return v
}

// AtLeast is a verdict that passed on what the display showed, where the true
// value can only be higher.
func AtLeast(v Verdict) Verdict {
	v.Reason = AtLeastRead
	return v
}

// PeakLost is the verdict where too much of a pulse was lost on the way to the
// display to be worked back.
func PeakLost(v Verdict) Verdict {
	v.Outcome, v.Probability, v.Reason, v.Remedies = CannotTell, 0.5, PeakHidden, []Remedy{HigherInput, Repeat}
	return v
}

// NoLimitFor is the verdict where the profile has no limit.
func NoLimitFor(m meter.Measurement) Verdict {
	number := m.State == quantity.Number
	return Verdict{Reason: NoLimit, Probability: 0.5, Value: m.Value, Std: m.Std, HasValue: number,
		Shown: m.Shown, HasShown: number, Remedies: []Remedy{FactorySpec}}
}

func atReference(m meter.Measurement, t Temperature) (value, std float64) {
	value = float64(winding.ToReference(quantity.Ohm(m.Value), t.At))
	factor := 1.0
	if m.Value != 0 {
		factor = value / m.Value
	}
	heat := value * winding.RelativeDoubt(t.At, t.HalfWidth)
	return value, math.Hypot(m.Std*factor, heat)
}

func judgeOverRange(v Verdict, m meter.Measurement) Verdict {
	full := m.Range.Nominal
	sure := m.Range.Full - m.Range.Accuracy.HalfWidth(m.Range.Full, m.Range.Step)
	switch l := v.Limit; {
	case l.Open && full >= l.Low:
		v.Outcome, v.Probability, v.Reason = InSpec, 1, OpenAsMust
	case l.Open, sure <= l.High && !math.IsInf(l.High, 1):
		v.Probability, v.Reason, v.Remedies = 0.5, RangeTooLow, []Remedy{HigherRange}
	case math.IsInf(l.High, 1) && sure >= l.Low:
		v.Outcome, v.Probability, v.Reason = InSpec, 1, PastRange
	case math.IsInf(l.High, 1):
		v.Probability, v.Reason, v.Remedies = 0.5, RangeTooLow, []Remedy{HigherRange}
	case l.Measurand == DiodeToPlus:
		v.Probability, v.Reason, v.Remedies = 0.5, MayBlock, []Remedy{CompareLeads}
	case l.Kind == quantity.Resistance, l.Measurand == DiodeFromGround:
		v.Outcome, v.Reason = OutOfSpec, LineBroken
	default:
		v.Outcome, v.Reason = OutOfSpec, Above
	}
	return v
}

func reasonFor(v Verdict) Reason {
	l := v.Limit
	below := v.Value < l.Low
	switch {
	case v.Outcome == InSpec:
		return Within
	case v.Outcome == OutOfSpec && l.Open:
		return Leaks
	case v.Outcome == OutOfSpec && below:
		return Below
	case v.Outcome == OutOfSpec && v.Value > l.High:
		return Above
	case bestProbability(l, v.Std) < confidence:
		return TooCoarse
	}
	return NearLimit
}

func aboutHeat(t Temperature) Remedy {
	if t.Known {
		return LetItCool
	}
	return GiveAmbient
}

// bestProbability is the conformance of the luckiest reading.
func bestProbability(l Limit, std float64) float64 {
	if math.IsInf(l.Low, 0) || math.IsInf(l.High, 0) {
		return 1
	}
	return Conformance((l.Low+l.High)/2, std, l.Low, l.High)
}

func remedies(v Verdict, m meter.Measurement, t Temperature) []Remedy {
	var out []Remedy
	resistance := v.Limit.Kind == quantity.Resistance
	if resistance && !m.Zeroed && !v.Limit.Open && v.Value < 10 {
		out = append(out, ZeroLeads)
	}
	if v.Limit.Open {
		return append(out, CleanContact, Repeat)
	}
	if v.Limit.Condition.AtCelsius != nil && winding.RelativeDoubt(t.At, t.HalfWidth)*v.Value > v.Std/2 {
		out = append(out, aboutHeat(t))
	}
	if v.Reason == TooCoarse {
		return append(out, VoltAmp, BetterMeter)
	}
	if v.Limit.Provenance.Kind != Manual {
		out = append(out, FactorySpec)
	}
	return append(out, Repeat, BetterMeter)
}
