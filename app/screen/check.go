package screen

import (
	"errors"
	"time"

	"github.com/google/uuid"
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/desk"
	"coilbook/app/device"
	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
)

// checkScreen leads through one check and takes its reading.
type checkScreen struct {
	app.Compo
	Desk    *desk.Desk
	Rev     int
	Phone   *phone
	Can     int // revision of the phone
	Session uuid.UUID
	Check   check.ID

	problem string
	shown   check.ID  // the check that problem belongs to
	since   time.Time // when it was first shown
	release func()
}

// OnMount listens to a keyboard where there is one. Drawing the first check takes a
// slow phone its time: shown is it now.
func (s *checkScreen) OnMount(ctx app.Context) {
	s.since = time.Now()
	s.release = device.OnKey(func(key string) bool {
		if !padKey(key) {
			return false
		}
		ctx.Dispatch(func(ctx app.Context) { s.pressed(ctx, key) })
		return true
	})
}

// OnDismount stops listening.
func (s *checkScreen) OnDismount() {
	if s.release != nil {
		s.release()
	}
}

// view is what the screen shows, worked out once for a rendering.
type view struct {
	bench assess.Bench
	check check.Check
	place int // of the check in the plan, from 0
	draft desk.Draft
	text  string
	unit  quantity.Unit
	line  assess.Line     // of the reading being typed, or of the one entered
	told  assess.Line     // what that line tells: itself, or what is worked out from it
	live  bool            // a reading is being typed
	again bool            // what is typed is one more reading of the same point
	run   []assess.Point  // the readings entered, in order
	units []quantity.Unit // the units between which the user must choose
}

func (s *checkScreen) view() (v view, ok bool) {
	if v.bench, ok = s.Desk.Bench(s.Session); !ok {
		return v, false
	}
	for i, c := range v.bench.Plan {
		if c.ID == s.Check {
			v.check, v.place = c, i
		}
	}
	if v.check.ID == "" {
		return v, true
	}
	v.line = v.bench.Line(v.check)
	v.run = v.line.Run
	v.draft = s.Desk.Draft(s.Session, s.Check)
	v.again = len(v.run) > 0 && v.draft.Corrects == uuid.Nil && (v.draft.Again || len(v.run) > 1)
	if v.draft == (desk.Draft{}) && v.line.Answer.Reading != nil {
		r := v.line.Answer.Reading // a correction starts where the reading was taken
		v.draft.Unit, v.draft.Range = unitAgain(v.check, r), r.Range
	}
	v.text, v.unit = v.draft.Text, usualUnit(v.check, v.bench.Meter)
	if u, ok := quantity.UnitNamed(v.check.Kind(), v.draft.Unit); ok {
		v.unit = u
	}
	if v.text != "" {
		v.live = true
		earlier := v.line.Earlier
		v.line = v.bench.Judge(v.check, s.reading(v))
		v.line.Earlier = earlier
		v.units = v.bench.UnitsToAsk(v.check, s.reading(v), v.draft.Unit != "")
	}
	v.told = v.line
	if worked, ok := v.bench.WorkedOut(v.line); ok {
		v.told = worked
	}
	return v, true
}

func (s *checkScreen) reading(v view) session.Reading {
	r := session.Reading{Check: v.check.ID, Text: v.text, Unit: v.unit.Name, Range: v.draft.Range, Again: v.again,
		Winding: v.bench.State.Setup.Winding}
	if v.draft.Corrects != uuid.Nil {
		r.Corrects = &v.draft.Corrects
	}
	return r
}

// Render draws picture, steps, cautions and the pad.
func (s *checkScreen) Render() app.UI {
	v, ok := s.view()
	if !ok {
		return waiting()
	}
	if v.check.ID == "" {
		return &nowhere{Words: words.NoSuchCheck}
	}
	if s.shown != s.Check {
		s.shown, s.problem, s.since = s.Check, "", time.Now()
	}
	return app.Div().Class("page check").Body(
		head(words.CheckOf(v.place+1, len(v.bench.Plan)), savedSign(s.Desk), s.back(v)),
		app.Main().Class("main").Body(s.instructions(v)...),
		app.Section().Class("pad").Aria("label", words.PadLabel).OnMouseDown(keepFocus).Body(
			s.display(v), s.pad(v),
		),
	)
}

