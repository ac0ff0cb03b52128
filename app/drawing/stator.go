package drawing

import (
	"math"

	"coilbook/engine/check"
)

// Radii of the stator face as shares of its outer radius.
const (
	boreR  = 0.17
	boltR  = 0.32
	ringR  = 0.48
	coilR  = 0.53 // inner end of a coil
	shoeR  = 0.87 // under the pole shoe
	halfUp = -90  // the first pole stands up; with an exciter it is the wrapped one
)

// stator draws the face with its poles. Iron first, copper over it, the wrapped
// exciter pole last, because it is wider than its share.
func stator(b check.Build, c Point, r float64) []Shape {
	n := min(max(b.StatorPoles, check.MinPoles), check.MaxPoles)
	var iron, coils []Shape
	for i := range n {
		turn := 360 * float64(i) / float64(n)
		iron = append(iron, Group{Move: c, Turn: turn, Shapes: poleIron(r, n)})
		if i > 0 || !b.Exciter {
			coils = append(coils, Group{Move: c, Turn: turn, Shapes: coil(r, coilWidth(r, n))})
		}
	}
	out := append(iron, Circle{"metal", c, r * ringR, 0}, Circle{"paper", c, r * boreR, 0})
	for i := range 3 {
		out = append(out, Circle{"paper", polar(c, r*boltR, 90+120*float64(i)), max(r*0.05, 1.6), 0})
	}
	out = append(out, coils...)
	if b.Exciter {
		out = append(out, Group{Move: c, Shapes: wrapped(r, max(coilWidth(r, n)*1.12, r*0.24))})
	}
	return out
}

// coilWidth leaves a slot between neighbours where they are closest.
func coilWidth(r float64, poles int) float64 {
	if poles < 6 {
		return r * 0.36
	}
	return min(r*0.36, 2*coilR*r*math.Tan(math.Pi/float64(poles))*0.86)
}

// poleIron is the neck and the shoe of an upright pole around the origin.
func poleIron(r float64, poles int) []Shape {
	half := min(0.39*360/float64(poles), 21)
	neck := coilWidth(r, poles) * 0.5
	shoe := Path{"metal", 0, append(arc('M', Point{}, r, halfUp-half, halfUp+half),
		append(arc('L', Point{}, r*shoeR, halfUp+half*0.9, halfUp-half*0.9), closed())...)}
	return []Shape{Rect{"metal", -neck / 2, -r * 0.95, neck, r * (0.95 - ringR*0.9), 0, 0}, shoe}
}

// coil is the copper of an upright pole; its turns are drawn where there is
// room to see them.
func coil(r, width float64) []Shape {
	top, bottom := -r*(shoeR-0.015), -r*coilR
	out := []Shape{Rect{"copper", -width / 2, top, width, bottom - top, min(width*0.22, r*0.07), 0}}
	if width < 6 {
		return out
	}
	lines := int((bottom - top) / 4)
	step := (bottom - top) / float64(lines)
	for i := 1; i < lines; i++ {
		y := top + step*float64(i)
		out = append(out, line("turn", 1.3, -width/2+0.8, y+0.5, width/2-0.8, y-0.5))
	}
	return out
}

// wrapped is the exciter coil under its tape.
func wrapped(r, width float64) []Shape {
	top, bottom := -r*(shoeR-0.015), -r*(coilR-0.02)
	out := []Shape{Rect{"wrap", -width / 2, top, width, bottom - top, r * 0.08, max(1.6, r*0.04)}}
	lean := width * 0.3
	for i := 1; i < 4; i++ {
		y := top + (bottom-top)*float64(i)/4
		out = append(out, line("wrap-turn", max(1.2, r*0.028), -width/2+1.2, y+lean/2, width/2-1.2, y-lean/2))
	}
	return out
}

// corePoint is where a probe reaches the bare iron between the bolts.
func corePoint(c Point, r float64) Point { return polar(c, r*0.34, 58) }

// Stator draws the face of a build's stator, 120 by 120; label is what it says to
// those who do not see it.
func Stator(b check.Build, label string) Picture {
	return Picture{Width: 120, Height: 120, Label: label, Shapes: stator(b, Point{60, 60}, 57)}
}

// exciterPoint is the side of the wrapped pole, where its lead begins.
func exciterPoint(c Point, r float64) Point { return Point{c.X + r*0.05, c.Y - r*0.7} }
