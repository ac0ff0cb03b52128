package transient_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/transient"
)

func start(t testing.TB, c *transient.Circuit, step float64) *transient.Run {
	r, err := c.Start(step)
	require.NoError(t, err)
	return r
}

func within(t testing.TB, want, got, share float64, more ...any) {
	t.Helper()
	assert.InDelta(t, want, got, share*math.Abs(want)+1e-12, more...)
}

// chargingCurrent is the mean into the sink over ten periods at rest.
func chargingCurrent(t testing.TB, b *bench, steps float64) float64 {
	r := start(t, &b.Circuit, 1/b.hertz/steps)
	require.NoError(t, r.Advance(20/b.hertz, nil))
	var m transient.Mean
	m.Begin(-r.State().Amps(b.sink))
	require.NoError(t, r.Advance(30/b.hertz, func(s *transient.State) { m.Add(-s.Amps(b.sink), s.Dt()) }))
	return m.Mean()
}

func TestSixtyFourStepsAreEnough(t *testing.T) {
	worst := 0.0
	for _, name := range []string{"A", "B", "C"} {
		for _, rpm := range rpms(700, 800, 1000, 1500, 3000, 8000) {
			for _, m := range []transient.SpiceModel{nearIdeal, silicon} {
				j := transient.FitJunction(m.IS, m.N, m.RS, 20)
				coarse, fine := chargingCurrent(t, star(machines[name], rpm, j, ""), 64), chargingCurrent(t, star(machines[name], rpm, j, ""), 1024)
				worst = max(worst, math.Abs(coarse/fine-1))
				within(t, fine, coarse, 0.003, "%s %g", name, rpm)
			}
		}
	}
	t.Logf("64 steps in a period are %.2f %% at most from 1024", 100*worst)
}

// What the emfs give is lost in resistances and diodes, delivered to the sink, or
// kept in the inductances.
func TestEnergyIsKept(t *testing.T) {
	for _, fault := range []string{"", "diode_open", "diode_short", "phase_open"} {
		m := machines["A"]
		b := star(m, 1500, transient.Junction{Volts: 0.8, Ohms: 0.02}, fault)
		diodes := b.diodes()
		r := start(t, &b.Circuit, 1/b.hertz/64)
		require.NoError(t, r.Advance(20/b.hertz, nil))
		var given, taken transient.Mean
		begin := b.stored(r.State(), m)
		given.Begin(b.given(r.State()))
		taken.Begin(b.taken(r.State(), m, diodes))
		require.NoError(t, r.Advance(30.3/b.hertz, func(s *transient.State) {
			given.Add(b.given(s), s.Dt())
			taken.Add(b.taken(s, m, diodes), s.Dt())
		}))
		kept := b.stored(r.State(), m) - begin
		in := given.Mean() * given.Time()
		require.Greater(t, in, 1.0)
		within(t, in, taken.Mean()*taken.Time()+kept, 0.005, fault)
	}
}

type across struct{ a, b string }

// diodes are all pairs of terminals between which something of the bridge lies.
func (b *bench) diodes() map[across]transient.Branch {
	out := map[across]transient.Branch{}
	for i := range b.bridgeParts {
		out[b.bridgeParts[i].between] = b.bridgeParts[i].branch
	}
	return out
}

func (b *bench) given(s *transient.State) float64 {
	watts := 0.0
	for i, p := range b.phases {
		watts += s.Amps(p) * b.emfs[i].At(s.Time())
	}
	return watts
}

func (b *bench) taken(s *transient.State, m machine, diodes map[across]transient.Branch) float64 {
	watts := -s.Amps(b.sink) * sinkVolts
	for _, p := range b.phases {
		watts += s.Amps(p) * s.Amps(p) * m.ohms
	}
	for at, d := range diodes {
		watts += s.Amps(d) * s.Between(b.Node(at.a), b.Node(at.b))
	}
	return watts
}

func (b *bench) stored(s *transient.State, m machine) float64 {
	joules := 0.0
	for _, p := range b.phases {
		joules += m.henries * s.Amps(p) * s.Amps(p) / 2
	}
	return joules
}

// At whatever time it is stopped, what comes through the upper diodes goes into the
// sink, and what a phase gives goes through its diodes.
func TestCurrentsMeetAtEachStop(t *testing.T) {
	b := star(machines["A"], 1500, transient.Junction{Volts: 0.8, Ohms: 0.02}, "")
	r := start(t, &b.Circuit, 1/b.hertz/64)
	random := rand.New(rand.NewPCG(2, 2))
	meet := func(s *transient.State) {
		upper := 0.0
		for i, p := range b.phases {
			above, below := s.Amps(b.bridgeParts[2*i].branch), s.Amps(b.bridgeParts[2*i+1].branch)
			upper += above
			require.InDelta(t, s.Amps(p), above-below, 1e-3)
			require.Greater(t, min(above, below), -1e-3)
		}
		require.InDelta(t, upper, -s.Amps(b.sink), 2e-3)
	}
	for at := 1e-5; at < 0.03; at += 3e-5 * random.Float64() {
		require.NoError(t, r.Advance(at, meet))
		meet(r.State())
	}
}

