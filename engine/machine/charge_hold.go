package machine

// held is the mean current that a regulator lets through when there is more: it
// keeps the mean of what it senses at its set point.
func (m *Machine) held(l *load, full float64) float64 {
	volts := m.Regulator.SetPoint
	if !m.steadied() {
		volts *= m.unsteadied()
	}
	return min(l.ampsAt(volts), full)
}

// unsteadied is about how much of the set point is left in the mean without a battery:
// the regulator stops a half wave that gets there, and the volts fall to nothing before
// the next, but for other phases. Rough: read off the time-stepped circuit of two builds
// each, within a volt.
func (m *Machine) unsteadied() float64 {
	switch {
	case m.Build.Regulating == HalfWave:
		return 0.4
	case m.Build.Charge.Phases() > 1:
		return 0.88
	}
	return 0.79
}

// holdsMean reports whether what the regulator holds is the mean. It looks between
// the half waves too: what a bad wire drops while they flow it sees only in part.
// With a winding on the core the current that it shorts comes back by the frame.
func (m *Machine) holdsMean(l *load, full float64) bool {
	const seen = 1 // V
	return full*l.sensedGives.ohms < seen && !m.grounded()
}

// steadied reports whether a battery holds the voltage up between the half waves.
// Without one there is no formula.
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
