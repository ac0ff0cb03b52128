package screen

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/meter"
)

// instructions are the upper half of a check: picture, setting, why, steps,
// traps and cautions. Where the engine turns, the cautions come first.
func (s *checkScreen) instructions(v view) []app.UI {
	dangerous := v.check.Engine == check.Cranking
	return []app.UI{
		heading(words.CheckQuestion(v.check)),
		part.When("bare", s.Phone.dark, func() app.UI { return darkNote("undo", s.Phone) }),
		part.When("run-place", len(v.run) > 0, func() app.UI { return s.runCard(v) }),
		part.When("", dangerous, func() app.UI { return cautions(v.check) }),
		app.Div().Class("card").Body(s.picture(v)),
		s.setting(v),
		part.When("doubt-place", v.judged(), func() app.UI { return doubt(v.bench, v.told) }),
		part.Text("why", words.Why(v.check)+" "+words.Minutes(v.check)),
		steps(v.check, v.bench),
		traps(v.check),
		toNoVoice(s.Phone),
		part.When("", !dangerous, func() app.UI { return cautions(v.check) }),
		part.Text("quiet", words.DeferToManual),
		toFind(v.bench),
		part.Link("wide-link", sheetPath(s.Session)).Text(words.ToSheet),
	}
}

func steps(c check.Check, b assess.Bench) app.UI {
	var items []app.UI
	for _, step := range words.StepsIn(c, b.Meter, b.State.Setup.Wires()) {
		items = append(items, app.Li().Text(step))
	}
	return app.Ol().Class("steps").Body(items...)
}

func traps(c check.Check) app.UI {
	var items []app.UI
	for _, t := range c.Traps {
		items = append(items, app.Li().Text(words.Trap(t)))
	}
	return app.Details().Class("traps").Body(
		app.Summary().Text(words.TrapsTitle),
		app.Ul().Body(items...),
	)
}

func cautions(c check.Check) app.UI {
	var items []app.UI
	for _, caution := range c.Cautions {
		items = append(items, app.Li().Text(words.Caution(caution)))
	}
	return app.Aside().Class("caution").Aria("label", words.CautionTitle).Body(
		app.Strong().Text(words.CautionTitle), app.Ul().Body(items...))
}

// setting is the strip with dial, jacks and plug. On a turn-the-dial meter the
// dial can be moved to where the user's own stands.
func (s *checkScreen) setting(v view) app.UI {
	cell := func(label, value string) app.UI {
		return app.Div().Class("cell").Body(app.Span().Text(label), app.Strong().Text(value))
	}
	return app.Div().Class("setting").Body(
		s.dial(v),
		cell(words.JacksLabel, words.Jacks(v.check)),
		cell(words.WhereLabel, words.Where(v.check)),
	)
}

func (s *checkScreen) dial(v view) app.UI {
	r, ok := v.dialRange()
	value := words.Dial(v.check, v.bench.Meter, r)
	if !ok || v.bench.Meter.Auto {
		return app.Div().Class("cell").Body(app.Span().Text(words.DialLabel), app.Strong().Text(value))
	}
	return app.Button().Type("button").Class("cell turn").ID("dial").Body(
		app.Span().Text(words.DialLabel), app.Strong().Text(value), app.Span().Class("unseen").Text(words.TurnDial),
	).OnClick(func(ctx app.Context, _ app.Event) { s.turnDial() }, app.EventScope(r.Label, string(s.Check)))
}

func (v view) dialRange() (r meter.Range, ok bool) {
	if r, ok = v.bench.Meter.RangeLabelled(v.check.Function, v.draft.Range); ok && v.check.Instrument == check.Multimeter {
		return r, true
	}
	return v.check.Dial(v.bench.Meter)
}

// turnDial goes to the next range of the same function; the unit of the digits
// follows.
func (s *checkScreen) turnDial() {
	v, ok := s.view()
	if !ok {
		return
	}
	here, _ := v.dialRange()
	ranges := v.bench.Meter.Ranges[v.check.Function]
	for i, r := range ranges {
		if r.Label == here.Label {
			next := ranges[(i+1)%len(ranges)]
			v.draft.Unit, v.draft.Range = next.Unit.Name, next.Label
			s.keep(v.draft)
			return
		}
	}
}
