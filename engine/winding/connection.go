package winding

import "fmt"

// Connection is how the coils of a winding are joined and where their ends go.
// Leads are A, B, C, D in this order, counted from 0.
type Connection int

// The connections found on small machines.
const (
	Star           Connection = iota // phases A, B, C, each from its lead to one common point
	Delta                            // branches AB, BC, CA, each between two leads
	Single                           // one coil, from A to B
	SingleGrounded                   // one coil, from A to the core
	Two                              // two coils with nothing in common, from A to B and from C to D
	TwoGrounded                      // two coils, from A and from B to the core
)

var connections = [...]struct {
	name          string
	leads, phases int
}{
	{"star", 3, 3}, {"delta", 3, 3}, {"single coil", 2, 1}, {"single coil with a grounded end", 1, 1},
	{"pair of coils", 4, 2}, {"pair of coils with grounded ends", 2, 2},
}

func (c Connection) String() string { return connections[c].name }

// Leads is how many leads come out, Phases how many coils there are: phases of a
// star, branches of a delta.
func (c Connection) Leads() int { return connections[c].leads }

// Phases is described at Leads.
func (c Connection) Phases() int { return connections[c].phases }

// ends are the nodes that a phase lies between; a share of its turns is counted
// from the first.
func (c Connection) ends(phase int) (from, to node) {
	switch c {
	case Star:
		return endOf(phase), neutral
	case Delta:
		return endOf(phase), endOf((phase + 1) % 3)
	case SingleGrounded, TwoGrounded:
		return endOf(phase), core
	}
	return endOf(2 * phase), endOf(2*phase + 1)
}

// phaseAt is a phase that hangs on a lead.
func (c Connection) phaseAt(lead int) int {
	if c == Single || c == Two {
		return lead / 2
	}
	return lead
}

func (c Connection) mustHaveThreeLeads() {
	if c != Star && c != Delta {
		panic(fmt.Sprintf("winding: a %v has no three lead pairs", c))
	}
}
