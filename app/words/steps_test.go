package words_test

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// everyPlan visits the plans of all builds and aims, with all methods at once.
func everyPlan(t *testing.T, visit func(what string, plan []check.Check)) {
	t.Helper()
	aims := constants(t, "check", "Aim")
	var methods []check.Method
	for _, m := range constants(t, "check", "Method") {
		methods = append(methods, check.Method(m))
	}
	require.ElementsMatch(t, methods, everyMethod)
	for leads := check.MinChargeLeads; leads <= check.MaxChargeLeads; leads++ {
		for parts := range 8 {
			b := check.DefaultBuild()
			b.ChargeLeads, b.Exciter, b.Pickup, b.GroundLead = leads, parts&1 > 0, parts&2 > 0, parts&4 > 0
			for _, aim := range aims {
				visit(aim+" of a build", check.Plan(b, check.Aim(aim), methods...))
			}
		}
	}
}

func TestNoTwoChecksOfAPlanAreNamedAlike(t *testing.T) {
	everyPlan(t, func(what string, plan []check.Check) {
		var ids []string
		byID := map[string]check.Check{}
		for _, c := range plan {
			ids = append(ids, string(c.ID))
			byID[string(c.ID)] = c
			for _, at := range []check.Terminal{c.Red, c.Black} {
				assert.True(t, at == check.Nowhere || words.Terminal(at) != "", "%s: no words for %s", c.ID, at)
			}
		}
		require.Len(t, byID, len(plan), "an id twice")
		allDiffer(t, what+", name", ids, func(id string) string { return words.CheckName(byID[id]) })
		allDiffer(t, what+", question", ids, func(id string) string { return words.CheckQuestion(byID[id]) })
	})
}

// What fits on a phone without the thumb moving: common practice, no source.
const longestStep = 110

func TestStepsNameDialAndProbes(t *testing.T) {
	everyCheck(func(c check.Check) {
		for _, m := range meter.Bundled() {
			steps := words.Steps(c, m)
			all := strings.Join(steps, "\n")
			for _, s := range steps {
				assert.LessOrEqual(t, utf8.RuneCountInString(s), longestStep, "%s: %q", c.ID, s)
			}
			if c.Instrument != check.Multimeter {
				continue
			}
			r, ok := c.Dial(m)
			require.True(t, ok, c.ID)
			assert.Contains(t, all, words.Dial(c, m, r), c.ID)
			if c.Red != check.OtherProbe {
				assert.Contains(t, all, "Red on "+words.TerminalIn(c, c.Red)+", black on "+words.TerminalIn(c, c.Black)+".", c.ID)
			}
		}
	})
}

func TestDialIsTurnedDownOnlyToALowerRange(t *testing.T) {
	cheap := meter.Cheap()
	for id, turned := range map[check.ID]bool{"exciter-cranking": true, "pickup-peak": true, "exciter-peak": false, "box-peak": false} {
		all := strings.Join(words.Steps(find(t, id), cheap), "\n")
		assert.Equal(t, turned, strings.Contains(all, "turn down"), id)
		assert.Contains(t, all, "600", "%s: the highest range comes first", id)
	}
}

func find(t *testing.T, id check.ID) (found check.Check) {
	t.Helper()
	everyCheck(func(c check.Check) {
		if c.ID == id && found.ID == "" {
			found = c
		}
	})
	require.Equal(t, id, found.ID)
	return found
}

// The order that keeps meter and hands whole.
func TestStepsKeepTheSafeOrder(t *testing.T) {
	inOrder := func(id check.ID, parts ...string) {
		steps := words.Steps(find(t, id), meter.Cheap())
		last := -1
		for _, p := range parts {
			at := slices.IndexFunc(steps, func(s string) bool { return strings.Contains(s, p) })
			assert.Greater(t, at, last, "%s: %q", id, p)
			last = at
		}
	}
	for _, name := range []check.ID{"1-2", "3-1", "1-core"} {
		inOrder("volt-amp-known-"+name, "probes off", "bulb, known resistor", "fuse in. Wait", "Bulb dark? Stop", "Red on", "Lift the probes")
		inOrder("volt-amp-winding-"+name, "Red on", "Take both probes off", "pull the fuse")
	}
	inOrder("hot-exciter", "Dial to", "ten minutes", "plug apart", "Red on", "within a few minutes")
	for _, id := range []check.ID{"exciter-peak", "pickup-peak", "box-peak"} {
		inOrder(id, "COM", "Dial to", "Red on", "grounded plug", "Crank", "bleeder")
	}
}

