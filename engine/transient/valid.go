package transient

import (
	"fmt"
	"math"
)

// maxSwitches is how many bits the pattern of one island has.
const maxSwitches = 64

func (c *Circuit) check() error {
	c.begin()
	for i := range c.elements {
		if what := c.fault(&c.elements[i]); what != "" {
			return fmt.Errorf("the %s", c.describe(Branch(i))+" "+what)
		}
	}
	return nil
}

func (c *Circuit) describe(b Branch) string {
	e := &c.elements[b]
	return fmt.Sprintf("%s from %q to %q (branch %d)", kindNames[e.kind], c.nameOf(e.a), c.nameOf(e.b), b)
}

func (c *Circuit) nameOf(n Node) string {
	if n < 0 || int(n) >= len(c.names) {
		return fmt.Sprintf("no node %d", n)
	}
	return c.names[n]
}

// fault is what is wrong with an element, "" for nothing.
func (c *Circuit) fault(e *element) string {
	last := Node(len(c.names) - 1)
	if e.a < 0 || e.b < 0 || e.a > last || e.b > last {
		return "hangs on a node that this circuit has not"
	}
	switch e.kind {
	case resistor, contact:
		if !(e.ohms > 0) {
			return fmt.Sprintf("has %g Ω, which must be above zero", e.ohms)
		}
	case capacitor:
		if !(e.farads > 0) || math.IsInf(e.farads, 0) {
			return fmt.Sprintf("has %g F, which must be above zero and finite", e.farads)
		}
		if !finite(e.volts) {
			return fmt.Sprintf("starts at %g V, which must be finite", e.volts)
		}
	case winding:
		return windingFault(e)
	case coupled:
		if !(e.henries > 0) {
			return fmt.Sprintf("has %g H, which must be above zero", e.henries)
		}
		if !(math.Abs(e.k) < 1) {
			return fmt.Sprintf("has a coupling of %g, which must be between -1 and 1", e.k)
		}
		return windingFault(e)
	case diode, thyristor:
		if !notNegative(e.junction.Volts) || !notNegative(e.junction.Ohms) {
			return fmt.Sprintf("has a knee of %g V and a slope of %g Ω, which must be finite and not below zero", e.junction.Volts, e.junction.Ohms)
		}
	}
	return ""
}

func windingFault(e *element) string {
	if !notNegative(e.ohms) || !notNegative(e.henries) {
		return fmt.Sprintf("has %g Ω and %g H, which must be finite and not below zero", e.ohms, e.henries)
	}
	switch s := e.emf.(type) {
	case nil:
		if e.kind == winding {
			return "has no source; a coil without emf has Constant(0)"
		}
	case Constant:
		if !finite(float64(s)) {
			return fmt.Sprintf("has an emf of %g V, which must be finite", float64(s))
		}
	case Sine:
		if !finite(s.Volts) || !finite(s.Hertz) || !finite(s.Phase) {
			return "has a sine whose figures are not all finite"
		}
	case Pulse:
		if !finite(s.Volts) || !finite(s.Delay) || !notNegative(s.Period) || !(s.Width > 0) {
			return "has a pulse without width or with figures that are not finite"
		}
	}
	return ""
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

func notNegative(x float64) bool { return x >= 0 && !math.IsInf(x, 1) }
