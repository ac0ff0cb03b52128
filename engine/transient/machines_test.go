package transient_test

import (
	"math"

	"coilbook/engine/transient"
)

// The machines of the netlists: 12 poles, so that 10 rpm are 1 Hz, and 0.02 V per
// rpm between lines, root mean square.
const (
	rpmPerHertz = 10
	lineVolts   = 0.02
	sinkVolts   = 14
)

type machine struct{ ohms, henries float64 }

var (
	machines = map[string]machine{"A": {0.3, 0.3e-3}, "B": {0.3, 1.5e-3}, "C": {0.001, 1.5e-3}}
	coils    = map[string]machine{"S": {0.6, 0.6e-3}, "T": {0.6, 3e-3}, "R": {0.6, 1e-9}}
)

// diodeModel are the parameters of the diode equation.
var (
	nearIdeal = transient.SpiceModel{IS: 1e-12, N: 0.05, RS: 1e-3}
	silicon   = transient.SpiceModel{IS: 10e-9, N: 1.6, RS: 12e-3}
	small     = transient.SpiceModel{IS: 1e-9, N: 1.8, RS: 0.1}
)

// bench is a circuit with the places at which it is measured.
type bench struct {
	transient.Circuit
	hertz    float64
	sink     transient.Branch
	phases   []transient.Branch
	held     transient.Node
	junction transient.Junction

	emfs        []transient.Sine
	bridgeParts []bridgePart
}

type bridgePart struct {
	between across
	branch  transient.Branch
}

func (b *bench) addSink(plus transient.Node) {
	b.sink = b.Supply(plus, transient.Ground, transient.Constant(sinkVolts), 0)
}

func sineOf(volts, hertz, turns float64) transient.Sine {
	return transient.Sine{Volts: volts, Hertz: hertz, Phase: 2 * math.Pi * turns}
}

// bridge puts two diodes at each terminal; fault is at the upper one of the first.
func (b *bench) bridge(terminals []transient.Node, plus transient.Node, fault string) {
	names := b.Nodes()
	note := func(from, to transient.Node, branch transient.Branch) {
		b.bridgeParts = append(b.bridgeParts, bridgePart{across{names[from], names[to]}, branch})
	}
	for i, t := range terminals {
		switch {
		case i == 0 && fault == "diode_open":
		case i == 0 && fault == "diode_short":
			note(t, plus, b.Resistor(t, plus, 1e-3))
		default:
			note(t, plus, b.Diode(t, plus, b.junction))
		}
		note(transient.Ground, t, b.Diode(transient.Ground, t, b.junction))
	}
}

// star is br3 and flt3.
func star(m machine, rpm float64, j transient.Junction, fault string) *bench {
	return starOn(&bench{}, m, rpm, j, fault, []int{0, 1, 2})
}

// starOn gives the phases their places in the sequence.
func starOn(b *bench, m machine, rpm float64, j transient.Junction, fault string, places []int) *bench {
	b.hertz, b.junction = rpm/rpmPerHertz, j
	neutral, plus := b.Node("n"), b.Node("p")
	peak := lineVolts * rpm * math.Sqrt(2./3)
	var terminals []transient.Node
	for i, name := range []string{"a", "b", "c"} {
		t := b.Node(name)
		end := t
		if i == 0 && fault == "phase_open" {
			end = b.Node("ax")
			b.Resistor(end, t, 1e9)
		}
		emf := sineOf(peak, b.hertz, -float64(places[i])/3)
		b.emfs = append(b.emfs, emf)
		b.phases = append(b.phases, b.Winding(end, neutral, emf, m.ohms, m.henries))
		terminals = append(terminals, t)
	}
	b.Resistor(neutral, transient.Ground, 10e6)
	b.bridge(terminals, plus, fault)
	b.addSink(plus)
	return b
}

// delta has three times the impedance per branch.
func delta(m machine, rpm float64, j transient.Junction, fault string) *bench {
	b := &bench{hertz: rpm / rpmPerHertz, junction: j}
	terminals := []transient.Node{b.Node("a"), b.Node("b"), b.Node("c")}
	plus := b.Node("p")
	peak := lineVolts * rpm * math.Sqrt2
	for i := range terminals {
		if i == 0 && fault == "branch_open" {
			continue
		}
		b.phases = append(b.phases, b.Winding(terminals[i], terminals[(i+1)%3], sineOf(peak, b.hertz, -float64(i)/3), 3*m.ohms, 3*m.henries))
	}
	for _, t := range terminals {
		b.Resistor(t, transient.Ground, 10e6)
	}
	b.bridge(terminals, plus, "")
	b.addSink(plus)
	return b
}

// single is br1: one coil behind a whole bridge or a single diode.
func single(m machine, rpm float64, j transient.Junction, kind, fault string) *bench {
	b := &bench{hertz: rpm / rpmPerHertz, junction: j}
	one, other, plus := b.Node("a"), b.Node("b"), b.Node("p")
	b.phases = []transient.Branch{b.Winding(one, other, sineOf(lineVolts*rpm*math.Sqrt2, b.hertz, 0), m.ohms, m.henries)}
	if kind == "half" {
		b.Resistor(other, transient.Ground, 1e-3)
		b.Diode(one, plus, j)
	} else {
		b.Resistor(other, transient.Ground, 10e6)
		b.bridge([]transient.Node{one, other}, plus, fault)
	}
	b.addSink(plus)
	return b
}

// peak is a row of the peak-hold adapter: it starts near where it ends.
type peak struct{ microfarads, megohms, period, volts float64 }

var peaks = []peak{
	{0.1, 10, 0.01, 197.122}, {0.1, 10, 0.02, 194.861}, {0.1, 1, 0.1, 66.7948}, {0.1, 1, 0.01, 177.893}, {0.1, 1, 0.02, 158.855},
	{1, 10, 0.01, 198.306}, {1, 1, 0.1, 126.194}, {1, 1, 0.01, 188.935}, {1, 1, 0.02, 179.416},
}

// peakHold is a pulse train of 200 V and 100 µs behind 500 Ω into a diode and a
// capacitor that a meter empties.
func peakHold(p peak, j transient.Junction) *bench {
	b := &bench{junction: j, hertz: 1 / p.period}
	s, k := b.Node("s"), b.Node("k")
	b.Supply(s, transient.Ground, transient.Pulse{Volts: 200, Width: 100e-6, Period: p.period, Delay: 1e-6}, 500)
	b.Diode(s, k, j)
	b.Capacitor(k, transient.Ground, p.microfarads*1e-6, p.volts)
	b.Resistor(k, transient.Ground, p.megohms*1e6)
	b.held = k
	return b
}

// exciter charges the capacitor of an ignition box half-wave.
func exciter(j transient.Junction) *bench {
	b := &bench{junction: j, hertz: 100}
	one, k := b.Node("b"), b.Node("k")
	b.Winding(one, transient.Ground, transient.Sine{Volts: 120, Hertz: 100}, 500, 0.1)
	b.Diode(one, k, j)
	b.Capacitor(k, transient.Ground, 1e-6, 0)
	b.Resistor(k, transient.Ground, 100e6)
	b.held = k
	return b
}
