package part

import (
	"coilbook/app/drawing"
	"coilbook/engine/spec"
)

// The bar from the top: words, the bell, the line it stands on, the figures of
// the limit.
const (
	barWidth, barHeight = 340.0, 64.0
	barLeft, barRight   = 8.0, 332.0
	chanceY             = 13.0
	zoneTop, bellTop    = 17.0, 19.0
	barY                = 43.0
	figureY             = 61.0
	barSize             = 13.5
)

// LimitBar draws a limit as a band on a line with its figures at its ends, and
// on the line the value with its doubt as a bell, filled as far as it lies
// inside: the share that is filled is the probability that the value conforms.
// Of windings that should be alike the bell is that of the one furthest off.
func LimitBar(v spec.Verdict) drawing.Picture {
	p := drawing.Picture{Width: barWidth, Height: barHeight, Label: barLabel(v)}
	if !v.HasLimit {
		return p
	}
	s := scaleFor(v)
	for _, layer := range [][]drawing.Shape{
		ground(v.Limit, s), reading(v, s), band(v.Limit, s), marks(v, s), figures(v.Limit, s), chance(v, s),
	} {
		p.Shapes = append(p.Shapes, layer...)
	}
	return p
}

func level(a, b, y float64) []drawing.Step {
	return []drawing.Step{moveTo(a, y), lineTo(b, y)}
}

func upright(x, top, bottom float64) []drawing.Step {
	return []drawing.Step{moveTo(x, top), lineTo(x, bottom)}
}

// arrowHead points outward, 1 to the right and -1 to the left, with its tip at x.
func arrowHead(x, y, size, outward float64) []drawing.Step {
	back := x - size*outward
	return []drawing.Step{moveTo(back, y-size), lineTo(x, y), lineTo(back, y+size)}
}

func moveTo(x, y float64) drawing.Step {
	return drawing.Step{Op: 'M', P: [3]drawing.Point{2: {X: x, Y: y}}}
}

func lineTo(x, y float64) drawing.Step {
	return drawing.Step{Op: 'L', P: [3]drawing.Point{2: {X: x, Y: y}}}
}
