package screen

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/meter"
)

// groups are the data sheet's lines by what the dial is set to.
func (m *meterForm) groups() []app.UI {
	var out []app.UI
	for _, f := range meter.Functions() {
		out = append(out, m.group(f))
	}
	return out
}

func (m *meterForm) group(f meter.Function) app.UI {
	var rows []app.UI
	on := 0
	for i, l := range m.lines {
		if l.function != f {
			continue
		}
		rows = append(rows, m.row(i, l))
		if l.on {
			on++
		}
	}
	return app.Details().Class("card line-group traps").ID("group-"+f.String()).Open(m.open[f]).Body(
		app.Summary().OnClick(func(_ app.Context, e app.Event) { m.turn(f, e) }, app.EventScope(f)).
			Body(app.Span().Text(words.Function(f)), app.Small().Text(words.RangesOn(on))),
		app.Div().Class("lines").Body(rows...),
		m.more(f),
	)
}

// turn opens or closes a group. The browser must not do it by itself: an error
// could not open a group then that the framework takes for open.
func (m *meterForm) turn(f meter.Function, e app.Event) {
	e.PreventDefault()
	m.open[f] = !m.open[f]
}

// row is one range: whether the meter has it, and how true it is.
func (m *meterForm) row(i int, l *sheetLine) app.UI {
	class := "option line-on"
	if l.on {
		class += " on"
	}
	return app.Div().Class("line-row").Body(
		part.Button(class, l.label, func(app.Context) { l.on, m.problem = !l.on, "" }, i, l.function, l.nominal, l.on, m.counts, m.class).
			Aria("pressed", part.Aria(l.on)).Aria("label", l.name()),
		part.When("line-off", !l.on, func() app.UI { return app.Small().Text(words.RangeOff) }),
		part.When("line-fields", l.on, func() app.UI { return m.figures(i, l) }),
	)
}

func (m *meterForm) figures(i int, l *sheetLine) app.UI {
	percent, digits := "percent-"+strconv.Itoa(i), "digits-"+strconv.Itoa(i)
	return app.Div().Class("line-figures").Body(
		named(percent, words.PercentOf(l.name()), "±"),
		&part.Field{ID: percent, Value: l.percent, Mode: "decimal", OnText: func(_ app.Context, v string) { m.typing(&l.percent)(v) }},
		app.Span().Text(words.Percent+" +"),
		named(digits, words.DigitsOf(l.name()), ""),
		&part.Field{ID: digits, Value: l.digits, Mode: "decimal", OnText: func(_ app.Context, v string) { m.typing(&l.digits)(v) }},
		app.Span().Text(words.Digits),
	)
}

// named is a label that shows a sign and is read out in full.
func named(id, name, sign string) app.UI {
	return app.Label().For(id).Body(app.Span().Class("unseen").Text(name), app.Span().Aria("hidden", "true").Text(sign))
}

// more is what a data sheet states once for a function.
func (m *meterForm) more(f meter.Function) app.UI {
	switch f {
	case meter.VoltsDC:
		return app.Div().Class("line-more").Body(
			askText("input-dc", words.AskInputDC, "", "decimal", m.inputDC, m.typing(&m.inputDC)),
		)
	case meter.VoltsAC:
		return app.Div().Class("line-more").Body(
			app.Div().Class("side-by-side").Body(
				askText("ac-low", words.AskBandLow, "", "decimal", m.acLow, m.typing(&m.acLow)),
				askText("ac-high", words.AskBandHigh, "", "decimal", m.acHigh, m.typing(&m.acHigh)),
			),
			askText("input-ac", words.AskInputAC, "", "decimal", m.inputAC, m.typing(&m.inputAC)),
		)
	}
	return app.Div()
}
