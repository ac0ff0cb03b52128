package machine

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/meter"
)

// liveVolts between the probes make a reading of ohms meaningless: a digit of the
// lowest range of a meter that drives 1 mA. An assumption, no source.
const liveVolts = 1e-4

// ohms is the resistance between two points. Diodes and thyristors are off: the
// voltage of an ohms test stays under their knees. Capacitors are open. All that
// turns gives volts, and no ohms.
func (m *Machine) ohms(p probed, with *meter.Meter) Prediction {
	if p.Engine != check.Stopped {
		return Prediction{}
	}
	var n net[float64]
	m.wireDirect(&n, p.State, false)
	volts, siemens, ok := n.seen(p.red, p.black)
	switch {
	case !ok:
		return open()
	case math.Abs(volts) > liveVolts:
		return Prediction{}
	}
	if top, ok := with.Highest(meter.Ohms); ok && !(1/siemens <= top.Full) {
		return open()
	}
	return known(1 / siemens)
}

func open() Prediction { return Prediction{Value: math.Inf(1), Open: true, Known: true} }

// wireDirect is all of the machine for direct current, the generator giving none.
func (m *Machine) wireDirect(n *net[float64], s State, charging bool) {
	windAtRest(n, m)
	n.joinPlug(m, s)
	n.joinIgnition(m, s)
	n.joinSupply(m, s)
	m.runBattery(n, charging)
}

// wireSupply is what of it carries the supply's current. A winding does only
// where a diode does not keep it apart.
func (m *Machine) wireSupply(n *net[float64], s State, charging bool) {
	if m.diodeShorted() {
		windChargeAtRest(n, m)
		n.joinPlug(m, s)
	}
	if !m.Build.Exciter() {
		n.joinIgnition(m, s)
	}
	n.joinSupply(m, s)
	m.runBattery(n, charging)
}

func (m *Machine) runBattery(n *net[float64], charging bool) {
	ohms := m.Battery.Ohms
	if charging {
		ohms += m.Battery.Accept
	}
	n.run(batteryPlus, batteryMinus, leg[float64]{m.RestVolts(), max(ohms, least)})
}
