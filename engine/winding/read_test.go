package winding_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/quantity"
	"coilbook/engine/uncertainty"
	"coilbook/engine/winding"
)

// found is the fit of a connection with a fault, at any share.
func found(fits winding.Fits, c winding.Connection, f fault) (winding.Fit, bool) {
	for _, fit := range fits {
		if fit.Connection == c && fit.Fault.Kind == f.Kind && fit.Fault.At == f.At {
			return fit, true
		}
	}
	return winding.Fit{}, false
}

func faultsThatPairsShow() []fault {
	var out []fault
	for i := range 3 {
		out = append(out, fault{Kind: winding.PhaseOpen, At: i}, fault{Kind: winding.LeadOpen, At: i},
			fault{Kind: winding.PhaseShorted, At: i}, fault{Kind: winding.Bridged, At: i, To: (i + 1) % 3},
			fault{Kind: winding.TurnsShorted, At: i, Share: 0.07}, fault{Kind: winding.TurnsShorted, At: i, Share: 0.8},
			fault{Kind: winding.PoorJoint, At: i, Share: 0.1}, fault{Kind: winding.PoorJoint, At: i, Share: 0.9})
	}
	return append(out, fault{})
}

// Readings without any error give the fault back, its share and its phases.
func TestReadFindsWhatIsThere(t *testing.T) {
	for _, c := range bothConnections {
		for _, f := range faultsThatPairsShow() {
			p := winding.Assemble(c, []quantity.Ohm{0.3, 0.3, 0.3}, f).Pairs()
			fit, ok := found(winding.Read(p, uncertainty.Independent(0.001, 0.001, 0.001)), c, f)
			require.True(t, ok, "%v %+v", c, f)
			require.InDelta(t, 0.3, float64(fit.Phase), 1e-5, "%v %+v", c, f)
			require.InDelta(t, f.Share, fit.Fault.Share, 1e-5, "%v %+v", c, f)
			require.InDelta(t, 0, fit.Misfit, 1e-6)
		}
	}
}

// What is read with doubt is still found, in 95 of 100 cases, and the share
// scatters as its doubt says. The seed is fixed; 1000 draws leave 0.7 points.
func TestReadFindsItWithinTheDoubt(t *testing.T) {
	const draws, u, gain = 1000, 0.002, 0.02
	random := rand.New(rand.NewPCG(10, 10))
	for _, c := range bothConnections {
		for _, f := range []fault{{}, {Kind: winding.PhaseShorted, At: 1}, {Kind: winding.Bridged, To: 1},
			{Kind: winding.TurnsShorted, At: 2, Share: 0.3}, {Kind: winding.PoorJoint, Share: 0.4}} {
			seen, squares := 0, 0.0
			for range draws {
				p := winding.Assemble(c, []quantity.Ohm{0.3, 0.3, 0.3}, f).Pairs()
				cov := uncertainty.Independent(u, u, u).Plus(uncertainty.Common(gain, float64(p[0]), float64(p[1]), float64(p[2])))
				g := quantity.Ohm(1 + gain*random.NormFloat64())
				for i := range p {
					p[i] = p[i]*g + quantity.Ohm(u*random.NormFloat64())
				}
				fit, ok := found(winding.Read(p, cov), c, f)
				if ok {
					seen++
				}
				if f.Share > 0 && ok {
					z := (fit.Fault.Share - f.Share) / fit.ShareStd
					squares += z * z
				}
			}
			assert.InDelta(t, 0.95, float64(seen)/draws, 0.022, "%v %+v", c, f)
			if f.Share > 0 {
				assert.InDelta(t, 1, squares/float64(seen), 0.15, "%v %+v", c, f)
			}
		}
	}
}

