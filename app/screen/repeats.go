package screen

import (
	"github.com/google/uuid"
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/desk"
	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/check"
)

// runCard lists the readings of a point that count together. Each can be taken
// again; one more can be added.
func (s *checkScreen) runCard(v view) app.UI {
	var items []app.UI
	for i, p := range v.run {
		items = append(items, s.runItem(v, i, p))
	}
	more := "other-act"
	if v.draft.Again {
		more += " on"
	}
	return app.Div().Class("card run").ID("run").Aria("label", words.RunTitle).Attr("role", "group").Body(
		app.Div().Class("run-list").Body(items...),
		part.Button(more, words.ReadOnceMore, func(app.Context) { s.again() }, string(s.Check)).
			ID("again").Aria("pressed", part.Aria(v.draft.Again)),
	)
}

func (s *checkScreen) runItem(v view, i int, p assess.Point) app.UI {
	class := "run-item"
	if v.line.Repeats.Retake == i && !v.live {
		class += " apart"
	}
	if v.draft.Corrects == p.Entry.ID {
		class += " on"
	}
	return part.Button(class, words.Typed(p.Typed), func(app.Context) { s.takeAgain(i) }, i, string(s.Check)).
		Aria("label", words.TakeAgain(i+1, words.Typed(p.Typed)))
}

func (s *checkScreen) again() {
	v, ok := s.view()
	if !ok || len(v.run) == 0 {
		return
	}
	s.problem = ""
	d := like(v.check, v.run[len(v.run)-1])
	d.Again = !v.draft.Again
	s.keep(d)
}

func (s *checkScreen) takeAgain(i int) {
	v, ok := s.view()
	if !ok || i >= len(v.run) {
		return
	}
	s.problem = ""
	p := v.run[i]
	d := like(v.check, p)
	if v.draft.Corrects != p.Entry.ID {
		d.Corrects = p.Entry.ID
	}
	s.keep(d)
}

// like is an empty draft with the unit and range of an earlier reading.
func like(c check.Check, p assess.Point) desk.Draft {
	r := p.Entry.Reading
	return desk.Draft{Unit: unitAgain(c, r), Range: r.Range}
}

// runHint says what the next number is taken for.
func runHint(v view) string {
	if v.draft.Corrects != uuid.Nil {
		for i, p := range v.run {
			if p.Entry.ID == v.draft.Corrects {
				return words.TakeAgainHint(i + 1)
			}
		}
	}
	if v.draft.Again {
		return words.AgainHint
	}
	return ""
}
