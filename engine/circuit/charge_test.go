package circuit_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/circuit"
)

var all = []circuit.Arrangement{
	circuit.StarBridge, circuit.StarDiodeOpen, circuit.StarDiodeShorted, circuit.StarPhaseOpen,
	circuit.DeltaBridge, circuit.DeltaBranchOpen,
	circuit.FullWave, circuit.HalfWave, circuit.FullWaveDiodeOpen, circuit.FullWaveDiodeShorted,
}

func shorted(a circuit.Arrangement) bool {
	return a == circuit.StarDiodeShorted || a == circuit.FullWaveDiodeShorted
}

// unit is a source of peak 1 and impedance 1, at one radian a second.
func unit(share float64) circuit.Source {
	angle := math.Atan2(share, 1-share)
	return circuit.Source{Peak: 1, Ohms: math.Cos(angle), Henries: math.Sin(angle), Hertz: 1 / (2 * math.Pi)}
}

// machine is twelve poles and 0.02 V/rpm between lines, of a given inductance.
func machine(henries, rpm float64) circuit.Source {
	return circuit.Source{Peak: 0.02 * rpm * math.Sqrt(2./3), Ohms: 0.3, Henries: henries, Hertz: circuit.Frequency(12, rpm)}
}

// The docstring's bounds, on points between those of the tables.
func TestTablesAreWithinTheirBounds(t *testing.T) {
	for _, a := range all {
		relative, absolute, ripple := 0.005, 0.0005, 0.005
		if shorted(a) {
			relative, absolute, ripple = 0.01, 0.003, 0.008
		}
		worst, worstRipple, last := 0.0, 0.0, 9
		if shorted(a) {
			last = 8
		}
		for n := 1; n <= last; n++ {
			share := (float64(n) + 0.23) / 10
			for m := range 9 {
				x := a.CutInRatio() * (float64(m) + 0.43) / 9
				k := circuit.Sink{Volts: x * 0.9, DiodeVolts: x * 0.1 / float64(a.Drops())}
				s := unit(share)
				got := a.Charging(s, k)
				mean, alternating := modelOf(a, s, k).settled(s.Hertz)
				most := s.Peak
				if a == circuit.DeltaBridge {
					most *= math.Sqrt(3)
				}
				worst = math.Max(worst, math.Abs(got.Mean-mean)/math.Max(relative*mean, absolute*most))
				worstRipple = math.Max(worstRipple, math.Abs(got.Ripple-alternating)/math.Max(0.05*alternating, ripple*most))
				assert.InDelta(t, mean, got.Mean, math.Max(relative*mean, absolute*most), "%d: %v %v", a, s, k)
				assert.InDelta(t, alternating, got.Ripple, math.Max(0.05*alternating, ripple*most), "%d ripple: %v %v", a, s, k)
			}
		}
		t.Logf("%d: worst %.2f of the bound, ripple %.2f", a, worst, worstRipple)
	}
}

// The resistance of a diode is counted to the phases, roughly where a phase has not
// always one in series.
func TestDiodeResistance(t *testing.T) {
	for _, a := range all {
		for _, share := range []float64{0.3, 0.6, 0.8} {
			s := unit(share)
			x := 0.4 * a.CutInRatio()
			diode := s.Ohms / 10
			if a == circuit.DeltaBridge {
				diode /= 3
			}
			k := circuit.Sink{Volts: x, DiodeVolts: 0.02 * x, DiodeOhms: diode}
			mean, _ := modelOf(a, s, k).settled(s.Hertz)
			within := 0.01
			if a == circuit.StarDiodeShorted {
				within = 0.035
			}
			assert.InEpsilon(t, mean, a.Charging(s, k).Mean, within, "%d share %v", a, share)
			k.DiodeOhms = 0
			if a != circuit.StarDiodeShorted {
				assert.Greater(t, math.Abs(a.Charging(s, k).Mean/mean-1), 0.005, "%d share %v: it matters", a, share)
			}
		}
	}
}

