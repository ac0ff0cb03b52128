package screen

import (
	"slices"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
)

// reasons are what speaks for and against a suspect, worked out once for a talk.
type reasons struct{ pro, con []diagnose.Reason }

// At most so many of either are told, and none that tells less, in bits.
const (
	mostReasons = 3
	leastReason = 0.2
	leastChance = 0.04 // of an answer that is told
)

func (t *talk) reasons(id fault.ID) reasons {
	r, ok := t.told[id]
	if !ok {
		r.pro, r.con = t.Reasons(id, mostReasons)
		r.pro, r.con = worthTelling(r.pro), worthTelling(r.con)
		t.told[id] = r
	}
	return r
}

func worthTelling(all []diagnose.Reason) []diagnose.Reason {
	n := 0
	for n < len(all) && max(all[n].Weight, -all[n].Weight) >= leastReason {
		n++
	}
	return all[:n]
}

// means is what answers to a check would mean, worked out once for a talk.
func (t *talk) means(id check.ID) []diagnose.Meaning {
	m, ok := t.outlook[id]
	if !ok {
		m = slices.DeleteFunc(t.Means(id), func(m diagnose.Meaning) bool { return m.Chance < leastChance })
		t.outlook[id] = m
	}
	return m
}

// reasonList tells the reasons in sentences, those for it first.
func reasonList(t *talk, f fault.Fault) app.UI {
	r := t.reasons(f.ID)
	if len(r.pro)+len(r.con) == 0 {
		return part.Text("quiet", words.NoReasons)
	}
	return app.Div().Class("reason-lists").Body(
		reasonsUnder(t, f, words.ForTitle, "for", r.pro),
		reasonsUnder(t, f, words.AgainstTitle, "against", r.con),
	)
}

func reasonsUnder(t *talk, f fault.Fault, title, class string, list []diagnose.Reason) app.UI {
	return part.When("bare", len(list) > 0, func() app.UI {
		var items []app.UI
		for _, r := range list {
			items = append(items, app.Li().Text(t.reason(f, r)))
		}
		return app.Div().Class("reason-side "+class).Body(app.Strong().Text(title), app.Ul().Body(items...))
	})
}

// reason is one of them in a sentence.
func (t *talk) reason(f fault.Fault, r diagnose.Reason) string {
	s, _ := t.answer(r.Check)
	return words.Reason(s.check, s.value, f, r)
}

// outlook says why the check is next and unfolds what each answer would mean.
func (s *find) outlook(v look) app.UI {
	k := v.check
	choice, ok := v.talk.Choice(k.ID)
	return part.When("bare", ok, func() app.UI {
		_, likeliest := v.talk.Suspects().Lead()
		means := v.talk.means(k.ID)
		why := words.WhyNext(choice, likeliest, means, s.chosen == "")
		if v.last {
			why = words.WhyConfirm(v.talk.Suspects().Named())
		}
		return app.Div().Class("outlook").Body(
			part.Text("", why),
			&part.Later{Of: func() []app.UI { return meanings(k, means) }},
		)
	})
}

// meanings unfold what each answer would mean, where there is more than one.
func meanings(k check.Check, list []diagnose.Meaning) []app.UI {
	if len(list) < 2 {
		return nil
	}
	return []app.UI{app.Details().Class("fold").ID("means").Body(
		app.Summary().Text(words.MeansTitle),
		app.Dl().Body(meaningRows(k, list)...),
	)}
}

func meaningRows(k check.Check, means []diagnose.Meaning) []app.UI {
	var rows []app.UI
	for _, m := range means {
		rows = append(rows,
			app.Dt().Text(words.MeaningAnswer(k, m)),
			app.Dd().Body(app.Span().Text(words.MeaningTells(m)), app.Small().Text(words.MeaningChance(m))))
	}
	return rows
}
