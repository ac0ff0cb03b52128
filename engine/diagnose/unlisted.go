package diagnose

import (
	"math"
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/fault"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
)

// unlisted is the supposition that the fault is none of the catalogue. Nobody knows
// what such a fault shows: at looks what the listed ones show on the whole, at a
// meter what a sound machine shows, but for some readings that may be anything. Some
// such faults spoil no reading at all. The others show in what is complained of as the
// listed ones do on the whole, or as nothing does, and spoil any other reading as often
// as those do, each with a chance of its own.
type unlisted struct {
	fault.Unlisted
	sound  []hypothesis // without a fault, by detector
	looks  []float64    // shares of yes, by check
	spoils []float64    // how often one that shows spoils a reading, by check
}

// What a spoilt reading is, and how seldom and how often one is spoilt at least and
// at most. Assumptions, no source.
const (
	spoiltOpen   = 0.25
	spoiltUnrest = 0.1
	spoiltWidth  = 2.0 // in the check's usual spreads
	spoilsLeast  = 0.02
	spoilsMost   = 0.5
)

func (m *Model) supposeUnlisted() {
	for _, h := range m.hypotheses {
		if h.fault.ID == fault.None {
			m.unlisted.sound = append(m.unlisted.sound, h)
		}
	}
	m.unlisted.looks, m.unlisted.spoils = make([]float64, len(m.Checks)), make([]float64, len(m.Checks))
	for j, k := range m.Checks {
		yes, differ, weight := 0.0, 0.0, 0.0
		for _, c := range m.cases {
			if v := c.views[j]; !v.vague && c.fault.ID != fault.None {
				yes += c.weight * v.open
				differ += c.weight * m.differs(c, j)
				weight += c.weight
			}
		}
		m.unlisted.looks[j] = 0.5
		if weight > 0 && k.Instrument == check.Eyes {
			m.unlisted.looks[j] = min(max(yes/weight, 0.02), 0.98)
		}
		m.unlisted.spoils[j] = min(max(differ/max(weight, 1e-9), spoilsLeast), spoilsMost)
	}
}

// differs is how often a check tells a case's machines from sound ones: the distance
// in total variation, that of numbers as of normal ones with the mean of their
// variances.
func (m *Model) differs(c *caseOf, j int) float64 {
	if len(m.unlisted.sound) == 0 {
		return 0
	}
	h := m.unlisted.sound[0]
	ours, theirs := c.views[j], h.views[j]
	if theirs.vague {
		return 0
	}
	a, va := m.expects(hypothesis{caseOf: c}, j)
	b, vb := m.expects(h, j)
	errors := scaleOf(m.Checks[j]).errors
	apart := math.Abs(a-b) / math.Sqrt((va+vb)/2+errors*errors)
	alike := math.Min(ours.open, theirs.open) + math.Min(ours.unrest, theirs.unrest) + math.Min(ours.number, theirs.number)*2*below(-apart/2)
	return 1 - math.Min(alike, 1)
}

// likeUnlisted is the logarithm of how likely an unlisted fault that shows makes the
// evidence, of so many answers, and one that does not, each with its share.
func (m *Model) likeUnlisted(numbers []number, checks []asked, answers int) (seen, unseen float64) {
	if len(m.unlisted.sound) == 0 || m.unlisted.Share == 0 {
		return math.Inf(-1), math.Inf(-1)
	}
	looks := 0.0
	var others, complaint []asked
	for _, a := range checks {
		if m.complainedOf(a.check) {
			complaint = append(complaint, a)
		}
		if m.Checks[a.check].Instrument != check.Eyes {
			others = append(others, a)
			continue
		}
		yes := m.unlisted.looks[a.check]
		looks += math.Log(m.whole(a, [showings]float64{yes, 1 - yes}, 2))
	}
	usual := m.onTheWhole(numbers, complaint, answers)
	var shows, hides []float64
	for _, h := range m.unlisted.sound {
		log, odd := 0.0, 0.0
		var row []asked
		for _, a := range others {
			if inRow(m.Checks[a.check]) && len(h.kinds) > 0 {
				row = append(row, a)
				continue
			}
			shares, _ := m.shares(h.caseOf, a.check)
			if m.complainedOf(a.check) {
				odd += m.spoilt(h, a, numbers, shares)
				continue
			}
			log += m.spoilt(h, a, numbers, shares)
		}
		either := logSum([]float64{usual, odd}) - math.Ln2
		shows = append(shows, log+either+m.spoiltRow(h, row, numbers))
		hides = append(hides, m.like(h, numbers, others, answers).log)
	}
	each := looks - math.Log(float64(len(shows)))
	return logSum(shows) + each + math.Log1p(-m.unlisted.Unseen), logSum(hides) + each + math.Log(m.unlisted.Unseen)
}

