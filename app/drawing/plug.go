package drawing

import "coilbook/engine/check"

// plug is the generator's half of the plug: leads enter at the left, contacts
// open to the right where the probes come from.
type plug struct {
	x, y  float64 // left edge and middle
	pitch float64
	width float64
	ends  []check.Terminal
}

const (
	labelRoom  = 67.0 // longest label on a plug
	labelInset = 6.0
	holeWidth  = 13.0
)

func (s *sheet) newPlug(right, y float64, ends []check.Terminal) plug {
	widest := 16.0
	for _, t := range ends {
		widest = max(widest, min(textWidth(s.label(t), textSize), labelRoom))
	}
	w := labelInset + widest + 6 + holeWidth
	return plug{right - w, y, min(28, 124/float64(len(ends))), w, ends}
}

func (p plug) height() float64 { return p.pitch * float64(len(p.ends)) }

func (p plug) contactY(i int) float64 {
	return p.y + p.pitch*(float64(i)-float64(len(p.ends)-1)/2)
}

// entry is where the lead of a contact goes in, anchor where a probe touches.
func (p plug) entry(i int) Point  { return Point{p.x, p.contactY(i)} }
func (p plug) anchor(i int) Point { return Point{p.x + p.width - 5, p.contactY(i)} }

// drawPlug gives the half with its latch on top and a labelled contact for each
// lead.
func (s *sheet) drawPlug(p plug) {
	latch := min(p.width*0.4, 26)
	s.add(
		Rect{"plug", p.x + (p.width-latch)/2, p.y - p.height()/2 - 6, latch, 9, 2, 2.5},
		Rect{"plug", p.x, p.y - p.height()/2, p.width, p.height(), 5, 2.5},
	)
	for i, t := range p.ends {
		a, edge := p.anchor(i), p.x+p.width-holeWidth
		s.mark(t, a)
		s.add(
			words("label", Start, p.x+labelInset, a.Y+4.7, fit(s.label(t), textSize, labelRoom)),
			Rect{"hole", edge, a.Y - 7, holeWidth, 14, 2, 0},
			Rect{"pin", edge, a.Y - 2.5, holeWidth - 5, 5, 0, 0},
		)
	}
}

// leads run from behind the stator in one loom and fan out to the plug; the
// touched ones in copper, over the others. The exciter's comes from its pole.
func (s *sheet) leads(p plug, loom, exciter Point) {
	for _, live := range []bool{false, true} {
		for i, t := range p.ends {
			if s.touched(t) != live {
				continue
			}
			from := Point{loom.X, loom.Y + 4*(float64(i)-float64(len(p.ends)-1)/2)}
			if t == check.ExciterLead {
				from = exciter
			}
			s.add(s.wired(t, live, from, p.entry(i))...)
		}
	}
}

func lead(live bool, from, to Point) []Shape {
	class := "lead-grey"
	if live {
		class = "lead-live"
	}
	steps := sweep(from, to)
	return []Shape{Path{"casing", 6.5, steps}, Path{class, 4, steps}}
}
