package diagnose

import "math"

// normal is numbers that vary together: their deviations from what is expected
// and the lower triangle L of their covariance S = L·Lᵀ.
type normal struct {
	l [][]float64
	z []float64 // L⁻¹ of the deviations
}

// decompose factors a covariance. What is left of a number's variance once those
// before it are known does not go below its own floor: covariances that were counted
// pair by pair may contradict each other.
func decompose(s [][]float64, deviations, floors []float64) normal {
	n := len(s)
	l, all := make([][]float64, n), make([]float64, n*n)
	for i := range n {
		l[i] = all[i*n : (i+1)*n]
		for j := range i + 1 {
			sum := s[i][j]
			for k := range j {
				sum -= l[i][k] * l[j][k]
			}
			if i == j {
				l[i][i] = math.Sqrt(math.Max(sum, floors[i]))
				continue
			}
			l[i][j] = sum / l[j][j]
		}
	}
	g := normal{l: l}
	g.z = g.forward(deviations)
	return g
}

// forward solves L·x = b.
func (g normal) forward(b []float64) []float64 {
	x := make([]float64, len(b))
	for i := range b {
		sum := b[i]
		for k := range i {
			sum -= g.l[i][k] * x[k]
		}
		x[i] = sum / g.l[i][i]
	}
	return x
}

// degrees of freedom of the heavy tails.
const degrees = 5

// logStudent is the logarithm of the density of Student's t in as many dimensions,
// with the covariance for its scale.
func (g normal) logStudent() float64 {
	square, logDet := 0.0, 0.0
	for i, z := range g.z {
		square += z * z
		logDet += math.Log(g.l[i][i])
	}
	return student(len(g.z), square, logDet)
}

// student is that density for a squared distance and half the logarithm of the
// covariance's determinant.
func student(dimensions int, square, halfLogDet float64) float64 {
	if dimensions == 0 {
		return 0
	}
	n := float64(dimensions)
	a, _ := math.Lgamma((degrees + n) / 2)
	b, _ := math.Lgamma(degrees / 2.0)
	return a - b - n/2*math.Log(degrees*math.Pi) - halfLogDet - (degrees+n)/2*math.Log1p(square/degrees)
}

// leftOut is logStudent without each of the numbers in turn. With Q the inverse of
// the covariance and d the deviations, leaving out number i takes (Q·d)ᵢ²/Qᵢᵢ off the
// squared distance and adds log Qᵢᵢ to the determinant's.
func (g normal) leftOut() []float64 {
	square, logDet := 0.0, 0.0
	for i, z := range g.z {
		square += z * z
		logDet += math.Log(g.l[i][i])
	}
	out := make([]float64, len(g.z))
	g.inverse(func(i int, qd, qii float64) {
		out[i] = student(len(g.z)-1, math.Max(square-qd*qd/qii, 0), logDet+math.Log(qii)/2)
	})
	return out
}

// residuals are how far each number lies from what the others let expect, in
// standard deviations.
func (g normal) residuals() []float64 {
	out := make([]float64, len(g.z))
	g.inverse(func(i int, qd, qii float64) { out[i] = qd / math.Sqrt(qii) })
	return out
}

// inverse gives (Q·d)ᵢ and Qᵢᵢ for each number.
func (g normal) inverse(each func(i int, qd, qii float64)) {
	n := len(g.z)
	column := make([]float64, n) // of the inverse of L
	for i := range n {
		qd, qii := 0.0, 0.0
		for k := i; k < n; k++ {
			sum := 0.0
			if k == i {
				sum = 1
			}
			for m := i; m < k; m++ {
				sum -= g.l[k][m] * column[m]
			}
			column[k] = sum / g.l[k][k]
			qd += column[k] * g.z[k]
			qii += column[k] * column[k]
		}
		each(i, qd, qii)
	}
}

// given is the mean shift and the variance of one more number, by its
// covariances with those that are known.
func (g normal) given(with []float64, variance float64) (shift, left float64) {
	if len(with) == 0 {
		return 0, variance
	}
	w := g.forward(with)
	left = variance
	for i := range w {
		shift += w[i] * g.z[i]
		left -= w[i] * w[i]
	}
	return shift, math.Max(left, 1e-6)
}

// below is the share of a standard normal number under x.
func below(x float64) float64 { return math.Erfc(-x/math.Sqrt2) / 2 }