// keepFocus keeps a pressed key from taking the focus, so that Enter on a
// keyboard still means the pad's Enter.
func keepFocus(_ app.Context, e app.Event) { e.PreventDefault() }

func (s *checkScreen) back(v view) string {
	if v.place == 0 {
		return setupPath(s.Session)
	}
	return checkPath(s.Session, v.bench.Plan[v.place-1].ID)
}

func (s *checkScreen) pressed(ctx app.Context, key string) {
	v, ok := s.view()
	if !ok || v.check.ID == "" {
		return
	}
	s.press(ctx, v, key)
}

// press acts on one key of the pad or keyboard.
func (s *checkScreen) press(ctx app.Context, v view, key string) {
	s.problem = ""
	if key == keySkip && time.Since(s.since) < slip {
		return
	}
	switch key {
	case keyEnter:
		s.enter(ctx, v)
	case keySkip:
		s.Desk.Skip(s.Session, s.Check)
		s.next(ctx)
	case keyBack:
		part.Go(ctx, s.back(v))
	case keyUnit:
		v.draft.Unit = nextUnit(v).Name
		s.keep(v.draft)
	case keyOpen, keyUnsettled:
		v.draft.Text = spoken[key]
		s.keep(v.draft)
	default:
		v.draft.Text = typed(v.text, key)
		s.keep(v.draft)
	}
}

// slip is how soon after a new check a tap is taken for the second half of a
// double tap on the one before.
const slip = 400 * time.Millisecond

func (s *checkScreen) keep(d desk.Draft) { s.Desk.Keep(s.Session, s.Check, d) }

func nextUnit(v view) quantity.Unit {
	units := words.Units().Units(v.check.Kind())
	for i, u := range units {
		if u.Name == v.unit.Name {
			return units[(i+1)%len(units)]
		}
	}
	return units[0]
}

// enter records what was typed; on a check already answered an empty display
// leaves the answer as it is and goes on.
func (s *checkScreen) enter(ctx app.Context, v view) {
	switch {
	case v.text == "" && v.line.Answered:
		s.next(ctx)
	case v.text == "":
		s.problem = words.TypeFirst
	case len(v.units) > 0:
		s.problem = words.WhichUnit
	case v.line.Unread != nil:
		s.problem = words.NotAReading(v.line.Unread)
	default:
		s.record(ctx, v, v.text)
	}
}

// record stays where several readings of one point are taken.
func (s *checkScreen) record(ctx app.Context, v view, text string) {
	r := s.reading(v)
	r.Text = text
	tellVerdict(s.Phone, v.bench, v.bench.Judge(v.check, r))
	s.Desk.Enter(s.Session, r)
	if v.again || v.draft.Corrects != uuid.Nil {
		return
	}
	s.next(ctx)
}

// next goes on to the first check without an answer, after this one where there
// is one, or to the result.
func (s *checkScreen) next(ctx app.Context) {
	b, ok := s.Desk.Bench(s.Session)
	if !ok {
		return
	}
	if c, more := after(b, s.Check); more {
		part.Go(ctx, checkPath(s.Session, c))
		return
	}
	part.Go(ctx, resultPath(s.Session))
}

func after(b assess.Bench, here check.ID) (next check.ID, more bool) {
	passed := false
	for _, c := range b.Plan {
		if _, done := b.State.Current[c.ID]; !done && passed {
			return c.ID, true
		}
		passed = passed || c.ID == here
	}
	c, more := b.State.Next()
	return c.ID, more
}

// asked is the question a text with two meanings raises.
func asked(err error) (choices []quantity.Typed) {
	var two *quantity.AmbiguousError
	if errors.As(err, &two) {
		return two.Choices
	}
	return nil
}

func (s *checkScreen) picture(v view) app.UI {
	return inColours(v.check, v.bench.State.Setup)
}
