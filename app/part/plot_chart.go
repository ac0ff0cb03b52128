package part

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/drawing"
	"coilbook/app/words"
)

// Table says in words what a plot draws; the first column names the rows.
type Table struct {
	Head []string
	Rows [][]string
}

// Sample is a line of a plot's legend: how it is drawn, and what it is.
type Sample struct{ Drawn, Name string }

// Ways to draw in a legend.
const (
	SampleBand   = "band"
	SampleLine   = "line"
	SampleDashed = "dashed"
	SampleIn     = "in"
	SampleOut    = "out"
	SampleUnsure = "unsure"
)

// legend names what a plot has: its band, and the shapes of its dots.
func (p *Plot) legend(band, in, out, unsure string) []Sample {
	var list []Sample
	if len(p.Band) > 0 {
		list = append(list, Sample{SampleBand, band})
	}
	for _, s := range []Sample{{SampleIn, in}, {SampleOut, out}, {SampleUnsure, unsure}} {
		for _, d := range p.Dots {
			if d.Tone == s.Drawn && !d.Open {
				list = append(list, s)
				break
			}
		}
	}
	return list
}

// Chart is a plot with its title, its legend, and its table folded below, so that it
// can be read without being seen.
func Chart(id, title string, picture drawing.Picture, legend []Sample, t Table) app.UI {
	samples := make([]app.UI, len(legend))
	for i, s := range legend {
		samples[i] = app.Span().Class("legend-entry").Body(silent("sample", s.picture()), app.Span().Text(s.Name))
	}
	return app.Div().Class("plot").ID(id).Attr("role", "figure").Aria("label", title).Body(
		Text("plot-title", title),
		Picture("plot-picture", picture),
		app.Div().Class("legend").Body(samples...),
		app.Details().Class("fold").ID(id+"-table").Body(app.Summary().Text(words.PlotTable), app.Raw(t.markup(title))),
	)
}

// markup is the table as one text: the framework's own elements for tables would make
// the program larger by tens of kilobytes.
func (t Table) markup(title string) string {
	var out strings.Builder
	cell := func(tag, scope, text string) {
		out.WriteString("<" + tag + scope + ">" + drawing.Escape(text) + "</" + tag + ">")
	}
	out.WriteString(`<table class="plot-table"><caption class="unseen">` + drawing.Escape(title) + "</caption><thead><tr>")
	for _, h := range t.Head {
		cell("th", ` scope="col"`, h)
	}
	out.WriteString("</tr></thead><tbody>")
	for _, r := range t.Rows {
		out.WriteString("<tr>")
		cell("th", ` scope="row"`, r[0])
		for _, c := range r[1:] {
			cell("td", "", c)
		}
		out.WriteString("</tr>")
	}
	out.WriteString("</tbody></table>")
	return out.String()
}

// picture is a sample of 28 by 16.
func (s Sample) picture() drawing.Picture {
	p := drawing.Picture{Width: 28, Height: 16}
	switch s.Drawn {
	case SampleBand:
		p.Shapes = []drawing.Shape{drawing.Rect{Class: "plot-band", Width: 1.5, X: 1, Y: 3, W: 26, H: 10}}
	case SampleLine, SampleDashed:
		class := map[string]string{SampleLine: "wave-line", SampleDashed: "plot-dashed"}[s.Drawn]
		p.Shapes = []drawing.Shape{drawing.Path{Class: class, Width: 2.5, Steps: level(2, 26, 8)}}
	default:
		p.Shapes = []drawing.Shape{dot(s.Drawn, 14, 8)}
	}
	return p
}
