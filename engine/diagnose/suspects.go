package diagnose

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/fault"
)

// Suspect is a fault with its probability.
type Suspect struct {
	Fault       fault.Fault
	Probability float64
}

// Suspects is what the evidence comes to.
type Suspects struct {
	Faults []Suspect // the likeliest first
	// Parts is how likely these parts are at fault and no other; the empty set is no
	// fault. They and Unlisted sum to one.
	Parts map[fault.Parts]float64
	Slips map[check.ID]float64 // how likely a number is a mistake
	// Strange is how badly even the best hypothesis fits, slips apart: near 1 where such
	// readings are hardly ever seen under any fault of the catalogue.
	Strange float64
	// Unlisted is the probability that the fault is none of the catalogue.
	Unlisted float64
	unseen   float64     // of those that are, the share that no check shows
	weights  []float64   // by hypothesis
	slips    [][]float64 // by place in the evidence and set: that it is a slip and that set's
	named    named
	lead     check.Part
	set      fault.Parts
}

// Lead is the likeliest part, "" for no fault, and the probability that it is at fault,
// alone or with another.
func (s Suspects) Lead() (p check.Part, probability float64) { return s.lead, s.named.leads }

// Named is what a finding names, and the probability that all of it is at fault: the
// likeliest part, and with it a second one that is at fault as well in half of the cases
// or more.
func (s Suspects) Named() (parts fault.Parts, probability float64) { return s.set, s.named.sure }

// Of is the probability that all of some parts are at fault, whatever else is; of the
// empty set, that none is.
func (s Suspects) Of(parts fault.Parts) float64 {
	if parts.None() {
		return s.Parts[parts]
	}
	sum := 0.0
	for _, set := range s.sets() {
		if parts.Within(set) {
			sum += s.Parts[set]
		}
	}
	return sum
}

// sets are those with a probability, in one order: sums do not depend on a map's.
func (s Suspects) sets() []fault.Parts {
	return slices.SortedFunc(maps.Keys(s.Parts), fault.Parts.Compare)
}

// Weigh gives the suspects behind the evidence. The model must be ready.
func (m *Model) Weigh(evidence []Evidence) Suspects {
	numbers, checks := m.sorted(evidence)
	logs := make([]float64, len(m.hypotheses))
	slip := make([][]float64, len(m.hypotheses))
	told := m.anyAlternates(numbers)
	for i, h := range m.hypotheses {
		switch {
		case !(h.prior > 0):
			logs[i] = math.Inf(-1)
		case h.detector > 0 && !told:
			logs[i], slip[i] = logs[i-1], slip[i-1]
		default:
			l := m.like(h, numbers, checks, len(evidence))
			logs[i], slip[i] = math.Log(h.prior)+l.log, l.slips
		}
	}
	seen, unseen := m.likeUnlisted(numbers, checks, len(evidence))
	either := logSum([]float64{seen, unseen})
	beyond := m.unlistedPrior() + either
	total := logSum(append(logs[:len(logs):len(logs)], beyond))
	out := Suspects{
		Parts: map[fault.Parts]float64{}, Slips: map[check.ID]float64{}, weights: make([]float64, len(m.hypotheses)),
		slips: make([][]float64, len(evidence)), Unlisted: math.Exp(beyond - total), unseen: math.Exp(unseen - math.Max(either, -math.MaxFloat64)),
	}
	for at := range out.slips {
		out.slips[at] = make([]float64, len(m.naming.sets))
	}
	byFault, sets := map[fault.ID]*Suspect{}, make([]float64, len(m.naming.sets))
	best := 0
	for i, h := range m.hypotheses {
		w := math.Exp(logs[i] - total)
		out.weights[i] = w
		sets[h.set] += w
		s := byFault[h.fault.ID]
		if s == nil {
			s = &Suspect{Fault: h.fault}
			byFault[h.fault.ID] = s
		}
		s.Probability += w
		for at, p := range slip[i] {
			out.slips[at][h.set] += w * p
		}
		if w > out.weights[best] {
			best = i
		}
	}
	for set, p := range sets {
		out.Parts[m.naming.sets[set]] = p
	}
	out.named = m.naming.name(sets)
	out.lead, out.set = m.naming.parts[out.named.lead], m.naming.set(out.named)
	for at, e := range evidence {
		if _, ok := m.index[e.Check]; ok {
			out.Slips[e.Check] = math.Max(out.Slips[e.Check], sum(out.slips[at]))
		}
	}
	for _, s := range byFault {
		out.Faults = append(out.Faults, *s)
	}
	slices.SortFunc(out.Faults, func(a, b Suspect) int {
		return cmp.Or(cmp.Compare(b.Probability, a.Probability), cmp.Compare(a.Fault.ID, b.Fault.ID))
	})
	out.Strange = m.strange(m.hypotheses[best], evidence, out.slips)
	return out
}
