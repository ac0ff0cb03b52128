//go:build gallery

package screen

import (
	"strings"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/desk"
	"coilbook/app/device"
	"coilbook/app/words"
)

// Gallery shows every screen in every state worth looking at, each at
// gallery/<name>, from fixed records. Only builds with the tag "gallery" have it;
// the index at its root leads to all of them. It is the shell with the records and
// the place given.
type Gallery struct {
	app.Compo
	// NewDesk makes a desk with those of the fixed records, or with none.
	NewDesk func(post func(func()), empty bool) *desk.Desk

	full, empty *desk.Desk
	models      *models
	name        string
	shell       *Shell
}

// OnMount puts up both desks.
func (g *Gallery) OnMount(ctx app.Context) {
	post := func(f func()) { ctx.Dispatch(func(app.Context) { f() }) }
	g.full, g.empty, g.models = g.NewDesk(post, false), g.NewDesk(post, true), newModels(post)
	g.full.Start()
	g.empty.Start()
}

// between is how long nothing is shown between two scenes, so that no component
// carries what it holds into the next one.
const between = 40 * time.Millisecond

// OnNav hangs the scene that the address names. Another address is a place in the
// app, on the records that are in hand.
func (g *Gallery) OnNav(ctx app.Context) {
	path := strings.Trim(strings.TrimPrefix(ctx.Page().URL().Path, device.Prefix()), "/")
	g.name, g.shell = path, nil
	device.EndFirstPaint()
	ctx.After(between, func(ctx app.Context) { g.hang(ctx, path) })
}

func (g *Gallery) hang(ctx app.Context, path string) {
	if path != g.name {
		return // another one was asked for meanwhile
	}
	sc, ok := sceneNamed(strings.TrimPrefix(path, "gallery/"))
	if !ok {
		sc = scene{Path: path}
	}
	d := g.full
	if sc.Empty {
		d = g.empty
	}
	post := func(f func()) { ctx.Dispatch(func(app.Context) { f() }) }
	kept := sc.Practice
	g.shell = &Shell{
		desk: d, phone: sc.phone(post), models: g.models, place: placeOf(sc.Path),
		room: newRoom(post, func(text string) { kept = text }, func() string { return kept }),
	}
	for c, draft := range sc.Drafts {
		d.Keep(g.shell.place.session, c, draft)
	}
	device.SetTitle(pageTitle(g.shell.place))
	ctx.Defer(func(app.Context) {
		device.ScrollTop()
		device.FocusHeading()
	})
}

// Render draws the scene in the shell's frame, or the index.
func (g *Gallery) Render() app.UI {
	switch {
	case g.shell == nil:
		return app.Div().Class("shell")
	case g.name == "gallery":
		return app.Div().Class("shell").Body(app.Div().Body(), galleryIndex())
	}
	return app.Div().Class("shell").DataSet("scene", g.name).Body(g.shell.banners(), g.shell.screen())
}

// galleryIndex lists all scenes, with what is pressed once one stands and what it
// shows then.
func galleryIndex() app.UI {
	var rows []app.UI
	for _, sc := range scenes() {
		rows = append(rows, app.Li().Body(app.A().Class("row").Href(device.Prefix()+"gallery/"+sc.Name).
			DataSet("name", sc.Name).DataSet("press", sc.Press).DataSet("shows", sc.Shows).Text(sc.Name)))
	}
	return app.Div().Class("page").Body(head(words.AppName, plainSign()),
		app.Main().Class("main").Body(heading("Gallery"), app.Ul().ID("scenes").Body(rows...)))
}
