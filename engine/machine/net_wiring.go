package machine

import "coilbook/engine/check"

// shortedDiode is what is left of one, Ω. An assumption, no source.
const shortedDiode = 1e-3

// join puts a resistance of a contact or a wire between two points; open ones are
// left out.
func (n *net[T]) join(a, b point, ohms float64) {
	if ohms < most {
		n.admit(a, b, of[T](1/max(ohms, least)))
	}
}

func of[T float64 | complex128](x float64) (t T) {
	switch p := any(&t).(type) {
	case *float64:
		*p = x
	case *complex128:
		*p = complex(x, 0)
	}
	return t
}

// joinPlug joins the charge leads, what may lie between them, and the lead to
// the core.
func (n *net[T]) joinPlug(m *Machine, s State) {
	if b := m.Bridge; b.Ohms < most {
		n.join(chargeLead(b.From-1), chargeLead(b.To-1), b.Ohms)
	}
	if m.Build.Charge == Star {
		n.join(neutral, core, m.Neutral.Ohms)
	}
	n.join(groundLead, core, m.Harness.GroundLead.Ohms)
	for i := range m.Build.leads() {
		if s.Plug == together {
			n.join(chargeLead(i), regulatorLead(i), m.Harness.ChargePins[i].Ohms)
		}
	}
	if !s.BoxPlugged() {
		return
	}
	if m.Build.Exciter() {
		n.join(exciter, boxExciter, m.Harness.OtherPins.Ohms)
	}
	n.join(pickupA, boxPickup, m.Harness.OtherPins.Ohms)
	n.join(pickupB, boxGround, m.Harness.OtherPins.Ohms)
}

// joinIgnition joins the box, what stops it, and the way to the plug.
func (n *net[T]) joinIgnition(m *Machine, s State) {
	n.join(boxPickup, boxGround, m.Box.Input)
	n.join(boxGround, core, m.Box.Ground.Ohms)
	kill := boxExciter
	if !m.Build.Exciter() {
		kill = killWire
		n.join(keyOut, boxFeed, m.Box.Feed.Ohms)
		n.join(boxFeed, boxGround, m.Box.Draw)
		if s.Off != check.KillWireOff {
			n.join(killWire, boxFeed, KillPull)
		}
	}
	if m.killed(s) {
		n.join(kill, core, KillContact)
	}
	n.join(kill, core, m.Kill.Chafed)
	if s.Off != check.SparkPlugOff {
		n.join(sparkLead, capEnd, m.Spark.Cap)
	}
	if s.Off != check.CapOff {
		n.join(capEnd, core, m.Spark.Fouling)
	}
}

func (m *Machine) killed(s State) bool { return !s.Key || m.Kill.Stuck }

// joinSupply joins regulator, battery and loads, all at rest.
func (n *net[T]) joinSupply(m *Machine, s State) {
	for i := range m.Build.leads() {
		if m.Regulator.Upper[i] == DiodeShorted {
			n.join(regulatorLead(i), regulatorPlus, shortedDiode)
		}
		if m.Regulator.Lower[i] == DiodeShorted && m.Build.Regulating != HalfWave {
			n.join(regulatorLead(i), regulatorBody, shortedDiode)
		}
	}
	h := &m.Harness
	n.join(regulatorBody, frame, m.Regulator.Ground.Ohms)
	if s.Plug != check.RegulatorApart {
		n.join(regulatorPlus, fuseIn, h.Feed.Ohms)
	}
	n.join(fuseIn, plusClamp, h.Fuse.Ohms)
	n.join(plusClamp, batteryPlus, h.Plus.Ohms)
	n.join(batteryMinus, core, h.Minus.Ohms)
	n.join(core, frame, h.Strap.Ohms)
	if s.Key {
		n.join(fuseIn, keyOut, h.Key.Ohms)
	}
	n.join(keyOut, frame, h.Lamp)
	n.join(fuseIn, frame, float64(m.Build.Volts)/h.Drain)
	if s.Engine == cranking {
		n.join(plusClamp, core, m.Starter.Ohms)
	}
}

// windAtRest is all coils as direct current meets them.
func windAtRest(n *net[float64], m *Machine) {
	windChargeAtRest(n, m)
	if m.Build.Exciter() {
		n.wind(exciter, core, exciterTouch, m.Exciter.resistive(0))
	}
	if m.Build.Lighting {
		n.wind(lighting, core, lightingTouch, m.Lighting.resistive(0))
	}
	n.wind(pickupA, pickupB, pickupTouch, m.Pickups[0].resistive(0))
	if m.Build.Pickups > 1 {
		n.wind(pickupTwo, core, pickupTwoTouch, m.Pickups[1].resistive(0))
	}
	n.wind(coilPrimary, core, primaryTouch, m.Spark.Primary.resistive(0))
	n.wind(sparkLead, core, secondaryTouch, m.Spark.Secondary.resistive(0))
}

func windChargeAtRest(n *net[float64], m *Machine) {
	for i := range m.Build.phases() {
		first, second := m.Build.ends(i)
		n.wind(first, second, phaseTouch1+point(i), m.Phases[i].resistive(0))
	}
}
