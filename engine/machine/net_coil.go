package machine

import (
	"math"
	"math/cmplx"
)

// leg is a piece of wire between two points: the volts that it gives towards its
// first end, and its ohms.
type leg[T float64 | complex128] struct{ volts, ohms T }

// piece is a coil in a net. Where its wire touches the core it is two legs, upto
// the place and after it, and a third from there to the core.
type piece[T float64 | complex128] struct {
	upto, after, touch leg[T]
	touched            bool
	open               bool // at the first end
}

// split are the inductances of a share of a coil's turns, of the rest, and
// between the two: whole piles first, which couple with nothing; within the pile
// that both share, turns squared.
func (c *Coil) split(share float64) (part, rest, mutual float64) {
	piles := max(float64(c.Short.Piles), 1)
	whole := math.Floor(share*piles + 1e-9)
	p := max(share*piles-whole, 0)
	pile := c.Henry / piles
	part = pile * (whole + p*p)
	rest = pile * max(piles-whole-1+(1-p)*(1-p), 0)
	return part, rest, PileCoupling * pile * p * (1 - p)
}

// resistive is the coil for a direct current that has come to rest, giving volts
// in all its turns together.
func (c *Coil) resistive(volts float64) piece[float64] {
	wire := leg[float64]{volts, max(c.Ohms, least)}
	if s := c.Short; s.Share > 0 {
		part, contact := s.Share*c.Ohms, max(s.Ohms, least)
		around := contact / (part + contact)
		wire = leg[float64]{volts * (1 - s.Share + s.Share*around), max(c.Ohms-part+part*around, least)}
	}
	out := piece[float64]{upto: wire, open: !(c.Joint < most)}
	if g := c.Ground; g.Ohms < most {
		out.touched = true
		out.upto = leg[float64]{wire.volts * g.At, max(wire.ohms*g.At, least)}
		out.after = leg[float64]{wire.volts * (1 - g.At), max(wire.ohms*(1-g.At), least)}
		out.touch.ohms = max(g.Ohms, least)
	}
	out.upto.ohms += min(c.Joint, most)
	return out
}

// reactive is the coil at omega radians a second with volts in all its turns.
//
// Shorted turns: their loop carries what the rest induces in it and what they
// give themselves. With Z of the loop without the contact r, M between loop and
// rest, and h = (r - jωM)/(Z+r), the coil gives the rest's volts and h times the
// loop's behind the rest's impedance + r - h(r - jωM). Derived from the two
// loops' equations.
func (c *Coil) reactive(volts complex128, omega float64) piece[complex128] {
	wire := leg[complex128]{volts, complex(c.Ohms, omega*c.Henry)}
	if s := c.Short; s.Share > 0 {
		part, rest, mutual := c.split(s.Share)
		share, contact := complex(s.Share, 0), complex(max(s.Ohms, least), 0)
		across := contact - complex(0, omega*mutual)
		h := across / (complex(s.Share*c.Ohms, omega*part) + contact)
		wire.volts = volts * (1 - share + share*h)
		wire.ohms = complex((1-s.Share)*c.Ohms, omega*rest) + contact - h*across
	}
	out := piece[complex128]{upto: atLeast(wire), open: !(c.Joint < most)}
	if c.Ground.Ohms < most {
		touched(&out, c, wire, omega)
	}
	out.upto.ohms += complex(min(c.Joint, most), 0)
	return out
}

// touched splits the coil at its touch. Two coupled legs that meet are a T: each
// leg takes the mutual inductance up and the third leg gives it back.
func touched(out *piece[complex128], c *Coil, wire leg[complex128], omega float64) {
	g := c.Ground
	before, after, mutual := c.split(g.At)
	scale := 1.0
	if c.Henry > 0 && omega > 0 {
		scale = imag(wire.ohms) / (omega * c.Henry) // shorted turns leave less of it
	}
	side := func(share, henry float64) leg[complex128] {
		return atLeast(leg[complex128]{wire.volts * complex(share, 0), complex(share*real(wire.ohms), omega*scale*henry)})
	}
	out.touched = true
	out.upto = side(g.At, before+mutual)
	out.after = side(1-g.At, after+mutual)
	out.touch = leg[complex128]{0, complex(max(g.Ohms, least), -omega*scale*mutual)}
}

func atLeast(l leg[complex128]) leg[complex128] {
	if cmplx.Abs(l.ohms) < least {
		l.ohms = least
	}
	return l
}

// wind puts a coil between two points; middle is where it may touch the core.
func (n *net[T]) wind(first, second, middle point, c piece[T]) {
	switch {
	case !c.touched && c.open:
	case !c.touched:
		n.run(first, second, c.upto)
	default:
		if !c.open {
			n.run(first, middle, c.upto)
		}
		n.run(middle, second, c.after)
		n.run(middle, core, c.touch)
	}
}
