package diagnose

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

// Answer takes a reading of a check as it was typed, in a unit, or in the one that
// the dial shows where unit is empty; a unit in the text itself comes first. A
// second answer to a check takes the place of the first, unless Beside was said. The
// error says in one sentence what cannot be read; the conversation is then as it was.
func (c *Conversation) Answer(id check.ID, text, unit string) error {
	k, t, err := c.read(id, text, unit)
	if err != nil {
		return err
	}
	return c.take(k, t)
}

// Beside says that the next answer to a check is another reading of the same point,
// with the probes placed anew: it counts beside those before it.
func (c *Conversation) Beside(id check.ID) { c.beside = id }

// Again is Answer with one more reading of the same point.
func (c *Conversation) Again(id check.ID, text, unit string) error {
	c.Beside(id)
	err := c.Answer(id, text, unit)
	c.beside = ""
	return err
}

// read makes a reading of a text.
func (c *Conversation) read(id check.ID, text, unit string) (k check.Check, t quantity.Typed, err error) {
	k, err = c.measured(id)
	if err != nil {
		return k, t, err
	}
	in := k.Unit(c.model.q.Meter)
	if unit != "" {
		one, err := quantity.Parse(k.Kind(), "1 "+unit, in)
		if err != nil || one.State != quantity.Number {
			return k, t, &meter.FieldError{Field: "unit", Reason: fmt.Sprintf("is %.20q, which is none of %s", unit, k.Kind()), WayOut: "leave it out or use " + quantity.Units(k.Kind())[0].Name}
		}
		in = one.Unit
	}
	t, err = quantity.Parse(k.Kind(), text, in)
	if err != nil {
		return k, t, fmt.Errorf("reading: %w", err)
	}
	return k, t, nil
}

// mostSI is beyond what any meter shows in SI units.
const mostSI = 1e12

// Number takes a reading in SI units: Ω, V, A, or m for a gap.
func (c *Conversation) Number(id check.ID, si float64) error {
	k, err := c.measured(id)
	if err != nil {
		return err
	}
	kind := k.Kind()
	switch {
	case !(math.Abs(si) <= mostSI):
		return &meter.FieldError{Field: "number", Reason: fmt.Sprintf("is %g, which no meter shows", si), WayOut: "give the reading in SI units"}
	case si < 0 && (kind == quantity.VoltageAC || kind == quantity.Length):
		return &meter.FieldError{Field: "number", Reason: fmt.Sprintf("is %g, below zero, which no %s can be", si, kind), WayOut: "leave out the minus sign"}
	}
	t := quantity.Typed{Kind: kind, Value: si, Unit: quantity.Units(kind)[0]}
	if r, ok := c.model.q.Meter.RangeFor(k.Function, math.Abs(si)); ok && k.Instrument == check.Multimeter {
		if dial, _ := k.Dial(c.model.q.Meter); !c.model.q.Meter.Auto && dial.Full >= math.Abs(si) {
			r = dial
		}
		t.Step = r.Step
	}
	return c.take(k, t)
}

// See takes the answer to a look.
func (c *Conversation) See(id check.ID, yes bool) error {
	k, err := c.find(id)
	if err != nil {
		return err
	}
	if k.Instrument != check.Eyes {
		return &meter.FieldError{Field: "yes", Reason: fmt.Sprintf("is no answer to %s, which is measured", id), WayOut: "give reading or number"}
	}
	t := quantity.Typed{}
	if yes {
		t.Value = 1
	}
	return c.take(k, t)
}

// leadZero is the check that holds the probes together.
const leadZero check.ID = "lead-zero"

// Leads takes the resistance of the meter's leads, in Ω as the meter shows it with
// the probes held together. It serves every reading of ohms, also earlier ones.
func (c *Conversation) Leads(ohms float64) error {
	k, err := c.find(leadZero)
	if err != nil {
		return err
	}
	dial, _ := k.Dial(c.model.q.Meter)
	return c.zeroed("leadsOhms", k, quantity.Typed{Kind: quantity.Resistance, Value: ohms, Step: dial.Step, Unit: quantity.Ohms})
}

// Leads that one can measure with lie within; a display may stand below zero by its
// own error. In Ω, an assumption, no source.
const leastLeads, mostLeads = -1, 10

