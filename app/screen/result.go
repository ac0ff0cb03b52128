package screen

import (
	"slices"

	"github.com/google/uuid"
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/desk"
	"coilbook/app/device"
	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/session"
	"coilbook/engine/spec"
)

// result gives the verdicts with their reasons, and what stays untested.
type result struct {
	app.Compo
	Desk    *desk.Desk
	Rev     int
	Phone   *phone
	Session uuid.UUID

	problem string
	sound   soundBands
}

// OnMount notes a first result.
func (s *result) OnMount(app.Context) { s.seen() }

// OnUpdate notes it once it has been read or saved.
func (s *result) OnUpdate(app.Context) { s.seen() }

// seen notes a result on a machine that is safely kept.
func (s *result) seen() {
	b, ok := s.Desk.Bench(s.Session)
	if ok && s.Desk.Saving() == desk.Saved && b.State.Setup.Aim != check.SelfCheck && len(b.State.Current) > 0 {
		s.Phone.worthInstalling()
	}
}

// Render draws parts, verdicts and what is left.
func (s *result) Render() app.UI {
	b, ok := s.Desk.Bench(s.Session)
	if !ok {
		return waiting()
	}
	return app.Div().Class("page").Body(
		head(words.Title("result"), savedSign(s.Desk), sheetPath(s.Session)),
		app.Main().Class("main").Body(s.told(b)...),
		app.Footer().Class("act two").Body(
			app.P().Class("problem").Attr("role", "alert").Text(s.problem),
			part.Button("other-act", words.SaveFile, s.download).ID("save-file"),
			s.action(b),
		),
	)
}

// told is what the session tells: of a machine's parts, or of the meter itself.
func (s *result) told(b assess.Bench) []app.UI {
	if b.State.Setup.Aim == check.SelfCheck {
		return append([]app.UI{heading(words.MeterOf(b))}, meterResult(b)...)
	}
	r := b.Report()
	return []app.UI{
		part.Text("on-paper", words.Printed(words.SessionName(b.State), b.State.Changed)),
		heading(words.Headline(r, len(b.Beyond()))),
		part.Text("quiet", words.JudgedBy(b)),
		partList(r.Parts),
		app.Div().Class("verdicts").ID("verdicts").Body(s.verdicts(b, r)...),
		s.sound.output(b),
		untested(r),
		toFind(b),
		toEarlier(s.Desk, s.Session),
		part.Link("wide-link", wirePath(s.Session)).Text(words.ToWire),
		part.Text("quiet", words.DeferToManual),
	}
}

func (s *result) action(b assess.Bench) app.UI {
	if next, more := b.State.Next(); more && !straight(b.State.Setup.Aim) {
		return part.Link("main-act", checkPath(s.Session, next.ID)).ID("next").Text(words.GoOn)
	}
	return part.Button("main-act", words.Finish, func(ctx app.Context) {
		if !b.State.Finished {
			s.Desk.Mark(s.Session, session.Finished)
		}
		part.Go(ctx, listOf(b))
	}, b.State.Finished, s.Session.String(), string(b.State.Setup.Aim)).ID("finish")
}

// listOf is where a session is found again.
func listOf(b assess.Bench) string {
	if b.State.Setup.Aim == check.SelfCheck {
		return "meters"
	}
	return "sessions"
}

func (s *result) download(app.Context) {
	name, data, err := s.Desk.File(s.Session)
	if err != nil {
		s.problem = words.NoFile
		return
	}
	device.Download(name, "application/json", data)
}

func partList(parts []assess.PartResult) app.UI {
	var items []app.UI
	for _, p := range parts {
		sign := part.Mark(p.Outcome)
		if p.Tested == 0 {
			sign = part.Sign("todo")
		}
		items = append(items, app.Div().Class("part").Body(sign,
			app.Span().Class("row-name").Body(app.Strong().Text(words.Part(p.Part)), app.Small().Text(words.PartResult(p)))))
	}
	return app.Div().Class("parts card").ID("parts").Body(items...)
}

func (s *result) verdicts(b assess.Bench, r assess.Report) []app.UI {
	var out []app.UI
	for _, l := range append(r.Lines, r.Derived...) {
		if l.Unread != nil || l.Judged() {
			out = append(out, s.verdict(b, l))
		}
	}
	for _, bal := range []*assess.Balance{r.Balance, r.Fine} {
		if bal != nil && bal.Missing == 0 {
			out = append(out, s.verdictCard(words.BalanceName(*bal), words.Doubt(bal.Verdict), words.Balance(*bal), bal.Verdict, nil))
		}
	}
	if r.Winding != nil {
		out = append(out, card(words.WindingTitle, words.Winding(*r.Winding)...))
	}
	if r.Touch != nil {
		out = append(out, card(words.TouchTitle, words.Touch(*r.Touch)))
	}
	return out
}

func card(title string, sentences ...string) app.UI {
	body := []app.UI{app.H2().Text(title)}
	for _, s := range sentences {
		body = append(body, part.Text("", s))
	}
	return app.Article().Class("card verdict").Body(body...)
}

func (s *result) verdict(b assess.Bench, l assess.Line) app.UI {
	if l.Unread != nil {
		return app.Div().Class("card verdict").Text(l.Unread.Error())
	}
	return s.verdictCard(words.CheckName(l.Check), words.Reading(l), words.Because(l.Check, l.Verdict), l.Verdict,
		func() app.UI { return doubt(b, l) })
}

func (s *result) verdictCard(name, reading, because string, v spec.Verdict, details func() app.UI) app.UI {
	return app.Article().Class("card verdict").Body(
		app.Div().Class("verdict-head").Body(
			app.Span().Class("row-name").Text(name), app.Strong().Text(reading),
			app.Span().Class("chip "+part.Tone(v.Outcome)).Body(part.Mark(v.Outcome), app.Span().Text(words.Outcome(v.Outcome))),
		),
		part.When("bar-place", v.HasLimit && v.HasValue, func() app.UI { return part.Picture("limit-bar", part.LimitBar(v)) }),
		part.Text("because", because),
		part.When("", v.Outcome == spec.CannotTell && len(v.Remedies) > 0, func() app.UI { return part.Text("decides", words.Decides(v)) }),
		part.When("", slices.Contains(v.Remedies, spec.VoltAmp), func() app.UI {
			return part.Link("wide-link", methodPath(s.Session, check.VoltAmp)).Text(words.Method(check.VoltAmp))
		}),
		part.When("", details != nil, func() app.UI { return details() }),
	)
}

func untested(r assess.Report) app.UI {
	var items []app.UI
	for _, l := range r.Lines {
		if !l.Answered || l.Skipped {
			items = append(items, app.Li().Text(words.CheckName(l.Check)))
		}
	}
	items = append(items, app.Li().Text(words.NotCovered(r)))
	return app.Div().Class("card").ID("untested").Body(app.H2().Text(words.UntestedTitle), app.Ul().Body(items...))
}
