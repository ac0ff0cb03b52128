package machine

// Beside is where a fault of another kind sits that this one led to: on the same lead
// or its phase, and of the lead's diodes at the one to ground, through which a winding
// on the core is shorted in every other half wave. It is 1 for a kind that has no place
// to name, and 0 where a half-wave regulator has no such diode.
func (f Fault) Beside(k Kind, b Build, c Chance) int {
	sites := Sites(k, b)
	if sites == 0 {
		return 1
	}
	lead := f.lead(b)
	if lead == 0 {
		return 1 + c.Pick(sites)
	}
	switch k {
	case PhaseOpen, PhaseToCore, PhaseShorted, PhaseJoint:
		return phaseOf(lead, b)
	case DiodeIsOpen, DiodeIsShorted:
		if sites < 2*b.Charge.Leads() {
			return 0
		}
		return b.Charge.Leads() + lead
	}
	return min(lead, sites)
}

// lead is the first charge lead that a fault sits on, 0 for one that sits on none.
func (f Fault) lead(b Build) int {
	switch f.Kind {
	case PhaseOpen, PhaseToCore, PhaseShorted, PhaseJoint:
		if b.Charge == TwoPhase {
			return 2*f.At - 1
		}
		return f.At
	case PhaseToPhase, ChargePin:
		return f.At
	case DiodeIsOpen, DiodeIsShorted:
		if f.At > b.Charge.Leads() {
			return f.At - b.Charge.Leads()
		}
		return f.At
	}
	return 0
}

// phaseOf is the phase that a lead comes from; in a delta two do, and the one of its
// number counts.
func phaseOf(lead int, b Build) int {
	if b.Charge == TwoPhase {
		return (lead + 1) / 2
	}
	return min(lead, b.Charge.Phases())
}
