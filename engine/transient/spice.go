package transient

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
)

// SpiceModel are the parameters of the diode equation: saturation current in A,
// emission coefficient, series resistance in Ω.
type SpiceModel struct{ IS, N, RS float64 }

// SpiceRun is what a netlist asks for: steps of at most Step from 0 until Until,
// measured after From, all in s.
type SpiceRun struct {
	Step, From, Until float64
	// Models has the diode equation for each Junction in the circuit.
	Models map[Junction]SpiceModel
	// Currents and Voltages are measured by average, root mean square, maximum
	// and minimum: branch 3 as b3_avg, b3_rms, b3_max, b3_min, node 2 as v2_avg
	// and so on. Currents count as State.Amps has them.
	Currents []Branch
	Voltages []Node
	// Instants are times at which the Voltages are read, v2_at0 being the first.
	Instants []float64
	// Options are those of the simulator; "" is DefaultSpiceOptions.
	Options string
}

// DefaultSpiceOptions damp what rings and keep errors to some 0.01 %.
const DefaultSpiceOptions = "method=gear reltol=1e-4 abstol=1e-9 itl4=200"

// Spice writes the circuit as a netlist for a general-purpose circuit simulator
// of the SPICE family. Thyristors, switches with a gate and sources given by a
// function have no such form, and are an error.
func (c *Circuit) Spice(w io.Writer, title string, run SpiceRun) error {
	if err := c.check(); err != nil {
		return err
	}
	s := &spice{out: bufio.NewWriter(w), circuit: c, run: run, sensed: map[Branch]bool{}, models: map[SpiceModel]string{}}
	for _, b := range run.Currents {
		if b < 0 || int(b) >= len(c.elements) {
			return fmt.Errorf("branch %d is to be measured, and this circuit has none", b)
		}
		s.sensed[b] = true
	}
	s.line("* %s", strings.Join(strings.Fields(title), " "))
	for n, name := range c.names {
		s.line("* n%d is %s", n, strconv.Quote(name))
	}
	for i := range c.elements {
		if err := s.element(Branch(i)); err != nil {
			return err
		}
	}
	s.control()
	return s.out.Flush()
}

type spice struct {
	out     *bufio.Writer
	circuit *Circuit
	run     SpiceRun
	sensed  map[Branch]bool
	models  map[SpiceModel]string
}

func (s *spice) line(format string, args ...any) { fmt.Fprintf(s.out, format+"\n", args...) }

func nodeText(n Node) string {
	if n == Ground {
		return "0"
	}
	return "n" + strconv.Itoa(int(n))
}

func (s *spice) element(b Branch) error {
	e := &s.circuit.elements[b]
	from, to := nodeText(e.a), nodeText(e.b)
	if e.kind != winding {
		from = s.sense(b, from)
	}
	switch e.kind {
	case resistor, contact:
		if e.kind == contact && e.gate != nil {
			return fmt.Errorf("the %s has a gate, for which a netlist has no form", s.circuit.describe(b))
		}
		if !math.IsInf(e.ohms, 1) {
			s.line("R%d %s %s %.10g", b, from, to, max(e.ohms, LeastOhms))
		}
	case capacitor:
		s.line("C%d %s %s %.10g IC=%.10g", b, from, to, e.farads, e.volts)
	case coupled:
		s.series(b, from, to, e.ohms, e.henries)
		if e.mate < b {
			s.line("K%d L%d L%d %.10g", b, e.mate, b, e.k)
		}
	case diode:
		m, ok := s.run.Models[e.junction]
		if !ok {
			return fmt.Errorf("the %s has no model for its knee of %g V and slope of %g Ω", s.circuit.describe(b), e.junction.Volts, e.junction.Ohms)
		}
		s.line("D%d %s %s %s", b, from, to, s.model(m))
	case thyristor:
		return fmt.Errorf("the %s has no form in a netlist", s.circuit.describe(b))
	case winding:
		return s.winding(b, e)
	}
	return nil
}

// sense puts a source of no voltage before an element, for its current.
func (s *spice) sense(b Branch, from string) string {
	if !s.sensed[b] {
		return from
	}
	inner := fmt.Sprintf("s%d", b)
	s.line("Vs%d %s %s 0", b, from, inner)
	return inner
}

// series is a resistance and an inductance, the former left out when zero.
func (s *spice) series(b Branch, from, to string, ohms, henries float64) {
	if ohms > 0 {
		inner := fmt.Sprintf("r%d", b)
		s.line("R%d %s %s %.10g", b, from, inner, ohms)
		from = inner
	}
	s.line("L%d %s %s %.10g IC=0", b, from, to, henries)
}

func (s *spice) winding(b Branch, e *element) error {
	text, err := s.source(b, e)
	if err != nil {
		return err
	}
	out := nodeText(e.a)
	if s.sensed[b] {
		out = fmt.Sprintf("s%d", b)
		s.line("Vs%d %s %s 0", b, out, nodeText(e.a))
	}
	plus := out
	if e.ohms > 0 || e.henries > 0 {
		plus = fmt.Sprintf("e%d", b)
	}
	s.line("V%d %s %s %s", b, plus, nodeText(e.b), text)
	switch {
	case e.henries > 0:
		s.series(b, plus, out, e.ohms, e.henries)
	case e.ohms > 0:
		s.line("R%d %s %s %.10g", b, plus, out, e.ohms)
	}
	return nil
}

// edge is the share of a pulse's width in which it rises and falls.
const edge = 1e-3

func (s *spice) source(b Branch, e *element) (string, error) {
	switch v := e.emf.(type) {
	case Constant:
		return fmt.Sprintf("DC %.10g", float64(v)), nil
	case Sine:
		return fmt.Sprintf("SIN(0 %.10g %.10g 0 0 %.10g)", v.Volts, v.Hertz, v.Phase*180/math.Pi), nil
	case Pulse:
		period := v.Period
		if period == 0 {
			period = 2*s.run.Until + v.Width
		}
		slope := edge * v.Width
		return fmt.Sprintf("PULSE(0 %.10g %.10g %.10g %.10g %.10g %.10g)", v.Volts, v.Delay, slope, slope, v.Width-slope, period), nil
	}
	return "", fmt.Errorf("the %s has a source given by a function, for which a netlist has no form", s.circuit.describe(b))
}

func (s *spice) model(m SpiceModel) string {
	if name, ok := s.models[m]; ok {
		return name
	}
	name := fmt.Sprintf("D%d", len(s.models))
	s.models[m] = name
	s.line(".model %s D(IS=%.10g N=%.10g RS=%.10g)", name, m.IS, m.N, m.RS)
	return name
}

func (s *spice) control() {
	r := &s.run
	options := r.Options
	if options == "" {
		options = DefaultSpiceOptions
	}
	s.line(".options %s", options)
	s.line(".tran %.10g %.10g %.10g %.10g UIC", r.Step, r.Until, r.From, r.Step)
	for _, b := range r.Currents {
		s.measure(fmt.Sprintf("b%d", b), fmt.Sprintf("i(Vs%d)", b))
	}
	for _, n := range r.Voltages {
		s.measure(fmt.Sprintf("v%d", n), fmt.Sprintf("v(%s)", nodeText(n)))
		for i, t := range r.Instants {
			s.line(".meas tran v%d_at%d FIND v(%s) AT=%.10g", n, i, nodeText(n), t)
		}
	}
	s.line(".end")
}

func (s *spice) measure(name, what string) {
	for _, kind := range []string{"AVG", "RMS", "MAX", "MIN"} {
		s.line(".meas tran %s_%s %s %s", name, strings.ToLower(kind), kind, what)
	}
}
