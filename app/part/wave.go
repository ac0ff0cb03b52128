package part

import (
	"math"

	"coilbook/app/drawing"
	"coilbook/app/words"
)

// The plot of a waveform, and the frame inside it.
const (
	waveW, waveH          = 340.0, 164.0
	waveLeft, waveRight   = 46.0, 332.0
	waveTop, waveBottom   = 12.0, 134.0
	waveText              = 13.0
	leastSpan             = 0.2 // V: a steady voltage is no noise
	mostTicks, leastTicks = 4, 2
)

// Wave plots voltages at even steps of time, in V and s; said is what stands for
// it to who does not see it.
func Wave(volts []float64, step float64, said string) drawing.Picture {
	p := drawing.Picture{Width: waveW, Height: waveH, Label: said}
	if len(volts) < 2 || !(step > 0) {
		return p
	}
	f := frameOf(volts, step)
	p.Shapes = append(f.heights(), f.times()...)
	p.Shapes = append(p.Shapes, curve(volts, func(i int) drawing.Point { return drawing.Point{X: f.x(step * float64(i)), Y: f.y(volts[i])} }))
	return p
}

// frame is what the plot spans: volts upward, seconds to the right.
type frame struct{ low, high, long float64 }

func frameOf(volts []float64, step float64) frame {
	low, high := waveSpan(volts)
	return frame{low, high, step * float64(len(volts)-1)}
}

func (f frame) x(t float64) float64 { return waveLeft + t/f.long*(waveRight-waveLeft) }

func (f frame) y(v float64) float64 {
	return waveBottom - (v-f.low)/(f.high-f.low)*(waveBottom-waveTop)
}

// heights are the lines of round voltages, zero the strongest.
func (f frame) heights() []drawing.Shape {
	out := []drawing.Shape{waveWord(4, waveTop+4, drawing.Start, "V")}
	for _, v := range ticks(f.low, f.high) {
		class := "wave-grid"
		if v == 0 {
			class = "bar-axis"
		}
		out = append(out, stroke(class, 1.5, drawing.Point{X: waveLeft, Y: f.y(v)}, drawing.Point{X: waveRight, Y: f.y(v)}),
			waveWord(waveLeft-6, f.y(v)+4.5, drawing.End, plainNumber(v)))
	}
	return out
}

// times are the marks of round milliseconds.
func (f frame) times() []drawing.Shape {
	const words = waveBottom + 20
	out := []drawing.Shape{waveWord(waveRight, words, drawing.End, "ms")}
	for _, ms := range ticks(0, f.long*1e3) {
		at := f.x(ms / 1e3)
		out = append(out, stroke("bar-axis", 1.5, drawing.Point{X: at, Y: waveBottom}, drawing.Point{X: at, Y: waveBottom + 5}))
		if at < waveRight-44 {
			out = append(out, waveWord(at, words, drawing.Middle, plainNumber(ms)))
		}
	}
	return out
}

func waveWord(x, y float64, a drawing.Anchor, text string) drawing.Shape {
	return drawing.Text{Class: "bar-words", At: drawing.Point{X: x, Y: y}, Size: waveText, Anchor: a, Text: text}
}

func curve(volts []float64, at func(i int) drawing.Point) drawing.Shape {
	steps := make([]drawing.Step, len(volts))
	for i := range volts {
		op := byte('L')
		if i == 0 {
			op = 'M'
		}
		steps[i] = drawing.Step{Op: op, P: [3]drawing.Point{2: at(i)}}
	}
	return drawing.Path{Class: "wave-line", Width: 2, Steps: steps}
}

// waveSpan is from the lowest to the highest voltage and zero, with some air.
func waveSpan(volts []float64) (low, high float64) {
	for _, v := range volts {
		low, high = min(low, v), max(high, v)
	}
	if high-low < leastSpan {
		low, high = low-leastSpan/2, high+leastSpan/2
	}
	air := (high - low) * 0.06
	return low - air, high + air
}

// ticks are round numbers in a span, few enough to read.
func ticks(low, high float64) []float64 {
	step := math.Pow(10, math.Floor(math.Log10((high-low)/leastTicks)))
	for _, k := range []float64{1, 2, 5, 10} {
		if (high-low)/(k*step) <= mostTicks {
			step *= k
			break
		}
	}
	var out []float64
	for i := math.Ceil(low/step - 1e-9); i*step <= high+step*1e-9; i++ {
		out = append(out, i*step)
	}
	return out
}

func plainNumber(v float64) string {
	text := words.Plain(math.Round(math.Abs(v)*1e4) / 1e4)
	if v < 0 {
		return "−" + text
	}
	return text
}

func stroke(class string, width float64, from, to drawing.Point) drawing.Shape {
	return drawing.Path{Class: class, Width: width, Steps: []drawing.Step{
		{Op: 'M', P: [3]drawing.Point{2: from}}, {Op: 'L', P: [3]drawing.Point{2: to}},
	}}
}
