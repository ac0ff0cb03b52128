package diagnose

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/machine"
)

// In one dimension the density is Student's: it sums to one, and at zero it is
// Γ(3)/(Γ(2.5)·√(5π)·s).
func TestStudent(t *testing.T) {
	const sd = 0.7
	at := func(x float64) float64 {
		return math.Exp(decompose([][]float64{{sd * sd}}, []float64{x}, []float64{0}).logStudent())
	}
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
	g := decompose([][]float64{{4}}, []float64{3}, []float64{0})
	shift, left := g.given([]float64{1.2}, 1)
	assert.InDelta(t, 1.2/4*3, shift, 1e-12)
	assert.InDelta(t, 1-1.2*1.2/4, left, 1e-12)
	shift, left = normal{}.given(nil, 2)
	assert.Zero(t, shift)
	assert.InDelta(t, 2, left, 0)
	// Three at once, against the normal equations solved by hand.
	s := [][]float64{{2, 0.5, 0.1}, {0.5, 1, 0.3}, {0.1, 0.3, 3}}
	g = decompose(s, []float64{1, -1, 2}, make([]float64, 3))
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
	g := decompose([][]float64{{1, 1}, {1, 1}}, []float64{1, 1}, []float64{1e-9, 1e-9})
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

// drawn is machines that show rows of numbers, NaN for none.
func drawn(rows [][]float64) (d drawing, w []float64, checks []check.Check) {
	for _, r := range rows {
		d.shown = append(d.shown, shown{complains: 1, numbers: [][]float64{r}, at: make([]showingAt, len(r))})
	}
	return d, d.weights(), make([]check.Check, len(rows[0]))
}

func viewsOf(rows [][]float64) []view {
	out := make([]view, len(rows[0]))
	for j := range out {
		out[j].means = []float64{0}
		for _, r := range rows {
			if !math.IsNaN(r[j]) {
				out[j].counted++
			}
		}
	}
	return out
}

func TestCovarianceOfRowsWithGaps(t *testing.T) {
	var rows [][]float64
	for i := range 40 {
		x := float64(i%5) - 2
		row := []float64{x, 2 * x, math.NaN()}
		if i%4 == 0 {
			row[1] = math.NaN()
		}
		rows = append(rows, row)
	}
	d, w, checks := drawn(rows)
	c := d.covariance(w, viewsOf(rows), checks)
	assert.InDelta(t, 2, c[0][0], 1e-9)
	assert.InDelta(t, 0.85*4*math.Sqrt(0.75), c[0][1], 1e-9, "a quarter of the pairs is not there")
	assert.Zero(t, c[2][2], "nothing is known of what was never a number")
	assert.Equal(t, c[0][1], c[1][0])
}

// Whatever is missing, no combination of numbers has a variance below zero.
func TestCovariancesDoNotContradictEachOther(t *testing.T) {
	const n = 12
	luck := machine.NewChance(3)
	var rows [][]float64
	for range 64 {
		row, shared := make([]float64, n), luck.Normal()
		for i := range row {
			row[i] = shared + 0.1*luck.Normal()
			if luck.Uniform() < float64(i)/n {
				row[i] = math.NaN()
			}
		}
		rows = append(rows, row)
	}
	d, w, checks := drawn(rows)
	c := d.covariance(w, viewsOf(rows), checks)
	for range 2000 {
		x, variance := make([]float64, n), 0.0
		for i := range x {
			x[i] = luck.Normal()
		}
		for i := range x {
			for j := range x {
				variance += x[i] * c[i][j] * x[j]
			}
		}
		require.GreaterOrEqual(t, variance, -1e-9)
	}
}

// The machines count whose owners come with the symptom, but never so few that they
// say nothing of how widely such machines lie.
func TestMachinesCountByTheirComplaint(t *testing.T) {
	d := drawing{}
	for i := range 64 {
		s := shown{complains: 0.03, numbers: [][]float64{{1}}, at: []showingAt{{known: 1}}}
		if i < 30 {
			s.complains, s.numbers = 1, [][]float64{{5}}
		}
		d.shown = append(d.shown, s)
	}
	assert.InDelta(t, (30+34*0.03)/64, d.complaint(), 1e-12)
	views, _ := d.settle(make([]check.Check, 1), 1)
	assert.InDelta(t, (30*5+34*0.03)/(30+34*0.03), views[0].means[0], 1e-9)
	for i := 2; i < 30; i++ {
		d.shown[i].complains = 0.03
	}
	squares := 0.0
	for _, w := range d.weights() {
		squares += w * w
	}
	assert.GreaterOrEqual(t, 1/squares, 19.9)
}

// Leaving a number out is fitting the others.
func TestLeftOut(t *testing.T) {
	s := [][]float64{{2, 0, 0, 0}, {0.7, 1, 0, 0}, {-0.2, 0.3, 3, 0}, {0.1, -0.4, 0.6, 0.8}}
	d := []float64{0.4, -1.2, 2.5, 0.1}
	for i, got := range decompose(s, d, make([]float64, 4)).leftOut() {
		var rest [][]float64
		var left []float64
		for a := range d {
			if a == i {
				continue
			}
			row := []float64{}
			for b := range d {
				if b != i {
					row = append(row, s[max(a, b)][min(a, b)])
				}
			}
			rest, left = append(rest, row), append(left, d[a])
		}
		assert.InDelta(t, decompose(rest, left, make([]float64, 3)).logStudent(), got, 1e-12)
	}
	assert.Equal(t, []float64{0}, decompose([][]float64{{2}}, []float64{1}, []float64{0}).leftOut(), "nothing is left")
}
