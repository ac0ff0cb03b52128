package rig_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/rig"
	"coilbook/engine/winding"
)

var (
	apart    = machine.State{}
	together = machine.State{Plug: check.Together}
	running  = machine.State{Plug: check.Together, Engine: check.At5000}
	spinning = machine.State{Engine: check.At3000}
	cranked  = machine.State{Plug: check.Together, Engine: check.Cranking}
)

// fine is a meter without errors whose digits do not hide anything.
func fine() rig.Instrument {
	in := rig.Exact(meter.Auto6000())
	in.Meter.Ranges = map[meter.Function][]meter.Range{}
	for _, f := range []meter.Function{meter.Ohms, meter.VoltsDC, meter.VoltsAC} {
		in.Meter.Ranges[f] = []meter.Range{{Label: "all", Full: 1e8, Step: 1e-6, Unit: quantity.Units(f.Kind())[0]}}
	}
	in.Meter.Ranges[meter.Ohms][0].Step = 1e-4
	return in
}

func show(t testing.TB, m machine.Machine, red, black check.Terminal, f meter.Function, s machine.State) rig.Display {
	t.Helper()
	d, err := rig.Show(m, machine.Probing{Red: red, Black: black, Function: f, State: s}, fine(), "")
	require.NoError(t, err)
	return d
}

func star() machine.Machine { return machine.Typical(machine.Usual()) }

// Ohms are those of the winding's network, faults and all, which another package
// works out in closed form.
func TestOhmsAreThoseOfTheWinding(t *testing.T) {
	delta := machine.Usual()
	delta.Charge = machine.Delta
	for _, c := range []struct {
		build machine.Build
		conn  winding.Connection
		fault machine.Fault
		same  []winding.Fault
	}{
		{machine.Usual(), winding.Star, machine.Fault{}, nil},
		{machine.Usual(), winding.Star, machine.Fault{Kind: machine.PhaseOpen, At: 1}, []winding.Fault{{Kind: winding.PhaseOpen, At: 0}}},
		{delta, winding.Delta, machine.Fault{}, nil},
		{delta, winding.Delta, machine.Fault{Kind: machine.PhaseOpen, At: 2}, []winding.Fault{{Kind: winding.PhaseOpen, At: 1}}},
	} {
		m := machine.Typical(c.build)
		r := quantity.Ohm(m.Phases[0].Ohms)
		want := winding.Assemble(c.conn, []quantity.Ohm{r, r, r}, c.same...)
		if c.fault.Kind != "" {
			m = m.With(c.fault)
		}
		for i, pair := range [][2]int{{1, 2}, {2, 3}, {3, 1}} {
			d := show(t, m, check.Charge(pair[0]), check.Charge(pair[1]), meter.Ohms, apart)
			ohms := float64(want.Between(i, (i+1)%3))
			if math.IsInf(ohms, 1) {
				require.Equal(t, quantity.OverRange, d.State, "%v %v pair %d", c.conn, c.fault, i)
				continue
			}
			require.InEpsilon(t, ohms, d.Value, 3e-4, "%v %v pair %d", c.conn, c.fault, i)
		}
	}
}

func TestOpenAndShortAndTouch(t *testing.T) {
	m := star()
	assert.Equal(t, quantity.OverRange, show(t, m, check.Charge(1), check.Core, meter.Ohms, apart).State, "insulated")
	assert.Zero(t, show(t, m, check.Core, check.Core, meter.Ohms, apart).Value)
	assert.Equal(t, quantity.OverRange, show(t, m, check.Charge(1), "no-such-point", meter.Ohms, apart).State)
	touched := m.With(machine.Fault{Kind: machine.PhaseToCore, At: 1, Size: 0.3})
	r := m.Phases[0].Ohms
	assert.InDelta(t, 0.3*r+0.05, show(t, touched, check.Charge(1), check.Core, meter.Ohms, apart).Value, 1e-4)
	assert.InDelta(t, 0.7*r+r+0.05, show(t, touched, check.Charge(2), check.Core, meter.Ohms, apart).Value, 1e-4)
	short := m.With(machine.Fault{Kind: machine.PhaseShorted, At: 1, Size: 0.2})
	contact := short.Phases[0].Short.Ohms
	left := 0.8*r + contact*0.2*r/(contact+0.2*r)
	assert.InDelta(t, left+r, show(t, short, check.Charge(1), check.Charge(2), meter.Ohms, apart).Value, 1e-4)
	hot := show(t, m, check.Charge(1), check.Charge(2), meter.Ohms, machine.State{Hot: true})
	assert.InEpsilon(t, 2*r*(1+0.00393*70), hot.Value, 3e-4)
}

