package part

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/app/drawing"
	"coilbook/app/words"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

func eachBar(t *testing.T, f func(t *testing.T, v spec.Verdict, p drawing.Picture)) {
	t.Helper()
	for _, c := range bars {
		t.Run(c.name, func(t *testing.T) { f(t, c.v, LimitBar(c.v)) })
	}
}

func TestNothingLeavesTheBar(t *testing.T) {
	eachBar(t, func(t *testing.T, _ spec.Verdict, p drawing.Picture) {
		assert.LessOrEqual(t, p.Height, 64.0)
		assert.NotContains(t, drawing.SVG(p), "NaN")
		for _, s := range p.Shapes {
			b := box(s)
			assert.True(t, b[0] >= 0 && b[1] >= 0 && b[2] <= p.Width && b[3] <= p.Height, "%s at %.1f", classOf(s), b)
		}
	})
}

// Words stand clear of each other and of all that stands on the line.
func TestWordsOnTheBarStandClear(t *testing.T) {
	eachBar(t, func(t *testing.T, _ spec.Verdict, p drawing.Picture) {
		for i, s := range p.Shapes {
			text, ok := s.(drawing.Text)
			if !ok {
				continue
			}
			assert.GreaterOrEqual(t, text.Size, 13.0)
			a := box(s)
			for k, other := range p.Shapes {
				b := box(other)
				meet := a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3]
				assert.False(t, i != k && meet, "%q meets %s at %.1f", text.Text, classOf(other), b)
			}
		}
	})
}

// The share of the bell that is filled is the probability: integrated from the
// drawn outlines, compared with the verdict's own figure.
func TestTheFilledShareIsTheProbability(t *testing.T) {
	compared := 0
	eachBar(t, func(t *testing.T, v spec.Verdict, p drawing.Picture) {
		whole := classed(p, "bar-beside")
		if len(whole) == 0 || !chanceKnown(v) {
			return
		}
		if b := box(whole[0]); b[0] <= barLeft && v.Value-3*v.Std < scaleFor(v).value(barLeft) || b[2] >= barRight && v.Value+3*v.Std > scaleFor(v).value(barRight) {
			return // cut by an end of the line
		}
		compared++
		inside := areaOf(classed(p, "bar-inside-"+Tone(v.Outcome)))
		assert.InDelta(t, v.Probability, inside/areaOf(whole), 0.02)
	})
	assert.Greater(t, compared, 15)
}

// All bells are as high as there is room, so that their widths compare.
func TestBellsAreOfOneHeight(t *testing.T) {
	for _, name := range []string{"in", "out low", "too coarse", "leads taken off", "wide, low", "wide, high", "at least, in", "ratio, in"} {
		top := box(classed(LimitBar(bar(t, name)), "bar-beside")[0])[1]
		assert.InDelta(t, bellTop, top, 0.3, name)
		assert.GreaterOrEqual(t, top, bellTop-1e-9, name)
	}
}

// What is not filled is hatched, and only that.
func TestTheRestIsHatched(t *testing.T) {
	for name, pieces := range map[string]int{"in": 0, "out low": 1, "out high": 1, "straddling low": 1, "too coarse": 2, "bad leads": 0, "negative": 0} {
		lines := classed(LimitBar(bar(t, name)), "bar-line-")
		assert.Len(t, lines, pieces+1, "%s: the outline and its hatching", name)
	}
	p := LimitBar(bar(t, "straddling high"))
	post := box(classed(p, "bar-band")[2])
	hatch := box(classed(p, "bar-line-unsure")[0])
	assert.GreaterOrEqual(t, hatch[0], post[0])
}

// bar is the verdict of that name in the table.
func bar(t *testing.T, name string) spec.Verdict {
	t.Helper()
	for _, c := range bars {
		if c.name == name {
			return c.v
		}
	}
	require.Fail(t, "no such bar", name)
	return spec.Verdict{}
}

func TestThePointStandsWhereTheVerdictSays(t *testing.T) {
	eachBar(t, func(t *testing.T, v spec.Verdict, p drawing.Picture) {
		points := classed(p, "bar-point-"+Tone(v.Outcome))
		if len(points) == 0 {
			return
		}
		x := points[0].(drawing.Circle).Center.X
		zone := classed(p, "bar-zone")[0].(drawing.Rect)
		low, high := sides(v.Limit)
		assert.Equal(t, v.Value >= low && v.Value <= high, x >= zone.X && x <= zone.X+zone.W, "%.1f against %.1f and %.1f on", x, zone.X, zone.W)
		assert.Greater(t, zone.W, 70.0)
	})
}