// Names and their order are no part of physics.
func TestOrderOfNodesAndPhasesChangesNothing(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 1))
	j := transient.Junction{Volts: 0.8, Ohms: 0.02}
	want := chargingCurrent(t, star(machines["A"], 1500, j, ""), 64)
	for range 10 {
		b := &bench{}
		for _, i := range random.Perm(5) {
			b.Node([]string{"n", "p", "a", "b", "c"}[i])
		}
		shuffled := starOn(b, machines["A"], 1500, j, "", random.Perm(3))
		within(t, want, chargingCurrent(t, shuffled, 64), 1e-6)
	}
}

// Parts that only ground joins know nothing of each other but the time.
func TestPartsOnGroundAreIndependent(t *testing.T) {
	j := transient.Junction{Volts: 0.8, Ohms: 0.02}
	want := chargingCurrent(t, star(machines["A"], 1500, j, ""), 64)
	b := star(machines["A"], 1500, j, "")
	one, two := b.Node("other"), b.Node("more")
	b.Winding(one, transient.Ground, sineOf(40, 170, 0.1), 1, 1e-3)
	b.Diode(one, two, j)
	b.Resistor(two, transient.Ground, 3)
	b.Capacitor(two, transient.Ground, 1e-4, 0)
	within(t, want, chargingCurrent(t, b, 64), 1e-3)
}

// linear is a circuit without valves, its emfs times a factor each.
func linear(first, second float64) (*transient.Circuit, []transient.Branch) {
	c := &transient.Circuit{}
	a, b, d := c.Node("a"), c.Node("b"), c.Node("d")
	out := []transient.Branch{
		c.Winding(a, transient.Ground, transient.Sine{Volts: 10 * first, Hertz: 100}, 1, 2e-3),
		c.Supply(b, transient.Ground, transient.Sine{Volts: 3 * second, Hertz: 150, Phase: 1}, 5),
		c.Resistor(a, b, 7),
		c.Capacitor(b, d, 100e-6, 0),
	}
	p, s := c.Coupled(d, transient.Ground, a, b, 0.5, 3e-3, 9, 40e-3, 0.9)
	return c, append(out, p, s)
}

func currentsOf(t *testing.T, c *transient.Circuit, branches []transient.Branch) []float64 {
	r := start(t, c, 1e-4)
	require.NoError(t, r.Advance(0.0234, nil))
	var out []float64
	for _, b := range branches {
		out = append(out, r.State().Amps(b))
	}
	return out
}

func TestWithoutValvesCurrentsAddUp(t *testing.T) {
	at := func(first, second float64) []float64 {
		c, b := linear(first, second)
		return currentsOf(t, c, b)
	}
	one, other, both := at(1, 0), at(0, 1), at(2, -3)
	for i := range both {
		require.NotZero(t, one[i])
		assert.InDelta(t, 2*one[i]-3*other[i], both[i], 1e-9)
	}
}

// A coil and a capacitor ring for ever, a little slow: the trapezoidal rule makes
// x/tan(x) of the frequency, half a step being x.
func TestRingingIsKept(t *testing.T) {
	const henries, farads, steps, periods = 1e-3, 10e-6, 64, 1000
	omega := 1 / math.Sqrt(henries*farads)
	h := 2 * math.Pi / omega / steps
	slowed := 2 / h * math.Atan(omega*h/2)
	c := &transient.Circuit{}
	a := c.Node("a")
	c.Capacitor(a, transient.Ground, farads, 12)
	c.Winding(a, transient.Ground, transient.Constant(0), 0, henries)
	r := start(t, c, h)
	most := 0.0
	end := 2 * math.Pi / slowed * periods
	require.NoError(t, r.Advance(end*0.99, nil))
	require.NoError(t, r.Advance(end, func(s *transient.State) { most = max(most, s.Volts(a)) }))
	within(t, 12, most, 0.002)
	within(t, 12, r.State().Volts(a), 0.01)
}

