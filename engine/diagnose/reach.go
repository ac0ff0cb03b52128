package diagnose

import (
	"cmp"
	"math"
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/fault"
)

// onBench reports that there is only a stator, out of its machine.
func (c *Conversation) onBench() bool { return c.model.q.Symptom == fault.OnTheBench }

// Within reports whether a check can be done at all at what was brought.
func (c *Conversation) Within(k check.Check) bool { return !c.onBench() || check.BareStator(k) }

// Given reports an access that nobody has to get at.
func (c *Conversation) Given(a check.Access) bool {
	return c.onBench() && slices.Contains(check.GivenOnBench(), a)
}

// Choice is what is expected of a check; ok is false for one that was done, was
// refused or is out of reach.
func (c *Conversation) Choice(id check.ID) (choice Choice, ok bool) {
	i := slices.IndexFunc(c.Choices(), func(x Choice) bool { return x.Check.ID == id })
	if i < 0 {
		return Choice{}, false
	}
	return c.Choices()[i], true
}

// Missed lists the refused checks that would still tell something, the most telling
// first; at most most.
func (c *Conversation) Missed(most int) []Choice {
	if len(c.refused) == 0 {
		return nil
	}
	all := c.model.next(c.Suspects(), c.Evidence(), c.Done(), func(k check.Check) bool { return !c.refused[k.ID] || !c.Within(k) }, c.rest)
	all = slices.DeleteFunc(all, func(x Choice) bool { return x.Bits < leastBits })
	slices.SortFunc(all, func(a, b Choice) int {
		return cmp.Or(cmp.Compare(math.Round(b.Bits*1e6), math.Round(a.Bits*1e6)), cmp.Compare(a.Check.ID, b.Check.ID))
	})
	return all[:min(most, len(all))]
}

// leastBits is what a check must be expected to tell to be worth naming. An
// assumption, no source.
const leastBits = 0.02

// Looked reports a check that eyes answer.
func (c *Conversation) Looked(id check.ID) bool {
	k, err := c.find(id)
	return err == nil && k.Instrument == check.Eyes
}
