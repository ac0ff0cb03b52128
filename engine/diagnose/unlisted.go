package diagnose

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/fault"
)

// unlisted is the supposition that the fault is none of the catalogue. Nobody knows
// what such a fault shows: at looks what the listed ones show on the whole, at a
// meter what a sound machine shows, but for some readings that may be anything.
// Readings are taken one by one, each with a chance of its own.
type unlisted struct {
	sound []hypothesis // without a fault, by detector
	looks []float64    // shares of yes, by check
}

// How often a fault is none of the catalogue, how often it spoils a reading, and what
// a spoilt one is. Assumptions, no source.
const (
	unlistedShare = 0.04
	spoils        = 0.15
	spoiltOpen    = 0.25
	spoiltUnrest  = 0.1
	spoiltWidth   = 2.0 // in the check's usual spreads
)

func (m *Model) supposeUnlisted() {
	m.unlisted.looks = make([]float64, len(m.Checks))
	for j, k := range m.Checks {
		if k.Instrument != check.Eyes {
			continue
		}
		yes, weight := 0.0, 0.0
		for _, c := range m.cases {
			if v := c.views[j]; !v.vague && c.fault.ID != fault.None {
				yes += c.weight * v.open
				weight += c.weight
			}
		}
		m.unlisted.looks[j] = 0.5
		if weight > 0 {
			m.unlisted.looks[j] = min(max(yes/weight, 0.02), 0.98)
		}
	}
	for _, h := range m.hypotheses {
		if h.fault.ID == fault.None {
			m.unlisted.sound = append(m.unlisted.sound, h)
		}
	}
}

// likeUnlisted is the logarithm of how likely an unlisted fault makes the evidence.
func (m *Model) likeUnlisted(numbers []number, checks []asked) float64 {
	if len(m.unlisted.sound) == 0 {
		return math.Inf(-1)
	}
	var logs []float64
	for _, h := range m.unlisted.sound {
		log := 0.0
		var row []asked
		for _, a := range checks {
			if inRow(m.Checks[a.check]) && len(h.kinds) > 0 {
				row = append(row, a)
				continue
			}
			shares, _ := m.shares(h.caseOf, a.check)
			log += m.spoilt(h, a, numbers, shares)
		}
		log += m.spoiltRow(h, row, numbers)
		logs = append(logs, log-math.Log(float64(len(m.unlisted.sound))))
	}
	return logSum(logs)
}

// spoilt is what one check's answers are under it, where sound machines show so much
// of each kind.
func (m *Model) spoilt(h hypothesis, a asked, numbers []number, shares [showings]float64) float64 {
	k := m.Checks[a.check]
	if k.Instrument == check.Eyes {
		yes := m.unlisted.looks[a.check]
		return math.Log(m.whole(a, [showings]float64{yes, 1 - yes}, 2))
	}
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
	spoils := m.spoilsAt(a.check)
	return logSum([]float64{math.Log1p(-spoils) + sound, math.Log(spoils) + anything})
}

// withSlip is the numbers of one check under a hypothesis, any one of them a slip.
func (m *Model) withSlip(h hypothesis, numbers []number) float64 {
	if len(numbers) == 0 {
		return 0
	}
	g := m.fit(h, numbers)
	parts := []float64{g.logStudent() + math.Log1p(-slips)*float64(len(numbers))}
	for i, l := range g.leftOut() {
		parts = append(parts, l+math.Log(slips)-math.Log(8*m.spread[numbers[i].check]))
	}
	return logSum(parts)
}

// unlistedOutcomes is what it expects of a check.
func (m *Model) unlistedOutcomes(j int, weight float64, numbers []number) []outcome {
	set := len(m.naming.sets)
	if weight < leastWeight || len(m.unlisted.sound) == 0 {
		return nil
	}
	if m.Checks[j].Instrument == check.Eyes {
		yes := m.unlisted.looks[j]
		return []outcome{{set: set, weight: weight, open: yes, rest: 1 - yes, sd: 1}}
	}
	h := m.unlisted.sound[0]
	g := m.fit(h, numbers)
	sound := m.outcome(j, h, weight*(1-spoils), numbers, &g)
	sound.set = set
	return []outcome{sound, {
		set: set, weight: weight * spoils, mean: m.middle[j], sd: spoiltWidth * m.spread[j], open: spoiltOpen, rest: spoiltUnrest,
	}}
}

// unlistedPrior is the logarithm of the weight of an unlisted fault beside the listed ones'.
func (m *Model) unlistedPrior() float64 {
	listed := 0.0
	for _, h := range m.hypotheses {
		listed += h.prior
	}
	return math.Log(unlistedShare / (1 - unlistedShare) * listed)
}
