package diagnose

import (
	"cmp"
	"math"
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/fault"
)

// Reasons are the answers so far that speak loudest for and against a fault; at
// most most of either. Each is weighed as if it were the first: what decided has
// left no others to be compared with.
func (c *Conversation) Reasons(id fault.ID, most int) (pro, con []Reason) {
	return c.model.explain(c.atFirst(), latest(c.Evidence()), c.alone, id, most)
}

// latest is the last answer to each check: readings of one point are one reason.
func latest(evidence []Evidence) []Evidence {
	var out []Evidence
	for i, e := range evidence {
		if !slices.ContainsFunc(evidence[i+1:], func(later Evidence) bool { return later.Check == e.Check }) {
			out = append(out, e)
		}
	}
	return out
}

// atFirst is what the suspects were before any answer.
func (c *Conversation) atFirst() Suspects { return *c.model.prior }

// alone is the model's, kept: every suspect is asked for the same answers.
func (c *Conversation) alone(e Evidence) []float64 {
	likes, kept := c.likes[e]
	if !kept {
		likes = c.model.alone(e)
		c.likes[e] = likes
	}
	return likes
}

// Means is what the answers to a check would mean, after those so far.
func (c *Conversation) Means(id check.ID) []Meaning {
	return c.model.Means(c.Suspects(), c.Evidence(), id)
}

// Clearing is a part that the answers took from the suspects.
type Clearing struct {
	Part          check.Part
	Before, After float64    // its probability, alone or with another
	By            []check.ID // the answers that did, the loudest first
}

// A part is cleared by answers that a machine without a fault gives more often than
// one with a fault of it. Assumptions, no source.
const (
	clearedFrom  = 0.02 // was suspected at all
	clearedTo    = 0.02 // is no more
	clearedBy    = 0.3  // bits that an answer must bring
	mostClearing = 2
)

// Cleared lists the parts that answers showed sound: not those that another finding
// merely explains away. The most suspected of them comes first.
func (c *Conversation) Cleared() []Clearing {
	before, after, evidence := c.atFirst(), c.Suspects(), latest(c.Evidence())
	var out []Clearing
	for _, part := range c.model.naming.parts {
		one := fault.PartsOf(part)
		p, left := before.Of(one), after.Of(one)
		if part == "" || p < clearedFrom || left > min(clearedTo, p/2) {
			continue
		}
		if by := c.speakFree(before, evidence, part); len(by) > 0 {
			out = append(out, Clearing{part, p, left, by})
		}
	}
	slices.SortFunc(out, func(a, b Clearing) int { return cmp.Or(cmp.Compare(b.Before, a.Before), cmp.Compare(a.Part, b.Part)) })
	return out
}

// speakFree are the answers that a machine without a fault gives more often than
// one with a fault of the part.
func (c *Conversation) speakFree(before Suspects, evidence []Evidence, part check.Part) []check.ID {
	type loud struct {
		id   check.ID
		bits float64
	}
	var all []loud
	for _, e := range evidence {
		likes := c.alone(e)
		sound := c.model.among(before, likes, func(h hypothesis) bool { return h.fault.ID == fault.None })
		faulty := c.model.among(before, likes, func(h hypothesis) bool { return h.fault.Parts().Has(part) })
		if sound > 0 && faulty > 0 && math.Log2(sound/faulty) >= clearedBy {
			all = append(all, loud{e.Check, math.Log2(sound / faulty)})
		}
	}
	slices.SortFunc(all, func(a, b loud) int { return cmp.Or(cmp.Compare(b.bits, a.bits), cmp.Compare(a.id, b.id)) })
	var out []check.ID
	for _, one := range all[:min(mostClearing, len(all))] {
		out = append(out, one.id)
	}
	return out
}

// alone is how likely each hypothesis gives an answer by itself; nil for one that is
// of no check.
func (m *Model) alone(e Evidence) []float64 {
	numbers, checks := m.sorted([]Evidence{e})
	if len(checks) == 0 {
		return nil
	}
	told := m.anyAlternates(numbers)
	out := make([]float64, len(m.hypotheses))
	for i, h := range m.hypotheses {
		if h.detector > 0 && !told {
			out[i] = out[i-1]
			continue
		}
		out[i] = math.Exp(m.like(h, numbers, checks, 1).log)
	}
	return out
}

// among is the mean of that over the hypotheses that count; 0 where there is none.
func (m *Model) among(s Suspects, likes []float64, counts func(hypothesis) bool) float64 {
	sum, weight := 0.0, 0.0
	for i, l := range likes {
		if s.weights[i] > 0 && counts(m.hypotheses[i]) {
			sum += s.weights[i] * l
			weight += s.weights[i]
		}
	}
	if weight == 0 {
		return 0
	}
	return sum / weight
}
