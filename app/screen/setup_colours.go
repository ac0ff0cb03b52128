package screen

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/drawing"
	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/session"
)

// colours unfolds the colours of the leads, which nobody has to give.
func (s *setup) colours() app.UI {
	wires := s.form.Wires()
	var rows []app.UI
	for _, lead := range check.PlugLeads(s.form.Build) {
		rows = append(rows, s.leadColour(lead, wires[lead]))
	}
	return app.Details().Class("fold ask").ID("ask-colours").Body(
		app.Summary().Text(words.ColoursTitle),
		part.Text("quiet", words.ColoursHint),
		app.Div().Class("wires").Body(rows...),
	)
}

func (s *setup) leadColour(lead check.Terminal, w check.Wire) app.UI {
	paint := func(change func(*check.Wire)) {
		now := s.form.Wires()[lead] // not w: a second choice can come before the first is drawn
		change(&now)
		s.form.Leads = session.Painted(s.form.Leads, lead, now)
	}
	choose := func(id, what string, value check.Colour, none string, pick func(check.Colour)) app.UI {
		list := []part.Choice{{Name: none}}
		for _, c := range check.Colours() {
			list = append(list, part.Choice{Value: string(c), Name: words.Colour(c)})
		}
		return &part.Choose{ID: id + "-" + string(lead), Label: words.AskOfLead(lead, what), Value: string(value), List: list,
			OnPick: func(_ app.Context, v string) { pick(check.Colour(v)) }}
	}
	return app.Div().Class("wire").Body(
		app.Div().Class("wire-name").Body(part.Picture("swatch", drawing.Swatch(w)), app.Span().Text(words.PlugLead(lead))),
		choose("colour", words.AskColour, w.Base, words.NoColour, func(c check.Colour) { paint(func(w *check.Wire) { w.Base = c }) }),
		choose("stripe", words.AskStripe, w.Stripe, words.NoStripe, func(c check.Colour) { paint(func(w *check.Wire) { w.Stripe = c }) }),
	)
}

// inColours draws a check with the leads in their colours, and names those below.
func inColours(k check.Check, s session.Setup) app.UI {
	known := s.Wires()
	wires := drawing.Wires{}
	var names []app.UI
	for _, lead := range check.PlugLeads(s.Build) {
		w, ok := known[lead]
		if !ok {
			continue
		}
		wires[lead] = drawing.Wire{Wire: w, Name: words.WireColour(w)}
		if lead == k.Red || lead == k.Black {
			names = append(names, app.Span().Class("legend-entry").Body(
				part.Picture("swatch", drawing.Swatch(w)), app.Span().Text(words.InColour(words.PlugLead(lead), w))))
		}
	}
	return app.Div().Body(
		part.Picture("picture", drawing.ForWires(k, s.Build, words.ShortTerminal, words.Drawn(), wires)),
		part.When("legend wire-legend", len(names) > 0, func() app.UI { return app.Div().Class("legend").Body(names...) }),
	)
}
