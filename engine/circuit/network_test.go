package circuit_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/circuit"
)

var open = math.Inf(1)

func TestSeriesAndParallel(t *testing.T) {
	var n circuit.Network
	n.Join(0, 1, 2)
	n.Join(1, 2, 3)
	assert.InEpsilon(t, 5, n.Between(0, 2), 1e-15)
	n.Join(0, 2, 5)
	assert.InEpsilon(t, 2.5, n.Between(0, 2), 1e-15)
	n.Join(0, 2, open)
	n.Join(0, 2, 1e16)
	assert.InEpsilon(t, 2.5, n.Between(2, 0), 1e-15)
	n.Join(1, 2, 0)
	assert.InEpsilon(t, 1/(1/2.+1/5.), n.Between(0, 2), 1e-15)
	assert.Zero(t, n.Between(1, 2))
	assert.Equal(t, open, n.Between(0, 3))
	assert.Equal(t, open, n.Between(0, circuit.Nodes))
	assert.Zero(t, n.Between(7, 7))
}

func TestStarReadsAsItsDelta(t *testing.T) {
	var star, delta circuit.Network
	for k := range 3 {
		star.Join(k, 3, 0.3)
		delta.Join(k, (k+1)%3, 0.9)
	}
	for k := range 3 {
		assert.InEpsilon(t, 0.6, star.Between(k, (k+1)%3), 1e-14)
		assert.InEpsilon(t, 0.6, delta.Between(k, (k+1)%3), 1e-14)
	}
}

// A cube of twelve equal resistors: 5/6 from corner to far corner, 7/12 along an
// edge, 3/4 across a face.
func TestCube(t *testing.T) {
	var n circuit.Network
	for a := range 8 {
		for bit := 1; bit < 8; bit *= 2 {
			if a&bit == 0 {
				n.Join(a, a|bit, 12)
			}
		}
	}
	assert.InEpsilon(t, 10, n.Between(0, 7), 1e-14)
	assert.InEpsilon(t, 7, n.Between(0, 1), 1e-14)
	assert.InEpsilon(t, 9, n.Between(0, 3), 1e-14)
}

// Sixteen decades between neighbours cost no digit.
func TestResistanceLosesNoDigits(t *testing.T) {
	var n circuit.Network
	n.Join(0, 1, 1e-3)
	n.Join(1, 2, 1e12)
	n.Join(2, 3, 1e-3)
	n.Join(0, 3, 1e-6)
	assert.InEpsilon(t, 1e-6, n.Between(0, 3), 1e-15)
	assert.InEpsilon(t, 1e-3, n.Between(2, 3), 1e-14)
	assert.InEpsilon(t, 0.002001, n.Between(1, 2), 1e-14)
	n.Join(4, 1, 1e12)
	assert.InEpsilon(t, 1e12, n.Between(4, 3), 1e-14)
}

func TestUnusableIsLeftOut(t *testing.T) {
	var n, none circuit.Network
	for _, ohms := range []float64{-1, math.NaN(), math.Inf(-1)} {
		n.Join(0, 1, ohms)
		n.Supply(0, 1, 12, ohms)
	}
	n.Supply(0, 1, 12, 0)
	n.Supply(0, 1, math.NaN(), 1)
	n.Supply(0, 1, open, 1)
	n.Join(-1, 1, 1)
	n.Join(0, circuit.Nodes, 1)
	n.Supply(0, circuit.Nodes, 1, 1)
	n.Supply(3, 3, 1, 1)
	assert.Equal(t, none, n)
	_, ok := n.Volts(-1)
	assert.Equal(t, [circuit.Nodes]bool{}, ok)
}

func TestDividerAndMeter(t *testing.T) {
	var n circuit.Network
	n.Supply(0, 2, 12, 1e6)
	n.Join(0, 2, 2e6)
	volts, ohms := n.Thevenin(0, 2)
	assert.InEpsilon(t, 8, volts, 1e-14)
	assert.InEpsilon(t, 2e6/3, ohms, 1e-14)
	assert.InEpsilon(t, 8/(1+1./15), n.Metered(0, 2, 1e7), 1e-14)
	assert.InEpsilon(t, 8, n.Metered(0, 2, open), 1e-14)
	assert.InEpsilon(t, -8, n.Metered(2, 0, open), 1e-14)
	assert.Zero(t, n.Metered(0, 5, 1e7))
	assert.Zero(t, n.Metered(0, 5, open))
	assert.Zero(t, n.Metered(0, 2, 0))
	with := n
	with.Join(0, 2, 1e7)
	loaded, _ := with.Thevenin(0, 2)
	assert.InEpsilon(t, n.Metered(0, 2, 1e7), loaded, 1e-14)
}

