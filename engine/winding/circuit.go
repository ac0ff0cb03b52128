package winding

import (
	"fmt"
	"math"

	"coilbook/engine/quantity"
)

// Circuit is a winding as a meter sees it: resistances between its leads, and
// from each to the core.
type Circuit struct {
	of  Connection
	net network
}

// Assemble joins the phases into a winding that has the given faults: any number
// at a time, but no more than one in a lead and one in a phase.
//
// It is a network of resistors and so stands for a direct current that has come
// to rest. A short is taken to be a perfect one: a real one has a contact that
// comes and goes with warmth and pressure, and reads as a smaller share. What
// shorted turns do to an alternating voltage is far more, and not told here.
func Assemble(c Connection, phases []quantity.Ohm, faults ...Fault) *Circuit {
	if len(phases) != c.Phases() {
		panic(fmt.Sprintf("winding: a %v has no %d phases", c, len(phases)))
	}
	p := soundParts(phases)
	for _, f := range faults {
		f.mustSuit(c)
		p.suffer(c, f)
	}
	out := &Circuit{c, unconnected()}
	p.wire(out)
	for _, f := range faults {
		out.touch(f)
	}
	return out
}

// Between is the resistance between two leads; +Inf is an open line.
func (c *Circuit) Between(i, j int) quantity.Ohm {
	c.mustHave(i)
	c.mustHave(j)
	return c.net.between(leadOf(i), leadOf(j))
}

// ToCore is the resistance from a lead to the core.
func (c *Circuit) ToCore(i int) quantity.Ohm {
	c.mustHave(i)
	return c.net.between(leadOf(i), core)
}

// Pairs are the three pairs of a star or delta.
func (c *Circuit) Pairs() Pairs {
	c.of.mustHaveThreeLeads()
	return Pairs{c.Between(0, 1), c.Between(1, 2), c.Between(2, 0)}
}

func (c *Circuit) mustHave(lead int) {
	if lead < 0 || lead >= c.of.Leads() {
		panic(fmt.Sprintf("winding: a %v has no lead %d", c.of, lead))
	}
}

// parts are what a winding is made of, before it is joined.
type parts struct {
	sound  []quantity.Ohm // the phases without a fault
	phases []quantity.Ohm
	leads  [maxLeads]quantity.Ohm
	ground []float64 // where a phase touches the core, NaN for nowhere
}

func soundParts(phases []quantity.Ohm) parts {
	p := parts{sound: phases, phases: append([]quantity.Ohm(nil), phases...)}
	for range phases {
		p.ground = append(p.ground, math.NaN())
	}
	return p
}

// suffer applies a fault that changes a part.
func (p *parts) suffer(c Connection, f Fault) {
	switch f.Kind {
	case PhaseOpen:
		p.phases[f.At] = quantity.Ohm(math.Inf(1))
	case LeadOpen:
		p.leads[f.At] = quantity.Ohm(math.Inf(1))
	case PoorJoint:
		p.leads[f.At] = p.sound[c.phaseAt(f.At)] * quantity.Ohm(f.Share/(1-f.Share))
	case TurnsShorted:
		p.phases[f.At] *= quantity.Ohm(1 - f.Share)
	case PhaseShorted:
		p.phases[f.At] = 0
	case PhaseToCore:
		p.ground[f.At] = f.Share
	}
}

func (p parts) wire(c *Circuit) {
	for i := range c.of.Leads() {
		c.net.join(leadOf(i), endOf(i), p.leads[i])
	}
	for i, r := range p.phases {
		from, to := c.of.ends(i)
		if x := quantity.Ohm(p.ground[i]); x >= 0 {
			c.net.join(from, core, x*r)
			c.net.join(core, to, (1-x)*r)
			continue
		}
		c.net.join(from, to, r)
	}
}

// touch applies a fault that connects what should not be.
func (c *Circuit) touch(f Fault) {
	switch f.Kind {
	case Bridged:
		c.net.join(endOf(f.At), endOf(f.To), 0)
	case LeadToCore:
		c.net.join(endOf(f.At), core, 0)
	case NeutralToCore:
		c.net.join(neutral, core, 0)
	}
}
