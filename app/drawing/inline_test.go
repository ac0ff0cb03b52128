package drawing_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"coilbook/app/drawing"
)

func TestInlinePictureHasNoTextButItsLabels(t *testing.T) {
	p := drawing.Picture{Width: 10, Height: 5, Label: `a "b" <c>`, Shapes: []drawing.Shape{
		drawing.Group{Shapes: []drawing.Shape{drawing.Circle{Class: "x", R: 2}, drawing.Text{Class: "y", Size: 3, Text: "1 > 0"}}},
	}}
	text := drawing.Inline("mark in", p)
	assert.NotContains(t, text, "\n")
	assert.Contains(t, text, `<svg class="drawing mark in" viewBox="0 0 10 5" role="img" aria-label="a &#34;b&#34; &lt;c&gt;"><g `)
	assert.Contains(t, text, `>1 &gt; 0</text></g></svg>`)
	p.Label = ""
	assert.Contains(t, drawing.Inline("mark", p), ` aria-hidden="true"><g `)
}
