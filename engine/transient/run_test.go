package transient_test

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/transient"
)

func TestNodesByName(t *testing.T) {
	var c transient.Circuit
	assert.Equal(t, transient.Ground, c.Node("0"))
	a := c.Node("a")
	assert.Equal(t, a, c.Node("a"))
	one, two := c.Node(""), c.Node("")
	assert.NotEqual(t, one, two)
	assert.Len(t, c.Nodes(), 4)
	assert.Equal(t, []string{"0", "a"}, c.Nodes()[:2])
}

func TestWhatIsWrongIsNamed(t *testing.T) {
	sine := transient.Sine{Volts: 1, Hertz: 50}
	cases := map[string]func(c *transient.Circuit, a transient.Node){
		`the resistor from "a" to "0" (branch 0) has 0 Ω`: func(c *transient.Circuit, a transient.Node) { c.Resistor(a, 0, 0) },
		"has NaN Ω":                   func(c *transient.Circuit, a transient.Node) { c.Resistor(a, 0, math.NaN()) },
		"has -1 F":                    func(c *transient.Circuit, a transient.Node) { c.Capacitor(a, 0, -1, 0) },
		"starts at +Inf V":            func(c *transient.Circuit, a transient.Node) { c.Capacitor(a, 0, 1, math.Inf(1)) },
		"has -1 Ω and 0 H":            func(c *transient.Circuit, a transient.Node) { c.Winding(a, 0, sine, -1, 0) },
		"has no source":               func(c *transient.Circuit, a transient.Node) { c.Winding(a, 0, nil, 1, 0) },
		"an emf of NaN V":             func(c *transient.Circuit, a transient.Node) { c.Supply(a, 0, transient.Constant(math.NaN()), 0) },
		"a pulse without width":       func(c *transient.Circuit, a transient.Node) { c.Supply(a, 0, transient.Pulse{Volts: 1}, 0) },
		"a sine whose figures":        func(c *transient.Circuit, a transient.Node) { c.Supply(a, 0, transient.Sine{Hertz: math.Inf(1)}, 0) },
		"has a coupling of 1":         func(c *transient.Circuit, a transient.Node) { c.Coupled(a, 0, a, 0, 1, 1, 1, 1, 1) },
		"has 0 H":                     func(c *transient.Circuit, a transient.Node) { c.Coupled(a, 0, a, 0, 1, 0, 1, 1, 0.5) },
		"a knee of -1 V":              func(c *transient.Circuit, a transient.Node) { c.Diode(a, 0, transient.Junction{Volts: -1}) },
		"hangs on a node":             func(c *transient.Circuit, a transient.Node) { c.Resistor(a, 7, 1) },
		"65 diodes, thyristors and s": manyDiodes,
	}
	for want, put := range cases {
		var c transient.Circuit
		put(&c, c.Node("a"))
		_, err := c.Start(1e-4)
		assert.ErrorContains(t, err, want)
		_, err = c.AtRest(0)
		assert.ErrorContains(t, err, want)
	}
	var c transient.Circuit
	for _, step := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		_, err := c.Start(step)
		assert.ErrorContains(t, err, "step")
	}
	_, err := c.AtRest(math.NaN())
	assert.Error(t, err)
}

func manyDiodes(c *transient.Circuit, a transient.Node) {
	for range 65 {
		c.Diode(a, transient.Ground, transient.Junction{})
	}
}

func TestEmptyCircuitRuns(t *testing.T) {
	var c transient.Circuit
	c.Resistor(c.Node("a"), c.Node("b"), math.Inf(1))
	r := start(t, &c, 1e-3)
	require.NoError(t, r.Advance(1, nil))
	assert.Zero(t, r.State().Volts(1))
	assert.Zero(t, r.State().Amps(0))
}

