package part

import (
	"math"
	"strings"

	"coilbook/app/drawing"
	"coilbook/app/words"
	"coilbook/engine/spec"
)

// barLabel says what the bar shows: reading with doubt, limit, probability.
func barLabel(v spec.Verdict) string {
	var out []string
	switch {
	case v.HasValue:
		out = append(out, words.Doubt(v))
	case overRange(v):
		out = append(out, words.KeyOpen)
	}
	if v.HasLimit {
		out = append(out, words.Limit(v.Limit))
	}
	if chanceKnown(v) {
		out = append(out, chanceWords(v))
	}
	return strings.Join(out, ", ")
}

// chanceKnown reports whether the probability is that of the value. Where
// something is known to be wrong with the reading itself it says nothing.
func chanceKnown(v spec.Verdict) bool {
	switch v.Reason {
	case spec.NegativeOhms, spec.BadLeads, spec.PeakHidden:
		return false
	}
	return v.HasValue && v.HasLimit
}

// chanceWords is the probability in words. An open verdict gives that of being
// in spec.
func chanceWords(v spec.Verdict) string {
	o := v.Outcome
	if o == spec.CannotTell {
		o = spec.InSpec
	}
	return words.Chance(v) + " " + words.Outcome(o)
}

// chance stands above the line, on the side away from the value.
func chance(v spec.Verdict, s scale) []drawing.Shape {
	if !chanceKnown(v) {
		return nil
	}
	t := drawing.Text{Class: "bar-chance-" + Tone(v.Outcome), At: drawing.Point{X: barLeft, Y: chanceY}, Size: barSize, Anchor: drawing.Start, Text: chanceWords(v)}
	if s.x(v.Value) < barWidth/2 {
		t.At.X, t.Anchor = barRight, drawing.End
	}
	return []drawing.Shape{t}
}

// figures are the limit's figures under its ends. A limit with one end says in
// words which way it holds.
func figures(l spec.Limit, s scale) []drawing.Shape {
	a, b := ends(l, s)
	low, high := sides(l)
	unit := words.LimitUnit(l)
	switch {
	case l.Open:
		return []drawing.Shape{figure(a, numeral(unit.Figure(low, l.Unit))+" "+unit.Name), figure(barRight, words.KeyOpen)}
	case math.IsInf(high, 1):
		return []drawing.Shape{figure(a, words.Limit(l))}
	case math.IsInf(low, -1):
		return []drawing.Shape{figure(b, words.Limit(l))}
	case l.Ratio:
		return apart(figure(a, "−"+numeral(100*high)+" %"), figure(b, "+"+numeral(100*high)+" %"))
	}
	return apart(figure(a, numeral(unit.Figure(low, l.Unit))), figure(b, numeral(unit.Figure(high, l.Unit))+" "+unit.Name))
}

// numeral is a limit's number as it was given, with a minus as long as a plus.
func numeral(n float64) string {
	return strings.Replace(words.Plain(math.Round(n*1e6)/1e6), "-", "−", 1)
}

// figure stands centred under a place, as far as the picture has room.
func figure(x float64, text string) drawing.Text {
	half := barTextWidth(text) / 2
	x = min(max(x, half+2), barWidth-half-2)
	return drawing.Text{Class: "bar-words", At: drawing.Point{X: x, Y: figureY}, Size: barSize, Anchor: drawing.Middle, Text: text}
}

// apart moves two figures from each other until they can be told apart, one
// further than the other where the picture ends.
func apart(a, b drawing.Text) []drawing.Shape {
	const gap = 8
	need := (barTextWidth(a.Text)+barTextWidth(b.Text))/2 + gap
	if lack := need - (b.At.X - a.At.X); lack > 0 {
		a = figure(a.At.X-lack/2, a.Text)
		b = figure(a.At.X+need, b.Text)
		a = figure(b.At.X-need, a.Text)
	}
	return []drawing.Shape{a, b}
}

// barTextWidth estimates the width of a text, rather too wide than too narrow.
func barTextWidth(text string) float64 {
	return 0.58 * barSize * float64(len([]rune(text)))
}