func (c *Conversation) zeroed(field string, k check.Check, t quantity.Typed) error {
	if t.State != quantity.Number || !(t.Value >= leastLeads && t.Value <= mostLeads) {
		return &meter.FieldError{
			Field: field, Reason: fmt.Sprintf("is %s, which leads that work cannot read", t), WayOut: fmt.Sprintf("use %d to %d Ω, or try other leads", leastLeads, mostLeads),
		}
	}
	with := c.model.q.Meter
	dial, _ := k.Dial(with)
	zero := with.Measure(meter.Ohms, with.RangeOf(meter.Ohms, dial, t), t, meter.Conditions{RawLeads: true})
	c.zero, c.now = &zero, nil
	return nil
}

// measured finds a check that the meter at hand can answer with a reading.
func (c *Conversation) measured(id check.ID) (check.Check, error) {
	k, err := c.find(id)
	if err != nil {
		return k, err
	}
	if k.Instrument == check.Eyes {
		return k, &meter.FieldError{Field: "reading", Reason: fmt.Sprintf("is no answer to %s, which is looked at", id), WayOut: "give yes, true or false"}
	}
	if _, ok := k.Dial(c.model.q.Meter); !ok && k.Instrument == check.Multimeter {
		return k, &meter.FieldError{Field: "reading", Reason: fmt.Sprintf("is of %s, for which this meter has no range", k.Function), WayOut: "refuse the check"}
	}
	return k, nil
}

var errNoCheck = errors.New("check: is missing; name one")

func (c *Conversation) find(id check.ID) (check.Check, error) {
	if id == "" {
		return check.Check{}, errNoCheck
	}
	j, ok := c.model.index[id]
	if !ok {
		return check.Check{}, &meter.FieldError{Field: "check", Reason: fmt.Sprintf("%.40q is none of this build's", id), WayOut: "use the one that was asked for, or leave it out"}
	}
	return c.model.Checks[j], nil
}

// take keeps an answer and counts its minutes; a correction costs none.
func (c *Conversation) take(k check.Check, t quantity.Typed) error {
	beside := c.beside == k.ID
	c.beside = ""
	if k.ID == leadZero {
		return c.takeLeads(k, t)
	}
	c.now = nil
	delete(c.refused, k.ID)
	c.taken[k.ID]++ // a correction too: whoever corrects has looked again
	first := slices.IndexFunc(c.answers, func(a answer) bool { return a.check.ID == k.ID })
	if first < 0 || beside {
		c.minutes += k.Minutes + c.unopened(k)
		c.answers = append(c.answers, answer{k, t})
		return nil
	}
	c.answers[first].typed = t
	later := slices.DeleteFunc(c.answers[first+1:], func(a answer) bool { return a.check.ID == k.ID })
	c.answers = c.answers[:first+1+len(later)]
	return nil
}

// takeLeads takes what the probes show that are held together. Leads that show
// nothing, or do not come to rest, stay unknown, and are not asked again.
func (c *Conversation) takeLeads(k check.Check, t quantity.Typed) error {
	if t.State != quantity.Number {
		c.refused[leadZero] = true
	} else if err := c.zeroed("reading", k, t); err != nil {
		return err
	}
	c.minutes += k.Minutes
	c.now = nil
	return nil
}

// unopened is the minutes for what must be got at before a check and was not
// before.
func (c *Conversation) unopened(k check.Check) float64 {
	sum := 0.0
	for _, need := range k.Needs {
		if !c.Given(need) && !slices.ContainsFunc(c.answers, func(a answer) bool { return slices.Contains(a.check.Needs, need) }) {
			sum += need.Minutes()
		}
	}
	return sum
}

// Evidence is what the answers are worth with this meter, in their order.
func (c *Conversation) Evidence() []Evidence {
	var out []Evidence
	for _, a := range c.answers {
		out = append(out, c.worth(a))
	}
	return out
}

func (c *Conversation) worth(a answer) Evidence {
	e := Evidence{Check: a.check.ID, State: a.typed.State, Value: a.typed.Value}
	var m meter.Measurement
	switch a.check.Instrument {
	case check.Eyes:
		return e
	case check.FeelerGauge:
		m = meter.MeasureGap(a.typed)
	default:
		with := c.model.q.Meter
		dial, _ := a.check.Dial(with)
		f := a.check.Function
		m = with.Measure(f, with.RangeOf(f, dial, a.typed), a.typed, meter.Conditions{LeadZero: c.zero})
	}
	if m.State == quantity.Number {
		e.Value, e.Doubt = m.Value, m.Std
	}
	if a.check.Kind() == quantity.Resistance {
		e.Value = math.Max(e.Value, 0) // leads taken off what hardly exceeds them
	}
	return e
}
