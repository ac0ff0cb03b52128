package winding

import (
	"math"

	"coilbook/engine/quantity"
	"coilbook/engine/uncertainty"
)

// Pairs are the resistances between three leads, in the order AB, BC, CA. An
// open line is +Inf.
type Pairs [3]quantity.Ohm

// Phases are the resistances of the coils between three leads: of the phases A,
// B, C of a star, or of the branches AB, BC, CA of a delta.
type Phases [3]quantity.Ohm

// Pairs is what three pairs of leads read on sound joints.
func (c Connection) Pairs(p Phases) Pairs {
	c.mustHaveThreeLeads()
	if c == Star {
		return Pairs{p[0] + p[1], p[1] + p[2], p[2] + p[0]}
	}
	all := p[0] + p[1] + p[2]
	return Pairs{p[0] * (p[1] + p[2]) / all, p[1] * (p[2] + p[0]) / all, p[2] * (p[0] + p[1]) / all}
}

// Solve finds the phases from three pairs, with the covariance of both; the
// error is a *NoSolution.
//
// A star's phases have 0.866 times the doubt of the pairs, a delta's branches
// 2.598 times (both recomputed, for equal and independent doubts at balance):
// relative to their size, 1.73 times either way.
//
// Three resistances are three numbers, and a star or a delta has three: there is
// one of each that reads the same. So Solve never tells which it is. Only a
// fourth reading can, such as one of the common point, or a look at the winding.
func (c Connection) Solve(p Pairs, cov uncertainty.Covariance) (Phases, uncertainty.Covariance, error) {
	c.mustHaveThreeLeads()
	if err := c.solvable(p, cov); err != nil {
		return Phases{}, nil, err
	}
	y, out := uncertainty.PropagateAll(c.solutions(), p.floats(), cov)
	return Phases{quantity.Ohm(y[0]), quantity.Ohm(y[1]), quantity.Ohm(y[2])}, out, nil
}

func (c Connection) solutions() []func([]float64) float64 {
	if c == Star {
		return []func([]float64) float64{leg(0), leg(1), leg(2)}
	}
	return []func([]float64) float64{branch(0), branch(1), branch(2)}
}

// leg is a phase of the star that reads as the three pairs do: half of what its
// own two pairs have more than the third.
func leg(phase int) func([]float64) float64 {
	return func(pairs []float64) float64 {
		own, before, across := pairs[phase], pairs[(phase+2)%3], pairs[(phase+1)%3]
		return (own + before - across) / 2
	}
}

// branch is a branch of the delta that does. It lies across from one leg of the
// star; the sum of the products of the legs in pairs, over that leg, is it.
func branch(i int) func([]float64) float64 {
	return func(pairs []float64) float64 {
		near, far, across := leg(i)(pairs), leg((i+1)%3)(pairs), leg((i+2)%3)(pairs)
		return near + far + near*far/across
	}
}

func (p Pairs) floats() []float64 { return []float64{float64(p[0]), float64(p[1]), float64(p[2])} }

// open counts the pairs that are an open line.
func (p Pairs) open() int {
	n := 0
	for _, r := range p {
		if math.IsInf(float64(r), 1) {
			n++
		}
	}
	return n
}

// NaturalUnbalance is by how much the phases of a sound winding differ, as a
// relative standard deviation (common practice, no source).
const NaturalUnbalance = 0.01

// NaturalSpread is the covariance that a natural unbalance of the phases brings
// to the pairs. At balance it is the same for star and delta: relative to its
// size, each pair varies by 1/√2 of what a phase does, and two pairs have a
// correlation of one half (derived). An open pair has no part in it.
func NaturalSpread(p Pairs, unbalance float64) uncertainty.Covariance {
	sum, n := 0.0, 0.0
	for _, r := range p.floats() {
		if !math.IsInf(r, 1) {
			sum, n = sum+r, n+1
		}
	}
	u := unbalance * sum / max(n, 1) / 2
	return uncertainty.Independent(u, u, u).Plus(uncertainty.Common(u, 1, 1, 1))
}
