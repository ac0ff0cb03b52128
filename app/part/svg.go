package part

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/drawing"
	"coilbook/engine/spec"
)

// Picture renders a drawing inline; with a label it is an image to a screen
// reader, without one it is decoration. The browser reads it as one text, which
// takes it a tenth of the time of making its shapes one by one.
func Picture(class string, p drawing.Picture) app.UI { return app.Raw(drawing.Inline(class, p)) }

// Tone is the class of an outcome's colour.
func Tone(o spec.Outcome) string {
	return map[spec.Outcome]string{spec.InSpec: "in", spec.OutOfSpec: "out", spec.CannotTell: "unsure"}[o]
}

// Mark draws the shape of an outcome. Its word stands beside it.
func Mark(o spec.Outcome) app.UI { return silent("mark "+Tone(o), drawing.VerdictMark(Tone(o))) }

// Sign draws one of the other marks, "skip" or "todo", beside its word.
func Sign(name string) app.UI { return silent("mark "+name, drawing.VerdictMark(name)) }

// Icon draws a sign beside its word.
func Icon(class, name string) app.UI { return silent(class, drawing.Icon(name)) }

func silent(class string, p drawing.Picture) app.UI {
	p.Label = ""
	return Picture(class, p)
}
