package transient

import "strconv"

// Node is a point of a circuit.
type Node int

// Ground is the node whose voltage is zero.
const Ground Node = 0

// Branch is an element of a circuit, or one coil of two that are coupled.
type Branch int

// Circuit is a list of elements between nodes. The zero value is empty. Values
// are judged by Start and AtRest, not here.
type Circuit struct {
	names    []string
	byName   map[string]Node
	elements []element
}

type kind uint8

const (
	resistor kind = iota
	capacitor
	winding
	coupled
	diode
	thyristor
	contact
)

var kindNames = [...]string{"resistor", "capacitor", "winding", "coupled coil", "diode", "thyristor", "switch"}

type element struct {
	kind     kind
	a, b     Node
	ohms     float64
	henries  float64
	farads   float64
	volts    float64
	k        float64 // coupling
	mate     Branch  // the other coil
	emf      Source
	junction Junction
	gate     Gate
}

// Node is the node of that name: the same name is the same node, "0" is Ground,
// and "" is a new node each time.
func (c *Circuit) Node(name string) Node {
	c.begin()
	if name == "" {
		return c.add("node " + strconv.Itoa(len(c.names)))
	}
	if n, ok := c.byName[name]; ok {
		return n
	}
	return c.add(name)
}

// Nodes are the names by Node, Ground first.
func (c *Circuit) Nodes() []string {
	c.begin()
	return append([]string(nil), c.names...)
}

func (c *Circuit) begin() {
	if c.names == nil {
		c.names = []string{"0"}
		c.byName = map[string]Node{"0": Ground}
	}
}

func (c *Circuit) add(name string) Node {
	n := Node(len(c.names))
	c.names = append(c.names, name)
	if _, taken := c.byName[name]; !taken {
		c.byName[name] = n
	}
	return n
}

func (c *Circuit) put(e element) Branch {
	c.begin()
	c.elements = append(c.elements, e)
	return Branch(len(c.elements) - 1)
}

// Resistor takes ohms above zero; +Inf is open.
func (c *Circuit) Resistor(a, b Node, ohms float64) Branch {
	return c.put(element{kind: resistor, a: a, b: b, ohms: ohms})
}

// Capacitor takes farads above zero and the volts of a over b to start from. Over
// a resistance far below step/farads its current can swing from step to step about
// the right one; its voltage does not.
func (c *Circuit) Capacitor(a, b Node, farads, volts float64) Branch {
	return c.put(element{kind: capacitor, a: a, b: b, farads: farads, volts: volts})
}

// Winding is an emf behind a resistance and an inductance, neither below zero: an
// unloaded one has v(a)-v(b) = emf(t). Its current counts out of a. The samples of
// a Sine behind an inductance are higher by tan(x)/x, half a step being x (0.08 %
// for 64 steps in a period), so that straight lines between them have the right
// average.
func (c *Circuit) Winding(a, b Node, emf Source, ohms, henries float64) Branch {
	return c.put(element{kind: winding, a: a, b: b, emf: emf, ohms: ohms, henries: henries})
}

// Supply is a Winding without inductance.
func (c *Circuit) Supply(a, b Node, emf Source, ohms float64) Branch {
	return c.Winding(a, b, emf, ohms, 0)
}

// Coupled are two coils with a coupling between -1 and 1; both dots are at a.
// Their currents count from a to b.
func (c *Circuit) Coupled(a1, b1, a2, b2 Node, r1, l1, r2, l2, k float64) (Branch, Branch) {
	first := Branch(len(c.elements))
	c.put(element{kind: coupled, a: a1, b: b1, ohms: r1, henries: l1, k: k, mate: first + 1})
	return first, c.put(element{kind: coupled, a: a2, b: b2, ohms: r2, henries: l2, k: k, mate: first})
}

// Diode conducts from anode to cathode above its knee.
func (c *Circuit) Diode(anode, cathode Node, d Junction) Branch {
	return c.put(element{kind: diode, a: anode, b: cathode, junction: d})
}

// Thyristor begins to conduct when it is above its knee and the gate says so, and
// ends when its current does. A nil gate never says so.
func (c *Circuit) Thyristor(anode, cathode Node, d Junction, gate Gate) Branch {
	return c.put(element{kind: thyristor, a: anode, b: cathode, junction: d, gate: gate})
}

// Bend gives a diode or thyristor another knee and slope, so that a straight line
// can follow a curve from solution to solution.
func (c *Circuit) Bend(b Branch, d Junction) { c.elements[b].junction = d }

// Switch is a resistance while the gate says so. A nil gate always does.
func (c *Circuit) Switch(a, b Node, ohms float64, closed Gate) Branch {
	return c.put(element{kind: contact, a: a, b: b, ohms: ohms, gate: closed})
}
