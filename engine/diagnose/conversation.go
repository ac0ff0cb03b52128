package diagnose

import (
	"cmp"
	"math"
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

// Conversation is a diagnosis from the first question to the finding: which check
// comes next, what an answer to it is worth, when it is enough. It keeps what was
// read, not what that was worth, so that leads measured late count for all.
type Conversation struct {
	model   *Model
	cannot  func(check.Access) bool
	answers []answer // in their order; a check that was done once more has two
	beside  check.ID // whose next answer counts beside the earlier ones
	refused map[check.ID]bool
	taken   map[check.ID]int   // how often, corrections too
	zero    *meter.Measurement // the leads, once they are known
	minutes float64
	now     *standing // nil once an answer has changed it
	likes   map[Evidence][]float64
	rest    func() // between two steps of what takes long
}

// answer is what one check showed.
type answer struct {
	check check.Check
	typed quantity.Typed // for a look 1 is yes
}

// standing is where the answers so far have led.
type standing struct {
	suspects Suspects
	ranked   []Choice // nil until someone asks for it
}

// Begin starts a conversation over a model that is ready. cannot reports what one
// cannot get at; nil is for everything within reach.
func Begin(m *Model, cannot func(check.Access) bool) *Conversation {
	return &Conversation{model: m, cannot: cannot, refused: map[check.ID]bool{}, taken: map[check.ID]int{}, likes: map[Evidence][]float64{}, rest: func() {}}
}

// Resting has a function called between the steps of what takes long, from which a
// screen can answer a touch. It must not use the conversation.
func (c *Conversation) Resting(rest func()) { c.rest = rest }

// When it is enough. Assumptions, no source: naming what is at fault costs no more
// than a wrong part in one of twenty cases; a part that is named by one answer may
// stand on a slip; nobody does more checks than that for one complaint.
const (
	enough       = 0.95
	leastAnswers = 2
	mostAnswers  = 25
)

// Ask gives the check to do next; ok is false once the finding stands, or nothing
// that is left is worth its minutes.
func (c *Conversation) Ask() (next Choice, ok bool) {
	if len(c.answers) >= mostAnswers {
		return Choice{}, false
	}
	choices, s := c.Choices(), c.Suspects()
	if s.stands(len(c.answers)) { // before it is built on, or named
		if next, ok = surer(choices); !ok {
			next, ok = c.oddest()
		}
	}
	if !ok && !s.Enough(len(c.answers)) {
		next, ok = Best(choices)
		if !ok && len(c.answers) < leastAnswers {
			next, ok = telling(choices)
		}
	}
	if !ok {
		next, ok = c.oddest()
	}
	if !ok {
		next, ok = c.unconfirmed()
	}
	if ok {
		next = c.Prepared(next)
	}
	return next, ok
}

// telling is what tells most in a minute; ok is false where nothing tells anything.
func telling(choices []Choice) (best Choice, ok bool) {
	for _, one := range choices {
		if !one.Again && one.Bits > 1e-6 && (!ok || one.Worth() > best.Worth()) {
			best, ok = one, true
		}
	}
	return best, ok
}

// Prepared is a choice, or the probes held together before a check of few ohms while
// nobody knows the leads' own.
func (c *Conversation) Prepared(next Choice) Choice {
	const fewOhms = 20
	k := next.Check
	if c.zero != nil || c.refused[leadZero] || k.Instrument != check.Multimeter || k.Function != meter.Ohms || k.Expected > fewOhms {
		return next
	}
	leads := c.model.Checks[c.model.index[leadZero]]
	return Choice{Check: leads, Minutes: leads.Minutes}
}

// oddest is the reading, of those that were taken once, that is likeliest a slip, if
// it is one rather than not.
func (c *Conversation) oddest() (odd Choice, ok bool) {
	most := likelySlip
	for _, one := range c.Choices() {
		if p := c.Suspects().Slips[one.Check.ID]; one.Again && p > most {
			odd, most, ok = one, p, true
		}
	}
	return odd, ok
}

// Choices ranks all that could be done next, the best first.
func (c *Conversation) Choices() []Choice {
	s := c.standing()
	if s.ranked == nil {
		next := c.model.next(s.suspects, c.Evidence(), c.Done(), c.outOfReach, c.rest)
		s.ranked = slices.DeleteFunc(next, func(one Choice) bool { return one.Again && c.taken[one.Check.ID] > 1 })
		steady(s.ranked)
	}
	return s.ranked
}

// Left lists the checks that were not done and are within reach, as the build has
// them.
func (c *Conversation) Left() []check.Check {
	return slices.DeleteFunc(slices.Clone(c.model.Checks), func(k check.Check) bool {
		return k.ID == leadZero || c.taken[k.ID] > 0 || c.outOfReach(k)
	})
}

// surer is the reading that is worth taking once more before a part is named.
func surer(ranked []Choice) (best Choice, ok bool) {
	for _, one := range ranked {
		pays := one.Spares - one.Minutes
		if one.Again && pays > 0 && (!ok || pays > best.Spares-best.Minutes) {
			best, ok = one, true
		}
	}
	return best, ok
}

// Enough reports whether the finding stands after so many answers, and no other part is
// likely to be at fault with it.
func (s Suspects) Enough(answers int) bool {
	return answers >= mostAnswers || s.stands(answers) && s.named.right >= enough
}

// stands reports whether all that is named is at fault, whatever else is.
func (s Suspects) stands(answers int) bool {
	fits := s.Strange < tooStrange || answers >= strangeFrom
	return s.named.sure >= enough && answers >= leastAnswers && fits
}

// Best is the first of ranked choices; ok is false where none is worth its
// minutes.
func Best(ranked []Choice) (best Choice, ok bool) {
	if len(ranked) == 0 {
		return Choice{}, false
	}
	return ranked[0], ranked[0].Saves > 0
}

// Suspects is what the answers so far come to.
func (c *Conversation) Suspects() Suspects { return c.standing().suspects }

// Minutes is what the answers so far have cost.
func (c *Conversation) Minutes() float64 { return c.minutes }

// Refuse takes a check out of those that are asked for.
func (c *Conversation) Refuse(id check.ID) error {
	k, err := c.find(id)
	if err != nil {
		return err
	}
	c.refused[k.ID], c.beside, c.now = true, "", nil
	return nil
}

// Done lists the checks that were answered, in the order they first were.
func (c *Conversation) Done() []check.ID {
	var out []check.ID
	for _, a := range c.answers {
		if !slices.Contains(out, a.check.ID) {
			out = append(out, a.check.ID)
		}
	}
	return out
}

func (c *Conversation) standing() *standing {
	if c.now == nil {
		c.now = &standing{suspects: c.model.Weigh(c.Evidence())}
	}
	return c.now
}

// steady orders choices whose worths differ by rounding alone by their ids, so
// that the same answers always lead to the same question.
func steady(choices []Choice) {
	const fine = 1e9
	slices.SortFunc(choices, func(a, b Choice) int {
		return cmp.Or(cmp.Compare(math.Round(b.Saves*fine), math.Round(a.Saves*fine)), cmp.Compare(a.Check.ID, b.Check.ID))
	})
}

// outOfReach are checks that were refused, that need what one cannot get at or has
// not got, or for which the meter has no range.
func (c *Conversation) outOfReach(k check.Check) bool {
	if c.refused[k.ID] || !c.Within(k) || k.PeakHold && !(c.model.q.Kit.AdapterFarads > 0) || c.cannot != nil && slices.ContainsFunc(k.Needs, c.cannot) {
		return true
	}
	_, ok := k.Dial(c.model.q.Meter)
	return k.Instrument == check.Multimeter && !ok
}
