package transient

// factor is a nodal matrix taken apart as L·D·Lᵀ, and the current that its valves
// feed into each node.
type factor struct {
	n       int
	below   []entry   // L by columns, without zeros and the ones on the diagonal
	ends    []int32   // of the columns in below
	inverse []float64 // of D
	base    []float64 // one more than n: ground takes what nobody asks for
}

type entry struct {
	value float64
	row   int
}

// matrix is a symmetric nodal matrix as it is summed up. leak is the sum of each
// row, kept apart: where all couplings are conductances nothing is ever
// subtracted, and a leak of 1e-13 S beside 1e6 S is not lost (the elimination of
// Grassmann, Taksar and Heyman, 1985, from memory).
type matrix struct {
	n    int
	a    []float64
	leak []float64
}

func newMatrix(n int, leak float64) *matrix {
	m := &matrix{n: n, a: make([]float64, n*n), leak: make([]float64, n)}
	for i := range m.leak {
		m.leak[i] = leak
	}
	return m
}

// join is a conductance between two nodes; n is ground.
func (m *matrix) join(a, b int32, siemens float64) {
	i, j := int(a), int(b)
	switch {
	case i == j:
	case i == m.n:
		m.leak[j] += siemens
	case j == m.n:
		m.leak[i] += siemens
	default:
		m.a[i*m.n+j] -= siemens
		m.a[j*m.n+i] -= siemens
	}
}

// transfer makes the voltage a2-b2 drive a current from a1 to b1, and the other
// way round.
func (m *matrix) transfer(a1, b1, a2, b2 int32, siemens float64) {
	m.couple(a1, a2, siemens)
	m.couple(b1, b2, siemens)
	m.couple(a1, b2, -siemens)
	m.couple(b1, a2, -siemens)
}

// couple adds to an element of the matrix and its mirror image.
func (m *matrix) couple(a, b int32, siemens float64) {
	i, j := int(a), int(b)
	if i == m.n || j == m.n {
		return
	}
	if i == j {
		m.leak[i] += 2 * siemens
		return
	}
	m.a[i*m.n+j] += siemens
	m.a[j*m.n+i] += siemens
	m.leak[i] += siemens
	m.leak[j] += siemens
}

// decompose uses the matrix up.
func (m *matrix) decompose(base []float64) *factor {
	n := m.n
	f := &factor{n: n, inverse: make([]float64, n), base: base}
	for k := range n {
		row := m.a[k*n : k*n+n]
		pivot := m.leak[k]
		for j := k + 1; j < n; j++ {
			pivot -= row[j]
		}
		pivot = max(pivot, RestLeak)
		f.inverse[k] = 1 / pivot
		for i := k + 1; i < n; i++ {
			share := m.a[i*n+k] / pivot
			if share == 0 {
				continue
			}
			f.below = append(f.below, entry{share, i})
			m.leak[i] -= share * m.leak[k]
			for j := k + 1; j < n; j++ {
				m.a[i*n+j] -= share * row[j]
			}
		}
		f.ends = append(f.ends, int32(len(f.below)))
	}
	return f
}

// solve turns currents into voltages, in place.
func (f *factor) solve(x []float64) {
	below, from := f.below, 0
	for k, to := range f.ends {
		y := x[k]
		for _, e := range below[from:to] {
			x[e.row] -= e.value * y
		}
		from = int(to)
	}
	for k := f.n - 1; k >= 0; k-- {
		from = 0
		if k > 0 {
			from = int(f.ends[k-1])
		}
		y := x[k] * f.inverse[k]
		for _, e := range below[from:f.ends[k]] {
			y -= e.value * x[e.row]
		}
		x[k] = y
	}
}