// At a low sink voltage and some inductance the closed form is near.
func TestExtendedFundamental(t *testing.T) {
	for _, a := range all {
		s, k := unit(0.75), circuit.Sink{Volts: 0.08 * a.CutInRatio(), DiodeVolts: 0.005, DiodeOhms: 0.01}
		switch a {
		case circuit.StarBridge, circuit.DeltaBridge, circuit.StarPhaseOpen, circuit.FullWave:
			assert.InEpsilon(t, a.Charging(s, k).Mean, a.ExtendedFundamental(s, k), 0.015, "%d", a)
			k.Volts = 3
			assert.Zero(t, a.ExtendedFundamental(s, k))
		default:
			assert.True(t, math.IsNaN(a.ExtendedFundamental(s, k)))
		}
	}
}

func TestNoCurrentUpToCutIn(t *testing.T) {
	for _, a := range all {
		for _, share := range []float64{0, 0.3, 0.9, 0.999} {
			s := unit(share)
			drop := 0.01
			reach := s.Peak*a.CutInRatio() - drop*float64(a.Drops())
			for _, above := range []float64{1, 1.0001, 1.5, 100} {
				c := a.Charging(s, circuit.Sink{Volts: reach * above * (1 + 1e-12), DiodeVolts: drop})
				assert.Equal(t, circuit.Current{Fit: circuit.Idle}, c)
			}
			if c := a.Charging(s, circuit.Sink{Volts: reach * 0.9, DiodeVolts: drop}); !shorted(a) || share < 0.5 {
				assert.True(t, c.CutIn && c.Mean > 0, "%d %v", a, share)
			}
		}
	}
}

func TestFallsWithTheSinkVoltage(t *testing.T) {
	for _, a := range all {
		for share := 0.0; share <= 1; share += 0.037 {
			last := math.Inf(1)
			for n := range 400 {
				x := a.CutInRatio() * float64(n) / 400
				got := a.Charging(unit(share), circuit.Sink{Volts: x}).Mean
				require.LessOrEqual(t, got, last*(1+1e-9), "%d share %v at %v", a, share, x)
				last = got
			}
		}
	}
}

// Not so for a diode shorted or a half wave: there the winding's inductance holds
// the more of the current back the faster it turns.
func TestBridgesRiseWithSpeed(t *testing.T) {
	for _, a := range []circuit.Arrangement{circuit.StarBridge, circuit.StarPhaseOpen, circuit.DeltaBridge, circuit.DeltaBranchOpen, circuit.FullWave} {
		for _, henries := range []float64{0.0001, 0.0003, 0.0015, 0.005} {
			last := 0.0
			for rpm := 300.0; rpm < 12000; rpm *= 1.02 {
				got := a.Charging(machine(henries, rpm), circuit.Sink{Volts: 14, DiodeVolts: 0.8}).Mean
				require.GreaterOrEqual(t, got, last*(1-1e-9), "%d %v H at %v", a, henries, rpm)
				last = got
			}
		}
	}
}

func TestFastLimit(t *testing.T) {
	s := machine(0.0015, 1e7)
	most := s.Peak / (2 * math.Pi * s.Hertz * s.Henries)
	for a, factor := range map[circuit.Arrangement]float64{
		circuit.StarBridge:  3 / math.Pi,
		circuit.DeltaBridge: 3 / math.Pi * math.Sqrt(3),
		circuit.FullWave:    2 / math.Pi,
		circuit.HalfWave:    1,
	} {
		assert.InEpsilon(t, factor*most, a.Charging(s, circuit.Sink{Volts: 14}).Mean, 0.003, "%d", a)
	}
}

