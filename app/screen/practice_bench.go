package screen

import (
	"slices"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/drawing"
	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
)

// practiceBench is the hidden machine with probes, dial and display.
type practiceBench struct {
	app.Compo
	Room *room
	Rev  int

	panel string // "dial" or "state" while it is unfolded
}

// Render draws the board, the readings, and the meter under the thumb.
func (s *practiceBench) Render() app.UI {
	r := s.Room
	return app.Div().Class("page practice").Body(
		head(words.BenchCode(r.bench.Code()), app.Span().Class("saving").ID("spent").Text(words.StepMinutes(r.minutes())), "practice"),
		app.Main().Class("main").Body(
			heading(words.Complaint(r.bench)),
			s.board(),
			s.wave(),
			app.H2().Text(words.LogTitle),
			part.Text("quiet", words.MinutesSpent(r.minutes(), len(r.taken))),
			app.Div().Class("rows").ID("log").Body(s.log()...),
			s.onward(),
			part.Text("quiet", words.Simulated),
		),
		app.Footer().Class("dock").Body(
			part.When("bare", len(s.fresh()) > 0, s.care),
			part.When("bare", len(s.fresh()) == 0 && s.panel != "", s.unfolded),
			s.display(),
			s.controls(),
		),
	)
}

// onward leads to naming the fault, or back to what it was.
func (s *practiceBench) onward() app.UI {
	r := s.Room
	path, text := namingPath(r.bench.Code()), words.NameIt
	if r.named != "" {
		path, text = truthPath(r.bench.Code()), words.Title("truth")
	}
	return part.Link("other-act", path).ID("name").Text(text)
}

// board is the picture with a button over each point.
func (s *practiceBench) board() app.UI {
	r := s.Room
	b := drawing.Laid(boardOf(r.bench.Build), drawing.Scene{
		Red: r.placed.Red, Black: r.placed.Black, Plug: r.placed.Plug, Turns: r.placed.Engine != check.Stopped, Key: r.placed.Key,
	}, words.ShortTerminal, words.Terminal, words.DrawnBoard())
	var targets []app.UI
	for _, t := range b.Targets {
		targets = append(targets, s.target(t))
	}
	return app.Div().Class("board card").Body(
		part.Picture("board-picture", b.Picture),
		app.Div().Class("board-grid").Attr("role", "group").Aria("label", words.BoardLabel).Body(targets...),
	)
}

func (s *practiceBench) target(t drawing.Target) app.UI {
	red, black := s.Room.placed.Red == t.At, s.Room.placed.Black == t.At
	return part.Press(app.Button().Type("button").ID("point-"+string(t.At)).
		Class("point x"+strconv.Itoa(t.Column)+" y"+strconv.Itoa(t.Row)), func(app.Context) { s.Room.probe(t.At) }, string(t.At)).
		Aria("label", words.PointName(t.At, red, black)).Aria("pressed", part.Aria(red || black))
}

// boardOf is what a board shows of a build.
func boardOf(b machine.Build) drawing.Machine {
	return drawing.Machine{Build: b.Known(), Pickups: b.Pickups, Lighting: b.Lighting, BatteryFed: b.Ignition == machine.BatteryFed}
}

// display is the meter's, with the key that takes a reading.
func (s *practiceBench) display() app.UI {
	r := s.Room
	return app.Div().Class("meter-row").Body(
		app.Div().Class("lcd").ID("display").Attr("role", "status").Body(s.digits(), app.Small().Class(s.noteClass()).Text(s.note())),
		s.take(r),
	)
}

func (s *practiceBench) take(r *room) app.UI {
	label := words.Take
	if r.busy {
		label = words.ReadingNow
	}
	b := part.Button("main-act take", label, func(app.Context) { r.read() }, r.bench.Code()).ID("take")
	if !r.mayRead() {
		b = b.Aria("disabled", "true")
	} else {
		b = b.Aria("disabled", "false")
	}
	return b
}

