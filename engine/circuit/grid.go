package circuit

// Nodes is how many nodes a network has, numbered from 0.
const Nodes = 16

// grid is branches between nodes: how well each pair conducts, the current fed into
// each node, and which nodes have become one.
type grid[T float64 | complex128] struct {
	conducts [Nodes][Nodes]T
	feeds    [Nodes]T
	merged   [Nodes]uint8 // one more than the node it is part of, 0 for itself
}

func node(i int) bool { return i >= 0 && i < Nodes }

func (g *grid[T]) root(i int) int {
	if g.merged[i] > 0 {
		return int(g.merged[i]) - 1
	}
	return i
}

func (g *grid[T]) isRoot(i int) bool { return g.merged[i] == 0 }

func (g *grid[T]) add(a, b int, admits T) {
	a, b = g.root(a), g.root(b)
	if a != b {
		g.conducts[a][b] += admits
		g.conducts[b][a] += admits
	}
}

func (g *grid[T]) feed(into, outOf int, current T) {
	into, outOf = g.root(into), g.root(outOf)
	if into != outOf {
		g.feeds[into] += current
		g.feeds[outOf] -= current
	}
}

// merge hangs all that is at b on a.
func (g *grid[T]) merge(a, b int) {
	a, b = g.root(a), g.root(b)
	if a == b {
		return
	}
	row := g.takeOut(b)
	for i, admits := range row {
		if i != a && admits != 0 {
			g.add(a, i, admits)
		}
	}
	g.feeds[a] += g.feeds[b]
	g.feeds[b] = 0
	for i := range g.merged {
		if i == b || int(g.merged[i])-1 == b {
			g.merged[i] = uint8(a + 1)
		}
	}
}

// takeOut removes a node and says how it conducted to each other.
func (g *grid[T]) takeOut(k int) [Nodes]T {
	row := g.conducts[k]
	for i := range row {
		g.conducts[k][i], g.conducts[i][k] = 0, 0
	}
	return row
}

// reduce removes a node by the mesh that does the same to its neighbours (the
// star-mesh transform) and hands its feed on to them. Of conductances nothing is
// ever subtracted, so nothing is lost to rounding. It gives back what the node
// conducted, to each other and in all.
func (g *grid[T]) reduce(k int) (row [Nodes]T, sum T) {
	for _, admits := range g.conducts[k] {
		sum += admits
	}
	if sum == 0 {
		return row, 0
	}
	row = g.takeOut(k)
	for i := range row {
		if row[i] == 0 {
			continue
		}
		share := row[i] / sum
		g.feeds[i] += share * g.feeds[k]
		for j := i + 1; j < Nodes; j++ {
			if row[j] != 0 {
				g.add(i, j, share*row[j])
			}
		}
	}
	return row, sum
}

// port is what is left of the grid between two of its nodes: one admittance and
// one current, from b to a. The nodes must differ.
func (g grid[T]) port(a, b int) (admits, current T) {
	for k := range Nodes {
		if g.isRoot(k) && k != a && k != b {
			g.reduce(k)
		}
	}
	return g.conducts[a][b], (g.feeds[a] - g.feeds[b]) / 2
}

// solve is the voltage of each node against the reference, and whether any way
// leads there; without one the voltage is put at zero.
func (g grid[T]) solve(reference int) (volts [Nodes]T, reached [Nodes]bool) {
	var rows [Nodes][Nodes]T
	var sums, feeds [Nodes]T
	ground := g.root(reference)
	for k := range Nodes {
		if g.isRoot(k) && k != ground {
			feeds[k] = g.feeds[k]
			rows[k], sums[k] = g.reduce(k)
		}
	}
	reached[ground] = true
	for k := Nodes - 1; k >= 0; k-- {
		if k != ground && sums[k] != 0 {
			volts[k], reached[k] = back(rows[k], sums[k], feeds[k], &volts, &reached)
		}
	}
	for i := range volts {
		volts[i], reached[i] = volts[g.root(i)], reached[g.root(i)]
	}
	return volts, reached
}

// back is the voltage of a node from those of the neighbours it had when it was
// removed.
func back[T float64 | complex128](row [Nodes]T, sum, feed T, volts *[Nodes]T, reached *[Nodes]bool) (v T, ok bool) {
	v = feed / sum
	for i, admits := range row {
		if admits != 0 {
			v += admits / sum * volts[i]
			ok = ok || reached[i]
		}
	}
	if !ok {
		return 0, false
	}
	return v, true
}
