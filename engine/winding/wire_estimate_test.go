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

func wire(t *testing.T) func(winding.Wire, error) winding.Wire {
	return func(w winding.Wire, err error) winding.Wire {
		t.Helper()
		require.NoError(t, err)
		return w
	}
}

// 58 m of 1 mm² have one ohm, by the definition of the copper standard, and
// weigh 58 cm³ · 8.89 g/cm³.
func TestWireByHand(t *testing.T) {
	const ofOneSquare = 1.1283792e-3 // 2/√π mm
	coil := winding.Coil{Resistance: 1, InHand: 1}
	for what, w := range map[string]winding.Wire{
		"turns":    wire(t)(coil.FromTurns(580, 0, 0.1, 0)),
		"weight":   wire(t)(coil.FromWeight(0.058*8.89, 0)),
		"diameter": wire(t)(coil.FromDiameter(ofOneSquare, 0)),
	} {
		assert.InEpsilon(t, 58, float64(w.Length), 1e-6, what)
		assert.InEpsilon(t, ofOneSquare, float64(w.Diameter), 1e-6, what)
		assert.Equal(t, winding.Gauge(17), w.Gauge, what)
		assert.True(t, w.HasGauge, what)
		assert.Zero(t, float64(w.LengthStd+w.DiameterStd)+w.GaugeStd, what)
	}
}

// Wire is made up and wound; each way must find it again.
func TestWireIsFoundAgain(t *testing.T) {
	random := rand.New(rand.NewPCG(41, 41))
	for range 1000 {
		g := winding.Gauge(random.IntN(60) - 3)
		length, hands := 1+100*random.Float64(), 1+random.IntN(8)
		d := float64(g.Diameter())
		coil := winding.Coil{Resistance: quantity.Ohm(length * float64(g.OhmPerMetre()) / float64(hands)), InHand: hands}
		weight := winding.CopperDensity * length * float64(hands) * math.Pi / 4 * d * d
		turns := 2 + 998*random.Float64()
		for what, w := range map[string]winding.Wire{
			"turns":    wire(t)(coil.FromTurns(turns, 0, quantity.Metre(length/turns), 0)),
			"weight":   wire(t)(coil.FromWeight(winding.Kilogram(weight), 0)),
			"diameter": wire(t)(coil.FromDiameter(g.Diameter(), 0)),
			"gauge":    wire(t)(coil.FromGauge(g)),
		} {
			require.InEpsilon(t, length, float64(w.Length), 1e-9, what)
			require.InEpsilon(t, d, float64(w.Diameter), 1e-9, what)
			require.Equal(t, g, w.Gauge, what)
		}
	}
}

// One wire in hand takes the length that Gauge.Length does, and n wires n times
// as much, each.
func TestWiresInHand(t *testing.T) {
	for n := 1; n < 5; n++ {
		w := wire(t)(winding.Coil{Resistance: 0.3, InHand: n}.FromGauge(18))
		assert.InEpsilon(t, float64(n)*float64(winding.Gauge(18).Length(0.3)), float64(w.Length), 1e-12)
		one := wire(t)(winding.Coil{Resistance: 0.3, InHand: 1}.FromTurns(50, 0, 0.1, 0))
		each := wire(t)(winding.Coil{Resistance: 0.3, InHand: n}.FromTurns(50, 0, 0.1, 0))
		assert.InEpsilon(t, float64(one.Diameter)/math.Sqrt(float64(n)), float64(each.Diameter), 1e-12, "all share one section")
	}
}

// Derived: relative doubts of a product of powers add as squares, each times its
// power. A gauge number is 39/ln 92 times the relative doubt of the diameter.
func TestDoubtOfWire(t *testing.T) {
	const r, a, b = 0.03, 0.05, 0.04
	coil := winding.Coil{Resistance: 2, ResistanceStd: 2 * r, InHand: 1}
	for _, c := range []struct {
		what             string
		w                winding.Wire
		length, diameter float64
	}{
		{"turns", wire(t)(coil.FromTurns(100, 100*a, 0.2, 0.2*b)), math.Hypot(a, b), math.Hypot(math.Hypot(a, b), r) / 2},
		{"weight", wire(t)(coil.FromWeight(0.1, 0.1*a)), math.Hypot(a, r) / 2, math.Hypot(a, r) / 4},
		{"diameter", wire(t)(coil.FromDiameter(1e-3, 1e-3*a)), math.Hypot(2*a, r), a},
		{"gauge", wire(t)(coil.FromGauge(20)), math.Hypot(2*0.01/math.Sqrt(3), r), 0.01 / math.Sqrt(3)},
	} {
		assert.InEpsilon(t, c.length, float64(c.w.LengthStd/c.w.Length), 1e-5, c.what)
		assert.InEpsilon(t, c.diameter, float64(c.w.DiameterStd/c.w.Diameter), 1e-5, c.what)
		assert.InEpsilon(t, 39/math.Log(92)*c.diameter, c.w.GaugeStd, 1e-5, c.what)
	}
}

