package screen

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/device"
	"coilbook/app/part"
	"coilbook/app/words"
)

// installHint offers the way to the home screen, once, after a first result is
// safely kept. It goes for good with the screen that it stands on.
type installHint struct {
	app.Compo
	Phone *phone
	Rev   int

	shown bool
}

// OnMount takes the hint when it is due.
func (h *installHint) OnMount(ctx app.Context) { h.take(ctx) }

// OnUpdate takes it when the browser's own offer comes later.
func (h *installHint) OnUpdate(ctx app.Context) { h.take(ctx) }

func (h *installHint) take(ctx app.Context) {
	if !h.shown && h.Phone.hint() {
		ctx.Dispatch(func(app.Context) { h.shown = true })
	}
}

// Render draws the hint, or nothing.
func (h *installHint) Render() app.UI {
	return part.When("bare", h.shown && h.Phone.install != device.Installed, func() app.UI {
		return app.Section().Class("card choosing").ID("install-hint").Aria("label", words.InstallTitle).Body(
			app.H2().Text(words.InstallTitle),
			part.Text("", words.InstallWhy),
			theWay(h.Phone),
			part.Button("option", words.InstallLater, func(app.Context) { h.shown = false }).ID("install-later"),
			part.Text("quiet", words.InstallAgain),
		)
	})
}

// installCard is the same way for whoever looks for it.
func installCard(p *phone) app.UI {
	return app.Section().Class("card choosing").ID("install").Body(
		app.H2().Text(words.InstallTitle), part.Text("quiet", words.InstallHint), theWay(p))
}

// theWay to the home screen differs with the browser.
func theWay(p *phone) app.UI {
	return app.Div().Class("the-way").Body(
		part.When("bare", p.asked, func() app.UI { return app.P().Attr("role", "status").Text(words.InstallTaken) }),
		part.When("bare", !p.asked && p.install == device.AskBrowser, func() app.UI {
			return part.Button("other-act", words.InstallNow, func(app.Context) { p.ask() }).ID("install-now")
		}),
		part.When("bare", !p.asked && p.install == device.ByShareMenu, byShare),
		part.When("bare", !p.asked && p.install == device.NoWay, func() app.UI { return part.Text("", words.InstallNoWay) }),
		part.When("bare", p.install == device.Installed, func() app.UI { return part.Text("", words.InstallDone) }),
	)
}

func byShare() app.UI {
	var items []app.UI
	for _, step := range words.InstallByShare() {
		items = append(items, app.Li().Text(step))
	}
	return app.Div().Class("by-share").ID("by-share").Body(
		part.Icon("share-sign", "share"), app.Ol().Class("steps").Body(items...))
}
