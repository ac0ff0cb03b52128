package circuit_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/circuit"
)

func TestFrequencyAndSpeed(t *testing.T) {
	assert.Equal(t, 300.0, circuit.Frequency(12, 3000))
	assert.Equal(t, 10.0, circuit.Speed(12, 1))
	assert.True(t, math.IsNaN(circuit.Speed(0, 100)))
}

func TestEMFGoesWithSpeed(t *testing.T) {
	assert.InDelta(t, 15.195, circuit.EMF(300, 60, 0.95, 0.0002), 0.0005)
	assert.InEpsilon(t, 3*circuit.EMF(100, 60, 0.95, 0.0002), circuit.EMF(300, 60, 0.95, 0.0002), 1e-14)
}

// The mean of the rectified sinusoid, added up.
func TestRectifiedMeans(t *testing.T) {
	const steps = 6000
	three, full := 0.0, 0.0
	for n := range steps {
		angle := (float64(n) + 0.5) * 2 * math.Pi / steps
		full += math.Abs(math.Sin(angle)) / steps
		high, low := -2.0, 2.0
		for k := range 3 {
			v := math.Sin(angle + float64(k)*2*math.Pi/3)
			high, low = math.Max(high, v), math.Min(low, v)
		}
		three += (high - low) / steps
	}
	assert.InEpsilon(t, full*math.Sqrt2, circuit.FullWaveMean.Of(1), 1e-6)
	assert.InEpsilon(t, full*math.Sqrt2/2, circuit.HalfWaveMean.Of(1), 1e-6)
	assert.InEpsilon(t, three/math.Sqrt(1.5), circuit.ThreePhaseMean.Of(1), 1e-6)
}

func TestKneeTouchesTheDiode(t *testing.T) {
	d := circuit.Diode{Saturation: 1e-8, Emission: 1.6, Ohms: 0.012}
	assert.InDelta(t, 0.98, d.Volts(10), 0.02)
	for _, amps := range []float64{0.1, 1, 10, 60} {
		volts, ohms := d.Knee(amps)
		assert.InEpsilon(t, d.Volts(amps), volts+ohms*amps, 1e-12)
		slope := (d.Volts(amps*1.0001) - d.Volts(amps*0.9999)) / (amps * 0.0002)
		assert.InEpsilon(t, slope, ohms, 1e-5)
	}
}

// filled integrates the same circuit in small steps.
func filled(e circuit.Exciter, farads, volts float64, cycles int) float64 {
	const steps = 40000
	h := 1 / e.Hertz / steps
	amps := 0.0
	for n := range cycles * steps {
		emf := e.Peak * math.Sin((float64(n)+0.5)*2*math.Pi/steps)
		if amps <= 0 && emf-volts-e.DiodeVolts <= 0 {
			amps = 0
			continue
		}
		amps += h / e.Henries * (emf - volts - e.DiodeVolts - e.Ohms*amps)
		amps = math.Max(amps, 0)
		volts += h * amps / farads
	}
	return volts
}

func TestExciterFills(t *testing.T) {
	for _, e := range []circuit.Exciter{
		{Peak: 250, Ohms: 500, Henries: 0.1, Hertz: 200, DiodeVolts: 0.6},
		{Peak: 250, Ohms: 632.4555320336759, Henries: 0.1, Hertz: 200, DiodeVolts: 0.6}, // two equal rates
		{Peak: 150, Ohms: 50, Henries: 0.3, Hertz: 300},
		{Peak: 120, Ohms: 2000, Henries: 0.05, Hertz: 80, DiodeVolts: 1},
	} {
		for _, cycles := range []int{1, 2, 5} {
			assert.InEpsilon(t, filled(e, 1e-6, 0, cycles), e.Fills(1e-6, 0, cycles), 0.001, "%v, %d", e, cycles)
		}
	}
}

func TestFillingRises(t *testing.T) {
	e := circuit.Exciter{Peak: 250, Ohms: 500, Hertz: 200, DiodeVolts: 0.6}
	last := 0.0
	for cycles := range 60 {
		v := e.Fills(1e-6, 0, cycles)
		require.GreaterOrEqual(t, v, last)
		require.LessOrEqual(t, v, 249.4+1e-9)
		last = v
	}
	assert.InDelta(t, 249.4, last, 0.3)
	assert.Equal(t, 260.0, e.Fills(1e-6, 260, 5), "above the peak nothing flows")
	assert.Greater(t, e.Fills(1e-6, -100, 1), 0.0)
	assert.Equal(t, 0.045, circuit.Energy(1e-6, 300))
}

func TestNoExciter(t *testing.T) {
	good := circuit.Exciter{Peak: 250, Ohms: 500, Henries: 0.1, Hertz: 200, DiodeVolts: 0.6}
	for _, v := range []float64{-1, math.NaN(), math.Inf(1)} {
		for n := range 5 {
			e := good
			*[]*float64{&e.Peak, &e.Ohms, &e.Henries, &e.Hertz, &e.DiodeVolts}[n] = v
			assert.True(t, math.IsNaN(e.Fills(1e-6, 0, 1)), "%v", e)
		}
		assert.True(t, math.IsNaN(good.Fills(v, 0, 1)))
	}
	assert.True(t, math.IsNaN(good.Fills(0, 0, 1)))
	assert.True(t, math.IsNaN(good.Fills(1e-6, math.NaN(), 1)))
}

func TestContinuous(t *testing.T) {
	last := 0.0
	for ratio := 0.01; ratio < 1000; ratio *= 1.5 {
		x := circuit.Continuous(ratio)
		require.Greater(t, x, last)
		last = x
	}
	assert.InDelta(t, 1.293, circuit.Continuous(1e9), 0.001)
	assert.InDelta(t, 1.293, circuit.Continuous(math.Inf(1)), 0.001)
	assert.Zero(t, circuit.Continuous(0))
	assert.True(t, math.IsNaN(circuit.Continuous(-1)))
}
