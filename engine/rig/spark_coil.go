package rig

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/transient"
)

// wireSparkCoils couples primary and secondary; a broken one leaves the other.
// Turns that are shorted hold the flux that should pass to the other side: what
// still passes is machine's share of it.
func (r *Rig) wireSparkCoils(lead transient.Node) {
	p := r.parts.Spark
	first, second := r.node(check.CoilPrimary), lead
	if math.IsInf(p.Primary.Joint, 1) {
		first = r.c.Node("")
	}
	if math.IsInf(p.Secondary.Joint, 1) {
		second = r.c.Node("")
	}
	coupling := p.Coupling
	for _, c := range []machine.Coil{p.Primary, p.Secondary} {
		if c.Short.Share > 0 {
			coupling *= machine.PassesShort * (1 - min(c.Short.Share, 1))
		}
	}
	r.c.Coupled(first, transient.Ground, second, transient.Ground,
		left(p.Primary), p.Primary.Henry, left(p.Secondary), p.Secondary.Henry, coupling)
}

// left is the resistance of a winding without its shorted turns.
func left(c machine.Coil) float64 {
	s := min(c.Short.Share, 1)
	if s == 0 {
		return c.Ohms
	}
	dead := s * c.Ohms
	return c.Ohms - dead + dead*c.Short.Ohms/(dead+c.Short.Ohms)
}
