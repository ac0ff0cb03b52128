package part

import (
	"math"

	"coilbook/app/drawing"
)

// The room of a plot, and of the frame inside it.
const (
	plotW, plotH          = 340.0, 204.0
	plotLeft, plotRight   = 46.0, 330.0
	plotTop, plotBottom   = 22.0, 172.0
	plotText              = 13.0
	plotBeside            = 9.0 // between dots at one place
	dotR                  = 5.0
	plotAir               = 0.08 // of the span, above and below
	numeralGap, numeralUp = 6.0, 4.5
)

// Plot is figures over an axis: a band where they should lie, lines, and dots with
// their doubt. What it draws is in the table beside it too.
type Plot struct {
	Said       string // what stands for the picture to who does not see it
	Across, Up Axis
	Band       []Span // from left to right
	Lines      []Curve
	Dots       []Dot
}

// Axis spans a plot. Without marks of its own it has round numbers.
type Axis struct {
	Low, High float64
	Unit      string
	Marks     []AxisMark
}

// AxisMark is a place on an axis with its words.
type AxisMark struct {
	At   float64
	Text string
}

// Span is a place across and where most lie there.
type Span struct{ X, Low, High float64 }

// Curve is a line through points; a dashed one is what it is compared with.
type Curve struct {
	Points []drawing.Point // in the units of the axes
	Dashed bool
}

// Dot is a reading: Doubt to either side, Tone of its shape (in, out, unsure, or "" where
// nothing judges it), and Open where the display showed an open line, which lies above all
// numbers.
type Dot struct {
	X, Y, Doubt float64
	Tone        string
	Open        bool
}

// Picture draws the plot: axes, band, lines, dots.
func (p *Plot) Picture() drawing.Picture {
	out := drawing.Picture{Width: plotW, Height: plotH, Label: p.Said}
	if !(p.Across.High > p.Across.Low) || !(p.Up.High > p.Up.Low) {
		return out
	}
	for _, layer := range [][]drawing.Shape{p.band(), p.heights(), p.places(), p.lines(), p.dots()} {
		out.Shapes = append(out.Shapes, layer...)
	}
	return out
}

func (a *Axis) share(v float64) float64 { return min(max((v-a.Low)/(a.High-a.Low), 0), 1) }

func (p *Plot) x(v float64) float64 { return plotLeft + p.Across.share(v)*(plotRight-plotLeft) }

func (p *Plot) y(v float64) float64 { return plotBottom - p.Up.share(v)*(plotBottom-plotTop) }

func (p *Plot) at(x, y float64) drawing.Point { return drawing.Point{X: p.x(x), Y: p.y(y)} }

// band fills between its lower and its upper edge. One that has a single place is
// drawn a few pixels wide.
func (p *Plot) band() []drawing.Shape {
	var out []drawing.Shape
	for _, run := range p.runs() {
		var steps []drawing.Step
		for i, s := range run {
			op := byte('L')
			if i == 0 {
				op = 'M'
			}
			steps = append(steps, drawing.Step{Op: op, P: [3]drawing.Point{2: p.at(s.X, s.High)}})
		}
		for i := len(run) - 1; i >= 0; i-- {
			steps = append(steps, drawing.Step{Op: 'L', P: [3]drawing.Point{2: p.at(run[i].X, run[i].Low)}})
		}
		if len(run) == 1 {
			x, top, low := p.x(run[0].X), p.y(run[0].High), p.y(run[0].Low)
			out = append(out, drawing.Rect{Class: "plot-band", Width: 1.5, X: x - dotR, Y: top, W: 2 * dotR, H: low - top})
			continue
		}
		out = append(out, drawing.Path{Class: "plot-band", Width: 1.5, Steps: append(steps, drawing.Step{Op: 'Z'})})
	}
	return out
}

// runs part a band at rest from that of an engine that runs: between them nothing is
// known.
func (p *Plot) runs() [][]Span {
	if len(p.Band) > 1 && p.Band[0].X == 0 && p.Across.Low <= 0 && p.Across.Marks != nil {
		return [][]Span{p.Band[:1], p.Band[1:]}
	}
	if len(p.Band) == 0 {
		return nil
	}
	return [][]Span{p.Band}
}

// heights are the lines of round numbers upward, zero the strongest.
func (p *Plot) heights() []drawing.Shape {
	out := []drawing.Shape{plotWord(4, plotTop-8, drawing.Start, p.Up.Unit)}
	for _, v := range ticks(p.Up.Low, p.Up.High) {
		class := "wave-grid"
		if v == 0 {
			class = "bar-axis"
		}
		out = append(out, stroke(class, 1.5, drawing.Point{X: plotLeft, Y: p.y(v)}, drawing.Point{X: plotRight, Y: p.y(v)}),
			plotWord(plotLeft-numeralGap, p.y(v)+numeralUp, drawing.End, plainNumber(v)))
	}
	return out
}

