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
	answers []answer // one for each check, in the order they first came
	refused map[check.ID]bool
	zero    *meter.Measurement // the leads, once they are known
	minutes float64
	now     *standing // nil once an answer has changed it
}

// answer is what one check showed.
type answer struct {
	check check.Check
	typed quantity.Typed // for a look 1 is yes
}

// standing is where the answers so far have led.
type standing struct {
	suspects Suspects
	next     []Choice
}

// Begin starts a conversation over a model that is ready. cannot reports what one
// cannot get at; nil is for everything within reach.
func Begin(m *Model, cannot func(check.Access) bool) *Conversation {
	return &Conversation{model: m, cannot: cannot, refused: map[check.ID]bool{}}
}

// When it is enough. Assumptions, no source: a part that is named by one answer
// may stand on a slip; nobody does more checks than that for one complaint; a gain
// of one in ninety is worth a minute, and fewer bits than that are not.
const (
	enough        = 0.95
	leastAnswers  = 2
	mostAnswers   = 25
	gainPerMinute = 1.0 / 90
	bitsPerMinute = 0.009
)

// Ask gives the check to do next; ok is false once the finding stands, or nothing
// that is left is worth its minutes.
func (c *Conversation) Ask() (next Choice, ok bool) {
	s := c.standing()
	if s.suspects.Enough(len(c.answers)) {
		return Choice{}, false
	}
	return Best(s.next)
}

// Enough reports whether the finding stands after so many answers.
func (s Suspects) Enough(answers int) bool {
	_, p := s.Part()
	return p >= enough && answers >= leastAnswers || answers >= mostAnswers
}

// Best is the first of ranked choices; ok is false where none is worth its
// minutes.
func Best(ranked []Choice) (best Choice, ok bool) {
	if len(ranked) == 0 {
		return Choice{}, false
	}
	return ranked[0], ranked[0].Worth() >= bitsPerMinute || slices.ContainsFunc(ranked, func(c Choice) bool {
		return c.Gain > gainPerMinute*c.Minutes
	})
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
	c.refused[k.ID], c.now = true, nil
	return nil
}

// Done lists the checks that were answered, in the order they first were.
func (c *Conversation) Done() []check.ID {
	out := make([]check.ID, len(c.answers))
	for i, a := range c.answers {
		out[i] = a.check.ID
	}
	return out
}

func (c *Conversation) standing() standing {
	if c.now == nil {
		evidence := c.Evidence()
		s := standing{suspects: c.model.Weigh(evidence)}
		s.next = c.model.Next(s.suspects, evidence, c.Done(), c.outOfReach)
		steady(s.next)
		c.now = &s
	}
	return *c.now
}

// steady orders choices whose worths differ by rounding alone by their ids, so
// that the same answers always lead to the same question.
func steady(choices []Choice) {
	const fine = 1e9
	slices.SortFunc(choices, func(a, b Choice) int {
		return cmp.Or(cmp.Compare(math.Round(b.Worth()*fine), math.Round(a.Worth()*fine)), cmp.Compare(a.Check.ID, b.Check.ID))
	})
}

// outOfReach are checks that were refused, that need what one cannot get at, or
// for which the meter has no range.
func (c *Conversation) outOfReach(k check.Check) bool {
	if c.refused[k.ID] || c.cannot != nil && slices.ContainsFunc(k.Needs, c.cannot) {
		return true
	}
	_, ok := k.Dial(c.model.q.Meter)
	return k.Instrument == check.Multimeter && !ok
}
