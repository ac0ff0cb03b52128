package transient

import (
	"fmt"
	"math"
)

// net is a circuit sorted for speed: by island, and in it by kind. Nodes count
// from the island's first, and its ground comes after its last.
type net struct {
	islands []island
	place   []int // in the voltages, by node
	volts   int   // how many voltages there are, grounds counted
	spots   []spot

	windings   []windingPart
	capacitors []capacitorPart
	pairs      []pairPart
	valves     []valve
	contacts   []valve
}

// spot is where a branch went.
type spot struct {
	kind    kind
	at      int // in the parts of its kind, -1 for nowhere
	second  bool
	a, b    int // places of its ends
	siemens float64
}

type island struct {
	off, n                  int
	windings, capacitors    span
	pairs, valves, contacts span
	fixed                   []fixedPart
}

type span struct{ from, to int }

type ends struct{ a, b int32 }

type fixedPart struct {
	ends
	siemens float64
}

type windingPart struct {
	ends
	ohms, henries float64
	emf           Source
}

type capacitorPart struct {
	ends
	farads, volts float64
}

type pairPart struct {
	first, second          ends
	r1, r2, l1, l2, mutual float64
}

// valve is what has two states: a diode, a thyristor or a switch.
type valve struct {
	ends
	island  int
	bit     uint64
	knee    float64
	siemens float64
	slack   float64 // how far below its knee it may still conduct
	diode   bool
	gate    Gate
}

func (c *Circuit) sort() (*net, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	of, count := c.islands()
	n := &net{islands: make([]island, count), spots: make([]spot, len(c.elements))}
	n.placeNodes(of, c.order())
	for k := range n.islands {
		n.fill(c, of, k)
		if err := n.tooManySwitches(k); err != nil {
			return nil, err
		}
	}
	return n, nil
}

func (n *net) tooManySwitches(k int) error {
	b := &n.islands[k]
	if count := b.valves.to - b.valves.from + b.contacts.to - b.contacts.from; count > maxSwitches {
		return fmt.Errorf("one part of the circuit has %d diodes, thyristors and switches, and %d are the most", count, maxSwitches)
	}
	return nil
}

func (n *net) placeNodes(of []int, order []Node) {
	n.place = make([]int, len(of))
	for _, i := range order {
		b := &n.islands[of[i]]
		n.place[i] = b.n
		b.n++
	}
	for k := range n.islands {
		n.islands[k].off = n.volts
		n.volts += n.islands[k].n + 1
	}
	for i := 1; i < len(of); i++ {
		n.place[i] += n.islands[of[i]].off
	}
	n.place[Ground] = n.islands[0].off + n.islands[0].n
}

// local is a node's number in an island.
func (n *net) local(b *island, node Node) int32 {
	if node == Ground {
		return int32(b.n)
	}
	return int32(n.place[node] - b.off)
}

func (n *net) fill(c *Circuit, of []int, k int) {
	b := &n.islands[k]
	b.windings.from, b.capacitors.from, b.pairs.from = len(n.windings), len(n.capacitors), len(n.pairs)
	b.valves.from, b.contacts.from = len(n.valves), len(n.contacts)
	for i := range c.elements {
		e := &c.elements[i]
		group := []*element{e}
		if e.kind == coupled {
			group = append(group, &c.elements[e.mate])
		}
		if islandOf(of, group...) == k {
			n.spots[i] = n.put(c, b, k, Branch(i), e)
		}
	}
	b.windings.to, b.capacitors.to, b.pairs.to = len(n.windings), len(n.capacitors), len(n.pairs)
	b.valves.to, b.contacts.to = len(n.valves), len(n.contacts)
	bit := uint64(1)
	for _, valves := range [][]valve{n.valves[b.valves.from:], n.contacts[b.contacts.from:]} {
		for i := range valves {
			valves[i].bit = bit
			bit <<= 1
		}
	}
}

func (n *net) put(c *Circuit, b *island, k int, branch Branch, e *element) spot {
	at := ends{n.local(b, e.a), n.local(b, e.b)}
	s := spot{kind: e.kind, a: b.off + int(at.a), b: b.off + int(at.b)}
	switch e.kind {
	case resistor:
		s.siemens = conductance(e.ohms)
		b.fixed = append(b.fixed, fixedPart{at, s.siemens})
	case contact:
		s.siemens = conductance(e.ohms)
		if e.gate == nil {
			s.kind = resistor
			b.fixed = append(b.fixed, fixedPart{at, s.siemens})
			break
		}
		s.at = len(n.contacts)
		n.contacts = append(n.contacts, valve{ends: at, island: k, siemens: s.siemens, gate: e.gate})
	case diode, thyristor:
		s.at = len(n.valves)
		ohms := max(e.junction.Ohms, LeastOhms)
		n.valves = append(n.valves, valve{ends: at, island: k, knee: e.junction.Volts, siemens: 1 / ohms,
			slack: slackAmps*ohms + slackVolts, diode: e.kind == diode, gate: e.gate})
	case winding:
		s.at = len(n.windings)
		w := windingPart{ends: at, ohms: e.ohms, henries: e.henries, emf: e.emf}
		if w.henries == 0 {
			w.ohms = max(w.ohms, LeastOhms)
		}
		n.windings = append(n.windings, w)
	case capacitor:
		s.at = len(n.capacitors)
		n.capacitors = append(n.capacitors, capacitorPart{at, e.farads, e.volts})
	case coupled:
		s.second = e.mate < branch
		if s.second {
			s.at = n.spots[e.mate].at
			break
		}
		s.at = len(n.pairs)
		m := &c.elements[e.mate]
		n.pairs = append(n.pairs, pairPart{first: at, second: ends{n.local(b, m.a), n.local(b, m.b)},
			r1: e.ohms, r2: m.ohms, l1: e.henries, l2: m.henries, mutual: e.k * math.Sqrt(e.henries*m.henries)})
	}
	return s
}

// What a valve may be past its knee before it has to change: rounding.
const (
	slackAmps  = 1e-9
	slackVolts = 1e-11
)

func conductance(ohms float64) float64 { return 1 / max(ohms, LeastOhms) }

// offsOfWindings are where the voltages of each winding's island begin.
func (n *net) offsOfWindings() []int {
	offs := make([]int, 0, len(n.windings))
	for k := range n.islands {
		b := &n.islands[k]
		for range b.windings.to - b.windings.from {
			offs = append(offs, b.off)
		}
	}
	return offs
}
