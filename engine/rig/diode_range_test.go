package rig

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/transient"
)

// unplugged is a regulator with one of the faults of its valves, or with two.
type unplugged struct {
	name string
	m    machine.Machine
}

func unpluggedRegulators() []unplugged {
	var out []unplugged
	for _, b := range []machine.Build{
		{Charge: machine.Star, Regulating: machine.Shunt}, {Charge: machine.Star, Regulating: machine.Series},
		{Charge: machine.SinglePhase, Regulating: machine.Shunt}, {Charge: machine.TwoPhase, Regulating: machine.Shunt},
		{Charge: machine.GroundedEnd, Regulating: machine.HalfWave}, {Charge: machine.SinglePhase, Regulating: machine.Series},
	} {
		b.MagnetPoles, b.StatorPoles, b.Volts, b.Ignition, b.Battery, b.Pickups = 12, 12, 12, machine.BatteryFed, machine.AGM, 1
		sound := machine.Typical(b)
		add := func(name string, faults ...machine.Fault) {
			out = append(out, unplugged{fmt.Sprintf("%s %s %s", b.Charge, b.Regulating, name), sound.With(faults...)})
		}
		add("sound")
		add("dead", machine.Fault{Kind: machine.NoCharging})
		add("unbound", machine.Fault{Kind: machine.NoRegulating})
		for at := 1; at <= machine.Sites(machine.DiodeIsOpen, b); at++ {
			one := machine.Fault{Kind: machine.DiodeIsOpen, At: at}
			add(fmt.Sprintf("open %d", at), one)
			add(fmt.Sprintf("shorted %d", at), machine.Fault{Kind: machine.DiodeIsShorted, At: at})
			for next := at + 1; next <= machine.Sites(machine.DiodeIsOpen, b); next++ {
				add(fmt.Sprintf("open %d, shorted %d", at, next), one, machine.Fault{Kind: machine.DiodeIsShorted, At: next})
				add(fmt.Sprintf("shorted %d, open %d", at, next), machine.Fault{Kind: machine.DiodeIsShorted, At: at}, machine.Fault{Kind: machine.DiodeIsOpen, At: next})
				add(fmt.Sprintf("shorted %d and %d", at, next), machine.Fault{Kind: machine.DiodeIsShorted, At: at}, machine.Fault{Kind: machine.DiodeIsShorted, At: next})
			}
		}
	}
	return out
}

func (u unplugged) points() []check.Terminal {
	out := []check.Terminal{check.RegulatorPlus, check.RegulatorBody}
	for lead := 1; lead <= u.m.Build.Charge.Leads(); lead++ {
		out = append(out, check.RegulatorLead(lead))
	}
	return out
}

func (u unplugged) probing(red, black check.Terminal) machine.Probing {
	return machine.Probing{Red: red, Black: black, Function: meter.Diode, State: machine.State{Plug: check.RegulatorApart}}
}

// microvolts is a diode range that counts them.
func microvolts() Instrument {
	in := Exact(meter.Auto6000())
	in.Meter.Ranges = map[meter.Function][]meter.Range{
		meter.Diode: {{Label: "diode", Nominal: 2, Full: 2, Step: 1e-6, Unit: quantity.Volts}},
	}
	return in
}

// The formula takes the way with the fewest junctions; the simulation solves the
// whole machine with a line for each valve's curve. Over regulators, their faults,
// every pair of points both ways, and strong and weak meters they say the same.
func TestDiodeRangesAgree(t *testing.T) {
	compared, open, worst := 0, 0, 0.0
	for i, u := range unpluggedRegulators() {
		in := microvolts()
		in.Meter.Drive.Amps *= []float64{1, 0.4, 1.5}[i%3]
		for _, red := range u.points() {
			for _, black := range u.points() {
				if red == black {
					continue
				}
				what := fmt.Sprintf("%s, %s to %s", u.name, red, black)
				formula := u.m.Shows(u.probing(red, black), in.Meter)
				require.True(t, formula.Known, what)
				d, err := Show(u.m, u.probing(red, black), in, "")
				require.NoError(t, err, what)
				require.Equal(t, formula.Open, d.State == quantity.OverRange, "%s: formula %v, simulation %v", what, formula.Value, d.Texts)
				if formula.Open {
					open++
					continue
				}
				compared++
				worst = max(worst, math.Abs(formula.Value-d.Value))
				assert.InDelta(t, d.Value, formula.Value, 2e-3, what)
			}
		}
	}
	require.Greater(t, compared, 500)
	require.Greater(t, open, 500)
	t.Logf("%d numbers compared, worst %.2f mV apart; %d open lines", compared, 1e3*worst, open)
}

