package assess_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
	"coilbook/engine/spec"
)

// An open lead reads open to the core as a good winding does.
func TestBrokenLeadsPassNothing(t *testing.T) {
	for _, zero := range []string{"OL", "won't settle", "5.0"} {
		b := opened(t, setup(check.DefaultBuild()), read("lead-zero", zero), read("charge-core-1", "OL"),
			read("core-continuity", "0.3"), read("charge-pair-1-2", "1.1"), read("charge-pair-2-3", "1.1"), read("charge-pair-3-1", "1.1"),
			session.Entry{Reading: &session.Reading{Check: "exciter-cranking", Text: "75.0"}})
		for _, id := range []check.ID{"charge-core-1", "core-continuity", "charge-pair-1-2"} {
			v := line(t, b, id).Verdict
			assert.Equal(t, spec.CannotTell, v.Outcome, "%s with %s", id, zero)
			assert.Equal(t, spec.BadLeads, v.Reason)
		}
		assert.Equal(t, spec.BadLeads, b.Report().Balance.Verdict.Reason)
		assert.Equal(t, spec.InSpec, line(t, b, "exciter-cranking").Verdict.Outcome, "volts need no lead zero")
	}
}

// A dial left on 200 Ω shows 2.3 for a winding that touches the core; taken for
// megohms it would pass.
func TestAReadingBeyondEveryRangeIsNone(t *testing.T) {
	for _, text := range []string{"2.3", "12.4", "5000"} {
		b := opened(t, setup(check.DefaultBuild()), session.Entry{Reading: &session.Reading{Check: "charge-core-1", Text: text, Unit: "MΩ"}})
		l := line(t, b, "charge-core-1")
		require.Error(t, l.Unread, text)
		assert.ErrorContains(t, l.Unread, "check the dial and the unit")
		assert.Contains(t, b.Report().Untested, check.ID("charge-core-1"))
	}
}

func TestUnitsAreAskedWhereTheyDecide(t *testing.T) {
	auto := meter.Auto4000().ID
	for _, c := range []struct {
		name, meter string
		check       check.ID
		text, unit  string
		chosen      bool
		want        []string
	}{
		{"auto, on scale to the core", auto, "charge-core-1", "12.4", "Ω", false, []string{"Ω", "kΩ", "MΩ"}},
		{"auto, unit chosen", auto, "charge-core-1", "12.4", "MΩ", true, nil},
		{"auto, open", auto, "charge-core-1", "OL", "Ω", false, nil},
		{"auto, pickup in kilohms", auto, "pickup", "0.212", "Ω", false, []string{"Ω", "kΩ"}},
		{"auto, pickup in ohms", auto, "pickup", "212", "Ω", false, nil},
		{"gap in inches", "cheap", "pickup-gap", ".014", "mm", false, []string{"mm", "in"}},
		{"gap in thousandths", "cheap", "pickup-gap", "16", "mm", false, []string{"mm", "thou"}},
		{"unit written", "cheap", "pickup-gap", "16 mm", "mm", true, nil},
		{"bad in every unit", "cheap", "pickup", "5.0", "Ω", false, nil},
		{"good anyway", "cheap", "pickup-gap", "0.4", "mm", false, nil},
	} {
		st := setup(check.DefaultBuild())
		st.Setup.Meter = c.meter
		b := opened(t, st)
		found, _ := check.Find(b.Plan, c.check)
		got := b.UnitsToAsk(found, session.Reading{Check: c.check, Text: c.text, Unit: c.unit}, c.chosen)
		assert.Equal(t, c.want, names(got), c.name)
	}
}

func names(units []quantity.Unit) (out []string) {
	for _, u := range units {
		out = append(out, u.Name)
	}
	return out
}
