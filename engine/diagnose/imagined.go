package diagnose

import (
	"math"

	"coilbook/engine/machine"
)

// widened is a machine of any maker, in any state of care: what no probe knows
// beforehand, and what a simulation of one family of machines leaves out. Makers match
// some figures to others, and so does this: a weak pickup fires a box that wants
// little, fewer turns stand in a stronger flux. The spreads: assumptions, no source;
// the bundled limits of such coils span as much.
func widened(m machine.Machine, luck machine.Chance) machine.Machine {
	flux, wire := luck.About(0.2), luck.About(0.45)
	m.Magnets.Flux *= flux
	turns := luck.About(0.25) / flux
	for i := range m.Phases {
		m.Phases[i] = turned(m.Phases[i], turns)
		m.Phases[i].Ohms *= wire
	}
	exciter := weakExciter * luck.About(0.45) / flux
	m.Exciter = turned(m.Exciter, exciter)
	m.Exciter.Ohms *= luck.About(0.6) / (exciter * exciter) // of thinner wire, for the pole is as large
	if m.Build.Exciter() {
		m.Spark.Kilovolts *= math.Min(exciter, 1) // a coil that makes do with it
	}
	pickup, ohms, force := luck.About(0.3), luck.About(0.35), luck.About(0.3)
	for i := range m.Pickups {
		m.Pickups[i] = turned(m.Pickups[i], pickup)
		m.Pickups[i].Ohms *= ohms
	}
	m.Reluctor.Flux *= force
	m.Reluctor.Gap *= luck.About(0.25)
	m.Box.Trigger *= pickup * force
	m.Box.Volts *= luck.About(0.25)
	m.Spark.Primary.Ohms *= luck.About(0.4)
	m.Spark.Secondary.Ohms *= luck.About(0.4)
	m.Spark.Cap *= luck.About(0.4)
	m.Regulator.SetPoint += 0.15 * luck.Normal() * float64(m.Build.Volts) / 12
	m.Battery.Charge = luck.Between(0.3, 1) // what does not charge stands low
	m.Battery.Ohms *= luck.About(0.3)
	m.Battery.Accept *= luck.About(0.6)
	m.Harness.Lamp *= luck.About(0.4)
	m.Starter.PerVolt *= luck.About(0.15)
	return m
}

// weakExciter is what exciters give on the whole, of what the typical one does: a plain
// meter shows anything from 20 to 150 V of sound ones while cranking. Common practice,
// no source.
const weakExciter = 0.7

// turned is a coil with so many times the turns.
func turned(c machine.Coil, k float64) machine.Coil {
	c.Turns *= k
	c.Ohms *= k * k
	c.Henry *= k * k
	c.Short.Ohms *= k * k
	return c
}

// sizeOf is that of a fault that is graver than a share of such faults, from 0 to 1,
// for a machine of any maker: sizes that span decades are spread evenly over them.
// The spans: assumptions, no source.
func sizeOf(k machine.Kind, b machine.Build, share float64) float64 {
	if s, ok := decades[k]; ok {
		return s[0] * math.Pow(s[1]/s[0], share)
	}
	if s, ok := portions[k]; ok {
		return s[0] + share*(s[1]-s[0])
	}
	if k == machine.LowSetPoint {
		return float64(b.Volts) * (1.13 - share*(1.13-1.03))
	}
	return machine.Size(k, b, share)
}

var decades = map[machine.Kind][2]float64{
	machine.PhaseJoint: {0.2, 10}, machine.RegulatorGround: {0.05, 5}, machine.ChargePin: {0.1, 10}, machine.FeedWire: {0.05, 5},
	machine.BatteryTerminal: {0.01, 1.5}, machine.GroundStrap: {0.02, 1.5}, machine.Sulphated: {4, 30}, machine.Drain: {0.03, 1},
	machine.PlugPin: {30, 1e5}, machine.KillWire: {0.1, 1000}, machine.PlugFouled: {2e3, 2e5}, machine.IgnitionGround: {10, 4000},
	machine.BoxFeed: {5, 500},
}

var portions = map[machine.Kind][2]float64{
	machine.PhaseShorted: {0.07, 0.5}, machine.WeakMagnets: {0.25, 0.65}, machine.PickupShorted: {0.15, 0.75},
	machine.GapWide: {0.5e-3, 2.3e-3}, machine.ExciterShorted: {0.15, 0.7}, machine.PrimaryShorted: {0.25, 0.85},
	machine.SecondaryTurns: {0.25, 0.85},
}
