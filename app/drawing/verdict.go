package drawing

// VerdictMark draws the shape of a verdict, 24 by 24, in the colour of the text
// around it: "in", "out", "unsure", "skip", "todo" or "noted". An unknown name gives an
// empty picture. It stands beside the word, so its label is only its name.
func VerdictMark(outcome string) Picture {
	p := Picture{Width: 24, Height: 24, Label: outcome}
	switch outcome {
	case "in":
		p.Shapes = []Shape{
			Rect{"verdict", 2.5, 2.5, 19, 19, 4, 2.6},
			line("verdict", 3.2, 7, 12.6, 10.7, 16.3, 17, 8.2),
		}
	case "out":
		diamond := line("verdict", 2.3, 12, 1.8, 22.2, 12, 12, 22.2, 1.8, 12)
		diamond.Steps = append(diamond.Steps, closed())
		p.Shapes = []Shape{
			diamond,
			line("verdict", 2.5, 9, 9, 15, 15),
			line("verdict", 2.5, 15, 9, 9, 15),
		}
	case "unsure":
		p.Shapes = []Shape{
			Circle{"verdict-dashed", Point{12, 12}, 9.7, 2.6},
			line("verdict", 3.2, 7.8, 12, 16.2, 12),
		}
	case "skip":
		p.Shapes = []Shape{
			Circle{"verdict", Point{12, 12}, 9.5, 2.6},
			line("verdict", 2.8, 7.6, 16.4, 16.4, 7.6),
		}
	case "noted":
		p.Shapes = []Shape{
			Rect{"verdict", 3, 3, 18, 18, 3, 2.6},
			line("verdict", 2.6, 7.5, 9.5, 16.5, 9.5),
			line("verdict", 2.6, 7.5, 14.5, 13.5, 14.5),
		}
	case "todo":
		p.Shapes = []Shape{Rect{"verdict-dotted", 3, 3, 18, 18, 3, 2.6}}
	}
	return p
}
