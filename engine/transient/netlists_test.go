package transient_test

import (
	"bytes"
	"encoding/csv"
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
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/transient"
)

var (
	update = flag.Bool("update", false, "run the netlists with ngspice and store what they measure")
	only   = flag.String("only", "", "the netlists to update, by the beginning of their name")
)

const storedFile = "testdata/ngspice.json"

// netlist is one circuit, built for a diode, and what it is measured by.
type netlist struct {
	name           string
	build          func(j transient.Junction) *bench
	model          transient.SpiceModel
	perPeriod      float64 // steps of the circuit simulator
	periods, after float64
	volts          bool // it is a voltage that counts
	instants       []float64
}

func rpms(all ...float64) []float64 { return all }

var models = map[string]transient.SpiceModel{"ideal": nearIdeal, "si": silicon}

// netlists are all circuits that the package is judged by.
func netlists() []netlist {
	var out []netlist
	add := func(perPeriod float64, model string, build func(j transient.Junction) *bench, format string, args ...any) {
		out = append(out, netlist{name: fmt.Sprintf(format, args...), build: build, model: models[model],
			perPeriod: perPeriod, periods: 30, after: 20})
	}
	for _, model := range []string{"ideal", "si"} {
		for _, m := range []string{"A", "B", "C"} {
			for _, rpm := range rpms(700, 800, 1000, 1500, 2000, 3000, 4000, 6000, 8000) {
				add(2000, model, func(j transient.Junction) *bench { return star(machines[m], rpm, j, "") }, "br3_%s_%g_%s", m, rpm, model)
			}
		}
		for _, m := range []string{"S", "T", "R"} {
			for _, kind := range []string{"full", "half"} {
				for _, rpm := range rpms(800, 1000, 1500, 2000, 3000, 6000) {
					add(4000, model, func(j transient.Junction) *bench { return single(coils[m], rpm, j, kind, "") }, "br1_%s_%g_%s_%s", m, rpm, kind, model)
				}
			}
		}
	}
	for _, fault := range []string{"diode_open", "diode_short"} {
		for _, rpm := range rpms(1500, 3000) {
			add(4000, "si", func(j transient.Junction) *bench { return single(coils["S"], rpm, j, "full", fault) }, "br1_S_%g_full_%s", rpm, fault)
		}
	}
	for _, m := range []string{"A", "B"} {
		for _, fault := range []string{"none", "diode_open", "diode_short", "phase_open"} {
			for _, rpm := range rpms(1000, 1500, 3000, 6000) {
				add(2000, "si", func(j transient.Junction) *bench { return star(machines[m], rpm, j, fault) }, "flt3_%s_%g_%s", m, rpm, fault)
			}
		}
		for _, fault := range []string{"none", "branch_open"} {
			for _, rpm := range rpms(1500, 3000) {
				add(2000, "si", func(j transient.Junction) *bench { return delta(machines[m], rpm, j, fault) }, "delta_%s_%g_%s", m, rpm, fault)
			}
		}
	}
	out = append(out, netlist{name: "cdi_c", build: exciter, model: small, perPeriod: 2000, periods: 10, volts: true,
		instants: []float64{0.009999, 0.019998, 0.029997, 0.049995, 0.09999}})
	for _, p := range peaks {
		seconds := 0.8
		if p.period == 0.1 {
			seconds = 1.6
		}
		out = append(out, netlist{
			name:  fmt.Sprintf("peak_C%gu_R%gM_T%gms", p.microfarads, p.megohms, p.period*1e3),
			build: func(j transient.Junction) *bench { return peakHold(p, j) },
			model: small, perPeriod: p.period / 20e-6, periods: seconds / p.period, after: seconds / 2 / p.period, volts: true,
		})
	}
	return out
}

// measures are by the names of the independent netlists.
type measures map[string]float64

// write is the netlist, and what its measures are called.
func (n netlist) write(t testing.TB, way attempt) (text []byte, names map[string]string) {
	b := n.build(transient.Junction{Volts: 1, Ohms: 1})
	run := transient.SpiceRun{
		Options: way.options, Step: 1 / b.hertz / n.perPeriod / way.finer, From: n.after / b.hertz, Until: n.periods / b.hertz,
		Models:   map[transient.Junction]transient.SpiceModel{{Volts: 1, Ohms: 1}: n.model},
		Instants: n.instants,
	}
	names = map[string]string{}
	if n.volts {
		run.Voltages = []transient.Node{b.held}
		for _, kind := range []string{"avg", "max", "min"} {
			names[fmt.Sprintf("v%d_%s", b.held, kind)] = "v" + kind
		}
		for i, at := range n.instants {
			names[fmt.Sprintf("v%d_at%d", b.held, i)] = fmt.Sprintf("v%.0f", at*b.hertz)
		}
	} else {
		run.Currents = append([]transient.Branch{b.sink}, b.phases...)
		for _, kind := range []string{"avg", "rms", "max", "min"} {
			names[fmt.Sprintf("b%d_%s", b.sink, kind)] = "i" + kind
			for i, p := range b.phases {
				names[fmt.Sprintf("b%d_%s", p, kind)] = fmt.Sprintf("i%c_%s", 'a'+i, kind)
			}
		}
	}
	var out bytes.Buffer
	require.NoError(t, b.Spice(&out, n.name, run))
	return out.Bytes(), names
}

