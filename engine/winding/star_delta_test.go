package winding_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/quantity"
	"coilbook/engine/uncertainty"
	"coilbook/engine/winding"
)

var bothConnections = []winding.Connection{winding.Star, winding.Delta}

func solved(t *testing.T, c winding.Connection, p winding.Pairs, cov uncertainty.Covariance) (winding.Phases, uncertainty.Covariance) {
	t.Helper()
	phases, out, err := c.Solve(p, cov)
	require.NoError(t, err)
	return phases, out
}

func assertNear(t *testing.T, want, got [3]quantity.Ohm, relative float64, what ...any) {
	t.Helper()
	for i := range want {
		if want[i] == 0 || math.IsInf(float64(want[i]), 1) {
			require.Equal(t, want[i], got[i], what...)
			continue
		}
		require.InEpsilon(t, float64(want[i]), float64(got[i]), relative, what...)
	}
}

func somePhases(random *rand.Rand) winding.Phases {
	scale := math.Pow(10, 6*random.Float64()-3)
	one := func() quantity.Ohm { return quantity.Ohm(scale * (0.2 + random.Float64())) }
	return winding.Phases{one(), one(), one()}
}

// By hand: (0.62+0.64-0.60)/2 and so on; then 0.33·0.29+0.29·0.31+0.31·0.33 =
// 0.2879 over each.
func TestSolveByHand(t *testing.T) {
	pairs := winding.Pairs{0.62, 0.60, 0.64}
	star, _ := solved(t, winding.Star, pairs, uncertainty.Certain(3))
	assertNear(t, winding.Phases{0.33, 0.29, 0.31}, star, 1e-12)
	delta, _ := solved(t, winding.Delta, pairs, uncertainty.Certain(3))
	assertNear(t, winding.Phases{0.2879 / 0.31, 0.2879 / 0.33, 0.2879 / 0.29}, delta, 1e-12)
}

func TestSolveUndoesPairs(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 1))
	for range 500 {
		for _, c := range bothConnections {
			phases := somePhases(random)
			got, _ := solved(t, c, c.Pairs(phases), uncertainty.Certain(3))
			assertNear(t, phases, got, 1e-9, c)
		}
	}
}

// The property that nothing built on three readings gets round: what a star
// reads, some delta reads, and the other way about.
func TestEveryStarHasADeltaThatReadsTheSame(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 2))
	for range 500 {
		star := somePhases(random)
		pairs := winding.Star.Pairs(star)
		delta, _ := solved(t, winding.Delta, pairs, uncertainty.Certain(3))
		assertNear(t, pairs, winding.Delta.Pairs(delta), 1e-12)

		back, _ := solved(t, winding.Star, winding.Delta.Pairs(delta), uncertainty.Certain(3))
		assertNear(t, star, back, 1e-9, "star, delta, star")
	}
}

func TestSolveAndNewNamesOfTheLeads(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 3))
	for range 200 {
		p := winding.Star.Pairs(somePhases(random))
		cov := uncertainty.Independent(1e-3*float64(p[0]), 2e-3*float64(p[1]), 3e-3*float64(p[2]))
		for _, c := range bothConnections {
			phases, u := solved(t, c, p, cov)
			moved, movedU := solved(t, c, winding.Pairs{p[1], p[2], p[0]}, permuted(cov, 1, 2, 0))
			assertNear(t, winding.Phases{phases[1], phases[2], phases[0]}, moved, 1e-9)
			require.InEpsilon(t, u.U(1), movedU.U(0), 1e-5)

			mirrored, _ := solved(t, c, winding.Pairs{p[0], p[2], p[1]}, permuted(cov, 0, 2, 1)) // A and B change names
			want := winding.Phases{phases[1], phases[0], phases[2]}
			if c == winding.Delta {
				want = winding.Phases{phases[0], phases[2], phases[1]}
			}
			assertNear(t, want, mirrored, 1e-9)
		}
	}
}

func permuted(c uncertainty.Covariance, order ...int) uncertainty.Covariance {
	out := uncertainty.Certain(len(c))
	for i, a := range order {
		for j, b := range order {
			out[i][j] = c[a][b]
		}
	}
	return out
}

