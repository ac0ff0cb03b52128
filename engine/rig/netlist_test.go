package rig

import (
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/transient"
)

// The circuits of whole charging systems, wired from the machine's description
// with the regulator's thyristors left out, are written as netlists and solved by
// ngspice, a general-purpose circuit simulator. Its answers are stored, so that
// they are compared with where it is not installed, and a few are run anew where
// it is.

var update = flag.Bool("update", false, "run all netlists through ngspice and store what it says")

const answersFile = "testdata/ngspice.json"

// charged is what a charging system does: means and roots of mean squares in A
// and V.
type charged struct {
	Amps  float64 `json:"amps"`  // out of the regulator
	Volts float64 `json:"volts"` // at its posts
	Phase float64 `json:"phase"` // root mean square of phase 1
}

type simulated struct {
	name   string
	m      machine.Machine
	engine check.Engine
	ideal  bool
}

// nearIdeal is the diode of ngspice's that comes nearest to an ideal one, and the
// line that stands for it here.
var (
	nearIdeal      = transient.SpiceModel{IS: 1e-12, N: 0.05, RS: 1e-3}
	silicon        = transient.SpiceModel{IS: 10e-9, N: 1.6, RS: 12e-3}
	nearIdealKnee  = machine.Junction{Volts: 0.04, Ohms: 1e-3}
	batteryBypass  = transient.SpiceModel{IS: 1e-3, N: 0.02, RS: 1e-4}
	within, inside = 0.01, 0.03 // near-ideal and silicon diodes
)

func simulatedGrid() []simulated {
	var out []simulated
	connections := []machine.Connection{machine.Star, machine.Delta, machine.SinglePhase, machine.TwoPhase, machine.GroundedEnd}
	faults := []machine.Fault{
		{}, {Kind: machine.PhaseOpen, At: 1}, {Kind: machine.DiodeIsOpen, At: 1}, {Kind: machine.DiodeIsShorted, At: 1},
		{Kind: machine.PhaseShorted, At: 1, Size: 0.2}, {Kind: machine.PhaseToCore, At: 1, Size: 0.4}, {Kind: machine.FeedWire, Size: 0.5},
	}
	for _, connection := range connections {
		b := machine.Usual()
		b.Charge = connection
		if connection == machine.GroundedEnd {
			b.Regulating = machine.HalfWave
		}
		for _, f := range faults {
			if f.Kind != "" && !f.Suits(b) {
				continue
			}
			for _, e := range []check.Engine{check.Idling, check.At3000, check.At5000} {
				for _, ideal := range []bool{false, true} {
					m := machine.Typical(b).With(machine.Fault{Kind: machine.NoRegulating})
					if f.Kind != "" {
						m = m.With(f)
					}
					kind := "silicon"
					if ideal {
						m.Regulator.Junction, kind = nearIdealKnee, "near-ideal"
					}
					out = append(out, simulated{fmt.Sprintf("%s %s %v rpm %s", connection, f.Kind, machine.Running(e), kind), m, e, ideal})
				}
			}
		}
	}
	return out
}

func (c simulated) rig() *Rig {
	return wired(c.m, machine.State{Engine: c.engine, Plug: check.Together}, charging)
}

const settled, measured = 0.2, 0.1

func (c simulated) run(t testing.TB) charged {
	r := c.rig()
	run, err := r.c.Start(r.step())
	require.NoError(t, err)
	require.NoError(t, run.Advance(settled, nil))
	var amps, volts, phase transient.Mean
	plus, minus := r.node(check.BatteryPlus), r.node(check.BatteryMinus)
	s := run.State()
	amps.Begin(s.Amps(r.feed))
	volts.Begin(s.Between(plus, minus))
	phase.Begin(s.Amps(r.phases[0]))
	require.NoError(t, run.Advance(settled+measured, func(s *transient.State) {
		amps.Add(s.Amps(r.feed), s.Dt())
		volts.Add(s.Between(plus, minus), s.Dt())
		phase.Add(s.Amps(r.phases[0]), s.Dt())
	}))
	return charged{amps.Mean(), volts.Mean(), phase.RMS()}
}

