package machine_test

import (
	"math"
	"math/cmplx"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

func usual(change func(*machine.Machine)) machine.Machine {
	m := machine.Typical(machine.Usual())
	change(&m)
	return m
}

func sound(*machine.Machine) {}

func having(d meter.Detector) meter.Meter {
	m := meter.Auto6000()
	m.Detectors = []meter.Detector{d}
	return m
}

func at(e check.Engine, plug check.Plug) machine.State {
	return machine.State{Engine: e, Plug: plug, Key: e != check.Stopped}
}

func acBetween(m machine.Machine, red, black check.Terminal, s machine.State) float64 {
	return m.Shows(machine.Probing{Red: red, Black: black, Function: meter.VoltsAC, State: s}, meter.Auto6000()).Value
}

func dcBetween(m machine.Machine, red, black check.Terminal, s machine.State) float64 {
	return m.Shows(machine.Probing{Red: red, Black: black, Function: meter.VoltsDC, State: s}, meter.Auto6000()).Value
}

func acPairs(m machine.Machine, s machine.State) (out [3]float64) {
	for i := range out {
		out[i] = acBetween(m, check.Charge(i+1), check.Charge((i+1)%3+1), s)
	}
	return out
}

// 4.44·f·N·k·Φ of a phase, √3 of it between two leads of a star, one branch's of
// a delta; proportional to speed; nothing to the core.
func TestVoltsOfAGeneratorWithNoLoad(t *testing.T) {
	m := usual(sound)
	for e, rpm := range map[check.Engine]float64{check.Idling: 1500, check.At3000: 3000, check.At5000: 5000} {
		hertz := 12 * rpm / 120
		phase := math.Sqrt2 * math.Pi * hertz * m.Phases[0].Turns * 0.95 * m.Magnets.Flux
		for _, v := range acPairs(m, at(e, check.Apart)) {
			assert.InEpsilon(t, math.Sqrt(3)*phase, v, 1e-5)
		}
		assert.Zero(t, acBetween(m, "charge-1", check.Core, at(e, check.Apart)))
		assert.Zero(t, dcBetween(m, "charge-1", "charge-2", at(e, check.Apart)))
		for _, v := range acPairs(three(machine.Delta, sound), at(e, check.Apart)) {
			assert.InEpsilon(t, math.Sqrt(3)*phase, v, 1e-4)
		}
	}
	two := machine.Usual()
	two.Charge = machine.TwoPhase
	assert.Zero(t, acBetween(machine.Typical(two), "charge-1", "charge-3", at(check.At3000, check.Apart)), "nothing joins them")
}

// A delta with a branch gone is a V: all three voltages stay. A star with a phase
// gone leaves one.
func TestVoltsWithAPhaseGone(t *testing.T) {
	cut := func(m *machine.Machine) { m.Phases[0].Joint = math.Inf(1) }
	s := at(check.At3000, check.Apart)
	whole, vee := acPairs(three(machine.Delta, sound), s), acPairs(three(machine.Delta, cut), s)
	for i := range whole {
		assert.InEpsilon(t, whole[i], vee[i], 0.02)
	}
	star := acPairs(three(machine.Star, cut), s)
	assert.Zero(t, star[0])
	assert.InEpsilon(t, whole[1], star[1], 0.02)
	assert.Zero(t, star[2])
}

// Faults move with the names of the leads.
func TestVoltsFollowTheNamesOfTheLeads(t *testing.T) {
	for _, c := range []machine.Connection{machine.Star, machine.Delta} {
		for _, k := range []machine.Kind{machine.PhaseShorted, machine.PhaseToCore, machine.PhaseJoint, machine.PhaseOpen} {
			var first [3]float64
			for i := 1; i <= 3; i++ {
				b := machine.Usual()
				b.Charge = c
				got := acPairs(machine.Typical(b).With(machine.Fault{Kind: k, At: i, Size: 0.3}), at(check.At3000, check.Apart))
				if i == 1 {
					first = got
				}
				for j := range got {
					assert.InDelta(t, first[(j-i+4)%3], got[j], 1e-6, "%s %s %d", c, k, i)
				}
			}
		}
	}
}

// Shorted turns and the rest of a coil are two loops with a mutual inductance,
// solved here as two equations.
func TestShortedTurnsAsTwoLoops(t *testing.T) {
	for _, share := range []float64{0.02, 0.2, 0.5, 0.9} {
		m := usual(func(m *machine.Machine) { m.Exciter.Short = machine.Short{Share: share, Ohms: 3, Piles: 1} })
		c, turns := m.Exciter, m.CrankingSpeed()
		hertz := turns * float64(m.Build.MagnetPoles) / 120
		w := 2 * math.Pi * hertz
		z := func(r, l float64) complex128 { return complex(r, w*l) }
		mutual := z(0, 0.95*c.Henry*share*(1-share))
		loop := z(share*c.Ohms+3, c.Henry*share*share)
		volts := complex(math.Sqrt2*math.Pi*hertz*c.Turns*0.95*m.Magnets.Flux, 0)
		around := volts * complex(share, 0) / loop // no current in the rest
		want := cmplx.Abs(volts*complex(1-share, 0) + around*3 - mutual*around)
		got := acBetween(m, check.ExciterLead, check.Core, at(check.Cranking, check.Apart))
		assert.InEpsilon(t, want, got, 2e-4, share)
	}
}

// Turns that are shorted as a whole pile take only themselves away; within a pile
// they drag the others with them.
func TestShortedTurnsDragTheirPile(t *testing.T) {
	volts := func(share float64) float64 {
		m := usual(func(m *machine.Machine) { m.Phases[0].Short = machine.Short{Share: share, Ohms: 1e-6, Piles: 3} })
		return acBetween(m, "charge-1", "charge-2", at(check.At5000, check.Apart))
	}
	whole := volts(0)
	assert.InEpsilon(t, whole*cmplx.Abs(complex(2./3+0.5, math.Sqrt(3)/2))/math.Sqrt(3), volts(1./3), 0.002)
	assert.InEpsilon(t, whole-volts(1./3), whole-volts(1./6), 0.1, "half a pile costs as much as all of it")
}

// A coil with one end on the core that touches it elsewhere is a coil with the
// turns between shorted.
func TestATouchIsAShortWhereTheEndIsOnTheCore(t *testing.T) {
	s := at(check.Cranking, check.Apart)
	for _, x := range []float64{0.1, 0.5, 0.8} {
		touched := usual(func(m *machine.Machine) { m.Exciter.Ground = machine.Touch{At: x, Ohms: 0.05} })
		short := usual(func(m *machine.Machine) { m.Exciter.Short = machine.Short{Share: 1 - x, Ohms: 0.05, Piles: 1} })
		assert.InEpsilon(t, acBetween(short, check.ExciterLead, check.Core, s), acBetween(touched, check.ExciterLead, check.Core, s), 1e-6)
	}
}

// With the meter's self-check a battery on an AC dial tells the detector.
func TestABatteryOnTheACDial(t *testing.T) {
	m := usual(sound)
	for _, c := range []struct {
		d              meter.Detector
		there, swapped float64
	}{{meter.AverageAC, 0, 0}, {meter.TrueRMS, 0, 0}, {meter.AverageDC, 1.1107, 1.1107}, {meter.HalfWave, 2.2214, 0}} {
		p := machine.Probing{Red: check.BatteryPlus, Black: check.BatteryMinus, Function: meter.VoltsAC}
		assert.InDelta(t, c.there*m.RestVolts(), m.Shows(p, having(c.d)).Value, 2e-3, c.d)
		p.Red, p.Black = p.Black, p.Red
		assert.InDelta(t, c.swapped*m.RestVolts(), m.Shows(p, having(c.d)).Value, 2e-3, c.d)
	}
}

// Two phases a quarter of a period apart, joined by a touch of leads 2 and 3.
func TestTwoPhasesStandAQuarterApart(t *testing.T) {
	b := machine.Usual()
	b.Charge = machine.TwoPhase
	m := machine.Typical(b)
	s := at(check.At3000, check.Apart)
	one := acBetween(m, "charge-1", "charge-2", s)
	joined := m.With(machine.Fault{Kind: machine.PhaseToPhase, At: 2})
	assert.InEpsilon(t, math.Sqrt2*one, acBetween(joined, "charge-1", "charge-4", s), 1e-4)
}

// A winding with one end on the core, probed against the battery: a sine upon a
// steady voltage, which detectors without a capacitor take together.
func TestASineUponABattery(t *testing.T) {
	b := machine.Usual()
	b.Charge, b.Regulating, b.Volts, b.Battery = machine.GroundedEnd, machine.HalfWave, 6, machine.Flooded
	m := machine.Typical(b)
	for _, e := range []check.Engine{check.Cranking, check.Idling, check.At5000} {
		s := at(e, check.Apart)
		sine := math.Sqrt2 * acBetween(m, "charge-1", check.Core, s)
		steady := dcBetween(m, check.BatteryPlus, check.Core, s)
		for d := meter.AverageAC; d <= meter.TrueRMS; d++ {
			w := meter.Period(func(phase float64) quantity.Volt { return quantity.Volt(steady + sine*math.Sin(2*math.Pi*phase)) })
			p := machine.Probing{Red: check.BatteryPlus, Black: "charge-1", Function: meter.VoltsAC, State: s}
			assert.InEpsilon(t, float64(d.Reading(w)), m.Shows(p, having(d)).Value, 1e-3, "%v %s", e, d)
		}
	}
}

// The meter's input loads what it measures.
func TestTheMeterLoadsItsSource(t *testing.T) {
	fed := machine.Usual()
	fed.Ignition = machine.BatteryFed
	m := machine.Typical(fed)
	p := machine.Probing{Red: check.KillWire, Black: check.Core, Function: meter.VoltsDC, State: machine.State{Key: true}}
	feed := dcBetween(m, check.BoxFeed, check.Core, p.State)
	assert.InEpsilon(t, feed*1e6/(1e6+machine.KillPull), m.Shows(p, meter.Cheap()).Value, 1e-4)
}

// Drops along a lead carrying a known current, by hand.
func TestDropsOfTheSupplyAtRest(t *testing.T) {
	m := usual(func(m *machine.Machine) { m.Harness.Key.Ohms, m.Harness.Strap.Ohms, m.Harness.Drain = 0.3, 0.2, 1e-9 })
	h := m.Harness
	s := machine.State{Key: true}
	amps := m.RestVolts() / (m.Battery.Ohms + h.Plus.Ohms + h.Fuse.Ohms + 0.3 + h.Lamp + 0.2 + h.Minus.Ohms)
	for _, c := range []struct {
		red, black check.Terminal
		ohms       float64
	}{
		{check.FuseIn, check.KeyOut, 0.3}, {check.KeyOut, check.Frame, h.Lamp}, {check.Frame, check.Core, 0.2},
		{check.FuseOut, check.FuseIn, h.Fuse.Ohms}, {check.BatteryPlus, check.PlusClamp, h.Plus.Ohms}, {check.Core, check.BatteryMinus, h.Minus.Ohms},
	} {
		assert.InEpsilon(t, amps*c.ohms, dcBetween(m, c.red, c.black, s), 1e-5, "%s %s", c.red, c.black)
	}
}

// One period of a pickup's voltage by the derivative of its flux, with the
// averages of the meter package: an independent way to the same displays.
func TestPickupAgainstItsWaveform(t *testing.T) {
	m := usual(func(m *machine.Machine) { m.Pickups[0].Henry = 0 })
	s := at(check.Cranking, check.Apart)
	rpm, r := m.CrankingSpeed(), m.Reluctor
	half, edge := r.Arc/2, r.Edge
	sech2 := func(x float64) float64 { c := math.Cosh(x); return 1 / (c * c) }
	w := meter.Period(func(phase float64) quantity.Volt {
		th := 360 * (phase - 0.5)
		slope := 0.5 * r.Flux / edge * (sech2((th+half)/edge) - sech2((th-half)/edge)) // Wb a degree
		return quantity.Volt(m.Pickups[0].Turns * slope * 6 * rpm)
	}, 0.5-half/360, 0.5, 0.5+half/360)
	for d := meter.AverageAC; d <= meter.TrueRMS; d++ {
		got := m.Shows(machine.Probing{Red: check.PickupA, Black: check.PickupB, Function: meter.VoltsAC, State: s}, having(d)).Value
		assert.InEpsilon(t, float64(d.Reading(w)), got, 0.002, d)
	}
}

func TestPickupFollowsGapSpeedAndLoad(t *testing.T) {
	m := usual(sound)
	read := func(m machine.Machine, s machine.State) float64 { return acBetween(m, check.PickupA, check.PickupB, s) }
	apart, joined := read(m, at(check.Cranking, check.Apart)), read(m, at(check.Cranking, check.Together))
	idling := read(m, at(check.Idling, check.Together))
	assert.InEpsilon(t, idling, read(m, at(check.Idling, check.Apart)), 1e-9, "an engine that runs has its pickup plugged")
	assert.InEpsilon(t, 2*idling, read(m, at(check.At3000, check.Together)), 0.05) // its inductance lengthens the pulse
	in := m.Box.Input + 2*m.Harness.OtherPins.Ohms
	assert.InEpsilon(t, apart*in/(in+m.Pickups[0].Ohms), joined, 1e-3)
	wide := usual(func(m *machine.Machine) { m.Reluctor.Gap += 1e-3 })
	assert.InEpsilon(t, apart*math.Exp(-2*math.Pi*1e-3/m.Reluctor.Lambda), read(wide, at(check.Cranking, check.Apart)), 1e-9)
	assert.InDelta(t, 0, dcBetween(m, check.PickupA, check.PickupB, at(check.Idling, check.Apart)), 1e-9)
	assert.Zero(t, read(usual(func(m *machine.Machine) { m.Pickups[0].Joint = math.Inf(1) }), at(check.Cranking, check.Apart)))
	dead := m.With(machine.Fault{Kind: machine.PickupToCore})
	assert.InEpsilon(t, 0.3*read(m, at(check.Cranking, check.Apart)), acBetween(dead, check.PickupA, check.Core, at(check.Cranking, check.Apart)), 1e-3)
	atSpeed := dead.Shows(machine.Probing{Red: check.PickupA, Black: check.Core, Function: meter.VoltsAC, State: at(check.Idling, check.Apart)}, meter.Auto6000())
	assert.False(t, atSpeed.Known, "turns closed over the core smear the pulses at speed")
}

// The exciter that the box clamps, stepped through one period: emf behind R and
// L, a diode that holds what is below, the capacitor full.
func TestClampedExciterAgainstASteppedOne(t *testing.T) {
	for _, e := range []struct {
		name   string
		change func(*machine.Machine)
	}{
		{"usual", sound},
		{"bad pin", func(m *machine.Machine) { m.Harness.OtherPins.Ohms = 300 }},
		{"bad ground", func(m *machine.Machine) { m.Box.Ground.Ohms = 200 }},
		{"more inductance", func(m *machine.Machine) { m.Exciter.Henry = 0.8 }},
		{"chafed kill wire", func(m *machine.Machine) { m.Kill.Chafed = 50 }},
	} {
		m := usual(e.change)
		w := steppedExciter(m)
		for d := meter.AverageAC; d <= meter.TrueRMS; d++ {
			p := machine.Probing{Red: check.ExciterLead, Black: check.Core, Function: meter.VoltsAC, State: at(check.Cranking, check.Together)}
			got := m.Shows(p, having(d))
			require.True(t, got.Known)
			assert.InEpsilon(t, float64(d.Reading(w)), got.Value, 0.04, "%s %s", e.name, d)
		}
	}
}

// steppedExciter is the voltage at the exciter's lead, after some periods.
func steppedExciter(m machine.Machine) meter.Waveform {
	const steps, periods = 20000, 6
	hertz := float64(m.Build.MagnetPoles) * m.CrankingSpeed() / 120
	peak := 2 * math.Pi * hertz * m.Exciter.Turns * machine.WindingFactor * m.Magnets.Flux
	dt := 1 / hertz / steps
	down := 1/m.Box.Ground.Ohms + 1/m.Kill.Chafed
	volts, amps := make([]float64, steps), 0.0
	for n := range steps * periods {
		emf := peak * math.Sin(2*math.Pi*float64(n)/steps)
		// into the box: through the chafed place always, through the diode when the
		// box's end is 0.8 V below its ground
		offset, ohms := 0.0, 1/(1/m.Kill.Chafed+1e-9)
		if amps*ohms < -0.8 {
			offset, ohms = -0.8/m.Box.Ground.Ohms/down, 1/down
		}
		ohms += m.Harness.OtherPins.Ohms
		l := max(m.Exciter.Henry, 1e-6)
		amps = (amps + dt/l*(emf-offset)) / (1 + dt/l*(ohms+m.Exciter.Ohms))
		volts[n%steps] = offset + amps*ohms
	}
	return meter.Period(func(phase float64) quantity.Volt { return quantity.Volt(volts[min(int(phase*steps), steps-1)]) })
}

// What kills the box lies across the exciter.
func TestTheKillSwitchTakesTheExcitersVolts(t *testing.T) {
	s := at(check.Cranking, check.Together)
	m := usual(sound)
	alive := acBetween(m, check.ExciterLead, check.Core, s)
	assert.Greater(t, acBetween(m, check.ExciterLead, check.Core, at(check.Cranking, check.Apart)), 1.5*alive, "the box takes one half")
	assert.Less(t, acBetween(m.With(machine.Fault{Kind: machine.KillSwitch}), check.ExciterLead, check.Core, s), 0.1)
	assert.Zero(t, acBetween(m.With(machine.Fault{Kind: machine.ExciterOpen}), check.ExciterLead, check.Core, s))
}

// A kick starter asks no battery; an electric one turns as the battery holds.
func TestCrankingSpeed(t *testing.T) {
	m := usual(sound)
	weak := m.With(machine.Fault{Kind: machine.FlatBattery, Size: 0}, machine.Fault{Kind: machine.Sulphated, Size: 10})
	assert.Less(t, weak.CrankingSpeed(), 0.7*m.CrankingSpeed())
	b := machine.Usual()
	b.Kick = true
	kick := machine.Typical(b)
	assert.InDelta(t, 450, kick.CrankingSpeed(), 1e-9)
	assert.InDelta(t, 450, kick.With(machine.Fault{Kind: machine.FlatBattery}).CrankingSpeed(), 1e-9)
	sag := dcBetween(m, check.BatteryPlus, check.BatteryMinus, at(check.Cranking, check.Together))
	assert.InEpsilon(t, m.Starter.PerVolt*sag, m.Speed(check.Cranking), 1e-3)
	assert.Less(t, sag, m.RestVolts()-0.5)
	assert.Zero(t, m.Speed(check.Stopped))
}

// Loose contacts and compression make a display unsteady, and nothing else does.
func TestFlicker(t *testing.T) {
	m := usual(sound)
	p := machine.Probing{Red: check.ExciterLead, Black: check.Core, Function: meter.VoltsAC, State: at(check.Cranking, check.Together)}
	assert.InDelta(t, m.Starter.Ripple, m.Shows(p, meter.Cheap()).Flicker, 1e-9)
	run := machine.Probing{Red: check.BatteryPlus, Black: check.PlusClamp, Function: meter.VoltsDC, State: at(check.Idling, check.Together)}
	assert.Zero(t, m.Shows(run, meter.Cheap()).Flicker)
	loose := m.With(machine.Fault{Kind: machine.BatteryTerminal, Size: 0.3})
	assert.Greater(t, loose.Shows(run, meter.Cheap()).Flicker, 0.2)
	run.Engine = check.Stopped
	assert.Zero(t, loose.Shows(run, meter.Cheap()).Flicker, "nothing shakes")
}