// places are the marks across. A word that would run into the one before is left out.
func (p *Plot) places() []drawing.Shape {
	const words = plotBottom + 22
	out := []drawing.Shape{stroke("bar-axis", 1.5, drawing.Point{X: plotLeft, Y: plotBottom}, drawing.Point{X: plotRight, Y: plotBottom})}
	marks, last, end := p.Across.Marks, 0.0, plotW-2
	if marks == nil {
		for _, v := range ticks(p.Across.Low, p.Across.High) {
			marks = append(marks, AxisMark{v, plainNumber(v)})
		}
	}
	if p.Across.Unit != "" {
		out = append(out, plotWord(plotW-2, words, drawing.End, p.Across.Unit))
		end -= plotWidth(p.Across.Unit) + numeralGap
	}
	for _, m := range marks {
		at := p.x(m.At)
		out = append(out, stroke("bar-axis", 1.5, drawing.Point{X: at, Y: plotBottom}, drawing.Point{X: at, Y: plotBottom + 6}))
		half := plotWidth(m.Text) / 2
		at = min(max(at, half+2), plotW-half-2)
		if at-half < last || at+half > end {
			continue
		}
		out = append(out, plotWord(at, words, drawing.Middle, m.Text))
		last = at + half + numeralGap
	}
	return out
}

func (p *Plot) lines() []drawing.Shape {
	var out []drawing.Shape
	for _, c := range p.Lines {
		class := "wave-line"
		if c.Dashed {
			class = "plot-dashed"
		}
		steps := make([]drawing.Step, len(c.Points))
		for i, at := range c.Points {
			steps[i] = drawing.Step{Op: 'L', P: [3]drawing.Point{2: p.at(at.X, at.Y)}}
		}
		if len(steps) > 0 {
			steps[0].Op = 'M'
			out = append(out, drawing.Path{Class: class, Width: 2.5, Steps: steps})
		}
	}
	return out
}

// dots stand over their place; those of one place stand side by side.
func (p *Plot) dots() []drawing.Shape {
	var out []drawing.Shape
	for i, d := range p.Dots {
		before, all := 0, 0
		for j, other := range p.Dots {
			if other.X == d.X {
				all++
				if j < i {
					before++
				}
			}
		}
		x := p.x(d.X) + plotBeside*(float64(before)-float64(all-1)/2)
		x = min(max(x, dotR+1), plotW-dotR-1)
		if d.Open {
			out = append(out, opened(x)...)
			continue
		}
		out = append(out, doubtBar(x, p.y(d.Y+d.Doubt), p.y(d.Y-d.Doubt)), dot(d.Tone, x, p.y(d.Y)))
	}
	return out
}

// doubtBar is an upright line with caps.
func doubtBar(x, top, bottom float64) drawing.Shape {
	steps := append(level(x-4, x+4, top), level(x-4, x+4, bottom)...)
	return drawing.Path{Class: "plot-doubt", Width: 2, Steps: append(steps, upright(x, top, bottom)...)}
}

// dot is told apart by its shape: a disc in, a diamond out, a ring where it cannot be
// told, a dark square where nothing judges it.
func dot(tone string, x, y float64) drawing.Shape {
	switch tone {
	case "out":
		const r = dotR + 1.5
		return drawing.Path{Class: "bar-point-out", Width: 1.5, Steps: []drawing.Step{
			moveTo(x, y-r), lineTo(x+r, y), lineTo(x, y+r), lineTo(x-r, y), {Op: 'Z'}}}
	case "unsure":
		return drawing.Circle{Class: "bar-shown", Center: drawing.Point{X: x, Y: y}, R: dotR - 0.5, Width: 2.5}
	}
	if tone == "" {
		return drawing.Rect{Class: "plot-dot", Width: 1.5, X: x - dotR + 0.5, Y: y - dotR + 0.5, W: 2*dotR - 1, H: 2*dotR - 1}
	}
	return drawing.Circle{Class: "bar-point-in", Center: drawing.Point{X: x, Y: y}, R: dotR, Width: 1.5}
}

// opened is an arrow out of the top of the plot.
func opened(x float64) []drawing.Shape {
	return []drawing.Shape{drawing.Path{Class: "plot-doubt", Width: 2.5, Steps: append(upright(x, plotTop-4, plotTop+16),
		moveTo(x-5, plotTop+2), lineTo(x, plotTop-4), lineTo(x+5, plotTop+2))}}
}

func plotWord(x, y float64, a drawing.Anchor, text string) drawing.Shape {
	return drawing.Text{Class: "bar-words", At: drawing.Point{X: x, Y: y}, Size: plotText, Anchor: a, Text: text}
}

// plotWidth estimates the width of a text, rather too wide than too narrow.
func plotWidth(text string) float64 { return 0.6 * plotText * float64(len([]rune(text))) }

// Around is an axis upward that holds all values with some air; with zero it reaches
// down, or up, to it.
func Around(unit string, zero bool, values ...float64) Axis {
	low, high := math.Inf(1), math.Inf(-1)
	if zero {
		low, high = 0, 0
	}
	for _, v := range values {
		low, high = min(low, v), max(high, v)
	}
	if !(high > low) { // one value alone
		low, high = low-math.Max(math.Abs(low), 0.2)*plotAir, high+math.Max(math.Abs(high), 0.2)*plotAir
	}
	air := (high - low) * plotAir
	return Axis{Low: low - air, High: high + air, Unit: unit}
}
