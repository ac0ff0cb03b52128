package drawing

import "coilbook/engine/check"

// Icon draws the sign of a start choice, 34 by 34: an aim of check, "sessions",
// "meter", "about", "phone", "aloud", "hush" or "share". An unknown name gives an empty picture. It
// stands beside words, so its label is only its name.
func Icon(name string) Picture {
	p := Picture{Width: 34, Height: 34, Label: name}
	switch name {
	case "no-charge":
		p.Shapes = battery()
	case "overcharges":
		p.Shapes = boilingBattery()
	case "flat-after-standing":
		p.Shapes = flatBattery()
	case "no-spark":
		p.Shapes = append(plugBody(), crossedOut()...)
	case "weak-spark":
		p.Shapes = sparkPlug()
	case "cuts-out-hot":
		p.Shapes = append(plugBody(), hotSign()...)
	case "bench":
		p.Shapes = stator(check.Build{StatorPoles: 6}, Point{17, 17}, 16)
	case "sessions":
		p.Shapes = sheets()
	case "meter":
		p.Shapes = handMeter()
	case "about":
		p.Shapes = question()
	case "phone":
		p.Shapes = handPhone()
	case "aloud":
		p.Shapes = loudspeaker()
	case "hush":
		p.Shapes = []Shape{Rect{"sign-accent", 6, 6, 22, 22, 3, 0}}
	case "share":
		p.Shapes = boxWithArrow()
	}
	return p
}

func battery() []Shape {
	return append(batteryCase(),
		line("accent", 2.8, 7.5, 19.5, 13.5, 19.5),
		line("accent", 2.8, 20.5, 19.5, 26.5, 19.5),
		line("accent", 2.8, 23.5, 16.5, 23.5, 22.5),
	)
}

func batteryCase() []Shape {
	return []Shape{
		Rect{"ink", 3, 10, 28, 19, 2.5, 2.6},
		line("ink", 2.6, 8, 9, 8, 6, 13, 6, 13, 9),
		line("ink", 2.6, 21, 9, 21, 6, 26, 6, 26, 9),
	}
}

// boilingBattery is filled to the brim, with bubbles in it.
func boilingBattery() []Shape {
	return append(batteryCase(),
		line("accent", 2.8, 7, 15, 27, 15),
		Circle{"accent", Point{11, 23}, 2.2, 2.2},
		Circle{"accent", Point{17.5, 21}, 1.8, 2.2},
		Circle{"accent", Point{23.5, 23.5}, 2.4, 2.2},
	)
}

// flatBattery has a little left at its bottom.
func flatBattery() []Shape {
	return append(batteryCase(), line("accent", 2.8, 7, 25, 12, 25))
}

func sparkPlug() []Shape { return append(plugBody(), smallSpark()) }

func plugBody() []Shape {
	return []Shape{
		Rect{"ink", 9.5, 2.5, 7, 9, 1.5, 2.6},
		Rect{"ink", 5.5, 11.5, 15, 6.5, 1.5, 2.6},
		Rect{"ink", 8.5, 18, 9, 7.5, 1, 2.6},
		line("ink", 2.6, 17.5, 25.5, 21, 25.5, 21, 31.5, 12.5, 31.5),
	}
}

// crossedOut stands where the spark would be.
func crossedOut() []Shape {
	return []Shape{line("accent", 2.8, 25, 22, 32, 29), line("accent", 2.8, 32, 22, 25, 29)}
}

func smallSpark() Shape {
	return area("sign-accent", 29.5, 13, 23.2, 23, 27, 23, 25, 31.5, 32.5, 20.5, 28.6, 20.5)
}

func hotSign() []Shape {
	return []Shape{
		line("accent", 2.6, 28, 5, 28, 22),
		Circle{"sign-accent", Point{28, 26}, 4.2, 0},
		line("accent", 2, 31, 8, 33, 8), line("accent", 2, 31, 13, 33, 13), line("accent", 2, 31, 18, 33, 18),
	}
}

func sheets() []Shape {
	return []Shape{
		line("ink", 2.6, 11, 3, 29, 3, 29, 26),
		Rect{"ink", 5, 8, 19, 23, 2, 2.6},
		line("accent", 2.6, 10, 15, 19, 15),
		line("accent", 2.6, 10, 20, 19, 20),
		line("accent", 2.6, 10, 25, 15, 25),
	}
}

func handMeter() []Shape {
	return []Shape{
		Rect{"ink", 7, 2.5, 20, 29, 3, 2.6},
		line("ink", 2.6, 12, 9, 22, 9),
		Circle{"ink", Point{17, 21}, 5.5, 2.6},
		line("accent", 2.8, 17, 21, 21, 17),
	}
}

// handPhone is a phone with two sliders on it.
func handPhone() []Shape {
	return []Shape{
		Rect{"ink", 8.5, 2.5, 17, 29, 3, 2.6},
		line("ink", 2.6, 15, 27, 19, 27),
		line("accent", 2.4, 13, 10, 21, 10), Circle{"sign-accent", Point{18.5, 10}, 2.4, 0},
		line("accent", 2.4, 13, 18, 21, 18), Circle{"sign-accent", Point{15.5, 18}, 2.4, 0},
	}
}

// loudspeaker gives sound off to its right.
func loudspeaker() []Shape {
	return []Shape{
		line("ink", 2.6, 4, 13, 9.5, 13, 17, 6, 17, 28, 9.5, 21, 4, 21, 4, 13),
		Path{"accent", 2.6, arc('M', Point{17, 17}, 6.5, -45, 45)},
		Path{"accent", 2.6, arc('M', Point{17, 17}, 12.5, -45, 45)},
	}
}

// boxWithArrow is an open box with an arrow that leaves it upwards.
func boxWithArrow() []Shape {
	return []Shape{
		line("ink", 2.6, 11.5, 13, 6.5, 13, 6.5, 31, 27.5, 31, 27.5, 13, 22.5, 13),
		line("accent", 2.8, 17, 22, 17, 4),
		line("accent", 2.8, 11, 9.5, 17, 3.5, 23, 9.5),
	}
}

func question() []Shape {
	hook := append(arc('M', Point{17, 13.5}, 4.8, 180, 405), curveTo(18.6, 18.6, 17, 18.8, 17, 21.5))
	return []Shape{
		Circle{"ink", Point{17, 17}, 14, 2.6},
		Path{"accent", 2.8, hook},
		Circle{"sign-accent", Point{17, 25.6}, 1.8, 0},
	}
}
