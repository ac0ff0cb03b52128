package drawing

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"coilbook/engine/check"
	"coilbook/engine/meter"
)

// Every position that a check asks for stands on the dial, once, and strong only
// when it is in use.
func TestTheDialHasEveryFunctionInUse(t *testing.T) {
	marked := map[meter.Function]int{}
	for _, m := range dialMarks {
		marked[m.f]++
	}
	everyCheck(t, func(t *testing.T, c check.Check, _ Picture) {
		if c.Instrument == check.Multimeter {
			assert.Equal(t, 1, marked[c.Function])
		}
	})
	for f := range marked {
		var strong []string
		for _, s := range dial(f) {
			if text, ok := s.(Text); ok && text.Class == "label-accent" {
				strong = append(strong, text.Text)
			}
			if drawn, ok := s.(Path); ok && drawn.Class == "label-accent" {
				strong = append(strong, "diode")
			}
		}
		assert.Len(t, strong, 1, f)
	}
}

func TestDirectCurrentIsDrawnInBars(t *testing.T) {
	shapes := sign("label", meter.VoltsDC, Point{0, 0}, textSize)
	assert.Equal(t, "V", shapes[0].(Text).Text)
	assert.Len(t, shapes, 5, "the letter, one bar and three short ones")
	assert.Len(t, sign("label", meter.VoltsAC, Point{0, 0}, textSize), 1)
}
