package part

import "github.com/maxence-charriere/go-app/v10/pkg/app"

// Field is a text input that always shows its model: the framework alone could
// neither clear an input nor take back a refused letter.
type Field struct {
	app.Compo
	ID     string
	Value  string
	Hint   string
	Mode   string // inputmode: "text", "decimal"
	OnText func(app.Context, string)
}

func (f *Field) follow(app.Context) {
	if el := f.JSValue(); el.Truthy() && el.Get("value").String() != f.Value {
		el.Set("value", f.Value)
	}
}

// OnMount shows the model.
func (f *Field) OnMount(ctx app.Context) { f.follow(ctx) }

// OnUpdate shows the model; the function prop makes it run at every render.
func (f *Field) OnUpdate(ctx app.Context) { f.follow(ctx) }

func (f *Field) input(ctx app.Context, _ app.Event) {
	f.OnText(ctx, ctx.JSSrc().Get("value").String())
}

// Render draws the input.
func (f *Field) Render() app.UI {
	return app.Input().ID(f.ID).Class("field").Type("text").AutoComplete(false).
		Attr("inputmode", f.Mode).MaxLength(80).Placeholder(f.Hint).OnInput(f.input)
}
