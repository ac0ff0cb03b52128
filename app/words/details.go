package words

import (
	"math"
	"strings"

	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
	"coilbook/engine/winding"
)

// Detail is one step between the display and the verdict.
type Detail struct{ Label, Text string }

// Details lists how a reading became its verdict: what was shown, what was
// corrected, how large the doubt is and from what, and what it was held against.
func Details(b assess.Bench, l assess.Line) []Detail {
	if !l.Read() {
		return nil
	}
	var out []Detail
	add := func(label, text string) {
		if text != "" {
			out = append(out, Detail{label, text})
		}
	}
	add(say("Shown"), shown(l))
	add(say("Repeats"), repeats(l))
	add(say("Leads"), leadsTaken(b, l))
	add(say("Frequency"), offBand(b, l))
	add(say("Pulse"), pulse(l))
	add(say("At %s", temperatureAt(20, 0)), atReference(l))
	add(say("Rise"), rise(l))
	add(say("Doubt"), doubtParts(l))
	add(say("Limit"), limitSource(l.Verdict))
	add(say("How sure"), howSure(l.Verdict))
	add(say("Insulation"), insulation(b, l))
	if l.NotPeak {
		add(say("Not a peak"), notPeak)
	}
	return out
}

var notPeak = text("Pulses and cut waves read lower than they are: a meter shows about seven tenths of a clean wave's peak, and of narrow pulses a few hundredths. A peak-hold adapter reads the height.")

func shown(l assess.Line) string {
	switch {
	case l.Derived:
		return ""
	case l.Measured.Range.Label == "":
		return Typed(l.Typed)
	case l.Repeats.Count > 1:
		return say("%s on average, on the %s range", Mean(l), rangeLabel(l.Measured.Range))
	}
	return say("%s on the %s range", Typed(l.Typed), rangeLabel(l.Measured.Range))
}

func repeats(l assess.Line) string {
	r := l.Repeats
	if r.Count < 2 || r.State != quantity.Number {
		return ""
	}
	out := say("%s from the lowest to the highest spread %s.", count(r.Count, "%d reading", "%d readings"), plainValue(l, r.Spread))
	switch {
	case r.Retake >= 0:
		out += " " + OddOneOut(l)
	case r.Wanders:
		out += " " + say("That is more than the meter explains: the whole spread counts as doubt.")
	case r.Few:
		out += " " + say("So few readings know their scatter badly; 4 of them or more help most.")
	}
	return out
}

// OddOneOut asks for the one reading of several that stands apart.
func OddOneOut(l assess.Line) string {
	return say("Reading %d (%s) stands apart: take it again.", l.Repeats.Retake+1, Typed(l.Run[l.Repeats.Retake].Typed))
}

// plainValue writes a size in the unit of the display.
func plainValue(l assess.Line, si float64) string {
	t := units.Show(l.Typed)
	return decimal(math.Abs(t.Unit.Difference().In(si)), min(t.Decimals()+1, 4)) + " " + t.Unit.Name
}

func leadsTaken(b assess.Bench, l assess.Line) string {
	m := l.Measured
	off := m.Shown - m.Value
	if l.Derived || m.State != quantity.Number || l.Check.Function != meter.Ohms || l.Check.Instrument != check.Multimeter || math.Abs(off) < 1e-12 {
		return ""
	}
	if l.Typed.Unit.Factor > 100 {
		return ""
	}
	less := printedIn(l.Typed.Unit, off, max(l.Typed.Step/2, 1e-3))
	if m.Zeroed {
		return say("less %s, as your probes read when held together", less)
	}
	usual := b.Meter.Leads
	return say("less %s, as leads usually have (%s to %s Ω): hold the probes together to know yours", less, Plain(float64(usual.Low)), Plain(float64(usual.High)))
}

// offBand says that an AC range may be outside of what it is made for.
func offBand(b assess.Bench, l assess.Line) string {
	if !l.Measured.OffAC {
		return ""
	}
	band := b.Meter.Band
	return say("perhaps outside of the %s to %s Hz that this range is made for: 5 %% more doubt is allowed for it (an assumption)", Plain(float64(band.Low)), Plain(float64(band.High)))
}

func pulse(l assess.Line) string {
	p := l.Peak
	if p == nil {
		return ""
	}
	value, least, most := volts(float64(p.Value), float64(p.Std)), volts(float64(p.Low), float64(p.Std)), volts(float64(p.High), float64(p.Std))
	out := say("the adapter holds about %s of it; worked back: %s, from %s to %s.", percent(p.Share), value, least, most)
	if math.IsInf(float64(p.High), 1) {
		out = say("the adapter holds about %s of it; worked back: %s, at least %s.", percent(p.Share), value, least)
	}
	return out + pulseFlags(*p)
}

func volts(v, doubt float64) string { return printed(quantity.VoltageDC, v, 2*doubt) }

