package screen

import (
	"math"
	"slices"
	"strconv"

	"github.com/google/uuid"
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/desk"
	"coilbook/app/device"
	"coilbook/app/drawing"
	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
	"coilbook/engine/spec"
	"coilbook/specs"
)

// setup asks what is tested and with what; every answer has a default.
type setup struct {
	app.Compo
	Desk    *desk.Desk
	Rev     int
	Session uuid.UUID // Nil for a new session
	Aim     check.Aim

	form    session.Setup
	air     string
	airWas  string // as it stood when the form was filled, for
	given   *float64
	problem string
	filled  bool
}

func (s *setup) fill() {
	if s.filled && s.Session == uuid.Nil {
		s.form.Aim = s.Aim
	}
	if s.filled {
		return
	}
	s.form = session.DefaultSetup()
	if s.Session == uuid.Nil {
		s.form.Aim = s.Aim
		s.form.Unsure = []string{"statorPoles", "chargeLeads", "exciter", "pickup", "groundLead", "meter"}
		s.filled = true
		return
	}
	if b, ok := s.Desk.Bench(s.Session); ok {
		s.form, s.filled = b.State.Setup, true
		s.form.Unsure = slices.Clone(s.form.Unsure)
		if s.form.Ambient != nil {
			s.air = words.Air(*s.form.Ambient)
			s.airWas, s.given = s.air, s.form.Ambient
		}
	}
}

// Render draws the form.
func (s *setup) Render() app.UI {
	if s.fill(); !s.filled {
		return waiting()
	}
	return app.Div().Class("page").Body(
		head(words.Aim(s.form.Aim), plainSign(), s.back()),
		app.Main().Class("main").Body(
			app.Div().Class("with-picture").Body(
				app.Div().Class("beside").Body(heading(words.SetupTitle), part.Text("quiet", words.SetupHint)),
				part.Picture("stator", drawing.Stator(s.form.Build, words.StatorPicture(s.form.Build))),
			),
			s.leads(),
			s.poles(),
			s.yesNo("exciter", words.AskExciter, &s.form.Build.Exciter),
			s.yesNo("pickup", words.AskPickup, &s.form.Build.Pickup),
			s.yesNo("groundLead", words.AskGround, &s.form.Build.GroundLead),
			&part.Later{Of: func() []app.UI {
				return []app.UI{s.colours(), s.meters(), s.profiles(), s.ambient(), s.warmth(), s.name()}
			}},
		),
		app.Footer().Class("act").Body(
			app.P().Class("problem").Attr("role", "alert").Text(s.problem),
			part.Button("main-act", s.goWord(), s.begin).ID("begin"),
		),
	)
}

func (s *setup) back() string {
	if s.Session == uuid.Nil {
		return ""
	}
	return sheetPath(s.Session)
}

func (s *setup) goWord() string {
	if s.Session == uuid.Nil {
		return words.SetupBegin
	}
	return words.SetupKeep
}

func (s *setup) begin(ctx app.Context) {
	if s.problem = s.readAir(); s.problem != "" {
		return
	}
	if s.Session == uuid.Nil {
		device.PersistStorage()
		id := s.Desk.Begin(s.form)
		device.RenamePlace(part.Path(setupPath(id))) // Back is to change this session, not to begin another
		way := checkPath(id, check.Plan(s.form.Build, s.form.Aim)[0].ID)
		if straight(s.form.Aim) {
			way = findPath(id)
		}
		part.Go(ctx, way)
		return
	}
	s.Desk.Revise(s.Session, s.form)
	part.Go(ctx, sheetPath(s.Session))
}

// straight reports an aim whose cause seldom shows in the generator's own plan: it
// begins with the suspects.
func straight(a check.Aim) bool {
	switch a {
	case check.Overcharges, check.FlatStanding, check.WeakSpark, check.CutsOutHot:
		return true
	}
	return false
}

func (s *setup) readAir() string {
	if s.air == s.airWas {
		s.form.Ambient = s.given // what was read in another unit stays to the last digit
		return ""
	}
	if s.form.Ambient = nil; s.air == "" {
		return ""
	}
	unit, _ := words.Units().Unit(quantity.Temperature)
	t, err := quantity.Parse(quantity.Temperature, s.air, unit)
	celsius := math.Round(t.Value*1e9) / 1e9 // 140 °F are 60 °C and not a hair more
	if err != nil || t.State != quantity.Number || celsius < session.MinAmbient || celsius > session.MaxAmbient {
		return words.BadAirIn()
	}
	s.form.Ambient = &celsius
	return ""
}

func (s *setup) unsure(field string) bool { return slices.Contains(s.form.Unsure, field) }

// answer takes an answer to a field; unsure keeps the default and says so.
func (s *setup) answer(field string, unsure bool, set func()) func() {
	return func() {
		s.form.Unsure = slices.DeleteFunc(slices.Clone(s.form.Unsure), func(f string) bool { return f == field })
		if unsure {
			s.form.Unsure = append(s.form.Unsure, field)
		}
		set()
	}
}