// An ohm range held to a battery shows nothing that means anything, and says so.
func TestOhmsOnALiveCircuit(t *testing.T) {
	assert.True(t, show(t, star(), check.BatteryPlus, check.Core, meter.Ohms, together).Live)
	assert.False(t, show(t, star(), check.Charge(1), check.Charge(2), meter.Ohms, apart).Live)
	for _, pair := range [][2]check.Terminal{{check.Charge(1), check.Charge(2)}, {check.ExciterLead, check.Core}, {check.PickupA, check.PickupB}} {
		assert.True(t, show(t, star(), pair[0], pair[1], meter.Ohms, machine.State{Engine: check.Cranking}).Live, "%v turns", pair)
	}
}

// The voltage of an unloaded winding goes with the speed, and follows from turns
// and flux: 4.44·f·N·k·Φ, a formula that the simulation does not use.
func TestEMFGoesWithSpeed(t *testing.T) {
	m := star()
	var perTurn []float64
	for _, e := range []check.Engine{check.Idling, check.At3000, check.At5000} {
		d := show(t, m, check.Charge(1), check.Charge(2), meter.VoltsAC, machine.State{Engine: e})
		f := float64(m.Build.MagnetPoles) * machine.Running(e) / 120
		line := math.Sqrt(3) * math.Pi * math.Sqrt2 * f * m.Phases[0].Turns * machine.WindingFactor * m.Magnets.Flux
		require.InEpsilon(t, line, d.Value, 2e-3)
		perTurn = append(perTurn, d.Value/machine.Running(e))
	}
	assert.InEpsilon(t, perTurn[0], perTurn[2], 1e-3)
	weak := m.With(machine.Fault{Kind: machine.WeakMagnets, Size: 0.4})
	assert.InEpsilon(t, 0.6*perTurn[1]*3000, show(t, weak, check.Charge(1), check.Charge(2), meter.VoltsAC, spinning).Value, 1e-3)
}

// Which phase is called the first changes nothing but the names.
func TestPhasesCanBeRelabelled(t *testing.T) {
	for _, kind := range []machine.Kind{machine.PhaseOpen, machine.PhaseShorted, machine.DiodeIsShorted} {
		var volts []float64
		for at := 1; at <= 3; at++ {
			m := star().With(machine.Fault{Kind: machine.NoRegulating}, machine.Fault{Kind: kind, At: at, Size: 0.2})
			volts = append(volts, show(t, m, check.BatteryPlus, check.BatteryMinus, meter.VoltsDC, machine.State{Plug: check.Together, Engine: check.At3000}).Value)
		}
		assert.InDelta(t, volts[0], volts[1], 5e-3, kind)
		assert.InDelta(t, volts[0], volts[2], 5e-3, kind)
	}
}

