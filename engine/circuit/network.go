package circuit

import "math"

// Network is resistors and real supplies between Nodes nodes. The zero value has no
// connections. It is a value: a copy is another network.
//
// What it says of resistance keeps all digits, however different the resistors. A
// voltage keeps those that are left when the largest current of a supply into a
// short, through the resistance between the two points, is rounded to 16 digits.
type Network struct{ g grid[float64] }

// Join puts a resistor between two nodes: 0 makes them one for good, +Inf (or more
// than 1e15 Ω) does nothing. A resistance below zero or not a number, and a node that there is not,
// are left out.
func (n *Network) Join(a, b int, ohms float64) {
	switch {
	case !node(a) || !node(b) || !(ohms >= 0) || ohms > mostOhms:
	case ohms == 0:
		n.g.merge(a, b)
	default:
		n.g.add(a, b, conductance(ohms))
	}
}

// Nothing in a generator is below a micro-ohm or above a tera-ohm. What is below
// the least counts as it, what is above the most is open, so that no product of
// conductances leaves the range of numbers; likewise for emfs.
const (
	leastOhms = 1e-9
	mostOhms  = 1e15
	mostVolts = 1e9
)

func conductance(ohms float64) float64 { return 1 / math.Max(ohms, leastOhms) }

// Supply puts a real supply between two nodes: an emf in volts that drives plus
// above minus, behind its own resistance, which must be above zero. A supply of more
// than 1e9 V, open (+Inf) or unusable is left out.
func (n *Network) Supply(plus, minus int, volts, ohms float64) {
	if !node(plus) || !node(minus) || !(ohms > 0 && ohms <= mostOhms) || !(math.Abs(volts) <= mostVolts) {
		return
	}
	siemens := conductance(ohms)
	n.g.add(plus, minus, siemens)
	n.g.feed(plus, minus, volts*siemens)
}

// Between is the resistance between two nodes in ohms, all supplies at rest: +Inf
// when no way leads from one to the other or there is no such node.
func (n *Network) Between(a, b int) float64 {
	_, ohms := n.Thevenin(a, b)
	return ohms
}

// Thevenin is the one supply that does to anything between a and b the same as the
// network does: volts of a above b, and ohms. Between two parts without a way from
// one to the other it is 0 V behind +Inf.
func (n *Network) Thevenin(a, b int) (volts, ohms float64) {
	if !node(a) || !node(b) {
		return 0, math.Inf(1)
	}
	a, b = n.g.root(a), n.g.root(b)
	if a == b {
		return 0, 0
	}
	siemens, amps := n.g.port(a, b)
	if siemens == 0 {
		return 0, math.Inf(1)
	}
	return amps / siemens, 1 / siemens
}

// Metered is what a voltmeter of a finite input resistance shows between a and b,
// in volts: the Thevenin voltage less what the input draws. Between two parts
// without a way from one to the other it shows nothing.
func (n *Network) Metered(a, b int, input float64) float64 {
	volts, ohms := n.Thevenin(a, b)
	if !(input > 0) || math.IsInf(ohms, 1) {
		return 0
	}
	return volts / (1 + ohms/input)
}

// Volts is the voltage of each node above the reference node, and whether any way
// leads there. A node without one floats: its voltage is given as 0 and ok is
// false.
func (n *Network) Volts(reference int) (volts [Nodes]float64, ok [Nodes]bool) {
	if !node(reference) {
		return volts, ok
	}
	return n.g.solve(reference)
}