func pulseFlags(p meter.Peak) string {
	switch {
	case p.Droops:
		return " " + say("Most of it is lost in between: a meter of 10 MΩ shows more.")
	case p.Vague:
		return " " + say("Adapter and pulse are known too loosely for that much correction.")
	case p.Diode:
		return " " + say("At so few volts the adapter's diode takes a large part.")
	case p.Slow:
		return " " + say("Pulses come more slowly than the display: take the highest steady number.")
	}
	return ""
}

func atReference(l assess.Line) string {
	v := l.Verdict
	if v.Limit.Condition.AtCelsius == nil || !v.HasValue {
		return ""
	}
	return say("%s %s; the winding is taken to be at %s", number(unitOf(v), v.Value, 2*v.Std), unitOf(v).Name, temperature(l.Air))
}

// rise is by how much a run warmed a winding, on the average over its wire.
func rise(l assess.Line) string {
	if l.Check.Measures != spec.WindingHeat || !l.Verdict.HasValue {
		return ""
	}
	return say("about %s over %s before the run; the hottest spot is warmer than this average", warmer(l.Verdict.Value-float64(l.Air.At)), temperature(l.Air))
}

func temperature(t spec.Temperature) string {
	return temperatureAt(t.At, t.HalfWidth)
}

// doubtParts says how large the doubt is and names its parts, the largest first.
func doubtParts(l assess.Line) string {
	v := l.Verdict
	if !v.HasValue && l.Measured.State != quantity.Number {
		return ""
	}
	v.HasValue = true
	if !v.HasLimit {
		v.Value, v.Std, v.Limit.Kind = l.Measured.Value, l.Measured.Std, l.Check.Kind()
	}
	u := unitOf(v)
	m := l.Measured
	parts := []struct {
		name string
		size float64
	}{
		{say("what all readings of this range share"), 2 * m.Shared},
		{say("last digit and contact"), 2 * m.Own},
		{say("the meter's calibration"), 2 * m.Gain * math.Abs(m.Value)},
		{say("temperature"), heatPart(l, v)},
	}
	var named []string
	for range parts {
		at := largest(len(parts), func(i int) float64 { return parts[i].size })
		if parts[at].size > 0.2*v.Std {
			named = append(named, parts[at].name+" "+number(u.Difference(), parts[at].size, parts[at].size))
		}
		parts[at].size = 0
	}
	out := say("± %s %s covers about 95 %%", number(u.Difference(), 2*v.Std, 2*v.Std), u.Name)
	if l.Derived || l.Peak != nil || len(named) < 1 {
		return out + "."
	}
	return say("%s. From: %s.", out, strings.Join(named, ", "))
}

func heatPart(l assess.Line, v spec.Verdict) float64 {
	if v.Limit.Condition.AtCelsius == nil {
		return 0
	}
	return 2 * math.Abs(v.Value) * winding.RelativeDoubt(l.Air.At, l.Air.HalfWidth)
}

func largest(n int, size func(int) float64) int {
	at := 0
	for i := range n {
		if size(i) > size(at) {
			at = i
		}
	}
	return at
}

func limitSource(v spec.Verdict) string {
	if !v.HasLimit {
		return ""
	}
	p := v.Limit.Provenance
	out, state := Limit(v.Limit), told(v.Limit.Condition.State)
	if c := v.Limit.Condition.AtCelsius; c != nil {
		out = say("%s at %s", out, temperatureAt(*c, 0))
	}
	return say("%s, %s. Source: %s, %s. %s", out, state, told(string(p.Kind)), p.Date, told(p.Note))
}

func howSure(v spec.Verdict) string {
	if !v.HasLimit || !v.HasValue {
		return ""
	}
	return say("%s that it is in spec. “In spec” is said from 95 %% on, “out of spec” at 5 %% or less and “cannot tell” between.", certainty(v.Probability))
}

// insulation sets a reading to the core beside the standard's minimum.
func insulation(b assess.Bench, l assess.Line) string {
	in, ok := b.InsulationOf(l)
	if !ok {
		return ""
	}
	standard := say("IEEE 43 (from memory; written for larger machines, tested with 500 V) asks for 5 MΩ at 40 °C. At %s that is about %s to %s by its two rules.", temperature(l.Air), megohms(in.Flattest), megohms(in.Least))
	if in.Open {
		return say("Open line means more than %s on this range. %s %s", megohms(in.Shown), standard, say(proofs.of(in.Proof)))
	}
	return standard + " " + say(proofs.of(in.Proof))
}

var proofs = table[winding.Proof, text]{
	{winding.ProvesNothing, "So this neither passes nor fails it: an insulation tester can."},
	{winding.ProvesFailure, "This is below it."},
	{winding.ProvesNoDefect, "At the volt or so of a meter it is above that; at running voltage only an insulation tester can tell."},
}

func megohms(r quantity.Ohm) string {
	v := float64(r) / 1e6
	if v >= 10 {
		return decimal(v, 0) + " MΩ"
	}
	return twoDigits(v) + " MΩ"
}
