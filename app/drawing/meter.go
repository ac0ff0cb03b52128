package drawing

import "coilbook/engine/meter"

// The mini meter stands at the right edge; its two jacks are one above the
// other, so that the cable of the upper probe reaches the upper jack.
const (
	meterX, meterY, meterW, meterH = 293.0, 7.0, 62.0, 156.0
	jackX, redJackY, blackJackY    = 306.0, 120.0, 146.0
)

var dialCenter = Point{324, 85}

const dialR = 15.0

// functionSign is what a meter prints around its dial.
func functionSign(f meter.Function) string {
	return [...]string{"Ω", "V⎓", "V~", "A⎓"}[f]
}

// drawMeter gives the body with the dial at the check's function and the two
// jacks in use, each in its probe's colour.
func drawMeter(f meter.Function) []Shape {
	out := []Shape{
		Rect{"meter", meterX, meterY, meterW, meterH, 9, 2.5},
		Rect{"screen", meterX + 8, meterY + 8, meterW - 16, 26, 3, 0},
		Text{"on-screen", Point{meterX + meterW - 13, meterY + 27}, 18, End, functionSign(f)},
	}
	out = append(out, dial(f)...)
	out = append(out, jack(redJackY, "VΩ", "probe-red")...)
	return append(out, jack(blackJackY, "COM", "probe-black")...)
}

// dialMark is a position on the dial; Sign is printed beside it.
type dialMark struct {
	f     meter.Function
	angle float64
	x     float64
}

// dial points at the function and prints both functions that the checks use,
// the chosen one strong.
func dial(f meter.Function) []Shape {
	out := []Shape{Circle{"dial", dialCenter, dialR, 0}}
	for _, a := range []float64{-90, 0, 180} {
		out = append(out, tick("ink", 2, a, 5))
	}
	angle := -90.0
	for _, m := range []dialMark{{meter.VoltsAC, -135, 308.5}, {meter.Ohms, -45, 341}} {
		class, tickClass, width := "label-soft", "ink", 2.0
		if m.f == f {
			class, tickClass, width, angle = "label-accent", "accent", 4, m.angle
		}
		out = append(out, tick(tickClass, width, m.angle, 6),
			words(class, Middle, m.x, 62, functionSign(m.f)))
	}
	tip, tail := polar(dialCenter, dialR-3, angle), polar(dialCenter, dialR-5, angle+180)
	return append(out, line("needle", 4, tail.X, tail.Y, tip.X, tip.Y))
}

func tick(class string, width, angle, length float64) Shape {
	p, q := polar(dialCenter, dialR+3, angle), polar(dialCenter, dialR+length, angle)
	return line(class, width, p.X, p.Y, q.X, q.Y)
}

func jack(y float64, sign, class string) []Shape {
	return []Shape{
		Circle{class, Point{jackX, y}, 7, 1.6},
		Circle{"paper", Point{jackX, y}, 2.8, 0},
		words("label", Start, jackX+11, y+4.7, sign),
	}
}
