package uncertainty_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/uncertainty"
)

func TestMeansOfSimultaneousReadings(t *testing.T) {
	mean, cov := uncertainty.Means([][]float64{{1, 10}, {2, 30}, {3, 20}})
	assert.Equal(t, []float64{2, 20}, mean)
	assert.InDelta(t, 1.0/3, cov[0][0], 1e-12, "scatter 1, three rows")
	assert.InDelta(t, 100.0/3, cov[1][1], 1e-12)
	assert.InDelta(t, 5.0/3, cov[0][1], 1e-12, "by hand: (10+0+0)/(3·2)")
	assert.InDelta(t, 0.5, cov.R(0, 1), 1e-12)
	assert.InDelta(t, cov[0][1], cov[1][0], 0)
}

func TestASingleReadingTellsNothingOfScatter(t *testing.T) {
	mean, cov := uncertainty.Means([][]float64{{0.6}})
	assert.Equal(t, []float64{0.6}, mean)
	assert.True(t, math.IsNaN(cov.U(0)))
}

func TestMeansRefusesWhatIsNoTable(t *testing.T) {
	assert.PanicsWithValue(t, "uncertainty: no rows to take the mean of", func() { uncertainty.Means(nil) })
	assert.PanicsWithValue(t, "uncertainty: rows differ in length: 1 and 2",
		func() { uncertainty.Means([][]float64{{1, 2}, {3}}) })
}

// Laws: a shift moves the means alone; a factor scales means and covariances; a
// copy of a column is fully correlated with it; all rows twice nearly halve the
// variance.
func TestMeansLaws(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	for range 200 {
		var rows, moved, twice [][]float64
		for range 2 + random.IntN(8) {
			a, b := random.NormFloat64(), random.NormFloat64()
			rows = append(rows, []float64{a, b, a})
			moved = append(moved, []float64{3*a + 7, b, a})
		}
		twice = append(append(twice, rows...), rows...)
		mean, cov := uncertainty.Means(rows)
		movedMean, movedCov := uncertainty.Means(moved)
		_, twiceCov := uncertainty.Means(twice)
		n := float64(len(rows))

		require.InDelta(t, 3*mean[0]+7, movedMean[0], 1e-9)
		require.InEpsilon(t, 3*cov.U(0), movedCov.U(0), 1e-9)
		require.InDelta(t, cov.R(0, 1), movedCov.R(0, 1), 1e-9)
		require.InDelta(t, 1, cov.R(0, 2), 1e-9)
		require.InEpsilon(t, cov[0][0]*(n-1)/(2*n-1), twiceCov[0][0], 1e-9)
	}
}

// Compared with the variance of each density, integrated over its bounds.
func TestBoundsGiveTheSpreadOfTheirDensity(t *testing.T) {
	const h = 0.5048
	for name, c := range map[string]struct {
		got   float64
		place func(p float64) float64 // value below which a share p lies
	}{
		"rectangular": {uncertainty.Rectangular(h), func(p float64) float64 { return h * (2*p - 1) }},
		"arcsine":     {uncertainty.Arcsine(h), func(p float64) float64 { return -h * math.Cos(math.Pi*p) }},
		"triangular":  {uncertainty.Triangular(h), func(p float64) float64 { return h * triangularPlace(p) }},
		"resolution":  {uncertainty.Resolution(2 * h), func(p float64) float64 { return h * (2*p - 1) }},
	} {
		assert.InEpsilon(t, spread(c.place), c.got, 1e-5, name)
	}
}

func triangularPlace(p float64) float64 {
	if p > 0.5 {
		return 1 - math.Sqrt(2*(1-p))
	}
	return math.Sqrt(2*p) - 1
}

func spread(place func(p float64) float64) float64 {
	const n = 100000
	sum := 0.0
	for i := range n {
		v := place((float64(i) + 0.5) / n)
		sum += v * v / n
	}
	return math.Sqrt(sum)
}

func TestBoundsHaveNoSign(t *testing.T) {
	for _, typeB := range []func(float64) float64{uncertainty.Rectangular, uncertainty.Triangular,
		uncertainty.Arcsine, uncertainty.Resolution} {
		assert.Positive(t, typeB(-0.1))
		assert.Zero(t, typeB(0))
	}
}

func TestCovarianceReadsBackWhatItWasMadeOf(t *testing.T) {
	c := uncertainty.Independent(0.3, 0.4)
	assert.InDelta(t, 0.4, c.U(1), 1e-15)
	assert.Zero(t, c.R(0, 1))

	c = c.Plus(uncertainty.Common(0.5, 1, -1))
	assert.InDelta(t, math.Hypot(0.3, 0.5), c.U(0), 1e-15)
	assert.InDelta(t, -0.25/c.U(0)/c.U(1), c.R(0, 1), 1e-15)
	assert.InDelta(t, 1, uncertainty.Common(0.5, 2, 3).R(0, 1), 1e-15)

	assert.Zero(t, uncertainty.Certain(2).R(0, 1))
	assert.Zero(t, uncertainty.Certain(2).R(0, 0), "no doubt, no correlation, even with itself")
	assert.Zero(t, uncertainty.Covariance{{-1e-30}}.U(0))
}
