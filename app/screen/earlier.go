package screen

import (
	"github.com/google/uuid"
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/desk"
	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/assess"
)

// earlier shows each check of a machine over all sessions on it: a plot for each that
// was read in two of them or more.
func earlier(d *desk.Desk, id uuid.UUID) app.UI {
	b, ok := d.Bench(id)
	if !ok {
		return waiting()
	}
	tracks := assess.Tracks(d.Machine(id))
	var cards []app.UI
	for _, t := range tracks {
		p, table := part.TrendPlot(t)
		cards = append(cards, app.Div().Class("card").Body(
			part.Chart("trend-"+string(t.Check.ID), words.CheckName(t.Check), p.Picture(), part.TrendLegend(p), table)))
	}
	return app.Div().Class("page").Body(
		head(words.EarlierTitle, savedSign(d), sheetPath(id)),
		app.Main().Class("main").Body(
			heading(words.EarlierOf(b.State.Setup.Name)),
			part.When("bare", len(cards) == 0, func() app.UI { return part.Text("", words.EarlierNone) }),
			part.When("bare", len(cards) > 0, func() app.UI { return part.Text("quiet", words.EarlierHint) }),
			app.Div().Class("verdicts").ID("trends").Body(cards...),
			part.Text("quiet", words.DeferToManual),
		),
	)
}

// toEarlier leads to the earlier readings, where there is another session on the same
// machine.
func toEarlier(d *desk.Desk, id uuid.UUID) app.UI {
	return part.When("bare", len(d.Machine(id)) > 1, func() app.UI {
		return part.Link("wide-link", earlierPath(id)).ID("to-earlier").Text(words.ToEarlier)
	})
}
