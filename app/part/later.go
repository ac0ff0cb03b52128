package part

import "github.com/maxence-charriere/go-app/v10/pkg/app"

// Later draws pieces in a turn of its own, after the rest of a screen that is shown
// for the first time: what lies far down need not hold the page. Outside a browser it is
// drawn at once.
type Later struct {
	app.Compo
	Of func() []app.UI // drawn anew with the screen

	due bool
}

// OnMount has it drawn in the next turn.
func (l *Later) OnMount(ctx app.Context) { ctx.Dispatch(func(app.Context) { l.due = true }) }

// Render draws the pieces, or nothing in their place.
func (l *Later) Render() app.UI {
	if !l.due && app.IsClient {
		return app.Div().Class("later")
	}
	return app.Div().Class("later").Body(l.Of()...)
}
