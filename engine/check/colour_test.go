package check_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"coilbook/engine/check"
)

func TestPlugLeadsAreThoseOfTheBuild(t *testing.T) {
	assert.Equal(t, []check.Terminal{"charge-1", "charge-2", "charge-3", "exciter", "pickup-a", "pickup-b", "ground-lead"}, check.PlugLeads(check.DefaultBuild()))
	assert.Equal(t, []check.Terminal{"charge-1"}, check.PlugLeads(check.Build{ChargeLeads: 1}))
	for _, lead := range check.PlugLeads(check.DefaultBuild()) {
		assert.True(t, check.IsPlugLead(lead))
	}
	for _, other := range []check.Terminal{check.Core, check.BatteryPlus, "regulator-1", "charge-5", ""} {
		assert.False(t, check.IsPlugLead(other), other)
	}
}

func TestNoColourStandsTwice(t *testing.T) {
	seen := map[check.Colour]bool{}
	for _, c := range check.Colours() {
		assert.False(t, seen[c] || c == "", c)
		seen[c] = true
	}
	assert.Len(t, seen, 13)
}