// ngspice runs the netlist of a case.
func (c simulated) ngspice(t testing.TB) charged {
	r := c.rig()
	model := silicon
	if c.ideal {
		model = nearIdeal
	}
	j := r.junction()
	bypass := transient.Junction{Volts: 0, Ohms: max(r.parts.Battery.Ohms/100, wire)}
	file := filepath.Join(t.TempDir(), "charging.cir")
	out, err := os.Create(file)
	require.NoError(t, err)
	plus, minus := r.node(check.BatteryPlus), r.node(check.BatteryMinus)
	err = r.c.Spice(out, c.name, transient.SpiceRun{
		Step: 1 / (600 * float64(r.made.Build.MagnetPoles) / 120 * machine.Running(c.engine)), From: settled, Until: settled + measured,
		Options:  "method=gear reltol=1e-5 abstol=1e-9 itl4=200 rshunt=1e7", // floating windings need a way to ground
		Models:   map[transient.Junction]transient.SpiceModel{j: model, bypass: batteryBypass},
		Currents: []transient.Branch{r.feed, r.phases[0]}, Voltages: []transient.Node{plus, minus},
	})
	require.NoError(t, err)
	require.NoError(t, out.Close())
	text, err := exec.Command("ngspice", "-b", file).CombinedOutput()
	require.NoError(t, err, "%s", text)
	value := func(name string) float64 {
		m := regexp.MustCompile(name + `\s*=\s*(\S+)`).FindSubmatch(text)
		require.NotNil(t, m, "%s: no %s in\n%s", c.name, name, text)
		v, err := strconv.ParseFloat(string(m[1]), 64)
		require.NoError(t, err)
		return v
	}
	return charged{
		Amps:  value(fmt.Sprintf("b%d_avg", r.feed)),
		Volts: value(fmt.Sprintf("v%d_avg", plus)) - value(fmt.Sprintf("v%d_avg", minus)),
		Phase: value(fmt.Sprintf("b%d_rms", r.phases[0])),
	}
}

// close is within a share; of what is next to nothing near the speed where charging
// begins, within that share of 1.5 A.
func (a charged) close(b charged, share float64) bool {
	near := func(x, y, least float64) bool { return math.Abs(x-y) <= share*max(math.Abs(y), least) }
	return near(a.Amps, b.Amps, 1.5) && near(a.Volts, b.Volts, 1) && near(a.Phase, b.Phase, 1.5)
}

func storedAnswers(t testing.TB) map[string]charged {
	t.Helper()
	text, err := os.ReadFile(answersFile)
	require.NoError(t, err)
	var out struct {
		Source  string             `json:"source"`
		Answers map[string]charged `json:"answers"`
	}
	require.NoError(t, json.Unmarshal(text, &out))
	return out.Answers
}

func TestChargingLikeNgspice(t *testing.T) {
	grid := simulatedGrid()
	if *update {
		store(t, grid)
	}
	answers := storedAnswers(t)
	require.Len(t, answers, len(grid))
	worst := map[bool]float64{}
	for _, c := range grid {
		want, ok := answers[c.name]
		require.True(t, ok, c.name)
		got, bound := c.run(t), within
		if !c.ideal {
			// A straight line stands for the diode over the currents that it carries.
			j := transient.FitJunction(silicon.IS, silicon.N, silicon.RS, max(2*want.Phase, 1.5*want.Amps, 0.5))
			c.m.Regulator.Junction = machine.Junction(j)
			got, bound = c.run(t), inside
		}
		assert.True(t, got.close(want, bound), "%s: %+v, ngspice %+v", c.name, got, want)
		worst[c.ideal] = max(worst[c.ideal], math.Abs(got.Amps-want.Amps)/max(math.Abs(want.Amps), 1))
	}
	t.Logf("%d charging systems, worst charging current off by %.2f %% (near-ideal diodes), %.2f %% (silicon)", len(grid), 100*worst[true], 100*worst[false])
}

// TestNgspiceStillSaysSo runs a few of the netlists anew.
func TestNgspiceStillSaysSo(t *testing.T) {
	if _, err := exec.LookPath("ngspice"); err != nil {
		t.Skip("ngspice is not installed: the stored answers of TestChargingLikeNgspice are not run anew")
	}
	answers := storedAnswers(t)
	grid := simulatedGrid()
	for i := 0; i < len(grid); i += len(grid)/8 + 1 {
		c := grid[i]
		assert.True(t, c.ngspice(t).close(answers[c.name], 0.001), c.name)
	}
}

func store(t *testing.T, grid []simulated) {
	answers := map[string]charged{}
	for _, c := range grid {
		answers[c.name] = c.ngspice(t)
	}
	text, err := json.MarshalIndent(struct {
		Source  string             `json:"source"`
		Answers map[string]charged `json:"answers"`
	}{"ngspice 39, our own netlists of the charging systems named (TestChargingLikeNgspice -update)", answers}, "", "\t")
	require.NoError(t, err)
	require.NoError(t, os.MkdirAll("testdata", 0o755))
	require.NoError(t, os.WriteFile(answersFile, append(text, '\n'), 0o644))
}

func TestGridNamesAreOwn(t *testing.T) {
	var names []string
	for _, c := range simulatedGrid() {
		names = append(names, c.name)
	}
	slices.Sort(names)
	require.Len(t, slices.Compact(slices.Clone(names)), len(names))
}
