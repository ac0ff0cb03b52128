package machine

// acrossPin reports a probing across one pin of the plug that is together.
func acrossPin(p probed) (lead int, ok bool) {
	if p.Plug != together {
		return 0, false
	}
	for i := range mostLeads {
		at, other := chargeLead(i), regulatorLead(i)
		if p.red == at && p.black == other || p.red == other && p.black == at {
			return i, true
		}
	}
	return 0, false
}

const mostLeads = 4

// pinDrop is what the current of a lead drops over its pin. A shunt regulator has
// the generator give all its current whether or not the battery takes it; the
// current of a lead is taken for 0.75 of the direct current, between 0.82 (three
// phases that never stop) and half waves.
func (m *Machine) pinDrop(lead int, s State) float64 {
	if lead >= m.Build.leads() || !(m.pin(lead) < most) {
		return 0
	}
	free := *m
	if m.Build.Regulating == Shunt {
		free.Regulator.Thyristors = NeverFire
	}
	return 0.75 * free.charge(s).GeneratorAmps * m.pin(lead)
}
