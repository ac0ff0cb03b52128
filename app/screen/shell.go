// Package screen holds the screens, one file each. They show a view of the
// records on the desk and send it intents; they judge nothing and store nothing.
package screen

import (
	"context"
	"errors"
	"strings"

	"github.com/google/uuid"
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/desk"
	"coilbook/app/device"
	"coilbook/app/part"
	"coilbook/app/store"
	"coilbook/app/words"
	"coilbook/engine/check"
)

// Shell is the one component that every route mounts, so that it lives as long
// as the page: it owns the desk and puts the screen for the path inside itself.
type Shell struct {
	app.Compo
	// NewDesk makes the records desk; post runs a function on the goroutine of
	// the screens and redraws.
	NewDesk func(post func(func())) *desk.Desk

	desk    *desk.Desk
	phone   *phone
	room    *room
	models  *models
	place   place
	update  bool
	offline bool
}

// place is where the address points.
type place struct {
	name    string // start, setup, check, sheet, result, find, sessions, about, phone, practice, bench, naming, truth, nowhere
	session uuid.UUID
	check   check.ID
	aim     check.Aim
	method  check.Method
	code    string // of a practice bench
}

// placeOf reads a path below the root.
func placeOf(path string) place {
	parts := strings.Split(strings.Trim(path, "/"), "/")
	switch {
	case parts[0] == "" || parts[0] == "index.html":
		return place{name: "start"}
	case len(parts) == 1 && (parts[0] == "sessions" || parts[0] == "about" || parts[0] == "meters" || parts[0] == "phone"):
		return place{name: parts[0]}
	case parts[0] == "setup" && len(parts) == 2 && words.Aim(check.Aim(parts[1])) != "":
		return place{name: "setup", aim: check.Aim(parts[1])}
	case parts[0] == "practice" && len(parts) <= 3:
		return practicePlace(parts)
	case parts[0] == "meter" && len(parts) == 2:
		return meterPlace(parts[1])
	case parts[0] == "s" && len(parts) >= 3:
		return sessionPlace(parts)
	}
	return place{name: "nowhere"}
}

// practicePlace is the choice of benches, or one bench: at work, being named, or
// told.
func practicePlace(parts []string) place {
	switch {
	case len(parts) == 1:
		return place{name: "practice"}
	case len(parts) == 2:
		return place{name: "bench", code: parts[1]}
	case parts[2] == "name":
		return place{name: "naming", code: parts[1]}
	case parts[2] == "truth":
		return place{name: "truth", code: parts[1]}
	}
	return place{name: "nowhere"}
}

// meterPlace is a data sheet, a new one or that of a record.
func meterPlace(name string) place {
	id, err := uuid.Parse(name)
	switch {
	case name == "new":
		return place{name: "meter"}
	case err != nil || id == uuid.Nil:
		return place{name: "nowhere"}
	}
	return place{name: "meter", session: id}
}

func sessionPlace(parts []string) place {
	id, err := uuid.Parse(parts[1])
	p := place{name: parts[2], session: id}
	switch {
	case err != nil:
		return place{name: "nowhere"}
	case parts[2] == "check" && len(parts) == 4:
		p.check = check.ID(parts[3])
		return p
	case parts[2] == "method" && len(parts) == 4 && words.Method(check.Method(parts[3])) != "":
		p.method = check.Method(parts[3])
		return p
	case len(parts) == 3 && (parts[2] == "setup" || parts[2] == "sheet" || parts[2] == "result" || parts[2] == "wire" || parts[2] == "find" || parts[2] == "earlier"):
		return p
	}
	return place{name: "nowhere"}
}