func TestNearestGauge(t *testing.T) {
	for g := winding.Gauge(-3); g <= 56; g++ {
		for _, off := range []float64{0.945, 1, 1.055} { // half a number is 5.97 %
			got, ok := winding.NearestGauge(g.Diameter() * quantity.Metre(off))
			require.True(t, ok)
			require.Equal(t, g, got)
		}
	}
	for _, d := range []quantity.Metre{0, -1, 1, 1e-9, quantity.Metre(math.NaN()), quantity.Metre(math.Inf(1)),
		winding.Gauge(-3).Diameter() * 1.07, winding.Gauge(56).Diameter() * 0.93} {
		_, ok := winding.NearestGauge(d)
		assert.False(t, ok, "%v", d)
	}
	w := wire(t)(winding.Coil{Resistance: 1e-3, InHand: 1}.FromDiameter(0.02, 0))
	assert.False(t, w.HasGauge, "a rod of 20 mm")
}

func TestBadInputToWire(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	good := winding.Coil{Resistance: 1, InHand: 1}
	turns := func(n, nStd float64, turn, turnStd quantity.Metre) error {
		_, err := good.FromTurns(n, nStd, turn, turnStd)
		return err
	}
	weight := func(m, std float64) error {
		_, err := good.FromWeight(winding.Kilogram(m), winding.Kilogram(std))
		return err
	}
	diameter := func(c winding.Coil, d, std float64) error {
		_, err := c.FromDiameter(quantity.Metre(d), quantity.Metre(std))
		return err
	}
	gauge := func(g winding.Gauge) error {
		_, err := good.FromGauge(g)
		return err
	}
	for field, errs := range map[string][]error{
		"turns": {turns(0, 0, 1, 0), turns(nan, 0, 1, 0), turns(1e7, 0, 1, 0), turns(10, -1, 1, 0), turns(10, 4, 1, 0),
			turns(10, nan, 1, 0)},
		"length of a turn": {turns(10, 0, 0, 0), turns(10, 0, 1000, 0), turns(10, 0, 1, 0.4), turns(10, 0, 1, -0.1)},
		"weight":           {weight(0, 0), weight(-1, 0), weight(inf, 0), weight(1, 0.34), weight(1, inf)},
		"diameter":         {diameter(good, 0, 0), diameter(good, 1, 0), diameter(good, 1e-3, 1e-3)},
		"gauge":            {gauge(-4), gauge(57)},
		"resistance": {diameter(winding.Coil{InHand: 1}, 1e-3, 0), diameter(winding.Coil{Resistance: openLine, InHand: 1}, 1e-3, 0),
			diameter(winding.Coil{Resistance: 1, ResistanceStd: 0.4, InHand: 1}, 1e-3, 0)},
		"wires in hand": {diameter(winding.Coil{Resistance: 1}, 1e-3, 0), diameter(winding.Coil{Resistance: 1, InHand: 1001}, 1e-3, 0)},
	} {
		for i, err := range errs {
			var bad *winding.InputError
			require.ErrorAs(t, err, &bad, "%s %d", field, i)
			assert.Equal(t, field, bad.Field, i)
			assert.NotEmpty(t, bad.Reason)
			assert.NotEmpty(t, bad.WayOut)
		}
	}
	assert.EqualError(t, gauge(60), "gauge: is no American wire gauge; give one from -3 (which is 4/0) to 56")
	assert.EqualError(t, turns(0, 0, 1, 0), "turns: is not from 1 to 1000000; count the turns")
	assert.EqualError(t, weight(0, 0), "weight: is not from 0.000001 to 1000 kg; weigh the bare copper")
	assert.EqualError(t, weight(1, 0.5), "weight: is known to no better than a third of itself; weigh the bare copper")
}

// FuzzWire: figures are refused by name, or give a wire of finite, positive size
// with finite doubts.
func FuzzWire(f *testing.F) {
	f.Add(0.6, 0.1, 1, 120.0, 1.0, 0.1, 0.01)
	f.Add(1e-6, 3e-7, 1000, 1e6, 3e5, 100.0, 33.0)
	f.Add(1e9, 0.0, 1, 1.0, 0.0, 1e-4, 0.0)
	f.Add(math.NaN(), math.Inf(1), -1, 0.0, -1.0, math.Inf(-1), math.NaN())
	f.Fuzz(func(t *testing.T, r, rStd float64, hands int, first, firstStd, second, secondStd float64) {
		c := winding.Coil{Resistance: quantity.Ohm(r), ResistanceStd: quantity.Ohm(rStd), InHand: hands}
		mustBeAWire(t)(c.FromTurns(first, firstStd, quantity.Metre(second), quantity.Metre(secondStd)))
		mustBeAWire(t)(c.FromWeight(winding.Kilogram(first), winding.Kilogram(firstStd)))
		mustBeAWire(t)(c.FromDiameter(quantity.Metre(second), quantity.Metre(secondStd)))
		mustBeAWire(t)(c.FromGauge(winding.Gauge(hands)))
	})
}

func mustBeAWire(t *testing.T) func(winding.Wire, error) {
	return func(w winding.Wire, err error) {
		t.Helper()
		if err != nil {
			var bad *winding.InputError
			require.ErrorAs(t, err, &bad)
			return
		}
		for _, x := range []float64{float64(w.Length), float64(w.Diameter)} {
			require.True(t, x > 0 && !math.IsInf(x, 1), "%+v", w)
		}
		for _, u := range []float64{float64(w.LengthStd), float64(w.DiameterStd), w.GaugeStd} {
			require.True(t, u >= 0 && !math.IsInf(u, 1), "%+v", w)
		}
	}
}
