package words

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/meter"
)

func TestEveryColourHasAName(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range check.Colours() {
		name := Colour(c)
		assert.False(t, name == "" || seen[name], c)
		seen[name] = true
	}
	assert.Equal(t, "yellow with red stripe", WireColour(check.Wire{Base: check.Yellow, Stripe: check.Red}))
	assert.Equal(t, "light blue", WireColour(check.Wire{Base: check.LightBlue}))
	assert.Equal(t, "Charge lead 2: Stripe", AskOfLead("charge-2", AskStripe))
}

// In every check of every build with leads in colour, each probed lead of the plug is
// named with its own colour, once, and nothing else of the steps has changed.
func TestStepsNameTheLeadsByTheirColours(t *testing.T) {
	b := check.DefaultBuild()
	b.ChargeLeads = 4
	wires := map[check.Terminal]check.Wire{}
	for i, lead := range check.PlugLeads(b) {
		wires[lead] = check.Wire{Base: check.Colours()[i], Stripe: check.Colours()[i+2]}
	}
	named := 0
	for _, c := range append(check.Plan(b, check.Bench, check.Methods(b)...), check.Whole(b)...) {
		plain, coloured := Steps(c, meter.Cheap()), StepsIn(c, meter.Cheap(), wires)
		require.Len(t, coloured, len(plain), c.ID)
		all := strings.Join(coloured, "\n")
		for _, lead := range []check.Terminal{c.Red, c.Black} {
			w, known := wires[lead]
			if !known || !strings.Contains(strings.Join(plain, "\n"), TerminalIn(c, lead)) {
				continue
			}
			in := InColour(TerminalIn(c, lead), w)
			assert.Equal(t, 1, strings.Count(all, in), "%s: %s in\n%s", c.ID, in, all)
			all = strings.Replace(all, in, TerminalIn(c, lead), 1)
			named++
		}
		assert.Equal(t, strings.Join(plain, "\n"), all, c.ID)
		assert.Equal(t, plain, StepsIn(c, meter.Cheap(), nil))
	}
	assert.Greater(t, named, 30)
}

func TestTheRegulatorsSideKeepsItsOwnColour(t *testing.T) {
	c, ok := check.Find(check.Whole(check.DefaultBuild()), "plug-drop-1")
	require.True(t, ok)
	all := strings.Join(StepsIn(c, meter.Cheap(), map[check.Terminal]check.Wire{"charge-1": {Base: check.Yellow}}), " ")
	assert.Contains(t, all, "charge lead 1 (yellow)")
	assert.NotContains(t, all, "regulator's side of charge lead 1 (yellow)")
	side := "black on the regulator's side of charge lead 1"
	assert.Equal(t, -1, placeOf("charge lead 12", "charge lead 1"))
	assert.Equal(t, -1, placeOf(side, "charge lead 1"))
	assert.Equal(t, len(side)+len(", red on "), placeOf(side+", red on charge lead 1.", "charge lead 1"))
}

// A point beside a lead is named with the lead's own words in every language.
func TestWhatIsBesideALeadIsNotTheLead(t *testing.T) {
	lead, side := Terminal(check.Charge(1)), Terminal(check.RegulatorLead(1))
	assert.Equal(t, -1, placeOf(say("Red on %s, black on %s.", side, side), lead))
	step := say("Red on %s, black on %s.", side, lead)
	assert.Equal(t, strings.LastIndex(step, lead), placeOf(step, lead))
}
