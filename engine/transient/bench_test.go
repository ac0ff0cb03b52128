package transient_test

import (
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"coilbook/engine/transient"
)

// wholeMachine has some 25 nodes in three parts: a three-phase charging winding
// with a bridge, a thyristor regulator and a battery, an ignition box with its
// coil, and a lighting coil on its own.
func wholeMachine() (c *transient.Circuit, battery transient.Branch) {
	c = &transient.Circuit{}
	battery = charging(c)
	ignition(c)
	lighting(c)
	return c, battery
}

func charging(c *transient.Circuit) transient.Branch {
	j := transient.Junction{Volts: 0.8, Ohms: 0.01}
	neutral, plus, post, load, minus := c.Node("n"), c.Node("plus"), c.Node("post"), c.Node("load"), c.Node("minus")
	for i, name := range []string{"a", "b", "c"} {
		end, lead := c.Node(name), c.Node("lead "+name)
		c.Winding(end, neutral, sineOf(35, 300, -float64(i)/3), 0.3, 0.3e-3)
		c.Resistor(end, lead, 0.01)
		c.Diode(lead, plus, j)
		c.Diode(minus, lead, j)
		c.Thyristor(lead, minus, j, func(s *transient.State) bool { return s.Volts(post) > 14.4 })
	}
	c.Resistor(minus, transient.Ground, 0.005)
	c.Resistor(plus, post, 0.02)
	battery := c.Supply(post, transient.Ground, transient.Constant(12.8), 0.03)
	c.Capacitor(post, transient.Ground, 1e-3, 12.8)
	c.Resistor(post, load, 0.02)
	c.Resistor(load, transient.Ground, 3)
	c.Resistor(post, transient.Ground, 10e6)
	return battery
}

func ignition(c *transient.Circuit) {
	j := transient.Junction{Volts: 0.7, Ohms: 0.05}
	one, two, store, primary, spark, gap := c.Node("exciter"), c.Node("box"), c.Node("store"), c.Node("primary"), c.Node("spark"), c.Node("gap")
	c.Winding(one, transient.Ground, sineOf(200, 300, 0), 300, 0.2)
	c.Resistor(one, two, 0.1)
	c.Diode(two, store, j)
	c.Diode(transient.Ground, two, j)
	c.Capacitor(store, primary, 1e-6, 0)
	c.Thyristor(store, transient.Ground, j, func(s *transient.State) bool { return math.Mod(s.Time()*50, 1) > 0.95 })
	c.Coupled(primary, transient.Ground, spark, transient.Ground, 0.5, 1e-3, 3000, 5, 0.98)
	c.Resistor(spark, gap, 5000)
	c.Resistor(gap, transient.Ground, 1e6)
	c.Capacitor(gap, transient.Ground, 50e-12, 0)
}

func lighting(c *transient.Circuit) {
	j := transient.Junction{Volts: 0.8, Ohms: 0.02}
	coil, lead, lamp, meter, held := c.Node("light"), c.Node("light lead"), c.Node("lamp"), c.Node("meter"), c.Node("held")
	c.Winding(coil, transient.Ground, sineOf(25, 300, 0.1), 0.4, 0.6e-3)
	c.Resistor(coil, lead, 0.02)
	c.Resistor(lead, lamp, 0.02)
	c.Resistor(lamp, transient.Ground, 4)
	c.Thyristor(lead, transient.Ground, j, func(s *transient.State) bool { return s.Volts(lamp) > 18 })
	c.Resistor(lead, meter, 0.1)
	c.Diode(meter, held, transient.Junction{Volts: 0.6, Ohms: 1})
	c.Capacitor(held, transient.Ground, 1e-6, 0)
	c.Resistor(held, transient.Ground, 1e6)
}

// BenchmarkStep is one step of the whole machine, all events counted in.
func BenchmarkStep(b *testing.B) {
	c, _ := wholeMachine()
	b.ReportMetric(float64(len(c.Nodes())), "nodes")
	benchmarkSteps(b, c, 300)
}

// BenchmarkStepOfABridge is one of a three-phase bridge alone.
func BenchmarkStepOfABridge(b *testing.B) {
	bench := star(machines["A"], 3000, transient.Junction{Volts: 0.8, Ohms: 0.02}, "")
	benchmarkSteps(b, &bench.Circuit, bench.hertz)
}

func benchmarkSteps(b *testing.B, c *transient.Circuit, hertz float64) {
	h := 1 / hertz / 64
	r, err := c.Start(h)
	require.NoError(b, err)
	require.NoError(b, r.Advance(0.2, nil))
	b.ReportAllocs()
	b.ResetTimer()
	if err := r.Advance(0.2+h*float64(b.N), nil); err != nil {
		b.Fatal(err)
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/1e3/(h*float64(b.N)), "ms/machine_s")
}

var analysis = regexp.MustCompile(`Total analysis time \(seconds\) = (\S+)`)

// BenchmarkAgainstNgspice runs the star with a silicon bridge for 30 periods in
// both. ngspice has the time that itself reports, without its start. Errors are of
// the mean current into the sink against ngspice with steps five times as fine; this package's contains its straight-line diode.
func BenchmarkAgainstNgspice(b *testing.B) {
	if _, err := exec.LookPath("ngspice"); err != nil {
		b.Skip("ngspice is not installed: nothing to compare with")
	}
	n := netlistNamed(b, "br3_A_3000_si")
	reference, _ := timed(b, n, attempt{5, ""})
	ways := []struct {
		name string
		way  attempt
	}{
		{"usual", attempt{1, ""}},
		{"96_steps", attempt{96 / n.perPeriod, ""}}, // as exact as this package, about
		{"64_steps", attempt{64 / n.perPeriod, "method=gear"}},
	}
	for _, w := range ways {
		theirs, theirTime := timed(b, n, w.way)
		b.Run(w.name, func(b *testing.B) {
			own := 0.0
			for range b.N {
				own = thirtyPeriods(b, n)
			}
			b.ReportMetric(theirTime.Seconds()/b.Elapsed().Seconds()*float64(b.N), "x_faster_than_ngspice")
			b.ReportMetric(100*math.Abs(own/reference-1), "%_own_error")
			b.ReportMetric(100*math.Abs(theirs/reference-1), "%_ngspice_error")
		})
	}
}

func netlistNamed(b *testing.B, name string) netlist {
	for _, n := range netlists() {
		if n.name == name {
			return n
		}
	}
	b.Fatal("no netlist ", name)
	return netlist{}
}

// thirtyPeriods sets up and measures, all that ngspice does but its reading.
func thirtyPeriods(b *testing.B, n netlist) float64 {
	m, _ := simulateAmps(b, n, n.build(transient.FitJunction(n.model.IS, n.model.N, n.model.RS, 66)), 64)
	return m["iavg"]
}

func timed(b *testing.B, n netlist, way attempt) (amps float64, took time.Duration) {
	text, names := n.write(b, way)
	file := filepath.Join(b.TempDir(), "circuit.cir")
	require.NoError(b, os.WriteFile(file, text, 0o600))
	said, err := exec.Command("ngspice", "-b", file).CombinedOutput()
	require.NoError(b, err)
	for _, m := range measured.FindAllSubmatch(said, -1) {
		if names[string(m[1])] == "iavg" {
			amps, _ = strconv.ParseFloat(string(m[2]), 64)
		}
	}
	seconds, err := strconv.ParseFloat(string(analysis.FindSubmatch(said)[1]), 64)
	require.NoError(b, err)
	return -amps, time.Duration(seconds * 1e9)
}
