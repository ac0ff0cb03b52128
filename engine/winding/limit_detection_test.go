package winding_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/winding"
)

var balanced = []winding.Connection{winding.Star, winding.Delta, winding.Two, winding.TwoGrounded}

// alikeReadings are those that a balance compares, of phases of one ohm with a
// short in the first.
func alikeReadings(c winding.Connection, share float64) []float64 {
	w := alike(c, fault{Kind: winding.TurnsShorted, Share: share})
	switch c {
	case winding.Two:
		return []float64{float64(w.Between(0, 1)), float64(w.Between(2, 3))}
	case winding.TwoGrounded:
		return []float64{float64(w.ToCore(0)), float64(w.ToCore(1))}
	}
	p := w.Pairs()
	return []float64{float64(p[0]), float64(p[1]), float64(p[2])}
}

// furthestOff is the largest deviation from the mean, as a fraction of it.
func furthestOff(readings []float64) float64 {
	mean, off := 0.0, 0.0
	for _, r := range readings {
		mean += r / float64(len(readings))
	}
	for _, r := range readings {
		off = max(off, math.Abs(r/mean-1))
	}
	return off
}

// The network knows nothing of the closed form: a short of just the limit puts
// the furthest reading off by just the limit.
func TestBalanceLimitsUndoTheNetwork(t *testing.T) {
	for _, c := range balanced {
		for _, share := range []float64{1e-6, 0.05, 0.3, 0.7, 0.999} {
			off := furthestOff(alikeReadings(c, share))
			decision, detection := c.BalanceLimits(off, 0)
			require.InEpsilon(t, share, decision, 1e-6, "%v %v", c, share)
			require.InEpsilon(t, share, detection, 1e-6, "%v %v", c, share)
		}
	}
}

// By hand, at 10 %: 0.3/1.1, 0.3/1.2 and 0.2/1.1.
func TestBalanceLimitsByHand(t *testing.T) {
	for c, want := range map[winding.Connection]float64{winding.Star: 0.2727, winding.Delta: 0.25, winding.Two: 0.1818} {
		decision, _ := c.BalanceLimits(0.1, 0)
		assert.InDelta(t, want, decision, 1e-4, c)
	}
	decision, detection := winding.Star.BalanceLimits(0.1, 0.05)
	assert.InDelta(t, 3*0.18225/1.18225, decision, 1e-9)
	assert.InDelta(t, 3*0.2645/1.2645, detection, 1e-9)
}

func TestBalanceLimitsGrow(t *testing.T) {
	for _, c := range balanced {
		last := -1.0
		for _, u := range []float64{0, 1e-9, 0.001, 0.01, 0.1, 1, 1e6, math.Inf(1)} {
			decision, detection := c.BalanceLimits(0.1, u)
			require.Greater(t, decision, last, "%v %v", c, u)
			require.GreaterOrEqual(t, detection, decision, "%v %v", c, u)
			last = decision - 1e-9
		}
		decision, detection := c.BalanceLimits(0, 0)
		assert.Zero(t, decision+detection, "without limit and doubt, all is seen")
		_, detection = c.BalanceLimits(0.1, 0.5)
		assert.Greater(t, detection, 1.0, "%v: readings this doubtful show no short", c)
	}
	assert.PanicsWithValue(t, "winding: a single coil has nothing to be compared with",
		func() { winding.Single.BalanceLimits(0.1, 0.01) })
}

// What the limits promise of readings with independent normal errors. The seed
// is fixed; 20000 draws leave 0.4 points or less. The rule is followed as it
// says: the furthest, with u as it was told, against the limit.
func TestBalanceLimitsKeepTheirPromise(t *testing.T) {
	const draws = 20000
	random := rand.New(rand.NewPCG(31, 31))
	for _, c := range balanced {
		for _, limit := range []float64{0.05, 0.1} {
			u := limit / 8
			found := func(share float64) float64 {
				n, readings := 0, alikeReadings(c, share)
				own := ownDoubt(readings, u)
				for range draws {
					if furthestOff(withNoise(readings, own, random))-1.645*u > limit {
						n++
					}
				}
				return float64(n) / draws
			}
			decision, detection := c.BalanceLimits(limit, u)
			assert.InDelta(t, 0.5, found(decision), 0.03, "%v %v", c, limit)
			assert.Greater(t, found(detection), 0.95-0.006, "%v %v", c, limit)
			assert.Less(t, found(detection*0.9), 0.93, "%v %v: the limit is not drawn too wide", c, limit)
			assert.Less(t, found(0), 0.001, "%v %v: a sound winding is let be", c, limit)
		}
	}
}

// ownDoubt is that of each reading when its deviation from the mean of all has
// the relative doubt u.
func ownDoubt(readings []float64, u float64) float64 {
	n, sum := float64(len(readings)), 0.0
	for _, r := range readings {
		sum += r
	}
	return u * sum / n * math.Sqrt(n/(n-1))
}

func withNoise(readings []float64, own float64, random *rand.Rand) []float64 {
	out := append([]float64(nil), readings...)
	for i := range out {
		out[i] += own * random.NormFloat64()
	}
	return out
}

// Against a limit of nothing, chance puts readings off too: more is found, not
// less.
func TestBalanceLimitsAreOnTheSafeSide(t *testing.T) {
	const draws, u = 20000, 0.01
	random := rand.New(rand.NewPCG(32, 32))
	for _, c := range balanced {
		_, detection := c.BalanceLimits(0, u)
		readings, n := alikeReadings(c, detection), 0
		for range draws {
			if furthestOff(withNoise(readings, ownDoubt(readings, u), random)) > 1.645*u {
				n++
			}
		}
		assert.Greater(t, float64(n)/draws, 0.95-0.006, c)
	}
}
