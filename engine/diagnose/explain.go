package diagnose

import (
	"cmp"
	"math"
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/fault"
	"coilbook/engine/quantity"
)

// Reason is one answer that speaks for or against a suspect.
type Reason struct {
	Check  check.ID
	Answer Evidence
	// Weight is the logarithm (to base 2) of how many times likelier the answer is
	// with this fault than with the other suspects: above zero it speaks for it. A
	// double that this fault is part of is none of the others.
	Weight float64
	// Low and High are where nine in ten machines with this fault would read, in SI;
	// both zero where a number says nothing. Open and Restless are the shares without
	// a number.
	Low, High float64
	Open      float64 // or yes, of a look
	Restless  float64
}

// Usual reports whether the answer is a number such as most machines with the fault
// read, or half the width of that beside it.
func (r Reason) Usual() bool {
	beside := (r.High - r.Low) / 2
	return r.Answer.State == quantity.Number && (r.Low != 0 || r.High != 0) && r.Answer.Value >= r.Low-beside && r.Answer.Value <= r.High+beside
}

// Explain gives the answers that speak loudest for and against a suspect, each by
// itself: at most most of either, the loudest first.
func (m *Model) Explain(s Suspects, evidence []Evidence, id fault.ID, most int) (pro, con []Reason) {
	return m.explain(s, evidence, m.alone, id, most)
}

// explain is Explain with what each hypothesis makes of one answer.
func (m *Model) explain(s Suspects, evidence []Evidence, alone func(Evidence) []float64, id fault.ID, most int) (pro, con []Reason) {
	other := m.others(id)
	for _, e := range evidence {
		likes := alone(e)
		with := m.among(s, likes, func(c hypothesis) bool { return c.fault.ID == id })
		without := m.among(s, likes, other)
		if with == 0 || without == 0 {
			continue
		}
		r := m.reason(s, e.Check, id)
		r.Answer = e
		r.Weight = math.Log2(with / without)
		if r.Weight > 0 {
			pro = append(pro, r)
		} else {
			con = append(con, r)
		}
	}
	loudest := func(list []Reason) []Reason {
		slices.SortFunc(list, func(a, b Reason) int {
			return cmp.Or(cmp.Compare(math.Abs(b.Weight), math.Abs(a.Weight)), cmp.Compare(a.Check, b.Check))
		})
		return list[:min(most, len(list))]
	}
	return loudest(pro), loudest(con)
}

// others are the suspects that a fault is compared with.
func (m *Model) others(id fault.ID) func(hypothesis) bool {
	var this fault.Fault
	for _, c := range m.cases {
		if c.fault.ID == id {
			this = c.fault
		}
	}
	return func(h hypothesis) bool { return h.fault.ID != id && !h.fault.Adds(this) }
}

// reason is what a fault's machines read at a check.
func (m *Model) reason(s Suspects, id check.ID, f fault.ID) Reason {
	j := m.index[id]
	r := Reason{Check: id}
	weight, mean, square := 0.0, 0.0, 0.0
	for i, c := range m.hypotheses {
		if c.fault.ID != f || !(s.weights[i] > 0) {
			continue
		}
		w, v := s.weights[i], c.views[j]
		if v.vague {
			continue
		}
		r.Open += w * v.open
		r.Restless += w * v.unrest
		weight += w
		mu, variance := m.expects(c, j)
		mean += w * mu
		square += w * (mu*mu + variance)
	}
	if weight == 0 {
		return r
	}
	r.Open, r.Restless = r.Open/weight, r.Restless/weight
	if m.Checks[j].Instrument != check.Eyes && r.Open+r.Restless < 0.9 {
		const ninetyPercent = 1.645
		mean /= weight
		sd := math.Sqrt(math.Max(square/weight-mean*mean, 0))
		scale := scaleOf(m.Checks[j])
		r.Low, r.High = scale.back(mean-ninetyPercent*sd), scale.back(mean+ninetyPercent*sd)
		if m.Checks[j].Function.Kind() != quantity.VoltageDC {
			r.Low = math.Max(r.Low, 0)
		}
	}
	return r
}

// Meaning is what an answer to a check would mean.
type Meaning struct {
	// State is Number for a number between Low and High (SI, ±Inf at the ends) and for
	// a look, whose Yes then counts; OverRange for an open line.
	State     quantity.State
	Low, High float64
	Yes       bool
	Chance    float64     // of that answer
	Parts     fault.Parts // that would then be named
	Sure      float64     // the probability that all of them are at fault
}

// Means lists what the answers to a check would mean, those apart that lead to
// different parts; answers of less than one in fifty are left out.
func (m *Model) Means(s Suspects, evidence []Evidence, id check.ID) []Meaning {
	j, ok := m.index[id]
	if !ok {
		return nil
	}
	numbers, _ := m.sorted(evidence)
	fits := m.fits(s, numbers)
	all := m.outcomes(j, s, numbers, fits)
	edges, table := m.table(all)
	look := m.Checks[j].Instrument == check.Eyes
	scale := scaleOf(m.Checks[j])
	var out []Meaning
	for k, row := range table {
		one := m.meaning(row)
		switch {
		case k == bins:
			one.State, one.Yes = quantity.OverRange, look
		case k == bins+1:
			one.State = quantity.Unsettled
		case look:
			continue
		default:
			one.Low, one.High = math.Inf(-1), math.Inf(1)
			if k > 0 && k-1 < len(edges) {
				one.Low = scale.back(edges[k-1])
			}
			if k < len(edges) {
				one.High = scale.back(edges[k])
			}
		}
		if look {
			one.State = quantity.Number
		}
		out = append(out, one)
	}
	if look {
		return likelyEnough(out)
	}
	return merged(likelyEnough(merged(out)))
}

func likelyEnough(all []Meaning) []Meaning {
	const seldom = 0.02
	return slices.DeleteFunc(all, func(one Meaning) bool { return one.Chance < seldom })
}

func (m *Model) meaning(row []float64) Meaning {
	x := m.naming.name(row[:len(m.naming.sets)])
	one := Meaning{Chance: sum(row), Parts: m.naming.set(x)}
	if one.Chance > 0 {
		one.Sure = x.sure / one.Chance
	}
	return one
}

// merged joins numbers that follow each other and lead to the same part, also over
// a gap that was too seldom to tell.
func merged(all []Meaning) []Meaning {
	var out []Meaning
	for _, one := range all {
		last := len(out) - 1
		follows := last >= 0 && one.State == quantity.Number && out[last].State == quantity.Number
		if follows {
			one.Low = out[last].High
		}
		if follows && one.Parts == out[last].Parts {
			chance := one.Chance + out[last].Chance
			if chance > 0 {
				out[last].Sure = (one.Sure*one.Chance + out[last].Sure*out[last].Chance) / chance
			}
			out[last].Chance, out[last].High = chance, one.High
			continue
		}
		out = append(out, one)
	}
	return out
}
