package drawing

import "coilbook/engine/check"

// heat says below the winding that it is hot: a thermometer that stands high.
func (s *sheet) heat() {
	if s.check.Method != check.HotWinding {
		return
	}
	s.add(thermometer(Point{38, 157})...)
	s.add(words("label-accent", Start, 53, 152, fit(s.words.Hot, textSize, 44)))
}

// thermometer stands on its bulb.
func thermometer(bulb Point) []Shape {
	const height, half, r = 33.0, 4.5, 8.0
	top := bulb.Y - height
	return []Shape{
		Rect{"case", bulb.X - half, top, 2 * half, height, half, 2},
		Circle{"case", bulb, r, 2},
		Circle{"sign-accent", bulb, r - 2.5, 0},
		line("accent", 4, bulb.X, bulb.Y, bulb.X, top+7),
		line("ink", 1.8, bulb.X+half+2.5, top+6, bulb.X+half+6.5, top+6),
		line("ink", 1.8, bulb.X+half+2.5, top+13, bulb.X+half+6.5, top+13),
	}
}
