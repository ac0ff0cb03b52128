package screen

import (
	"time"

	"github.com/google/uuid"
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/desk"
	"coilbook/app/device"
	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
)

// find goes from the complaint to the fault: who is suspected, which check comes
// next, what was read so far. Its answers are entries of the session like any.
type find struct {
	app.Compo
	Desk    *desk.Desk
	Rev     int
	Phone   *phone
	Can     int // revision of the phone
	Models  *models
	Grown   int // revision of the models
	Session uuid.UUID

	chosen  check.ID // instead of the suggested check
	others  bool     // the list of other checks is unfolded
	both    bool     // what is entered counts together with what was read before
	problem string
	of      uuid.UUID // the session that the above belongs to
	shown   check.ID
	since   time.Time // when the check was first shown
}

// OnDismount ends what nobody waits for.
func (s *find) OnDismount() { s.Models.hush() }

// look is what the screen shows, worked out once for a rendering.
type look struct {
	bench assess.Bench
	talk  *talk
	check check.Check // to be done; none once the finding stands
	more  bool
	old   said // the answer that is taken again
	again bool
	odd   bool // the reading is asked for once more
	last  bool // the finding stands, and this is read before anything is bought
	draft desk.Draft
	unit  quantity.Unit
}

// Render draws the suspects and what is next, or how far the machines are drawn.
func (s *find) Render() app.UI {
	b, ok := s.Desk.Bench(s.Session)
	if !ok {
		return waiting()
	}
	symptom, ok := fault.Of(b.State.Setup.Aim)
	if !ok {
		return &nowhere{Words: words.FindNotHere}
	}
	g := s.Models.of(symptom, b)
	body := []app.UI{part.Text("on-paper", words.Printed(words.SessionName(b.State), b.State.Changed)), heading(words.FindHeading(b.State.Setup.Aim))}
	more, looks := false, false // a check is to be done, with the eyes alone
	switch {
	case g.err != nil:
		body = append(body, app.P().Class("problem").Attr("role", "alert").Text(words.FindNoFaults))
	case !g.done:
		body = append(body, growing(g))
	default:
		t := s.Models.talk(g, b)
		if t == nil {
			body = append(body, growing(g))
			break
		}
		v := s.look(b, t)
		more, looks = v.more, v.check.Instrument == check.Eyes
		body = append(body, s.found(v)...)
	}
	return app.Div().Class("page find").Body(
		head(words.Title("find"), savedSign(s.Desk), resultPath(s.Session)),
		app.Main().Class("main").Body(body...),
		part.When("bare act", more, func() app.UI { return toAnswer(looks) }),
	)
}

// toAnswer brings the answer to the check under the thumb: the way there is long.
func toAnswer(looks bool) app.UI {
	label, field := words.ToReading, "find-reading"
	if looks {
		label, field = words.ToAnswer, "say-yes"
	}
	return part.Button("main-act", label, func(app.Context) { device.ShowPart(field) }, field).ID("to-answer")
}

func growing(g *grown) app.UI {
	return app.Div().Class("card progress").ID("growing").Body(
		app.Span().Attr("role", "status").Text(words.Growing(g.ready, g.of)),
		app.Progress().Max(g.of).Value(g.ready).Aria("label", words.Title("find")))
}

func (s *find) look(b assess.Bench, t *talk) look {
	if s.of != s.Session {
		s.of, s.chosen, s.others, s.both, s.problem = s.Session, "", false, false, ""
	}
	v := look{bench: b, talk: t}
	if v.check, v.more = check.Find(v.talk.checks, s.chosen); !v.more {
		s.chosen = ""
		var next diagnose.Choice
		next, v.more = v.talk.Ask()
		v.check, v.odd, v.last = next.Check, next.Again, next.Confirms
	}
	if s.shown != v.check.ID {
		s.shown, s.since = v.check.ID, time.Now()
	}
	if !v.more {
		return v
	}
	v.old, v.again = v.talk.answer(v.check.ID)
	v.again = v.again && v.old.entry.Reading != nil
	v.draft = s.Desk.Draft(s.Session, v.check.ID)
	v.unit = usualUnit(v.check, b.Meter)
	if u, ok := quantity.UnitNamed(v.check.Kind(), v.draft.Unit); ok {
		v.unit = u
	}
	return v
}

