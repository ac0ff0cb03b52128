package diagnose_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

// sixDiodes are the readings of a regulator's valves, uppers first. What is odd was
// read twice: nobody names a part by one touch of the probes.
func sixDiodes(shown ...string) []diagnose.Evidence {
	var out []diagnose.Evidence
	for i, s := range shown {
		id := check.ID(fmt.Sprintf("diode-plus-%d", i+1))
		if i >= 3 {
			id = check.ID(fmt.Sprintf("diode-ground-%d", i-2))
		}
		e := diagnose.Evidence{Check: id, Doubt: 0.01}
		switch s {
		case "OL":
			e.State = quantity.OverRange
			out = append(out, e)
		case "short":
			e.Value = 0.001
			out = append(out, e)
		default:
			e.Value = 0.52
		}
		out = append(out, e)
	}
	return out
}

func chance(m *diagnose.Model, ev []diagnose.Evidence, id fault.ID) float64 {
	sum := 0.0
	for _, s := range m.Weigh(ev).Faults {
		if s.Fault.ID == id || s.Fault.With == machine.Kind(id) {
			sum += s.Probability
		}
	}
	return sum
}

// Six readings tell broken, shorted and sound apart. Open lines on all upper ones
// are the kind of regulator and no fault; on one of them, a broken diode.
func TestSixDiodes(t *testing.T) {
	m := ready()[fault.WontCharge]
	const open, shorted = fault.ID("diode-open"), fault.ID("diode-shorted")
	before := map[fault.ID]float64{open: chance(m, nil, open), shorted: chance(m, nil, shorted)}
	for _, c := range []struct {
		name                string
		shown               []string
		opensMost, opensMin float64
		shortMost, shortMin float64
	}{
		{"sound", []string{".52", ".52", ".52", ".52", ".52", ".52"}, before[open] / 5, 0, before[shorted] / 5, 0},
		{"thyristors above", []string{"OL", "OL", "OL", ".52", ".52", ".52"}, before[open], 0, before[shorted] / 5, 0},
		{"one above is broken", []string{".52", "OL", ".52", ".52", ".52", ".52"}, 1, 0.7, before[shorted] / 2, 0},
		{"one below is broken", []string{".52", ".52", ".52", ".52", "OL", ".52"}, 1, 0.7, before[shorted] / 2, 0},
		{"one above is shorted", []string{"short", ".52", ".52", ".52", ".52", ".52"}, before[open], 0, 1, 0.9},
		{"one below is shorted, thyristors above", []string{"OL", "OL", "OL", ".52", ".52", "short"}, before[open], 0, 1, 0.9},
	} {
		ev := sixDiodes(c.shown...)
		gotOpen, gotShorted := chance(m, ev, open), chance(m, ev, shorted)
		assert.LessOrEqual(t, gotOpen, c.opensMost, "%s: open", c.name)
		assert.GreaterOrEqual(t, gotOpen, c.opensMin, "%s: open", c.name)
		assert.LessOrEqual(t, gotShorted, c.shortMost, "%s: shorted", c.name)
		assert.GreaterOrEqual(t, gotShorted, c.shortMin, "%s: shorted", c.name)
	}
}

// A dead regulator whose valves are sound is told from one of whose diodes is
// shorted: both keep the battery from being charged.
func TestSoundDiodesLeaveTheDeadRegulator(t *testing.T) {
	m := ready()[fault.WontCharge]
	flat := []diagnose.Evidence{volts("battery-5000", 12.4), volts("battery-rest", 12.5), volts("drop-plus", 0)}
	sound := append(flat, sixDiodes(".52", ".52", ".52", ".52", ".52", ".52")...)
	shorted := append(flat, sixDiodes(".52", "short", ".52", ".52", ".52", ".52")...)
	const dead = fault.ID("regulator-dead")
	assert.Greater(t, chance(m, sound, dead), 3*chance(m, shorted, dead))
	assert.Greater(t, chance(m, shorted, "diode-shorted"), 0.9)
	assert.Less(t, chance(m, sound, "diode-shorted"), 0.02)
}

// The row is looked ahead to as a whole: the first of it tells what all of them
// would, and no reading that is like its sisters is asked for once more.
func TestTheRowIsLookedAheadToAsAWhole(t *testing.T) {
	m := ready()[fault.WontCharge]
	bits := func(ev []diagnose.Evidence) map[check.ID]diagnose.Choice {
		out := map[check.ID]diagnose.Choice{}
		var done []check.ID
		for _, e := range ev {
			done = append(done, e.Check)
		}
		for _, c := range m.Next(m.Weigh(ev), ev, done, nil) {
			if strings.HasPrefix(string(c.Check.ID), "diode-") {
				assert.False(t, c.Again, c.Check.ID)
				out[c.Check.ID] = c
			}
		}
		return out
	}
	first := bits(nil)
	require.Len(t, first, 6)
	for id, c := range first {
		assert.InDelta(t, first["diode-plus-1"].Bits, c.Bits, 1e-12, id)
		assert.InDelta(t, 0.3+check.SidePanel.Minutes()+check.RegulatorParted.Minutes(), c.Minutes, 1e-9, "%s: its own minutes", id)
	}
	last := bits(sixDiodes(".52", ".52", ".52", ".52", ".52"))
	require.Len(t, last, 1)
	assert.Less(t, last["diode-ground-3"].Bits, first["diode-ground-3"].Bits/2, "five that are sound leave little to tell")
	assert.InDelta(t, 0.3, last["diode-ground-3"].Minutes, 1e-9)
}

// A meter without a diode range is never asked for one.
func TestWithoutADiodeRange(t *testing.T) {
	bare := meter.Cheap()
	ranges := map[meter.Function][]meter.Range{}
	for f, r := range bare.Ranges {
		if f != meter.Diode {
			ranges[f] = r
		}
	}
	bare.Ranges = ranges
	faults, err := fault.Bundled()
	require.NoError(t, err)
	q := diagnose.Question{Symptom: fault.WontCharge, Build: check.DefaultBuild(), Meter: bare, Kit: machine.Kit{}}
	c := diagnose.Begin(diagnose.New(q, faults).Ready(), nil)
	for _, one := range c.Choices() {
		assert.NotEqual(t, meter.Diode, one.Check.Function, one.Check.ID)
	}
	assert.NotEmpty(t, c.Choices())
}
