package drawing

import "coilbook/engine/check"

// resistor lies along x around the origin: a plain body on two bare legs.
func resistor(length, reach float64) []Shape {
	const half = 10.0
	return []Shape{
		line("casing", 7, -reach, 0, reach, 0),
		Rect{"metal", -reach, -2, 2 * reach, 4, 2, 0},
		Rect{"plug", -length / 2, -half, length, 2 * half, 6, 2.5},
	}
}

// resistorLegs checks the ohm range on a resistor that lies on a board, touched
// by nothing but the probes.
func (s *sheet) resistorLegs() {
	at := Point{98, 104}
	const reach = 72.0
	s.mark(check.ResistorA, Point{at.X - reach + 12, at.Y})
	s.mark(check.ResistorB, Point{at.X + reach - 12, at.Y})
	s.add(Rect{"case", 6, 78, 190, 84, 6, 2.5})
	s.add(Group{Move: at, Shapes: resistor(64, reach)})
	s.add(
		words("label", Middle, at.X, at.Y+4.7, "Ω"),
		words("label", Middle, at.X, at.Y+40, fit(s.words.Resistor, textSize, 176)),
	)
	s.add(drawMeter(s.check.Function)...)
	s.probes(map[check.Terminal]float64{check.ResistorA: -46, check.ResistorB: -16})
}
