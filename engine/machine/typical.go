package machine

import "math"

// Typical is a sound machine of a build, in the middle of what such machines are.
// Every figure: an assumption that hangs together (turns, flux and speed give
// the usual voltages; ohms and turns the usual coils). No source.
func Typical(b Build) Machine {
	m := Machine{
		Build: b, Ambient: 20, Rise: 70,
		Magnets:  Magnets{Flux: 0.23e-3 * broad(b), PerKelv: -0.002, Strength: 1},
		Lighting: lightingOf(b),
		Exciter:  exciterOf(b),
		Pickups:  [2]Coil{sound(1500, 160, 0.09, 1), sound(1500, 160, 0.09, 1)},
		Reluctor: Reluctor{Flux: 12e-6, Arc: 45, Edge: 6, Usual: 0.5e-3, Gap: 0.5e-3, Lambda: 8e-3},
		Bridge:   Bridge{Ohms: math.Inf(1)},
		Neutral:  Untouched(),
		Regulator: Regulator{
			SetPoint: 14.6, Junction: Junction{Volts: 0.78, Ohms: 0.016}, Ground: Contact{Ohms: 0.01},
			Silicon: Silicon{Volts: 0.52, Emission: 1.7},
		},
		Battery: battery(b),
		Harness: harness(b),
		Starter: Starter{Ohms: 0.13, PerVolt: 40, Ripple: 0.2},
		Box:     Box{Farad: 1e-6, Trigger: 1.5, Input: 1200, Clamp: 400, Volts: 220, Source: 6e3, Draw: 18, Ground: Contact{Ohms: 0.02}, Feed: Contact{Ohms: 0.05}},
		Kill:    Kill{Chafed: math.Inf(1)},
		Spark: Spark{
			Primary: sound(150, 0.5, 1.2e-3, 1), Secondary: sound(9000, 4200, 4.3, 1), Coupling: 0.9,
			Cap: 5e3, Fouling: 20e6, Kilovolts: 5,
		},
	}
	for i := range m.Phases {
		m.Phases[i] = charging(b)
	}
	if b.Volts == 6 {
		m.Regulator.SetPoint = 7.2
		m.Starter.PerVolt *= 12.0 / 6
		m.Starter.Ohms /= 2
	}
	if b.Kick {
		m.Starter = Starter{Ohms: math.Inf(1), PerVolt: 450 / float64(b.Volts), Ripple: 0.35}
	}
	return m
}

func sound(turns, ohms, henry float64, piles int) Coil {
	return Coil{Turns: turns, Ohms: ohms, Henry: henry, Ground: Untouched(), Short: Short{Piles: piles, Ohms: 0.01 * ohms}}
}

// broad is how much broader a pole is than one of twelve round the same flywheel:
// so much more flux it has, and a coil on it so much more inductance.
func broad(b Build) float64 { return 12 / float64(b.MagnetPoles) }

// charging is one phase. All give the same peak between leads at the same speed:
// a delta and a single phase need √3 the turns of a star's phase, a half wave
// somewhat more. In the room of a pile, ohms and inductance go with the square of
// its turns.
func charging(b Build) Coil {
	poles := max(b.StatorPoles, 3)
	if b.Exciter() && poles > 3 {
		poles--
	}
	piles := max(poles/b.Charge.Phases(), 1)
	more := map[Connection]float64{Star: 1, GroundedEnd: 1.9}[b.Charge]
	if more == 0 {
		more = math.Sqrt(3)
	}
	room := 3 / float64(piles)
	return sound(60, 0.22*room, 0.7e-3*room*broad(b), piles).turned(more * float64(b.Volts) / 12)
}

// lightingOf feeds bulbs of the nominal voltage from idle on.
func lightingOf(b Build) Coil {
	return sound(90, 0.5, 1e-3*broad(b), 3).turned(float64(b.Volts) / 12)
}

// exciterOf is one pole's coil.
func exciterOf(b Build) Coil {
	return sound(2400, 320*math.Sqrt(broad(b)), 0.2*broad(b), 1)
}

// turned is the coil with its turns times k, in the same room: wire of 1/k the
// section.
func (c Coil) turned(k float64) Coil {
	c.Turns *= k
	c.Ohms *= k * k
	c.Henry *= k * k
	c.Short.Ohms *= k * k
	return c
}

func battery(b Build) Battery {
	p := Battery{Charge: 0.8, AmpHour: 9, Ohms: 0.018, Accept: 0.25, Layer: 0.03}
	if b.Battery == LFP {
		p.Ohms, p.Accept = 0.012, 0.05
	}
	if b.Charge == GroundedEnd { // a small generator has a small battery
		p.AmpHour, p.Ohms, p.Accept = 4, 2*p.Ohms, 2*p.Accept
	}
	if b.Volts == 6 {
		p.Ohms, p.Accept = p.Ohms/2, p.Accept/2
	}
	return p
}

func harness(b Build) Harness {
	small := Contact{Ohms: 0.008}
	h := Harness{
		OtherPins: Contact{Ohms: 0.05}, Feed: Contact{Ohms: 0.015}, Fuse: Contact{Ohms: 0.004}, Plus: Contact{Ohms: 0.002},
		Minus: Contact{Ohms: 0.004}, Strap: Contact{Ohms: 0.004}, Key: Contact{Ohms: 0.03}, GroundLead: Contact{Ohms: 0.03},
		Drain: 0.0005, Lamp: 3.3,
	}
	if b.Charge == SinglePhase || b.Charge == GroundedEnd {
		h.Lamp = 8
	}
	if b.Volts == 6 {
		h.Lamp /= 3
	}
	for i := range h.ChargePins {
		h.ChargePins[i] = small
	}
	return h
}
