package screen

import (
	"slices"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/machine"
)

// finding is how it ends: what it is, what it rests on, what to do, to buy and to
// leave alone, and what nobody knows yet.
func (s *find) finding(v look) app.UI {
	f := v.talk.Finding()
	setup := v.bench.State.Setup
	kind := kindOf(f)
	home := words.Home(f, setup)
	return app.Section().Class("card finding").ID("finding").Body(
		app.P().Class("kicker").Text(words.FindingTitle),
		app.H2().Text(words.FindingIs(f)),
		part.Text("", words.FindingChance(f)),
		app.P().Class("remedy").Text(words.FindingRemedy(f, setup.Aim)),
		part.When("bare", f.Slip != "", func() app.UI { return s.slipped(v, f) }),
		part.When("bare", home != "", func() app.UI {
			return app.Div().ID("home").Body(app.H3().Text(words.HomeTitle), part.Text("", home))
		}),
		matching(f, words.Match(kind, setup)),
		never(words.NeverPair(kind, setup)),
		rests(v, f),
		s.contradict(v, f),
		leaveAlone(v),
		unknown(v, f),
		part.Text("quiet", words.NothingMore+" "+words.FindingSpent(f)),
	)
}

// kindOf is the kind of the fault that a finding asks to be mended; "" for none.
func kindOf(f diagnose.Finding) machine.Kind {
	if f.Action == diagnose.NoFault || f.Action == diagnose.NotListed || f.Action == diagnose.Open {
		return ""
	}
	return suspectOf(f).Fault.Kind
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
	ok := len(pro) > 0 && kindOf(f) != ""
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
func never(sentences []string) app.UI {
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

// matching unfolds what a new part must match.
func matching(f diagnose.Finding, sentences []string) app.UI {
	return part.When("bare", len(sentences) > 0, func() app.UI {
		return app.Details().Class("fold").ID("match").Open(true).Body(app.Summary().Text(words.MatchHeading(f.Action)), listOfTexts(sentences))
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
	if f.Probability < sure && kindOf(f) != "" {
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
