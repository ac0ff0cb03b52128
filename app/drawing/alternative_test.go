package drawing

import (
	"maps"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
)

// planned finds a check of the default build by its id.
func planned(t *testing.T, b check.Build, id check.ID) check.Check {
	t.Helper()
	c, ok := check.Find(everyPlanned(b), id)
	require.True(t, ok, id)
	return c
}

// Both probes are told apart in words and in shapes, whichever way round.
func TestSwappedProbesChangeTheAlternative(t *testing.T) {
	everyCheck(t, func(t *testing.T, c check.Check, p Picture) {
		if c.Instrument != check.Multimeter || c.Red == check.OtherProbe {
			return
		}
		swapped := c
		swapped.Red, swapped.Black = c.Black, c.Red
		other := ForCheck(swapped, check.DefaultBuild(), plainLabel, English())
		assert.NotEqual(t, p.Label, other.Label)
		assert.NotContains(t, p.Label, ": ,", "a terminal has no name")
	})
}

func TestAlternativesSayWhatIsTouchedAndTheState(t *testing.T) {
	three, one := check.DefaultBuild(), check.Build{StatorPoles: 1, ChargeLeads: 1}
	const ring = "battery, fuse, lit bulb, known resistor and winding in one ring"
	for id, want := range map[check.ID]string{
		"battery-dc":           "red: battery +, black: battery −, V⎓",
		"battery-ac":           "red: battery +, black: battery −, V~",
		"battery-ac-swapped":   "red: battery −, black: battery +, probes swapped, V~",
		"known-resistor":       "red: resistor leg 1, black: resistor leg 2, Ω",
		"volt-amp-known-3-1":   "red: resistor leg 1, black: resistor leg 2, plug apart, " + ring + ", V⎓",
		"volt-amp-winding-3-1": "red: 3, black: 1, plug apart, " + ring + ", probes inside the clips, V⎓",
		"hot-exciter":          "red: exciter, black: bare core metal, plug apart, hot, Ω",
		"hot-pickup":           "red: pickup 1, black: pickup 2, plug apart, hot, Ω",
		"exciter-peak":         "red: exciter, black: bare metal, plug together, starter turns, adapter, V⎓",
		"pickup-peak":          "red: pickup 1, black: pickup 2, plug together, starter turns, adapter, V⎓",
		"box-peak":             "red: box output, black: bare metal, plug together, starter turns, adapter, V⎓",
		"battery-rest":         "red: battery +, black: battery −, plug together, V⎓",
		"battery-lamp":         "red: battery +, black: battery −, plug together, lamp on, V⎓",
		"battery-5000":         "red: battery +, black: battery −, plug together, 5000 rpm, V⎓",
		"supply-key":           "red: key out, black: battery −, plug together, key on, V⎓",
		"key-off-current":      "red: clamp −, black: battery −, plug together, key off, never crank, A⎓",
		"charge-ac-1-2":        "red: 1, black: 2, plug apart, 3000 rpm, V~",
		"pickup-core":          "red: pickup 1, black: bare metal, plug apart, Ω",
		"coil-primary":         "red: coil pin, black: bare metal, Ω",
		"diode-plus-2":         "red: reg 2, black: reg +, regulator unplugged, diode",
		"diode-ground-3":       "red: reg body, black: reg 3, regulator unplugged, diode",
		"fuse":                 "fuse, eyes only",
		"plug-burnt":           "plug apart, eyes only",
		"spark":                "spark plug: bare metal, starter turns, eyes only",
		"spark-bare-lead":      "bare lead: bare metal, starter turns, eyes only",
		"spark-kill-off":       "spark plug: bare metal, starter turns, kill wire off, eyes only",
		"spark-warm":           "good plug: bare metal, starter turns, hot, eyes only",
	} {
		assert.Equal(t, want, ForCheck(planned(t, three, id), three, plainLabel, English()).Label, id)
	}
	c := planned(t, one, "volt-amp-winding-1-core")
	assert.Equal(t, "red: 1, black: bare core metal, plug apart, "+ring+", probes inside the clips, V⎓", ForCheck(c, one, plainLabel, English()).Label)
}

