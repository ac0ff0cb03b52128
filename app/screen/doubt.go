package screen

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/words"
	"coilbook/engine/assess"
)

// doubt unfolds the way from the display to the verdict.
func doubt(b assess.Bench, l assess.Line) app.UI {
	var rows []app.UI
	for _, d := range words.Details(b, l) {
		rows = append(rows, app.Dt().Text(d.Label), app.Dd().Text(d.Text))
	}
	return app.Details().Class("doubt").Body(
		app.Summary().Text(words.DoubtTitle),
		app.Dl().Body(rows...),
	)
}
