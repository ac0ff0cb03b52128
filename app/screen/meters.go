package screen

import (
	"github.com/google/uuid"
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/desk"
	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/session"
)

// meters lists the meters that readings can be judged with; one of the user's
// own that was removed can be brought back.
type meters struct {
	app.Compo
	Desk *desk.Desk
	Rev  int

	removed uuid.UUID
	name    string
	toCheck uuid.UUID // the record whose self-check goes on once it is in hand
}

// OnMount reads the list anew, in case another tab added to it.
func (m *meters) OnMount(app.Context) { m.Desk.Refresh() }

// OnUpdate goes on to the self-check when its record has been read.
func (m *meters) OnUpdate(ctx app.Context) { m.follow(ctx) }

// Render draws the list.
func (m *meters) Render() app.UI {
	list := m.Desk.Meters()
	own := make([]app.UI, len(list))
	for i, o := range list {
		own[i] = m.own(o)
	}
	var classes []app.UI
	for _, c := range meter.Bundled() {
		classes = append(classes, classCard(c))
	}
	return app.Div().Class("page").Body(
		head(words.Title("meters"), savedSign(m.Desk)),
		app.Main().Class("main").Body(
			heading(words.MetersTitle),
			part.Text("quiet", words.MetersHint),
			app.H2().Text(words.ClassesTitle),
			app.Div().Class("meters").Body(classes...),
			app.H2().Text(words.OwnTitle),
			part.When("", len(list) == 0 && m.Desk.Listed(), func() app.UI { return part.Text("quiet", words.NoMeters) }),
			app.Div().Class("meters").ID("own-meters").Body(own...),
			part.When("", m.removed != uuid.Nil, m.undo),
			part.Link("other-act", "meter/new").ID("describe").Text(words.DescribeMeter),
		),
		foot("meters"),
	)
}

func classCard(c meter.Meter) app.UI {
	return app.Div().Class("card meter").Body(
		app.Strong().Text(words.Meter(c.ID)),
		app.Small().Text(words.MeterHint(c.ID)),
	)
}

func (m *meters) own(o session.Own) app.UI {
	id, name := o.Record, words.OwnMeter(o.Sheet.Name)
	return app.Article().Class("card meter").Body(
		app.Strong().Class("row-name").Text(name),
		app.Small().Text(words.LearnedLine(o.Learned)),
		app.Div().Class("meter-links").Body(
			part.Link("meter-link", meterPath(id)).Text(words.ChangeSheet).Aria("label", words.ChangeSheet+": "+name),
			part.Button("meter-link", words.CheckMeter, func(ctx app.Context) { m.check(ctx, id) }, id).Aria("label", words.CheckMeter+": "+name),
			part.Link("meter-link", resultPath(id)).Text(words.WhatItTold).Aria("label", words.WhatItTold+": "+name),
			part.Button("meter-link away", words.Delete, func(app.Context) { m.remove(id, name) }, id, name).Aria("label", words.Delete+": "+name),
		),
	)
}

func (m *meters) remove(id uuid.UUID, name string) {
	m.removed, m.name = id, name
	m.Desk.Mark(id, session.Removed)
}

func (m *meters) undo() app.UI {
	return app.Div().Class("undo").Attr("role", "status").Body(
		app.Span().Text(words.Deleted(m.name)),
		part.Button("banner-act", words.Undo, func(app.Context) {
			m.Desk.Mark(m.removed, session.Restored)
			m.removed = uuid.Nil
		}, m.removed).ID("undo"),
	)
}

// check goes on with a self-check. Which check is next stands in its record,
// which may have to be read first.
func (m *meters) check(ctx app.Context, id uuid.UUID) {
	m.toCheck = id
	m.Desk.Show(id)
	m.follow(ctx)
}

func (m *meters) follow(ctx app.Context) {
	id := m.toCheck
	if id == uuid.Nil {
		return
	}
	b, ok := m.Desk.Bench(id)
	switch {
	case ok:
		m.toCheck = uuid.Nil
		part.Go(ctx, checkPath(id, nextCheck(b)))
	case m.Desk.Missing(id), m.Desk.Failed(id):
		m.toCheck = uuid.Nil
		part.Go(ctx, sheetPath(id)) // says what went wrong
	}
}

// nextCheck is the first check without an answer, or the first of all.
func nextCheck(b assess.Bench) check.ID {
	if next, more := b.State.Next(); more {
		return next.ID
	}
	return b.State.Plan()[0].ID
}
