package screen

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/part"
	"coilbook/app/words"
)

// about says what the app is, how it judges, and how not to get hurt.
type about struct{ app.Compo }

// Render draws the text.
func (a *about) Render() app.UI {
	body := []app.UI{heading(words.AboutTitle), toPhone()}
	for _, c := range words.About() {
		var items []app.UI
		for _, line := range c.Lines {
			items = append(items, app.Li().Text(line))
		}
		class := "card"
		if c.Warning {
			class = "caution"
		}
		body = append(body, app.Section().Class(class).Body(app.H2().Text(c.Title), app.Ul().Body(items...)))
	}
	return app.Div().Class("page").Body(
		head(words.Title("about"), plainSign()),
		app.Main().Class("main").Body(body...),
		foot("about"),
	)
}

// toPhone leads to what can be chosen for this phone.
func toPhone() app.UI {
	return part.Link("choice quieter", "phone").ID("to-phone").Body(
		part.Icon("choice-icon", "phone"),
		app.Span().Class("choice-words").Body(app.Strong().Text(words.ToPhone), app.Small().Text(words.ToPhoneHint)))
}

// nowhere stands where an address leads to nothing.
type nowhere struct {
	app.Compo
	Words string
	Retry func() // nil where trying again is no use
}

// Render says so and shows the way out.
func (n *nowhere) Render() app.UI {
	return app.Div().Class("page").Body(
		head(words.AppName, plainSign()),
		app.Main().Class("main").Body(heading(words.NowhereTitle), part.Text("", n.Words),
			part.When("", n.Retry != nil, func() app.UI {
				return part.Button("other-act", words.TryAgain, func(app.Context) { n.Retry() })
			}),
			part.Link("main-act", "").ID("to-start").Text(words.ToStart)),
		foot(""),
	)
}
