package uncertainty_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/uncertainty"
)

func product(x []float64) float64 { return x[0] * x[1] }
func ratio(x []float64) float64   { return x[0] / x[1] }
func difference(x []float64) float64 {
	return x[0] - x[1]
}

// The expected values are the closed forms of the textbook rules, written out.
func TestPropagateAgreesWithClosedForms(t *testing.T) {
	x := []float64{12.65, 0.30}
	u := []float64{0.048, 0.0323}
	relative := math.Hypot(u[0]/x[0], u[1]/x[1])
	for name, c := range map[string]struct {
		f    func([]float64) float64
		y, u float64
	}{
		"product":    {product, x[0] * x[1], x[0] * x[1] * relative},
		"difference": {difference, x[0] - x[1], math.Hypot(u[0], u[1])},
		"square":     {func(x []float64) float64 { return x[0] * x[0] }, x[0] * x[0], 2 * x[0] * u[0]},
	} {
		y, got := uncertainty.Propagate(c.f, x, uncertainty.Independent(u...))
		assert.InEpsilon(t, c.y, y, 1e-12, name)
		assert.InEpsilon(t, c.u, got, 1e-6, name)
	}
}

// A small doubt leaves a ratio almost straight; GUM eq. 12 is then exact.
func TestPropagateRatioOfSmallDoubts(t *testing.T) {
	x := []float64{180, 141}
	_, u := uncertainty.Propagate(ratio, x, uncertainty.Independent(0.1155, 0.1155))
	assert.InEpsilon(t, 180.0/141*0.1155*math.Hypot(1.0/180, 1.0/141), u, 1e-6)
}

func TestGainCancelsInARatio(t *testing.T) {
	x := []float64{180, 141}
	gain := uncertainty.Common(0.003, x...)
	_, u := uncertainty.Propagate(ratio, x, gain)
	assert.Less(t, u, 1e-8, "one gain error, nothing else")

	_, u = uncertainty.Propagate(difference, x, gain)
	assert.InEpsilon(t, 0.003*39, u, 1e-6, "a difference keeps the gain error of itself")
}

func TestOffsetCancelsInADifference(t *testing.T) {
	x := []float64{0.9, 0.3}
	_, u := uncertainty.Propagate(difference, x, uncertainty.Common(0.2, 1, 1))
	assert.Less(t, u, 1e-8)

	sum := func(x []float64) float64 { return x[0] + x[1] }
	_, u = uncertainty.Propagate(sum, x, uncertainty.Common(0.2, 1, 1))
	assert.InEpsilon(t, 0.4, u, 1e-6, "shared errors add in full, not as root of squares")
}

func TestNoDoubtInNoDoubtOut(t *testing.T) {
	y, u := uncertainty.Propagate(product, []float64{3, 4}, uncertainty.Certain(2))
	assert.Equal(t, 12.0, y)
	assert.Zero(t, u)
}

func TestAQuantityWithoutDoubtIsNeverMoved(t *testing.T) {
	onlyAtTwo := func(x []float64) float64 {
		if x[1] != 2 {
			return math.NaN()
		}
		return x[0] * x[1]
	}
	_, u := uncertainty.Propagate(onlyAtTwo, []float64{5, 2}, uncertainty.Independent(0.1, 0))
	assert.InEpsilon(t, 0.2, u, 1e-6)
}

func TestOutsideTheDomainThereIsNoUncertainty(t *testing.T) {
	_, u := uncertainty.Propagate(func(x []float64) float64 { return math.Sqrt(x[0]) },
		[]float64{0}, uncertainty.Independent(0.1))
	assert.True(t, math.IsNaN(u))
}

func TestPropagateLeavesItsArgumentsAlone(t *testing.T) {
	x := []float64{3, 4}
	spoil := func(x []float64) float64 { x[0] *= 2; return x[0] + x[1] }
	y, _ := uncertainty.Propagate(spoil, x, uncertainty.Independent(1, 1))
	assert.Equal(t, 10.0, y)
	assert.Equal(t, []float64{3, 4}, x)
}