// Three ohm readings of a sound winding fit a star as well as a delta, always.
func TestSoundReadingsNeverTellTheConnection(t *testing.T) {
	random := rand.New(rand.NewPCG(11, 11))
	for range 300 {
		r := quantity.Ohm(math.Pow(10, 4*random.Float64()-2))
		noise := func() quantity.Ohm { return r * quantity.Ohm(1+0.02*random.NormFloat64()) }
		u := 0.02 * float64(r)
		fits := winding.Read(winding.Pairs{noise(), noise(), noise()}, uncertainty.Independent(u, u, u))
		star, isStar := found(fits, winding.Star, fault{})
		delta, isDelta := found(fits, winding.Delta, fault{})
		require.Equal(t, isStar, isDelta)
		require.Equal(t, isStar, fits.Sound())
		require.InDelta(t, star.Misfit, delta.Misfit, 1e-9)
		require.InDelta(t, 3*float64(star.Phase), float64(delta.Phase), 1e-9*float64(r))
		_, told := fits.Connection()
		require.False(t, isStar && told)
	}
}

// These are the same three numbers, and stay so however good the meter.
func TestFaultsThatReadTheSame(t *testing.T) {
	exact := uncertainty.Certain(3)
	for _, c := range []struct {
		pairs winding.Pairs
		star  []fault
		delta []fault
	}{
		{winding.Pairs{1, 2, 1}, []fault{{Kind: winding.PhaseShorted}}, []fault{{Kind: winding.PhaseOpen, At: 1}}},
		{winding.Pairs{0, 1, 1}, []fault{{Kind: winding.Bridged}},
			[]fault{{Kind: winding.Bridged}, {Kind: winding.PhaseShorted}}},
		{winding.Pairs{openLine, 2, openLine}, []fault{{Kind: winding.PhaseOpen}, {Kind: winding.LeadOpen}},
			[]fault{{Kind: winding.LeadOpen}}},
		{winding.Pairs{0.9, 1, 1}, []fault{{Kind: winding.PoorJoint, At: 2}},
			[]fault{{Kind: winding.PoorJoint, At: 2}, {Kind: winding.TurnsShorted}}},
	} {
		fits := winding.Read(c.pairs, exact)
		assert.Len(t, fits, len(c.star)+len(c.delta), "%v: %+v", c.pairs, fits)
		for _, f := range c.star {
			_, ok := found(fits, winding.Star, f)
			assert.True(t, ok, "%v: star, %v", c.pairs, f.Kind)
		}
		for _, f := range c.delta {
			_, ok := found(fits, winding.Delta, f)
			assert.True(t, ok, "%v: delta, %v", c.pairs, f.Kind)
		}
		_, told := fits.Connection()
		assert.False(t, told)
		assert.False(t, fits.Sound())
	}
}

// Two low pairs and a high one are no single fault of a delta, as long as its
// branches are alike.
func TestShortedTurnsOfAStarTellTheConnection(t *testing.T) {
	fits := winding.Read(winding.Pairs{1.8, 2, 1.8}, uncertainty.Independent(0.01, 0.01, 0.01))
	c, told := fits.Connection()
	assert.True(t, told)
	assert.Equal(t, winding.Star, c)
	require.Len(t, fits, 1)
	assert.InDelta(t, 0.2, fits[0].Fault.Share, 1e-5)
	assert.Equal(t, 1, fits[0].Free)

	_, told = winding.Fits(nil).Connection()
	assert.False(t, told)
}

func TestReadFindsNothingInWhatNoWindingReads(t *testing.T) {
	missing := quantity.Ohm(math.NaN())
	for _, p := range []winding.Pairs{{openLine, 2, 2}, {1, 3, 1}, {1, 2, 3.5}, {-1, 2, 2}, {missing, 1, 1}, {-2, -2, -2},
		{openLine, openLine, openLine}, {openLine, -2, openLine}, {0, 0, 0}} {
		assert.Empty(t, winding.Read(p, uncertainty.Independent(0.01, 0.01, 0.01)), "%v", p)
	}
}