// Steps are shown without a gap, and the last ends where it was asked to.
func TestAdvanceEndsWhereItWasAsked(t *testing.T) {
	b := star(machines["A"], 1500, transient.Junction{Volts: 0.8, Ohms: 0.01}, "")
	r := start(t, &b.Circuit, 1e-4)
	at := 0.0
	for _, until := range []float64{1e-5, 1.3e-4, 1.31e-4, 5e-3, 5e-3, 0.0123456} {
		require.NoError(t, r.Advance(until, func(s *transient.State) {
			require.Positive(t, s.Dt())
			at += s.Dt()
			require.InDelta(t, at, s.Time(), 1e-12)
		}))
		require.Equal(t, until, r.State().Time())
	}
	assert.ErrorContains(t, r.Advance(0.01, nil), "cannot go on")
	assert.ErrorContains(t, r.Advance(math.NaN(), nil), "cannot go on")
}

// Stops on the way are for the eye only.
func TestStopsChangeNothing(t *testing.T) {
	at := func(stops int) float64 {
		b := star(machines["B"], 1000, transient.Junction{Volts: 0.8, Ohms: 0.01}, "diode_open")
		r := start(t, &b.Circuit, 1e-4)
		for i := 1; i <= stops; i++ {
			require.NoError(t, r.Advance(0.0507*float64(i)/float64(stops), nil))
		}
		return r.State().Amps(b.phases[0])
	}
	assert.InDelta(t, at(1), at(997), 1e-9)
}

func TestRefineMakesStepsFinerForATime(t *testing.T) {
	var c transient.Circuit
	a := c.Node("a")
	c.Winding(a, transient.Ground, transient.Sine{Volts: 10, Hertz: 50}, 1, 1e-3)
	c.Resistor(a, transient.Ground, 10)
	r := start(t, &c, 1e-3)
	longest, shortest, asked := 0.0, 1.0, false
	require.NoError(t, r.Advance(0.02, func(s *transient.State) {
		if s.Time() > 0.0099 && !asked {
			asked = true
			s.Refine(0.9e-4, 5e-3)
		}
		if s.Time() > 0.0121 && s.Time() < 0.0148 {
			longest = max(longest, s.Dt())
		}
		if s.Time() > 0.0172 && s.Time() < 0.0195 {
			shortest = min(shortest, s.Dt())
		}
	}))
	assert.LessOrEqual(t, longest, 0.9e-4)
	assert.InDelta(t, 1e-3, shortest, 1e-9)
	r.State().Refine(math.NaN(), 1)
	r.State().Refine(1e-300, 1e-3)
	require.NoError(t, r.Advance(0.0201, nil))
}

func TestSwitchFollowsItsGate(t *testing.T) {
	var c transient.Circuit
	a, b := c.Node("a"), c.Node("b")
	c.Supply(a, transient.Ground, transient.Constant(12), 1)
	gated := c.Switch(a, b, 2, func(s *transient.State) bool { return s.Time() > 1e-3 })
	always := c.Switch(b, transient.Ground, 3, nil)
	r := start(t, &c, 1e-4)
	require.NoError(t, r.Advance(0.9e-3, nil))
	assert.InDelta(t, 0, r.State().Amps(always), 1e-7)
	assert.False(t, r.State().Conducts(gated))
	require.NoError(t, r.Advance(2e-3, nil))
	assert.InDelta(t, 2, r.State().Amps(always), 1e-6)
	assert.InDelta(t, 2, r.State().Amps(gated), 1e-6)
	assert.True(t, r.State().Conducts(gated))
}

// A gate that contradicts itself swings once a step.
func TestGateThatContradictsItselfStaysCheap(t *testing.T) {
	var c transient.Circuit
	a := c.Node("a")
	c.Winding(a, transient.Ground, transient.Constant(12), 1, 1e-3)
	c.Switch(a, transient.Ground, 1, func(s *transient.State) bool { return s.Volts(a) > 8 })
	c.Resistor(a, transient.Ground, 100)
	r := start(t, &c, 1e-4)
	steps := 0
	require.NoError(t, r.Advance(0.1, func(*transient.State) { steps++ }))
	assert.Less(t, steps, 5000)
}

func TestNothingIsAllocatedUnderWay(t *testing.T) {
	c, _ := wholeMachine()
	r := start(t, c, 1./300/64)
	require.NoError(t, r.Advance(0.2, nil))
	until := 0.2
	each := func(*transient.State) {}
	assert.Zero(t, testing.AllocsPerRun(20, func() {
		until += 1e-3
		if err := r.Advance(until, each); err != nil {
			t.Fatal(err)
		}
	}))
}

