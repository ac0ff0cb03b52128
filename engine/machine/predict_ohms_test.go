package machine_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/winding"
)

// three is a machine with three phases of one ohm and perfect faults.
func three(c machine.Connection, change func(*machine.Machine)) machine.Machine {
	b := machine.Usual()
	b.Charge = c
	m := machine.Typical(b)
	for i := range m.Phases {
		m.Phases[i].Ohms, m.Phases[i].Short.Ohms = 1, 1e-9
	}
	change(&m)
	return m
}

func ohms(m machine.Machine, red, black check.Terminal) machine.Prediction {
	return m.Shows(machine.Probing{Red: red, Black: black}, meter.Auto6000())
}

func pairs(m machine.Machine) (out [3]float64) {
	for i := range out {
		out[i] = ohms(m, check.Charge(i+1), check.Charge((i+1)%3+1)).Value
	}
	return out
}

func toCore(m machine.Machine) (out [3]float64) {
	for i := range out {
		out[i] = ohms(m, check.Charge(i+1), check.Core).Value
	}
	return out
}

// What winding.Assemble reads, with its own network, this reads too.
func TestOhmsAgreeWithTheWindingPackage(t *testing.T) {
	kinds := map[machine.Connection]winding.Connection{machine.Star: winding.Star, machine.Delta: winding.Delta}
	inf := math.Inf(1)
	for _, c := range []struct {
		name   string
		change func(m *machine.Machine, at int)
		fault  func(at int) winding.Fault
		star   bool // only
	}{
		{"sound", func(*machine.Machine, int) {}, func(int) winding.Fault { return winding.Fault{} }, false},
		{"open", func(m *machine.Machine, at int) { m.Phases[at].Joint = inf },
			func(at int) winding.Fault { return winding.Fault{Kind: winding.PhaseOpen, At: at} }, false},
		{"turns", func(m *machine.Machine, at int) { m.Phases[at].Short.Share = 0.2 },
			func(at int) winding.Fault { return winding.Fault{Kind: winding.TurnsShorted, At: at, Share: 0.2} }, false},
		{"bridge", func(m *machine.Machine, at int) { m.Bridge = machine.Bridge{From: at + 1, To: (at+1)%3 + 1, Ohms: 0} },
			func(at int) winding.Fault { return winding.Fault{Kind: winding.Bridged, At: at, To: (at + 1) % 3} }, false},
		{"core", func(m *machine.Machine, at int) { m.Phases[at].Ground = machine.Touch{At: 0.3} },
			func(at int) winding.Fault { return winding.Fault{Kind: winding.PhaseToCore, At: at, Share: 0.3} }, false},
		{"neutral", func(m *machine.Machine, _ int) { m.Neutral = machine.Touch{} },
			func(int) winding.Fault { return winding.Fault{Kind: winding.NeutralToCore} }, true},
	} {
		for here, there := range kinds {
			for at := range 3 {
				if c.star && here != machine.Star {
					continue
				}
				m := three(here, func(m *machine.Machine) { c.change(m, at) })
				w := winding.Assemble(there, []quantity.Ohm{1, 1, 1}, c.fault(at))
				p, g := pairs(m), toCore(m)
				for i := range 3 {
					mustAgree(t, float64(w.Between(i, (i+1)%3)), p[i], "%s %s, pair %d", here, c.name, i)
					mustAgree(t, float64(w.ToCore(i)), g[i], "%s %s, core %d", here, c.name, i)
				}
			}
		}
	}
}

func mustAgree(t *testing.T, want, got float64, what ...any) {
	t.Helper()
	if math.IsInf(want, 1) {
		require.True(t, math.IsInf(got, 1), what...)
		return
	}
	require.InDelta(t, want, got, 1e-6, what...)
}

// Healthy phases of 1 Ω, one branch open, one bridge, and k of the turns shorted:
// the textbook sums, by hand.
func TestSignaturesByHand(t *testing.T) {
	const k = 0.1
	sound := func(*machine.Machine) {}
	cut := func(m *machine.Machine) { m.Phases[0].Joint = math.Inf(1) }
	short := func(m *machine.Machine) { m.Phases[0].Short.Share = k }
	inf := math.Inf(1)
	for _, c := range []struct {
		of     machine.Connection
		change func(*machine.Machine)
		want   [3]float64
	}{
		{machine.Star, sound, [3]float64{2, 2, 2}},
		{machine.Star, cut, [3]float64{inf, 2, inf}},
		{machine.Star, short, [3]float64{1.9, 2, 1.9}},
		{machine.Delta, sound, [3]float64{2. / 3, 2. / 3, 2. / 3}},
		{machine.Delta, cut, [3]float64{2, 1, 1}},
		{machine.Delta, short, [3]float64{0.62069, 0.65517, 0.65517}},
	} {
		got := pairs(three(c.of, c.change))
		for i := range got {
			if math.IsInf(c.want[i], 1) {
				require.True(t, math.IsInf(got[i], 1))
				continue
			}
			require.InDelta(t, c.want[i], got[i], 1e-5, "%s %v", c.of, got)
		}
	}
}

// A contact between shorted turns stays in: (1-k)R + kR·r/(kR+r).
func TestShortedTurnsKeepTheirContact(t *testing.T) {
	const k, r = 0.4, 0.05
	m := machine.Typical(machine.Usual())
	m.Exciter.Short = machine.Short{Share: k, Ohms: r, Piles: 1}
	m.Exciter.Ohms = 2
	assert.InDelta(t, (1-k)*2+k*2*r/(k*2+r), ohms(m, check.ExciterLead, check.Core).Value, 1e-12)
}

