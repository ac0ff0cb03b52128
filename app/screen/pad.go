package screen

import (
	"strings"

	"github.com/google/uuid"
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/quantity"
)

// Keys of the pad, by the names a keyboard gives them where it has them.
const (
	keyEnter     = "Enter"
	keyErase     = "Backspace"
	keyBack      = "Escape"
	keyOpen      = "o"
	keyUnsettled = "w"
	keyUnit      = "u"
	keySkip      = "skip"
)

// spoken is the text that a word key stands for.
var spoken = map[string]string{keyOpen: "open line", keyUnsettled: "won't settle"}

// padKey reports whether a keyboard's key means something to the pad.
func padKey(key string) bool {
	return strings.Contains("0123456789.,", key) && len(key) == 1 ||
		key == keyEnter || key == keyErase || key == keyBack || key == keyOpen || key == keyUnsettled || key == keyUnit
}

// No display shows more digits than this.
const maxTyped = 9

// typed is the text after one more key.
func typed(text, key string) string {
	_, isWord := map[string]bool{spoken[keyOpen]: true, spoken[keyUnsettled]: true}[text]
	switch {
	case key == keyErase && (isWord || text == ""):
		return ""
	case key == keyErase:
		return text[:len(text)-1]
	case isWord:
		return key
	case key == "." && strings.Contains(text, "."), len(text) >= maxTyped:
		return text
	}
	return text + key
}

// display shows the reading large, its unit, and what it would mean.
func (s *checkScreen) display(v view) app.UI {
	return app.Div().Class("display").Body(
		app.Div().Class("number").Body(
			app.Span().ID("typed").Class(typedClass(v)).Text(shownText(v)),
			part.When("unit-place", !worded(v), func() app.UI { return s.unitKey(v) }),
			app.Span().Class("verdict-place").Attr("role", "status").Body(s.verdict(v)),
			&readAloud{Phone: s.Phone, Rev: s.Can, Small: true, Of: string(s.Check), Text: spokenCheck(v.bench, v.check)},
		),
		part.When("bar-place", v.judged() && v.told.Verdict.HasLimit, func() app.UI { return part.Picture("limit-bar", part.LimitBar(v.told.Verdict)) }),
		s.sentence(v),
	)
}

// read reports whether there is a reading to show.
func (v view) read() bool { return len(v.units) == 0 && v.line.Read() }

// judged reports whether there is a verdict to show, of the reading itself or
// of what is worked out from it.
func (v view) judged() bool { return v.read() && v.told.Judged() }

// worded reports whether the reading is a word, which has no unit.
func worded(v view) bool { return v.read() && v.line.Typed.State != quantity.Number }

func typedClass(v view) string {
	if worded(v) {
		return "typed word"
	}
	return "typed"
}

func shownText(v view) string {
	switch {
	case v.text != "":
		return words.AsTyped(v.text)
	case v.draft.Again, v.draft.Corrects != uuid.Nil:
		return "–"
	case v.line.Read() && v.line.Repeats.Count > 1:
		return strings.TrimSuffix(words.Mean(v.line), " "+words.Units().Show(v.line.Typed).Unit.Name)
	case v.line.Read():
		shown := words.Units().Show(v.line.Typed)
		return strings.TrimSuffix(words.Typed(v.line.Typed), " "+shown.Unit.Name)
	}
	return "–"
}

// number is a reading without its unit, as it is kept.
func number(t quantity.Typed) string { return strings.TrimSuffix(t.String(), " "+t.Unit.Name) }

func (s *checkScreen) unitKey(v view) app.UI {
	unit := v.unit
	if v.text == "" && v.read() && v.line.Typed.State == quantity.Number {
		unit = words.Units().Show(v.line.Typed).Unit
	}
	if len(quantity.Units(v.check.Kind())) < 2 {
		return app.Span().Class("unit").Text(unit.Name)
	}
	return app.Button().Type("button").Class("unit turn").ID("unit").Aria("label", words.ChangeUnit(unit.Name)).Text(unit.Name).
		OnClick(func(ctx app.Context, _ app.Event) { s.pressed(ctx, keyUnit) }, app.EventScope(unit.Name))
}