// digits are what stands on the display; digits that dance are shown in turn.
func (s *practiceBench) digits() app.UI {
	r := s.Room
	auto := r.bench.Instrument.Meter.Auto
	if r.shown == nil || r.busy {
		return app.Div().Class("digits dark")
	}
	d := r.shown.probe.Display
	class := "digits"
	texts := words.ShownDigits(d, auto)
	unit := d.Unit.Name
	switch {
	case d.Unread:
		texts, unit = []string{"–"}, ""
	case !restless(d):
		texts = texts[len(texts)-1:]
	default:
		texts = slices.Compact(texts)
		class += " dance d" + strconv.Itoa(min(len(texts), 4))
	}
	if !auto && slices.Contains(texts, words.OverRangeSign(false)) && len(texts) == 1 {
		class += " over"
	}
	var spans []app.UI
	for _, t := range texts {
		spans = append(spans, app.Span().Text(t))
	}
	return app.Div().Class(class).Body(
		app.Span().Class("lcd-digits").Body(spans...), app.Span().Class("lcd-unit").Text(unit),
		app.Span().Class("unseen").Text(words.Shown(d, auto)),
	)
}

func (s *practiceBench) noteClass() string {
	if s.Room.shown != nil && s.Room.shown.probe.Display.Live {
		return "lcd-note live"
	}
	return "lcd-note"
}

// note is the line under the digits.
func (s *practiceBench) note() string {
	r := s.Room
	switch {
	case r.trouble != nil:
		return r.trouble.Error()
	case r.busy:
		return words.ReadingNow
	case r.shown != nil && r.shown.probe.Display.Live:
		return words.LivePoints
	case r.shown != nil:
		return words.DisplayNote(r.shown.probe.Display)
	case r.placed.Red == check.Nowhere && r.placed.Black == check.Nowhere:
		return words.PlaceProbes
	case !r.ready():
		return words.PlaceOther
	}
	return words.ReadNow
}

// controls are the probes, the dial and the machine's state, each one button.
func (s *practiceBench) controls() app.UI {
	r := s.Room
	return app.Div().Class("controls").Body(
		s.hand(true, words.RedProbe, words.HeldPoint(r.placed.Red)),
		s.hand(false, words.BlackProbe, words.HeldPoint(r.placed.Black)),
		s.fold("dial", words.DialTitle, words.DialTitle, words.DialAt(r.placed.Function, r.placed.Dial)),
		s.fold("state", words.StateTitle, words.PlugIs(r.placed.Plug), words.StateShort(r.placed.State, r.bench.Build.Kick)),
	)
}

func (s *practiceBench) hand(red bool, name, at string) app.UI {
	class, id := "control hand black", "hand-black"
	if red {
		class, id = "control hand red", "hand-red"
	}
	if s.Room.handRed == red {
		class += " on"
	}
	return part.Press(app.Button().Type("button").Class(class).ID(id), func(app.Context) { s.Room.take(red) }, red).
		Aria("pressed", part.Aria(s.Room.handRed == red)).
		Body(app.Strong().Text(name), app.Small().Text(at))
}

func (s *practiceBench) fold(panel, name, title, value string) app.UI {
	class := "control"
	if s.panel == panel {
		class += " on"
	}
	return part.Press(app.Button().Type("button").Class(class).ID("fold-"+panel), func(app.Context) { s.turn(panel) }, panel).
		Aria("expanded", part.Aria(s.panel == panel)).
		Body(app.Span().Class("unseen").Text(name+" "), app.Small().Text(title), app.Strong().Text(value))
}

// turn unfolds a panel, or folds it up again.
func (s *practiceBench) turn(panel string) {
	if s.panel == panel {
		panel = ""
	}
	s.panel = panel
}

func (s *practiceBench) unfolded() app.UI {
	if s.panel == "dial" {
		return s.dialPanel()
	}
	return s.statePanel()
}

func (s *practiceBench) dialPanel() app.UI {
	r := s.Room
	var functions, ranges []option
	for _, f := range []meter.Function{meter.Ohms, meter.VoltsDC, meter.VoltsAC, meter.Diode} {
		functions = append(functions, option{words.DialSign(f), r.placed.Function == f, func() { r.function(f) }})
	}
	m := r.bench.Instrument.Meter
	if !m.Auto {
		for _, g := range m.Ranges[r.placed.Function] {
			ranges = append(ranges, option{g.Label, r.placed.Dial == g.Label, func() { r.dial(r.placed.Function, g.Label) }})
		}
	}
	return app.Div().Class("panel").ID("panel-dial").Body(
		panelRow("function", words.DialTitle, functions),
		part.When("bare", m.Auto, func() app.UI { return part.Text("quiet", words.NoRanges) }),
		part.When("bare", len(ranges) > 0, func() app.UI { return panelRow("range", "", ranges) }),
	)
}

