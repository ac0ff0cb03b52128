package transient

// islands numbers the parts of a circuit that only Ground joins, by node, and
// says how many there are. Ground's number has no meaning.
func (c *Circuit) islands() (of []int, count int) {
	root := make([]Node, len(c.names))
	for i := range root {
		root[i] = Node(i)
	}
	find := func(n Node) Node {
		for root[n] != n {
			root[n] = root[root[n]]
			n = root[n]
		}
		return n
	}
	join := func(a, b Node) {
		if a != Ground && b != Ground {
			root[find(a)] = find(b)
		}
	}
	for i := range c.elements {
		e := &c.elements[i]
		join(e.a, e.b)
		if e.kind == coupled {
			other := &c.elements[e.mate]
			for _, n := range []Node{other.a, other.b} {
				join(e.a, n)
				join(e.b, n)
			}
		}
	}
	of = make([]int, len(root))
	numbers := map[Node]int{}
	for i := 1; i < len(root); i++ {
		r := find(Node(i))
		if _, ok := numbers[r]; !ok {
			numbers[r] = len(numbers)
		}
		of[i] = numbers[r]
	}
	return of, max(len(numbers), 1)
}

// islandOf is where an element belongs; what has both ends on ground belongs to
// the first.
func islandOf(of []int, elements ...*element) int {
	for _, e := range elements {
		if e.a != Ground {
			return of[e.a]
		}
		if e.b != Ground {
			return of[e.b]
		}
	}
	return 0
}
