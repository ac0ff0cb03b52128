package winding_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"coilbook/engine/winding"
)

// The definition: 4/0 is 0.46 in and gauge 36 is 0.005 in, both exactly.
func TestGaugeEnds(t *testing.T) {
	assert.InDelta(t, 460, winding.Gauge(-3).Diameter().Thousandths(), 1e-9)
	assert.InDelta(t, 5, winding.Gauge(36).Diameter().Thousandths(), 1e-9)
}

// Each gauge is thinner by the 39th root of 92, hence higher in resistance by
// its square: three gauges double it, ten make ten of it, both within 1.5 %.
func TestGaugeSteps(t *testing.T) {
	for g := winding.Gauge(-3); g <= 46; g++ {
		step := float64(g.Diameter() / (g + 1).Diameter())
		assert.InEpsilon(t, math.Pow(92, 1.0/39), step, 1e-12)
		assert.InEpsilon(t, 2, float64((g+3).OhmPerMetre()/g.OhmPerMetre()), 0.015)
		assert.InEpsilon(t, 10, float64((g+10).OhmPerMetre()/g.OhmPerMetre()), 0.02)
	}
}

// A wire of 1 mm² has 1/58 Ω per metre; gauge 17 has 1.0378 mm² (π/4·1.1495²).
func TestOhmPerMetre(t *testing.T) {
	assert.InEpsilon(t, 1/58.0/1.0378, float64(winding.Gauge(17).OhmPerMetre()), 1e-4)
	assert.InEpsilon(t, 0.3048*1000*float64(winding.Gauge(17).OhmPerMetre()), winding.Gauge(17).OhmPer1000Feet(), 1e-12)
}

// The doc says how far tables of the other convention are off.
func TestRoundedDiametersMakeUpToThreePercent(t *testing.T) {
	thousandths := winding.Gauge(40).Diameter().Thousandths()
	ratio := math.Pow(thousandths/(math.Round(thousandths*10)/10), 2)
	assert.InDelta(t, 0.029, ratio-1, 0.001)
}

func TestLengthUndoesOhmPerMetre(t *testing.T) {
	for _, g := range []winding.Gauge{14, 22, 36, 44} {
		length := g.Length(144.7)
		assert.InEpsilon(t, 144.7, float64(length)*float64(g.OhmPerMetre()), 1e-12)
	}
	assert.Zero(t, winding.Gauge(30).Length(0))
	assert.Greater(t, winding.Gauge(20).Length(1), winding.Gauge(30).Length(1))
}
