package machine

import (
	"math"
	"math/cmplx"

	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

// held is what a peak-hold adapter shows with a pulse of a given height, once in
// a period.
func held(peak, ohms, period, width float64, with *meter.Meter, k Kit) float64 {
	drop := float64(meter.DiodeDrop)
	if peak <= drop {
		return 0
	}
	adapter := meter.PeakHold{
		Capacitance: meter.Farad(k.AdapterFarads), Meter: quantity.Ohm(emptiedBy(with, k)), Source: quantity.Ohm(ohms),
		Width: meter.Second(min(width, period)), Period: meter.Second(period), Drop: meter.DiodeDrop,
	}
	return float64(adapter.Holds(quantity.Volt(peak)).Mean)
}

// emptiedBy is the meter and the adapter's bleeder together, Ω.
func emptiedBy(with *meter.Meter, k Kit) float64 {
	siemens := 1 / float64(with.InputDC)
	if k.BleederOhms > 0 {
		siemens += 1 / k.BleederOhms
	}
	return 1 / siemens
}

// flatWidth is how long a rectangular pulse lasts that holds a capacitor as high
// as a round one does. The round one falls from its top as 1 - (t/τ)²; it holds
// the capacitor at the share c of its height where the charge that comes in above
// it is what the load takes: (4/3)τ·(1-c)^1.5·load = c·period·ohms.
func flatWidth(tau, period, ohms, load float64) float64 {
	takes := period * ohms / load
	lost := 0.0 // 1 - c
	for range 8 {
		lost = math.Pow(0.75*(1-lost)*takes/tau, 2.0/3)
		lost = min(lost, 0.9)
	}
	if lost < 1e-9 {
		return tau
	}
	return takes * (1 - lost) / lost
}

// peakHold is a check with the adapter between probes and meter.
func (m *Machine) peakHold(p probed, with *meter.Meter, k Kit) Prediction {
	switch {
	case !(k.AdapterFarads > 0):
		return Prediction{}
	case m.excites(p) || p.red == exciter:
		return m.exciterPeak(p, with, k)
	case atPickup(p.red):
		return m.pickupPeak(p, with, k)
	case sparks(p.red):
		return m.boxPeak(p.State)
	}
	return Prediction{}
}

// boxPeak is what an adapter keeps of the discharges into the coil, an estimate: the
// shares are those of the time-stepped circuit, to a quarter or so. A gap that
// breaks down takes some of it, a bad ground most.
func (m *Machine) boxPeak(s State) Prediction {
	const kept, keptBySpark = 0.85, 0.62
	if !m.fires(s) || !(m.Spark.Primary.Joint < most) {
		return known(0)
	}
	share := kept
	if m.sparkVolts(s) > m.Spark.Kilovolts*1e3 {
		share = keptBySpark
	}
	return Prediction{Value: share * m.intoCoil() * m.boxVolts(s), Rough: true}
}

// quickest is by how much the quickest moment of a turn passes the mean speed: a
// peak is held from there.
func (m *Machine) quickest(e check.Engine) float64 { return 1 + m.unsteady(e) }

func (m *Machine) exciterPeak(p probed, with *meter.Meter, k Kit) Prediction {
	load := emptiedBy(with, k)
	h, ok := m.excited(probed{p.red, p.black, p.function, withPlug(p.State)}, load)
	if !p.BoxPlugged() {
		h, ok = halves{peak: m.sine(p, m.speed(p.Engine), load)}, true
	}
	h.peak *= m.quickest(p.Engine)
	rpm := m.speed(p.Engine)
	_, inside := m.exciterAlone(rpm)
	period := 1 / m.hertz(rpm)
	ohms := max(cmplx.Abs(inside), 1)
	width := flatWidth(math.Sqrt2/(2*math.Pi)*period, period, ohms, load)
	return Prediction{Value: held(max(h.peak, 0), ohms, period, width, with, k), Known: ok}
}

func withPlug(s State) State {
	s.Plug = check.Together
	return s
}

func (m *Machine) pickupPeak(p probed, with *meter.Meter, k Kit) Prediction {
	t := m.pulses(p, m.speed(p.Engine), math.Inf(1))
	if t.flux == 0 {
		return Prediction{Known: true}
	}
	width := flatWidth(t.edge*t.widened(), t.turn, t.ohms, emptiedBy(with, k))
	return known(held(m.quickest(p.Engine)*t.peak(), t.ohms, t.turn, width, with, k))
}
