package part

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/app/drawing"
)

// strained are plots at the edge of what comes up.
func strained() map[string]*Plot {
	speed := speeds()
	return map[string]*Plot{
		"usual": {Across: speed, Up: Around("V", false, 11, 15), Band: []Span{{0, 12, 13}, {1000, 12, 13}, {5500, 13, 14.8}},
			Dots: []Dot{{X: 0, Y: 12.5, Doubt: 0.1, Tone: "in"}, {X: 5000, Y: 11.5, Doubt: 0.4, Tone: "out"}, {X: 3000, Y: 13, Doubt: 0.1, Tone: "unsure"}}},
		"three at one place": {Across: speed, Up: Around("V", false, 40, 80), Dots: []Dot{{X: 3000, Y: 40, Tone: "in"}, {X: 3000, Y: 41, Doubt: 1, Tone: "unsure"}, {X: 3000, Y: 80, Doubt: 2, Tone: "in"}}},
		"beyond":             {Across: speed, Up: Around("V", false, 1, 2), Dots: []Dot{{X: 9000, Y: 400, Doubt: 900}, {X: -50, Y: -400}}, Band: []Span{{0, -9, 9}}},
		"one value":          {Across: Axis{Low: 0, High: 2}, Up: Around("Ω", false, 212), Dots: []Dot{{X: 1, Y: 212, Open: false}, {X: 1, Open: true}}},
		"nought":             {Across: Axis{Low: 0, High: 2}, Up: Around("Ω", false, 0), Dots: []Dot{{X: 1, Y: 0}}},
		"below zero":         {Across: speed, Up: Around("A", true, -3.5, -0.2), Lines: []Curve{{Points: []drawing.Point{{X: 1000, Y: -3.5}, {X: 5500, Y: -0.2}}}, {Dashed: true}}},
		"huge":               {Across: speed, Up: Around("Ω", false, 3e3, 9999), Dots: []Dot{{X: 0, Y: 5e3, Doubt: 1e2, Tone: "in"}}},
	}
}

// spanOf is the box of a shape.
func spanOf(t *testing.T, s drawing.Shape) (x0, y0, x1, y1 float64) {
	t.Helper()
	x0, y0, x1, y1 = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	point := func(x, y, grow float64) {
		x0, y0, x1, y1 = min(x0, x-grow), min(y0, y-grow), max(x1, x+grow), max(y1, y+grow)
	}
	switch s := s.(type) {
	case drawing.Path:
		for _, step := range s.Steps {
			if step.Op != 'Z' {
				point(step.P[2].X, step.P[2].Y, s.Width/2)
			}
		}
	case drawing.Circle:
		point(s.Center.X, s.Center.Y, s.R+s.Width/2)
	case drawing.Rect:
		point(s.X, s.Y, s.Width/2)
		point(s.X+s.W, s.Y+s.H, s.Width/2)
	case drawing.Text:
		w := plotWidth(s.Text)
		left := s.At.X - map[drawing.Anchor]float64{drawing.Start: 0, drawing.Middle: w / 2, drawing.End: w}[s.Anchor]
		point(left, s.At.Y-0.75*s.Size, 0)
		point(left+w, s.At.Y+0.2*s.Size, 0)
	default:
		t.Fatalf("%T", s)
	}
	return x0, y0, x1, y1
}

// staysInside holds a picture to its room, its words to one another, and its classes to
// the style sheet.
func staysInside(t *testing.T, name string, p drawing.Picture) {
	t.Helper()
	css, err := os.ReadFile("../../web/style.css")
	require.NoError(t, err)
	require.NotEmpty(t, p.Shapes, name)
	var words [][4]float64
	for _, s := range p.Shapes {
		x0, y0, x1, y1 := spanOf(t, s)
		assert.True(t, x0 >= -1e-9 && y0 >= -1e-9 && x1 <= p.Width+1e-9 && y1 <= p.Height+1e-9, "%s: %#v reaches %.1f %.1f %.1f %.1f", name, s, x0, y0, x1, y1)
		assert.Contains(t, string(css), ".drawing ."+classOf(s)+" {", name)
		if _, ok := s.(drawing.Text); ok {
			for _, w := range words {
				assert.False(t, x0 < w[2] && w[0] < x1 && y0 < w[3] && w[1] < y1, "%s: %#v lies on another word", name, s)
			}
			words = append(words, [4]float64{x0, y0, x1, y1})
		}
	}
	svg := drawing.SVG(p)
	assert.False(t, strings.Contains(svg, "NaN") || strings.Contains(svg, "Inf"), name)
}

func TestPlotsStayInTheirRoom(t *testing.T) {
	for name, p := range strained() {
		staysInside(t, name, p.Picture())
	}
	assert.Empty(t, (&Plot{}).Picture().Shapes, "nothing to plot")
}

// The scale is true: what is more stands higher, or further right, by as much.
func TestThePlotsScaleIsTrue(t *testing.T) {
	for name, p := range strained() {
		for _, along := range []struct {
			at        func(float64) float64
			low, high float64
		}{{p.x, p.Across.Low, p.Across.High}, {func(v float64) float64 { return -p.y(v) }, p.Up.Low, p.Up.High}} {
			last, step := along.at(along.low), (along.high-along.low)/20
			first := along.at(along.low+step) - last
			for i := 1; i <= 20; i++ {
				now := along.at(along.low + step*float64(i))
				assert.Greater(t, now, last, name)
				assert.InDelta(t, first, now-last, 1e-6, name)
				last = now
			}
		}
	}
}

