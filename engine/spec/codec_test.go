package spec_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

// Figures invented for the test.
const profile = `{"format": "coilbook spec profile", "version": 1, "id": "quarry", "name": "Quarry", "about": "", "limits": [
	{"measurand": "pickup-resistance", "low": 0.1, "high": 0.2, "unit": "kΩ", "atCelsius": 20, "state": "at rest",
		"provenance": {"kind": "manual", "note": "page 7", "date": "2026-01-31"}},
	{"measurand": "charge-balance", "high": 10, "unit": "%", "state": "at rest",
		"provenance": {"kind": "from memory", "note": "", "date": "2026-01-31"}},
	{"measurand": "charge-to-core", "low": 2, "unit": "MΩ", "open": true, "state": "at rest",
		"provenance": {"kind": "common practice", "note": "", "date": "2026-01-31"}},
	{"measurand": "pickup-gap", "low": 11, "high": 40, "unit": "thou", "state": "at rest",
		"provenance": {"kind": "common practice", "note": "", "date": "2026-01-31"}}]}`

func TestProfilesAreRead(t *testing.T) {
	p, err := spec.DecodeProfile([]byte(profile))
	require.NoError(t, err)
	assert.Equal(t, "quarry", p.ID)
	assert.Len(t, p.Limits, 4)

	pickup, ok := p.Limit(spec.PickupResistance)
	require.True(t, ok)
	assert.InDelta(t, 100, pickup.Low, 1e-9)
	assert.InDelta(t, 200, pickup.High, 1e-9)
	assert.Equal(t, "kΩ", pickup.Unit.Name)
	assert.Equal(t, quantity.Celsius(20), *pickup.Condition.AtCelsius)
	assert.Equal(t, spec.Provenance{Kind: spec.Manual, Note: "page 7", Date: "2026-01-31"}, pickup.Provenance)

	balance, _ := p.Limit(spec.ChargeBalance)
	assert.True(t, balance.Ratio)
	assert.InDelta(t, 0.1, balance.High, 1e-12)
	assert.True(t, math.IsInf(balance.Low, -1))
	open, _ := p.Limit(spec.ChargeToCore)
	assert.True(t, open.Open)
	assert.True(t, math.IsInf(open.High, 1))
	gap, _ := p.Limit(spec.PickupGap)
	assert.InDelta(t, 11*25.4e-6, gap.Low, 1e-12)
	_, ok = p.Limit(spec.LeadZero)
	assert.False(t, ok)
}

func TestWhatIsWrongWithAProfileIsNamed(t *testing.T) {
	for _, c := range []struct{ old, new, says string }{
		{profile, "", "spec profile: EOF"},
		{`"about"`, `"colour"`, `unknown field "colour"`},
		{`coilbook spec profile`, `coilbook session`, `format "coilbook session"`},
		{`"version": 1`, `"version": 2`, "version 2 is not"},
		{`"pickup-resistance"`, `"pickup-weight"`, "limits[0] (pickup-weight): measurand is not known"},
		{`"kΩ"`, `"V"`, `limits[0] (pickup-resistance): unit "V" does not suit a resistance`},
		{`"unit": "%"`, `"unit": "Ω"`, `limits[1] (charge-balance): unit "Ω"`},
		{`"thou"`, `"%"`, `limits[3] (pickup-gap): unit "%"`},
		{`"high": 0.2`, `"high": 0.1`, "limits[0] (pickup-resistance): low must lie under high"},
		{`"kind": "manual"`, `"kind": ""`, "provenance needs a kind and a date"},
		{`"note": "page 7", "date": "2026-01-31"`, `"note": "page 7", "date": ""`, "provenance needs a kind and a date"},
		{`"kind": "manual"`, `"kind": "hearsay"`, `provenance kind "hearsay" is not known`},
		{`"pickup-gap", "low": 11, "high": 40, "unit": "thou"`, `"pickup-resistance", "low": 11, "high": 40, "unit": "Ω"`, "pickup-resistance stands twice"},
	} {
		require.Equal(t, 1, strings.Count(profile, c.old), c.old)
		_, err := spec.DecodeProfile([]byte(strings.Replace(profile, c.old, c.new, 1)))
		assert.ErrorContains(t, err, c.says, c.new)
	}
	_, err := spec.DecodeProfile([]byte(profile + "{}"))
	assert.ErrorContains(t, err, "goes on after its end")
}