var measured = regexp.MustCompile(`(?m)^(\w+)\s*=\s*(\S+)`)

// attempt is a way to run a netlist. The circuit simulator gives up on some, with
// hard diodes above all, and another step often gets through.
type attempt struct {
	finer   float64
	options string
}

const loose = "method=gear reltol=1e-3 abstol=1e-6 vntol=1e-5 itl4=500 gmin=1e-10"

var attempts = []attempt{{1, ""}, {1.37, ""}, {0.73, ""}, {2.1, ""}, {1, loose}, {1.37, loose}, {0.73, loose}, {2.1, loose}}

// ngspice runs a netlist and reads what it measured, nil if it gave up each time.
func ngspice(t testing.TB, n netlist) measures {
	for _, way := range attempts {
		if out := n.run(t, way); out != nil {
			return out
		}
	}
	return nil
}

func (n netlist) run(t testing.TB, way attempt) measures {
	text, names := n.write(t, way)
	file := filepath.Join(t.TempDir(), "circuit.cir")
	require.NoError(t, os.WriteFile(file, text, 0o600))
	said, _ := exec.Command("ngspice", "-b", file).CombinedOutput()
	out := measures{}
	for _, m := range measured.FindAllSubmatch(said, -1) {
		name, wanted := names[string(m[1])]
		value, bad := strconv.ParseFloat(string(m[2]), 64)
		if wanted && bad == nil {
			out[name] = value
		}
	}
	if bytes.Contains(said, []byte("aborted")) || len(out) != len(names) {
		return nil
	}
	out.sinkTakes()
	return out
}

// sinkTakes counts the sink's current as it goes in, not as it is delivered.
func (m measures) sinkTakes() {
	if _, ok := m["iavg"]; ok {
		m["iavg"], m["imax"], m["imin"] = -m["iavg"], -m["imin"], -m["imax"]
	}
}

func stored(t testing.TB) map[string]measures {
	text, err := os.ReadFile(storedFile)
	require.NoError(t, err)
	var out struct {
		Source  string
		Results map[string]measures
	}
	require.NoError(t, json.Unmarshal(text, &out))
	return out.Results
}

func independent(t testing.TB) map[string]measures {
	file, err := os.Open("testdata/independent.csv")
	require.NoError(t, err)
	defer file.Close()
	r := csv.NewReader(file)
	r.Comment = '#'
	rows, err := r.ReadAll()
	require.NoError(t, err)
	out := map[string]measures{}
	for _, row := range rows[1:] {
		if out[row[0]] == nil {
			out[row[0]] = measures{}
		}
		out[row[0]][row[1]], err = strconv.ParseFloat(row[2], 64)
		require.NoError(t, err)
	}
	return out
}

func TestStoredNetlistsAreMadeAnew(t *testing.T) {
	if !*update {
		t.Skip("only with -update")
	}
	var out struct {
		Source  string
		Results map[string]measures
	}
	out.Source = "The netlists that this package writes for the circuits of its tests, run with ngspice 39; made by go test -run Anew -update."
	out.Results = map[string]measures{}
	before := map[string]measures{}
	if *only != "" {
		before = stored(t)
	}
	for _, n := range netlists() {
		result := before[n.name]
		if strings.HasPrefix(n.name, *only) {
			result = ngspice(t, n)
		}
		if result == nil {
			t.Logf("%s: ngspice gave up", n.name)
			continue
		}
		out.Results[n.name] = result
	}
	text, err := json.MarshalIndent(out, "", "\t")
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(storedFile, append(text, '\n'), 0o644))
}

// simulate measures a circuit with this package. The diode is fitted to the
// current that a first run shows.
func simulate(t testing.TB, n netlist, steps float64) measures {
	amps := 10.0
	if n.volts {
		amps = 0.4
	}
	for range 2 {
		b := n.build(transient.FitJunction(n.model.IS, n.model.N, n.model.RS, amps))
		if n.volts {
			return simulateVolts(t, n, b, steps)
		}
		out, peak := simulateAmps(t, n, b, steps)
		if peak < 1e-3 || math.Abs(peak/amps-1) < 0.02 {
			return out
		}
		amps = peak
	}
	out, _ := simulateAmps(t, n, n.build(transient.FitJunction(n.model.IS, n.model.N, n.model.RS, amps)), steps)
	return out
}

func simulateAmps(t testing.TB, n netlist, b *bench, steps float64) (measures, float64) {
	r, err := b.Start(1 / b.hertz / steps)
	require.NoError(t, err)
	require.NoError(t, r.Advance(n.after/b.hertz, nil))
	var sink transient.Mean
	phases := make([]transient.Mean, len(b.phases))
	sink.Begin(-r.State().Amps(b.sink))
	for i, p := range b.phases {
		phases[i].Begin(r.State().Amps(p))
	}
	require.NoError(t, r.Advance(n.periods/b.hertz, func(s *transient.State) {
		sink.Add(-s.Amps(b.sink), s.Dt())
		for i, p := range b.phases {
			phases[i].Add(s.Amps(p), s.Dt())
		}
	}))
	out := measures{"iavg": sink.Mean(), "irms": sink.RMS(), "imax": sink.Max(), "imin": sink.Min()}
	for i := range phases {
		out[fmt.Sprintf("i%c_avg", 'a'+i)] = phases[i].Mean()
		out[fmt.Sprintf("i%c_rms", 'a'+i)] = phases[i].RMS()
	}
	return out, sink.Max()
}