func TestVoltsWithTwoSupplies(t *testing.T) {
	var n circuit.Network
	n.Supply(1, 0, 14, 0.1)
	n.Supply(1, 0, 12, 0.02)
	n.Join(1, 2, 0.5)
	n.Join(2, 0, 1.5)
	n.Join(4, 5, 1) // an island
	n.Supply(4, 5, 9, 1)
	n.Join(6, 2, 0) // another name of node 2
	volts, ok := n.Volts(0)
	want := (14/0.1 + 12/0.02) / (1/0.1 + 1/0.02 + 1/2.)
	assert.InEpsilon(t, want, volts[1], 1e-13)
	assert.InEpsilon(t, want*0.75, volts[2], 1e-13)
	assert.Equal(t, volts[2], volts[6])
	assert.True(t, ok[0] && ok[1] && ok[2] && ok[6])
	assert.False(t, ok[4] || ok[5] || ok[3])
	assert.Zero(t, volts[4])
	volts, ok = n.Volts(5)
	assert.InEpsilon(t, 4.5, volts[4], 1e-14)
	assert.True(t, ok[4])
	assert.False(t, ok[1])
	assert.InEpsilon(t, 4.5, n.Metered(4, 5, open), 1e-14)
	assert.Zero(t, n.Metered(4, 0, open))
}

// A strong battery with a weak leak to the frame: the leak's reading survives.
func TestSmallLeakBesideALargeSupply(t *testing.T) {
	var n circuit.Network
	n.Supply(1, 0, 12, 0.005)
	n.Join(1, 2, 5e6)
	n.Join(2, 0, 5e6)
	n.Join(1, 3, 0.05)
	n.Join(3, 0, 3)
	assert.InEpsilon(t, 6*3.05/3.055/1.25, n.Metered(2, 0, 1e7), 1e-6)
}

// random is a network of n nodes out of a string of bytes, in two numberings.
func random(data []byte, number func(int) int) (n circuit.Network) {
	for len(data) >= 3 {
		a, b := number(int(data[0]%8)), number(int(data[1]%8))
		ohms := math.Pow(10, float64(data[2]%64)/8-3)
		switch {
		case data[2] >= 250:
			n.Join(a, b, 0)
		case data[2] >= 192:
			n.Supply(a, b, float64(data[0])-100, ohms)
		default:
			n.Join(a, b, ohms)
		}
		data = data[3:]
	}
	return n
}

func bytesOf(seed uint32, n int) []byte {
	out := make([]byte, n)
	for k := range out {
		seed = seed*1664525 + 1013904223
		out[k] = byte(seed >> 24)
	}
	return out
}

func TestLawsOfNetworks(t *testing.T) {
	same := func(k int) int { return k }
	other := func(k int) int { return 15 - (k*5)%8 }
	for seed := range uint32(300) {
		data := bytesOf(seed, 45)
		n, relabelled := random(data, same), random(data, other)
		volts, ok := n.Volts(0)
		for a := range 8 {
			for b := range 8 {
				v, r := n.Thevenin(a, b)
				back, same := n.Thevenin(b, a)
				require.InDelta(t, v, -back, 1e-6)
				require.Equal(t, math.IsInf(r, 1), math.IsInf(same, 1))
				if !math.IsInf(r, 1) {
					require.InDelta(t, r, same, 1e-12*r, "reciprocity")
					w, s := relabelled.Thevenin(other(a), other(b))
					require.InDelta(t, r, s, 1e-12*r, "another numbering")
					require.InDelta(t, v, w, 1e-6)
				}
				if ok[a] && ok[b] {
					require.InDelta(t, volts[a]-volts[b], v, 1e-6, "both ways of solving")
				}
			}
		}
		more := n
		more.Join(1, 2, 7)
		require.LessOrEqual(t, more.Between(3, 4), n.Between(3, 4)*(1+1e-12), "a resistor more never raises another reading")
	}
}

func TestNetworksAllocateNothing(t *testing.T) {
	n := random(bytesOf(1, 45), func(k int) int { return k })
	assert.Zero(t, testing.AllocsPerRun(10, func() {
		n.Metered(0, 5, 1e7)
		n.Volts(0)
	}))
}

func FuzzNetwork(f *testing.F) {
	f.Add(bytesOf(1, 60), 0.0, 1e300)
	f.Add(bytesOf(2, 90), 1e-320, -3.0)
	f.Add([]byte{0, 1, 251, 1, 2, 251, 2, 0, 251}, math.Inf(1), math.NaN())
	f.Fuzz(func(t *testing.T, data []byte, ohms, volts float64) {
		n := random(data, func(k int) int { return k })
		n.Join(0, 9, ohms)
		n.Supply(9, 1, volts, ohms)
		n.Join(9, 3, volts)
		got, _ := n.Volts(2)
		for a := range 10 {
			if math.IsNaN(got[a]) || math.IsInf(got[a], 0) {
				t.Fatalf("%v at %d", got[a], a)
			}
			for b := range 10 {
				v, r := n.Thevenin(a, b)
				if math.IsNaN(v) || math.IsInf(v, 0) || !(r >= 0) || math.IsNaN(n.Metered(a, b, 1e7)) {
					t.Fatalf("%v V behind %v Ω from %d to %d", v, r, a, b)
				}
			}
		}
	})
}
