package part

import (
	"math"

	"coilbook/app/drawing"
)

// Bar is a row of a bar plot: a share of the whole. A hollow one is no suspect of its
// own: what is left over.
type Bar struct {
	Name, Figure string
	Share        float64 // 0 to 1
	Hollow       bool
}

// The room of the bars.
const (
	barsLeft, barsRight = 6.0, 292.0
	barsRow, barsHigh   = 40.0, 13.0
	barsTop             = 4.0
)

// Bars draws shares as bars over one axis from 0 to 100 %, each with its name above
// and its figure at its end.
func Bars(said string, bars []Bar) drawing.Picture {
	bottom := barsTop + barsRow*float64(len(bars)) + 4
	p := drawing.Picture{Width: plotW, Height: bottom + 26, Label: said}
	for _, percent := range []float64{0, 25, 50, 75, 100} {
		class := "wave-grid"
		if percent == 0 {
			class = "bar-axis"
		}
		x, a, text := barsX(percent/100), drawing.Middle, plainNumber(percent)
		if percent == 100 {
			text += " %"
		}
		if percent == 0 {
			a, x = drawing.Start, barsLeft-3
		}
		p.Shapes = append(p.Shapes, stroke(class, 1.5, drawing.Point{X: barsX(percent / 100), Y: barsTop}, drawing.Point{X: barsX(percent / 100), Y: bottom + 5}),
			plotWord(x, bottom+20, a, text))
	}
	for i, b := range bars {
		p.Shapes = append(p.Shapes, b.row(barsTop+barsRow*float64(i))...)
	}
	return p
}

func barsX(share float64) float64 {
	return barsLeft + math.Min(math.Max(share, 0), 1)*(barsRight-barsLeft)
}

func (b Bar) row(top float64) []drawing.Shape {
	class := "share-full"
	if b.Hollow {
		class = "plot-hollow"
	}
	end, y := barsX(b.Share), top+20
	name := cut(b.Name, plotW-2*barsLeft)
	figure := drawing.Text{Class: "bar-words", At: drawing.Point{X: end + numeralGap, Y: y + barsHigh - 2}, Size: plotText, Anchor: drawing.Start, Text: b.Figure}
	if room := plotW - 2 - figure.At.X; plotWidth(b.Figure) > room { // inside, in the colour of what lies on the accent
		figure.At.X, figure.Anchor, figure.Class = end-numeralGap, drawing.End, "plot-on-bar"
		if b.Hollow {
			figure.Class = "bar-words"
		}
	}
	return []drawing.Shape{
		drawing.Rect{Class: "plot-behind", X: barsLeft - 2, Y: top + 1, W: plotWidth(name) + 4, H: 17},
		plotWord(barsLeft, top+14, drawing.Start, name),
		drawing.Rect{Class: class, Width: 1.5, X: barsLeft, Y: y, W: math.Max(end-barsLeft, 2), H: barsHigh, R: 2},
		figure,
	}
}

// cut shortens a text that would be wider than there is room for.
func cut(text string, room float64) string {
	runes := []rune(text)
	if plotWidth(text) <= room {
		return text
	}
	for len(runes) > 0 && plotWidth(string(runes)+"…") > room {
		runes = runes[:len(runes)-1]
	}
	return string(runes) + "…"
}
