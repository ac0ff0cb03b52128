package spec_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

var alikeWithin10 = spec.Limit{Measurand: spec.ChargeBalance, Low: -inf, High: 0.10, Ratio: true}

func pairs(t *testing.T, zero string, texts ...string) []meter.Measurement {
	t.Helper()
	var out []meter.Measurement
	for _, text := range texts {
		out = append(out, measured(t, meter.Ohms, "200 Ω", text, zero))
	}
	return out
}

// The limit is invented. That equal readings stay in doubt without a lead zero
// is arithmetic: offset and leads may leave 0.3 Ω of 1.1, and one step of the
// display is more than a tenth of that.
func TestBalanceTable(t *testing.T) {
	for _, c := range []struct {
		name    string
		zero    string
		texts   []string
		outcome spec.Outcome
		reason  spec.Reason
		worst   int
		first   spec.Remedy
	}{
		{"alike", "0.2", []string{"1.1", "1.1", "1.1"}, spec.InSpec, spec.AllAlike, 0, ""},
		{"alike, leads not taken off", "", []string{"1.1", "1.1", "1.1"}, spec.CannotTell, spec.TooCoarse, 0, spec.ZeroLeads},
		{"alike and large, leads not taken off", "", []string{"2.2", "2.2", "2.2"}, spec.InSpec, spec.AllAlike, 0, ""},
		{"alike and small", "0.2", []string{"0.4", "0.4", "0.4"}, spec.CannotTell, spec.TooCoarse, 0, spec.VoltAmp},
		{"one step apart", "0.2", []string{"1.1", "1.2", "1.1"}, spec.CannotTell, spec.NearLimit, 1, spec.Repeat},
		{"one far under", "0.2", []string{"1.1", "0.6", "1.1"}, spec.OutOfSpec, spec.OneDiffers, 1, ""},
		{"one far under, leads not taken off", "", []string{"1.1", "0.6", "1.1"}, spec.OutOfSpec, spec.OneDiffers, 1, ""},
		{"one far over", "0.2", []string{"1.1", "1.1", "2.0"}, spec.OutOfSpec, spec.OneDiffers, 2, ""},
		{"two windings alike", "0.2", []string{"1.1", "1.1"}, spec.InSpec, spec.AllAlike, 0, ""},
		{"two windings apart", "0.2", []string{"1.1", "1.8"}, spec.OutOfSpec, spec.OneDiffers, 0, ""},
		{"one winding", "0.2", []string{"1.1"}, spec.CannotTell, spec.CannotCompare, 0, spec.Repeat},
		{"none", "0.2", nil, spec.CannotTell, spec.CannotCompare, 0, spec.Repeat},
		{"more than any generator here", "0.2", []string{"1.1", "1.1", "1.1", "1.1"}, spec.CannotTell, spec.CannotCompare, 0, spec.Repeat},
		{"one open", "0.2", []string{"1.1", "OL", "1.1"}, spec.CannotTell, spec.CannotCompare, 0, spec.Repeat},
		{"one that wanders", "0.2", []string{"1.1", "won't settle", "1.1"}, spec.CannotTell, spec.CannotCompare, 0, spec.Repeat},
		{"two ranges", "0.2", []string{"1.1", "250", "1.1"}, spec.CannotTell, spec.CannotCompare, 0, spec.Repeat},
		{"nothing left of them", "0.4", []string{"0.3", "0.3", "0.3"}, spec.CannotTell, spec.TooCoarse, 0, spec.VoltAmp},
	} {
		v := spec.JudgeBalance(alikeWithin10, pairs(t, c.zero, c.texts...))
		assert.Equal(t, c.outcome.String(), v.Outcome.String(), c.name)
		assert.Equal(t, c.reason, v.Reason, c.name)
		assert.Equal(t, c.worst, v.Worst, c.name)
		if c.first == "" {
			assert.Empty(t, v.Remedies, c.name)
		} else {
			assert.Equal(t, c.first, v.Remedies[0], c.name)
		}
		seen(v.Reason)
	}
}

// The meter's gain is the same in every reading of a range: it moves neither the
// deviation nor its doubt, whatever the data sheet says of it.
func TestGainCancelsInABalance(t *testing.T) {
	readings := pairs(t, "0.2", "20.1", "20.3", "21.0")
	want := spec.JudgeBalance(alikeWithin10, readings)
	for i := range readings {
		readings[i].Gain, readings[i].Std = 0.3, 6
	}
	assert.Equal(t, want, spec.JudgeBalance(alikeWithin10, readings))
	assert.Equal(t, spec.InSpec, want.Outcome)
	assert.Less(t, want.Std, 0.003, "0.04 Ω of 20, far less than the 0.5 % of the gain")
}

// Recomputed by hand: mean 1.0667-0.2, own doubt hypot(0.1/√12, 0.05/√3), of
// which √(2/3) counts for a deviation from the mean of three.
func TestBalanceFigures(t *testing.T) {
	v := spec.JudgeBalance(alikeWithin10, pairs(t, "0.2", "1.1", "1.1", "1.0"))
	mean := (1.1+1.1+1.0)/3 - 0.2
	assert.InEpsilon(t, 0.8/mean-1, v.Value, 1e-9)
	own := math.Hypot(0.1/math.Sqrt(12), 0.05/math.Sqrt(3))
	assert.InEpsilon(t, own*math.Sqrt(2.0/3)/mean, v.Std, 0.1)
}

// All readings known without doubt.
func TestBalanceOfCertainReadings(t *testing.T) {
	certain := func(values ...float64) []meter.Measurement {
		var out []meter.Measurement
		for _, v := range values {
			out = append(out, meter.Measurement{Value: v})
		}
		return out
	}
	assert.Equal(t, spec.InSpec, spec.JudgeBalance(alikeWithin10, certain(1, 1.05, 0.95)).Outcome)
	assert.Equal(t, spec.OutOfSpec, spec.JudgeBalance(alikeWithin10, certain(1, 1.05, 0.75)).Outcome)
	assert.Equal(t, spec.InSpec, spec.JudgeBalance(alikeWithin10, certain(1, 1.05)).Outcome)
	assert.Equal(t, spec.OutOfSpec, spec.JudgeBalance(alikeWithin10, certain(1, 1.5)).Outcome)
}