func TestTheBarGrowsWithTheReading(t *testing.T) {
	for _, limit := range [][2]float64{{100, 200}, {0.05, 500}, {-inf, 200}, {100, inf}} {
		last := -1.0
		for value := 90.0; value < 210; value += 5 {
			v := between(quantity.Ohms, limit[0], limit[1], value, 1)
			x := classed(LimitBar(v), "bar-point-")[0].(drawing.Circle).Center.X
			assert.Greater(t, x, last)
			last = x
		}
	}
}

// A value off the line is an arrow off that end; so is a display that showed
// more than its range, where that decides.
func TestArrowsPointToWhatLiesOff(t *testing.T) {
	for name, outward := range map[string]float64{
		"far outside": 1, "far below": -1, "at least, far over": 1, "at most, far over": 1, "wide, far below": -1,
		"open as must": 1, "line broken": 1, "past range": 1, "over any range": 1, "range too low": 0, "in": 0,
	} {
		p := LimitBar(bar(t, name))
		tip := 0.0
		if len(classed(p, "bar-point-")) == 0 {
			for _, s := range classed(p, "bar-line-") {
				b := box(s)
				tip = map[bool]float64{true: 1, false: tip}[b[2] > barRight]
				tip = map[bool]float64{true: -1, false: tip}[b[0] < barLeft]
			}
		}
		assert.Equal(t, outward, tip, name)
	}
}

func TestASmallDoubtIsADotOnAStem(t *testing.T) {
	for _, name := range []string{"tiny doubt", "certain"} {
		p := LimitBar(bar(t, name))
		assert.Empty(t, classed(p, "bar-beside"), name)
		assert.Len(t, classed(p, "bar-line-in"), 1, name)
		assert.Less(t, classed(p, "bar-point-in")[0].(drawing.Circle).Center.Y, barY-10, name)
	}
}

func TestThePointerShowsWhatTheDisplayShowed(t *testing.T) {
	tip := func(v spec.Verdict) float64 { return corners(classed(LimitBar(v), "bar-shown")[0].(drawing.Path))[0].X }
	for _, name := range []string{"leads taken off", "wide, low", "wide, about zero", "at least, straddling"} {
		v := bar(t, name)
		point := classed(LimitBar(v), "bar-point-")[0].(drawing.Circle).Center.X
		assert.Equal(t, v.Shown > v.Value, tip(v) > point, name)
		v.HasShown = false
		assert.Empty(t, classed(LimitBar(v), "bar-shown"), name)
	}
	assert.Len(t, classed(LimitBar(shown(bar(t, "in"), 300)), "bar-shown"), 1, "the line is widened for it")
	assert.Empty(t, classed(LimitBar(bar(t, "in")), "bar-shown"), "the same place")
	assert.Empty(t, classed(LimitBar(shown(bar(t, "in"), 1e6)), "bar-shown"), "off the line")
}

func TestFiguresStandAtTheEnds(t *testing.T) {
	for name, want := range map[string][]string{
		"in": {"100", "200 Ω"}, "leads taken off": {"0.05", "5 Ω"}, "narrow limit": {"149.5", "150.5 Ω"},
		"at least, in": {"at least 40 V"}, "at most, in": {"at most 1 Ω"},
		"open, leaks": {"2 MΩ", "open line"}, "ratio, in": {"−10 %", "+10 %"}, "below freezing": {"−5", "155 °C"},
	} {
		var got []string
		for _, s := range classed(LimitBar(bar(t, name)), "bar-words") {
			got = append(got, s.(drawing.Text).Text)
		}
		assert.Equal(t, want, got, name)
	}
	p := LimitBar(bar(t, "in"))
	zone := classed(p, "bar-zone")[0].(drawing.Rect)
	assert.Equal(t, zone.X, classed(p, "bar-words")[0].(drawing.Text).At.X)
	assert.Equal(t, zone.X+zone.W, classed(p, "bar-words")[1].(drawing.Text).At.X)
}

// Figures too near each other part evenly, or one goes where the picture ends.
func TestFiguresGiveWay(t *testing.T) {
	for _, x := range []float64{0, 3, 100, 170, 240, 335, 340} {
		shapes := apart(figure(x, "0.05"), figure(x+4, "0.25 Ω"))
		a, b := box(shapes[0]), box(shapes[1])
		assert.Greater(t, b[0]-a[2], 5.0, "at %g", x)
		assert.True(t, a[0] >= 0 && b[2] <= barWidth, "at %g", x)
	}
}

