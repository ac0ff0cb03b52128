package screen

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/desk"
	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/check"
)

// start asks what the machine is doing.
type start struct {
	app.Compo
	Desk    *desk.Desk
	Rev     int
	Offline bool // everything the app needs is on this device
}

// Render draws the choices, an unfinished session first.
func (s *start) Render() app.UI {
	return app.Div().Class("page").Body(
		head(words.AppName, app.Span().Class("saving").Text(words.Offline(s.Offline))),
		app.Main().Class("main").Body(
			part.When("", s.unfinished(), s.resume),
			heading(words.StartQuestion),
			app.Div().Class("choices").Body(s.choice(check.NoCharge), s.choice(check.NoSpark), s.choice(check.Bench)),
			part.Link("choice quieter", "practice").ID("to-practice").Body(app.Span().Class("choice-words").Body(
				app.Strong().Text(words.ToPractice), app.Small().Text(words.ToPracticeHint))),
			part.Text("quiet", words.StartScope),
		),
		foot("start"),
	)
}

func (s *start) choice(aim check.Aim) app.UI {
	return part.Link("choice", "setup/"+string(aim)).ID("aim-"+string(aim)).Body(
		part.Icon("choice-icon", string(aim)),
		app.Span().Class("choice-words").Body(app.Strong().Text(words.Aim(aim)), app.Small().Text(words.AimHint(aim))),
	)
}

func (s *start) unfinished() bool {
	_, ok := s.Desk.Unfinished()
	return ok
}

func (s *start) resume() app.UI {
	st, _ := s.Desk.Unfinished()
	next, _ := st.Next()
	done, of := st.Answered()
	return part.Link("resume", checkPath(st.ID, next.ID)).ID("resume").Body(
		app.Strong().Text(words.Continue),
		app.Span().Text(words.SessionName(st)+" · "+words.Progress(done, of)),
	)
}
