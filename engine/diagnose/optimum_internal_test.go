package diagnose

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/fault"
	"coilbook/engine/meter"
)

// A problem small enough to be solved exactly: a few faults, a few checks with a few
// answers each, independent given the fault. What it costs at best, minutes and 90
// for a wrong part, is found by dynamic programming over all sets of answers; what
// the policy costs, by following it through all its answers.
type reduced struct {
	naming  naming
	sets    []int // of parts, by fault
	prior   []float64
	minutes []float64
	says    [][][answersEach]float64 // by check and fault
}

const answersEach = 4 // few volts, many volts, open or yes, restless or no

// reducedFrom takes the likeliest faults and the checks that tell most at first.
func reducedFrom(m *Model, faults, checks int) reduced {
	s := m.Weigh(nil)
	r := reduced{naming: m.naming}
	var of [][]int
	for _, f := range s.Faults[:faults] {
		var mine []int
		for i, c := range m.hypotheses {
			if c.fault.ID == f.Fault.ID {
				mine = append(mine, i)
			}
		}
		of = append(of, mine)
		r.prior = append(r.prior, f.Probability)
		r.sets = append(r.sets, m.hypotheses[mine[0]].set)
	}
	total := 0.0
	for _, p := range r.prior {
		total += p
	}
	for i := range r.prior {
		r.prior[i] /= total
	}
	for _, choice := range m.Next(s, nil, nil, nil)[:checks] {
		j := m.index[choice.Check.ID]
		r.minutes = append(r.minutes, choice.Minutes)
		all := make([]outcome, len(m.hypotheses))
		middle, weight := 0.0, 0.0
		for i, c := range m.hypotheses {
			all[i] = m.outcome(j, c, s.weights[i], nil, &normal{})
			w := s.weights[i] * (1 - all[i].open - all[i].rest)
			middle += w * all[i].mean
			weight += w
		}
		if weight > 0 {
			middle /= weight
		}
		says := make([][answersEach]float64, len(of))
		for f, mine := range of {
			sum := 0.0
			for _, i := range mine {
				o, w := all[i], s.weights[i]
				low := below((middle - o.mean) / o.sd)
				for k, p := range [answersEach]float64{(1 - o.open - o.rest) * low, (1 - o.open - o.rest) * (1 - low), o.open, o.rest} {
					says[f][k] += w * p
				}
				sum += w
			}
			for k := range says[f] {
				says[f][k] /= sum
			}
		}
		r.says = append(r.says, says)
	}
	return r
}

// wrong is the cost of stopping, by the chance that other parts are at fault than
// those that would be named.
func (r reduced) wrong(weights []float64) (cost, sure float64) {
	bySet := make([]float64, len(r.naming.columns))
	for f, w := range weights {
		bySet[r.sets[f]] += w
	}
	sure = r.naming.name(bySet).right / sum(bySet)
	return wrongPart * (1 - sure), sure
}

func (r reduced) after(weights []float64, c, k int) (next []float64, chance float64) {
	next = make([]float64, len(weights))
	for f, w := range weights {
		next[f] = w * r.says[c][f][k]
		chance += next[f]
	}
	for f := range next {
		next[f] /= math.Max(chance, 1e-300)
	}
	return next, chance
}

// best is the least cost from a state on; done has a digit for each check.
func (r reduced) best(weights []float64, done int, memo map[int]float64) float64 {
	if v, ok := memo[done]; ok {
		return v
	}
	cost, _ := r.wrong(weights)
	digit := 1
	for c := range r.minutes {
		if done/digit%(answersEach+1) == 0 {
			sum := r.minutes[c]
			for k := range answersEach {
				if next, p := r.after(weights, c, k); p > 1e-9 && sum < cost {
					sum += p * r.best(next, done+digit*(k+1), memo)
				}
			}
			cost = math.Min(cost, sum)
		}
		digit *= answersEach + 1
	}
	memo[done] = cost
	return cost
}

// policy is what ranked choices cost, with the stop rule of a conversation.
func (r reduced) policy(weights []float64, done int) float64 {
	cost, sure := r.wrong(weights)
	if sure >= enough {
		return cost
	}
	var choices []Choice
	var tables [][][]float64
	digit := 1
	for c := range r.minutes {
		if done/digit%(answersEach+1) == 0 {
			choices = append(choices, Choice{Check: check.Check{ID: check.ID(strconv.Itoa(c))}, Minutes: r.minutes[c]})
			tables = append(tables, r.table(weights, c))
		}
		digit *= answersEach + 1
	}
	top, ok := Best(r.naming.ranked(choices, tables))
	if !ok {
		return cost
	}
	c, err := strconv.Atoi(string(top.Check.ID))
	if err != nil {
		panic(err)
	}
	sum := r.minutes[c]
	for k := range answersEach {
		if next, p := r.after(weights, c, k); p > 1e-9 {
			sum += p * r.policy(next, done+int(math.Pow(answersEach+1, float64(c)))*(k+1))
		}
	}
	return sum
}

// table is a check's outcomes by column of the naming.
func (r reduced) table(weights []float64, c int) [][]float64 {
	out := make([][]float64, answersEach)
	for k := range out {
		out[k] = make([]float64, len(r.naming.columns))
		for f, w := range weights {
			out[k][r.sets[f]] += w * r.says[c][f][k]
		}
	}
	return out
}

func costs(tb testing.TB, s fault.Symptom, checks int) (policy, best float64) {
	faults, err := fault.Bundled()
	require.NoError(tb, err)
	m := New(Question{Symptom: s, Build: check.DefaultBuild(), Meter: meter.Cheap()}, faults).Ready()
	r := reducedFrom(m, 11, checks)
	return r.policy(r.prior, 0), r.best(r.prior, 0, map[int]float64{})
}

// The policy is never better than the optimum, and near it.
func TestThePolicyIsNearTheOptimum(t *testing.T) {
	for _, s := range []fault.Symptom{fault.WontCharge, fault.NoSpark} {
		policy, best := costs(t, s, 5)
		t.Logf("%s: policy %.2f, optimum %.2f, ratio %.3f", s, policy, best, policy/best)
		assert.GreaterOrEqual(t, policy, best-1e-9)
		assert.Less(t, policy/best, 1.05)
	}
}

func BenchmarkAgainstTheOptimum(b *testing.B) {
	for _, s := range []fault.Symptom{fault.WontCharge, fault.NoSpark} {
		b.Run(string(s), func(b *testing.B) {
			for range b.N {
				policy, best := costs(b, s, 7)
				b.ReportMetric(0, "ns/op")
				b.ReportMetric(policy/best, "cost-over-optimum")
			}
		})
	}
}
