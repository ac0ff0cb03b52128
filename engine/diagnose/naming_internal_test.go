package diagnose

import (
	"testing"

	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/fault"
)

// What is named, how sure it is and what naming it is worth, by the weights of the sets.
func TestWhatIsNamed(t *testing.T) {
	none, winding, regulator := fault.PartsOf(), fault.PartsOf(check.ChargeWinding), fault.PartsOf(check.Regulator)
	both, other := fault.PartsOf(check.ChargeWinding, check.Regulator), fault.PartsOf(check.ChargeWinding, check.Wiring)
	n := namingOf([]fault.Parts{none, winding, regulator, both, other})
	for name, c := range map[string]struct {
		weights     []float64 // none, winding, regulator, both, winding and wiring, unlisted
		want        fault.Parts
		sure, right float64
	}{
		"singles: the likeliest, right as often as it is":  {[]float64{0.2, 0.5, 0.3, 0, 0, 0}, winding, 0.5, 0.5},
		"no fault is like a part":                          {[]float64{0.6, 0.3, 0.1, 0, 0, 0}, none, 0.6, 0.6},
		"a double counts for its part, half for its name":  {[]float64{0, 0.7, 0.1, 0.2, 0, 0}, winding, 0.9, 0.8},
		"half of the cases or more are named":              {[]float64{0, 0.4, 0, 0.6, 0, 0}, both, 0.6, 0.8},
		"a double makes its part the likeliest":            {[]float64{0.45, 0.3, 0, 0.2, 0, 0.05}, winding, 0.5, 0.4},
		"of two doubles neither is half":                   {[]float64{0, 0.2, 0, 0.4, 0.4, 0}, winding, 1, 0.6},
		"another double with the same part is wrong twice": {[]float64{0, 0, 0, 0.7, 0.3, 0}, both, 0.7, 0.7},
	} {
		x := n.name(c.weights)
		require.Equal(t, c.want, n.set(x), name)
		require.InDelta(t, c.sure, x.sure, 1e-12, name)
		require.InDelta(t, c.right, x.right, 1e-12, name)
		require.InDelta(t, wrongPart*(sum(c.weights)-c.right), n.stopping(c.weights), 1e-9, name)
	}
	unlisted := n.name([]float64{0.1, 0.2, 0, 0, 0, 0.7})
	require.InDelta(t, 0.7, unlisted.right, 1e-12, "naming nothing of the list")
}
