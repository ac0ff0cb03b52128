package winding_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"coilbook/engine/winding"
)

// lowered is by which part a short lowers the reading of its own pair.
func lowered(c winding.Connection, share float64) float64 {
	sound, shorted := alike(c), alike(c, fault{Kind: winding.TurnsShorted, Share: share})
	return 1 - float64(shorted.Between(0, 1)/sound.Between(0, 1))
}

func TestSharePerDropIsTheSlopeOfTheSignature(t *testing.T) {
	for _, share := range []float64{1e-6, 0.05, 0.5, 1} {
		assert.InDelta(t, share, winding.Star.SharePerDrop()*lowered(winding.Star, share), 1e-12, "exact for a star")
	}
	assert.InEpsilon(t, 1e-5, winding.Delta.SharePerDrop()*lowered(winding.Delta, 1e-5), 1e-4)
	for _, share := range []float64{0.05, 0.3, 0.9} {
		assert.Greater(t, winding.Delta.SharePerDrop()*lowered(winding.Delta, share), share, "on the safe side")
	}
}

func TestLimitsGrowWithTheDoubt(t *testing.T) {
	for _, c := range bothConnections {
		assert.Zero(t, c.DetectionLimit(0))
		assert.InEpsilon(t, 2*c.DecisionLimit(0.004), c.DecisionLimit(0.008), 1e-12)
		assert.InEpsilon(t, 2*c.DecisionLimit(0.004), c.DetectionLimit(0.004), 1e-12)
	}
	assert.Greater(t, winding.Star.DetectionLimit(0.29), 1.0, "no short is found with a tenth of an ohm on 0.6 Ω")
}

// What the limits promise, with a meter of that doubt: one false alarm in
// twenty, half of the shorts at the decision limit, 19 of 20 at the detection
// limit. The seed is fixed; 20000 draws leave 0.4 points or less.
func TestLimitsKeepTheirPromise(t *testing.T) {
	const u, draws = 0.004, 20000
	random := rand.New(rand.NewPCG(12, 12))
	for _, c := range bothConnections {
		alarms := func(share float64) float64 {
			n, drop := 0, lowered(c, share)
			for range draws {
				if c.SharePerDrop()*(drop+u*random.NormFloat64()) > c.DecisionLimit(u) {
					n++
				}
			}
			return float64(n) / draws
		}
		assert.InDelta(t, 0.05, alarms(0), 0.006)
		assert.InDelta(t, 0.5, alarms(c.DecisionLimit(u)), 0.012)
		assert.InDelta(t, 0.95, alarms(c.DetectionLimit(u)), 0.006)
	}
}
