package winding_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/quantity"
	"coilbook/engine/winding"
)

type fault = winding.Fault

var allConnections = []winding.Connection{winding.Star, winding.Delta, winding.Single, winding.SingleGrounded,
	winding.Two, winding.TwoGrounded}

// alike is a winding whose phases have one ohm each.
func alike(c winding.Connection, faults ...fault) *winding.Circuit {
	return winding.Assemble(c, []quantity.Ohm{1, 1, 1}[:c.Phases()], faults...)
}

func cores(c *winding.Circuit) [3]quantity.Ohm {
	return [3]quantity.Ohm{c.ToCore(0), c.ToCore(1), c.ToCore(2)}
}

// The textbook sums of equal phases in series and side by side, by hand.
func TestSignaturesByHand(t *testing.T) {
	const k, third = 0.2, 2.0 / 3
	star, delta := winding.Star, winding.Delta
	for _, c := range []struct {
		of    winding.Connection
		fault fault
		pairs winding.Pairs
	}{
		{star, fault{}, winding.Pairs{2, 2, 2}},
		{star, fault{Kind: winding.PhaseOpen}, winding.Pairs{openLine, 2, openLine}},
		{star, fault{Kind: winding.LeadOpen, At: 2}, winding.Pairs{2, openLine, openLine}},
		{star, fault{Kind: winding.TurnsShorted, Share: k}, winding.Pairs{2 - k, 2, 2 - k}},
		{star, fault{Kind: winding.PhaseShorted}, winding.Pairs{1, 2, 1}},
		{star, fault{Kind: winding.Bridged, To: 1}, winding.Pairs{0, 1.5, 1.5}},
		{star, fault{Kind: winding.PoorJoint, At: 1, Share: 0.5}, winding.Pairs{3, 3, 2}},
		{delta, fault{}, winding.Pairs{third, third, third}},
		{delta, fault{Kind: winding.PhaseOpen}, winding.Pairs{2, 1, 1}},
		{delta, fault{Kind: winding.LeadOpen, At: 2}, winding.Pairs{third, openLine, openLine}},
		{delta, fault{Kind: winding.TurnsShorted, Share: k},
			winding.Pairs{2 * (1 - k) / (3 - k), (2 - k) / (3 - k), (2 - k) / (3 - k)}},
		{delta, fault{Kind: winding.PhaseShorted}, winding.Pairs{0, 0.5, 0.5}},
		{delta, fault{Kind: winding.Bridged, To: 1}, winding.Pairs{0, 0.5, 0.5}},
		{delta, fault{Kind: winding.PoorJoint, At: 1, Share: 0.5}, winding.Pairs{third + 1, third + 1, third}},
	} {
		assertNear(t, c.pairs, alike(c.of, c.fault).Pairs(), 1e-12, "%v, %v", c.of, c.fault.Kind)
	}
}

func TestSignaturesToTheCoreByHand(t *testing.T) {
	const x = 0.3
	star, delta := winding.Star, winding.Delta
	for _, c := range []struct {
		of    winding.Connection
		fault fault
		cores [3]quantity.Ohm
	}{
		{star, fault{}, [3]quantity.Ohm{openLine, openLine, openLine}},
		{star, fault{Kind: winding.LeadToCore}, [3]quantity.Ohm{0, 2, 2}},
		{star, fault{Kind: winding.NeutralToCore}, [3]quantity.Ohm{1, 1, 1}},
		{star, fault{Kind: winding.PhaseToCore, Share: x}, [3]quantity.Ohm{x, 2 - x, 2 - x}},
		{delta, fault{}, [3]quantity.Ohm{openLine, openLine, openLine}},
		{delta, fault{Kind: winding.LeadToCore}, [3]quantity.Ohm{0, 2.0 / 3, 2.0 / 3}},
		{delta, fault{Kind: winding.PhaseToCore, Share: x},
			[3]quantity.Ohm{x * (3 - x) / 3, (1 - x) * (2 + x) / 3, (1 + x) * (2 - x) / 3}},
	} {
		got := alike(c.of, c.fault)
		assertNear(t, c.cores, cores(got), 1e-12, "%v, %v", c.of, c.fault.Kind)
		assertNear(t, alike(c.of).Pairs(), got.Pairs(), 1e-12, "a single touch of the core moves no pair")
	}
}

func TestTwoTouchesOfTheCoreAreABridge(t *testing.T) {
	both := []fault{{Kind: winding.LeadToCore}, {Kind: winding.LeadToCore, At: 1}}
	for c, last := range map[winding.Connection]quantity.Ohm{winding.Star: 1.5, winding.Delta: 0.5} {
		got := alike(c, both...)
		assertNear(t, [3]quantity.Ohm{0, 0, last}, cores(got), 1e-12)
		assertNear(t, alike(c, fault{Kind: winding.Bridged, To: 1}).Pairs(), got.Pairs(), 1e-12)
	}
}

