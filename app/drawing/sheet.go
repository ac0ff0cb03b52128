package drawing

import (
	"strings"

	"coilbook/engine/check"
)

// sheet is a picture in the making.
type sheet struct {
	check   check.Check
	build   check.Build
	label   func(check.Terminal) string
	words   Words
	shapes  []Shape
	anchors map[check.Terminal]Point
}

func (s *sheet) add(shapes ...Shape) { s.shapes = append(s.shapes, shapes...) }

func (s *sheet) mark(t check.Terminal, p Point) { s.anchors[t] = p }

func (s *sheet) touched(t check.Terminal) bool {
	return t != check.Nowhere && (t == s.check.Red || t == s.check.Black)
}

func (s *sheet) picture(w, h float64) Picture {
	return Picture{w, h, s.alternative(), s.shapes, s.anchors}
}

// alternative says the picture in words.
func (s *sheet) alternative() string {
	if s.check.Instrument == check.FeelerGauge {
		return s.words.Leaf + ": " + s.words.Gap + ", " + s.words.Pickup
	}
	parts := []string{
		s.words.Red + ": " + s.place(s.check.Red),
		s.words.Black + ": " + s.place(s.check.Black),
	}
	if s.check.Red != check.OtherProbe {
		parts = append(parts, map[check.Plug]string{check.Apart: s.words.Apart, check.Together: s.words.Joined}[s.check.Plug])
	}
	if s.check.Engine == check.Cranking {
		parts = append(parts, s.words.Turns)
	}
	return strings.Join(append(parts, functionSign(s.check.Function)), ", ")
}

func (s *sheet) place(t check.Terminal) string {
	switch {
	case t == check.Core && s.check.Engine == check.Cranking:
		return s.words.Case
	case t == check.Core:
		return s.words.Core
	}
	return s.label(t)
}
