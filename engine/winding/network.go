package winding

import "coilbook/engine/quantity"

// node is a point of a winding. The end of a coil is kept apart from the far end
// of the lead that is soldered to it, so that the lead can break.
type node int

const (
	neutral  node = 2 * maxLeads
	core     node = neutral + 1
	nodes         = int(core) + 1
	maxLeads      = 4
)

func leadOf(i int) node { return node(i) }
func endOf(i int) node  { return node(maxLeads + i) }

// network is resistors between nodes: how well each pair of nodes conducts, in
// siemens, and which nodes have become one.
type network struct {
	conducts [nodes][nodes]float64
	is       [nodes]node
}

func unconnected() network {
	var n network
	for i := range n.is {
		n.is[i] = node(i)
	}
	return n
}

// join puts a resistor between two nodes: zero makes them one, +Inf does nothing.
func (n *network) join(a, b node, r quantity.Ohm) {
	a, b = n.is[a], n.is[b]
	switch {
	case a == b:
	case r == 0:
		n.merge(a, b)
	default:
		n.add(a, b, 1/float64(r))
	}
}

func (n *network) add(a, b node, siemens float64) {
	n.conducts[a][b] += siemens
	n.conducts[b][a] += siemens
}

// merge hangs all that is at b on a.
func (n *network) merge(a, b node) {
	for other, siemens := range n.takeOut(b) {
		if node(other) != a {
			n.add(a, node(other), siemens)
		}
	}
	for i := range n.is {
		if n.is[i] == b {
			n.is[i] = a
		}
	}
}

// takeOut removes a node and says how it conducted to each other.
func (n *network) takeOut(b node) [nodes]float64 {
	row := n.conducts[b]
	n.conducts[b] = [nodes]float64{}
	for i := range n.conducts {
		n.conducts[i][b] = 0
	}
	return row
}

// between is the resistance that a meter reads between two nodes, +Inf when no
// way leads from one to the other. All other nodes are removed one by one, each
// by the mesh that does the same to its neighbours (the star-mesh transform of
// which star and delta are the case of three). Nothing is ever subtracted, so
// nothing is lost to rounding.
func (n network) between(a, b node) quantity.Ohm {
	a, b = n.is[a], n.is[b]
	if a == b {
		return 0
	}
	for i, k := range n.is {
		if node(i) == k && k != a && k != b {
			n.mesh(k)
		}
	}
	return quantity.Ohm(1 / n.conducts[a][b])
}

func (n *network) mesh(k node) {
	sum := 0.0
	for _, siemens := range n.conducts[k] {
		sum += siemens
	}
	if sum == 0 {
		return
	}
	row := n.takeOut(k)
	for i := range row {
		for j := i + 1; row[i] > 0 && j < nodes; j++ {
			n.add(node(i), node(j), row[i]/sum*row[j])
		}
	}
}