// Laws that hold for any figure and any correlation: doubling every doubt
// doubles the answer; a change of unit changes nothing but the unit; the order
// of the quantities does not matter.
func TestPropagateLaws(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		x := []float64{1 + 9*random.Float64(), 1 + 9*random.Float64()}
		cov := uncertainty.Independent(0.01*random.Float64(), 0.01*random.Float64()).
			Plus(uncertainty.Common(0.01*random.Float64(), x...))
		y, u := uncertainty.Propagate(curved, x, cov)

		_, wider := uncertainty.Propagate(curved, x, scaled(cov, 2, 2))
		require.InEpsilon(t, 2*u, wider, 1e-5)

		a, b := math.Pow(10, 12*random.Float64()-6), math.Pow(10, 12*random.Float64()-6)
		inOtherUnits := func(x []float64) float64 { return curved([]float64{x[0] / a, x[1] / b}) }
		sameY, sameU := uncertainty.Propagate(inOtherUnits, []float64{x[0] * a, x[1] * b}, scaled(cov, a, b))
		require.InEpsilon(t, y, sameY, 1e-12)
		require.InEpsilon(t, u, sameU, 1e-5)

		swapped := func(x []float64) float64 { return curved([]float64{x[1], x[0]}) }
		other := uncertainty.Covariance{{cov[1][1], cov[1][0]}, {cov[0][1], cov[0][0]}}
		_, sameU = uncertainty.Propagate(swapped, []float64{x[1], x[0]}, other)
		require.InEpsilon(t, u, sameU, 1e-9)
	}
}

func curved(x []float64) float64 { return x[0] * math.Sqrt(x[1]) / (1 + x[0]) }

func scaled(c uncertainty.Covariance, by ...float64) uncertainty.Covariance {
	out := uncertainty.Certain(len(c))
	for i := range c {
		for j := range c {
			out[i][j] = c[i][j] * by[i] * by[j]
		}
	}
	return out
}

// A draw of many meters with a shared gain must scatter as the law says. The
// seed is fixed; 40000 draws leave about 0.4 % of doubt in the scatter.
func TestPropagateAgreesWithRandomDraws(t *testing.T) {
	const gain, noise, draws = 0.02, 0.01, 40000
	x := []float64{2, 5}
	f := func(x []float64) float64 { return x[0]*x[1] + x[0] }
	random := rand.New(rand.NewPCG(3, 4))
	var sum, squares float64
	for range draws {
		g := 1 + gain*random.NormFloat64()
		y := f([]float64{x[0]*g + noise*random.NormFloat64(), x[1]*g + noise*random.NormFloat64()})
		sum, squares = sum+y, squares+y*y
	}
	seen := math.Sqrt(squares/draws - sum*sum/draws/draws)
	_, u := uncertainty.Propagate(f, x, uncertainty.Independent(noise, noise).Plus(uncertainty.Common(gain, x...)))
	assert.InEpsilon(t, seen, u, 0.02)
}

func TestPropagateAllTellsHowFiguresMoveTogether(t *testing.T) {
	sum := func(x []float64) float64 { return x[0] + x[1] }
	first := func(x []float64) float64 { return x[0] }
	y, cov := uncertainty.PropagateAll([]func([]float64) float64{sum, difference, first},
		[]float64{5, 3}, uncertainty.Independent(0.3, 0.3))
	assert.Equal(t, []float64{8, 2, 5}, y)
	assert.InDelta(t, 0, cov.R(0, 1), 1e-9, "equal doubts: sum and difference have nothing in common")
	assert.InDelta(t, math.Sqrt(0.5), cov.R(0, 2), 1e-9)
	assert.InDelta(t, cov[1][2], cov[2][1], 1e-15)
}

// The step must survive a doubt below the spacing of the numbers around x, and
// a doubt far larger than x.
func TestStepSuitsVeryUnequalSizes(t *testing.T) {
	double := func(x []float64) float64 { return 2 * x[0] }
	for _, c := range []struct{ x, u float64 }{{1e6, 1e-9}, {1e-9, 1}, {0, 0.1}, {-1e12, 3}, {1e-12, 1e-15}} {
		_, u := uncertainty.Propagate(double, []float64{c.x}, uncertainty.Independent(c.u))
		assert.InEpsilon(t, 2*c.u, u, 1e-12, "%+v", c)
	}
}

func TestShapesMustMatch(t *testing.T) {
	assert.PanicsWithValue(t, "uncertainty: quantities and covariance differ in length: 2 and 3",
		func() { uncertainty.Propagate(product, []float64{1, 2}, uncertainty.Certain(3)) })
	assert.PanicsWithValue(t, "uncertainty: two covariances differ in length: 1 and 2",
		func() { uncertainty.Certain(1).Plus(uncertainty.Certain(2)) })
}
