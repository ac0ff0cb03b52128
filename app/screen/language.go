package screen

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/device"
	"coilbook/app/part"
	"coilbook/app/words"
)

// languages is the choice of a language. Each is named in itself, for who reads no
// other.
func languages() app.UI {
	var buttons []app.UI
	for _, l := range words.Languages() {
		class, on := "option", l.ID == words.Language()
		if on {
			class += " on"
		}
		buttons = append(buttons, part.Button(class, l.Name, func(app.Context) { device.SetLanguage(l.ID) }, l.ID, on).
			ID("language-"+l.ID).Lang(l.ID).Aria("pressed", part.Aria(on)))
	}
	return app.Div().Class("ask").ID("ask-language").Attr("role", "group").Aria("label", words.LanguageTitle).Body(
		app.P().Class("question").Text(words.LanguageTitle), app.Div().Class("options").Body(buttons...))
}