func (s *practiceBench) statePanel() app.UI {
	r := s.Room
	now, kick := r.placed.State, r.bench.Build.Kick
	var plugs, engines, keys, heats []option
	for _, p := range []check.Plug{check.Together, check.Apart, check.RegulatorApart} {
		plugs = append(plugs, option{words.PlugIs(p), now.Plug == p, func() { r.set(func(s *machine.State) { s.Plug = p }) }})
	}
	for _, e := range []check.Engine{check.Stopped, check.Cranking, check.Idling, check.At3000, check.At5000} {
		if e <= check.Cranking || r.bench.Starts(now.Hot) {
			engines = append(engines, option{strings.TrimSuffix(words.EngineDoes(e, kick), " rpm"), now.Engine == e, func() { r.set(func(s *machine.State) { s.Engine = e }) }})
		}
	}
	for _, on := range []bool{false, true} {
		keys = append(keys, option{words.KeyIs(on), now.Key == on, func() { r.set(func(s *machine.State) { s.Key = on }) }})
		heats = append(heats, option{words.HeatIs(on), now.Hot == on, func() { r.set(func(s *machine.State) { s.Hot = on }) }})
	}
	return app.Div().Class("panel").ID("panel-state").Body(
		panelRow("plug", words.AskPlug, plugs), panelRow("engine", words.AskEngine, engines),
		part.When("bare", !r.bench.Starts(now.Hot), func() app.UI { return part.Text("quiet no-run", notRunning(r)) }),
		part.When("bare", now.Plug == check.Apart && machine.Running(now.Engine) > 0, func() app.UI {
			return part.Text("quiet no-run", words.IgnitionStaysPlugged)
		}),
		app.Div().Class("panel-two").Body(panelRow("key", words.AskKey, keys), panelRow("heat", words.AskHeat, heats)),
	)
}

func notRunning(r *room) string {
	if r.bench.Starts(false) {
		return words.RunsOnlyCold
	}
	return words.NoRun
}

func panelRow(id, title string, list []option) app.UI {
	var buttons []app.UI
	for i, o := range list {
		class := "option"
		if o.on {
			class += " on"
		}
		buttons = append(buttons, part.Button(class, o.label, func(app.Context) { o.take() }, id, i, o.on).ID(id+"-"+strconv.Itoa(i)).Aria("pressed", part.Aria(o.on)))
	}
	label := title
	if label == "" {
		label = words.RangeTitle
	}
	return app.Div().Class("panel-row").Attr("role", "group").Aria("label", label).Body(
		part.When("panel-title", title != "", func() app.UI { return app.Span().Text(title) }), app.Div().Class("options").Body(buttons...))
}

// log lists the readings, the newest first.
func (s *practiceBench) log() []app.UI {
	r := s.Room
	var rows []app.UI
	for _, one := range slices.Backward(r.taken) {
		rows = append(rows, readingRow(r, one))
	}
	return rows
}

func readingRow(r *room, one *reading) app.UI {
	text := words.ReadingNow
	if one.done {
		text = words.Shown(one.probe.Display, r.bench.Instrument.Meter.Auto)
	}
	return app.Div().Class("row logged").Body(
		app.Span().Class("row-name").Body(
			app.Strong().Text(text),
			app.Small().Text(words.Probed(one.Probing, one.Dial, r.bench.Build.Kick)),
			app.Small().Class("live").Text(liveWords(one)),
		))
}

func liveWords(one *reading) string {
	if one.done && one.probe.Display.Live {
		return words.LivePoints
	}
	return ""
}

// wave unfolds the waveform between the probes.
func (s *practiceBench) wave() app.UI {
	r := s.Room
	return app.Div().Class("wave").Body(
		part.Press(app.Button().Type("button").Class("wave-turn").ID("wave"), func(app.Context) { r.unfold() }, r.bench.Code()).
			Aria("expanded", part.Aria(r.wave.unfolded)).Text(words.WaveTitle),
		part.When("bare", r.wave.unfolded, s.plot),
	)
}

func (s *practiceBench) plot() app.UI {
	w := s.Room.wave
	switch {
	case w.err != nil:
		return part.Text("problem", words.WaveFailed)
	case w.done:
		said := words.Wave(w.trace)
		return app.Div().Class("card").ID("plot").Body(part.Picture("wave-plot", part.Wave(w.trace.Volts, w.trace.Step, said)), part.Text("quiet", said))
	case w.busy:
		return part.Text("quiet", words.WaveWorking)
	}
	return part.Text("quiet", words.WaveNeeds)
}
