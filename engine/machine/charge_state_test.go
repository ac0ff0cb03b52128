package machine_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/circuit"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
)

func running(e check.Engine) machine.State { return at(e, check.Together) }

func hit(m machine.Machine, k machine.Kind, at int, size float64) machine.Machine {
	return m.With(machine.Fault{Kind: k, At: at, Size: size})
}

// What flows in flows out, and the current is what the generator gives into the
// voltage that it meets.
func TestTheBalanceBalances(t *testing.T) {
	struck(func(name string, m machine.Machine) {
		for _, e := range []check.Engine{check.Stopped, check.Cranking, check.Idling, check.At3000, check.At5000} {
			s := m.ChargeState(running(e))
			require.False(t, math.IsNaN(s.RegulatorVolts+s.BatteryVolts+s.GeneratorAmps+s.BatteryAmps+s.RippleAmps), name)
			require.GreaterOrEqual(t, s.GeneratorAmps, 0.0, name)
			require.InDelta(t, s.GeneratorAmps, s.BatteryAmps+s.LoadAmps, 1e-9, name)
			require.Less(t, math.Abs(s.BatteryVolts), 60.0, name)
		}
	})
	m := usual(func(m *machine.Machine) { m.Regulator.Thyristors = machine.NeverFire })
	s := m.ChargeState(running(check.At3000))
	c, hertz := m.Phases[0], 300.0
	source := circuit.Source{
		Peak: math.Sqrt2 * circuit.EMF(hertz, c.Turns, machine.WindingFactor, m.Magnets.Flux), Ohms: c.Ohms + m.Harness.ChargePins[0].Ohms,
		Henries: c.Henry, Hertz: hertz,
	}
	sink := circuit.Sink{Volts: s.RegulatorVolts, DiodeVolts: m.Regulator.Junction.Volts, DiodeOhms: m.Regulator.Junction.Ohms}
	assert.InEpsilon(t, circuit.StarBridge.Charging(source, sink).Mean, s.GeneratorAmps, 1e-3)
}

// The facts that every workshop knows.
func TestChargingAsItIsKnown(t *testing.T) {
	m := usual(sound)
	rest := m.RestVolts()
	volts := func(m machine.Machine, e check.Engine) float64 { return m.ChargeState(running(e)).BatteryVolts }
	s := m.ChargeState(running(check.At5000))
	assert.True(t, s.Holding)
	assert.InDelta(t, m.Regulator.SetPoint-0.5, s.RegulatorVolts, 0.5, "the mean stays under what the tops reach")
	assert.Greater(t, s.BatteryAmps, 1.0)
	assert.Greater(t, s.BatteryVolts, 13.2)

	dead := hit(m, machine.NoCharging, 0, 0)
	assert.Less(t, volts(dead, check.At5000), rest, "leads that are shorted charge nothing")
	assert.Zero(t, dead.ChargeState(running(check.At5000)).GeneratorAmps)
	assert.Greater(t, volts(hit(m, machine.NoRegulating, 0, 0), check.At5000), 15.5)
	assert.Less(t, volts(hit(m, machine.NoRegulating, 0, 0), check.At3000), volts(hit(m, machine.NoRegulating, 0, 0), check.At5000))
	assert.InDelta(t, rest, volts(hit(m, machine.DiodeIsShorted, 2, 0), check.At3000), 0.4, "hardly more than the loads take")
	assert.Less(t, volts(hit(m, machine.DiodeIsShorted, 2, 0), check.Idling), rest)
	assert.Less(t, volts(hit(m, machine.WeakMagnets, 0, 0.5), check.Idling), rest)
	assert.InDelta(t, 13.0, hit(m, machine.LowSetPoint, 0, 13.0).ChargeState(running(check.At5000)).RegulatorVolts, 0.5)
	assert.InDelta(t, rest*5/6, hit(m, machine.CellShorted, 0, 0).RestVolts(), 1e-9)

	blown := hit(m, machine.MainFuse, 0, 0).ChargeState(running(check.At3000))
	assert.InDelta(t, rest, blown.BatteryVolts, 1e-6)
	assert.InDelta(t, 0, blown.BatteryAmps, 1e-6)
	assert.InDelta(t, 0.88*m.Regulator.SetPoint, blown.RegulatorVolts, 0.2, "it feeds the lamp alone, and no battery fills the gaps")

	apart := m.ChargeState(at(check.At3000, check.Apart))
	assert.Zero(t, apart.GeneratorAmps)
	assert.Less(t, apart.BatteryVolts, rest)
}

// A bad wire between regulator and battery shows as a drop over it while the
// regulator holds its own volts.
func TestDropsWhileCharging(t *testing.T) {
	m := usual(sound)
	for _, c := range []struct {
		kind       machine.Kind
		red, black check.Terminal
	}{
		{machine.FeedWire, check.RegulatorPlus, check.FuseIn},
		{machine.RegulatorGround, check.RegulatorBody, check.Frame},
	} {
		bad := hit(m, c.kind, 0, 0.4)
		s := bad.ChargeState(running(check.At5000))
		drop := dcBetween(bad, c.red, c.black, running(check.At5000))
		assert.InEpsilon(t, 0.4*s.GeneratorAmps, math.Abs(drop), 1e-4, c.kind)
		assert.Less(t, s.BatteryVolts, m.ChargeState(running(check.At5000)).BatteryVolts-0.3, c.kind)
	}
}