// What the bench must show of each fault, in the words of the trade.
func TestFaultsLookLikeTheTradeSays(t *testing.T) {
	battery := func(m machine.Machine, s machine.State) float64 {
		return show(t, m, check.BatteryPlus, check.BatteryMinus, meter.VoltsDC, s).Value
	}
	fault := func(k machine.Kind, at int, size float64) machine.Machine {
		return star().With(machine.Fault{Kind: k, At: at, Size: size})
	}
	rest, good := battery(star(), apart), battery(star(), running)
	assert.InDelta(t, 14.1, good, 0.4, "a sound machine charges")
	assert.Greater(t, good, rest+1)
	assert.Less(t, battery(fault(machine.NoCharging, 0, 0), running), rest, "shorted by its regulator: the lamp drains")
	assert.Greater(t, battery(fault(machine.NoRegulating, 0, 0), running), 15.5, "unbound")
	assert.Less(t, battery(fault(machine.MainFuse, 0, 0), running), rest+0.05, "fuse")
	assert.Less(t, battery(fault(machine.LowSetPoint, 0, 13), running), 13.1, "low set point")
	assert.Less(t, battery(fault(machine.PhaseOpen, 1, 0), machine.State{Plug: check.Together, Engine: check.At3000}),
		battery(star(), machine.State{Plug: check.Together, Engine: check.At3000}), "one phase less")
	assert.Less(t, battery(star(), cranked), 11.7, "the starter pulls it down")
	assert.Less(t, battery(fault(machine.Sulphated, 0, 10), cranked), battery(star(), cranked)-1, "a tired one gives way")
	dropped := fault(machine.FeedWire, 0, 1)
	assert.Greater(t, show(t, dropped, check.RegulatorPlus, check.FuseIn, meter.VoltsDC, running).Value, 1.0, "a bad feed drops volts")

	cranking := machine.State{Engine: check.Cranking}
	exciter := func(m machine.Machine) float64 {
		return show(t, m, check.ExciterLead, check.Core, meter.VoltsAC, cranking).Value
	}
	assert.Greater(t, exciter(star()), 50.0)
	assert.Less(t, exciter(fault(machine.ExciterOpen, 0, 0)), 1.0)
	assert.Less(t, exciter(fault(machine.ExciterShorted, 0, 0.4)), 0.65*exciter(star()), "shorted turns load the rest")
	pickup := func(m machine.Machine) rig.Display {
		return show(t, m, check.PickupA, check.PickupB, meter.VoltsAC, cranking)
	}
	assert.Greater(t, pickup(star()).Value, 0.2)
	assert.Less(t, pickup(fault(machine.GapWide, 0, 1.5e-3)).Value, 0.5*pickup(star()).Value, "a wide gap weakens it")
	output := func(m machine.Machine) float64 {
		return show(t, m, check.BoxOutput, check.Core, meter.VoltsAC, cranked).Value
	}
	assert.Greater(t, output(star()), 5*output(fault(machine.KillSwitch, 0, 0)), "killed")
}

// A delta that has lost a branch keeps its three voltages as long as nothing loads
// it, and its ohms stand as 2 to 1 to 1.
func TestAnOpenDeltaBranchHidesFromVolts(t *testing.T) {
	b := machine.Usual()
	b.Charge = machine.Delta
	sound, m := machine.Typical(b), machine.Typical(b).With(machine.Fault{Kind: machine.PhaseOpen, At: 1})
	for _, pair := range [][2]int{{1, 2}, {2, 3}, {3, 1}} {
		x, y := check.Charge(pair[0]), check.Charge(pair[1])
		assert.InEpsilon(t, show(t, sound, x, y, meter.VoltsAC, spinning).Value, show(t, m, x, y, meter.VoltsAC, spinning).Value, 0.01)
	}
	one := show(t, m, check.Charge(2), check.Charge(3), meter.Ohms, apart).Value
	assert.InEpsilon(t, 2*one, show(t, m, check.Charge(1), check.Charge(2), meter.Ohms, apart).Value, 1e-3)
}

// A contact that comes and goes keeps the digits from settling.
func TestLooseContactsDance(t *testing.T) {
	m := star().With(machine.Fault{Kind: machine.BatteryTerminal, Size: 0.5})
	d := show(t, m, check.PlusClamp, check.BatteryPlus, meter.VoltsDC, cranked)
	assert.Equal(t, quantity.Unsettled, d.State, "%v", d.Texts)
	assert.Equal(t, "won't settle", d.Typed())
}

