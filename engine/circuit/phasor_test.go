package circuit_test

import (
	"math"
	"math/cmplx"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/circuit"
)

func near(t *testing.T, want, got complex128, within float64) {
	t.Helper()
	require.LessOrEqual(t, cmplx.Abs(want-got), within, "want %v, got %v", want, got)
}

func turned(peak, degrees float64) complex128 { return cmplx.Rect(peak, degrees*math.Pi/180) }

func TestResistorsOnlyAreTheDCNetwork(t *testing.T) {
	for seed := range uint32(100) {
		data := bytesOf(seed, 45)
		n := random(data, func(k int) int { return k })
		p := circuit.AtFrequency(137)
		for d := data; len(d) >= 3; d = d[3:] {
			a, b, ohms := int(d[0]%8), int(d[1]%8), math.Pow(10, float64(d[2]%64)/8-3)
			switch {
			case d[2] >= 250:
				p.Join(a, b, 0, 0)
			case d[2] >= 192:
				p.Source(a, b, complex(float64(d[0])-100, 0), ohms, 0)
			default:
				p.Join(a, b, ohms, 0)
			}
		}
		volts, reached := n.Volts(0)
		phasors, ok := p.Volts(0)
		require.Equal(t, reached, ok)
		for a := range 8 {
			near(t, complex(volts[a], 0), phasors[a], 1e-6)
			v, r := n.Thevenin(a, 3)
			w, z, ok := p.Thevenin(a, 3)
			require.Equal(t, !math.IsInf(r, 1), ok)
			near(t, complex(v, 0), w, 1e-6)
			if ok {
				near(t, complex(r, 0), z, 1e-12*r)
			}
		}
	}
}

// A star of three phases: √3 between lines, twice the impedance of a phase; with
// one phase turned round two of the readings fall to 1.
func TestStarOfThreePhases(t *testing.T) {
	star := func(first complex128) circuit.Phasors {
		p := circuit.AtFrequency(150)
		p.Source(1, 0, first, 0.3, 0.0003)
		p.Source(2, 0, turned(10, -120), 0.3, 0.0003)
		p.Source(3, 0, turned(10, 120), 0.3, 0.0003)
		return p
	}
	sound := star(10)
	volts, z, ok := sound.Thevenin(1, 2)
	require.True(t, ok)
	assert.InEpsilon(t, 10*math.Sqrt(3), cmplx.Abs(volts), 1e-12)
	near(t, 2*sound.Impedance(0.3, 0.0003), z, 1e-12)
	short, _ := sound.Loaded(1, 2, 0)
	assert.Zero(t, short)
	loaded, _ := sound.Loaded(1, 2, z)
	near(t, volts/2, loaded, 1e-12)
	unloaded, _ := sound.Loaded(1, 2, cmplx.Inf())
	assert.Equal(t, volts, unloaded)

	turnedRound := star(-10)
	for _, lead := range []int{2, 3} {
		volts, _ := turnedRound.Open(1, lead)
		assert.InEpsilon(t, 10, cmplx.Abs(volts), 1e-12)
	}
}

// A shorted part of one phase, without coupling: √(1 + (1-k) + (1-k)²)/√3.
func TestPartOfAPhaseShorted(t *testing.T) {
	for k, want := range map[float64]float64{0.1: 0.9504, 0.2: 0.9018} {
		p := circuit.AtFrequency(150)
		p.Source(4, 0, turned(10*k, 0), 0.3*k, 0.0003*k)
		p.Join(4, 0, 0, 0)
		p.Source(1, 4, turned(10*(1-k), 0), 0.3*(1-k), 0.0003*(1-k))
		p.Source(2, 0, turned(10, -120), 0.3, 0.0003)
		volts, _ := p.Open(1, 2)
		assert.InDelta(t, want, cmplx.Abs(volts)/(10*math.Sqrt(3)), 0.00005)
	}
}

// The voltage of a delta with a branch cut shows nothing until it is loaded.
func TestDeltaWithABranchCut(t *testing.T) {
	delta := func(branches int) circuit.Phasors {
		p := circuit.AtFrequency(150)
		for k := range branches {
			p.Source(k, (k+1)%3, turned(10, -120*float64(k)), 0.9, 0.0009)
		}
		return p
	}
	whole, cut := delta(3), delta(2)
	for k := range 3 {
		a, _ := whole.Open(k, (k+1)%3)
		b, _ := cut.Open(k, (k+1)%3)
		near(t, a, b, 1e-12)
	}
	a, _ := whole.Loaded(2, 0, 2)
	b, _ := cut.Loaded(2, 0, 2)
	assert.Less(t, cmplx.Abs(b), 0.7*cmplx.Abs(a))
}

func TestSuperposition(t *testing.T) {
	build := func(first, second complex128) circuit.Phasors {
		p := circuit.AtFrequency(60)
		p.Source(0, 1, first, 1, 0.01)
		p.Source(2, 3, second, 0, 0.002)
		p.Join(1, 2, 3, 0)
		p.Join(3, 0, 0.5, 0.004)
		p.Join(1, 3, 7, 0.1)
		return p
	}
	a, b, both := build(turned(5, 20), 0), build(0, turned(9, -70)), build(turned(5, 20), turned(9, -70))
	for k := range 3 {
		va, _ := a.Open(k, 3)
		vb, _ := b.Open(k, 3)
		v, _ := both.Open(k, 3)
		near(t, va+vb, v, 1e-12)
		_, za, _ := a.Thevenin(k, 3)
		_, z, _ := both.Thevenin(3, k)
		near(t, za, z, 1e-12)
	}
}

func TestPhasorsWithoutAWay(t *testing.T) {
	p := circuit.AtFrequency(100)
	p.Source(0, 1, 10, 1, 0.01)
	p.Source(2, 3, 10, 1, 0.01)
	p.Join(1, 2, math.Inf(1), 0)
	p.Join(1, 2, 0, math.Inf(1))
	p.Join(1, 2, -1, 0)
	p.Join(1, 2, math.NaN(), 0)
	p.Source(1, 2, 5, 0, 0)
	p.Source(1, 2, cmplx.Inf(), 1, 0)
	p.Join(1, 99, 1, 0)
	volts, z, ok := p.Thevenin(0, 2)
	assert.False(t, ok)
	assert.Zero(t, volts)
	assert.True(t, cmplx.IsInf(z))
	_, ok = p.Loaded(0, 3, 5)
	assert.False(t, ok)
	_, ok = p.Open(0, 99)
	assert.False(t, ok)
	all, reached := p.Volts(1)
	assert.True(t, reached[0] && !reached[2] && !reached[3])
	near(t, 10, all[0], 1e-12)
	assert.Zero(t, all[2])
	p.Join(1, 2, 0, 0)
	v, ok := p.Open(0, 3)
	assert.True(t, ok)
	near(t, 20, v, 1e-12)
	_, none := p.Volts(-1)
	assert.Equal(t, [circuit.Nodes]bool{}, none)
}
