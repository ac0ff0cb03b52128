package winding_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"coilbook/engine/quantity"
	"coilbook/engine/winding"
)

func factor(r winding.InsulationRule, t quantity.Celsius) float64 {
	k, _ := r.Factor(t)
	return k
}

func minimum(r winding.InsulationRule, t quantity.Celsius) quantity.Ohm {
	m, _ := r.Minimum(t)
	return m
}

// By hand: 5 MΩ at 40 °C doubles twice down to 20 °C.
func TestHalving(t *testing.T) {
	assert.InEpsilon(t, 20e6, float64(minimum(winding.Halving, 20)), 1e-12)
	assert.InEpsilon(t, 5e6, float64(minimum(winding.Halving, 40)), 1e-12)
	assert.InEpsilon(t, 1.25e6, float64(minimum(winding.Halving, 60)), 1e-12)
	for at := quantity.Celsius(-10); at < 90; at += 7 {
		assert.InEpsilon(t, 2*factor(winding.Halving, at), factor(winding.Halving, at+10), 1e-12)
	}
}

// By hand: 1245·(1/293 - 1/313) = 0.27151 and 4230·(1/313 - 1/333) = 0.81167.
func TestThermosetting(t *testing.T) {
	assert.InDelta(t, math.Exp(-0.27151), factor(winding.Thermosetting, 20), 1e-5)
	assert.InDelta(t, math.Exp(0.81167), factor(winding.Thermosetting, 60), 1e-4)
	assert.InDelta(t, 1, factor(winding.Thermosetting, 40), 1e-12)
	assert.InDelta(t, 1, factor(winding.Thermosetting, 40.001), 1e-4, "both parts meet")
}

func TestTheRulesDisagreeThreefoldWhenCold(t *testing.T) {
	assert.InDelta(t, 3, float64(minimum(winding.Halving, 20)/minimum(winding.Thermosetting, 20)), 0.06)
}

func TestRulesSayWhereTheyHold(t *testing.T) {
	for at, want := range map[quantity.Celsius]bool{9: false, 10: true, 85: true, 86: false} {
		_, ok := winding.Thermosetting.Minimum(at)
		assert.Equal(t, want, ok, "%v °C", at)
		_, ok = winding.Halving.Minimum(at)
		assert.True(t, ok)
	}
}

func TestMinimumFallsWithTemperature(t *testing.T) {
	for _, r := range []winding.InsulationRule{winding.Halving, winding.Thermosetting} {
		for at := quantity.Celsius(10); at < 85; at += 5 {
			assert.Greater(t, minimum(r, at), minimum(r, at+5))
		}
	}
}

func TestWhatAnOpenLineProves(t *testing.T) {
	at20 := minimum(winding.Halving, 20)
	assert.Equal(t, winding.ProvesNothing, winding.OpenLineProves(2e6, at20))
	assert.Equal(t, winding.ProvesNothing, winding.OpenLineProves(19.99e6, at20), "a range just short of it")
	assert.Equal(t, winding.ProvesNoDefect, winding.OpenLineProves(20e6, at20))
	assert.Equal(t, winding.ProvesNoDefect, winding.OpenLineProves(200e6, at20))
	assert.Equal(t, winding.ProvesNoDefect, winding.OpenLineProves(2e6, minimum(winding.Halving, 60)),
		"hot, less is enough")
}

func TestWhatANumberProves(t *testing.T) {
	for r, want := range map[quantity.Ohm]winding.Proof{
		0.4e6: winding.ProvesFailure, 16.7e6: winding.ProvesFailure, 16.8e6: winding.ProvesNothing,
		20e6: winding.ProvesNothing, 23.2e6: winding.ProvesNothing, 23.3e6: winding.ProvesNoDefect,
	} {
		assert.Equal(t, want, winding.InsulationProves(r, 2e6, 20e6), "%v Ω, told at 1.645·2 MΩ", r)
	}
}

// A multimeter can fail insulation and never pass it: there is no third proof.
func TestNothingProvesThatInsulationIsGood(t *testing.T) {
	for full := quantity.Ohm(2e3); full <= 2e12; full *= 10 {
		assert.NotEqual(t, winding.ProvesFailure, winding.OpenLineProves(full, 20e6))
	}
	assert.Equal(t, "no defect at this voltage", winding.ProvesNoDefect.String())
	assert.Panics(t, func() { _ = (winding.ProvesNoDefect + 1).String() })
}
