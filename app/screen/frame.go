package screen

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/desk"
	"coilbook/app/device"
	"coilbook/app/part"
	"coilbook/app/words"
)

// head is the bar at the top: a way back, where one is, and whether the last
// entry is safe.
func head(title string, saving app.UI, back ...string) app.UI {
	bar := []app.UI{}
	for _, path := range back {
		bar = append(bar, part.Link("back", path).Aria("label", words.Back).Body(app.Span().Class("back-sign").Aria("hidden", "true").Text("‹")))
	}
	bar = append(bar, app.Span().Class("head-title").Text(title), saving)
	return app.Header().Class("head").Body(bar...)
}

// savedSign says where the last entry is.
func savedSign(d *desk.Desk) app.UI {
	text := map[desk.Saving]string{
		desk.Opening: words.SavingOpening, desk.Saved: words.SavingDone, desk.Writing: words.SavingNow,
		desk.NotSaved: words.SavingFailed, desk.HandsOnly: words.SavingNowhere,
	}[d.Saving()]
	return app.Span().Class("saving").ID("saving").Attr("role", "status").Text(text)
}

func plainSign() app.UI { return app.Span().Class("saving") }

// shown is whether the first screen of all stands in the page. Only the goroutine
// of the screens touches it.
var shown bool

// breathe lets the page answer between two pieces of the first screen of all,
// which would be one long step otherwise.
func breathe() {
	if !shown {
		device.Pause()
	}
}

// toHeading goes to the top of what is drawn next, and tells it to who listens. The top
// comes first, while the page need not be laid out for it; the heading in a turn of its own.
func toHeading(ctx app.Context) {
	device.ScrollTop()
	ctx.Defer(func(app.Context) {
		device.Pause()
		device.FocusHeading()
	})
}

// foot is the bar at the bottom of the main screens.
func foot(here string) app.UI { return &footBar{Here: here} }

// footBar is a component, so that the framework draws it only when Here changes.
type footBar struct {
	app.Compo
	Here string
}

// Render draws the ways to the main screens.
func (f *footBar) Render() app.UI {
	breathe()
	entry := func(name, path string) app.UI {
		class := "foot-link"
		link := part.Link(class, path)
		if name == f.Here {
			link = part.Link(class+" here", path).Aria("current", "page")
		}
		return link.Body(part.Icon("foot-icon", icons[name]), app.Span().Text(words.Title(name)))
	}
	return app.Nav().Class("foot").Aria("label", words.AppName).Body(
		entry("start", ""), entry("sessions", "sessions"), entry("meters", "meters"), entry("about", "about"),
	)
}

var icons = map[string]string{"start": "bench", "sessions": "sessions", "meters": "meter", "about": "about"}

// waiting stands where a session is still being read.
func waiting() app.UI {
	return app.Div().Class("page").Body(head(words.AppName, plainSign()), app.Main().Class("main").Body(part.Text("quiet", words.LookingUp)))
}

// heading is the one first-level heading of a screen; it takes the focus when
// the screen is shown.
func heading(text string) app.UI { return app.H1().TabIndex(-1).Text(text) }