// A coarse meter must leave the question open, a fine one settle it.
func TestTheDoubtDecidesWhatFits(t *testing.T) {
	p := winding.Pairs{1.9, 2, 1.9}
	coarse := winding.Read(p, uncertainty.Independent(0.1, 0.1, 0.1))
	assert.True(t, coarse.Sound())
	assert.Equal(t, winding.NoFault, coarse[0].Fault.Kind, "the least to choose comes first")
	assert.False(t, winding.Read(p, uncertainty.Independent(0.01, 0.01, 0.01)).Sound())
	assert.True(t, winding.Read(p, uncertainty.Independent(0.01, 0.01, 0.01).Plus(winding.NaturalSpread(p, 0.05))).Sound(),
		"phases that may differ by as much")
}

// Derived: a sound star of phase r reads 2r three times over, so that r has half
// the doubt of their mean; a shared gain adds in full.
func TestDoubtOfThePhase(t *testing.T) {
	p := winding.Pairs{2, 2, 2}
	fits := winding.Read(p, uncertainty.Independent(0.01, 0.01, 0.01).Plus(uncertainty.Common(0.03, 2, 2, 2)))
	fit, _ := found(fits, winding.Star, fault{})
	assert.InEpsilon(t, math.Hypot(0.03, 0.01/2/math.Sqrt(3)), float64(fit.PhaseStd), 1e-9)
	assert.Equal(t, 2, fit.Free)
}

// Derived: a star whose pairs are p, q, p has the share k = 2 - 2p/q, with p the
// mean of two readings.
func TestDoubtOfTheShare(t *testing.T) {
	const p, q, u = 1.8, 2.0, 0.01
	fits := winding.Read(winding.Pairs{p, q, p}, uncertainty.Independent(u, u, u))
	fit, ok := found(fits, winding.Star, fault{Kind: winding.TurnsShorted})
	require.True(t, ok)
	assert.InEpsilon(t, 2*math.Hypot(u/math.Sqrt2/q, p*u/(q*q)), fit.ShareStd, 1e-4)
	assert.InEpsilon(t, u/2, float64(fit.PhaseStd), 1e-4, "the phase is half of BC alone")
}

func TestReadAndNewNamesOfTheLeads(t *testing.T) {
	for _, p := range []winding.Pairs{{1.9, 2, 1.92}, {2, 1, 1.01}, {0.01, 1, 1}, {openLine, 2, openLine}, {2, 2, 2}} {
		cov := uncertainty.Independent(0.01, 0.02, 0.03)
		fits := winding.Read(p, cov)
		moved := winding.Read(winding.Pairs{p[2], p[0], p[1]}, permuted(cov, 2, 0, 1))
		require.Len(t, moved, len(fits))
		for _, fit := range fits {
			f := fit.Fault
			if f.Kind != winding.NoFault {
				f.At = (f.At + 1) % 3
			}
			there, ok := found(moved, fit.Connection, f)
			require.True(t, ok, "%v %+v", p, f)
			require.InDelta(t, fit.Misfit, there.Misfit, 1e-6)
			require.InDelta(t, f.Share, there.Fault.Share, 1e-5)
		}
	}
}

func TestReadScales(t *testing.T) {
	a := winding.Read(winding.Pairs{1.9, 2, 1.92}, uncertainty.Independent(0.01, 0.01, 0.01))
	b := winding.Read(winding.Pairs{1.9e-3, 2e-3, 1.92e-3}, uncertainty.Independent(1e-5, 1e-5, 1e-5))
	require.Len(t, b, len(a))
	for i := range a {
		assert.InDelta(t, a[i].Misfit, b[i].Misfit, 1e-6)
		assert.InEpsilon(t, float64(a[i].Phase)/1000, float64(b[i].Phase), 1e-6)
	}
}

func BenchmarkRead(b *testing.B) {
	cov := uncertainty.Independent(0.01, 0.01, 0.01)
	for b.Loop() {
		winding.Read(winding.Pairs{1.9, 2, 1.92}, cov)
	}
}