// Without inductance the currents follow the emf and integrate by hand.
func TestNoInductance(t *testing.T) {
	const ohms, peak = 0.6, 30.0
	for _, x := range []float64{0.05, 0.3, 0.5, 0.8, 0.95} {
		alpha := math.Asin(x)
		full := peak / ohms * (2*math.Cos(alpha) - x*(math.Pi-2*alpha)) / math.Pi
		s := circuit.Source{Peak: peak, Ohms: ohms, Hertz: 100}
		k := circuit.Sink{Volts: peak * x}
		for a, want := range map[circuit.Arrangement]float64{
			circuit.FullWave: full, circuit.HalfWave: full / 2, circuit.FullWaveDiodeOpen: full / 2, circuit.FullWaveDiodeShorted: full / 2,
		} {
			assert.InDelta(t, want, a.Charging(s, k).Mean, math.Max(0.002*want, 0.0005*peak/ohms), "%d at %v", a, x)
		}
		star := circuit.Source{Peak: peak / math.Sqrt(3), Ohms: ohms / 2, Hertz: 100}
		assert.InDelta(t, full, circuit.StarPhaseOpen.Charging(star, k).Mean, math.Max(0.002*full, 0.0005*peak/ohms))
		if x > math.Sqrt(3)/2 { // the pulses do not overlap
			assert.InDelta(t, 3*full, circuit.StarBridge.Charging(star, k).Mean, math.Max(0.005*3*full, 0.0005*peak/ohms))
		}
	}
}

func TestNoResistance(t *testing.T) {
	s := circuit.Source{Peak: 30, Henries: 0.001, Hertz: 200}
	x := 2 * math.Pi * s.Hertz * s.Henries
	for _, volts := range []float64{2, 6, 12} {
		k := circuit.Sink{Volts: volts}
		u := 2 / math.Pi * volts
		assert.InEpsilon(t, 3/math.Pi*math.Sqrt(s.Peak*s.Peak-u*u)/x, circuit.StarBridge.ExtendedFundamental(s, k), 1e-12)
		mean, _ := modelOf(circuit.StarBridge, s, k).settled(s.Hertz)
		assert.InEpsilon(t, mean, circuit.StarBridge.Charging(s, k).Mean, 0.006)
	}
}

func TestDeltaIsItsStar(t *testing.T) {
	for _, rpm := range []float64{500, 800, 1500, 4000} {
		star := machine(0.0003, rpm)
		delta := circuit.Source{Peak: star.Peak * math.Sqrt(3), Ohms: star.Ohms * 3, Henries: star.Henries * 3, Hertz: star.Hertz}
		k := circuit.Sink{Volts: 14, DiodeVolts: 0.8, DiodeOhms: 0.01}
		want, got := circuit.StarBridge.Charging(star, k), circuit.DeltaBridge.Charging(delta, k)
		assert.InDelta(t, want.Mean, got.Mean, 1e-9)
		assert.InDelta(t, want.Ripple, got.Ripple, 1e-6)
		assert.Equal(t, want.Fit, got.Fit)
	}
}

func TestScales(t *testing.T) {
	for _, a := range all {
		s, k := machine(0.0003, 1500), circuit.Sink{Volts: 14, DiodeVolts: 0.8, DiodeOhms: 0.01}
		want := a.Charging(s, k)
		volts := a.Charging(circuit.Source{Peak: 3 * s.Peak, Ohms: s.Ohms, Henries: s.Henries, Hertz: s.Hertz},
			circuit.Sink{Volts: 3 * k.Volts, DiodeVolts: 3 * k.DiodeVolts, DiodeOhms: k.DiodeOhms})
		assert.InEpsilon(t, 3*want.Mean, volts.Mean, 1e-9)
		time := a.Charging(circuit.Source{Peak: s.Peak, Ohms: s.Ohms, Henries: s.Henries / 7, Hertz: 7 * s.Hertz}, k)
		assert.InEpsilon(t, want.Mean, time.Mean, 1e-9)
		ohms := a.Charging(circuit.Source{Peak: s.Peak, Ohms: 5 * s.Ohms, Henries: 5 * s.Henries, Hertz: s.Hertz},
			circuit.Sink{Volts: k.Volts, DiodeVolts: k.DiodeVolts, DiodeOhms: 5 * k.DiodeOhms})
		assert.InEpsilon(t, want.Mean/5, ohms.Mean, 1e-9)
	}
}

