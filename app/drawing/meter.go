package drawing

import (
	"strings"

	"coilbook/engine/meter"
)

// The mini meter stands at the right edge; its two jacks are one above the
// other, so that the cable of the upper probe reaches the upper jack.
const (
	meterX, meterY, meterW, meterH = 293.0, 7.0, 62.0, 156.0
	jackX, redJackY, blackJackY    = 306.0, 120.0, 146.0
)

var dialCenter = Point{315, 88}

const dialR = 13.5

// functionSign is what a meter prints around its dial.
func functionSign(f meter.Function) string {
	return [...]string{"Ω", "V⎓", "V~", "A⎓", "diode"}[f]
}

// drawMeter gives the body with the dial at the check's function and the two
// jacks in use, each in its probe's colour.
func drawMeter(f meter.Function) []Shape {
	out := []Shape{
		Rect{"meter", meterX, meterY, meterW, meterH, 9, 2.5},
		Rect{"screen", meterX + 8, meterY + 8, meterW - 16, 26, 3, 0},
	}
	out = append(out, sign("on-screen", f, Point{meterX + meterW - 25, meterY + 27}, 18)...)
	out = append(out, dial(f)...)
	socket := "VΩ"
	if f == meter.AmpsDC {
		socket = "10 A"
	}
	out = append(out, jack(redJackY, socket, "probe-red")...)
	return append(out, jack(blackJackY, "COM", "probe-black")...)
}

// sign prints a function around the middle of a base line. The bars of direct
// current are drawn: few typefaces have the character.
func sign(class string, f meter.Function, at Point, size float64) []Shape {
	if f == meter.Diode {
		return diodeSign(class, at, size)
	}
	letters, direct := strings.CutSuffix(functionSign(f), "⎓")
	if !direct {
		return []Shape{Text{class, at, size, Middle, letters}}
	}
	u := size / 13
	left := at.X + 0.5*u
	out := []Shape{
		Text{class, Point{at.X - 0.5*u, at.Y}, size, End, letters},
		Rect{class, left, at.Y - 7*u, 9 * u, 1.8 * u, 0, 0},
	}
	for i := range 3 {
		out = append(out, Rect{class, left + 3.4*u*float64(i), at.Y - 3.6*u, 2.2 * u, 1.8 * u, 0, 0})
	}
	return out
}

// dialMark is a position on the dial; the function's sign stands at At.
type dialMark struct {
	f     meter.Function
	angle float64
	at    Point
}

// dialMarks are the functions that the checks use. That of the diode has little room
// and stands there only in use.
var dialMarks = []dialMark{
	{meter.VoltsAC, -140, Point{307, 62}},
	{meter.VoltsDC, -48, Point{338, 62}},
	{meter.Ohms, 24, Point{345, 103}},
	{meter.AmpsDC, 156, Point{305.5, 109}},
	{meter.Diode, 62, Point{334, 112}},
}

// dial points at the function and prints all that the checks use, the chosen
// one strong.
func dial(f meter.Function) []Shape {
	out := []Shape{Circle{"dial", dialCenter, dialR, 0}, tick("ink", 2, -94, 5)}
	angle := -94.0
	for _, m := range dialMarks {
		if m.f == meter.Diode && f != meter.Diode {
			continue
		}
		class, tickClass, width := "label-soft", "ink", 2.0
		if m.f == f {
			class, tickClass, width, angle = "label-accent", "accent", 4, m.angle
		}
		out = append(out, tick(tickClass, width, m.angle, 6))
		out = append(out, sign(class, m.f, m.at, textSize)...)
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
