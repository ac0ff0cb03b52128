package screen

import (
	"github.com/google/uuid"
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/desk"
	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/spec"
)

// sheet shows all checks at a glance; any of them can be entered or corrected.
type sheet struct {
	app.Compo
	Desk    *desk.Desk
	Rev     int
	Session uuid.UUID
}

// Render draws a row for each check.
func (s *sheet) Render() app.UI {
	b, ok := s.Desk.Bench(s.Session)
	if !ok {
		return waiting()
	}
	progress, rows := s.rows(b)
	body := append([]app.UI{
		part.Text("on-paper", words.Printed(words.AppName, b.State.Changed)),
		heading(words.SessionName(b.State)),
		part.Text("quiet", progress+". "+words.SheetHint),
	}, rows...)
	body = append(body,
		legend(),
		part.When("", b.State.Setup.Aim != check.SelfCheck, func() app.UI { return s.methods(b) }),
		toFind(b),
		toEarlier(s.Desk, s.Session),
		part.Link("wide-link", setupPath(s.Session)).Text(words.ToSetup),
	)
	return app.Div().Class("page").Body(
		head(words.Title("sheet"), savedSign(s.Desk), ""),
		app.Main().Class("main").Body(body...),
		app.Footer().Class("act").Body(s.action(b)),
	)
}

// rows begins with what the aim begins with: the plan, or the suspects' checks.
func (s *sheet) rows(b assess.Bench) (progress string, groups []app.UI) {
	plan, beyond := s.planned(b.Report()), s.beyond(b.Beyond())
	if straight(b.State.Setup.Aim) {
		generator := app.Div().Class("methods").Body(app.H2().Text(words.GeneratorTitle), plan)
		return words.FindProgress(len(b.State.Current)), []app.UI{beyond, generator}
	}
	return words.Progress(b.State.Answered()), []app.UI{plan, beyond}
}

func (s *sheet) planned(r assess.Report) app.UI {
	rows := []app.UI{}
	for _, l := range r.Lines {
		rows = append(rows, s.row(l))
	}
	for _, l := range r.Derived {
		rows = append(rows, workedRow(l))
	}
	for _, bal := range []*assess.Balance{r.Balance, r.Fine} {
		if bal != nil {
			rows = append(rows, balanceRow(*bal))
		}
	}
	return app.Div().Class("rows").ID("rows").Body(rows...)
}

func (s *sheet) action(b assess.Bench) app.UI {
	if straight(b.State.Setup.Aim) && !b.State.Finished {
		return part.Link("main-act", findPath(s.Session)).ID("next").Text(words.ToFind)
	}
	if next, more := b.State.Next(); more {
		return part.Link("main-act", checkPath(s.Session, next.ID)).ID("next").Text(words.NextCheck(words.CheckName(next)))
	}
	return part.Link("main-act", resultPath(s.Session)).ID("next").Text(words.ToResult)
}

func (s *sheet) row(l assess.Line) app.UI {
	return part.Link("row", checkPath(s.Session, l.Check.ID)).ID("row-"+string(l.Check.ID)).Body(
		app.Span().Class("row-name").Body(app.Span().Text(words.CheckName(l.Check)), app.Small().Text(words.Earlier(l.Earlier))),
		app.Span().Class("row-reading").Text(words.Reading(l)),
		rowMark(l),
	)
}

// beyond lists what was read for the suspects, if anything; it is corrected there.
func (s *sheet) beyond(lines []assess.Line) app.UI {
	return part.When("", len(lines) > 0, func() app.UI {
		var rows []app.UI
		for _, l := range lines {
			rows = append(rows, s.found(l))
		}
		return app.Div().Class("methods").ID("beyond").Body(app.H2().Text(words.BeyondTitle), app.Div().Class("rows").Body(rows...))
	})
}

func (s *sheet) found(l assess.Line) app.UI {
	mark := rowMark(l)
	if !l.Skipped && !l.Verdict.HasLimit {
		mark = app.Span().Class("row-mark").Attr("role", "img").Aria("label", words.Noted).Body(part.Sign("noted"))
	}
	return part.Link("row", findPath(s.Session)).ID("row-"+string(l.Check.ID)).Body(
		app.Span().Class("row-name").Body(app.Span().Text(words.CheckName(l.Check)), app.Small().Text(words.Earlier(l.Earlier))),
		app.Span().Class("row-reading").Text(words.BeyondReading(l)),
		mark,
	)
}

// workedRow shows what was worked out from other rows.
func workedRow(l assess.Line) app.UI {
	return app.Div().Class("row still").ID("row-"+string(l.Check.ID)).Body(
		app.Span().Class("row-name").Body(app.Span().Text(words.CheckName(l.Check))),
		app.Span().Class("row-reading").Text(words.Reading(l)),
		rowMark(l),
	)
}

// methods offers better ways to measure with the same meter.
func (s *sheet) methods(b assess.Bench) app.UI {
	rows := []app.UI{}
	for _, m := range check.Methods(b.State.Setup.Build) {
		rows = append(rows, part.Link("row", methodPath(s.Session, m)).ID("method-"+string(m)).Body(
			app.Span().Class("row-name").Body(app.Span().Text(words.Method(m)), app.Small().Text(words.MethodHint(m)))))
	}
	return app.Div().Class("methods").Body(app.H2().Text(words.MethodsTitle), app.Div().Class("rows").Body(rows...))
}

func rowMark(l assess.Line) app.UI {
	switch {
	case l.Skipped:
		return app.Span().Class("row-mark").Attr("role", "img").Aria("label", words.NotDone).Body(part.Sign("skip"))
	case !l.Answered:
		return app.Span().Class("row-mark").Attr("role", "img").Aria("label", words.ToDo).Body(part.Sign("todo"))
	}
	if !l.Judged() {
		return app.Span().Class("row-mark").Attr("role", "img").Aria("label", words.Noted).Body(part.Sign("noted"))
	}
	return outcomeMark(l.Verdict.Outcome)
}

func outcomeMark(o spec.Outcome) app.UI {
	return app.Span().Class("row-mark").Attr("role", "img").Aria("label", words.Outcome(o)).Body(part.Mark(o))
}

func balanceRow(b assess.Balance) app.UI {
	mark := app.UI(app.Span().Class("row-mark").Attr("role", "img").Aria("label", words.ToDo).Body(part.Sign("todo")))
	if b.Missing == 0 {
		mark = outcomeMark(b.Verdict.Outcome)
	}
	return app.Div().Class("row still").ID("row-"+string(b.Verdict.Limit.Measurand)).Body(
		app.Span().Class("row-name").Text(words.BalanceName(b)),
		app.Span().Class("row-reading").Text(words.Doubt(b.Verdict)),
		mark,
		app.Small().Class("row-whole").Text(words.Balance(b)),
	)
}

func legend() app.UI {
	entry := func(o spec.Outcome) app.UI {
		return app.Span().Class("legend-entry").Body(part.Mark(o), app.Span().Text(words.OutcomeLong(o)))
	}
	return app.Div().Class("legend").Body(entry(spec.InSpec), entry(spec.OutOfSpec), entry(spec.CannotTell))
}
