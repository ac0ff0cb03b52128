package diagnose

import "math"

// normal is numbers that vary together: their deviations from what is expected
// and the lower triangle L of their covariance S = L·Lᵀ.
type normal struct {
	l [][]float64
	z []float64 // L⁻¹ of the deviations
}

// decompose factors a covariance; what is not positive for rounding is floored.
func decompose(s [][]float64, deviations []float64) normal {
	n := len(s)
	l := make([][]float64, n)
	for i := range n {
		l[i] = make([]float64, n)
		for j := range i + 1 {
			sum := s[i][j]
			for k := range j {
				sum -= l[i][k] * l[j][k]
			}
			if i == j {
				l[i][i] = math.Sqrt(math.Max(sum, 1e-9))
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
	n := float64(len(g.z))
	if n == 0 {
		return 0
	}
	square, logDet := 0.0, 0.0
	for i, z := range g.z {
		square += z * z
		logDet += math.Log(g.l[i][i])
	}
	a, _ := math.Lgamma((degrees + n) / 2)
	b, _ := math.Lgamma(degrees / 2.0)
	return a - b - n/2*math.Log(degrees*math.Pi) - logDet - (degrees+n)/2*math.Log1p(square/degrees)
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
