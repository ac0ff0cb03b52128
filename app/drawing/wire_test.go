package drawing

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
)

// paintedLeads gives every lead of a build a colour, each second one with a stripe.
func paintedLeads(b check.Build) Wires {
	out, all := Wires{}, check.Colours()
	for i, t := range check.PlugLeads(b) {
		w := check.Wire{Base: all[(3*i)%len(all)]}
		if i%2 == 0 {
			w.Stripe = all[(3*i+5)%len(all)]
		}
		out[t] = Wire{w, fmt.Sprintf("colour of %s", t)}
	}
	return out
}

// With colours every picture is as sound as without, its words as clear of leads, and
// the probes where they were.
func TestColouredPicturesAreSound(t *testing.T) {
	for _, b := range []check.Build{check.DefaultBuild(), {StatorPoles: 18, ChargeLeads: 4, Exciter: true, Pickup: true, GroundLead: true}, {StatorPoles: 1, ChargeLeads: 1}} {
		for _, c := range everyPlanned(b) {
			plain, coloured := ForCheck(c, b, plainLabel, English()), ForWires(c, b, plainLabel, English(), paintedLeads(b))
			sound(t, coloured)
			assert.Equal(t, plain.Anchors, coloured.Anchors, c.ID)
			all := leaves(coloured.Shapes, whole, 0)
			for _, l := range all {
				if text, ok := l.shape.(Text); ok && l.deep == 0 {
					for _, other := range all {
						if strings.HasPrefix(class(other.shape), "wire-") && crosses(leaf{Path{"lead", 4, other.shape.(Path).Steps}, other.at, other.box, other.deep}, l.box) {
							t.Errorf("%s: a wire runs across %q", c.ID, text.Text)
						}
					}
				}
			}
		}
	}
}

// Each lead has its own colour and stripe, those touched are marked below, and colours
// are said.
func TestLeadsShowTheirColours(t *testing.T) {
	b := check.DefaultBuild()
	wires := Wires{
		"charge-1": {check.Wire{Base: check.Yellow, Stripe: check.Red}, "yellow with a red stripe"},
		"charge-3": {check.Wire{Base: check.White}, "white"},
	}
	p := ForWires(planned(t, b, "charge-pair-3-1"), b, plainLabel, English(), wires)
	assert.Contains(t, p.Label, "red: 3 (white)")
	assert.Contains(t, p.Label, "black: 1 (yellow with a red stripe)")
	drawn := map[string][]float64{}
	for _, s := range p.Shapes {
		if path, ok := s.(Path); ok {
			drawn[path.Class] = append(drawn[path.Class], path.Width)
		}
	}
	assert.Equal(t, []float64{wireBase}, drawn["wire-yellow"])
	assert.Equal(t, []float64{wireStripe}, drawn["wire-red"])
	assert.Equal(t, []float64{wireBase}, drawn["wire-white"])
	assert.Equal(t, []float64{wireEdge, wireEdge}, drawn["wire-edge"])
	assert.Equal(t, []float64{wireTouched, wireTouched}, drawn["lead-live"])
	assert.Len(t, drawn["lead-grey"], 2, "lead 2 and the ground have no colour yet")
	golden(t, "testdata/wires.svg", SVG(p))
	golden(t, "testdata/swatch.svg", SVG(Swatch(check.Wire{Base: check.Black, Stripe: check.White})))
	assert.Empty(t, Swatch(check.Wire{}).Shapes)
	for _, l := range leaves(Swatch(check.Wire{Base: check.Black, Stripe: check.White}).Shapes, whole, 0) {
		assert.True(t, l.box.x0 >= 0 && l.box.x1 <= 44 && l.box.y0 >= 0 && l.box.y1 <= 16, "%v", l.box)
	}
}

// In both themes the edge tells every lead from the ground, and no two colours are
// taken for each other as far as numbers tell.
func TestWireColoursStandOut(t *testing.T) {
	colours := map[string]string{}
	for _, m := range regexp.MustCompile(`\.drawing \.wire-([a-z-]+) \{ stroke: (#[0-9a-f]+);`).FindAllStringSubmatch(readStyle(t), -1) {
		colours[m[1]] = m[2]
	}
	require.Len(t, colours, len(check.Colours()))
	for name, theme := range themes(t) {
		for _, ground := range []string{theme["paper"], theme["bench"], theme["plug"]} {
			assert.GreaterOrEqual(t, contrast(t, theme["ink"], ground), 3.0, name)
		}
	}
	for _, a := range check.Colours() {
		for _, b := range check.Colours() {
			if a != b {
				assert.Greater(t, apartBy(t, colours[string(a)], colours[string(b)]), 60.0, "%s and %s", a, b)
			}
		}
	}
}

// apartBy is the distance of two colours in sRGB, weighted by how eyes see them (the
// "redmean", from memory).
func apartBy(t *testing.T, a, b string) float64 {
	t.Helper()
	of := func(hex string) (r, g, b float64) {
		hex = strings.TrimPrefix(hex, "#")
		if len(hex) == 3 {
			hex = string([]byte{hex[0], hex[0], hex[1], hex[1], hex[2], hex[2]})
		}
		n, err := strconv.ParseUint(hex, 16, 24)
		require.NoError(t, err)
		return float64(n >> 16), float64(n >> 8 & 255), float64(n & 255)
	}
	r1, g1, b1 := of(a)
	r2, g2, b2 := of(b)
	mean := (r1 + r2) / 2
	return math.Sqrt((2+mean/256)*(r1-r2)*(r1-r2) + 4*(g1-g2)*(g1-g2) + (2+(255-mean)/256)*(b1-b2)*(b1-b2))
}