// What a rider sees: each half of a sound regulator one junction, a shorted one next
// to nothing, a broken one an open line; thyristors above, an open line too. 511 mV is
// 520 at 1 mA less 1.7·25.85 mV·ln(1/0.817) at what 2.8 V drive through 2.8 kΩ.
func TestWhatADiodeRangeShows(t *testing.T) {
	shows := func(b machine.Build, id check.ID, faults ...machine.Fault) string {
		k, ok := check.Find(check.Whole(b.Known()), id)
		require.True(t, ok, id)
		d, err := Check(machine.Typical(b).With(faults...), k, Exact(meter.Cheap()), machine.Kit{})
		require.NoError(t, err)
		return d.Typed()
	}
	shunt, series, half := machine.Usual(), machine.Usual(), machine.Usual()
	series.Regulating = machine.Series
	half.Charge, half.Regulating = machine.GroundedEnd, machine.HalfWave
	fault := func(k machine.Kind, at int) machine.Fault { return machine.Fault{Kind: k, At: at} }
	for _, c := range []struct {
		build  machine.Build
		id     check.ID
		faults []machine.Fault
		want   string
	}{
		{shunt, "diode-plus-1", nil, "511"}, {shunt, "diode-ground-3", nil, "511"},
		{shunt, "diode-plus-2", []machine.Fault{fault(machine.DiodeIsOpen, 2)}, "OL"},
		{shunt, "diode-plus-1", []machine.Fault{fault(machine.DiodeIsOpen, 2)}, "511"},
		{shunt, "diode-ground-2", []machine.Fault{fault(machine.DiodeIsOpen, 5)}, "OL"},
		{shunt, "diode-ground-1", []machine.Fault{fault(machine.DiodeIsShorted, 4)}, "0"},
		{shunt, "diode-ground-2", []machine.Fault{fault(machine.NoCharging, 1)}, "511"},
		{series, "diode-plus-1", nil, "OL"}, {series, "diode-ground-1", nil, "511"},
		{series, "diode-plus-3", []machine.Fault{fault(machine.DiodeIsShorted, 3)}, "0"},
		{half, "diode-plus-1", nil, "OL"}, {half, "diode-plus-1", []machine.Fault{fault(machine.DiodeIsShorted, 1)}, "0"},
	} {
		assert.Equal(t, c.want, shows(c.build, c.id, c.faults...), "%s %v %s", c.build.Regulating, c.faults, c.id)
	}
}

// A meter that is held to a plugged regulator shows the battery, and no diode.
func TestADiodeRangeOnALiveMachine(t *testing.T) {
	m := machine.Typical(machine.Usual())
	p := machine.Probing{Red: check.RegulatorPlus, Black: check.RegulatorBody, Function: meter.Diode, State: machine.State{Plug: check.Together}}
	assert.False(t, m.Shows(p, meter.Cheap()).Known)
	d, err := Show(m, p, Exact(meter.Cheap()), "")
	require.NoError(t, err)
	assert.Equal(t, quantity.OverRange, d.State, "12 V are over its top")

	bare := meter.Cheap()
	bare.Ranges = map[meter.Function][]meter.Range{meter.Ohms: bare.Ranges[meter.Ohms]}
	p.Plug = check.RegulatorApart
	assert.False(t, m.Shows(p, bare).Known, "no diode range")
	d, err = Show(m, p, Exact(bare), "")
	require.NoError(t, err)
	assert.True(t, d.Unread)
}

