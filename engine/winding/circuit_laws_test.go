package winding_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"coilbook/engine/quantity"
	"coilbook/engine/winding"
)

// readings are all that a meter can read: each lead to each other and the core.
func readings(c winding.Connection, w *winding.Circuit) []quantity.Ohm {
	var out []quantity.Ohm
	for i := range c.Leads() {
		for j := range i {
			out = append(out, w.Between(i, j))
		}
		out = append(out, w.ToCore(i))
	}
	return out
}

func somePart(c winding.Connection, random *rand.Rand) []quantity.Ohm {
	p := somePhases(random)
	return p[:c.Phases()]
}

// someFault has a place in c.
func someFault(c winding.Connection, random *rand.Rand, kinds ...winding.FaultKind) fault {
	for {
		f := fault{Kind: kinds[random.IntN(len(kinds))], Share: random.Float64(),
			At: random.IntN(c.Phases()), To: random.IntN(c.Leads())}
		if f.Kind != winding.NeutralToCore || c == winding.Star {
			return f
		}
	}
}

var (
	thatInterrupt = []winding.FaultKind{winding.PhaseOpen, winding.LeadOpen, winding.PoorJoint}
	thatConnect   = []winding.FaultKind{winding.TurnsShorted, winding.PhaseShorted, winding.Bridged, winding.LeadToCore,
		winding.NeutralToCore, winding.PhaseToCore}
)

// Taking a way from a current raises no less than nothing, giving it one lowers
// no more: on every reading, of every winding, beside any other fault.
func TestOpensOnlyRaiseAndShortsOnlyLower(t *testing.T) {
	const rounding = 1e-9
	random := rand.New(rand.NewPCG(5, 5))
	for range 3000 {
		c := allConnections[random.IntN(len(allConnections))]
		phases := somePart(c, random)
		first := someFault(c, random, winding.NoFault, winding.Bridged, winding.LeadToCore)
		before := readings(c, winding.Assemble(c, phases, first))
		opened := readings(c, winding.Assemble(c, phases, first, someFault(c, random, thatInterrupt...)))
		shorted := readings(c, winding.Assemble(c, phases, first, someFault(c, random, thatConnect...)))
		for i := range before {
			require.GreaterOrEqual(t, opened[i], before[i]*(1-rounding))
			require.LessOrEqual(t, shorted[i], before[i]*(1+rounding))
		}
	}
}

// No reading is more than the way round by a third point; a negative solution is
// therefore never a winding.
func TestNoWindingContradictsItself(t *testing.T) {
	random := rand.New(rand.NewPCG(6, 6))
	for range 2000 {
		c := bothConnections[random.IntN(2)]
		w := winding.Assemble(c, somePart(c, random), someFault(c, random, append(thatInterrupt, thatConnect...)...))
		p := w.Pairs()
		for i := range p {
			require.LessOrEqual(t, p[i], (p[(i+1)%3]+p[(i+2)%3])*(1+1e-9))
		}
		require.Equal(t, w.Between(0, 2), w.Between(2, 0))
	}
}

// A fault one lead further is the same winding with the leads named anew.
func TestFaultsMoveWithTheNamesOfTheLeads(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 7))
	for range 1000 {
		c := bothConnections[random.IntN(2)]
		p := somePart(c, random)
		f := someFault(c, random, append(thatInterrupt, thatConnect...)...)
		moved := f
		moved.At, moved.To = (f.At+1)%3, (f.To+1)%3
		here := winding.Assemble(c, p, f)
		there := winding.Assemble(c, []quantity.Ohm{p[2], p[0], p[1]}, moved)
		a, b := here.Pairs(), there.Pairs()
		assertNear(t, winding.Pairs{a[2], a[0], a[1]}, b, 1e-9, "%v %+v", c, f)
		toCore := cores(here)
		assertNear(t, [3]quantity.Ohm{toCore[2], toCore[0], toCore[1]}, cores(there), 1e-9, "%v %+v", c, f)
	}
}

func TestReadingsScaleWithThePhases(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 8))
	for range 500 {
		c := allConnections[random.IntN(len(allConnections))]
		phases := somePart(c, random)
		f := someFault(c, random, append(thatInterrupt, thatConnect...)...)
		larger := append([]quantity.Ohm(nil), phases...)
		for i := range larger {
			larger[i] *= 1000
		}
		a, b := readings(c, winding.Assemble(c, phases, f)), readings(c, winding.Assemble(c, larger, f))
		for i := range a {
			a[i] *= 1000
			assertNear(t, [3]quantity.Ohm{a[i]}, [3]quantity.Ohm{b[i]}, 1e-12)
		}
	}
}

// A graded fault begins as none and ends as the whole one.
func TestLimitsOfGradedFaults(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 9))
	for range 300 {
		for _, c := range allConnections {
			p := somePart(c, random)
			at := random.IntN(c.Phases())
			for kind, whole := range map[winding.FaultKind]fault{
				winding.TurnsShorted: {Kind: winding.PhaseShorted, At: at},
				winding.PoorJoint:    {Kind: winding.LeadOpen, At: at},
			} {
				requireClose(t, winding.Assemble(c, p), winding.Assemble(c, p, fault{Kind: kind, At: at, Share: 1e-9}), c)
				requireClose(t, winding.Assemble(c, p, whole), winding.Assemble(c, p, fault{Kind: kind, At: at, Share: 1 - 1e-9}), c)
				require.Equal(t, readings(c, winding.Assemble(c, p)), readings(c, winding.Assemble(c, p, fault{Kind: kind, At: at})))
			}
		}
	}
}

func TestLimitsOfAPhaseToTheCore(t *testing.T) {
	for _, x := range []float64{0, 1e-10} {
		near, far := fault{Kind: winding.PhaseToCore, Share: x}, fault{Kind: winding.PhaseToCore, Share: 1 - x}
		lead := fault{Kind: winding.LeadToCore}
		requireClose(t, alike(winding.Star, lead), alike(winding.Star, near), winding.Star)
		requireClose(t, alike(winding.Delta, lead), alike(winding.Delta, near), winding.Delta)
		requireClose(t, alike(winding.Star, fault{Kind: winding.NeutralToCore}), alike(winding.Star, far), winding.Star)
		lead.At = 1
		requireClose(t, alike(winding.Delta, lead), alike(winding.Delta, far), winding.Delta)
	}
}

// requireClose takes for an open line what is far beyond any phase here.
func requireClose(t *testing.T, want, got *winding.Circuit, c winding.Connection) {
	t.Helper()
	a, b := readings(c, want), readings(c, got)
	for i := range a {
		if math.IsInf(float64(a[i]), 1) {
			require.Greater(t, float64(b[i]), 1e5)
			continue
		}
		require.InDelta(t, float64(a[i]), float64(b[i]), 1e-5)
	}
}
