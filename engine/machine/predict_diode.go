package machine

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/circuit"
	"coilbook/engine/meter"
)

// diodeRange is what a diode range shows at two points of a regulator that is
// unplugged. Its current takes the way with the fewest junctions; ways of as many
// beside each other share it. A thyristor blocks both ways: nothing fires it.
func (m *Machine) diodeRange(p probed, with *meter.Meter) Prediction {
	top, has := with.Highest(meter.Diode)
	if !has || p.Plug != check.RegulatorApart || p.Engine != check.Stopped {
		return Prediction{}
	}
	red, ofIt := m.atUnplugged(p.red)
	black, also := m.atUnplugged(p.black)
	if !ofIt || !also {
		return Prediction{}
	}
	b := m.valves()
	volts, conducts := 0.0, b.same(red, black)
	if !conducts {
		var junctions, abreast float64
		if junctions, abreast, conducts = b.way(red, black); conducts {
			volts = m.Regulator.Silicon.across(junctions, abreast, with.Drive)
		}
	}
	if !conducts || volts > top.Full {
		return open()
	}
	return known(volts)
}

// A regulator by itself: its leads, then plus and body.
const (
	plusAt = mostLeads + iota
	bodyAt
	unpluggedPoints
)

// atUnplugged is which of them a point is.
func (m *Machine) atUnplugged(p point) (at int, ok bool) {
	switch {
	case p == regulatorPlus:
		return plusAt, true
	case p == regulatorBody:
		return bodyAt, true
	}
	i := int(p) - int(regulator1)
	return i, i >= 0 && i < m.Build.leads()
}

// bridge is what conducts between the points of a regulator by itself.
type bridge struct {
	joined   [unpluggedPoints]int // points of one number are shorted together
	conducts [unpluggedPoints][unpluggedPoints]float64
}

func (b *bridge) same(i, j int) bool { return b.joined[i] == b.joined[j] }

// short joins what a shorted valve joins.
func (b *bridge) short(i, j int) {
	from, to := b.joined[j], b.joined[i]
	for k := range b.joined {
		if b.joined[k] == from {
			b.joined[k] = to
		}
	}
}

// valves lays them: shorted ones first, as they say which points are one.
func (m *Machine) valves() *bridge {
	b := &bridge{}
	for i := range b.joined {
		b.joined[i] = i
	}
	reg, kind := &m.Regulator, m.Build.Regulating
	for i := range m.Build.leads() {
		if reg.Upper[i] == DiodeShorted {
			b.short(i, plusAt)
		}
		if reg.Lower[i] == DiodeShorted && kind != HalfWave {
			b.short(bodyAt, i)
		}
	}
	for i := range m.Build.leads() {
		if reg.Upper[i] == DiodeGood && kind == Shunt {
			b.conducts[b.joined[i]][b.joined[plusAt]]++
		}
		if reg.Lower[i] == DiodeGood && kind != HalfWave {
			b.conducts[b.joined[bodyAt]][b.joined[i]]++
		}
	}
	return b
}

// way is over how many junctions in a row the current gets from one point to
// another, and over how many such rows abreast; none is longer than two.
func (b *bridge) way(red, black int) (junctions, abreast float64, ok bool) {
	from, to := b.joined[red], b.joined[black]
	if n := b.conducts[from][to]; n > 0 {
		return 1, n, true
	}
	for k := range unpluggedPoints {
		// Of unequal halves in a row each takes the same current.
		abreast += math.Sqrt(b.conducts[from][k] * b.conducts[k][to])
	}
	return 2, abreast, abreast > 0
}

// across is what so many junctions in a row drop of a meter's drive, where so many
// rows share its current.
func (s Silicon) across(junctions, abreast float64, by meter.Drive) float64 {
	one, volts := circuit.DiodeThrough(s.Volts, 1e-3, s.Emission), 0.0
	const rounds = 8 // each is some twenty times nearer
	for range rounds {
		amps := (float64(by.Volts) - volts) / float64(by.Ohms())
		volts = junctions * one.Volts(amps/abreast)
	}
	return volts
}
