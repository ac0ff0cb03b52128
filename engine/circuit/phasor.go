package circuit

import (
	"math"
	"math/cmplx"
)

// Phasors is a network at one frequency: branches of resistance and inductance in
// series, and sinusoidal sources behind such branches. Whether phasors stand for
// peak or rms values is the caller's choice, the same for all. It is a value: a
// copy is another network.
type Phasors struct {
	g     grid[complex128]
	omega float64
}

// AtFrequency is a network without connections at a frequency in hertz, 0 or more.
func AtFrequency(hertz float64) Phasors { return Phasors{omega: 2 * math.Pi * hertz} }

// Impedance is R + jωL in ohms at the network's frequency.
func (p *Phasors) Impedance(ohms, henries float64) complex128 {
	if math.IsInf(ohms, 1) || math.IsInf(henries, 1) {
		return cmplx.Inf()
	}
	return complex(ohms, p.omega*henries)
}

// Join puts a resistance and an inductance in series between two nodes. Both zero
// make the nodes one for good; either +Inf does nothing. Values below zero or not a
// number, and a node that there is not, are left out.
func (p *Phasors) Join(a, b int, ohms, henries float64) {
	z, ok := p.branch(a, b, ohms, henries)
	switch {
	case !ok:
	case z == 0:
		p.g.merge(a, b)
	default:
		p.g.add(a, b, admittance(z))
	}
}

func (p *Phasors) branch(a, b int, ohms, henries float64) (z complex128, ok bool) {
	if !node(a) || !node(b) || !(ohms >= 0) || !(henries >= 0) {
		return 0, false
	}
	z = p.Impedance(ohms, henries)
	return z, cmplx.Abs(z) <= mostOhms
}

func admittance(z complex128) complex128 {
	if cmplx.Abs(z) < leastOhms {
		return 1 / leastOhms
	}
	return 1 / z
}

// Source puts an emf between two nodes that drives plus above minus, behind a
// resistance and an inductance in series, of which one must be above zero (and for
// the inductance alone, the frequency). An open or unusable source is left out.
func (p *Phasors) Source(plus, minus int, emf complex128, ohms, henries float64) {
	z, ok := p.branch(plus, minus, ohms, henries)
	if !ok || z == 0 || !(cmplx.Abs(emf) <= mostVolts) {
		return
	}
	y := admittance(z)
	p.g.add(plus, minus, y)
	p.g.feed(plus, minus, emf*y)
}

// Thevenin is the one source that does to anything between a and b the same as the
// network does: open-circuit volts of a above b, and ohms. Between two parts
// without a way from one to the other ok is false, and 0 V behind an infinite
// impedance is given.
func (p *Phasors) Thevenin(a, b int) (volts, ohms complex128, ok bool) {
	if !node(a) || !node(b) {
		return 0, cmplx.Inf(), false
	}
	a, b = p.g.root(a), p.g.root(b)
	if a == b {
		return 0, 0, true
	}
	siemens, amps := p.g.port(a, b)
	if siemens == 0 {
		return 0, cmplx.Inf(), false
	}
	return amps / siemens, 1 / siemens, true
}

// Open is the open-circuit voltage of a above b. ok is false between two parts
// without a way from one to the other; a meter there reads nothing.
func (p *Phasors) Open(a, b int) (volts complex128, ok bool) {
	volts, _, ok = p.Thevenin(a, b)
	return volts, ok
}

// Loaded is the voltage of a above b with an impedance in ohms put between them; an
// infinite one is an open circuit. ok is as for Open.
func (p *Phasors) Loaded(a, b int, load complex128) (volts complex128, ok bool) {
	volts, ohms, ok := p.Thevenin(a, b)
	switch {
	case !ok || cmplx.IsInf(load):
		return volts, ok
	case load == 0:
		return 0, true
	}
	return volts / (1 + ohms/load), true
}

// Volts is the voltage of each node above the reference node, and whether any way
// leads there. A node without one floats: its voltage is given as 0 and ok is
// false.
func (p *Phasors) Volts(reference int) (volts [Nodes]complex128, ok [Nodes]bool) {
	if !node(reference) {
		return volts, ok
	}
	return p.g.solve(reference)
}