func (s *checkScreen) verdict(v view) app.UI {
	switch {
	case v.line.Skipped && v.text == "":
		return app.Span().Class("chip").Body(part.Sign("skip"), app.Span().Text(words.NotDone))
	case v.read() && !v.judged():
		return app.Span().Class("chip").ID("verdict").Body(part.Sign("noted"), app.Span().Text(words.Noted))
	case !v.judged():
		return app.Span().Class("chip none")
	}
	o := v.told.Verdict.Outcome
	return app.Span().Class("chip "+part.Tone(o)).ID("verdict").Body(part.Mark(o), app.Span().Text(words.Outcome(o)))
}

// sentence says in one line why, or what is wrong with the text.
func (s *checkScreen) sentence(v view) app.UI {
	if choices := asked(v.line.Unread); v.text != "" && len(choices) == 2 {
		return s.question(v, choices)
	}
	if len(v.units) > 0 {
		return s.unitQuestion(v)
	}
	text, class := "", "because"
	switch {
	case s.problem != "":
		text, class = s.problem, "because problem"
	case v.text == "" && runHint(v) != "":
		text = runHint(v)
	case v.read() && v.line.Repeats.Retake >= 0:
		text, class = words.OddOneOut(v.line), "because problem"
	case v.judged():
		text = words.Brief(v.told.Check, v.told.Verdict)
		if !v.live {
			text = words.Entered(v.line.Earlier) + text
		}
	case v.read() && assess.TooSmall(v.line):
		text, class = words.TooSmallDrop, "because problem"
	case v.read():
		text = words.Feeds(v.check)
	case v.line.Skipped:
		text = words.SkippedHint
	default:
		text = words.PadHint
	}
	return app.P().ID("because").Class(class).Attr("role", "status").Text(text)
}

// unitQuestion asks which unit the display shows, where the digits alone could
// mean a good part or a bad one.
func (s *checkScreen) unitQuestion(v view) app.UI {
	buttons := []app.UI{app.Span().Text(words.WhichUnit)}
	for _, u := range v.units {
		buttons = append(buttons, part.Button("option", u.Name, func(app.Context) {
			s.problem = ""
			if now, ok := s.view(); ok {
				now.draft.Unit = u.Name
				s.keep(now.draft)
			}
		}, u.Name, v.text, string(s.Check), s.Session.String()))
	}
	return app.Div().ID("because").Class("because which").Attr("role", "alert").Body(buttons...)
}

// question asks which of two meanings was meant; the answer is typed for them.
func (s *checkScreen) question(v view, choices []quantity.Typed) app.UI {
	buttons := []app.UI{app.Span().Text(words.WhichOne)}
	for _, c := range choices {
		text := number(c)
		buttons = append(buttons, part.Button("option", words.Typed(c), func(ctx app.Context) { s.settle(ctx, text) }, text, v.text, string(s.Check), s.Session.String()))
	}
	return app.Div().ID("because").Class("because which").Attr("role", "alert").Body(buttons...)
}

// settle records what was meant by a text with two meanings.
func (s *checkScreen) settle(ctx app.Context, text string) {
	if v, ok := s.view(); ok && v.check.ID != "" {
		s.record(ctx, v, text)
	}
}

// pad is the keypad: digits under the thumb, words beside them.
func (s *checkScreen) pad(v view) app.UI {
	key := func(class, name, label string) app.UI {
		return app.Button().Type("button").Class("key "+class).ID("key-"+name).Text(label).
			OnClick(func(ctx app.Context, _ app.Event) { s.pressed(ctx, name) }, app.EventScope(name))
	}
	digit := func(d string) app.UI { return key("digit", d, d) }
	return app.Div().Class("keys").Body(
		digit("7"), digit("8"), digit("9"), key("word", keyOpen, words.KeyOpen),
		digit("4"), digit("5"), digit("6"), key("word", keyUnsettled, words.KeyUnsettled),
		digit("1"), digit("2"), digit("3"), key("word", keySkip, words.KeySkip),
		key("digit", ".", words.DecimalMark()), digit("0"),
		app.Button().Type("button").Class("key digit").ID("key-erase").Aria("label", words.Erase).Text("⌫").
			OnClick(func(ctx app.Context, _ app.Event) { s.pressed(ctx, keyErase) }),
		app.Button().Type("button").Class("key enter").ID("enter").Text(words.Enter(v.text == "" && v.line.Answered)).
			OnClick(func(ctx app.Context, _ app.Event) { s.pressed(ctx, keyEnter) }),
	)
}
