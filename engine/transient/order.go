package transient

// order is how the nodes are best eliminated: at any time the one with the fewest
// neighbours, which then become neighbours of each other (minimum degree, common
// practice). It keeps the factors of a matrix mostly zero.
func (c *Circuit) order() []Node {
	near := c.neighbours()
	gone := make([]bool, len(c.names))
	var out []Node
	for range len(c.names) - 1 {
		best := Ground
		for n := 1; n < len(c.names); n++ {
			if !gone[n] && (best == Ground || len(near[n]) < len(near[best])) {
				best = Node(n)
			}
		}
		gone[best] = true
		out = append(out, best)
		eliminate(near, best)
	}
	return out
}

// neighbours are what each node but Ground is joined to but Ground.
func (c *Circuit) neighbours() []map[Node]bool {
	near := make([]map[Node]bool, len(c.names))
	for i := range near {
		near[i] = map[Node]bool{}
	}
	for i := range c.elements {
		e := &c.elements[i]
		ends := []Node{e.a, e.b}
		if e.kind == coupled {
			ends = append(ends, c.elements[e.mate].a, c.elements[e.mate].b)
		}
		meet(near, ends)
	}
	return near
}

func meet(near []map[Node]bool, all []Node) {
	for _, a := range all {
		for _, b := range all {
			if a != b && a != Ground && b != Ground {
				near[a][b] = true
			}
		}
	}
}

func eliminate(near []map[Node]bool, gone Node) {
	var left []Node
	for n := range near[gone] {
		delete(near[n], gone)
		left = append(left, n)
	}
	meet(near, left)
}
