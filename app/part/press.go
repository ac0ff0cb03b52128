// Package part holds the pieces that screens are made of. The framework's sharp
// edges are handled here once: handlers always carry a scope, inputs follow
// their model, numbers are printed by us, and links know the host's sub-path.
package part

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/device"
)

// Press makes a click handler that is renewed whenever one of the scope values
// changes: closures from one source line compare equal, and without a scope the
// first one stays for ever.
func Press(b app.HTMLButton, act func(app.Context), scope ...any) app.HTMLButton {
	return b.OnClick(func(ctx app.Context, _ app.Event) { act(ctx) }, app.EventScope(scope...))
}

// Button is a button with a class and a label.
func Button(class, label string, act func(app.Context), scope ...any) app.HTMLButton {
	return Press(app.Button().Type("button").Class(class).Text(label), act, append(scope, label)...)
}

// Path puts a path of the app under the sub-path it is hosted at.
func Path(path string) string { return device.Prefix() + path }

// Go shows another screen.
func Go(ctx app.Context, path string) { ctx.Navigate(Path(path)) }

// Link is a link to another screen of the app.
func Link(class, path string) app.HTMLA { return app.A().Class(class).Href(Path(path)) }

// Aria is a true/false attribute, always written out.
func Aria(on bool) string { return fmt.Sprint(on) }

// Text is a paragraph.
func Text(class, text string) app.UI { return app.P().Class(class).Text(text) }

// When renders a piece or an empty place, so that what follows never shifts.
func When(class string, on bool, piece func() app.UI) app.UI {
	return app.Div().Class(class).Body(app.If(on, piece))
}
