package diagnose_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/quantity"
)

// A sound exciter of some makers shows no more than 28 V while the engine is cranked: with
// ohms that suit a whole coil that makes it no likelier at fault than a box of which nothing
// was read. A third of it does, and 100 V clear it.
func TestFewVoltsOfAnExciterCondemnNothing(t *testing.T) {
	m := ready()[fault.NoSpark]
	part := func(p check.Part, volts float64) float64 {
		return m.Weigh([]diagnose.Evidence{
			{Check: "spark-good-plug", Value: 0}, {Check: "kill-wire", State: quantity.OverRange}, {Check: "pickup-core", State: quantity.OverRange},
			{Check: "exciter", Value: 280, Doubt: 3}, {Check: "pickup", Value: 180, Doubt: 2}, {Check: "exciter-free-cranking", Value: volts, Doubt: 1},
		}).Of(fault.PartsOf(p))
	}
	assert.Less(t, part(check.Exciter, 28), part(check.IgnitionBox, 28)/2)
	assert.Greater(t, part(check.Exciter, 10), part(check.IgnitionBox, 10))
	assert.Less(t, part(check.Exciter, 100), 0.03)
}