func TestMean(t *testing.T) {
	var m transient.Mean
	m.Begin(-1)
	m.Add(1, 2)
	m.Add(1, 2)
	assert.InDelta(t, 0.5, m.Mean(), 1e-15)
	assert.InDelta(t, 0.75, m.AbsMean(), 1e-15)
	assert.InDelta(t, math.Sqrt((2./3+2)/4), m.RMS(), 1e-15)
	assert.Equal(t, []float64{1, -1, 4}, []float64{m.Max(), m.Min(), m.Time()})

	var sine transient.Mean
	sine.Begin(0)
	for i := 1; i <= 640; i++ {
		sine.Add(math.Sin(2*math.Pi*float64(i)/640), 1)
	}
	assert.InDelta(t, 2/math.Pi, sine.AbsMean(), 1e-4)
	assert.InDelta(t, math.Sqrt(0.5), sine.RMS(), 1e-4)
}

// The line has the drop of the equation on average, and its slope.
func TestFittedJunction(t *testing.T) {
	for _, m := range []transient.SpiceModel{nearIdeal, silicon, small} {
		const amps, parts = 20, 100000
		j := transient.FitJunction(m.IS, m.N, m.RS, amps)
		off, moment, volts := 0.0, 0.0, 0.0
		for k := range parts {
			i := amps * (float64(k) + 0.5) / parts
			v := m.N*0.0258649*math.Log1p(i/m.IS) + m.RS*i
			off += (v - j.Volts - j.Ohms*i) / parts
			moment += i * (v - j.Volts - j.Ohms*i) / parts
			volts += v / parts
		}
		assert.InDelta(t, 0, off/volts, 1e-4)
		assert.InDelta(t, 0, moment/volts/amps, 1e-4)
	}
}

func TestNetlistRefusesWhatItCannotSay(t *testing.T) {
	write := func(put func(c *transient.Circuit, a transient.Node), run transient.SpiceRun) (string, error) {
		var c transient.Circuit
		put(&c, c.Node("a\nname"))
		var out bytes.Buffer
		err := c.Spice(&out, "two\nlines", run)
		return out.String(), err
	}
	never := func(*transient.State) bool { return false }
	for want, put := range map[string]func(c *transient.Circuit, a transient.Node){
		"thyristor": func(c *transient.Circuit, a transient.Node) { c.Thyristor(a, 0, transient.Junction{}, never) },
		"a gate":    func(c *transient.Circuit, a transient.Node) { c.Switch(a, 0, 1, never) },
		"a function": func(c *transient.Circuit, a transient.Node) {
			c.Supply(a, 0, transient.Func(math.Sin), 1)
		},
		"no model": func(c *transient.Circuit, a transient.Node) { c.Diode(a, 0, transient.Junction{}) },
		"has 0 F":  func(c *transient.Circuit, a transient.Node) { c.Capacitor(a, 0, 0, 0) },
	} {
		_, err := write(put, transient.SpiceRun{})
		assert.ErrorContains(t, err, want)
	}
	text, err := write(func(c *transient.Circuit, a transient.Node) {
		c.Switch(a, 0, 4, nil)
		c.Coupled(a, 0, a, 0, 1, 1e-3, 2, 2e-3, 0.5)
	}, transient.SpiceRun{Step: 1e-6, Until: 1, Currents: []transient.Branch{0}})
	require.NoError(t, err)
	for _, want := range []string{"* two lines\n", "Vs0 n1 s0 0\nR0 s0 0 4\n", "K2 L1 L2 0.5", ".tran 1e-06 1 0 1e-06 UIC", ".meas tran b0_rms RMS i(Vs0)"} {
		assert.Contains(t, text, want)
	}
	_, err = write(manyDiodes, transient.SpiceRun{Currents: []transient.Branch{99}})
	assert.ErrorContains(t, err, "branch 99")
	assert.Equal(t, 1, strings.Count(text, "two"))
}