// now is the look of this moment, for a handler.
func (s *find) now() (v look, ok bool) {
	b, ok := s.Desk.Bench(s.Session)
	if !ok {
		return v, false
	}
	symptom, ok := fault.Of(b.State.Setup.Aim)
	if !ok {
		return v, false
	}
	g := s.Models.of(symptom, b)
	if !g.done {
		return v, false
	}
	return s.look(b, s.Models.work(g, b)), true
}

// found is the screen below its heading.
func (s *find) found(v look) []app.UI {
	return []app.UI{
		s.suspects(v),
		part.When("bare", !v.more, func() app.UI { return s.finding(v) }),
		part.When("bare", v.more, func() app.UI { return s.next(v) }),
		part.When("bare", v.last, func() app.UI { return s.finding(v) }),
		s.elsewhere(v),
		part.When("bare", len(v.talk.said) > 0, func() app.UI { return s.readings(v) }),
		part.Text("quiet", words.DeferToManual),
	}
}

// choose puts a check in the place of the suggested one, with its reading in the
// input where it has one.
func (s *find) choose(ctx app.Context, id check.ID) {
	v, ok := s.now()
	if !ok {
		return
	}
	v.talk.means(id) // before it is drawn
	device.Pause()
	s.chosen, s.others, s.both, s.problem = id, false, false, ""
	if old, done := v.talk.answer(id); done && old.entry.Reading != nil && old.check.Instrument != check.Eyes {
		s.Desk.Keep(s.Session, id, desk.Draft{Text: old.entry.Reading.Text, Unit: old.entry.Reading.Unit})
	}
	s.top(ctx, "next-check")
}

// leave goes back to the suggested check; what was put in the input goes.
func (s *find) leave(ctx app.Context) {
	s.Desk.Keep(s.Session, s.chosen, desk.Draft{})
	s.chosen, s.problem = "", ""
	s.top(ctx, "")
}

// submit takes Enter on a keyboard and the button alike.
func (s *find) submit(ctx app.Context, e app.Event) {
	e.PreventDefault()
	if v, ok := s.now(); ok && v.more {
		s.enter(ctx, v, v.draft.Text)
	}
}

// say enters an answer that one tap gives.
func (s *find) say(ctx app.Context, text string) {
	if v, ok := s.now(); ok && v.more && time.Since(s.since) >= slip {
		s.enter(ctx, v, text)
	}
}

// skip records that the check cannot be done.
func (s *find) skip(ctx app.Context) {
	v, ok := s.now()
	if !ok || !v.more || time.Since(s.since) < slip {
		return
	}
	if v.odd { // what was read stays
		s.Desk.Leave(s.Session, v.check.ID)
		s.answered(ctx)
		return
	}
	s.Desk.Skip(s.Session, v.check.ID)
	s.answered(ctx)
}

// enter records an answer, unless it cannot be read: then it stays in its place.
func (s *find) enter(ctx app.Context, v look, text string) {
	if text == "" {
		s.problem = words.TypeFirst
		return
	}
	r := readingOf(v, text)
	r.Again = (s.both || v.odd) && v.again && v.check.Instrument != check.Eyes
	trial := diagnose.Begin(v.talk.model, nil)
	if _, err := hear(trial, v.check, r, v.bench.Meter, false); err != nil {
		s.problem = words.FindProblem(err)
		return
	}
	if v.check.Instrument != check.Eyes {
		tellVerdict(s.Phone, v.bench, v.bench.Judge(v.check, r))
	}
	s.Desk.Enter(s.Session, r)
	s.answered(ctx)
}

// readingOf is the entry for an answer. A unit in the text comes first.
func readingOf(v look, text string) session.Reading {
	r := session.Reading{Check: v.check.ID, Text: text, Winding: v.bench.State.Setup.Winding}
	if v.check.Instrument == check.Eyes {
		return r
	}
	r.Unit = v.unit.Name
	return r
}

func (s *find) answered(ctx app.Context) {
	s.chosen, s.others, s.both, s.problem = "", false, false, ""
	s.now() // before it is drawn
	s.top(ctx, "")
}

// top shows the suspects again, or a part of the screen.
func (s *find) top(ctx app.Context, id string) {
	if id == "" {
		toHeading(ctx)
		return
	}
	ctx.Defer(func(app.Context) {
		device.Pause()
		device.ShowPart(id)
	})
}

// toFind leads from other screens of a session to the suspects, where it came with
// a complaint.
func toFind(b assess.Bench) app.UI {
	_, ok := fault.Of(b.State.Setup.Aim)
	return part.When("bare", ok, func() app.UI {
		return part.Link("wide-link", findPath(b.State.ID)).ID("to-find").Text(words.ToFind)
	})
}