// texts lists what is written in a picture.
func texts(p Picture) []string {
	var out []string
	for _, l := range leaves(p.Shapes, whole, 0) {
		if text, ok := l.shape.(Text); ok {
			out = append(out, text.Text)
		}
	}
	return out
}

func TestPicturesNameTheirParts(t *testing.T) {
	b := check.DefaultBuild()
	for id, want := range map[check.ID][]string{
		"battery-dc":           {"battery", "12 V"},
		"known-resistor":       {"known resistor"},
		"volt-amp-known-1-2":   {"battery", "fuse", "bulb", "known resistor", "1", "2"},
		"volt-amp-winding-2-3": {"battery", "fuse", "bulb", "known resistor", "2", "3"},
		"hot-charge-pair-1-2":  {"hot"},
		"hot-pickup":           {"hot", "pickup"},
		"exciter-peak":         {"adapter", "starter turns", "plug together", "bare metal"},
		"box-peak":             {"adapter", "ignition box", "ignition coil", "bare metal"},
		"battery-cranking":     {"battery", "starter turns"},
		"drop-plus":            {"regulator", "battery", "5000 rpm"},
		"supply-key":           {"battery", "fuse", "key on"},
		"key-off-current":      {"battery", "key off, never crank", "10 A"},
		"plug-drop-2":          {"plug together", "2", "5000 rpm"},
		"kill-wire":            {"ignition box", "key on", "bare metal"},
		"coil-secondary":       {"ignition coil", "bare metal"},
		"plug-cap":             {"plug cap"},
		"plug-leak":            {"spark plug"},
		"fuse":                 {"fuse", "yes", "no", "eyes only"},
		"spark-kill-off":       {"spark plug", "kill wire off", "starter turns"},
	} {
		assert.Subset(t, texts(ForCheck(planned(t, b, id), b, plainLabel, English())), want, id)
	}
	cold := ForCheck(planned(t, b, "exciter"), b, plainLabel, English())
	assert.NotContains(t, strings.Join(texts(cold), " "), "hot")
}

// The plus post stays where it is when the probes change places.
func TestTheBatteryStaysWhenProbesAreSwapped(t *testing.T) {
	b := check.DefaultBuild()
	usual := ForCheck(planned(t, b, "battery-ac"), b, plainLabel, English())
	swapped := ForCheck(planned(t, b, "battery-ac-swapped"), b, plainLabel, English())
	assert.True(t, maps.Equal(usual.Anchors, swapped.Anchors))
	assert.NotEqual(t, usual.Shapes, swapped.Shapes)
	for _, l := range leaves(usual.Shapes, whole, 0) {
		if upright := l.box.y1-l.box.y0 > 2*(l.box.x1-l.box.x0); upright && class(l.shape) == "ink" && l.box.x1 < meterX {
			assert.InDelta(t, usual.Anchors[check.BatteryPlus].X, (l.box.x0+l.box.x1)/2, 1e-9, "the sign with the upright stroke")
			return
		}
	}
	t.Error("no plus sign")
}

// The probes of the volt-amp method touch the leads between winding and clips:
// contact resistance of a clip would be read along otherwise.
func TestProbesOnTheWindingAreInsideTheClips(t *testing.T) {
	b := check.DefaultBuild()
	p := ForCheck(planned(t, b, "volt-amp-winding-1-2"), b, plainLabel, English())
	upper, lower := p.Anchors["charge-1"], p.Anchors["charge-2"]
	resistor := p.Anchors[check.ResistorB]
	var clips []Point
	for _, s := range p.Shapes {
		if g, ok := s.(Group); ok && len(g.Shapes) == 3 && class(g.Shapes[1]) == "iron" && class(g.Shapes[2]) == "casing" {
			clips = append(clips, g.Move)
		}
	}
	require.Len(t, clips, 2)
	low, high := clips[0].Y, clips[1].Y
	assert.Less(t, resistor.Y, high)
	assert.Less(t, high, upper.Y, "the clip is farther out than the probe")
	assert.Greater(t, low, lower.Y, "the clip is farther out than the probe")
}