func TestSolveScales(t *testing.T) {
	p := winding.Pairs{0.62, 0.60, 0.64}
	for _, c := range bothConnections {
		phases, u := solved(t, c, p, uncertainty.Independent(0.01, 0.01, 0.01))
		larger, largerU := solved(t, c, winding.Pairs{620, 600, 640}, uncertainty.Independent(10, 10, 10))
		for i := range phases {
			assert.InEpsilon(t, 1000*float64(phases[i]), float64(larger[i]), 1e-12)
			assert.InEpsilon(t, 1000*u.U(i), largerU.U(i), 1e-6)
		}
	}
}

// Derived at balance: √3/2 and 3√3/2, with the parts of a star going apart at a
// correlation of -1/3; relative to the pair's own, √3 for both.
func TestNoiseGain(t *testing.T) {
	balanced := winding.Pairs{1, 1, 1}
	phases, u := solved(t, winding.Star, balanced, uncertainty.Independent(0.001, 0.001, 0.001))
	assert.InEpsilon(t, math.Sqrt(3)/2*0.001, u.U(0), 1e-6)
	assert.InEpsilon(t, -1.0/3, u.R(0, 1), 1e-6)
	assert.InEpsilon(t, math.Sqrt(3)*0.001, u.U(0)/float64(phases[0]), 1e-6)

	phases, u = solved(t, winding.Delta, balanced, uncertainty.Independent(0.001, 0.001, 0.001))
	assert.InEpsilon(t, 3*math.Sqrt(3)/2*0.001, u.U(0), 1e-5)
	assert.InEpsilon(t, math.Sqrt(3)*0.001, u.U(0)/float64(phases[0]), 1e-5)
}

// One gain error moves all phases alike and is not made larger by solving.
func TestSharedGainStaysWhatItWas(t *testing.T) {
	p := winding.Pairs{0.62, 0.60, 0.64}
	for _, c := range bothConnections {
		phases, u := solved(t, c, p, uncertainty.Common(0.004, 0.62, 0.60, 0.64))
		for i := range phases {
			assert.InEpsilon(t, 0.004*float64(phases[i]), u.U(i), 1e-4)
			assert.InDelta(t, 1, u.R(0, i), 1e-6)
		}
	}
}

func TestNaturalSpreadIsThatOfThePhases(t *testing.T) {
	for _, c := range bothConnections {
		pair := func(i int) func([]float64) float64 {
			return func(x []float64) float64 {
				return float64(c.Pairs(winding.Phases{quantity.Ohm(x[0]), quantity.Ohm(x[1]), quantity.Ohm(x[2])})[i])
			}
		}
		y, want := uncertainty.PropagateAll([]func([]float64) float64{pair(0), pair(1), pair(2)},
			[]float64{0.3, 0.3, 0.3}, uncertainty.Independent(0.003, 0.003, 0.003))
		p := winding.Pairs{quantity.Ohm(y[0]), quantity.Ohm(y[1]), quantity.Ohm(y[2])}
		got := winding.NaturalSpread(p, 0.01)
		for i := range want {
			for j := range want {
				assert.InEpsilon(t, want[i][j], got[i][j], 1e-5, "%v %d %d", c, i, j)
			}
		}
	}
	open := quantity.Ohm(math.Inf(1))
	assert.InEpsilon(t, 0.02/math.Sqrt2, winding.NaturalSpread(winding.Pairs{open, 2, open}, 0.01).U(1), 1e-9)
	assert.Zero(t, winding.NaturalSpread(winding.Pairs{open, open, open}, 0.01).U(0))
}

func TestOnlyStarAndDeltaHaveThreePairs(t *testing.T) {
	assert.PanicsWithValue(t, "winding: a pair of coils has no three lead pairs",
		func() { winding.Two.Pairs(winding.Phases{}) })
	assert.Panics(t, func() { _, _, _ = winding.Single.Solve(winding.Pairs{1, 1, 1}, uncertainty.Certain(3)) })
	assert.Panics(t, func() { winding.Single.DecisionLimit(0.01) })
}
