package screen

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
)

// suspects are the likeliest faults, each with shape, word, bar and figure; a tap
// unfolds what speaks for and against it.
func (s *find) suspects(v look) app.UI {
	list := leading(v.talk.Suspects().Faults, len(v.talk.Done()))
	unlisted := v.talk.Suspects().Unlisted
	leads := words.Leading(list[0])
	if unlisted > list[0].Probability {
		leads = words.LeadingUnlisted(unlisted)
	}
	var rows []app.UI
	for _, one := range list {
		if unlisted >= max(possible, one.Probability) {
			rows, unlisted = append(rows, offTheList(unlisted)), 0
		}
		rows = append(rows, suspect(v.talk, one))
	}
	if unlisted >= possible {
		rows = append(rows, offTheList(unlisted))
	}
	return app.Section().Class("card suspects").ID("suspects").Body(
		app.H2().Text(words.SuspectsTitle),
		app.P().Class("unseen").ID("leading").Attr("role", "status").Text(leads),
		app.Ol().Class("suspect-list").Body(rows...),
		s.odd(v),
		&part.Later{Of: func() []app.UI { return []app.UI{shares(v.talk.Suspects())} }},
		part.Text("quiet", words.SuspectsFrom(v.talk.Minutes(), len(v.talk.Done()))),
	)
}

// odd says that the readings fit none of them, and which one to take again.
func (s *find) odd(v look) app.UI {
	f := v.talk.Finding()
	return part.When("bare", v.more && f.Action == diagnose.NotListed, func() app.UI {
		return app.Div().Class("caution").ID("odd").Body(
			part.Text("", words.FitNone),
			part.When("bare", f.Slip != "", func() app.UI { return s.slipped(v, f) }),
		)
	})
}

// offTheList is the row of what no catalogue has, in its place among the suspects.
func offTheList(probability float64) app.UI {
	step, row := suspectRow(words.OffTheList, app.Small(), probability)
	return app.Li().ID("off-the-list").Class(step).Body(app.Div().Class("suspect").Body(row...))
}

// suspect is one of them; before the first reading there is nothing to unfold.
func suspect(t *talk, one diagnose.Suspect) app.UI {
	named := app.Small().DataSet("why", words.WhyWord).Text(words.SuspectPart(one.Fault)) // see style.css
	step, row := suspectRow(words.Suspect(one.Fault), named, one.Probability)
	read := len(t.Done()) > 0
	return app.Li().Class(step).Body(
		part.When("bare", !read, func() app.UI { return app.Div().Class("suspect").Body(row...) }),
		part.When("bare", read, func() app.UI {
			return app.Details().Class("suspect-why").ID("why-"+string(one.Fault.ID)).Body(
				app.Summary().Class("suspect").Body(row...),
				reasonList(t, one.Fault),
			)
		}),
	)
}

// suspectRow shows a probability by shape, word, figure and bar; step is the class of
// its row.
func suspectRow(name string, below app.UI, probability float64) (step string, row []app.UI) {
	n, word := words.Likelihood(probability)
	return "step-" + strconv.Itoa(n), []app.UI{
		part.Picture("rungs", part.Rungs(n, words.Likelihoods-1)),
		app.Span().Class("row-name").Body(app.Strong().Text(name), below),
		app.Span().Class("suspect-share").Body(app.Strong().Text(words.SuspectChance(probability)), app.Small().Text(word)),
		part.Picture("share", part.Share(probability)),
	}
}

// next is the check to do, with its input.
func (s *find) next(v look) app.UI {
	k := v.check
	title := words.NextCheckTitle
	switch {
	case v.again:
		title = words.TakenAgainTitle
	case s.chosen != "":
		title = words.OwnChoiceTitle
	case v.last:
		title = words.ConfirmTitle
	}
	first, minutes := v.talk.before(k)
	turns := k.Engine != check.Stopped
	return app.Section().Class("card next").ID("next-check").TabIndex(-1).Body(
		app.P().Class("kicker").Text(title),
		app.H2().ID("next-name").Text(words.CheckQuestion(k)),
		part.Text("why", words.Why(k)+" "+words.Takes(k, minutes)),
		s.outlook(v),
		part.When("bare", len(first) > 0, func() app.UI { return needs(first) }),
		part.When("bare", turns, func() app.UI { return cautions(k) }),
		inColours(k, v.bench.State.Setup),
		s.setting(v),
		&readAloud{Phone: s.Phone, Rev: s.Can, Of: string(k.ID), Text: spokenCheck(v.bench, k)},
		steps(k, v.bench),
		part.When("bare", !turns, func() app.UI { return cautions(k) }),
		s.input(v),
		&part.Later{Of: func() []app.UI { return []app.UI{traps(k)} }},
		toNoVoice(s.Phone),
	)
}

