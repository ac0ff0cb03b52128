package screen

import (
	"slices"

	"github.com/google/uuid"
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/desk"
	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
)

// method tells what a better way to measure needs, asks for the figures that it
// works with, and adds its checks to the plan.
type method struct {
	app.Compo
	Desk    *desk.Desk
	Rev     int
	Session uuid.UUID
	Method  check.Method

	figures map[string]string
	filled  bool
	problem string
}

// Render draws the method.
func (s *method) Render() app.UI {
	b, ok := s.Desk.Bench(s.Session)
	if !ok {
		return waiting()
	}
	s.fill(b.State.Setup.Kit)
	var needs []app.UI
	for _, n := range words.MethodNeeds(s.Method) {
		needs = append(needs, app.Li().Text(n))
	}
	checks := planned(b, s.Method)
	return app.Div().Class("page").Body(
		head(words.Title("method"), savedSign(s.Desk), sheetPath(s.Session)),
		app.Main().Class("main").Body(
			heading(words.Method(s.Method)),
			part.Text("", words.MethodHint(s.Method)),
			part.When("", s.Method == check.VoltAmp, func() app.UI { return part.Text("quiet", seenSoFar(b)) }),
			app.H2().Text(words.NeedsTitle),
			app.Ul().Class("needs").Body(needs...),
			part.When("", len(checks) > 0, func() app.UI { return cautions(checks[0]) }),
			app.Div().Class("figures").Body(s.questions()...),
			part.Text("quiet", words.MethodTime(checks)),
			part.Text("quiet", words.DeferToManual),
		),
		app.Footer().Class("act").Body(
			app.P().Class("problem").Attr("role", "alert").Text(s.problem),
			part.Button("main-act", words.MethodGo, func(ctx app.Context) { s.begin(ctx) }, s.Rev).ID("begin"),
		),
	)
}

// seenSoFar is the smallest short that the ohm readings could have shown.
func seenSoFar(b assess.Bench) string {
	if r := b.Report(); r.Balance != nil {
		return words.ShortSeen(*r.Balance)
	}
	return ""
}

// planned are the checks of a method on this machine.
func planned(b assess.Bench, m check.Method) (out []check.Check) {
	for _, c := range check.Plan(b.State.Setup.Build, b.State.Setup.Aim, m) {
		if c.Method == m {
			out = append(out, c)
		}
	}
	return out
}

// Figures that a method works with.
const (
	resistorOhms    = "resistor-ohms"
	resistorPercent = "resistor-percent"
	adapterFarads   = "adapter-microfarads"
	bleederOhms     = "bleeder-megohms"
)

func (s *method) fill(k *session.Kit) {
	if s.filled {
		return
	}
	s.filled, s.figures = true, map[string]string{}
	if k == nil {
		return
	}
	for field, value := range map[string]float64{resistorOhms: k.ResistorOhms, resistorPercent: k.ResistorPercent, adapterFarads: k.AdapterMicrofarads, bleederOhms: k.BleederMegohms} {
		if value > 0 {
			s.figures[field] = words.Plain(value)
		}
	}
}

func (s *method) questions() []app.UI {
	switch s.Method {
	case check.VoltAmp:
		return []app.UI{s.question(resistorOhms, words.AskResistor, words.ResistorHint), s.question(resistorPercent, words.AskTolerance, words.ToleranceHint)}
	case check.PeakHold:
		return []app.UI{s.question(adapterFarads, words.AskAdapter, words.NotSureHint), s.question(bleederOhms, words.AskBleeder, words.NotSureHint)}
	}
	return nil
}

func (s *method) question(field, label, hint string) app.UI {
	return askText(field, label, hint, "decimal", s.figures[field], func(v string) { s.figures[field], s.problem = v, "" })
}

func (s *method) begin(ctx app.Context) {
	b, ok := s.Desk.Bench(s.Session)
	if !ok {
		return
	}
	kit, problem := s.kit(b.State.Setup.Kit)
	if s.problem = problem; problem != "" {
		return
	}
	setup := b.State.Setup
	setup.Kit = kit
	if !slices.Contains(setup.Methods, s.Method) {
		setup.Methods = append(slices.Clone(setup.Methods), s.Method)
	}
	s.Desk.Revise(s.Session, setup)
	part.Go(ctx, s.first(b))
}

// first is the first check of the method that has no answer yet.
func (s *method) first(b assess.Bench) string {
	checks := planned(b, s.Method)
	for _, c := range checks {
		if _, done := b.State.Current[c.ID]; !done {
			return checkPath(s.Session, c.ID)
		}
	}
	if len(checks) == 0 {
		return sheetPath(s.Session)
	}
	return checkPath(s.Session, checks[0].ID)
}

// defaultTolerance is taken where none is stated, in percent: that of common
// wire-wound resistors. Common practice, no source.
const defaultTolerance = 5

func (s *method) kit(old *session.Kit) (k *session.Kit, problem string) {
	k = &session.Kit{}
	if old != nil {
		*k = *old
	}
	switch s.Method {
	case check.VoltAmp:
		ohms, err := quantity.Parse(quantity.Resistance, s.figures[resistorOhms], quantity.Ohms)
		if err != nil || ohms.State != quantity.Number || ohms.Value < session.MinResistor || ohms.Value > 1000 {
			return nil, words.BadResistor
		}
		tolerance, ok := decimal(s.figures[resistorPercent], defaultTolerance)
		if !ok || tolerance < 0 || tolerance > session.MaxTolerance {
			return nil, words.BadTolerance
		}
		k.ResistorOhms, k.ResistorPercent = ohms.Value, tolerance
	case check.PeakHold:
		farads, ok := decimal(s.figures[adapterFarads], 0)
		if !ok || farads != 0 && (farads < session.MinAdapter || farads > session.MaxAdapter) {
			return nil, words.BadAdapter
		}
		megohms, ok := decimal(s.figures[bleederOhms], 0)
		if !ok || megohms != 0 && (megohms < session.MinBleeder || megohms > session.MaxBleeder) {
			return nil, words.BadBleeder
		}
		k.AdapterMicrofarads, k.BleederMegohms = farads, megohms
	}
	if *k == (session.Kit{}) {
		return nil, ""
	}
	return k, ""
}
