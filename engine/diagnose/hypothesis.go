package diagnose

import (
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// hypothesis is a case, seen with a meter that has one of the detectors it may
// have. What a meter makes of half waves and pulses depends on it as much as on the
// machine, and it is the same for every reading.
type hypothesis struct {
	*caseOf
	detector int
	prior    float64
}

// detectors are those that a meter may have.
func detectors(m meter.Meter) []meter.Detector {
	if len(m.Detectors) > 0 {
		return m.Detectors
	}
	return []meter.Detector{meter.AverageAC, meter.AverageDC, meter.HalfWave, meter.TrueRMS}
}

// having is the meter with one of its detectors.
func having(m meter.Meter, d meter.Detector) meter.Meter {
	m.Detectors = []meter.Detector{d}
	return m
}

// alternates reports a check whose reading depends on the detector. The estimate of
// a drop over a pin is too rough to.
func alternates(c check.Check) bool {
	return c.Instrument == check.Multimeter && c.Function == meter.VoltsAC && c.Measures != spec.PlugDrop
}

func (m *Model) anyAlternates(numbers []number) bool {
	return slices.ContainsFunc(numbers, func(x number) bool { return alternates(m.Checks[x.check]) })
}

// suppose lists the hypotheses: a case's follow each other.
func (m *Model) suppose() {
	n := len(detectors(m.q.Meter))
	for _, c := range m.cases {
		for d := range n {
			m.hypotheses = append(m.hypotheses, hypothesis{c, d, c.weight / float64(n)})
		}
	}
}
