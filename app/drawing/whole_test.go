package drawing

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/meter"
)

// A lead in the wrong socket shorts the battery or blows the meter's fuse.
func TestTheSocketFollowsTheFunction(t *testing.T) {
	everyCheck(t, func(t *testing.T, c check.Check, p Picture) {
		current := c.Instrument == check.Multimeter && c.Function == meter.AmpsDC
		volts := c.Instrument == check.Multimeter && c.Function != meter.AmpsDC
		assert.Equal(t, current, slices.Contains(texts(p), "10 A"))
		assert.Equal(t, volts, slices.Contains(texts(p), "VΩ"))
	})
}

// Eyes need no meter, and its picture would be taken for an instruction.
func TestALookShowsNoMeter(t *testing.T) {
	for _, c := range check.Whole(check.DefaultBuild()) {
		if c.Instrument != check.Eyes {
			continue
		}
		for _, l := range leaves(ForCheck(c, check.DefaultBuild(), plainLabel, English()).Shapes, whole, 0) {
			assert.NotContains(t, []string{"meter", "screen", "cable-red", "cable-black"}, class(l.shape), c.ID)
		}
	}
}

// In the drop the clamp lies around the post; in series nothing but the meter is
// between the two.
func TestTheClampIsLiftedOffForTheCurrent(t *testing.T) {
	b := check.DefaultBuild()
	apart := func(id check.ID, clamp, post check.Terminal) float64 {
		p := ForCheck(planned(t, b, id), b, plainLabel, English())
		return p.Anchors[clamp].X - p.Anchors[post].X
	}
	assert.Less(t, apart("drop-terminal", check.PlusClamp, check.BatteryPlus), 40.0)
	assert.Greater(t, apart("key-off-current", check.MinusClamp, check.BatteryMinus), 50.0)
}

// The bare lead stands off the metal, or there would be no gap to see a spark in.
func TestTheBareLeadKeepsItsGap(t *testing.T) {
	b := check.DefaultBuild()
	p := ForCheck(planned(t, b, "spark-bare-lead"), b, plainLabel, English())
	engine, ok := p.Shapes[0].(Rect)
	require.True(t, ok)
	for _, l := range leaves(p.Shapes, whole, 0) {
		if path, isPath := l.shape.(Path); isPath && path.Class == "ink" && path.Width == 7 {
			assert.Greater(t, l.box.x0, engine.X+engine.W+15)
		}
	}
}

// An engine that runs by itself has no starter's pinion in it.
func TestThePinionTurnsOnlyWhileCranking(t *testing.T) {
	b := check.DefaultBuild()
	teeth := func(id check.ID) int {
		n := 0
		for _, l := range leaves(ForCheck(planned(t, b, id), b, plainLabel, English()).Shapes, whole, 0) {
			if r, ok := l.shape.(Rect); ok && r.Class == "iron" && r.W == 3.6 {
				n++
			}
		}
		return n
	}
	assert.Zero(t, teeth("charge-ac-1-2"))
	assert.Equal(t, 8, teeth("exciter-free-cranking"))
}