func TestStepsIntoResistanceFollowTheExponential(t *testing.T) {
	c := &transient.Circuit{}
	a, b, d := c.Node("a"), c.Node("b"), c.Node("d")
	c.Supply(a, transient.Ground, transient.Constant(10), 100)
	c.Capacitor(a, transient.Ground, 1e-6, 2)
	coil := c.Winding(b, transient.Ground, transient.Constant(10), 2, 2e-3)
	c.Resistor(b, transient.Ground, 3)
	c.Capacitor(d, transient.Ground, 1e-6, 50)
	c.Resistor(d, transient.Ground, 400)
	r := start(t, c, 2e-6)
	require.NoError(t, r.Advance(1e-3, func(s *transient.State) {
		assert.InDelta(t, 10-8*math.Exp(-s.Time()/1e-4), s.Volts(a), 2e-3)
		assert.InDelta(t, 2*(1-math.Exp(-s.Time()/4e-4)), s.Amps(coil), 1e-3)
		assert.InDelta(t, 50*math.Exp(-s.Time()/4e-4), s.Volts(d), 6e-3)
	}))
}

// Half-wave phase control on a resistance has a mean of V·(1+cos α)/2π.
func TestThyristorPhaseControl(t *testing.T) {
	const volts, hertz = 100, 50
	for _, degrees := range []float64{1, 30, 60, 90, 120, 150, 179} {
		alpha := degrees * math.Pi / 180
		c := &transient.Circuit{}
		a, k := c.Node("a"), c.Node("k")
		c.Supply(a, transient.Ground, transient.Sine{Volts: volts, Hertz: hertz}, 0)
		c.Thyristor(a, k, transient.Junction{Ohms: 1e-4}, func(s *transient.State) bool {
			return math.Mod(s.Time()*hertz, 1)*2*math.Pi >= alpha-1e-9
		})
		load := c.Resistor(k, transient.Ground, 10)
		var m transient.Mean
		r := start(t, c, 1./hertz/1800)
		require.NoError(t, r.Advance(4./hertz, func(s *transient.State) { m.Add(s.Amps(load), s.Dt()) }))
		assert.InDelta(t, volts/10*(1+math.Cos(alpha))/(2*math.Pi), m.Mean(), 0.015, "%g°", degrees)
	}
}

// A thyristor that is always fired is a diode.
func TestFiredThyristorIsADiode(t *testing.T) {
	mean := func(gate transient.Gate) float64 {
		c := &transient.Circuit{}
		a, k := c.Node("a"), c.Node("k")
		c.Winding(a, transient.Ground, sineOf(40, 50, 0), 0.5, 5e-3)
		j := transient.Junction{Volts: 0.9, Ohms: 0.01}
		if gate == nil {
			c.Diode(a, k, j)
		} else {
			c.Thyristor(a, k, j, gate)
		}
		sink := c.Supply(k, transient.Ground, transient.Constant(14), 0.01)
		var m transient.Mean
		require.NoError(t, start(t, c, 1./50/64).Advance(0.2, func(s *transient.State) { m.Add(s.Amps(sink), s.Dt()) }))
		return m.Mean()
	}
	within(t, mean(nil), mean(func(*transient.State) bool { return true }), 1e-9)
	assert.InDelta(t, 0, mean(func(*transient.State) bool { return false }), 1e-6)
}

// Two like coils, each over its resistance, are two decays: the currents' sum by
// L+M, their difference by L-M.
func TestCoupledCoilsDecayInTwoModes(t *testing.T) {
	const henries, k, ohms, volts = 10e-3, 0.8, 5, 10
	c := &transient.Circuit{}
	a, b := c.Node("a"), c.Node("b")
	c.Supply(a, transient.Ground, transient.Constant(volts), 3)
	c.Resistor(b, transient.Ground, 3)
	one, two := c.Coupled(a, transient.Ground, b, transient.Ground, 2, henries, 2, henries, k)
	r := start(t, c, 5e-6)
	require.NoError(t, r.Advance(10e-3, func(s *transient.State) {
		sum := volts / 2. / ohms * (1 - math.Exp(-s.Time()*ohms/(henries*(1+k))))
		difference := volts / 2. / ohms * (1 - math.Exp(-s.Time()*ohms/(henries*(1-k))))
		assert.InDelta(t, sum+difference, s.Amps(one), 2e-3)
		assert.InDelta(t, sum-difference, s.Amps(two), 2e-3)
	}))
}