// needs lists what to get at before the check.
func needs(first []check.Access) app.UI {
	var items []app.UI
	for _, a := range first {
		items = append(items, app.Li().Text(words.First(a)))
	}
	return app.Div().Class("before").ID("needs").Body(app.Strong().Text(words.FirstTitle), app.Ul().Body(items...))
}

func (s *find) setting(v look) app.UI {
	cell := func(label, value string) app.UI {
		return app.Div().Class("cell").Body(app.Span().Text(label), app.Strong().Text(value))
	}
	r, _ := v.check.Dial(v.bench.Meter)
	return app.Div().Class("setting").Body(
		cell(words.DialLabel, words.Dial(v.check, v.bench.Meter, r)),
		cell(words.JacksLabel, words.Jacks(v.check)),
		cell(words.WhereLabel, words.Where(v.check)),
	)
}

// input takes the answer: two large buttons for a look, else a field with its unit.
func (s *find) input(v look) app.UI {
	return app.Div().Class("answer").ID("answer").Body(
		part.When("bare", v.again, func() app.UI { return s.takenAgain(v) }),
		part.When("bare", v.check.Instrument == check.Eyes, func() app.UI { return s.yesNo(v) }),
		part.When("bare", v.check.Instrument != check.Eyes, func() app.UI { return s.field(v) }),
		app.P().Class("problem").ID("find-problem").Attr("role", "alert").Text(s.problem),
		s.instead(v),
	)
}

// takenAgain says what becomes of the earlier reading, and lets it count too.
func (s *find) takenAgain(v look) app.UI {
	if v.odd {
		return part.Text("quiet", words.OddReading(v.old.value))
	}
	class, says := "option", words.TakenAgain(v.old.value)
	if s.both {
		class, says = "option on", words.TakenAlong(v.old.value)
	}
	return app.Div().Class("taken-again").Body(
		part.Text("quiet", says),
		part.When("bare", v.check.Instrument != check.Eyes, func() app.UI {
			return part.Button(class, words.CountBoth, func(app.Context) { s.both = !s.both }, string(v.check.ID), s.both).
				ID("count-both").Aria("pressed", part.Aria(s.both))
		}),
	)
}

func (s *find) yesNo(v look) app.UI {
	id := string(v.check.ID)
	return app.Div().Class("ask").Attr("role", "group").Aria("label", words.AskOf(v.check)).Body(
		app.P().Class("question").Text(words.AskOf(v.check)),
		app.Div().Class("two-acts").Body(
			part.Button("answer-act", words.Yes, func(ctx app.Context) { s.say(ctx, seenYes) }, id).ID("say-yes"),
			part.Button("answer-act", words.No, func(ctx app.Context) { s.say(ctx, seenNo) }, id).ID("say-no"),
		))
}

func (s *find) field(v look) app.UI {
	return app.Form().Class("ask").OnSubmit(s.submit).Body(
		app.Label().Class("question").For("find-reading").Text(words.AskOf(v.check)),
		app.Div().Class("reading-row").Body(
			&part.Field{ID: "find-reading", Value: v.draft.Text, Mode: keysFor(v.check), OnText: func(_ app.Context, text string) { s.typed(v.check.ID, text) }},
			app.Span().Class("unit").ID("find-unit").Text(v.unit.Name),
			app.Button().Type("submit").Class("answer-act").ID("find-enter").Text(words.EnterReading),
		),
		part.When("bare", len(quantity.Units(v.check.Kind())) > 1, func() app.UI { return s.units(v) }),
	)
}

// keysFor is the keyboard of a phone: the one for decimals has no minus on some.
func keysFor(k check.Check) string {
	if k.Part == check.Wiring && (k.Function == meter.VoltsDC || k.Function == meter.AmpsDC) {
		return "text"
	}
	return "decimal"
}

// typed keeps what stands in the input, unless the next check is asked for already.
func (s *find) typed(of check.ID, text string) {
	if v, ok := s.now(); ok && v.more && v.check.ID == of {
		s.problem = ""
		v.draft.Text = text
		s.Desk.Keep(s.Session, v.check.ID, v.draft)
	}
}

