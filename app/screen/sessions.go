package screen

import (
	"github.com/google/uuid"
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/desk"
	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/practice"
	"coilbook/engine/session"
)

// sessions lists what was saved; a removed one can be brought back.
type sessions struct {
	app.Compo
	Desk  *desk.Desk
	Rev   int
	Phone *phone
	Can   int // revision of the phone

	removed uuid.UUID
	name    string
}

// OnMount reads the list anew, in case another tab added to it.
func (s *sessions) OnMount(app.Context) { s.Desk.Refresh() }

// Render draws the list.
func (s *sessions) Render() app.UI {
	list := s.Desk.Sessions()
	rows := make([]app.UI, len(list))
	for i, st := range list {
		rows[i] = s.row(st)
	}
	return app.Div().Class("page").Body(
		head(words.Title("sessions"), savedSign(s.Desk)),
		app.Main().Class("main").Body(
			heading(words.SessionsTitle),
			&installHint{Phone: s.Phone, Rev: s.Can},
			part.When("", len(list) == 0 && s.Desk.Listed(), s.none),
			app.Div().Class("rows").ID("session-rows").Body(rows...),
			part.When("", s.removed != uuid.Nil, s.undo),
		),
		foot("sessions"),
	)
}

// none says that nothing is there, and offers something to look at.
func (s *sessions) none() app.UI {
	return app.Div().Class("none").Body(
		part.Text("quiet", words.NoSessions),
		part.Link("main-act", "").ID("begin-one").Text(words.BeginOne),
		part.Button("other-act", words.ShowExamples, func(app.Context) {
			if examples, err := practice.Examples(); err == nil {
				s.Desk.Adopt(examples...)
			}
		}).ID("examples"),
		part.Text("quiet", words.AboutExamples),
	)
}

func (s *sessions) row(st session.State) app.UI {
	done, of := st.Answered()
	path := resultPath(st.ID)
	if _, more := st.Next(); more {
		path = sheetPath(st.ID)
	}
	return app.Div().Class("session").Body(
		part.Link("row", path).Body(app.Span().Class("row-name").Body(
			app.Strong().Text(words.SessionName(st)),
			app.Small().Text(words.When(st.Changed)+" · "+words.Progress(done, of)))),
		part.Button("remove", words.Delete, func(app.Context) {
			s.removed, s.name = st.ID, words.SessionName(st)
			s.Desk.Mark(st.ID, session.Removed)
		}, st.ID).Aria("label", words.Delete+": "+words.SessionName(st)),
	)
}

func (s *sessions) undo() app.UI {
	return app.Div().Class("undo").Attr("role", "status").Body(
		app.Span().Text(words.Deleted(s.name)),
		part.Button("banner-act", words.Undo, func(app.Context) {
			s.Desk.Mark(s.removed, session.Restored)
			s.removed = uuid.Nil
		}, s.removed).ID("undo"),
	)
}
