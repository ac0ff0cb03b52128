package words

import (
	"math"
	"strconv"
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
	add("Shown", shown(l))
	add("Repeats", repeats(l))
	add("Leads", leadsTaken(b, l))
	add("Frequency", offBand(b, l))
	add("Pulse", pulse(l))
	add("At "+temperatureAt(20, 0), atReference(l))
	add("Rise", rise(l))
	add("Doubt", doubtParts(l))
	add("Limit", limitSource(l.Verdict))
	add("How sure", howSure(l.Verdict))
	add("Insulation", insulation(b, l))
	if l.NotPeak {
		add("Not a peak", notPeak)
	}
	return out
}

const notPeak = "Pulses and cut waves read lower than they are: a meter shows about seven tenths of a clean wave's peak, and of narrow pulses a few hundredths. A peak-hold adapter reads the height."

func shown(l assess.Line) string {
	switch {
	case l.Derived:
		return ""
	case l.Measured.Range.Label == "":
		return Typed(l.Typed)
	case l.Repeats.Count > 1:
		return Mean(l) + " on average, on the " + l.Measured.Range.Label + " range"
	}
	return l.Typed.String() + " on the " + l.Measured.Range.Label + " range"
}

func repeats(l assess.Line) string {
	r := l.Repeats
	if r.Count < 2 || r.State != quantity.Number {
		return ""
	}
	out := count(r.Count, "reading", "readings") + " from the lowest to the highest spread " + plainValue(l, r.Spread) + "."
	switch {
	case r.Retake >= 0:
		out += " " + OddOneOut(l)
	case r.Wanders:
		out += " That is more than the meter explains: the whole spread counts as doubt."
	case r.Few:
		out += " So few readings know their scatter badly; " + count(4, "one", "of them") + " or more help most."
	}
	return out
}

// OddOneOut asks for the one reading of several that stands apart.
func OddOneOut(l assess.Line) string {
	return "Reading " + strconv.Itoa(l.Repeats.Retake+1) + " (" + Typed(l.Run[l.Repeats.Retake].Typed) + ") stands apart: take it again."
}

// plainValue writes a size in the unit of the display.
func plainValue(l assess.Line, si float64) string {
	t := units.Show(l.Typed)
	return quantity.Decimal(math.Abs(t.Unit.Difference().In(si)), min(t.Decimals()+1, 4)) + " " + t.Unit.Name
}

func leadsTaken(b assess.Bench, l assess.Line) string {
	m := l.Measured
	off := m.Shown - m.Value
	if l.Derived || m.State != quantity.Number || l.Check.Function != meter.Ohms || l.Check.Instrument != check.Multimeter || math.Abs(off) < 1e-12 {
		return ""
	}
	how := ", as your probes read when held together"
	if !m.Zeroed {
		how = ", as leads usually have (" + trimmed(float64(b.Meter.Leads.Low)) + " to " + trimmed(float64(b.Meter.Leads.High)) + " Ω): hold the probes together to know yours"
	}
	if l.Typed.Unit.Factor > 100 {
		return ""
	}
	return "less " + quantity.PrintIn(l.Typed.Unit, off, max(l.Typed.Step/2, 1e-3)) + how
}

// offBand says that an AC range may be outside of what it is made for.
func offBand(b assess.Bench, l assess.Line) string {
	if !l.Measured.OffAC {
		return ""
	}
	band := b.Meter.Band
	return "perhaps outside of the " + trimmed(float64(band.Low)) + " to " + trimmed(float64(band.High)) +
		" Hz that this range is made for: 5 % more doubt is allowed for it (an assumption)"
}

