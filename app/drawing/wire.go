package drawing

import "coilbook/engine/check"

// Wire is a lead as it looks on the user's machine, with its colours in words.
type Wire struct {
	check.Wire
	Name string
}

// Wires are the leads whose colour is known.
type Wires map[check.Terminal]Wire

// Widths of a coloured lead from below: what keeps it apart, what marks it as touched,
// its edge, its colour, its stripe. The edge keeps a white lead apart from white paper
// and a black one from black.
const (
	wireApart, wireTouched, wireEdge, wireBase, wireStripe = 8.0, 11.0, 6.4, 4.6, 1.8
)

// ForWires is ForCheck with the leads in their colours.
func ForWires(c check.Check, b check.Build, label func(check.Terminal) string, w Words, wires Wires) Picture {
	s := &sheet{check: c, build: b, label: label, words: w, wires: wires, anchors: map[check.Terminal]Point{}}
	return s.compose()
}

// strand draws a lead of the plug along steps: in its colour where that is known, else
// in copper where it is touched and grey where it is not.
func (s *sheet) strand(t check.Terminal, live bool, steps []Step) []Shape {
	w, known := s.wires[t]
	if !known || w.Base == "" {
		class := "lead-grey"
		if live {
			class = "lead-live"
		}
		return []Shape{Path{"casing", 6.5, steps}, Path{class, 4, steps}}
	}
	out := []Shape{Path{"casing", wireApart, steps}}
	if live {
		out = []Shape{Path{"casing", wireTouched + 2, steps}, Path{"lead-live", wireTouched, steps}}
	}
	return append(out, w.along(steps)...)
}

// along is the insulation of a wire: edge, colour, stripe.
func (w Wire) along(steps []Step) []Shape {
	out := []Shape{Path{"wire-edge", wireEdge, steps}, Path{"wire-" + string(w.Base), wireBase, steps}}
	if w.Stripe != "" {
		out = append(out, Path{"wire-" + string(w.Stripe), wireStripe, steps})
	}
	return out
}

// wired is a lead from one place to another.
func (s *sheet) wired(t check.Terminal, live bool, from, to Point) []Shape {
	return s.strand(t, live, sweep(from, to))
}

// sweep runs level out of one place and level into the other.
func sweep(from, to Point) []Step {
	reach := (to.X - from.X) * 0.55
	return []Step{moveTo(from.X, from.Y), curveTo(from.X+reach, from.Y, to.X-reach, to.Y, to.X, to.Y)}
}

// inColour says a place with the colour of its lead.
func (s *sheet) inColour(t check.Terminal) string {
	if w, known := s.wires[t]; known && w.Name != "" {
		return s.label(t) + " (" + w.Name + ")"
	}
	return s.label(t)
}

// Swatch is a piece of wire, 44 by 16; nothing where the colour is not known.
func Swatch(w check.Wire) Picture {
	p := Picture{Width: 44, Height: 16}
	if w.Base != "" {
		const wide = 2 // times as wide as in a picture
		steps := []Step{moveTo(8, 8), lineTo(36, 8)}
		for _, s := range (Wire{Wire: w}).along(steps) {
			path := s.(Path)
			path.Width *= wide
			p.Shapes = append(p.Shapes, path)
		}
	}
	return p
}