// Breaker points open on the current of a primary: its energy goes to the
// capacitor, and the secondary has the primary's voltage by its turns.
func TestBrokenPrimaryChargesTheCapacitor(t *testing.T) {
	const henries, farads, amps, ratio = 5e-3, 0.25e-6, 4, 80
	c := &transient.Circuit{}
	plus, low, spark := c.Node("plus"), c.Node("low"), c.Node("spark")
	c.Supply(plus, transient.Ground, transient.Constant(12), 3)
	c.Coupled(plus, low, spark, transient.Ground, 0, henries, 0, henries*ratio*ratio, 0.999)
	c.Switch(low, transient.Ground, 1e-3, func(s *transient.State) bool { return s.Time() < 20e-3 })
	c.Capacitor(low, transient.Ground, farads, 0)
	peak, high := 0.0, 0.0
	r := start(t, c, 1e-5)
	require.NoError(t, r.Advance(21e-3, func(s *transient.State) {
		if s.Time() < 20e-3 && s.Time() > 19.98e-3 {
			s.Refine(1e-6, 1e-3)
		}
		peak, high = max(peak, s.Volts(low)), max(high, math.Abs(s.Volts(spark)))
	}))
	// Damped by 3 Ω and raised by the battery: exact for the series circuit.
	sigma := 3 / (2 * henries)
	omega := math.Sqrt(1/(henries*farads) - sigma*sigma)
	slope := amps / farads
	b := (slope - sigma*12) / omega
	tau := 0.0
	for x := 0.0; x < 2e-4; x += 1e-8 {
		tau = max(tau, 12+math.Exp(-sigma*x)*(-12*math.Cos(omega*x)+b*math.Sin(omega*x)))
	}
	within(t, tau, peak, 0.003)
	within(t, (peak-12)*ratio*0.999, high, 0.02)
}

func TestPulsesEndWhereTheySay(t *testing.T) {
	c := &transient.Circuit{}
	a := c.Node("a")
	s := c.Supply(a, transient.Ground, transient.Pulse{Volts: 10, Width: 3e-4, Period: 1e-3, Delay: 1e-4}, 1)
	c.Resistor(a, transient.Ground, 4)
	var m transient.Mean
	r := start(t, c, 0.9e-4)
	require.NoError(t, r.Advance(0.05, func(st *transient.State) { m.Add(st.Amps(s), st.Dt()) }))
	within(t, 2*0.3, m.Mean(), 0.01)
	within(t, 2, m.Max(), 1e-6)
}

// What a circuit of steady sources comes to is what AtRest says.
func TestRestIsWhereALongRunEnds(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 3))
	for range 200 {
		c, branches := resting(random)
		rest, err := c.AtRest(0)
		require.NoError(t, err)
		r := start(t, c, 2e-4)
		require.NoError(t, r.Advance(0.5, nil))
		for _, b := range branches {
			assert.InDelta(t, rest.Amps(b), r.State().Amps(b), 1e-4*math.Abs(rest.Amps(b))+1e-6)
		}
	}
}

// resting is a random circuit that comes to rest within some 50 ms.
func resting(random *rand.Rand) (*transient.Circuit, []transient.Branch) {
	c := &transient.Circuit{}
	nodes := []transient.Node{transient.Ground, c.Node(""), c.Node(""), c.Node(""), c.Node("")}
	some := func() transient.Node { return nodes[random.IntN(len(nodes))] }
	var out []transient.Branch
	for _, n := range nodes[1:] {
		c.Resistor(n, transient.Ground, 1+20*random.Float64())
	}
	for range 8 {
		switch random.IntN(4) {
		case 0:
			out = append(out, c.Supply(some(), some(), transient.Constant(20*random.Float64()), 1+random.Float64()))
		case 1:
			out = append(out, c.Winding(some(), some(), transient.Constant(0), 1+random.Float64(), 5e-3*random.Float64()))
		case 2:
			out = append(out, c.Diode(some(), some(), transient.Junction{Volts: random.Float64(), Ohms: 0.1}))
		case 3:
			c.Capacitor(some(), some(), 1e-4*random.Float64(), 5)
		}
	}
	return c, out
}

func TestAtRestReadsWhatAnOhmMeterReads(t *testing.T) {
	for _, ohms := range []float64{1e-3, 0.3, 47, 10e3, 20e6, 1e9} {
		c := &transient.Circuit{}
		red, black := c.Node("red"), c.Node("black")
		meter := c.Supply(red, black, transient.Constant(0.5), 1e3)
		c.Resistor(red, black, ohms)
		c.Winding(c.Node("x"), red, transient.Constant(0), 1, 1e-3)
		s, err := c.AtRest(0)
		require.NoError(t, err)
		within(t, ohms, s.Between(red, black)/s.Amps(meter), 2e-3)
	}
}

func TestAtRestSeesGates(t *testing.T) {
	c := &transient.Circuit{}
	plus, out := c.Node("plus"), c.Node("out")
	c.Supply(plus, transient.Ground, transient.Constant(12), 0.1)
	thyristor := c.Thyristor(plus, out, transient.Junction{Volts: 1, Ohms: 0.01}, func(s *transient.State) bool { return s.Volts(plus) > 11 })
	c.Resistor(out, transient.Ground, 9.89)
	s, err := c.AtRest(0)
	require.NoError(t, err)
	assert.True(t, s.Conducts(thyristor))
	within(t, 1.1, s.Amps(thyristor), 1e-6)

	c.Switch(plus, transient.Ground, 1, func(s *transient.State) bool { return s.Volts(plus) > 11.5 })
	_, err = c.AtRest(0)
	require.ErrorContains(t, err, "never agree")
}
