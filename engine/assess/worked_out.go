package assess

import (
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/spec"
)

// WorkedOut is what a reading tells together with others that are there
// already; ok is false while those are missing, and for a reading that counts by
// itself.
func (b Bench) WorkedOut(l Line) (out Line, ok bool) {
	if !l.Read() {
		return Line{}, false
	}
	switch l.Check.Measures {
	case spec.ResistorDrop:
		drop := b.beside(l.Check, 1)
		m, ok := b.ohmsFrom(l, drop)
		return b.derived(ohmsCheck(drop.Check), m), ok
	case spec.WindingDrop:
		m, ok := b.ohmsFrom(b.beside(l.Check, -1), l)
		return b.derived(ohmsCheck(l.Check), m), ok
	case spec.HotResistance:
		return b.heat(b.lineOf(coldOf(l.Check.ID)), l)
	}
	return Line{}, false
}

// beside is the line so many places further in the plan.
func (b Bench) beside(c check.Check, by int) Line {
	i := slices.IndexFunc(b.Plan, func(p check.Check) bool { return p.ID == c.ID }) + by
	if i < 0 || i >= len(b.Plan) {
		return Line{}
	}
	return b.Line(b.Plan[i])
}

func (b Bench) lineOf(id check.ID) Line {
	c, ok := check.Find(b.Plan, id)
	if !ok {
		return Line{}
	}
	return b.Line(c)
}
