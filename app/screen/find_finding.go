package screen

import (
	"slices"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/session"
)

// finding is how it ends: what it is, what it rests on, what to do, to buy and to
// leave alone, and what nobody knows yet.
func (s *find) finding(v look) app.UI {
	f := v.talk.Finding()
	setup := v.bench.State.Setup
	mended := mendedBy(f)
	home := words.Home(f, setup)
	end := words.NothingMore
	if v.last {
		end = words.ConfirmAbove
	}
	return app.Section().Class("card finding").ID("finding").Body(
		app.P().Class("kicker").Text(words.FindingTitle),
		app.H2().Text(words.FindingIs(f)),
		part.Text("", words.FindingChance(f)),
		app.P().Class("remedy").Text(words.FindingRemedy(f, setup.Aim)),
		together(mended),
		alsoAtFault(f),
		part.When("bare", f.Slip != "", func() app.UI { return s.slipped(v, f) }),
		part.When("bare", home != "", func() app.UI {
			return app.Div().ID("home").Body(app.H3().Text(words.HomeTitle), part.Text("", home))
		}),
		matching(f, mended, setup),
		never(mended, setup),
		rests(v, f),
		s.contradict(v, f),
		leaveAlone(v),
		unknown(v, f),
		part.Text("quiet", end+" "+words.FindingSpent(f)),
	)
}

// mendedBy is the fault that a finding asks to be mended; one without a kind for none.
func mendedBy(f diagnose.Finding) fault.Fault {
	if f.Action == diagnose.NoFault || f.Action == diagnose.NotListed || f.Action == diagnose.Open {
		return fault.Fault{ID: fault.None}
	}
	return suspectOf(f).Fault
}

// together tells of a double: why both, the order of the work, what can hurt.
func together(f fault.Fault) app.UI {
	return part.When("bare", f.Double(), func() app.UI {
		var steps []app.UI
		for _, s := range words.OrderOfWork(f) {
			steps = append(steps, app.Li().Text(s))
		}
		return app.Div().ID("together").Body(
			app.H3().Text(words.BothTitle), part.Text("", words.WhyBoth(f)),
			app.H3().Text(words.OrderTitle), app.Ol().ID("order").Class("order").Body(steps...),
			app.Div().Class("caution").ID("mending").Body(app.H3().Text(words.CautionTitle), listOfTexts(words.MendingCautions(f))),
		)
	})
}

// alsoAtFault points at what may be at fault beside what is named.
func alsoAtFault(f diagnose.Finding) app.UI {
	ok := len(f.Also) > 0 && mendedBy(f).Kind != ""
	return part.When("bare", ok, func() app.UI {
		return app.P().ID("also").Class("also").Text(words.LookAtToo(f.Also[0]))
	})
}

// suspectOf is the suspect that a finding names.
func suspectOf(f diagnose.Finding) diagnose.Suspect {
	i := slices.IndexFunc(f.Faults, func(s diagnose.Suspect) bool { return s.Fault.ID == f.Fault })
	if i < 0 {
		return diagnose.Suspect{}
	}
	return f.Faults[i]
}

// rests unfolds the readings behind the finding.
func rests(v look, f diagnose.Finding) app.UI {
	return part.When("bare", len(v.talk.Done()) > 0, func() app.UI {
		return app.Details().Class("fold").ID("rests").Body(app.Summary().Text(words.FindingRests), reasonList(v.talk, suspectOf(f).Fault))
	})
}

// contradict asks for the reading once more on which the finding rests most.
func (s *find) contradict(v look, f diagnose.Finding) app.UI {
	pro := v.talk.reasons(f.Fault).pro
	ok := len(pro) > 0 && mendedBy(f).Kind != ""
	return part.When("bare", ok, func() app.UI {
		k := pro[0].Check
		loudest, _ := v.talk.answer(k)
		return app.Div().Class("contradict").Body(
			part.Text("", words.RestsOn(loudest.check, f.Action, pro[0])),
			part.Button("other-act", words.CheckName(loudest.check), func(ctx app.Context) { s.choose(ctx, k) }, string(k)).ID("contradict"),
		)
	})
}