// Addresses of the screens, below the root.
func checkPath(id uuid.UUID, c check.ID) string { return "s/" + id.String() + "/check/" + string(c) }
func sheetPath(id uuid.UUID) string             { return "s/" + id.String() + "/sheet" }
func resultPath(id uuid.UUID) string            { return "s/" + id.String() + "/result" }
func setupPath(id uuid.UUID) string             { return "s/" + id.String() + "/setup" }
func wirePath(id uuid.UUID) string              { return "s/" + id.String() + "/wire" }
func findPath(id uuid.UUID) string              { return "s/" + id.String() + "/find" }
func earlierPath(id uuid.UUID) string           { return "s/" + id.String() + "/earlier" }
func meterPath(id uuid.UUID) string             { return "meter/" + id.String() }
func methodPath(id uuid.UUID, m check.Method) string {
	return "s/" + id.String() + "/method/" + string(m)
}

// OnMount puts up the desk.
func (s *Shell) OnMount(ctx app.Context) {
	device.Pause()
	s.place = here(ctx) // so that the first screen drawn is the right one
	s.phone = newPhone(func(f func()) { ctx.Dispatch(func(app.Context) { f() }) })
	s.desk = s.NewDesk(func(f func()) { ctx.Dispatch(func(app.Context) { f() }) })
	s.room = newRoom(func(f func()) { ctx.Dispatch(func(app.Context) { f() }) },
		func(text string) { device.Keep("practice", text) }, func() string { return device.Kept("practice") })
	s.room.entered = func() { ctx.Defer(func(app.Context) { device.FocusHeading() }) }
	s.models = newModels(func(f func()) { ctx.Dispatch(func(app.Context) { f() }) })
	s.phone.during(s.place)
	device.Pause()
	s.desk.Start()
	device.Pause()
	device.GuardLeaving(s.desk.AtRisk)
	device.OfflineReady(func() { ctx.Dispatch(func(app.Context) { s.offline = true }) })
	device.UpdateWaiting(func() { ctx.Dispatch(func(app.Context) { s.update = true }) })
}

// OnNav shows the screen for the address. The framework neither scrolls nor
// moves the focus by itself.
func (s *Shell) OnNav(ctx app.Context) {
	s.place = here(ctx)
	if s.phone != nil {
		s.phone.during(s.place)
	}
	device.SetTitle(pageTitle(s.place))
	if shown || s.place.name != "start" { // the start stands where it was read before the program was there
		device.ScrollTop()
	}
	ctx.Defer(func(app.Context) {
		breathe()
		shown = true
		device.EndFirstPaint()
		device.Pause()
		device.FocusHeading()
	})
}

func here(ctx app.Context) place {
	return placeOf(strings.TrimPrefix(ctx.Page().URL().Path, device.Prefix()))
}

// pageTitle is what the browser calls the page. The start is called as before the program
// was there.
func pageTitle(p place) string {
	if p.name == "start" {
		return words.AppName
	}
	return titleOf(p) + " · " + words.AppName
}

func titleOf(p place) string {
	return words.Title(p.name)
}

// Render draws the frame and the screen in it.
func (s *Shell) Render() app.UI {
	if s.desk == nil {
		return app.Div().Class("shell")
	}
	return app.Div().Class("shell").Body(
		part.When("banners", true, func() app.UI { return s.banners() }),
		s.screen(),
	)
}