// complainedOf reports a check that reads what the owner complains of: the volts that a
// battery is charged with.
func (m *Model) complainedOf(j int) bool {
	switch k := m.Checks[j]; m.q.Symptom {
	case fault.WontCharge, fault.Overcharges, fault.FlatStanding:
		return k.Part == check.Battery && k.Function == meter.VoltsDC && machine.Running(k.Engine) > 0
	}
	return false
}

// onTheWhole is how likely the listed faults make the answers to some checks.
func (m *Model) onTheWhole(numbers []number, checks []asked, answers int) float64 {
	if len(checks) == 0 {
		return 0
	}
	var own []number
	for _, x := range numbers {
		if m.complainedOf(x.check) {
			own = append(own, x)
		}
	}
	var logs []float64
	all := 0.0
	for _, c := range m.cases {
		if c.fault.ID != fault.None && c.weight > 0 {
			logs = append(logs, math.Log(c.weight)+m.like(hypothesis{caseOf: c}, own, checks, answers).log)
			all += c.weight
		}
	}
	return logSum(logs) - math.Log(all)
}

// spoilt is what one check's answers are under it, where sound machines show so much
// of each kind.
func (m *Model) spoilt(h hypothesis, a asked, numbers []number, shares [showings]float64) float64 {
	var own []number
	for _, x := range numbers {
		if x.check == a.check {
			own = append(own, x)
		}
	}
	sound := math.Log(m.whole(a, shares, showings)) + m.withSlip(h, own)
	broad := [showings]float64{1 - spoiltOpen - spoiltUnrest, spoiltOpen, spoiltUnrest}
	wide := spoiltWidth * m.spread[a.check]
	anything := math.Log(m.whole(a, broad, showings))
	if len(own) > 0 {
		z := (own[0].value - m.middle[a.check]) / wide
		anything += normal{l: [][]float64{{wide}}, z: []float64{z}}.logStudent()
		for _, x := range own[1:] { // a second reading of the same is near the first
			sd := math.Sqrt(x.errors)
			anything += normal{l: [][]float64{{sd}}, z: []float64{(x.value - own[0].value) / sd}}.logStudent()
		}
	}
	spoils := m.unlisted.spoils[a.check]
	return logSum([]float64{math.Log1p(-spoils) + sound, math.Log(spoils) + anything})
}

// withSlip is the numbers of one check under a hypothesis, any one of them a slip.
func (m *Model) withSlip(h hypothesis, numbers []number) float64 {
	if len(numbers) == 0 {
		return 0
	}
	g := m.fit(h, numbers)
	parts := []float64{g.logStudent() + math.Log1p(-m.slips)*float64(len(numbers))}
	for i, l := range g.leftOut() {
		parts = append(parts, l+math.Log(m.slips)-math.Log(8*m.spread[numbers[i].check]))
	}
	return logSum(parts)
}

// unlistedOutcomes is what it expects of a check.
func (m *Model) unlistedOutcomes(j int, s Suspects, numbers []number) []outcome {
	set, weight, spoils := len(m.naming.sets), s.Unlisted, (1-s.unseen)*m.unlisted.spoils[j]
	if weight < leastWeight || len(m.unlisted.sound) == 0 {
		return nil
	}
	if m.Checks[j].Instrument == check.Eyes {
		yes := m.unlisted.looks[j]
		return []outcome{{set: set, weight: weight, open: yes, rest: 1 - yes, sd: 1}}
	}
	if m.complainedOf(j) {
		if slices.ContainsFunc(numbers, func(x number) bool { return m.complainedOf(x.check) }) {
			return nil // which tells what this one will be
		}
		spoils = 1 - s.unseen
	}
	width, open, rest := spoiltWidth, spoiltOpen, spoiltUnrest
	if m.complainedOf(j) {
		width, open, rest = 1, m.slips, m.slips
	}
	h := m.unlisted.sound[0]
	g := m.fit(h, numbers)
	sound := m.outcome(j, h, weight*(1-spoils), numbers, &g)
	sound.set = set
	return []outcome{sound, {
		set: set, weight: weight * spoils, mean: m.middle[j], sd: width * m.spread[j], open: open, rest: rest,
	}}
}

// unlistedPrior is the logarithm of the weight of an unlisted fault beside the listed ones'.
func (m *Model) unlistedPrior() float64 {
	listed := 0.0
	for _, h := range m.hypotheses {
		listed += h.prior
	}
	return math.Log(m.unlisted.Share / (1 - m.unlisted.Share) * listed)
}
