package diagnose

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// In one dimension the density is Student's: it sums to one, and at zero it is
// Γ(3)/(Γ(2.5)·√(5π)·s).
func TestStudent(t *testing.T) {
	const sd = 0.7
	at := func(x float64) float64 { return math.Exp(decompose([][]float64{{sd * sd}}, []float64{x}).logStudent()) }
	assert.InDelta(t, 2/(math.Gamma(2.5)*math.Sqrt(5*math.Pi)*sd), at(0), 1e-12)
	sum := 0.0
	for x := -60.0; x < 60; x += 0.01 {
		sum += at(x) * 0.01
	}
	assert.InDelta(t, 1, sum, 1e-4)
	assert.Greater(t, at(5*sd)/at(0), 1e-3, "tails are heavy")
	assert.Zero(t, normal{}.logStudent())
}

// A number that goes with a known one is expected accordingly: by the regression
// of the two, with what is left of its variance.
func TestGiven(t *testing.T) {
	g := decompose([][]float64{{4}}, []float64{3})
	shift, left := g.given([]float64{1.2}, 1)
	assert.InDelta(t, 1.2/4*3, shift, 1e-12)
	assert.InDelta(t, 1-1.2*1.2/4, left, 1e-12)
	shift, left = normal{}.given(nil, 2)
	assert.Zero(t, shift)
	assert.InDelta(t, 2, left, 0)
	// Three at once, against the normal equations solved by hand.
	s := [][]float64{{2, 0.5, 0.1}, {0.5, 1, 0.3}, {0.1, 0.3, 3}}
	g = decompose(s, []float64{1, -1, 2})
	with := []float64{0.4, 0.2, -0.6}
	shift, _ = g.given(with, 5)
	// S⁻¹·d by Cramer's rule.
	det := 2*(1*3-0.09) - 0.5*(0.5*3-0.03) + 0.1*(0.5*0.3-0.1)
	a := (1*(1*3-0.09) - 0.5*(-1*3-0.6) + 0.1*(-1*0.3-2*1)) / det
	b := (2*(-1*3-0.6) - 1*(0.5*3-0.03) + 0.1*(0.5*2+0.1)) / det
	c := (2*(1*2+0.3) - 0.5*(0.5*2+0.1) + 1*(0.5*0.3-0.1)) / det
	assert.InDelta(t, with[0]*a+with[1]*b+with[2]*c, shift, 1e-9)
}

func TestRoundingCannotBreakACovariance(t *testing.T) {
	g := decompose([][]float64{{1, 1}, {1, 1}}, []float64{1, 1})
	assert.False(t, math.IsNaN(g.logStudent()))
	assert.InDelta(t, 0.5, below(0), 1e-12)
	assert.InDelta(t, 0.975, below(1.959964), 1e-6)
}

func TestScales(t *testing.T) {
	for _, s := range []scale{{0, 1}, {0.15, 1}, {50e-6, 1}} {
		last := math.Inf(-1)
		for _, v := range []float64{-3, -0.1, 0, 1e-5, 0.1, 1, 100, 1e6} {
			y := s.of(v)
			require.Greater(t, y, last)
			last = y
			assert.InDelta(t, v, s.back(y), 1e-9*math.Max(1, math.Abs(v)))
			small := 1e-4 * math.Max(1e-3, math.Abs(v))
			if v > small {
				assert.InEpsilon(t, (s.of(v+small)-s.of(v-small))/2, s.doubt(v, small), 1e-9)
			}
		}
	}
}

// What reads 2 kΩ give or take 3 kΩ may be nothing at all.
func TestDoubtReachesDownToZero(t *testing.T) {
	s := scale{0.15, 0.07}
	assert.Greater(t, s.doubt(2000, 3000), 0.5*s.of(2000))
	assert.InDelta(t, 0.2, scale{}.doubt(12, 0.2), 1e-12)
}

func TestCovarianceOfRowsWithGaps(t *testing.T) {
	var rows [][]float64
	views := []view{{mean: 0}, {mean: 0}, {mean: 0}}
	for i := range 40 {
		x := float64(i%5) - 2
		row := []float64{x, 2 * x, math.NaN()}
		if i%4 == 0 {
			row[1] = math.NaN()
		}
		rows = append(rows, row)
	}
	c := covariance(rows, views)
	assert.InDelta(t, 2, c[0][0], 1e-9)
	assert.InDelta(t, 0.85*4, c[0][1], 0.3)
	assert.Zero(t, c[2][2], "nothing is known of what was never a number")
	assert.Equal(t, c[0][1], c[1][0])
}
