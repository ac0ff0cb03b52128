package machine

import (
	"math"

	"coilbook/engine/check"
)

// Seen is how likely eyes answer a look with yes.
func (m Machine) Seen(l check.Look, s State) float64 {
	now := m.InState(s)
	switch l {
	case check.FuseBlown:
		return certain(now.Harness.Fuse.Ohms > 1)
	case check.PlugBurnt:
		return burnt(now.Harness)
	case check.SparkAtGoodPlug, check.SparkWarm:
		now.Spark.Cap, now.Spark.Fouling = goodCap, goodPlug
	case check.SparkAtLead:
		now.Spark.Cap, now.Spark.Fouling = 0, goodPlug
	case check.SparkWithoutKill:
		now.Kill = Kill{Chafed: math.Inf(1)}
	}
	return now.seesSpark(s)
}

// Cap and plug that are known to be good, Ω.
const (
	goodCap  = 5e3
	goodPlug = 20e6
)

func certain(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}

// burnt is how likely a plug looks burnt: one that drops volts mostly does, and
// an old one that does not at times. Shares: assumptions, no source.
func burnt(h Harness) float64 {
	worst := h.OtherPins.Ohms + h.OtherPins.Loose - 1
	for _, p := range h.ChargePins {
		worst = max(worst, p.Ohms+p.Loose)
	}
	if worst > 0.3 {
		return 0.8
	}
	return 0.04
}

// seesSpark is how likely a spark is seen: sure where the pickup gives well over
// the trigger and the coil well over what the gap needs, never well below, and a
// matter of luck between.
func (m *Machine) seesSpark(s State) float64 {
	if m.Box.Dead || m.mute(s) {
		return 0
	}
	// At the quicker half of its turns the crank gives the pickup more.
	pickup := (1 + m.Starter.Ripple) * m.triggerVolts(s)
	return passes(pickup/m.Box.Trigger) * passes(m.sparkVolts(s)/(m.Spark.Kilovolts*1e3))
}

// passes is how likely a voltage is enough that is worked out as a share of what
// is needed. Its spread: an assumption, no source.
func passes(ratio float64) float64 {
	const spread = 0.075
	if !(ratio > 0) {
		return 0
	}
	return 1 / (1 + math.Pow(ratio, -1/spread))
}

// sparkVolts is the peak at the plug's gap when the box's capacitor, as full as
// one turn of the crank makes it, discharges into the coil: over the ratio of the
// windings, less what a bad ground takes in the first moment and what the plug
// leaks. The two factors without a derivation are fits to the time-stepped coil.
func (m *Machine) sparkVolts(s State) float64 {
	p := &m.Spark
	one, two := &p.Primary, &p.Secondary
	if math.IsInf(one.Joint, 1) || math.IsInf(two.Joint, 1) || math.IsInf(p.Cap, 1) {
		return 0
	}
	raised := m.boxVolts(s) * p.couples() * math.Sqrt(two.Henry/one.Henry) * m.intoCoil()
	inside := 0.35 * two.Henry / math.Sqrt(m.Box.Farad*one.Henry)
	return raised * p.Fouling / (p.Fouling + p.Cap + inside)
}

// couples is how the coil's windings do, with turns that may be shorted.
func (p *Spark) couples() float64 {
	coupling := p.Coupling
	for _, c := range [...]*Coil{&p.Primary, &p.Secondary} {
		if c.Short.Share > 0 {
			coupling *= PassesShort * max(1-c.Short.Share, 0)
		}
	}
	return coupling
}

// intoCoil is the share of the box's voltage that a bad ground leaves for the coil
// in the first moment.
func (m *Machine) intoCoil() float64 {
	coupling := m.Spark.couples()
	surge := math.Sqrt(m.Spark.Primary.Henry * (1 - coupling*coupling) / m.Box.Farad)
	return surge / (surge + 0.45*m.Box.Ground.Ohms)
}

// boxVolts is what the box's capacitor holds at a spark while cranking.
func (m *Machine) boxVolts(s State) float64 {
	if m.killed(s) {
		return 0
	}
	rpm := m.speed(s.Engine)
	if !(rpm > 0) {
		return 0
	}
	if m.Build.Exciter() {
		peak, inside := m.exciterAlone(rpm)
		ohms := real(inside) + m.Box.Ground.Ohms + m.Harness.OtherPins.Ohms
		if !(ohms < most) || m.Box.Shorted {
			return 0
		}
		turn := 60 / rpm
		fills := -math.Expm1(-turn / 2 / ((ohms + 1) * m.Box.Farad)) // half the time it conducts
		return min(max(peak/(1+ohms/max(m.Kill.Chafed, least))-boxKnee, 0)*fills, m.Box.Clamp)
	}
	var n net[float64]
	m.wireDirect(&n, s, false)
	feed := metered(&n, probed{red: boxFeed, black: boxGround, State: s}, math.Inf(1))
	if feed < ConvertsFrom*float64(m.Build.Volts) {
		return 0
	}
	return m.Box.Volts * feed / float64(m.Build.Volts) * -math.Expm1(-60/rpm/(m.Box.Source*m.Box.Farad))
}

// keyOffAmps flows out of the battery with the key off: what drains it, and what
// a shorted leg of the rectifier lets back.
func (m Machine) keyOffAmps() float64 {
	now := m.InState(State{})
	if math.IsInf(now.Harness.Fuse.Ohms, 1) {
		return 0
	}
	amps := now.Harness.Drain * now.RestVolts() / float64(now.Build.Volts)
	for i := range now.Build.leads() {
		if now.Regulator.Upper[i] == DiodeShorted && now.Regulator.Lower[i] == DiodeShorted {
			amps += now.RestVolts() / 0.1
		}
	}
	return amps
}