func (s *setup) leads() app.UI {
	const field = "chargeLeads"
	list := []option{}
	for n := check.MinChargeLeads; n <= check.MaxChargeLeads; n++ {
		list = append(list, option{strconv.Itoa(n), !s.unsure(field) && s.form.Build.ChargeLeads == n,
			s.answer(field, false, func() { s.form.Build.ChargeLeads = n })})
	}
	list = append(list, option{words.NotSure, s.unsure(field),
		s.answer(field, true, func() { s.form.Build.ChargeLeads = check.DefaultBuild().ChargeLeads })})
	return askOne(field, words.AskLeads, list...)
}

func (s *setup) poles() app.UI {
	const field = "statorPoles"
	turn := func(by int) func() {
		return s.answer(field, false, func() {
			s.form.Build.StatorPoles = min(max(s.form.Build.StatorPoles+by, check.MinPoles), check.MaxPoles)
		})
	}
	count := strconv.Itoa(s.form.Build.StatorPoles)
	notSure := "option"
	if s.unsure(field) {
		notSure += " on"
	}
	return app.Div().Class("ask").ID("ask-"+field).Attr("role", "group").Aria("label", words.AskPoles).Body(
		app.P().Class("question").Text(words.AskPoles),
		app.Div().Class("options").Body(
			part.Button("option", "−", func(app.Context) { turn(-1)() }, "fewer", count).Aria("label", words.FewerPoles),
			app.Output().Class("count").Text(count),
			part.Button("option", "+", func(app.Context) { turn(1)() }, "more", count).Aria("label", words.MorePoles),
			part.Button(notSure, words.NotSure, func(app.Context) {
				s.answer(field, true, func() { s.form.Build.StatorPoles = check.DefaultBuild().StatorPoles })()
			}, s.unsure(field)).Aria("pressed", part.Aria(s.unsure(field))),
		))
}

func (s *setup) yesNo(field, question string, value *bool) app.UI {
	standard := map[string]bool{"exciter": check.DefaultBuild().Exciter, "pickup": check.DefaultBuild().Pickup, "groundLead": check.DefaultBuild().GroundLead}[field]
	set := func(v bool) func() { return func() { *value = v } }
	return askOne(field, question,
		option{words.Yes, !s.unsure(field) && *value, s.answer(field, false, set(true))},
		option{words.No, !s.unsure(field) && !*value, s.answer(field, false, set(false))},
		option{words.NotSure, s.unsure(field), s.answer(field, true, set(standard))},
	)
}

func (s *setup) meters() app.UI {
	const field = "meter"
	list := []option{}
	for _, m := range meter.Bundled() {
		list = append(list, option{words.Meter(m.ID), !s.unsure(field) && s.form.Meter == m.ID,
			s.answer(field, false, func() { s.form.Meter, s.form.Own = m.ID, nil })})
	}
	for _, own := range s.Desk.Meters() {
		on := s.form.Own != nil && s.form.Own.Record == own.Record
		list = append(list, option{words.OwnMeter(own.Sheet.Name), on,
			s.answer(field, false, func() { s.form.Meter, s.form.Own = session.OwnMeter, &own })})
	}
	list = append(list, option{words.NotSure, s.unsure(field), s.answer(field, true, func() { s.form.Meter, s.form.Own = meter.Cheap().ID, nil })})
	return app.Div().Body(
		askOne(field, words.AskMeter, list...),
		part.Link("wide-link", "meters").Text(words.DescribeMeter),
	)
}

func (s *setup) warmth() app.UI {
	list := []option{}
	for _, w := range spec.Warmths() {
		list = append(list, option{words.Warmth(string(w)), s.form.Winding == w, func() { s.form.Winding = w }})
	}
	return askOne("winding", words.AskWarmth, list...)
}

func (s *setup) profiles() app.UI {
	list := []option{}
	for _, p := range s.Desk.Profiles() {
		on := s.form.Profile == p.ID || (s.form.Profile == "" && p.ID == specs.DefaultID)
		list = append(list, option{words.ProfileName(p), on, func() { s.form.Profile = p.ID }})
	}
	return askOne("profile", words.AskProfile, list...)
}

func (s *setup) ambient() app.UI {
	return app.Div().Class("ask").Body(
		app.Label().Class("question").For("air").Text(words.AskAirIn()),
		&part.Field{ID: "air", Value: s.air, Hint: words.AirHint, Mode: "decimal",
			OnText: func(_ app.Context, v string) { s.air, s.problem = v, "" }},
	)
}

func (s *setup) name() app.UI {
	return app.Div().Class("ask").Body(
		app.Label().Class("question").For("name").Text(words.AskName),
		&part.Field{ID: "name", Value: s.form.Name, Hint: words.NameHint, Mode: "text",
			OnText: func(_ app.Context, v string) { s.form.Name = v }},
	)
}