func TestSinglePhase(t *testing.T) {
	const k, x = 0.2, 0.3
	read := func(f fault) quantity.Ohm { return alike(winding.Single, f).Between(0, 1) }
	assert.Equal(t, quantity.Ohm(1), read(fault{}))
	assert.Equal(t, openLine, read(fault{Kind: winding.PhaseOpen}))
	assert.Equal(t, openLine, read(fault{Kind: winding.LeadOpen, At: 1}))
	assert.InDelta(t, 1-k, float64(read(fault{Kind: winding.TurnsShorted, Share: k})), 1e-12)
	assert.Zero(t, read(fault{Kind: winding.Bridged, To: 1}))
	assert.Equal(t, openLine, alike(winding.Single).ToCore(0))
	touching := alike(winding.Single, fault{Kind: winding.PhaseToCore, Share: x})
	assert.InDelta(t, x, float64(touching.ToCore(0)), 1e-12)
	assert.InDelta(t, 1-x, float64(touching.ToCore(1)), 1e-12)
	assert.InDelta(t, 1, float64(touching.Between(0, 1)), 1e-12)
}

// The grounded end is there by design; what is wrong shows from the one lead.
func TestSinglePhaseWithGroundedEnd(t *testing.T) {
	read := func(f fault) quantity.Ohm { return alike(winding.SingleGrounded, f).ToCore(0) }
	assert.Equal(t, quantity.Ohm(1), read(fault{}))
	assert.Equal(t, openLine, read(fault{Kind: winding.PhaseOpen}))
	assert.Equal(t, openLine, read(fault{Kind: winding.LeadOpen}))
	assert.Zero(t, read(fault{Kind: winding.LeadToCore}))
	touching := read(fault{Kind: winding.PhaseToCore, Share: 0.3})
	assert.InDelta(t, 0.3, float64(touching), 1e-12)
	assert.InDelta(t, float64(touching), float64(read(fault{Kind: winding.TurnsShorted, Share: 0.7})), 1e-12,
		"turns past the touch are as good as shorted")
}

func TestTwoPhase(t *testing.T) {
	sound := alike(winding.Two)
	assert.Equal(t, quantity.Ohm(1), sound.Between(0, 1))
	assert.Equal(t, quantity.Ohm(1), sound.Between(2, 3))
	assert.Equal(t, openLine, sound.Between(1, 2), "nothing in common")
	assert.Equal(t, openLine, sound.ToCore(3))

	open := alike(winding.Two, fault{Kind: winding.PhaseOpen, At: 1})
	assert.Equal(t, quantity.Ohm(1), open.Between(0, 1))
	assert.Equal(t, openLine, open.Between(2, 3))

	bridged := alike(winding.Two, fault{Kind: winding.Bridged, At: 1, To: 2})
	assert.Equal(t, quantity.Ohm(1), bridged.Between(2, 3), "one bridge between phases moves neither")
	assert.InDelta(t, 2, float64(bridged.Between(0, 3)), 1e-12)

	joint := alike(winding.Two, fault{Kind: winding.PoorJoint, At: 3, Share: 0.5})
	assert.InDelta(t, 2, float64(joint.Between(2, 3)), 1e-12)
}

func TestTwoPhaseWithGroundedEnds(t *testing.T) {
	sound := alike(winding.TwoGrounded)
	assert.Equal(t, quantity.Ohm(1), sound.ToCore(0))
	assert.InDelta(t, 2, float64(sound.Between(0, 1)), 1e-12, "through the core")
	open := alike(winding.TwoGrounded, fault{Kind: winding.PhaseOpen})
	assert.Equal(t, openLine, open.Between(0, 1))
	assert.Equal(t, quantity.Ohm(1), open.ToCore(1))
	bridged := alike(winding.TwoGrounded, fault{Kind: winding.Bridged, To: 1})
	assert.InDelta(t, 0.5, float64(bridged.ToCore(0)), 1e-12)
}

// The closed forms of star and delta know nothing of the network.
func TestNetworkAgreesWithClosedForms(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 4))
	for range 300 {
		for _, c := range bothConnections {
			phases := somePhases(random)
			assertNear(t, c.Pairs(phases), winding.Assemble(c, phases[:]).Pairs(), 1e-12)
		}
	}
}

func TestAssembleRefusesWhatHasNoPlace(t *testing.T) {
	for _, f := range []fault{{Kind: winding.NeutralToCore}, {Kind: winding.PhaseOpen, At: 3}, {Kind: winding.LeadOpen, At: -1},
		{Kind: winding.Bridged, To: 3}, {Kind: winding.TurnsShorted, Share: 1.1}, {Kind: winding.TurnsShorted, Share: -0.1},
		{Kind: winding.PoorJoint, Share: math.NaN()}} {
		assert.Panics(t, func() { alike(winding.Delta, f) }, "%+v", f)
	}
	assert.PanicsWithValue(t, "winding: a delta has no 1 phases", func() { winding.Assemble(winding.Delta, []quantity.Ohm{1}) })
	assert.PanicsWithValue(t, "winding: a single coil has no lead 2", func() { alike(winding.Single).ToCore(2) })
	assert.Panics(t, func() { alike(winding.Single).Pairs() })
}

func TestAssembleLeavesItsArgumentsAlone(t *testing.T) {
	phases := []quantity.Ohm{1, 2, 3}
	winding.Assemble(winding.Star, phases, fault{Kind: winding.PhaseShorted})
	require.Equal(t, []quantity.Ohm{1, 2, 3}, phases)
}
