package screen

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/part"
)

// option is one answer of a row of choices.
type option struct {
	label string
	on    bool
	take  func()
}

// askText is a question with an input of its own.
func askText(id, question, hint, mode, value string, set func(string)) app.UI {
	return app.Div().Class("ask").Body(
		app.Label().Class("question").For(id).Text(question),
		&part.Field{ID: id, Value: value, Hint: hint, Mode: mode, OnText: func(_ app.Context, v string) { set(v) }},
	)
}

// askOne is a question with a row of answers.
func askOne(id, question string, list ...option) app.UI {
	buttons := make([]app.UI, len(list))
	for i, o := range list {
		class := "option"
		if o.on {
			class += " on"
		}
		buttons[i] = part.Button(class, o.label, func(app.Context) { o.take() }, id, i, o.on).Aria("pressed", part.Aria(o.on))
	}
	return app.Div().Class("ask").ID("ask-"+id).Attr("role", "group").Aria("label", question).Body(
		app.P().Class("question").Text(question), app.Div().Class("options").Body(buttons...))
}
