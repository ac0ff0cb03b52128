package drawing

// The peak-hold adapter stands before the meter's jacks; its rails are at their
// heights.
const (
	adapterX, adapterY, adapterW, adapterH = 241.0, 70.0, 42.0, 84.0
	adapterRed, adapterBlack               = 269.0, 256.0 // where cables come in from above
)

// adapter lets pulses through its diode and holds their height on its
// capacitor; both after IEC 60617. Black comes in from above or, low, from the
// left.
func (s *sheet) adapter(blackAbove bool) {
	right, bottom := adapterX+adapterW, adapterY+adapterH
	s.add(cable(true, right, redJackY, jackX, redJackY)...)
	s.add(cable(false, right, blackJackY, jackX, blackJackY)...)
	s.add(Rect{"meter", adapterX, adapterY, adapterW, adapterH, 6, 2.5})
	black := []float64{adapterX, blackJackY, right, blackJackY}
	if blackAbove {
		black = []float64{adapterBlack, adapterY, adapterBlack, blackJackY, right, blackJackY}
	}
	s.add(line("ink", 2, adapterRed, adapterY, adapterRed, redJackY, right, redJackY), line("ink", 2, black...))
	s.add(diode(Point{adapterRed, adapterY + 24})...)
	s.add(capacitor(adapterRed, redJackY, blackJackY)...)
	s.add(words("label", Middle, adapterX+adapterW/2, bottom+13, fit(s.words.Adapter, textSize, 70)))
}

// diode passes downward.
func diode(at Point) []Shape {
	const half, high = 7.5, 13.0
	return []Shape{
		area("sign-accent", at.X-half, at.Y-high/2, at.X+half, at.Y-high/2, at.X, at.Y+high/2),
		line("accent", 2.6, at.X-half, at.Y+high/2, at.X+half, at.Y+high/2),
	}
}

// capacitor hangs between two rails.
func capacitor(x, upper, lower float64) []Shape {
	const half, gap = 8.0, 2.8
	middle := (upper + lower) / 2
	return []Shape{
		line("ink", 2, x, upper, x, middle-gap), line("ink", 2, x, middle+gap, x, lower),
		line("accent", 2.8, x-half, middle-gap, x+half, middle-gap), line("accent", 2.8, x-half, middle+gap, x+half, middle+gap),
	}
}
