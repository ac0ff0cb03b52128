package drawing

import "coilbook/engine/check"

// Icon draws the sign of a start choice, 34 by 34: "no-charge", "no-spark",
// "bench", "sessions", "meter" or "about". An unknown name gives an empty picture. It
// stands beside words, so its label is only its name.
func Icon(name string) Picture {
	p := Picture{Width: 34, Height: 34, Label: name}
	switch name {
	case "no-charge":
		p.Shapes = battery()
	case "no-spark":
		p.Shapes = sparkPlug()
	case "bench":
		p.Shapes = stator(check.Build{StatorPoles: 6}, Point{17, 17}, 16)
	case "sessions":
		p.Shapes = sheets()
	case "meter":
		p.Shapes = handMeter()
	case "about":
		p.Shapes = question()
	}
	return p
}

func battery() []Shape {
	return []Shape{
		Rect{"ink", 3, 10, 28, 19, 2.5, 2.6},
		line("ink", 2.6, 8, 9, 8, 6, 13, 6, 13, 9),
		line("ink", 2.6, 21, 9, 21, 6, 26, 6, 26, 9),
		line("accent", 2.8, 7.5, 19.5, 13.5, 19.5),
		line("accent", 2.8, 20.5, 19.5, 26.5, 19.5),
		line("accent", 2.8, 23.5, 16.5, 23.5, 22.5),
	}
}

func sparkPlug() []Shape {
	return []Shape{
		Rect{"ink", 9.5, 2.5, 7, 9, 1.5, 2.6},
		Rect{"ink", 5.5, 11.5, 15, 6.5, 1.5, 2.6},
		Rect{"ink", 8.5, 18, 9, 7.5, 1, 2.6},
		line("ink", 2.6, 17.5, 25.5, 21, 25.5, 21, 31.5, 12.5, 31.5),
		area("sign-accent", 29.5, 13, 23.2, 23, 27, 23, 25, 31.5, 32.5, 20.5, 28.6, 20.5),
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

func question() []Shape {
	hook := append(arc('M', Point{17, 13.5}, 4.8, 180, 405), curveTo(18.6, 18.6, 17, 18.8, 17, 21.5))
	return []Shape{
		Circle{"ink", Point{17, 17}, 14, 2.6},
		Path{"accent", 2.8, hook},
		Circle{"sign-accent", Point{17, 25.6}, 1.8, 0},
	}
}
