package screen

import (
	"strconv"

	"github.com/google/uuid"
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/desk"
	"coilbook/app/device"
	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/session"
)

// meterForm asks for the data sheet of the user's own meter, line by line.
type meterForm struct {
	app.Compo
	Desk   *desk.Desk
	Rev    int
	Record uuid.UUID // Nil for a new meter

	class                           string
	counts                          int
	auto                            bool
	name                            string
	acLow, acHigh, inputDC, inputAC string
	resistor, tolerance             string
	lines                           []*sheetLine
	open                            map[meter.Function]bool
	problem                         string
	filled                          bool
	saved                           bool
	of                              uuid.UUID // the record that it is filled from
}

// fill starts the form once for each record.
func (m *meterForm) fill() {
	if m.filled && m.of == m.Record {
		return
	}
	m.filled = false
	if m.Record == uuid.Nil {
		m.start("", meter.SheetOf(meter.Cheap()), nil)
		return
	}
	if b, ok := m.Desk.Bench(m.Record); ok && b.State.Setup.Own != nil {
		m.start(b.State.Setup.Own.Sheet.Name, b.State.Setup.Own.Sheet, b.State.Setup.Kit)
	}
}

func (m *meterForm) start(name string, s meter.Sheet, kit *session.Kit) {
	m.filled, m.saved, m.of, m.problem = true, false, m.Record, ""
	m.open = map[meter.Function]bool{meter.Ohms: true}
	m.name, m.resistor, m.tolerance = name, "", ""
	if kit != nil && kit.ResistorOhms != 0 {
		m.resistor, m.tolerance = words.Plain(kit.ResistorOhms), words.Plain(kit.ResistorPercent)
	}
	m.put(s)
}

// put fills in all lines anew.
func (m *meterForm) put(s meter.Sheet) {
	m.class, m.counts, m.auto = s.Class, s.Counts, s.Auto
	m.acLow, m.acHigh = words.Plain(float64(s.ACLow)), words.Plain(float64(s.ACHigh))
	m.inputDC, m.inputAC = megaohms(s.InputDC), megaohms(s.InputAC)
	m.lines, m.problem = linesOf(s), ""
}

// Render draws the form.
func (m *meterForm) Render() app.UI {
	if m.fill(); !m.filled {
		if _, ok := m.Desk.Bench(m.Record); ok {
			return &nowhere{Words: words.NoSuchPlace} // a session on a machine
		}
		return waiting()
	}
	return app.Div().Class("page").Body(
		head(words.Title("meter"), plainSign(), "meters"),
		app.Main().Class("main").Body(
			heading(words.SheetTitle),
			part.Text("quiet", words.SheetTitleHint),
			askText("meter-name", words.AskMeterName, words.NameHint, "text", m.name, func(v string) { m.name = v }),
			m.classes(), m.countsChoice(), m.dial(),
			app.H2().Text(words.RangesTitle),
			part.Text("quiet", words.RangesHint),
			app.Div().Class("meters").Body(m.groups()...),
			m.knownResistor(),
		),
		app.Footer().Class("act two sheet-act").Body(
			app.P().Class("problem").Attr("role", "alert").Text(m.problem),
			part.Button("other-act", words.SaveSheet, func(ctx app.Context) { m.save(ctx, false) }).ID("save-sheet"),
			part.Button("main-act", words.SaveAndCheck, func(ctx app.Context) { m.save(ctx, true) }).ID("save-and-check"),
		),
	)
}

func (m *meterForm) classes() app.UI {
	var list []option
	for _, c := range meter.Bundled() {
		list = append(list, option{words.Meter(c.ID), m.class == c.ID, func() { m.put(meter.SheetOf(c)) }})
	}
	return app.Div().Class("ask").Body(askOne("class", words.AskClass, list...), part.Text("quiet", words.ClassHint))
}

func (m *meterForm) countsChoice() app.UI {
	var list []option
	for _, n := range meter.SheetCounts() {
		list = append(list, option{strconv.Itoa(n), m.counts == n, func() { m.recount(n) }})
	}
	return askOne("counts", words.AskCounts, list...)
}

// recount moves the class's lines to other counts; how the range is found has
// nothing to do with them.
func (m *meterForm) recount(counts int) {
	class, _ := meter.ByID(m.class)
	auto := m.auto
	m.put(sheetFor(class, counts))
	m.auto = auto
}

func (m *meterForm) dial() app.UI {
	return askOne("dial", words.AskDial,
		option{words.TurnsDial, !m.auto, func() { m.auto = false }},
		option{words.PicksRange, m.auto, func() { m.auto = true }},
	)
}

func (m *meterForm) knownResistor() app.UI {
	return app.Div().Class("card line-group").Body(
		app.H2().Text(words.MeterResistorTitle),
		part.Text("quiet", words.MeterResistorHint),
		app.Div().Class("side-by-side").Body(
			askText("resistor", words.AskMeterResistor, "", "decimal", m.resistor, m.typing(&m.resistor)),
			askText("tolerance", words.AskMeterTolerance, "", "decimal", m.tolerance, m.typing(&m.tolerance)),
		),
	)
}

// typing takes what is typed into a field; the old problem may be gone then.
func (m *meterForm) typing(into *string) func(string) {
	return func(v string) { *into, m.problem = v, "" }
}

// save records the data sheet and goes on to the self-check or to the list.
func (m *meterForm) save(ctx app.Context, thenCheck bool) {
	if m.saved {
		return // a second tap, while the next screen is on its way
	}
	sheet, problem, at := m.read()
	if m.problem = problem; problem != "" {
		m.open[at] = true
		return
	}
	s := m.setup()
	if m.problem = m.readKit(&s); m.problem != "" {
		return
	}
	s.Name, s.Own.Sheet = sheet.Name, sheet
	id := m.record(s)
	m.saved = true
	if b, ok := m.Desk.Bench(id); ok && thenCheck {
		part.Go(ctx, checkPath(id, nextCheck(b)))
		return
	}
	part.Go(ctx, "meters")
}

// setup is the set-up to change; its data sheet is a copy.
func (m *meterForm) setup() session.Setup {
	if b, ok := m.Desk.Bench(m.Record); ok && b.State.Setup.Own != nil {
		s := b.State.Setup
		own := *s.Own
		s.Own = &own
		return s
	}
	return session.Setup{Aim: check.SelfCheck, Build: check.DefaultBuild(), Meter: session.OwnMeter, Own: &session.Own{}}
}

func (m *meterForm) record(s session.Setup) uuid.UUID {
	if m.Record == uuid.Nil {
		device.PersistStorage()
		return m.Desk.Begin(s)
	}
	m.Desk.Revise(m.Record, s)
	return m.Record
}
