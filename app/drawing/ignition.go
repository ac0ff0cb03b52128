package drawing

import "coilbook/engine/check"

// boxPeak is the height of what the ignition box gives to the ignition coil.
func (s *sheet) boxPeak() {
	s.boxAndCoil()
	s.peakProbes(0)
}

// boxAndCoil is the ignition box between engine and coil.
func (s *sheet) boxAndCoil() {
	const top, left, right, high = 8.0, 122.0, 222.0, 30.0
	c, r := Point{42, 64}, 32.0
	s.engine(89, c, r)
	s.turning(c, r)
	at := Point{144, 62}
	s.mark(check.BoxOutput, at)
	s.add(lead(false, Point{c.X + r, 42}, Point{left, top + high/2})...)
	s.add(Rect{"plug", left - 22, 16, 8, 14, 2, 2}, Rect{"plug", left - 14, 14, 10, 18, 2, 2})
	s.add(lead(true, Point{at.X, top + high}, at)...)
	s.add(Rect{"plug", left, top, right - left, high, 5, 2.5})
	s.add(words("label", Middle, (left+right)/2, top+high/2+4.7, fit(s.words.Box, textSize, right-left-4)))
	s.add(ignitionCoil(at)...)
	s.add(words("label", Start, at.X+2, 121, fit(s.words.Coil, textSize, 92)))
}

// ignitionCoil hangs on its feed wire from a point; its thick lead goes on to
// the spark plug.
func ignitionCoil(feed Point) []Shape {
	c := Point{feed.X, feed.Y + 32}
	out := lead(true, feed, Point{c.X, c.Y - 14})
	return append(out,
		Path{"ink", 5, rounded(8, c.X-14, c.Y, c.X-31, c.Y, c.X-31, c.Y+8)},
		Rect{"iron", c.X - 35, c.Y + 8, 8, 12, 2, 0},
		Rect{"iron", c.X - 20, c.Y - 5, 40, 10, 1.5, 0},
		Rect{"plug", c.X - 15, c.Y - 13, 30, 26, 6, 2.5},
		Rect{"metal", c.X - 4, c.Y - 16, 8, 5, 1, 0},
	)
}