func (s *Shell) screen() app.UI {
	d, rev, p := s.desk, s.desk.Revision(), s.place
	if p.session != uuid.Nil {
		d.Show(p.session)
		if d.Missing(p.session) {
			return &nowhere{Words: words.NoSuchSession}
		}
		if d.Failed(p.session) {
			return &nowhere{Words: words.Unread, Retry: d.LookAgain}
		}
	}
	if p.code != "" {
		if err := s.room.enter(p.code); err != nil {
			return &nowhere{Words: words.CodeProblem(err)}
		}
		if !s.room.at(p.code) {
			return waiting()
		}
	}
	switch p.name {
	case "practice":
		return &practiceStart{Room: s.room, Rev: s.room.revision}
	case "bench":
		return &practiceBench{Room: s.room, Rev: s.room.revision}
	case "naming":
		return &practiceNaming{Room: s.room, Rev: s.room.revision}
	case "truth":
		return &practiceTruth{Room: s.room, Rev: s.room.revision, Profiles: d.Profiles()}
	case "start":
		return &start{Desk: d, Rev: rev, Phone: s.phone, Can: s.phone.revision, Offline: s.offline}
	case "setup":
		return &setup{Desk: d, Rev: rev, Session: p.session, Aim: p.aim}
	case "check":
		return &checkScreen{Desk: d, Rev: rev, Phone: s.phone, Can: s.phone.revision, Session: p.session, Check: p.check}
	case "sheet":
		return &sheet{Desk: d, Rev: rev, Session: p.session}
	case "result":
		return &result{Desk: d, Rev: rev, Phone: s.phone, Session: p.session}
	case "find":
		return &find{Desk: d, Rev: rev, Phone: s.phone, Can: s.phone.revision, Models: s.models, Grown: s.models.revision, Session: p.session}
	case "method":
		return &method{Desk: d, Rev: rev, Session: p.session, Method: p.method}
	case "wire":
		return &wire{Desk: d, Rev: rev, Session: p.session}
	case "earlier":
		return earlier(d, p.session)
	case "meters":
		return &meters{Desk: d, Rev: rev}
	case "meter":
		return &meterForm{Desk: d, Rev: rev, Record: p.session}
	case "sessions":
		return &sessions{Desk: d, Rev: rev, Phone: s.phone, Can: s.phone.revision}
	case "phone":
		return &settings{Phone: s.phone, Rev: s.phone.revision}
	case "about":
		return &about{}
	}
	return &nowhere{Words: words.NoSuchPlace}
}

// banners stand above every screen: a waiting update, trouble with the store.
func (s *Shell) banners() app.UI {
	return app.Div().Body(
		// Taking the update reloads the page: only once nothing is in hand alone.
		part.When("", s.update && s.desk.Saving() == desk.Saved, s.updateBanner),
		part.When("", s.desk.Saving() == desk.NotSaved, s.notSavedBanner),
		part.When("", s.desk.Saving() == desk.HandsOnly, func() app.UI {
			return app.Div().Class("banner warn").Attr("role", "status").Text(noStore(s.desk.Trouble()))
		}),
		part.When("", s.phone.dark && s.place.name != "check", func() app.UI { return darkNote("banner", s.phone) }),
		part.When("", s.desk.Unreadable() > 0, func() app.UI {
			return app.Div().Class("banner").Attr("role", "status").Text(words.Unreadable(s.desk.Unreadable()))
		}),
	)
}

func (s *Shell) updateBanner() app.UI {
	return app.Div().Class("banner").ID("update").Attr("role", "status").Body(
		app.Span().Text(words.UpdateReady),
		part.Button("banner-act", words.UpdateNow, func(app.Context) { device.TakeOverUpdate() }),
	)
}

func (s *Shell) notSavedBanner() app.UI {
	return app.Div().Class("banner warn").Attr("role", "alert").Body(
		app.Span().Text(refusal(s.desk.Trouble())),
		part.Button("banner-act", words.TryAgain, func(app.Context) { s.desk.Retry() }),
	)
}

// darkNote says quietly, and once, that the screen does not stay on. On a check it
// stands among the instructions, where the pad loses nothing to it.
func darkNote(class string, p *phone) app.UI {
	return app.Div().Class(class).ID("dark").Attr("role", "status").Body(
		app.Span().Text(words.Asleep),
		part.Button("banner-act", words.AsleepSeen, func(app.Context) {
			p.dark = false
			p.touch()
		}),
	)
}

func noStore(err error) string {
	switch {
	case errors.Is(err, store.ErrNewer):
		return words.StoreNewer
	case errors.Is(err, context.DeadlineExceeded):
		return words.StoreSlow
	}
	return words.NoStore
}

func refusal(err error) string {
	switch {
	case errors.Is(err, store.ErrFull):
		return words.StoreFull
	case errors.Is(err, store.ErrNewer):
		return words.StoreNewer
	}
	return words.StoreRefused
}
