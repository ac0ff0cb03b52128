package screen

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/google/uuid"

	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
)

// Texts that the answer to a look is recorded with.
const seenYes, seenNo = "yes", "no"

// talk is a diagnosis replayed from the answers of a session.
type talk struct {
	*diagnose.Conversation
	model   *diagnose.Model
	session uuid.UUID
	checks  []check.Check // that the meter can do
	said    []said        // in the order they came
	open    map[check.Access]bool

	told    map[fault.ID]reasons
	outlook map[check.ID][]diagnose.Meaning
	sound   *soundBands
}

// said is one answer: a reading, a look or a refusal.
type said struct {
	check check.Check
	entry session.Entry
	run   []session.Entry // readings that count together, the entry the last of them
	value string          // in words
	err   error           // why it does not count
}

// replay feeds a conversation all answers of a session that speak about its
// checks. The leads come first: they serve every reading.
func replay(g *grown, with session.State, m meter.Meter) *talk {
	t := &talk{
		Conversation: diagnose.Begin(g.model, nil), model: g.model, session: with.ID, open: map[check.Access]bool{},
		told: map[fault.ID]reasons{}, outlook: map[check.ID][]diagnose.Meaning{}, sound: &g.sound,
	}
	for _, k := range g.model.Checks {
		if canDo(k, m) && t.Within(k) {
			t.checks = append(t.checks, k)
		}
	}
	for _, k := range t.checks {
		if e, ok := with.Current[k.ID]; ok {
			t.said = append(t.said, said{check: k, entry: e, run: with.Runs[k.ID]})
		}
	}
	slices.SortStableFunc(t.said, func(a, b said) int { return cmp.Compare(a.entry.At.UnixNano(), b.entry.At.UnixNano()) })
	for i := range t.said {
		t.take(&t.said[i], m)
	}
	for _, k := range t.checks {
		if with.Once[k.ID] {
			t.leave(k.ID)
		}
	}
	return t
}

func (t *talk) take(s *said, m meter.Meter) {
	if s.entry.Reading == nil {
		s.value, s.err = words.NotDone, t.Refuse(s.check.ID)
		return
	}
	var values []string
	for i, e := range s.run {
		value, err := hear(t.Conversation, s.check, *e.Reading, m, i > 0)
		values = append(values, value)
		if err != nil {
			s.value, s.err = value, err
			return
		}
	}
	s.value = words.Together(values)
	for _, a := range s.check.Needs {
		t.open[a] = true
	}
}

// leave keeps a reading from being asked for once more.
func (t *talk) leave(id check.ID) {
	if s, done := t.answer(id); done && s.entry.Reading != nil {
		_ = t.Refuse(id) // it is one of the model's
	}
}

// hear tells a conversation a reading, which is one more of the same point where
// again says so; value is the reading in words. After an error the conversation is
// as it was.
func hear(c *diagnose.Conversation, k check.Check, r session.Reading, m meter.Meter, again bool) (value string, err error) {
	if k.Instrument == check.Eyes {
		yes := saidYes(r)
		if !yes && !strings.EqualFold(r.Text, seenNo) {
			return r.Text, &quantity.UnreadableError{Text: r.Text, Reason: "is neither yes nor no", WayOut: "choose one of them"}
		}
		return words.Answer(yes), c.See(k.ID, yes)
	}
	unit := unitOf(k, m, r.Unit)
	typed, err := quantity.Parse(k.Kind(), r.Text, unit)
	if err != nil {
		return r.Text, err
	}
	if again {
		return words.Typed(typed), c.Again(k.ID, r.Text, unit.Name)
	}
	return words.Typed(typed), c.Answer(k.ID, r.Text, unit.Name)
}

func saidYes(r session.Reading) bool { return strings.EqualFold(r.Text, seenYes) }

// canDo reports whether a meter has what a check asks for.
func canDo(k check.Check, m meter.Meter) bool {
	_, ok := k.Dial(m)
	return ok || k.Instrument != check.Multimeter
}

// unitOf is the unit with a name, or the one that the meter shows by itself.
func unitOf(k check.Check, m meter.Meter, name string) quantity.Unit {
	if u, ok := quantity.UnitNamed(k.Kind(), name); ok {
		return u
	}
	return k.Unit(m)
}

// talkKey tells replays apart: the same answers, weighed by the same population, are
// the same talk.
func talkKey(g *grown, st session.State) string {
	var out strings.Builder
	fmt.Fprintf(&out, "%p", g)
	for _, k := range g.model.Checks {
		if e, ok := st.Current[k.ID]; ok {
			fmt.Fprintf(&out, "%s+%d%t", e.ID, len(st.Runs[k.ID]), st.Once[k.ID])
		}
	}
	return out.String()
}

// answer is what was said about a check; ok is false for none.
func (t *talk) answer(id check.ID) (s said, ok bool) {
	for _, s := range t.said {
		if s.check.ID == id {
			return s, true
		}
	}
	return said{}, false
}

// before lists what must be got at first for a check, and the minutes of both.
func (t *talk) before(k check.Check) (first []check.Access, minutes float64) {
	minutes = k.Minutes
	for _, a := range k.Needs {
		if !t.open[a] && !t.Given(a) {
			first = append(first, a)
			minutes += a.Minutes()
		}
	}
	return first, minutes
}

// others are the checks without a reading, by what they speak about.
func (t *talk) others(but check.ID) (groups []otherGroup) {
	for _, k := range t.checks {
		s, done := t.answer(k.ID)
		if k.ID == but || done && s.entry.Reading != nil {
			continue
		}
		at := slices.IndexFunc(groups, func(g otherGroup) bool { return g.part == k.Part })
		if at < 0 {
			at = len(groups)
			groups = append(groups, otherGroup{part: k.Part})
		}
		groups[at].checks = append(groups[at].checks, k)
	}
	return groups
}

// otherGroup is the checks of one part.
type otherGroup struct {
	part   check.Part
	checks []check.Check
}

// possible is the probability from which a suspect is called so; see words.Likelihood.
const possible = 0.1

// leading are the suspects to show: the likeliest, at least three, and once there
// are readings further ones while they are still possible. The next check follows.
func leading(all []diagnose.Suspect, readings int) []diagnose.Suspect {
	const least = 3
	most, n := least, 0
	if readings > 0 {
		most = 5
	}
	for n < len(all) && n < most && (n < least || all[n].Probability >= possible) {
		n++
	}
	return all[:n]
}
