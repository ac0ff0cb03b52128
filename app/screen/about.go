package screen

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/device"
	"coilbook/app/part"
	"coilbook/app/words"
)

// about says what the app is, how it judges, and how not to get hurt.
type about struct {
	app.Compo

	theme string
}

// OnMount finds out which look is in force.
func (a *about) OnMount(app.Context) { a.theme = device.Theme() }

// Render draws the text.
func (a *about) Render() app.UI {
	body := []app.UI{heading(words.AboutTitle)}
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
	body = append(body, a.looks())
	return app.Div().Class("page").Body(
		head(words.Titles["about"], plainSign()),
		app.Main().Class("main").Body(body...),
		foot("about"),
	)
}

func (a *about) looks() app.UI {
	var buttons []app.UI
	for _, t := range words.Themes {
		class, on := "option", t.ID == a.theme
		if on {
			class += " on"
		}
		buttons = append(buttons, part.Button(class, t.Name, func(app.Context) {
			a.theme = t.ID
			device.SetTheme(t.ID)
		}, t.ID, on).ID("look-"+t.ID).Aria("pressed", part.Aria(on)))
	}
	return app.Section().Class("card").Body(app.H2().Text(words.LookTitle),
		app.Div().Class("options").Attr("role", "group").Aria("label", words.LookTitle).Body(buttons...))
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