func (s *find) units(v look) app.UI {
	var buttons []app.UI
	for _, u := range words.Units().Units(v.check.Kind()) {
		class, on := "option", u.Name == v.unit.Name
		if on {
			class += " on"
		}
		buttons = append(buttons, part.Button(class, u.Name, func(app.Context) {
			if now, ok := s.now(); ok && now.more {
				now.draft.Unit = u.Name
				s.Desk.Keep(s.Session, now.check.ID, now.draft)
			}
		}, string(v.check.ID), on).ID("unit-"+u.Name).Aria("pressed", part.Aria(on)))
	}
	return app.Div().Class("options").Attr("role", "group").Aria("label", words.AskUnitShown).Body(buttons...)
}

// instead are the answers that are no number.
func (s *find) instead(v look) app.UI {
	id := string(v.check.ID)
	say := func(name, label, text string) app.UI {
		return part.Button("option", label, func(ctx app.Context) { s.say(ctx, text) }, id).ID("say-" + name)
	}
	var buttons []app.UI
	if v.check.Instrument == check.Multimeter {
		buttons = append(buttons, say("unsettled", words.SayUnsettled, spoken[keyUnsettled]), say("open", words.SayOpen, spoken[keyOpen]))
	}
	buttons = append(buttons, part.Button("option", words.SayCannot, s.skip, id).ID("say-cannot"))
	if s.chosen != "" {
		label := words.SuggestedCheck
		if v.again {
			label = words.LeaveAsItIs
		}
		buttons = append(buttons, part.Button("option", label, s.leave, id).ID("leave"))
	}
	return app.Div().Class("options instead").Body(buttons...)
}

// elsewhere unfolds all checks that have no reading yet.
func (s *find) elsewhere(v look) app.UI {
	return app.Section().Class("elsewhere").Body(
		part.Button("other-act fold", words.OtherCheck, func(app.Context) { s.others = !s.others }, s.others).
			ID("other-check").Aria("expanded", part.Aria(s.others)),
		part.When("bare", s.others, func() app.UI {
			var groups []app.UI
			for _, g := range v.talk.others(s.shown) {
				groups = append(groups, s.group(v, g))
			}
			return app.Div().Class("other-checks").ID("other-checks").Body(groups...)
		}),
	)
}

func (s *find) group(v look, g otherGroup) app.UI {
	var rows []app.UI
	for _, k := range g.checks {
		_, minutes := v.talk.before(k)
		note := words.StepMinutes(minutes)
		if _, refused := v.talk.answer(k.ID); refused {
			note = words.LeftOutEarlier + ", " + note
		}
		rows = append(rows, part.Press(app.Button().Type("button").Class("row said").ID("other-"+string(k.ID)).Body(
			app.Span().Class("row-name").Text(words.CheckName(k)), app.Small().Text(note),
		), func(ctx app.Context) { s.choose(ctx, k.ID) }, string(k.ID), note))
	}
	return app.Div().Body(app.H3().Text(words.Part(g.part)), app.Div().Class("rows").Body(rows...))
}

// readings are the answers so far; a tap puts one back into the input.
func (s *find) readings(v look) app.UI {
	slips := v.talk.Suspects().Slips
	rows := make([]app.UI, len(v.talk.said))
	for i, one := range v.talk.said {
		rows[i] = s.reading(v, one, slips[one.check.ID])
	}
	return app.Section().ID("said").Body(
		app.H2().Text(words.SaidTitle),
		part.Text("quiet", words.SaidHint),
		app.Div().Class("rows").Body(rows...),
		v.talk.sound.output(v.bench),
	)
}

func (s *find) reading(v look, one said, slip float64) app.UI {
	id := one.check.ID
	note, mark := "", part.Sign("noted")
	switch {
	case one.entry.Reading == nil:
		mark = part.Sign("skip")
	case one.err != nil:
		note = words.NotCounted(one.err)
	default:
		note, mark = sentence(v, *one.entry.Reading, one.check)
		if slip >= 0.5 {
			note = words.SlipReason(slip)
		}
	}
	return part.Press(app.Button().Type("button").Class("row said").ID("said-"+string(id)).Body(
		app.Span().Class("row-name").Body(app.Span().Text(words.CheckName(one.check)), app.Small().Text(note)),
		app.Span().Class("row-reading").Text(one.value),
		mark,
	), func(ctx app.Context) { s.choose(ctx, id) }, string(id), one.value)
}

// sentence is what the limits say about a reading by itself, where they do.
func sentence(v look, r session.Reading, k check.Check) (note string, mark app.UI) {
	if k.Instrument == check.Eyes {
		return "", part.Sign("noted")
	}
	r.Again = false
	l := v.bench.Judge(k, r)
	if !l.Read() || !l.Judged() || !l.Verdict.HasLimit {
		return "", part.Sign("noted")
	}
	return words.Brief(k, l.Verdict), part.Mark(l.Verdict.Outcome)
}
