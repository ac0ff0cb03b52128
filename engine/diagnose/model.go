package diagnose

import (
	"math"
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/fault"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

// Evidence is the answer to a check.
type Evidence struct {
	Check check.ID
	State quantity.State // Number, OverRange or Unsettled; a look is Number
	Value float64        // SI; 1 for yes and 0 for no of a look
	Doubt float64        // standard uncertainty of the meter, SI
}

// Model is the populations behind a question.
type Model struct {
	Checks []check.Check
	index  map[check.ID]int
	cases  []*caseOf
	parts  []check.Part
	ready  int // cases that are populated
	q      Question
	builds []machine.Build
	spread []float64 // of the numbers of a check over all cases
	middle []float64
}

// New begins a model; Grow makes it ready.
func New(q Question, faults []fault.Fault) *Model {
	m := &Model{Checks: check.Whole(q.Build), index: map[check.ID]int{}, q: q, builds: builds(q.Build)}
	for i, c := range m.Checks {
		m.index[c.ID] = i
	}
	m.cases = cases(faults, q, m.builds)
	for _, c := range m.cases {
		p := c.fault.Part()
		if !slices.Contains(m.parts, p) {
			m.parts = append(m.parts, p)
		}
		c.part = slices.Index(m.parts, p)
	}
	return m
}

// Grow draws some more machines; more is false once all are there. It takes a few
// milliseconds, so that a screen can draw between.
func (m *Model) Grow() (more bool) {
	if m.ready < len(m.cases) && !m.cases[m.ready].populate(m.q, m.Checks, m.builds) {
		m.ready++
	}
	if m.ready == len(m.cases) && m.spread == nil {
		m.finish()
	}
	return m.ready < len(m.cases)
}

// Ready populates all that is left.
func (m *Model) Ready() *Model {
	for m.Grow() {
	}
	return m
}

// finish works out how widely a check's numbers lie over all cases: what is
// expected where the formulas of a case do not say.
func (m *Model) finish() {
	n := len(m.Checks)
	m.spread, m.middle = make([]float64, n), make([]float64, n)
	for j := range n {
		sum, square, weight := 0.0, 0.0, 0.0
		for _, c := range m.cases {
			if v := c.views[j]; !v.vague && v.number > 0.05 {
				sum += c.weight * v.mean
				square += c.weight * (v.mean*v.mean + c.cov[j][j])
				weight += c.weight
			}
		}
		m.spread[j] = 1
		if weight > 0 {
			m.middle[j] = sum / weight
			m.spread[j] = math.Sqrt(math.Max(square/weight-m.middle[j]*m.middle[j], 0.01))
		}
	}
}

// asGoodAsOpen is what a range that reaches so far still shows of damp and dirt, in
// Ω. Common practice, no source.
const asGoodAsOpen = 2e6

// number is one scaled reading.
type number struct {
	check  int
	value  float64
	errors float64 // variance of meter and model
}

// sorted parts evidence into numbers and the rest; what refers to no check, or is no
// number, is left out.
func (m *Model) sorted(evidence []Evidence) (numbers []number, others []Evidence) {
	for _, e := range evidence {
		j, ok := m.index[e.Check]
		if !ok || math.IsNaN(e.Value) || math.IsInf(e.Value, 0) {
			continue
		}
		c := m.Checks[j]
		if c.Instrument == check.Multimeter && c.Function == meter.Ohms && e.State == quantity.Number && e.Value >= asGoodAsOpen {
			e.State = quantity.OverRange
		}
		if c.Instrument == check.Eyes || e.State != quantity.Number {
			others = append(others, e)
			continue
		}
		s := scaleOf(c)
		doubt := s.doubt(e.Value, e.Doubt)
		numbers = append(numbers, number{j, s.of(e.Value), s.errors*s.errors + doubt*doubt})
	}
	return numbers, others
}