func simulateVolts(t testing.TB, n netlist, b *bench, steps float64) measures {
	r, err := b.Start(min(1/b.hertz/steps, 20e-6))
	require.NoError(t, err)
	out := measures{}
	for _, at := range n.instants {
		require.NoError(t, r.Advance(at, nil))
		out[fmt.Sprintf("v%.0f", at*b.hertz)] = r.State().Volts(b.held)
	}
	if n.instants != nil {
		return out
	}
	require.NoError(t, r.Advance(n.after/b.hertz, nil))
	var held transient.Mean
	held.Begin(r.State().Volts(b.held))
	require.NoError(t, r.Advance(n.periods/b.hertz, func(s *transient.State) { held.Add(s.Volts(b.held), s.Dt()) }))
	return measures{"vavg": held.Mean(), "vmax": held.Max(), "vmin": held.Min()}
}

// bounds by which this package may differ, as shares of the reading.
func (n netlist) bound() float64 {
	switch {
	case n.volts: // a real diode goes on charging below its knee
		return 0.007
	case n.model == nearIdeal:
		return 0.01
	}
	return 0.03
}

func TestAgainstStoredNgspice(t *testing.T) {
	all := stored(t)
	worst := map[string]float64{}
	for _, n := range netlists() {
		want, ok := all[n.name]
		if !assert.True(t, ok, "%s is not stored: run with -update", n.name) {
			continue
		}
		got := simulate(t, n, 64)
		for name, value := range got {
			size := sizeOf(want, name)
			if spike(name) || size < 0.3 {
				continue // below the speed where it begins to charge
			}
			off := math.Abs(value-want[name]) / size
			key := strings.SplitN(n.name, "_", 2)[0] + fmt.Sprintf(" %g", n.bound())
			worst[key] = max(worst[key], off)
			assert.LessOrEqual(t, off, n.bound(), "%s %s: %g, ngspice %g", n.name, name, value, want[name])
		}
	}
	t.Logf("largest differences by kind and bound: %v", worst)
}

// spike tells that a measure is a single sample where currents jump, of which two
// runs of ngspice can make 16 % of the peak (see the independent netlists).
func spike(measure string) bool { return measure == "imin" }

// sizeOf is what a difference is a share of: for a mean or least current the root
// mean square or peak, which do not pass through zero.
func sizeOf(m measures, name string) float64 {
	if strings.HasSuffix(name, "_avg") {
		return m[strings.TrimSuffix(name, "avg")+"rms"]
	}
	return math.Abs(m[name])
}

func TestStoredNgspiceAgainstIndependentNetlists(t *testing.T) {
	all, theirs := stored(t), independent(t)
	compared, worst := 0, 0.0
	for name, want := range theirs {
		ours, ok := all[name]
		if !assert.True(t, ok, "%s is not stored", name) {
			continue
		}
		for measure, value := range want {
			mine, ok := ours[measure]
			size := sizeOf(want, measure)
			if !ok || spike(measure) || !(size > 0.3) {
				continue
			}
			compared++
			off := math.Abs(mine-value) / size
			worst = max(worst, off)
			assert.LessOrEqual(t, off, 0.01, "%s %s: %g, independent %g", name, measure, mine, value)
		}
	}
	require.Greater(t, compared, 300)
	t.Logf("%d figures compared, %.2f %% at most apart", compared, 100*worst)
}

// A dozen netlists are run where ngspice is installed, so that neither the stored
// figures nor the writer of netlists goes stale.
func TestStoredNgspiceAgainstALiveRun(t *testing.T) {
	if _, err := exec.LookPath("ngspice"); err != nil {
		t.Skip("ngspice is not installed: no netlist was run, the stored figures stand alone")
	}
	all := stored(t)
	live := []string{"br3_A_1000_si", "br3_B_3000_ideal", "br3_C_1500_ideal", "br1_S_1500_full_si", "br1_T_3000_half_si", "br1_S_1000_half_ideal",
		"flt3_A_1500_diode_open", "flt3_B_3000_phase_open", "delta_A_1500_branch_open", "delta_B_3000_none", "cdi_c", "peak_C0.1u_R1M_T10ms"}
	ran := 0
	for _, n := range netlists() {
		if !slices.Contains(live, n.name) {
			continue
		}
		result := ngspice(t, n)
		require.NotNil(t, result, "%s: ngspice gave up", n.name)
		ran++
		for name, value := range result {
			assert.InDelta(t, all[n.name][name], value, 0.002*sizeOf(all[n.name], name)+1e-5, "%s %s", n.name, name)
		}
	}
	require.Equal(t, len(live), ran)
}
