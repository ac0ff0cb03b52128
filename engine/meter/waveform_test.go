package meter_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

func shapes() map[string]meter.Waveform {
	return map[string]meter.Waveform{
		"DC": meter.DC(), "sine": meter.Sine(), "full-rectified": meter.FullRectified(), "half-rectified": meter.HalfRectified(),
		"square": meter.Square(), "triangle": meter.Triangle(), "six-pulse": meter.SixPulse(),
		"unipolar 1": meter.UnipolarPulse(1), "unipolar 0.5": meter.UnipolarPulse(0.5), "unipolar 0.003": meter.UnipolarPulse(0.003),
		"bipolar 0.1": meter.BipolarPulse(0.1), "bipolar 0.004": meter.BipolarPulse(0.004),
		"cut 0": meter.PhaseCut(0), "cut 60": meter.PhaseCut(60), "cut 90": meter.PhaseCut(90), "cut 120": meter.PhaseCut(120), "cut 175": meter.PhaseCut(175),
		"third 1": meter.ThirdHarmonic(1), "third 0.2": meter.ThirdHarmonic(0.2), "third -0.2": meter.ThirdHarmonic(-0.2),
		"third 0.05": meter.ThirdHarmonic(0.05), "third -1/3": meter.ThirdHarmonic(-1.0 / 3), "third 1.5": meter.ThirdHarmonic(1.5),
		"trapezoid 0": meter.Trapezoid(0), "trapezoid 120": meter.Trapezoid(120), "trapezoid 179": meter.Trapezoid(179), "trapezoid 180": meter.Trapezoid(180),
	}
}

// figures lists what an Averages says, so that two can be held together.
func figures(a meter.Averages) []float64 {
	return []float64{float64(a.Peak), float64(a.Mean), float64(a.Rectified), float64(a.RectifiedAC), float64(a.RMSAC)}
}

var figureNames = []string{"peak", "mean", "rectified", "rectified AC", "RMS AC"}

// cornersOf are where the shapes jump or bend, found here by other means than
// the package's own lists: wherever twelfths, duties and firing angles may be.
func cornersOf() []float64 {
	var corners []float64
	for i := 1; i < 24; i++ {
		corners = append(corners, float64(i)/24)
	}
	for _, d := range []float64{0.003, 0.002, 0.05, 175.0 / 360, 0.25 / 360, 0.5 - 0.25/360} {
		corners = append(corners, d, 0.5+d)
	}
	return corners
}

func TestClosedFormsAreTheirIntegrals(t *testing.T) {
	for name, w := range shapes() {
		want := figures(meter.Period(w.At, cornersOf()...).Averages())
		for i, got := range figures(w.Averages()) {
			assert.InDelta(t, want[i], got, 1e-7*want[0], "%s: %s", name, figureNames[i])
		}
	}
}

// A shape that was given without its jumps is only as good as the grid.
func TestAnUnnamedJumpCostsAStep(t *testing.T) {
	w := meter.UnipolarPulse(0.12345)
	got := figures(meter.Period(w.At).Averages())
	for i, want := range figures(w.Averages()) {
		assert.InDelta(t, want, got[i], 1.01/20000, figureNames[i])
	}
	named := meter.Period(func(p float64) quantity.Volt {
		require.True(t, p >= 0 && p <= 1, "asked for phase %v", p)
		return w.At(p)
	}, 0.12345, -3, 7).Averages()
	assert.InDelta(t, 0.12345, float64(named.Mean), 1e-12, "corners outside the period are let be")
}

func TestDistortedSineByIntegration(t *testing.T) {
	w := meter.Period(func(p float64) quantity.Volt {
		return quantity.Volt(3 + 10*math.Sin(2*math.Pi*p) + 2*math.Cos(4*math.Pi*p))
	})
	a := w.Averages()
	assert.InDelta(t, 3, float64(a.Mean), 1e-9)
	assert.InDelta(t, math.Sqrt(52), float64(a.RMSAC), 1e-9, "Parseval: √(100/2 + 4/2)")
	assert.InDelta(t, math.Sqrt(61), float64(a.RMS()), 1e-9)
	assert.InDelta(t, 11, float64(a.Peak), 1e-6, "5 + 10s − 4s² for s from −1 to 1: 11 at the top, −9 below")
}