// An open side has no post: the band goes on as an arrow to the end of the line.
func TestAnOpenSideRunsOff(t *testing.T) {
	for name, open := range map[string][2]bool{"in": {false, false}, "at least, in": {false, true}, "at most, in": {true, false}, "open, leaks": {false, true}} {
		bands := classed(LimitBar(bar(t, name)), "bar-band")
		low, high := box(bands[1]), box(bands[2])
		assert.Equal(t, open, [2]bool{low[0] < barLeft, high[2] > barRight}, name)
		assert.Equal(t, open, [2]bool{low[1] > bellTop, high[1] > bellTop}, "%s: no post", name)
	}
}

func TestWhatLiesOffDoesNotSqueezeTheLimit(t *testing.T) {
	for name, off := range map[string]float64{"in": 1e7, "at most, in": 300, "leads taken off": 1e-7} {
		v := bar(t, name)
		v.Value, v.Std, v.HasShown = off, off/100, false
		near := v
		near.HasValue = false
		assert.Equal(t, scaleFor(near), scaleFor(v), name)
	}
}

func TestARatioStandsAroundZero(t *testing.T) {
	p := LimitBar(ratio(0, 0.02))
	zone := classed(p, "bar-zone")[0].(drawing.Rect)
	assert.InDelta(t, zone.X+zone.W/2, classed(p, "bar-point-in")[0].(drawing.Circle).Center.X, 0.01)
}

// Places even by ratio are for limits far apart and values clear of zero.
func TestLimitsFarApartAreEvenByRatio(t *testing.T) {
	for name, want := range map[string]bool{
		"leads taken off": true, "line broken": true, "wide, high": true, "in": false, "wide, about zero": false,
		"negative": false, "at least, in": false, "open, leaks": false, "ratio, in": false, "warm": false,
	} {
		assert.Equal(t, want, byRatio(bar(t, name)), name)
	}
	foot := classed(LimitBar(bar(t, "wide, low")), "bar-zone")[0].(drawing.Rect)
	assert.Greater(t, foot.W, 200.0, "a bell that reaches down to zero leaves the limit its room")
}

func TestTheChanceIsSaidWhereItMeansSomething(t *testing.T) {
	for name, want := range map[string]string{
		"in": "over 99 % in spec", "out low": "over 99 % out of spec", "straddling low": "63 % in spec", "too coarse": "60 % in spec",
		"narrow limit": "99 % in spec", "negative": "", "bad leads": "", "open as must": "", "line broken": "", "range too low": "",
	} {
		got := ""
		for _, s := range classed(LimitBar(bar(t, name)), "bar-chance-") {
			got = s.(drawing.Text).Text
		}
		assert.Equal(t, want, got, name)
	}
}

func TestTheChanceStandsAwayFromTheValue(t *testing.T) {
	for name, want := range map[string]drawing.Anchor{"out low": drawing.End, "out high": drawing.Start, "far below": drawing.End, "far outside": drawing.Start} {
		assert.Equal(t, want, classed(LimitBar(bar(t, name)), "bar-chance-")[0].(drawing.Text).Anchor, name)
	}
}

func TestTheBarIsAlsoSaid(t *testing.T) {
	eachBar(t, func(t *testing.T, v spec.Verdict, p drawing.Picture) {
		assert.Contains(t, p.Label, words.Limit(v.Limit))
		if v.HasValue {
			assert.Contains(t, p.Label, words.Doubt(v))
		}
		if chanceKnown(v) {
			assert.Contains(t, p.Label, words.Chance(v))
		}
	})
	assert.Equal(t, "150 ± 16 Ω, 100 to 200 Ω, over 99 % in spec", LimitBar(bar(t, "in")).Label)
	assert.Equal(t, "open line, must read open line", LimitBar(bar(t, "open as must")).Label)
}

func TestWithoutALimitThereIsNoBar(t *testing.T) {
	v := bar(t, "in")
	v.HasLimit = false
	assert.Empty(t, LimitBar(v).Shapes)
}

func TestStyleColoursTheBar(t *testing.T) {
	css, err := os.ReadFile("../../web/style.css")
	require.NoError(t, err)
	eachBar(t, func(t *testing.T, _ spec.Verdict, p drawing.Picture) {
		for _, s := range p.Shapes {
			assert.Contains(t, string(css), ".drawing ."+classOf(s)+" {")
		}
	})
}
