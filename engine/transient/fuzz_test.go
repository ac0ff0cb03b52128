package transient_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"coilbook/engine/transient"
)

// dice turns bytes into choices.
type dice struct{ data []byte }

func (d *dice) roll() int {
	if len(d.data) == 0 {
		return 0
	}
	b := d.data[0]
	d.data = d.data[1:]
	return int(b)
}

// size is a value over many decades, now and then an impossible one.
func (d *dice) size(decades, from float64) float64 {
	n := d.roll()
	switch n {
	case 251:
		return 0
	case 252:
		return -1
	case 253:
		return math.NaN()
	case 254:
		return math.Inf(1)
	}
	return math.Pow(10, from+decades*float64(n)/250)
}

func (d *dice) source() transient.Source {
	switch d.roll() % 4 {
	case 0:
		return transient.Constant(d.size(4, -1))
	case 1:
		return transient.Sine{Volts: d.size(4, -1), Hertz: d.size(3, 1)}
	case 2:
		return transient.Pulse{Volts: d.size(4, -1), Width: d.size(3, -5), Period: d.size(3, -4)}
	}
	volts := float64(d.roll())
	return transient.Func(func(t float64) float64 { return volts * math.Cos(1e3*t) })
}

func (d *dice) circuit() (*transient.Circuit, int) {
	c := &transient.Circuit{}
	nodes := []transient.Node{transient.Ground, c.Node("a"), c.Node("b"), c.Node("c"), c.Node("d")}
	node := func() transient.Node { return nodes[d.roll()%len(nodes)] }
	branches := 0
	for len(d.data) > 0 && branches < 20 {
		a, b := node(), node()
		branches++
		switch d.roll() % 8 {
		case 0:
			c.Resistor(a, b, d.size(13, -6))
		case 1:
			c.Capacitor(a, b, d.size(9, -10), d.size(4, -1))
		case 2:
			c.Winding(a, b, d.source(), d.size(9, -6), d.size(7, -6))
		case 3:
			c.Supply(a, b, d.source(), d.size(9, -6))
		case 4:
			c.Coupled(a, b, node(), node(), d.size(4, -2), d.size(5, -4), d.size(4, -2), d.size(5, -4), 0.99)
			branches++
		case 5:
			c.Diode(a, b, transient.Junction{Volts: d.size(3, -2), Ohms: d.size(4, -4)})
		case 6:
			above := float64(d.roll()) / 10
			c.Thyristor(a, b, transient.Junction{Volts: 1, Ohms: d.size(4, -4)}, func(s *transient.State) bool { return s.Volts(b) < above })
		case 7:
			above := float64(d.roll()) / 10
			c.Switch(a, b, d.size(4, -4), func(s *transient.State) bool { return math.Sin(4e3*s.Time()) < above && s.Volts(a) < 20 })
		}
	}
	return c, branches
}

// Whatever the circuit, there is a sentence or there are numbers.
func FuzzCircuit(f *testing.F) {
	f.Add([]byte{1, 0, 2, 1, 200, 100, 100, 100, 1, 2, 5, 150, 80, 2, 0, 1, 80, 100, 2, 0, 0, 120})
	f.Add([]byte{1, 0, 3, 0, 180, 60, 1, 2, 4, 3, 0, 100, 100, 100, 100, 2, 0, 7, 5, 40, 3, 0, 1, 90, 120, 3, 0, 6, 100, 60})
	f.Add([]byte{1, 2, 2, 1, 255, 200, 20, 30, 2, 1, 5, 0, 0, 1, 2, 5, 0, 0, 1, 3, 3, 2, 90, 50, 60, 20})
	f.Fuzz(func(t *testing.T, data []byte) {
		d := &dice{data}
		c, branches := d.circuit()
		r, err := c.Start(5e-5)
		if err != nil {
			requireSentence(t, err)
			return
		}
		err = r.Advance(0.01, func(s *transient.State) { require.Positive(t, s.Dt()) })
		if err != nil {
			requireSentence(t, err)
		} else {
			requireNumbers(t, c, r.State(), branches)
		}
		rest, err := c.AtRest(0.003)
		if err != nil {
			requireSentence(t, err)
			return
		}
		requireNumbers(t, c, rest, branches)
	})
}

func requireSentence(t *testing.T, err error) {
	require.Greater(t, strings.Count(err.Error(), " "), 3, err)
}

func requireNumbers(t *testing.T, c *transient.Circuit, s *transient.State, branches int) {
	for i := range c.Nodes() {
		require.False(t, math.IsNaN(s.Volts(transient.Node(i))))
	}
	for i := range branches {
		require.False(t, math.IsNaN(s.Amps(transient.Branch(i))))
	}
}
