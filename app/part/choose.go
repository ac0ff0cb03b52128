package part

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/drawing"
)

// Choose is a list of choices that always shows its model: the browser's own would keep
// what was picked before. The list is one text, because the framework's own elements for
// it would make the program larger.
type Choose struct {
	app.Compo
	ID     string
	Label  string // to who does not see what it stands beside
	Value  string
	List   []Choice
	OnPick func(app.Context, string)
}

// Choice is one of them.
type Choice struct{ Value, Name string }

func (c *Choose) list() app.Value { return c.JSValue().Get("firstElementChild") }

func (c *Choose) follow(app.Context) {
	if c.JSValue().Truthy() && c.list().Truthy() && c.list().Get("value").String() != c.Value {
		c.list().Set("value", c.Value)
	}
}

// OnMount shows the model.
func (c *Choose) OnMount(ctx app.Context) { c.follow(ctx) }

// OnUpdate shows the model; the function prop makes it run at every render.
func (c *Choose) OnUpdate(ctx app.Context) { c.follow(ctx) }

func (c *Choose) picked(ctx app.Context, _ app.Event) {
	c.OnPick(ctx, c.list().Get("value").String())
}

// Render draws the list.
func (c *Choose) Render() app.UI {
	return app.Div().Class("choose").OnChange(c.picked).Body(app.Raw(c.markup()))
}

func (c *Choose) markup() string {
	var out strings.Builder
	out.WriteString(`<select class="field" id="` + drawing.Escape(c.ID) + `" aria-label="` + drawing.Escape(c.Label) + `">`)
	for _, o := range c.List {
		out.WriteString(`<option value="` + drawing.Escape(o.Value) + `">` + drawing.Escape(o.Name) + "</option>")
	}
	out.WriteString("</select>")
	return out.String()
}