// What a fault does to a machine, in words of the field.
func TestFaultsInOrder(t *testing.T) {
	k := circuit.Sink{Volts: 14, DiodeVolts: 0.9}
	slow, fast := machine(0.0015, 1000), machine(0.0015, 6000)
	share := func(a circuit.Arrangement, s circuit.Source) float64 {
		return a.Charging(s, k).Mean / circuit.StarBridge.Charging(s, k).Mean
	}
	assert.Less(t, share(circuit.StarDiodeOpen, slow), 0.75)
	assert.Greater(t, share(circuit.StarDiodeOpen, fast), 1.05, "an open diode gains at speed")
	assert.Less(t, share(circuit.StarPhaseOpen, slow), 0.45)
	assert.Less(t, share(circuit.StarDiodeShorted, slow), 0.35)
	whole, open := circuit.StarBridge.Charging(fast, k), circuit.StarDiodeOpen.Charging(fast, k)
	assert.Greater(t, open.Ripple/open.Mean, 8*whole.Ripple/whole.Mean, "but its ripple shows")
}

func TestExtremesOfTheShortedTables(t *testing.T) {
	s := circuit.Source{Peak: 40, Henries: 0.001, Hertz: 300}
	for _, a := range []circuit.Arrangement{circuit.StarDiodeShorted, circuit.FullWaveDiodeShorted} {
		c := a.Charging(s, circuit.Sink{Volts: 1})
		assert.True(t, c.Fit == circuit.Strained || c.Fit == circuit.Idle)
		c = a.Charging(unit(0.5), circuit.Sink{DiodeVolts: 0.01})
		assert.Equal(t, circuit.Strained, c.Fit)
		assert.Equal(t, circuit.Tabulated, a.Charging(unit(0.5), circuit.Sink{Volts: 0.3, DiodeVolts: 0.01}).Fit)
	}
}

func TestOutside(t *testing.T) {
	good, sink := machine(0.0003, 1500), circuit.Sink{Volts: 14, DiodeVolts: 0.8}
	bad := []float64{math.NaN(), math.Inf(1), -1}
	refuse := func(a circuit.Arrangement, s circuit.Source, k circuit.Sink) {
		assert.Equal(t, circuit.Current{}, a.Charging(s, k), "%v %v", s, k)
		assert.True(t, math.IsNaN(a.ExtendedFundamental(s, k)))
	}
	for _, a := range all {
		for _, v := range bad {
			for n := range 4 {
				s := good
				*[]*float64{&s.Peak, &s.Ohms, &s.Henries, &s.Hertz}[n] = v
				refuse(a, s, sink)
			}
			for n := range 3 {
				k := sink
				*[]*float64{&k.Volts, &k.DiodeVolts, &k.DiodeOhms}[n] = v
				refuse(a, good, k)
			}
		}
		refuse(a, circuit.Source{Peak: 10, Hertz: 50}, sink)
		refuse(a, circuit.Source{Ohms: 1, Hertz: 50}, sink)
	}
	for _, a := range []circuit.Arrangement{-1, circuit.Arrangement(len(all))} {
		refuse(a, good, sink)
		assert.True(t, math.IsNaN(a.CutInRatio()))
		assert.Zero(t, a.Drops())
	}
}

func TestChargingAllocatesNothing(t *testing.T) {
	s, k := machine(0.0003, 1500), circuit.Sink{Volts: 14, DiodeVolts: 0.8}
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		for _, a := range all {
			a.Charging(s, k)
		}
	}))
}

func BenchmarkCharging(b *testing.B) {
	s, k := machine(0.0003, 1500), circuit.Sink{Volts: 14, DiodeVolts: 0.8, DiodeOhms: 0.01}
	b.Run("table", func(b *testing.B) {
		for n := range b.N {
			s.Hertz = 100 + float64(n%200)
			circuit.StarBridge.Charging(s, k)
		}
	})
	b.Run("shorted table", func(b *testing.B) {
		for range b.N {
			circuit.StarDiodeShorted.Charging(s, k)
		}
	})
	b.Run("integration", func(b *testing.B) {
		for range b.N {
			modelOf(circuit.StarBridge, s, k).settled(s.Hertz)
		}
	})
}
