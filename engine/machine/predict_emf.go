package machine

import (
	"math"
	"math/cmplx"

	"coilbook/engine/circuit"
)

// CrankingSpeed is how fast the starter turns the engine, in rpm, with the
// battery's voltage as the starter leaves it and the key on. A kick starter asks
// no battery.
func (m Machine) CrankingSpeed() float64 {
	now := m.InState(State{Key: true})
	if now.loose() {
		return now.loosened(0.5).crankingSpeed()
	}
	return now.crankingSpeed()
}

func (m *Machine) crankingSpeed() float64 {
	if m.Build.Kick {
		return m.Starter.PerVolt * float64(m.Build.Volts)
	}
	var n net[float64]
	m.wireSupply(&n, State{Key: true, Engine: cranking}, false)
	volts, _, _ := n.seen(batteryPlus, batteryMinus)
	if volts < TurnsFrom*float64(m.Build.Volts) {
		return 0
	}
	return m.Starter.PerVolt * volts
}

// hertz is the frequency of the windings at a speed in rpm.
func (m *Machine) hertz(rpm float64) float64 {
	return circuit.Frequency(float64(m.Build.MagnetPoles), rpm)
}

// emf is the rms voltage of a coil's turns with nothing wrong.
func (m *Machine) emf(c *Coil, hertz float64) float64 {
	return circuit.EMF(hertz, c.Turns, WindingFactor, m.Magnets.Flux)
}

// behind is where a phase stands in the period: phase 1 leads phase 2 by a third
// of it, or by a quarter where there are two.
func (b Build) behind(phase int) complex128 {
	if b.Charge == TwoPhase {
		return [...]complex128{1, -1i}[phase]
	}
	return turned[phase]
}

var turned = [...]complex128{1, complex(-0.5, -math.Sqrt(3)/2), complex(-0.5, math.Sqrt(3)/2)}

// phase is one phase of the charge winding at a frequency.
func (m *Machine) phase(i int, hertz float64) piece[complex128] {
	c := &m.Phases[i]
	return c.reactive(complex(m.emf(c, hertz), 0)*m.Build.behind(i), 2*math.Pi*hertz)
}

// windTurning is the generator's coils with their volts, and what lies on them at
// the plug.
func (m *Machine) windTurning(n *net[complex128], s State, hertz float64) {
	for i := range m.Build.phases() {
		first, second := m.Build.ends(i)
		n.wind(first, second, phaseTouch1+point(i), m.phase(i, hertz))
	}
	n.joinPlug(m, s)
	if m.Build.Exciter() {
		n.wind(exciter, core, exciterTouch, m.Exciter.reactive(complex(m.emf(&m.Exciter, hertz), 0), 2*math.Pi*hertz))
	}
	if m.Build.Lighting {
		n.wind(lighting, core, lightingTouch, m.Lighting.reactive(complex(m.emf(&m.Lighting, hertz), 0), 2*math.Pi*hertz))
	}
}

// sine is the peak of the sinusoid that a meter sees between two points, no
// current being taken from the winding but its own.
func (m *Machine) sine(p probed, rpm, input float64) float64 {
	if !m.swings(p.red) && !m.swings(p.black) {
		return 0
	}
	var n net[complex128]
	m.windTurning(&n, p.State, m.hertz(rpm))
	if !m.swings(p.red) && p.red != core || !m.swings(p.black) && p.black != core {
		n.joinIgnition(m, p.State)
		n.joinSupply(m, p.State)
		n.join(batteryPlus, batteryMinus, m.Battery.Ohms)
	}
	volts, siemens, ok := n.seen(p.red, p.black)
	if !ok {
		return 0
	}
	return math.Sqrt2 * cmplx.Abs(volts*siemens/(siemens+complex(1/input, 0)))
}

// swings reports whether a point is at the generator's windings.
func (m *Machine) swings(p point) bool {
	return p >= charge1 && p < charge1+4 || p >= regulator1 && p < regulator1+4 || p == exciter || p == boxExciter || p == lighting
}

// atRegulator reports whether a point is between winding and rectifier.
func atRegulator(p point) bool {
	return p >= charge1 && p < charge1+4 || p >= regulator1 && p < regulator1+4
}