const diodeAnswers = "testdata/ngspice_diodes.json"

// The same netlists in ngspice, whose diodes are exponentials.
func TestDiodeRangesLikeNgspice(t *testing.T) {
	answers := map[string]float64{}
	in := microvolts()
	in.Meter.Ranges[meter.Diode][0].Full = 10 // so that an open line is a number
	ask := func(each func(name string, u unplugged, red, black check.Terminal)) {
		for i, u := range unpluggedRegulators() {
			if i%5 != 0 || u.m.Build.Regulating != machine.Shunt { // a thyristor has no netlist
				continue
			}
			for j, red := range u.points() {
				black := u.points()[(j+1+i%2)%len(u.points())]
				if red != black {
					each(fmt.Sprintf("%s, %s to %s", u.name, red, black), u, red, black)
				}
			}
		}
	}
	if *update {
		ask(func(name string, u unplugged, red, black check.Terminal) {
			answers[name] = diodeInNgspice(t, u, red, black, in)
		})
		text, err := json.MarshalIndent(map[string]any{"source": "ngspice, our netlists at rest", "volts": answers}, "", " ")
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(diodeAnswers, append(text, '\n'), 0o644))
	}
	text, err := os.ReadFile(diodeAnswers)
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(text, &struct {
		Volts *map[string]float64 `json:"volts"`
	}{&answers}))
	n := 0
	ask(func(name string, u unplugged, red, black check.Terminal) {
		want, ok := answers[name]
		require.True(t, ok, name)
		d, err := Show(u.m, u.probing(red, black), in, "")
		require.NoError(t, err)
		formula := u.m.Shows(u.probing(red, black), in.Meter)
		n++
		if formula.Open {
			assert.Greater(t, want, 2.5, name)
			assert.InDelta(t, want, d.Value, 5e-3, name)
			return
		}
		assert.InDelta(t, want, d.Value, 2e-3, name)
		assert.InDelta(t, want, formula.Value, 2e-3, name)
	})
	require.Greater(t, n, 60)
}

func diodeInNgspice(t *testing.T, u unplugged, red, black check.Terminal, in Instrument) float64 {
	r := wired(u.m, machine.State{Plug: check.RegulatorApart}, charging)
	drive := in.Meter.Drive
	r.c.Supply(r.node(red), r.node(black), transient.Constant(float64(drive.Volts)), float64(drive.Ohms()))
	s := r.parts.Regulator.Silicon
	line := touching(s, drive.Amps)
	for _, b := range r.valves {
		r.c.Bend(b, line)
	}
	model := transient.SpiceModel{IS: 1e-3 * math.Exp(-s.Volts/(s.Emission*0.0258649)), N: s.Emission, RS: 1e-4}
	bypass := transient.Junction{Volts: 0, Ohms: max(r.parts.Battery.Ohms/100, wire)}
	file := filepath.Join(t.TempDir(), "diode.cir")
	out, err := os.Create(file)
	require.NoError(t, err)
	a, b := r.node(red), r.node(black)
	require.NoError(t, r.c.Spice(out, u.name, transient.SpiceRun{
		Step: 1e-5, From: 0.01, Until: 0.02, Options: "method=gear reltol=1e-5 abstol=1e-9 itl4=200 rshunt=1e7",
		Models:   map[transient.Junction]transient.SpiceModel{line: model, bypass: batteryBypass},
		Voltages: []transient.Node{a, b},
	}))
	require.NoError(t, out.Close())
	text, err := exec.Command("ngspice", "-b", file).CombinedOutput()
	require.NoError(t, err, "%s", text)
	value := func(n transient.Node) float64 {
		if n == transient.Ground {
			return 0
		}
		m := regexp.MustCompile(fmt.Sprintf(`v%d_avg\s*=\s*(\S+)`, n)).FindSubmatch(text)
		require.NotNil(t, m, "%s", text)
		v, err := strconv.ParseFloat(string(m[1]), 64)
		require.NoError(t, err)
		return v
	}
	return value(a) - value(b)
}