func TestOhmsThatMeanNothing(t *testing.T) {
	m := machine.Typical(machine.Usual())
	assert.False(t, ohms(m, check.BatteryPlus, check.BatteryMinus).Known, "a battery drives the meter")
	assert.False(t, ohms(m, check.FuseIn, check.Frame).Known)
	p := m.Shows(machine.Probing{Red: check.ExciterLead, Black: check.Core, State: machine.State{Engine: check.Idling}}, meter.Cheap())
	assert.False(t, p.Known, "an engine that turns")
	assert.False(t, ohms(m, "charge-4", check.Core).Known, "a star has no fourth lead")
	assert.False(t, ohms(m, "nowhere", check.Core).Known)
	assert.True(t, ohms(m, check.KeyOut, check.Frame).Known, "the lamp alone, the key off")
	assert.InDelta(t, m.Harness.Lamp, ohms(m, check.KeyOut, check.Frame).Value, 1e-9)
}

// Beyond its top range a meter shows an open line: 20 MΩ of plug on one of 2 MΩ.
func TestOpenIsWhatTheMeterCannotShow(t *testing.T) {
	m := machine.Typical(machine.Usual())
	p := machine.Probing{Red: check.CapEnd, Black: check.Core}
	m.Spark.Secondary.Joint = math.Inf(1)
	assert.True(t, m.Shows(p, meter.Cheap()).Open)
	assert.InDelta(t, m.Spark.Fouling, m.Shows(p, meter.Auto6000()).Value, 1)
}

// Plugs, keys and switches join what they say they join.
func TestWiringJoinsWhatItSays(t *testing.T) {
	inf := math.Inf(1)
	usual := machine.Typical(machine.Usual())
	fed := machine.Usual()
	fed.Ignition = machine.BatteryFed
	battery := machine.Typical(fed)
	two := machine.Usual()
	two.Pickups = 2
	h, box := usual.Harness, usual.Box
	beside := func(a, b float64) float64 { return 1 / (1/a + 1/b) }
	coil, pickup, pin := usual.Exciter.Ohms, usual.Pickups[0].Ohms, h.OtherPins.Ohms
	joined := machine.State{Plug: check.Together}
	for _, c := range []struct {
		m          machine.Machine
		red, black check.Terminal
		s          machine.State
		want       float64
	}{
		{usual, check.ExciterLead, check.Core, machine.State{}, coil},
		{usual, check.ExciterLead, check.Core, joined, beside(coil, pin+machine.KillContact)}, // the key is off
		{usual, check.ExciterLead, check.Core, machine.State{Plug: check.Together, Key: true}, coil},
		{usual.With(machine.Fault{Kind: machine.KillWire, Size: 7}), check.KillWire, check.Core, machine.State{Key: true}, 7},
		{usual, check.KillWire, check.Core, machine.State{Key: true}, inf},
		{usual, check.PickupA, check.Core, machine.State{}, inf},
		{usual, check.PickupA, check.PickupB, machine.State{}, pickup},
		{usual, check.PickupA, check.PickupB, joined, beside(pickup, box.Input+2*pin)},
		{usual, check.PickupB, check.Core, joined, pin + box.Ground.Ohms},
		{usual, check.BoxPickup, check.BoxGround, machine.State{}, box.Input},
		{usual, check.CoilPrimary, check.Core, machine.State{}, usual.Spark.Primary.Ohms},
		{usual, check.BoxOutput, check.CoilPrimary, machine.State{}, 0},
		{usual, check.SparkLead, check.CapEnd, machine.State{}, usual.Spark.Cap},
		{usual, check.GroundLead, check.Core, machine.State{}, h.GroundLead.Ohms},
		{usual, "charge-1", "regulator-1", machine.State{}, inf},
		{usual, "charge-1", "regulator-1", joined, h.ChargePins[0].Ohms},
		{usual, check.RegulatorBody, check.Frame, machine.State{}, usual.Regulator.Ground.Ohms},
		{usual, check.RegulatorPlus, check.FuseIn, machine.State{}, h.Feed.Ohms},
		{battery, check.BoxFeed, check.BoxGround, machine.State{}, beside(box.Draw, box.Feed.Ohms+h.Lamp+h.Strap.Ohms+box.Ground.Ohms)},
		{battery, check.KillWire, check.Core, machine.State{}, beside(machine.KillContact, machine.KillPull)},
		{machine.Typical(two), check.PickupTwo, check.Core, machine.State{}, pickup},
	} {
		p := c.m.Shows(machine.Probing{Red: c.red, Black: c.black, State: c.s}, meter.Auto6000())
		what := fmt.Sprint(c.red, " ", c.black, " ", c.s)
		require.True(t, p.Known, what)
		if math.IsInf(c.want, 1) {
			require.True(t, p.Open, what)
			continue
		}
		require.InEpsilon(t, c.want+1e-9, p.Value+1e-9, 1e-3, what)
	}
}

// Copper gains 0.39 % a kelvin.
func TestHotWindingsReadMore(t *testing.T) {
	m := machine.Typical(machine.Usual())
	c, ok := check.Find(check.Plan(m.Build.Known(), check.Bench, check.HotWinding), "hot-charge-pair-1-2")
	require.True(t, ok)
	cold := m.Phases[0].Ohms + m.Phases[1].Ohms
	assert.InDelta(t, cold*(1+0.00393*m.Rise), m.Predict(c, meter.Cheap(), kit).Value, 1e-9)
}