func trimmed(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func pulse(l assess.Line) string {
	p := l.Peak
	if p == nil {
		return ""
	}
	out := "the adapter holds about " + percent(p.Share) + " of it; worked back: " + volts(float64(p.Value), float64(p.Std))
	if math.IsInf(float64(p.High), 1) {
		out += ", at least " + volts(float64(p.Low), float64(p.Std))
	} else {
		out += ", from " + volts(float64(p.Low), float64(p.Std)) + " to " + volts(float64(p.High), float64(p.Std))
	}
	return out + "." + pulseFlags(*p)
}

func volts(v, doubt float64) string { return quantity.Print(quantity.VoltageDC, v, 2*doubt) }

func pulseFlags(p meter.Peak) string {
	switch {
	case p.Droops:
		return " Most of it is lost in between: a meter of 10 MΩ shows more."
	case p.Vague:
		return " Adapter and pulse are known too loosely for that much correction."
	case p.Diode:
		return " At so few volts the adapter's diode takes a large part."
	case p.Slow:
		return " Pulses come more slowly than the display: take the highest steady number."
	}
	return ""
}

func atReference(l assess.Line) string {
	v := l.Verdict
	if v.Limit.Condition.AtCelsius == nil || !v.HasValue {
		return ""
	}
	return number(unitOf(v), v.Value, 2*v.Std) + " " + unitOf(v).Name + "; the winding is taken to be at " + temperature(l.Air)
}

// rise is by how much a run warmed a winding, on the average over its wire.
func rise(l assess.Line) string {
	if l.Check.Measures != spec.WindingHeat || !l.Verdict.HasValue {
		return ""
	}
	return "about " + warmer(l.Verdict.Value-float64(l.Air.At)) + " over " + temperature(l.Air) + " before the run; the hottest spot is warmer than this average"
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
		{"what all readings of this range share", 2 * m.Shared},
		{"last digit and contact", 2 * m.Own},
		{"the meter's calibration", 2 * m.Gain * math.Abs(m.Value)},
		{"temperature", heatPart(l, v)},
	}
	var named []string
	for range parts {
		at := largest(len(parts), func(i int) float64 { return parts[i].size })
		if parts[at].size > 0.2*v.Std {
			named = append(named, parts[at].name+" "+number(u.Difference(), parts[at].size, parts[at].size))
		}
		parts[at].size = 0
	}
	out := "± " + number(u.Difference(), 2*v.Std, 2*v.Std) + " " + u.Name + " covers about 95 %"
	if l.Derived || l.Peak != nil || len(named) < 1 {
		return out + "."
	}
	return out + ". From: " + strings.Join(named, ", ") + "."
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
	out := Limit(v.Limit)
	if c := v.Limit.Condition.AtCelsius; c != nil {
		out += " at " + temperatureAt(*c, 0)
	}
	return out + ", " + v.Limit.Condition.State + ". Source: " + string(p.Kind) + ", " + p.Date + ". " + p.Note
}

func howSure(v spec.Verdict) string {
	if !v.HasLimit || !v.HasValue {
		return ""
	}
	return certainty(v.Probability) + " that it is in spec. “In spec” is said from 95 % on, “out of spec” at 5 % or less and “cannot tell” between."
}

// insulation sets a reading to the core beside the standard's minimum.
func insulation(b assess.Bench, l assess.Line) string {
	in, ok := b.InsulationOf(l)
	if !ok {
		return ""
	}
	standard := "IEEE 43 (from memory; written for larger machines, tested with 500 V) asks for 5 MΩ at 40 °C. At " + temperature(l.Air) +
		" that is about " + megohms(in.Flattest) + " to " + megohms(in.Least) + " by its two rules."
	if in.Open {
		return "Open line means more than " + megohms(in.Shown) + " on this range. " + standard + " " + proofs[in.Proof]
	}
	return standard + " " + proofs[in.Proof]
}

var proofs = map[winding.Proof]string{
	winding.ProvesNothing:  "So this neither passes nor fails it: an insulation tester can.",
	winding.ProvesFailure:  "This is below it.",
	winding.ProvesNoDefect: "At the volt or so of a meter it is above that; at running voltage only an insulation tester can tell.",
}

func megohms(r quantity.Ohm) string {
	v := float64(r) / 1e6
	if v >= 10 {
		return strconv.FormatFloat(v, 'f', 0, 64) + " MΩ"
	}
	return strconv.FormatFloat(v, 'g', 2, 64) + " MΩ"
}
