package transient_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/transient"
)

// A winding that nothing but a meter loads shows its emf from the first steps on:
// the jump at the start does not go on ringing from step to step.
func TestAnUnloadedWindingDoesNotRing(t *testing.T) {
	for _, henries := range []float64{0.7e-3, 0.7e-6, 0.3} {
		for _, load := range []float64{1e4, 1e6, 1e7} {
			var c transient.Circuit
			a := c.Node("a")
			emf := transient.Sine{Volts: 24, Hertz: 300, Phase: 1}
			c.Winding(a, transient.Ground, emf, 0.22, henries)
			c.Resistor(a, transient.Ground, load)
			run, err := c.Start(1.0 / 300 / 64)
			require.NoError(t, err)
			require.NoError(t, run.Advance(1.0/300, nil))
			worst := 0.0
			lag := 2 * math.Pi * 300 * henries / load
			require.NoError(t, run.Advance(4.0/300, func(s *transient.State) {
				want := 24 * math.Sin(2*math.Pi*300*s.Time()+1-math.Atan(lag)) / math.Hypot(1, lag)
				worst = max(worst, math.Abs(s.Volts(a)-want))
			}))
			assert.Less(t, worst, 0.1, "%v H on %v ohms", henries, load)
		}
	}
}
