package winding

import (
	"fmt"
	"math"

	"coilbook/engine/uncertainty"
)

// Meaning is why three pairs have no solution.
type Meaning int

// What it means that there is no solution.
const (
	// MissingReading: one of the three is no number.
	MissingReading Meaning = iota
	// OpenLine: two or three pairs are open. A lead, or a phase of a star, is
	// broken; what is left has too few readings to be solved.
	OpenLine
	// Contradiction: one pair reads more than the other two together, by more than
	// their doubt. No winding does: one of the readings is wrong, or was taken
	// warm, through a poor contact, or on another winding. One open pair among
	// three is the same.
	Contradiction
	// NothingLeft: one pair reads what the other two do together, within their
	// doubt. A star has nothing left in the phase Terminal; a delta's branch across
	// from that terminal is open, or has no upper bound. Both fit.
	NothingLeft
)

var meanings = [...]string{
	"a reading is missing", "an open line", "the readings contradict each other", "nothing is left between the readings",
}

func (m Meaning) String() string { return meanings[m] }

// NoSolution tells why no sound star or delta reads as three pairs do.
type NoSolution struct {
	Connection Connection
	Meaning    Meaning
	// Terminal, for Contradiction and NothingLeft of three numbers, is the one
	// whose two pairs together leave Leg ohm, with the standard uncertainty Std,
	// for the leg of the star there (twice that, over the third pair).
	Terminal int
	Leg, Std float64
}

func (e *NoSolution) Error() string {
	return fmt.Sprintf("winding: no %v: %v", e.Connection, e.Meaning)
}

func (c Connection) solvable(p Pairs, cov uncertainty.Covariance) error {
	for _, r := range p.floats() {
		if math.IsNaN(r) || math.IsInf(r, -1) {
			return &NoSolution{Connection: c, Meaning: MissingReading}
		}
	}
	switch p.open() {
	case 0:
		return c.legsLeft(p, cov)
	case 1:
		return &NoSolution{Connection: c, Meaning: Contradiction}
	}
	return &NoSolution{Connection: c, Meaning: OpenLine}
}

// legsLeft looks at the smallest leg. A star may do without one; a delta needs
// every leg told from zero, since it divides by it: the law of propagation says
// nothing about a branch that may as well be open.
func (c Connection) legsLeft(p Pairs, cov uncertainty.Covariance) error {
	e := &NoSolution{Connection: c, Meaning: NothingLeft, Leg: math.Inf(1)}
	for i := range p {
		if l, u := uncertainty.Propagate(leg(i), p.floats(), cov); l < e.Leg {
			e.Terminal, e.Leg, e.Std = i, l, u
		}
	}
	switch {
	case e.Leg < -told*e.Std:
		e.Meaning = Contradiction
	case c == Star && e.Leg >= 0, c == Delta && e.Leg > told*e.Std:
		return nil
	}
	return e
}
