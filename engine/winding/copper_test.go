package winding_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"coilbook/engine/quantity"
	"coilbook/engine/winding"
)

// By hand: 0.62·254.5/266.5.
func TestToReference(t *testing.T) {
	assert.InDelta(t, 0.592083, float64(winding.ToReference(0.62, 32)), 1e-6)
	assert.Equal(t, quantity.Ohm(120), winding.ToReference(120, 20))
}

func TestThereAndBackAgain(t *testing.T) {
	for at := quantity.Celsius(-40); at <= 180; at += 20 {
		assert.InEpsilon(t, 144.7, float64(winding.At(winding.ToReference(144.7, at), at)), 1e-12)
	}
}

func TestWarmCopperHasMoreResistance(t *testing.T) {
	for at := quantity.Celsius(-40); at < 180; at += 20 {
		assert.Greater(t, winding.At(1, at+20), winding.At(1, at))
	}
	assert.InDelta(t, 0, float64(winding.At(1, -234.5)), 1e-12)
}

// The two customary constants must not decide anything.
func TestChoiceOfConstantDoesNotMatter(t *testing.T) {
	assert.InEpsilon(t, winding.Material(235).Ratio(20, 100), winding.Copper.Ratio(20, 100), 0.0005)
	assert.NotEqual(t, winding.Material(235).Ratio(20, 100), winding.Copper.Ratio(20, 100))
}

func TestCoefficientIsTheSlopeOfTheRatio(t *testing.T) {
	assert.InDelta(t, winding.Copper.Ratio(20, 21)-1, winding.Copper.Coefficient(20), 1e-12)
	assert.Less(t, winding.Copper.Coefficient(80), winding.Copper.Coefficient(20))
}

func TestWarmedFindsTheTemperatureAgain(t *testing.T) {
	cold, hot := quantity.Celsius(12), quantity.Celsius(97)
	r1, r2 := winding.At(0.31, cold), winding.At(0.31, hot)
	assert.InDelta(t, float64(hot), float64(winding.Copper.Warmed(r1, cold, r2)), 1e-9)
	assert.InDelta(t, 72, winding.Copper.Rise(r1, cold, r2, 25), 1e-9)
	assert.InDelta(t, float64(cold), float64(winding.Copper.Warmed(r1, cold, r1)), 1e-9)
}

// Compared with moving the temperature itself by one standard uncertainty.
func TestRelativeDoubt(t *testing.T) {
	const at, half = 32, 10
	u := quantity.Celsius(half / math.Sqrt(3))
	moved := float64(winding.ToReference(1, at-u)-winding.ToReference(1, at+u)) / 2
	assert.InEpsilon(t, moved/float64(winding.ToReference(1, at)), winding.RelativeDoubt(at, half), 1e-3)

	assert.Zero(t, winding.RelativeDoubt(at, 0))
	assert.InEpsilon(t, 2*winding.RelativeDoubt(at, 5), winding.RelativeDoubt(at, -10), 1e-12)
	assert.InDelta(t, 0.0227, winding.RelativeDoubt(20, 10), 5e-5, "by hand: 10/√3/254.5")
}
