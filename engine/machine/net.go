package machine

import "math/bits"

// net is branches between the points of a machine: how well each pair conducts
// and the current that sources feed into each point. A machine has more points
// than circuit.Network has nodes, nearly all with two or three neighbours, and
// coils on one pole are coupled; so it has a net of its own.
//
// Points are taken out one by one, each by the mesh that does the same to its
// neighbours (the star-mesh transform). Of conductances nothing is ever
// subtracted, so none is lost to rounding.
type net[T float64 | complex128] struct {
	near     [points]uint64 // bit j: a branch to point j
	conducts [int(points) * (int(points) - 1) / 2]T
	into     [points]T
}

// least keeps a branch of no ohms a branch; most is an open one. Ohms.
const least, most = 1e-7, 1e15

func pair(a, b point) int {
	if a < b {
		a, b = b, a
	}
	return int(a)*(int(a)-1)/2 + int(b)
}

// admit puts an admittance between two points.
func (n *net[T]) admit(a, b point, siemens T) {
	n.near[a] |= 1 << b
	n.near[b] |= 1 << a
	n.conducts[pair(a, b)] += siemens
}

// feed puts a current into one point and takes it out of another.
func (n *net[T]) feed(into, from point, amps T) {
	n.into[into] += amps
	n.into[from] -= amps
}

// run puts a leg between two points; it drives the first above the second.
func (n *net[T]) run(first, second point, l leg[T]) {
	siemens := 1 / l.ohms
	n.admit(first, second, siemens)
	if l.volts != 0 {
		n.feed(first, second, l.volts*siemens)
	}
}

// seen is the one source that does the same between two points: volts of a above
// b, and siemens. Without a way between them ok is false.
func (n *net[T]) seen(a, b point) (volts, siemens T, ok bool) {
	for k := points - 1; k > 0; k-- {
		if p := point(k); p != a && p != b {
			n.mesh(p)
		}
	}
	if a != core && b != core {
		n.mesh(core)
	}
	if a == b || n.near[a]&(1<<b) == 0 {
		return 0, 0, false
	}
	siemens = n.conducts[pair(a, b)]
	return (n.into[a] - n.into[b]) / (2 * siemens), siemens, true
}

// mesh takes a point out.
func (n *net[T]) mesh(k point) {
	row := n.near[k]
	if row == 0 {
		return
	}
	var sum T
	for r := row; r != 0; r &= r - 1 {
		sum += n.conducts[pair(k, point(bits.TrailingZeros64(r)))]
	}
	for r := row; r != 0; r &= r - 1 {
		i := point(bits.TrailingZeros64(r))
		n.near[i] &^= 1 << k
		share := n.conducts[pair(k, i)] / sum
		n.into[i] += share * n.into[k]
		for s := r & (r - 1); s != 0; s &= s - 1 {
			j := point(bits.TrailingZeros64(s))
			n.admit(i, j, share*n.conducts[pair(k, j)])
		}
	}
	n.near[k] = 0
}
