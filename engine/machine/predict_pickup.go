package machine

import (
	"math"

	"coilbook/engine/meter"
)

// A nose that passes a pickup changes its flux by F and back: for the angle θ
// from its middle, λ(θ) = ½F·[tanh((θ+a)/w) - tanh((θ-a)/w)], with half its arc a
// and the width of an edge w. N·dλ/dt is one pulse up and one down in a turn,
// whose volt-seconds are N·F each whatever the shape: the mean magnitude of the
// voltage is 2NF a turn. The shape is an assumption, no source; ∫sech² = 2 and
// ∫sech⁴ = 4/3.

// train is what pickups give between two points.
type train struct {
	share float64 // of the coil's voltage that is seen
	flux  float64 // volt-seconds of one pulse, at the probes
	edge  float64 // s over which an edge passes
	slow  float64 // s, inductance over resistance round the coil
	turn  float64 // s
	ohms  float64 // between the points
}

// pulses is the train between two points with a meter of an input there. A coil
// and what loads it are resistances to it: inductance moves volt-seconds in time
// and loses none, unless shorted turns have it smear one pulse into the next at
// speed (see smeared). Two pickups give their pulses at different times.
func (m *Machine) pulses(p probed, rpm, input float64) train {
	var out train
	if !(rpm > 0) || !atPickup(p.red) && !atPickup(p.black) {
		return out
	}
	r := &m.Reluctor
	flux := r.Flux * r.Reach() * math.Tanh(r.Arc/2/r.Edge)
	out.turn, out.edge = 60/rpm, r.Edge/6/rpm
	for i := range m.Build.Pickups {
		var n net[float64]
		m.wireUnit(&n, p.State, i)
		volts, siemens, ok := n.seen(p.red, p.black)
		if !ok {
			continue
		}
		c := &m.Pickups[i]
		share := volts * siemens / (siemens + 1/input)
		out.share += math.Abs(share)
		out.flux += math.Abs(share) * c.Turns * flux
		out.ohms = 1 / siemens
		out.slow = c.Henry / (c.Ohms + m.Box.Input)
	}
	return out
}

func atPickup(p point) bool {
	return p == pickupA || p == pickupB || p == boxPickup || p == pickupTwo
}

// wireUnit is the ignition with one volt in one pickup.
func (m *Machine) wireUnit(n *net[float64], s State, pickup int) {
	unit := [2]float64{}
	unit[pickup] = 1
	n.wind(pickupA, pickupB, pickupTouch, m.Pickups[0].resistive(unit[0]))
	if m.Build.Pickups > 1 {
		n.wind(pickupTwo, core, pickupTwoTouch, m.Pickups[1].resistive(unit[1]))
	}
	n.joinPlug(m, s)
	n.joinIgnition(m, s)
}

// widened is by how much the inductance makes an edge longer: the variance of
// sech² is π²/12 of its width squared, and that of the exponential adds to it.
func (t train) widened() float64 {
	return math.Sqrt(1 + 12/(math.Pi*math.Pi)*(t.slow/t.edge)*(t.slow/t.edge))
}

// peak is that of a pulse at the probes.
func (t train) peak() float64 {
	if t.flux == 0 {
		return 0
	}
	return t.flux / (2 * t.edge * t.widened())
}

// shown is what a detector makes of it. The mean is nothing, so that those that
// take magnitudes agree.
func (t train) shown(d detector) float64 {
	if t.flux == 0 {
		return 0
	}
	if d.kind != meter.TrueRMS {
		return meter.FullWaveFactor * 2 * t.flux / t.turn
	}
	return t.peak() * math.Sqrt(2*4.0/3*t.edge*t.widened()/t.turn)
}

// smeared reports a pickup with turns that are shorted, or closed over the core,
// at the speed of an engine that runs: there is no formula for it.
func (m *Machine) smeared(p probed) bool {
	closed := func(c *Coil) bool { return c.Short.Share > 0 || c.Ground.Ohms < most }
	return Running(p.Engine) > 0 && (atPickup(p.red) || atPickup(p.black)) && (closed(&m.Pickups[0]) || closed(&m.Pickups[1]))
}

// fires reports whether the box sets off a spark in a state, at the quickest of its
// turns.
func (m *Machine) fires(s State) bool {
	return !m.Box.Dead && !m.mute(s) && m.quickest(s.Engine)*m.triggerVolts(s) > m.Box.Trigger
}

// mute reports a box that is stopped or unplugged.
func (m *Machine) mute(s State) bool {
	return m.killed(s) || !s.BoxPlugged() || !m.Build.Exciter() && m.Kill.Chafed < KillPull
}

// triggerVolts is the peak of the pickup's pulses at the box.
func (m *Machine) triggerVolts(s State) float64 {
	at := probed{red: boxPickup, black: boxGround, State: s}
	return m.pulses(at, m.speed(s.Engine), math.Inf(1)).peak()
}
