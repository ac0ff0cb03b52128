package machine

// held is the mean current that a regulator lets through when there is more: it
// keeps the mean of what it senses at its set point.
func (m *Machine) held(l *load, full float64) float64 {
	return min(l.ampsAt(m.Regulator.SetPoint), full)
}

// steadied reports whether a battery holds the voltage up between the half waves
// that a regulator lets through. Without one there is no formula.
func (m *Machine) steadied() bool {
	h := &m.Harness
	return max(h.Feed.Ohms, h.Fuse.Ohms, h.Plus.Ohms, h.Minus.Ohms) < most
}

// conducts reports whether the leads' voltage is bent by the rectifier: it takes
// current, or its thyristors short the leads.
func (m *Machine) conducts(s Supply) bool {
	shorts := m.Build.Regulating == Shunt && m.Regulator.Thyristors == AlwaysFire
	return s.RPM > 0 && (s.GeneratorAmps > 0 || s.Holding || shorts || m.diodeShorted())
}

func (m *Machine) diodeShorted() bool {
	for i := range m.Build.leads() {
		if m.Regulator.Upper[i] == DiodeShorted || m.Regulator.Lower[i] == DiodeShorted {
			return true
		}
	}
	return false
}