// The current goes through the very winding whose drop is read.
func TestTheLineRunsThroughTheWinding(t *testing.T) {
	for id, ends := range map[check.ID][2]string{
		"volt-amp-known-3-1":    {"charge lead 3.", "Join charge lead 1 to battery minus."},
		"volt-amp-known-1-core": {"charge lead 1.", "Join bare metal of the stator core to battery minus."},
	} {
		all := strings.Join(words.Steps(find(t, id), meter.Cheap()), "\n")
		assert.Contains(t, all, "known resistor, "+ends[0])
		assert.Contains(t, all, ends[1])
	}
}

func TestWhereSaysThePlugAndTheEngine(t *testing.T) {
	for id, want := range map[check.ID]string{
		"lead-zero": "off the machine", "battery-dc": "off the machine", "battery-ac-swapped": "off the machine",
		"known-resistor": "off the machine", "volt-amp-known-1-2": "apart, stopped", "volt-amp-winding-1-2": "apart, stopped",
		"hot-exciter": "apart, just stopped", "hot-charge-pair-1-2": "apart, just stopped", "exciter": "apart, stopped",
		"box-peak": "together, cranking", "exciter-cranking": "together, cranking", "pickup-gap": "stopped",
	} {
		assert.Equal(t, want, words.Where(find(t, id)), id)
	}
}

func TestNamesTellTheWinding(t *testing.T) {
	for id, want := range map[check.ID]string{
		"charge-pair-3-1": "Charge leads 3 and 1", "volt-amp-known-1-2": "Known resistor, leads 1 and 2",
		"volt-amp-winding-1-2": "Drop over leads 1 and 2", "volt-amp-winding-1-core": "Drop over lead 1 to core",
		"hot-exciter": "Exciter, hot", "hot-pickup": "Pickup, hot", "hot-charge-pair-2-3": "Charge leads 2 and 3, hot",
		"hot-charge-grounded-1": "Charge lead 1 to core, hot", "box-peak": "Ignition box peak, cranking",
		"battery-ac": "Battery on the AC range", "battery-ac-swapped": "Battery on the AC range, leads swapped",
	} {
		assert.Equal(t, want, words.CheckName(find(t, id)), id)
	}
	assert.NotEqual(t, words.Why(find(t, "battery-ac")), words.Why(find(t, "battery-ac-swapped")))
}

// The pictures have no room for more.
func TestShortTerminalsAreShort(t *testing.T) {
	for _, at := range places(t) {
		assert.LessOrEqual(t, utf8.RuneCountInString(words.ShortTerminal(check.Terminal(at))), 8, at)
	}
}

func TestEveryMethodIsDescribed(t *testing.T) {
	methods := constants(t, "check", "Method")
	allDiffer(t, "method", methods, func(k string) string { return words.Method(check.Method(k)) })
	allDiffer(t, "method's use", methods, func(k string) string { return words.MethodHint(check.Method(k)) })
	for _, k := range methods {
		needs := words.MethodNeeds(check.Method(k))
		assert.NotEmpty(t, needs, k)
		allDiffer(t, "need of "+k, needs, func(need string) string { return need })
	}
	assert.Contains(t, strings.Join(words.MethodNeeds(check.VoltAmp), "\n"), "3 to 21 W")
	assert.Contains(t, strings.Join(words.MethodNeeds(check.PeakHold), "\n"), "630 V")
}

// A caution for cold parts must not contradict a reading that is taken hot.
func TestHotPartsAllowAHotReading(t *testing.T) {
	hot := find(t, "hot-exciter")
	require.Equal(t, spec.HotResistance, hot.Measures)
	require.Contains(t, hot.Cautions, check.HotParts)
	assert.Contains(t, words.Caution(check.HotParts), "For a hot reading")
}
