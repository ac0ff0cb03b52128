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
	naming naming
	ready  int // cases that are populated
	// hypotheses stand once all cases are ready.
	hypotheses []hypothesis
	unlisted   unlisted
	slips      float64 // how often a reading is a mistake, by the catalogue
	// prior and first are the suspects and the outcomes of the checks before any
	// answer.
	prior  *Suspects
	first  [][][]float64
	q      Question
	builds []machine.Build
	spread []float64 // of the numbers of a check over all cases
	middle []float64
}

// New begins a model; Grow makes it ready.
func New(q Question, from fault.Catalogue) *Model {
	m := &Model{Checks: checks(q), index: map[check.ID]int{}, q: q, builds: builds(q.Build)}
	m.slips, m.unlisted.Unlisted = from.Slips.Share, from.Unlisted[q.Symptom]
	for i, c := range m.Checks {
		m.index[c.ID] = i
	}
	m.cases = cases(from.Faults, q, m.builds)
	var sets []fault.Parts
	for _, c := range m.cases {
		sets = append(sets, c.fault.Parts())
	}
	slices.SortFunc(sets, fault.Parts.Compare)
	m.naming = namingOf(slices.Compact(sets))
	for _, c := range m.cases {
		c.set = slices.Index(m.naming.sets, c.fault.Parts())
	}
	return m
}

func checks(q Question) []check.Check {
	if q.Symptom == fault.OnTheBench {
		return check.OnTheBench(q.Build)
	}
	return check.Whole(q.Build)
}

// Grow draws one more machine, or works out some more of what it shows, or of what
// follows from all of them; more is false once nothing is left. A step takes a
// millisecond or a few, so that a screen can do as many as it has time for.
func (m *Model) Grow() (more bool) {
	switch {
	case m.ready < len(m.cases):
		if !m.cases[m.ready].populate(m.q, m.Checks, m.builds) {
			m.ready++
		}
	case m.spread == nil:
		m.finish()
	case m.prior == nil:
		s := m.Weigh(nil)
		m.prior = &s
	default:
		m.foresee()
	}
	return len(m.first) < len(m.Checks)
}

// foresee works out one more check's outcomes before any answer, so that the first
// question does not take long all at once.
func (m *Model) foresee() {
	fits := m.fits(*m.prior, nil)
	if j := len(m.first); j < len(m.Checks) {
		var table [][]float64
		if !inRow(m.Checks[j]) { // which is looked ahead to as a whole
			_, table = m.table(m.outcomes(j, *m.prior, nil, fits))
			table = whole(table)
		}
		m.first = append(m.first, table)
	}
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
	m.suppose()
	n := len(m.Checks)
	m.spread, m.middle = make([]float64, n), make([]float64, n)
	for j := range n {
		sum, square, weight := 0.0, 0.0, 0.0
		for _, c := range m.cases {
			if v := c.views[j]; !v.vague && v.number > 0.05 {
				w := c.weight / float64(len(v.means))
				for _, mean := range v.means {
					sum += w * mean
					square += w * (mean*mean + c.cov[j][j])
					weight += w
				}
			}
		}
		m.spread[j] = 1
		if weight > 0 {
			m.middle[j] = sum / weight
			m.spread[j] = math.Sqrt(math.Max(square/weight-m.middle[j]*m.middle[j], 0.01))
		}
	}
	m.supposeUnlisted()
}

// asGoodAsOpen is what a range that reaches so far still shows of damp and dirt, in
// Ω, where nothing should be shown. Common practice, no source.
const asGoodAsOpen = 0.5e6

// plainly is an answer as it is weighed: megohms where a sound machine is open are
// open, and volts or amps beyond the range are more than that, as far as one knows.
func (m *Model) plainly(e Evidence, c check.Check) Evidence {
	if c.Instrument != check.Multimeter {
		return e
	}
	switch {
	case c.Function == meter.Ohms && e.State == quantity.Number && e.Value >= asGoodAsOpen:
		e.State = quantity.OverRange
	case c.Function != meter.Ohms && c.Function != meter.Diode && e.State == quantity.OverRange:
		if r, ok := c.Dial(m.q.Meter); ok {
			e.State, e.Value, e.Doubt = quantity.Number, 1.3*r.Full, 0.3*r.Full
		}
	}
	return e
}

// number is one scaled reading.
type number struct {
	check  int
	at     int // in the evidence
	value  float64
	model  float64 // variance of what formulas leave out: shared by readings of one check
	errors float64 // variance of that and the meter
}

// asked is all that one check was answered.
type asked struct {
	check   int
	answers []given
}

type given struct {
	Evidence
	at int // in the evidence
}

// sorted takes the numbers out of the evidence, and puts together what one check was
// answered; what refers to no check, or is no number, is left out.
func (m *Model) sorted(evidence []Evidence) (numbers []number, checks []asked) {
	for at, e := range evidence {
		j, ok := m.index[e.Check]
		if !ok || math.IsNaN(e.Value) || math.IsInf(e.Value, 0) {
			continue
		}
		c := m.Checks[j]
		e = m.plainly(e, c)
		i := slices.IndexFunc(checks, func(a asked) bool { return a.check == j })
		if i < 0 {
			i = len(checks)
			checks = append(checks, asked{check: j})
		}
		checks[i].answers = append(checks[i].answers, given{e, at})
		if c.Instrument != check.Eyes && e.State == quantity.Number {
			s := scaleOf(c)
			doubt := s.doubt(e.Value, e.Doubt)
			model := s.errors * s.errors
			numbers = append(numbers, number{j, at, s.of(e.Value), model, model + doubt*doubt})
		}
	}
	return numbers, checks
}