// A broken phase or diode costs current, the more of it the less is left; the
// place makes no difference.
func TestBrokenGeneratorsGiveLess(t *testing.T) {
	for _, b := range builds() {
		b.Regulating = map[bool]machine.Regulating{true: machine.HalfWave, false: machine.Shunt}[b.Charge == machine.GroundedEnd]
		m := machine.Typical(b)
		m = hit(m, machine.NoRegulating, 0, 0)
		sound := m.ChargeState(running(check.At5000)).GeneratorAmps
		require.Positive(t, sound)
		for _, k := range []machine.Kind{machine.PhaseOpen, machine.PhaseToCore, machine.PhaseShorted, machine.PhaseToPhase, machine.PhaseJoint,
			machine.NeutralToCore, machine.WeakMagnets, machine.DiodeIsShorted, machine.ChargePin} {
			f := machine.Fault{Kind: k, At: 1, Size: 0.4}
			if !f.Suits(b) {
				continue
			}
			s := m.With(f).ChargeState(running(check.At5000))
			assert.Less(t, s.GeneratorAmps, sound, "%s: %s", b.Charge, k)
			assert.True(t, s.Known)
			if b.Charge.Phases() == 3 && k != machine.NeutralToCore && k != machine.WeakMagnets && k != machine.PhaseToPhase {
				f.At = 3
				assert.InEpsilon(t, s.GeneratorAmps, m.With(f).ChargeState(running(check.At5000)).GeneratorAmps, 1e-3, "%s: %s", b.Charge, k)
			}
		}
	}
}

// A joint between none and open gives between all and what is left without its
// phase, without a step at either end.
func TestAJointFromSoundToOpen(t *testing.T) {
	for _, c := range []machine.Connection{machine.Star, machine.Delta} {
		for _, bad := range []func(*machine.Machine, float64){
			func(m *machine.Machine, ohms float64) { m.Phases[1].Joint = ohms },
			func(m *machine.Machine, ohms float64) { m.Harness.ChargePins[1].Ohms = ohms },
		} {
			amps := func(ohms float64) float64 {
				b := machine.Usual()
				b.Charge = c
				m := machine.Typical(b)
				m.Regulator.Thyristors = machine.NeverFire
				bad(&m, ohms)
				return m.ChargeState(running(check.At5000)).GeneratorAmps
			}
			last := amps(0.008)
			for _, ohms := range []float64{0.0081, 0.1, 0.5, 1, 3, 10, 100, 1e4, math.Inf(1)} {
				now := amps(ohms)
				assert.LessOrEqual(t, now, last*(1+1e-3), "%s %v", c, ohms)
				last = now
			}
			assert.InEpsilon(t, amps(0.008), amps(0.0081), 1e-3)
			assert.InEpsilon(t, amps(1e5), last, 0.01)
		}
	}
}

// Between the two ends that are known, a lead and the neutral on the core, the
// current changes without a jump.
func TestAPhaseOnTheCoreFromEndToEnd(t *testing.T) {
	amps := func(change func(*machine.Machine)) float64 {
		m := usual(change)
		m.Regulator.Thyristors = machine.NeverFire
		return m.ChargeState(running(check.At5000)).GeneratorAmps
	}
	touch := func(x float64) func(*machine.Machine) {
		return func(m *machine.Machine) { m.Phases[0].Ground = machine.Touch{At: x, Ohms: 1e-4} }
	}
	lead := amps(func(m *machine.Machine) { m.Regulator.Lower[0] = machine.DiodeShorted })
	neutral := amps(func(m *machine.Machine) { m.Neutral = machine.Touch{Ohms: 1e-4} })
	assert.InEpsilon(t, lead, amps(touch(0)), 0.05)
	assert.InEpsilon(t, neutral, amps(touch(1)), 0.02)
	for x := 0.05; x < 1; x += 0.05 {
		assert.InEpsilon(t, amps(touch(x-0.05)), amps(touch(x)), 0.12, x)
	}
}

// AC on the leads of a plugged generator is told where the rectifier takes
// nothing, and said to be unknown where it does.
func TestLeadsInThePlug(t *testing.T) {
	m := usual(sound)
	p := machine.Probing{Red: "charge-1", Black: "charge-2", Function: meter.VoltsAC, State: running(check.Cranking)}
	free := p
	free.Plug = check.Apart
	got := m.Shows(p, meter.Auto6000())
	require.True(t, got.Known)
	assert.InEpsilon(t, m.Shows(free, meter.Auto6000()).Value, got.Value, 1e-6)
	p.State = running(check.At3000)
	assert.False(t, m.Shows(p, meter.Auto6000()).Known)
	p.Black = check.Core
	p.State = running(check.Cranking)
	assert.False(t, m.Shows(p, meter.Auto6000()).Known, "the meter draws through the diodes")
}
