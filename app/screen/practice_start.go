package screen

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/device"
	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/practice"
)

// Addresses of the practice screens, below the root.
func benchPath(code string) string  { return "practice/" + code }
func namingPath(code string) string { return "practice/" + code + "/name" }
func truthPath(code string) string  { return "practice/" + code + "/truth" }

// practiceStart offers a hidden machine of each level, or that of a code.
type practiceStart struct {
	app.Compo
	Room *room
	Rev  int

	code    string
	problem string
}

// Render draws the levels.
func (s *practiceStart) Render() app.UI {
	code, more := s.Room.unfinished()
	lost := s.Room.lost()
	var levels []app.UI
	for _, l := range practice.Levels() {
		levels = append(levels, s.level(l))
	}
	return app.Div().Class("page").Body(
		head(words.Title("practice"), plainSign(), ""),
		app.Main().Class("main").Body(
			heading(words.PracticeTitle),
			part.Text("", words.PracticeHint),
			part.When("bare", more, func() app.UI {
				return part.Link("resume", benchPath(code)).ID("go-on").Body(app.Strong().Text(words.GoOnWith(code)), app.Span().Text(words.Unfinished))
			}),
			part.When("bare", lost != nil, func() app.UI { return app.P().Class("problem").Attr("role", "status").Text(lostWords(lost)) }),
			app.H2().Text(words.LevelsTitle),
			app.Div().Class("choices").Body(levels...),
			s.byCode(),
			part.Text("quiet", words.Simulated),
		),
		foot("practice"),
	)
}

func lostWords(err error) string {
	if newer(err) {
		return words.NewerRecord
	}
	return words.LostRecord
}

func (s *practiceStart) level(l practice.Level) app.UI {
	return part.Press(app.Button().Type("button").Class("choice level").ID("level-"+string(rune('1'+int(l)))), func(ctx app.Context) {
		device.PersistStorage()
		part.Go(ctx, benchPath(practice.CodeOf(l, device.Seed())))
	}, int(l)).Body(
		app.Span().Class("level-mark").Aria("hidden", "true").Text(string([]rune("●●●○○○")[2-int(l):5-int(l)])),
		app.Span().Class("choice-words").Body(app.Strong().Text(words.Level(l)), app.Small().Text(words.LevelHint(l))),
	)
}

func (s *practiceStart) byCode() app.UI {
	return app.Div().Class("ask").Body(
		app.Label().Class("question").For("code").Text(words.AskCode),
		app.Div().Class("by-code").Body(
			&part.Field{ID: "code", Value: s.code, Hint: words.CodeHint, Mode: "text", OnText: func(_ app.Context, v string) { s.code, s.problem = v, "" }},
			part.Button("option", words.OpenCode, s.openCode).ID("open-code"),
		),
		app.P().Class("problem").ID("code-problem").Attr("role", "alert").Text(s.problem),
	)
}

func (s *practiceStart) openCode(ctx app.Context) {
	code, err := practice.Spelled(s.code)
	if err != nil {
		s.problem = words.CodeProblem(err)
		return
	}
	part.Go(ctx, benchPath(code))
}