// Numbers up the side are round, in order, and stand at their own height.
func TestThePlotsNumbersStandWhereTheyBelong(t *testing.T) {
	for name, p := range strained() {
		numbers := 0
		for _, s := range p.Picture().Shapes {
			word, ok := s.(drawing.Text)
			if !ok || word.Anchor != drawing.End || word.At.X != plotLeft-numeralGap {
				continue
			}
			var v float64
			_, err := fmt.Sscan(strings.ReplaceAll(word.Text, "−", "-"), &v)
			require.NoError(t, err, word.Text)
			assert.InDelta(t, p.y(v)+numeralUp, word.At.Y, 1e-6, name)
			numbers++
		}
		assert.True(t, numbers >= 2 && numbers <= 6, "%s: %d numbers", name, numbers)
	}
}

// The doubt reaches as far above and below as it should, and readings of one speed do
// not hide each other.
func TestDotsCarryTheirDoubt(t *testing.T) {
	p := strained()["three at one place"]
	var at []drawing.Point
	bars := 0
	for _, s := range p.Picture().Shapes {
		switch s := s.(type) {
		case drawing.Circle:
			at = append(at, s.Center)
		case drawing.Path:
			if s.Class == "plot-doubt" {
				d := p.Dots[bars]
				_, top, _, bottom := spanOf(t, s)
				assert.InDelta(t, p.y(d.Y+d.Doubt), top+s.Width/2, 1e-6)
				assert.InDelta(t, p.y(d.Y-d.Doubt), bottom-s.Width/2, 1e-6)
				bars++
			}
		}
	}
	require.Len(t, at, 3)
	require.Equal(t, 3, bars)
	middle := 0.0
	for i, one := range at {
		assert.InDelta(t, p.y(p.Dots[i].Y), one.Y, 1e-9)
		middle += one.X / 3
		for _, other := range at[:i] {
			assert.GreaterOrEqual(t, math.Abs(one.X-other.X), plotBeside-1e-9)
		}
	}
	assert.InDelta(t, p.x(3000), middle, 1e-9)
}

// Without colour a reading inside, outside and undecided still differ.
func TestDotsDifferByShape(t *testing.T) {
	in, out, unsure := dot("in", 9, 9), dot("out", 9, 9), dot("unsure", 9, 9)
	assert.IsType(t, drawing.Circle{}, in)
	assert.IsType(t, drawing.Rect{}, dot("", 9, 9))
	assert.IsType(t, drawing.Path{}, out)
	assert.Equal(t, "bar-shown", unsure.(drawing.Circle).Class, "a ring")
	assert.NotEqual(t, in.(drawing.Circle).Class, unsure.(drawing.Circle).Class)
	for _, drawn := range []string{SampleBand, SampleLine, SampleDashed, SampleIn, SampleOut, SampleUnsure} {
		p := Sample{Drawn: drawn}.picture()
		staysInside(t, drawn, p)
	}
}

func TestWhatIsAtRestIsApartFromWhatRuns(t *testing.T) {
	p := strained()["usual"]
	require.Len(t, p.runs(), 2)
	assert.IsType(t, drawing.Rect{}, p.band()[0])
	p.Band = p.Band[1:]
	assert.Len(t, p.runs(), 1)
	p.Band = nil
	assert.Empty(t, p.band())
}

func TestBarsShowTheirShares(t *testing.T) {
	bars := []Bar{{"A charge winding touches the core, and a very long name besides", "over 99 %", 1, false}, {"Half", "50 %", 0.5, false}, {"Left over", "99 %", 0.99, true},
		{"Little", "under 1 %", 0.0004, true}, {"Nothing at all", "under 1 %", 0, false}, {"Too much", "over 99 %", 1.2, false}}
	for n := 1; n <= len(bars); n++ {
		p := Bars("said", bars[:n])
		staysInside(t, fmt.Sprint(n, " bars"), p)
		assert.Equal(t, "said", p.Label)
		var found []drawing.Rect
		for _, s := range p.Shapes {
			if r, ok := s.(drawing.Rect); ok && r.H == barsHigh {
				found = append(found, r)
			}
		}
		require.Len(t, found, n)
		for i, r := range found {
			share := min(bars[i].Share, 1)
			assert.InDelta(t, max(share*(barsRight-barsLeft), 2), r.W, 1e-9)
			assert.Equal(t, bars[i].Hollow, r.Class == "plot-hollow")
		}
	}
	axis := 0
	for _, s := range Bars("", bars[:1]).Shapes {
		if word, ok := s.(drawing.Text); ok && word.At.Y > barsTop+barsRow {
			axis++
			var v float64
			_, err := fmt.Sscan(word.Text, &v)
			require.NoError(t, err)
			if v > 0 {
				assert.InDelta(t, barsX(v/100), word.At.X, 1e-9)
			}
		}
	}
	assert.Equal(t, 5, axis)
}