func (s *find) slipped(v look, f diagnose.Finding) app.UI {
	k, _ := check.Find(v.talk.checks, f.Slip)
	return app.Div().Class("slip").Body(
		part.Text("", words.SlipOf(words.CheckName(k), f.SlipChance)),
		part.Button("other-act", words.Slipped(words.CheckName(k)), func(ctx app.Context) { s.choose(ctx, k.ID) }, string(k.ID)).ID("slip"),
	)
}

// never warns of what must not be put together.
func never(f fault.Fault, setup session.Setup) app.UI {
	var sentences []string
	for _, k := range f.Kinds() {
		for _, s := range words.NeverPair(k, setup) {
			if !slices.Contains(sentences, s) {
				sentences = append(sentences, s)
			}
		}
	}
	return part.When("bare", len(sentences) > 0, func() app.UI {
		return app.Div().Class("caution").ID("never").Body(app.H3().Text(words.NeverTitle), listOfTexts(sentences))
	})
}

func listOfTexts(sentences []string) app.UI {
	var items []app.UI
	for _, s := range sentences {
		items = append(items, app.Li().Text(s))
	}
	return app.Ul().Body(items...)
}

// matching unfolds what a new part must match; of a double each part by itself.
func matching(f diagnose.Finding, mended fault.Fault, setup session.Setup) app.UI {
	var lists []app.UI
	for _, k := range mended.Kinds() {
		if mended.Double() {
			lists = append(lists, app.H3().Text(words.Part(k.Part())))
		}
		lists = append(lists, listOfTexts(words.Match(k, setup)))
	}
	return part.When("bare", len(lists) > 0, func() app.UI {
		return app.Details().Class("fold").ID("match").Open(true).Body(append([]app.UI{app.Summary().Text(words.MatchHeading(f.Action))}, lists...)...)
	})
}

// leaveAlone unfolds the parts that readings cleared.
func leaveAlone(v look) app.UI {
	var items []app.UI
	for _, c := range v.talk.Cleared() {
		var readings []string
		for _, id := range c.By {
			one, _ := v.talk.answer(id)
			readings = append(readings, words.ReadingIs(one.check, one.value))
		}
		items = append(items, app.Li().Text(words.LeaveAlone(c.Part, c.Before, c.After, readings)))
	}
	return part.When("bare", len(items) > 0, func() app.UI {
		return app.Details().Class("fold").ID("leave").Body(
			app.Summary().Text(words.LeaveTitle), part.Text("quiet", words.LeaveHint), app.Ul().Body(items...))
	})
}

// unknown lists what the readings leave open.
func unknown(v look, f diagnose.Finding) app.UI {
	const sure, odd, listed, most = 0.95, 0.9, 0.05, 3
	var items []app.UI
	add := func(sentence string) { items = append(items, app.Li().Text(sentence)) }
	if f.Probability < sure && mendedBy(f).Kind != "" {
		add(words.OnlyThisMuch(f.Probability))
	}
	if f.Strange >= odd && f.Action != diagnose.NotListed {
		add(words.StrangeReadings(f.Strange))
	}
	if f.Unlisted >= listed && f.Action != diagnose.NotListed {
		add(words.MayBeUnlisted(f.Unlisted))
	}
	for _, x := range v.talk.Missed(most) {
		add(words.WouldHaveTold(words.CheckName(x.Check), x.Minutes))
	}
	return part.When("bare", len(f.Unsure)+len(items) > 0, func() app.UI {
		return app.Div().ID("unknown").Body(
			app.H3().Text(words.UnknownTitle),
			part.When("bare", len(f.Unsure) > 0, func() app.UI { return unsure(f) }),
			app.Ul().Body(items...),
		)
	})
}

// unsure lists what could not be told apart.
func unsure(f diagnose.Finding) app.UI {
	var items []app.UI
	for _, id := range f.Unsure {
		for _, one := range f.Faults {
			if one.Fault.ID == id {
				items = append(items, app.Li().Text(words.Suspect(one.Fault)+", "+words.SuspectChance(one.Probability)))
			}
		}
	}
	return app.Div().ID("unsure").Body(app.Strong().Text(words.ToldApartTitle), app.Ul().Body(items...), part.Text("quiet", words.NotToldApart))
}
