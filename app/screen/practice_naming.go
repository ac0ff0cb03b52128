package screen

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/machine"
)

// practiceNaming lists all that such a machine can have, by part.
type practiceNaming struct {
	app.Compo
	Room *room
	Rev  int

	chosen  machine.Kind
	problem string
}

// Render draws the faults and the one that was chosen.
func (s *practiceNaming) Render() app.UI {
	code := s.Room.bench.Code()
	body := []app.UI{heading(words.NamingTitle), part.Text("quiet", words.NamingHint)}
	for _, g := range grouped(s.Room.bench.Choices()) {
		body = append(body, s.group(g))
	}
	return app.Div().Class("page").Body(
		head(words.BenchCode(code), plainSign(), benchPath(code)),
		app.Main().Class("main").Body(body...),
		app.Footer().Class("act naming").Body(
			app.P().Class("problem").Attr("role", "alert").Text(s.problem),
			app.P().Class("chosen").ID("chosen").Attr("role", "status").Text(s.sure()),
			part.Button("main-act", words.NamingGo, s.confirm).ID("confirm"),
		),
	)
}

func (s *practiceNaming) sure() string {
	if s.chosen == "" {
		return ""
	}
	return words.NamingSure(s.chosen)
}

func (s *practiceNaming) confirm(ctx app.Context) {
	if s.chosen == "" {
		s.problem = words.NamingFirst
		return
	}
	s.Room.name(s.chosen)
	part.Go(ctx, truthPath(s.Room.bench.Code()))
}

// faultGroup is the faults of one part.
type faultGroup struct {
	title string
	kinds []machine.Kind
}

// grouped puts faults under their parts; parts without any are left out.
func grouped(kinds []machine.Kind) []faultGroup {
	var out []faultGroup
	for _, p := range words.FaultGroups() {
		g := faultGroup{title: words.Part(p)}
		for _, k := range kinds {
			if k.Part() == p {
				g.kinds = append(g.kinds, k)
			}
		}
		if len(g.kinds) > 0 {
			out = append(out, g)
		}
	}
	return out
}

func (s *practiceNaming) group(g faultGroup) app.UI {
	var buttons []app.UI
	for _, k := range g.kinds {
		class, on := "option fault", s.chosen == k
		if on {
			class += " on"
		}
		buttons = append(buttons, part.Button(class, words.Fault(k), func(app.Context) { s.chosen, s.problem = k, "" }, string(k), on).
			ID("fault-"+string(k)).Aria("pressed", part.Aria(on)))
	}
	return app.Section().Class("fault-group").Body(app.H2().Text(g.title),
		app.Div().Class("faults").Attr("role", "group").Aria("label", g.title).Body(buttons...))
}