// The accuracy that Period states, at the edge of what it states it for.
func TestFiveSwingsByIntegration(t *testing.T) {
	const lift = 0.123
	a := meter.Period(func(p float64) quantity.Volt { return quantity.Volt(lift + math.Sin(10*math.Pi*p+0.7)) }).Averages()
	want := []float64{1 + lift, lift, 2 / math.Pi * (math.Sqrt(1-lift*lift) + lift*math.Asin(lift)), 2 / math.Pi, math.Sqrt(0.5)}
	for i, got := range figures(a) {
		assert.InDelta(t, want[i], got, 2e-7, "%s, integrated by hand", figureNames[i])
	}
}

func TestAveragesScaleWithTheVoltage(t *testing.T) {
	for name, w := range shapes() {
		one := figures(w.Averages())
		for _, p := range []float64{0, 0.25, 0.5, 0.75, 1} {
			assert.LessOrEqual(t, math.Abs(float64(w.At(p))), one[0]+1e-9, "%s at %v", name, p)
		}
		for _, k := range []float64{400, 0.25, -3} {
			for i, got := range figures(w.Times(k).Averages()) {
				want := one[i] * math.Abs(k)
				if figureNames[i] == "mean" {
					want = one[i] * k
				}
				assert.InDelta(t, want, got, 1e-9*math.Abs(k), "%s times %v: %s", name, k, figureNames[i])
			}
		}
		assert.InDelta(t, -5*float64(w.At(0.3)), float64(w.Times(5).Reversed().At(0.3)), 1e-12, name)
	}
}

// Inequalities that hold for every voltage.
func TestLawsOfAverages(t *testing.T) {
	for name, w := range shapes() {
		a := w.Averages()
		const rounding = 1e-12
		assert.GreaterOrEqual(t, float64(a.RMS()), float64(a.Rectified)-rounding, "%s: rms ≥ average", name)
		assert.GreaterOrEqual(t, float64(a.RMSAC), float64(a.RectifiedAC)-rounding, name)
		assert.GreaterOrEqual(t, float64(a.Peak), float64(a.RMS())-rounding, name)
		assert.GreaterOrEqual(t, float64(a.Rectified), math.Abs(float64(a.Mean))-rounding, name)
		assert.GreaterOrEqual(t, a.FormFactor(), 1-rounding, name)
		assert.GreaterOrEqual(t, a.Crest(), 1-rounding, name)
		assert.InDelta(t, float64(a.Mean), float64(a.Positive()-w.Reversed().Averages().Positive()), rounding, name)
	}
}

func TestShapesMeetAtTheirEnds(t *testing.T) {
	for name, pair := range map[string][2]meter.Waveform{
		"full duty is DC":                {meter.UnipolarPulse(1), meter.DC()},
		"full duty is a square":          {meter.BipolarPulse(1), meter.Square()},
		"an uncut sine is a sine":        {meter.PhaseCut(0), meter.Sine()},
		"no third harmonic is a sine":    {meter.ThirdHarmonic(0), meter.Sine()},
		"all flat is a square":           {meter.Trapezoid(180), meter.Square()},
		"nothing flat is a triangle":     {meter.Trapezoid(0), meter.Triangle()},
		"nearly full duty is nearly DC":  {meter.UnipolarPulse(1 - 1e-12), meter.DC()},
		"nearly flat is nearly a square": {meter.Trapezoid(180 - 1e-9), meter.Square()},
	} {
		for i, want := range figures(pair[1].Averages()) {
			assert.InDelta(t, want, figures(pair[0].Averages())[i], 2e-6, "%s: %s", name, figureNames[i])
		}
		for _, p := range []float64{0.1, 0.3, 0.6, 0.9} {
			assert.InDelta(t, float64(pair[1].At(p)), float64(pair[0].At(p)), 1e-9, "%s at %v", name, p)
		}
	}
}

func TestNoSuchShape(t *testing.T) {
	for name, w := range map[string]meter.Waveform{
		"zero": {}, "no duty": meter.UnipolarPulse(0), "duty above 1": meter.UnipolarPulse(1.01), "NaN": meter.BipolarPulse(math.NaN()),
		"no bipolar duty": meter.BipolarPulse(0), "never fired": meter.PhaseCut(180), "fired before": meter.PhaseCut(-1),
		"flatter than flat": meter.Trapezoid(181), "less than not flat": meter.Trapezoid(-1), "no share": meter.ThirdHarmonic(math.NaN()),
	} {
		for i, v := range figures(w.Times(2).Averages()) {
			require.True(t, math.IsNaN(v), "%s: %s is %v", name, figureNames[i], v)
		}
		assert.True(t, meter.AverageDC.Shows(w).NotPeak, name)
	}
}
