package practice_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/practice"
)

// Over many benches: a fault of the charging side of which the machine was found to
// charge less shows in its curve too, one of the ignition leaves it as it is, and no
// figure is without a value.
func TestTheCurveShowsTheFault(t *testing.T) {
	charging, ignition := 0, 0
	for _, l := range practice.Levels() {
		for seed := range uint32(25) {
			b := practice.Open(l, seed)
			list := b.Curve()
			require.GreaterOrEqual(t, len(list), 8)
			worst := 0.0
			for i, o := range list {
				require.True(t, i == 0 || o.RPM > list[i-1].RPM)
				for _, v := range []float64{o.Sound.BatteryVolts, o.Sound.BatteryAmps, o.With.BatteryVolts, o.With.BatteryAmps} {
					require.False(t, math.IsNaN(v) || math.IsInf(v, 0), "%s", b.Code())
				}
				if o.RPM >= 3000 && o.RPM <= 5000 {
					worst = max(worst, math.Abs(o.Sound.BatteryVolts-o.With.BatteryVolts))
				}
			}
			top := list[len(list)-1].Sound
			assert.Greater(t, top.BatteryAmps, 0.0, "%s: a sound machine charges at speed", b.Code())
			switch truth := b.Truth(); {
			case b.Complaint == practice.NotCharging || b.Complaint == practice.Overcharging:
				charging++
				assert.Greater(t, worst, 0.3, "%s: %v", b.Code(), truth)
			case !truth.Kind.Charging() && b.Complaint == practice.NoSpark:
				ignition++
				assert.InDelta(t, 0, worst, 0.05, "%s: %v", b.Code(), truth)
			}
		}
	}
	assert.Positive(t, charging)
	assert.Positive(t, ignition)
}
