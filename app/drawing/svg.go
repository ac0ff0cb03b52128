package drawing

import (
	"encoding/xml"
	"strings"
)

// SVG prints a picture as a self-standing document: the same bytes for the same
// picture.
func SVG(p Picture) string {
	var out strings.Builder
	w, h := Number(p.Width), Number(p.Height)
	out.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" class="drawing" role="img" viewBox="0 0 ` + w + " " + h +
		`" width="` + w + `" height="` + h + `"><title>` + escape(p.Label) + "</title>\n")
	for _, s := range p.Shapes {
		write(&out, s)
	}
	out.WriteString("</svg>\n")
	return out.String()
}

// Inline prints a picture as a part of a page, under classes of its style sheet;
// with a label it is an image to a screen reader, without one it is decoration.
func Inline(class string, p Picture) string {
	var out strings.Builder
	pairs := []string{"class", "drawing " + class, "viewBox", "0 0 " + Number(p.Width) + " " + Number(p.Height)}
	if p.Label == "" {
		pairs = append(pairs, "aria-hidden", "true")
	} else {
		pairs = append(pairs, "role", "img", "aria-label", p.Label)
	}
	open(&out, "svg", pairs...)
	out.WriteString(">")
	for _, s := range p.Shapes {
		write(&out, s)
	}
	out.WriteString("</svg>")
	return strings.ReplaceAll(out.String(), ">\n", ">") // no text of the page but the labels
}

func write(out *strings.Builder, s Shape) {
	switch s := s.(type) {
	case Path:
		tag(out, "path", "class", s.Class, "stroke-width", Number(s.Width), "d", s.D())
	case Circle:
		tag(out, "circle", "class", s.Class, "stroke-width", Number(s.Width),
			"cx", Number(s.Center.X), "cy", Number(s.Center.Y), "r", Number(s.R))
	case Rect:
		tag(out, "rect", "class", s.Class, "stroke-width", Number(s.Width), "x", Number(s.X), "y", Number(s.Y),
			"width", Number(s.W), "height", Number(s.H), "rx", Number(s.R))
	case Text:
		open(out, "text", "class", s.Class, "x", Number(s.At.X), "y", Number(s.At.Y),
			"font-size", Number(s.Size), "text-anchor", string(s.Anchor))
		out.WriteString(">" + escape(s.Text) + "</text>\n")
	case Group:
		open(out, "g", "transform", s.Transform())
		out.WriteString(">\n")
		for _, inner := range s.Shapes {
			write(out, inner)
		}
		out.WriteString("</g>\n")
	}
}

func tag(out *strings.Builder, name string, pairs ...string) {
	open(out, name, pairs...)
	out.WriteString("/>\n")
}

func open(out *strings.Builder, name string, pairs ...string) {
	out.WriteString("<" + name)
	for i := 0; i < len(pairs); i += 2 {
		out.WriteString(" " + pairs[i] + `="` + escape(pairs[i+1]) + `"`)
	}
}

// Escape makes a text fit for markup.
func Escape(s string) string { return escape(s) }

func escape(s string) string {
	var out strings.Builder
	_ = xml.EscapeText(&out, []byte(s)) // a Builder never fails
	return out.String()
}
