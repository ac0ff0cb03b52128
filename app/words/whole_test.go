package words_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/meter"
)

// inOrder asserts that parts stand in steps of their own, one after the other.
func inOrder(t *testing.T, id check.ID, parts ...string) {
	t.Helper()
	steps := words.Steps(find(t, id), meter.Cheap())
	last := -1
	for _, p := range parts {
		at := slices.IndexFunc(steps, func(s string) bool { return strings.Contains(s, p) })
		assert.Greater(t, at, last, "%s: %q", id, p)
		last = at
	}
}

// Clips go on before the engine starts and come off after it has stopped, and
// somebody else holds the throttle.
func TestNobodyReachesIntoARunningEngine(t *testing.T) {
	wholeChecks(func(c check.Check) {
		if c.Engine <= check.Cranking {
			return
		}
		inOrder(t, c.ID, "Outdoors", "Red on", "before the engine starts", "Start it.", "Stop the engine first")
		all := strings.Join(words.Steps(c, meter.Cheap()), "\n")
		assert.Equal(t, c.Engine != check.Idling, strings.Contains(all, "helper holds"), c.ID)
	})
}

func TestWhoeverCranksIsNotTheOneWhoProbes(t *testing.T) {
	wholeChecks(func(c check.Check) {
		if c.Engine != check.Cranking || c.ID == "exciter-cranking" {
			return
		}
		all := strings.Join(words.Steps(c, meter.Cheap()), "\n")
		assert.Contains(t, all, "The helper cranks", c.ID)
		assert.Contains(t, c.Needs, check.Helper, c.ID)
		if c.Instrument == check.Multimeter {
			assert.Contains(t, all, "hands off", c.ID)
		}
	})
}

func TestASparkIsLookedAtSafely(t *testing.T) {
	sparks := 0
	wholeChecks(func(c check.Check) {
		if c.Instrument != check.Eyes || c.Engine != check.Cranking {
			return
		}
		sparks++
		inOrder(t, c.ID, "no smell of fuel", "insulated pliers", "Never let plug or lead hang free", "helper cranks", "Yes:")
		all := strings.Join(words.Steps(c, meter.Cheap()), "\n")
		assert.Contains(t, all, "bare engine metal", c.ID)
		assert.Contains(t, all, "far from", c.ID)
	})
	assert.Equal(t, 5, sparks)
}

func TestALookSaysWhatIsAYes(t *testing.T) {
	wholeChecks(func(c check.Check) {
		if c.Instrument != check.Eyes {
			return
		}
		all := strings.Join(words.Steps(c, meter.Cheap()), "\n")
		assert.Contains(t, all, "Look for ", c.ID)
		assert.Contains(t, all, "Yes: ", c.ID)
		assert.Contains(t, all, "No: ", c.ID)
		assert.True(t, strings.HasSuffix(words.CheckQuestion(c), "?"), c.ID)
		assert.Equal(t, "none", words.Jacks(c), c.ID)
		assert.Equal(t, "eyes only", words.Dial(c, meter.Cheap(), meter.Range{}), c.ID)
	})
}

// What the starter draws through a meter in series destroys it, and so does the
// battery through a lead left in the 10 A socket.
func TestTheMeterInSeriesIsGuarded(t *testing.T) {
	inOrder(t, "key-off-current", "Never crank or turn the key on", "minus clamp, never the plus one, and lift it off", "10 A socket", "Red on the clamp that came off battery minus", "clamp back on", "back in VΩ")
	c := find(t, "key-off-current")
	assert.Equal(t, "COM · 10 A", words.Jacks(c))
	for _, m := range meter.Bundled() {
		r, ok := c.Dial(m)
		require.True(t, ok, m.ID)
		assert.True(t, strings.HasPrefix(words.Dial(c, m, r), "A= "), "%q", words.Dial(c, m, r))
	}
	assert.Equal(t, "A=", words.Dial(c, meter.Cheap(), meter.Range{}), "a meter without the range")
	assert.Contains(t, words.Trap(check.WrongSocket), "10 A for current", "the trap must not forbid the socket that this check needs")
}

func TestWhereInAWholeMachine(t *testing.T) {
	for id, want := range map[check.ID]string{
		"battery-rest": "together, stopped", "battery-lamp": "together, key on", "battery-cranking": "together, cranking",
		"battery-idle": "together, idling", "battery-5000": "together, 5000 rpm", "charge-ac-1-2": "apart, 3000 rpm",
		"pickup-cranking": "apart, cranking", "kill-wire": "apart, key on", "box-ground": "stopped", "plug-cap": "stopped",
		"plug-burnt": "apart, stopped", "spark": "together, cranking", "spark-warm": "together, cranking, warm",
	} {
		assert.Equal(t, want, words.Where(find(t, id)), id)
	}
}

// Under the flywheel nobody reaches the core: its metal is met at the engine.
func TestPointsAreNamedAsTheyAreMet(t *testing.T) {
	for id, want := range map[check.ID]string{
		"charge-core-1": "bare metal of the stator core", "charge-ac-1-core": "bare engine metal", "pickup-core": "bare engine metal",
		"coil-primary": "bare engine metal", "plug-leak": "its thread",
	} {
		c := find(t, id)
		assert.Equal(t, want, words.TerminalIn(c, c.Black), id)
	}
	lead := find(t, "coil-secondary")
	assert.Equal(t, words.Terminal(check.SparkLead), words.TerminalIn(lead, lead.Red))
	limb := find(t, "plug-cap")
	assert.NotEqual(t, words.Terminal(check.SparkLead), words.TerminalIn(limb, limb.Red), "the cap is off the lead")
}