func TestADeadBatteryCranksNothing(t *testing.T) {
	m := star().With(machine.Fault{Kind: machine.FlatBattery}, machine.Fault{Kind: machine.Sulphated, Size: 20})
	assert.InDelta(t, 0, show(t, m, check.ExciterLead, check.Core, meter.VoltsAC, cranked).Value, 0.01)
}

// Every check of every plan shows something on every build with every fault, and
// what fails is an error, never a panic.
func TestEveryCheckShowsSomething(t *testing.T) {
	kit := machine.Kit{ResistorOhms: 0.5, BulbOhms: 7, SupplyVolts: 12.5, AdapterFarads: 1e-6, BleederOhms: 10e6}
	in := rig.DrawnInstrument(meter.Cheap(), machine.NewChance(5))
	methods := []check.Method{check.VoltAmp, check.HotWinding, check.PeakHold}
	for _, b := range someBuilds() {
		for i, k := range machine.Kinds() {
			f, ok := machine.NewChance(uint64(i)).Sized(k, b)
			if !ok {
				continue
			}
			m := machine.Typical(b).With(f)
			plan := check.Plan(b.Known(), check.Bench, methods...)
			if i%6 == 0 {
				plan = append(plan, check.Plan(b.Known(), check.SelfCheck, check.ResistorCheck)...)
			}
			for _, c := range plan {
				if c.Engine == check.Cranking && i%6 != 0 {
					continue
				}
				d, err := rig.Check(m, c, in, kit)
				require.NoError(t, err, "%s with %s on %s", c.ID, k, b.Charge)
				require.NotEmpty(t, d.Typed(), "%s with %s on %s", c.ID, k, b.Charge)
			}
		}
	}
}

func someBuilds() []machine.Build {
	out := []machine.Build{machine.Usual()}
	for _, c := range []machine.Connection{machine.Delta, machine.SinglePhase, machine.TwoPhase, machine.GroundedEnd} {
		b := machine.Usual()
		b.Charge, b.Ignition = c, machine.BatteryFed
		if c == machine.GroundedEnd {
			b.Regulating, b.Ignition, b.Kick, b.Lighting, b.Pickups = machine.HalfWave, machine.ACFed, true, true, 2
		}
		out = append(out, b)
	}
	return out
}

func TestTracesAreWaveforms(t *testing.T) {
	tr, err := rig.Look(star(), machine.Probing{Red: check.Charge(1), Black: check.Charge(2), Function: meter.VoltsAC, State: spinning}, fine())
	require.NoError(t, err)
	require.Len(t, tr.Volts, 600)
	rms := 0.0
	for _, v := range tr.Volts {
		rms += v * v / float64(len(tr.Volts))
	}
	assert.InEpsilon(t, show(t, star(), check.Charge(1), check.Charge(2), meter.VoltsAC, spinning).Value, math.Sqrt(rms), 0.01)
	still, err := rig.Look(star(), machine.Probing{Red: check.BatteryPlus, Black: check.BatteryMinus, State: apart}, fine())
	require.NoError(t, err)
	assert.InDelta(t, 12.64, still.Volts[0], 0.01)
}

// One second of a whole machine, running and sparking.
func BenchmarkOneSecond(b *testing.B) {
	for _, e := range []check.Engine{check.Cranking, check.Idling, check.At3000, check.At5000} {
		b.Run(map[check.Engine]string{check.Cranking: "cranking", check.Idling: "idling", check.At3000: "3000rpm", check.At5000: "5000rpm"}[e], func(b *testing.B) {
			for b.Loop() {
				require.NoError(b, rig.New(star(), machine.State{Plug: check.Together, Engine: e}).Run(1))
			}
			b.ReportMetric(float64(b.Elapsed().Milliseconds())/float64(b.N), "ms/machine-second")
		})
	}
}
