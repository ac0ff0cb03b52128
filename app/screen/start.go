package screen

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/desk"
	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/session"
)

// start asks what the machine is doing.
type start struct {
	app.Compo
	Desk    *desk.Desk
	Rev     int
	Phone   *phone
	Can     int  // revision of the phone
	Offline bool // everything the app needs is on this device
}

// Render draws the choices, an unfinished session first.
func (s *start) Render() app.UI {
	return startScreen(app.Span().Class("saving").Text(words.Offline(s.Offline)),
		part.When("", s.unfinished(), s.resume), &installHint{Phone: s.Phone, Rev: s.Can})
}

// FirstScreen is the start of who has no records. It stands in the page before the
// program is there (web/start.html), and is the same that the program then draws.
func FirstScreen() app.UI {
	return startScreen(app.Span().Class("saving so-far").Attr("role", "status").Text(words.Loading), app.Div(), app.Div().Class("bare"))
}

func startScreen(sign, resume, hint app.UI) app.UI {
	return app.Div().Class("page").Body(
		head(words.AppName, sign),
		app.Main().Class("main").Body(
			resume,
			hint,
			heading(words.StartQuestion),
			&complaints{Side: words.ChargingAims, Aims: []check.Aim{check.NoCharge, check.FlatStanding, check.Overcharges}},
			&complaints{Side: words.SparkAims, Aims: []check.Aim{check.NoSpark, check.WeakSpark, check.CutsOutHot}},
			&complaints{Side: words.BenchAims, Aims: []check.Aim{check.Bench}},
			part.Link("choice quieter", "practice").ID("to-practice").Body(app.Span().Class("choice-words").Body(
				app.Strong().Text(words.ToPractice), app.Small().Text(words.ToPracticeHint))),
			part.Text("quiet", words.StartScope),
			toPhone(),
		),
		foot("start"),
	)
}

// complaints are what one may come for on one side of the machine. They never
// change, so the framework draws them once.
type complaints struct {
	app.Compo
	Side string
	Aims []check.Aim
}

// Render draws a choice for each.
func (s *complaints) Render() app.UI {
	breathe()
	var rows []app.UI
	for _, a := range s.Aims {
		rows = append(rows, s.choice(a))
	}
	return app.Section().Class("aims").Body(app.H2().Text(s.Side), app.Div().Class("choices").Body(rows...))
}

func (s *complaints) choice(aim check.Aim) app.UI {
	return part.Link("choice", "setup/"+string(aim)).ID("aim-"+string(aim)).Body(
		part.Icon("choice-icon", string(aim)),
		app.Span().Class("choice-words").Body(app.Strong().Text(words.Aim(aim)), app.Small().Text(words.AimHint(aim))),
	)
}

// searched reports answers to checks beyond the plan: they came from the suspects.
func searched(st session.State) bool {
	plan := st.Plan()
	for id := range st.Current {
		if _, planned := check.Find(plan, id); !planned {
			return true
		}
	}
	return false
}

func (s *start) unfinished() bool {
	_, ok := s.Desk.Unfinished()
	return ok
}

func (s *start) resume() app.UI {
	st, _ := s.Desk.Unfinished()
	next, _ := st.Next()
	done, of := st.Answered()
	way, progress := checkPath(st.ID, next.ID), words.Progress(done, of)
	if straight(st.Setup.Aim) || searched(st) {
		way, progress = findPath(st.ID), words.FindProgress(len(st.Current))
	}
	return part.Link("resume", way).ID("resume").Body(
		app.Strong().Text(words.Continue),
		app.Span().Text(words.SessionName(st)+" · "+progress),
	)
}
