package part

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/drawing"
	"coilbook/engine/spec"
)

// Nothing is drawn by an SVG node that does not name its own namespace.
const svgSpace = "http://www.w3.org/2000/svg"

func svg(tag string) app.HTMLElem { return app.Elem(tag).XMLNS(svgSpace) }

// Picture renders a drawing inline; with a label it is an image to a screen
// reader, without one it is decoration.
func Picture(class string, p drawing.Picture) app.UI {
	root := svg("svg").Class("drawing "+class).
		Attr("viewBox", "0 0 "+drawing.Number(p.Width)+" "+drawing.Number(p.Height))
	if p.Label == "" {
		root = root.Attr("aria-hidden", "true")
	} else {
		root = root.Attr("role", "img").Attr("aria-label", p.Label)
	}
	return root.Body(shapes(p.Shapes)...)
}

func shapes(list []drawing.Shape) []app.UI {
	out := make([]app.UI, len(list))
	for i, s := range list {
		out[i] = shape(s)
	}
	return out
}

func shape(s drawing.Shape) app.UI {
	switch s := s.(type) {
	case drawing.Path:
		return stroked("path", s.Class, s.Width).Attr("d", s.D())
	case drawing.Circle:
		return stroked("circle", s.Class, s.Width).
			Attr("cx", drawing.Number(s.Center.X)).Attr("cy", drawing.Number(s.Center.Y)).Attr("r", drawing.Number(s.R))
	case drawing.Rect:
		return stroked("rect", s.Class, s.Width).
			Attr("x", drawing.Number(s.X)).Attr("y", drawing.Number(s.Y)).Attr("rx", drawing.Number(s.R)).
			Attr("width", drawing.Number(s.W)).Attr("height", drawing.Number(s.H))
	case drawing.Text:
		return svg("text").Class(s.Class).Attr("x", drawing.Number(s.At.X)).Attr("y", drawing.Number(s.At.Y)).
			Attr("font-size", drawing.Number(s.Size)).Attr("text-anchor", string(s.Anchor)).Text(s.Text)
	case drawing.Group:
		return svg("g").Attr("transform", s.Transform()).Body(shapes(s.Shapes)...)
	}
	return svg("g")
}

func stroked(tag, class string, width float64) app.HTMLElem {
	return svg(tag).Class(class).Attr("stroke-width", drawing.Number(width))
}

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
