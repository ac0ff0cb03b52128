package uncertainty

import "math"

// Propagate gives y = f(x) and its standard uncertainty by the law of
// propagation, correlations included (GUM 5.2.2, eq. 13).
//
// It holds while f is nearly straight over a few standard uncertainties around
// x; it does not correct y for curvature. A quantity without doubt is never
// moved. Where f has no value near x, the uncertainty is NaN.
func Propagate(f func(x []float64) float64, x []float64, cov Covariance) (y, u float64) {
	ys, c := PropagateAll([]func([]float64) float64{f}, x, cov)
	return ys[0], c.U(0)
}

// PropagateAll does the same for several figures calculated from the same
// quantities, and tells how these figures are correlated (GUM H.2.3, eq. H.9).
func PropagateAll(fs []func(x []float64) float64, x []float64, cov Covariance) ([]float64, Covariance) {
	mustMatch("quantities and covariance", len(x), len(cov))
	y := make([]float64, len(fs))
	slopes := make([][]float64, len(fs))
	for i, f := range fs {
		y[i] = f(clone(x))
		slopes[i] = gradient(f, x, cov)
	}
	return y, combine(slopes, cov)
}

// combine is J·C·Jᵀ for the slopes J.
func combine(slopes [][]float64, cov Covariance) Covariance {
	out := Certain(len(slopes))
	for a, ga := range slopes {
		for b, gb := range slopes {
			for i := range cov {
				for j := range cov {
					out[a][b] += ga[i] * gb[j] * cov[i][j]
				}
			}
		}
	}
	return out
}

// gradient holds the sensitivity coefficients ∂f/∂x by central differences. A
// quantity without doubt has a zero there: its slope could not matter.
func gradient(f func([]float64) float64, x []float64, cov Covariance) []float64 {
	g := make([]float64, len(x))
	for i := range x {
		if cov[i][i] == 0 {
			continue
		}
		low, high := clone(x), clone(x)
		h := step(x[i], cov.U(i))
		low[i], high[i] = x[i]-h, x[i]+h
		g[i] = (f(high) - f(low)) / (high[i] - low[i])
	}
	return g
}

// step is a small part of the doubt itself: the doubt is the scale over which
// the law takes f to be straight, whatever the unit and even around zero. The
// second term keeps it well above the spacing of floating point numbers.
func step(x, u float64) float64 {
	return math.Max(u*1e-3, math.Abs(x)*1e-9)
}

func clone(x []float64) []float64 { return append([]float64(nil), x...) }
