//go:build ignore

// This program writes tables.go. It integrates each rectifier with a permanent-
// magnet generator before it and a fixed voltage behind it, to the steady state,
// in normalised units: peak phase emf 1, phase impedance 1, angle for time.
// Between two switchings all currents have the one time constant, so each is a
// sinusoid, a constant and one exponential: nothing is stepped but the search for
// the next switching.
package main

import (
	"bytes"
	"fmt"
	"go/format"
	"math"
	"math/cmplx"
	"os"
)

const (
	acrossNodes  = 33       // of the square root of the distance to cut-in, 0..1
	bendNode     = 8        // the one on the bend
	shareNodes   = 17       // of q/(1+q), 0..1
	unbounded    = 1 - 1e-4 // stands for q/(1+q) where q is without bound
	shortedRatio = 32.      // of q, as far as the tables of shorted diodes go
	perTurn      = 360      // looks for a switching in one period
)

// terminal is a corner of the rectifier: it cannot rise above high nor fall below
// low. One that is shorted to a rail is always held.
type terminal struct {
	emf       complex128 // the imaginary part of emf·exp(jθ), behind the impedance
	low, high float64
	held      bool
	feeds     bool // what is held here is the sink's positive pole
	bare      bool // no impedance: the common end of two branches
}

type state int

const (
	off state = iota
	up
	down
	fixed
)

// rectifier is the circuit, its state and what one period adds up.
type rectifier struct {
	t      []terminal
	ohms   float64 // of each phase
	react  float64
	s      []state
	i      []float64 // out of each terminal, at the last switching
	from   float64   // angle of the last switching
	drive  []complex128
	push   []float64
	mean   float64
	square float64
	idles  bool // for a while
}

func (r *rectifier) conducting() (n int) {
	for _, s := range r.s {
		if s != off {
			n++
		}
	}
	return n
}

func (r *rectifier) voltage(k int) float64 {
	switch r.s[k] {
	case up:
		return r.t[k].high
	case down:
		return r.t[k].low
	}
	return r.t[k].high
}

func bareOf(t []terminal) int {
	for k := range t {
		if t[k].bare {
			return k
		}
	}
	return -1
}

// star is the voltage of the common point: a phasor and a constant.
func (r *rectifier) star() (complex128, float64) {
	if b := bareOf(r.t); b >= 0 && r.s[b] != off {
		return 0, r.voltage(b)
	}
	var e complex128
	var v, n float64
	for k := range r.t {
		if r.s[k] != off && !r.t[k].bare {
			e -= r.t[k].emf
			v += r.voltage(k)
			n++
		}
	}
	if n == 0 {
		return 0, 0
	}
	return e / complex(n, 0), v / n
}

func at(p complex128, angle float64) float64 { return imag(p * cmplx.Exp(complex(0, angle))) }

// prepare works out what drives each current in the present state.
func (r *rectifier) prepare() {
	e, v := r.star()
	for k := range r.t {
		r.drive[k], r.push[k] = 0, 0
		if r.s[k] != off && !r.t[k].bare && r.conducting() > 1 {
			r.drive[k] = (r.t[k].emf + e) / complex(r.ohms, r.react)
			r.push[k] = v - r.voltage(k)
		}
	}
}

// current is that out of terminal k at an angle not before the last switching.
func (r *rectifier) current(k int, angle float64) float64 {
	if r.t[k].bare {
		sum := 0.0
		for m := range r.t {
			if m != k {
				sum -= r.current(m, angle)
			}
		}
		return sum
	}
	if r.s[k] == off {
		return 0
	}
	fade := math.Exp(-(angle - r.from) * r.ohms / r.react)
	rest := -math.Expm1(-(angle - r.from) * r.ohms / r.react)
	return at(r.drive[k], angle) + fade*(r.i[k]-at(r.drive[k], r.from)) + rest*r.push[k]/r.ohms
}

const hair = 1e-12

// wrong says whether the state has stopped to hold at an angle.
func (r *rectifier) wrong(angle float64) bool {
	if r.conducting() == 0 {
		_, _, over := r.pair(angle)
		return over > hair
	}
	e, v := r.star()
	for k, s := range r.s {
		switch s {
		case up:
			if r.current(k, angle) < -hair {
				return true
			}
		case down:
			if r.current(k, angle) > hair {
				return true
			}
		case off:
			w := at(r.emf(k)+e, angle) + v
			if w > r.t[k].high+hair || w < r.t[k].low-hair {
				return true
			}
		}
	}
	return false
}

func (r *rectifier) emf(k int) complex128 {
	if r.t[k].bare {
		return 0
	}
	return r.t[k].emf
}

// pair finds the two idle terminals between which a current starts first.
func (r *rectifier) pair(angle float64) (high, low int, over float64) {
	over = math.Inf(-1)
	for k := range r.t {
		for m := range r.t {
			if k == m {
				continue
			}
			if by := at(r.emf(k)-r.emf(m), angle) - r.t[k].high + r.t[m].low; by > over {
				high, low, over = k, m, by
			}
		}
	}
	return high, low, over
}

// settle switches what must switch at an angle, until the state holds.
func (r *rectifier) settle(angle float64) {
	now := make([]float64, len(r.t))
	for k := range r.t {
		now[k] = r.current(k, angle)
	}
	for k, s := range r.s {
		if s == up && now[k] < 0 || s == down && now[k] > 0 {
			r.s[k], now[k] = off, 0
		}
	}
	copy(r.i, now)
	r.from = angle
	for range 10 {
		if !r.switchOne(angle) {
			break
		}
	}
	r.idles = r.idles || r.conducting() == 0
	r.prepare()
}

func (r *rectifier) switchOne(angle float64) bool {
	if r.alone() {
		for k := range r.s {
			if r.s[k] != fixed {
				r.s[k], r.i[k] = off, 0
			}
		}
	}
	if r.conducting() == 0 {
		high, low, over := r.pair(angle)
		if over <= 0 {
			return false
		}
		r.s[high], r.s[low] = up, down
		return true
	}
	e, v := r.star()
	worst, who, to := 0.0, -1, off
	for k, s := range r.s {
		if s != off {
			continue
		}
		w := at(r.emf(k)+e, angle) + v
		if by := w - r.t[k].high; by > worst {
			worst, who, to = by, k, up
		}
		if by := r.t[k].low - w; by > worst {
			worst, who, to = by, k, down
		}
	}
	if who < 0 {
		return false
	}
	r.s[who] = to
	return true
}

// alone says that a single terminal is left conducting, which cannot be unless it
// is held.
func (r *rectifier) alone() bool {
	n, held := 0, false
	for _, s := range r.s {
		if s != off {
			n++
			held = held || s == fixed
		}
	}
	return n == 1 && !held
}

// turn runs one period.
func (r *rectifier) turn() {
	r.mean, r.square, r.idles = 0, 0, false
	r.from = 0
	r.settle(0)
	for n := range perTurn {
		from, to := 2*math.Pi*float64(n)/perTurn, 2*math.Pi*float64(n+1)/perTurn
		for range 20 {
			if !r.wrong(to) {
				break
			}
			when := r.crossing(from, to)
			r.add(from, when)
			r.settle(when)
			from = when
		}
		r.add(from, to)
	}
	for k := range r.t {
		r.i[k] = r.current(k, 2*math.Pi)
	}
	r.mean /= 2 * math.Pi
	r.square /= 2 * math.Pi
	r.from = 0
}

func (r *rectifier) crossing(a, b float64) float64 {
	for range 44 {
		if middle := (a + b) / 2; r.wrong(middle) {
			b = middle
		} else {
			a = middle
		}
	}
	return b
}

// add adds what flows into the sink, by Gauss's rule of three points.
func (r *rectifier) add(a, b float64) {
	half := (b - a) / 2
	for _, g := range [3][2]float64{{-math.Sqrt(0.6), 5.0 / 9}, {0, 8.0 / 9}, {math.Sqrt(0.6), 5.0 / 9}} {
		i := r.out((a+b)/2 + half*g[0])
		r.mean += half * g[1] * i
		r.square += half * g[1] * i * i
	}
}

func (r *rectifier) out(angle float64) (sum float64) {
	for k, s := range r.s {
		if s == up || s == fixed && r.t[k].feeds {
			sum += r.current(k, angle)
		}
	}
	return sum
}

// steady turns until a period ends as it began; every third turn leaps ahead as if
// what is left faded by a constant factor.
func (r *rectifier) steady() {
	last := append([]float64(nil), r.i...)
	var step []float64
	for n := range 400 {
		r.turn()
		next := make([]float64, len(r.i))
		biggest, dot, square := 0.0, 0.0, 0.0
		for k := range r.i {
			next[k] = r.i[k] - last[k]
			biggest = math.Max(biggest, math.Abs(next[k]))
			if step != nil {
				dot += next[k] * step[k]
				square += step[k] * step[k]
			}
		}
		if biggest < 1e-9 {
			return
		}
		if fade := dot / square; n%3 == 2 && square > 0 && fade > 0 && fade < 1 {
			for k := range r.i {
				r.i[k] += next[k] * fade / (1 - fade)
				if r.s[k] == off || r.s[k] == up && r.i[k] < 0 || r.s[k] == down && r.i[k] > 0 {
					r.i[k] = 0
				}
			}
			step = nil
		} else {
			step = next
		}
		copy(last, r.i)
	}
	fmt.Fprintln(os.Stderr, "not steady", r.ohms, r.react, r.t)
}

// arrangement says how to build a rectifier for a sink voltage and a drop in the
// loop that a shorted diode closes.
type arrangement struct {
	name     string
	says     string
	cutIn    float64                          // the sink voltage above which no current can flow
	bends    func(x, drop float64) []terminal // the circuit that stops to idle at the bend, if any
	shorted  bool                             // the true cut-in lies below where a shorted loop takes long
	drop     float64                          // in the loop that a shorted diode closes, over the sink voltage
	scale    float64                          // impedance of a phase
	assemble func(x, drop float64) []terminal
}

var none = math.Inf(1)

func phase(k int) complex128 { return cmplx.Exp(complex(0, -2*math.Pi/3*float64(k))) }

func star(x, _ float64) []terminal {
	return []terminal{{emf: phase(0), high: x}, {emf: phase(1), high: x}, {emf: phase(2), high: x}}
}

func starOpen(x, _ float64) []terminal {
	t := star(x, 0)
	t[0].high = none
	return t
}

func starShorted(x, drop float64) []terminal {
	t := star(x+drop, 0)
	t[0] = terminal{emf: phase(0), low: x, high: x, held: true, feeds: true}
	return t
}

// vee is a delta without one branch. Its emfs are those of the branches.
func vee(x, _ float64) []terminal {
	return []terminal{{emf: phase(0), high: x}, {emf: -phase(1), high: x}, {high: x, bare: true}}
}

func single(x, _ float64) []terminal {
	return []terminal{{emf: 0.5, high: x}, {emf: -0.5, high: x}}
}

func half(x, _ float64) []terminal {
	return []terminal{{emf: 0.5, low: -none, high: x}, {emf: -0.5, held: true}}
}

func singleShorted(x, drop float64) []terminal {
	return []terminal{{emf: 0.5, low: x, high: x, held: true, feeds: true}, {emf: -0.5, high: x + drop}}
}

var arrangements = []arrangement{
	{"starTable", "a star and a three-phase bridge", math.Sqrt(3), star, false, 0, 1, star},
	{"starOpenTable", "a star and a bridge with one diode open", math.Sqrt(3), star, false, 0, 1, starOpen},
	{"starShortedTable", "a star and a bridge with one diode shorted, no drop", math.Sqrt(3), nil, true, 0, 1, starShorted},
	{"starShortedDropTable", "the same, a drop of a tenth of the sink voltage", math.Sqrt(3), nil, true, 0.1, 1, starShorted},
	{"veeTable", "a delta without one branch", 1, vee, false, 0, 1, vee},
	{"singleTable", "one coil and a full-wave bridge", 1, nil, false, 0, 0.5, single},
	{"halfTable", "one coil and one diode", 1, nil, false, 0, 0.5, half},
	{"singleShortedTable", "one coil and a bridge with one diode shorted, no drop", 1, nil, true, 0, 0.5, singleShorted},
	{"singleShortedDropTable", "the same, a drop of a tenth of the sink voltage", 1, nil, true, 0.1, 0.5, singleShorted},
}

// shareOf is q/(1+q) at a node. For shorted diodes, where little resistance counts
// most, nodes lie the closer the less of it there is.
func (a arrangement) shareOf(n int) float64 {
	along := float64(n) / (shareNodes - 1)
	if !a.shorted {
		return along
	}
	rest := 1 - along*(1-1/math.Sqrt(1+shortedRatio))
	return 1 - rest*rest
}

func (a arrangement) build(t []terminal, angle float64) *rectifier {
	r := &rectifier{t: t, ohms: a.scale * math.Cos(angle), react: a.scale * math.Sin(angle)}
	n := len(t)
	r.s, r.i, r.drive, r.push = make([]state, n), make([]float64, n), make([]complex128, n), make([]float64, n)
	for k := range t {
		if t[k].held {
			r.s[k] = fixed
		}
	}
	return r
}

// damping is the angle of the impedance and the drop in the shorted loop. The share
// counts that drop as resistance; where it alone is more than the share allows, the
// resistance is next to nothing.
func (a arrangement) damping(x, share float64) (angle, drop float64) {
	share = math.Min(math.Max(share, 1e-7), unbounded)
	q := share / (1 - share)
	drop = a.drop * x
	angle = math.Atan(q) + math.Asin(drop*math.Sin(math.Atan(q)))
	return math.Min(angle, math.Atan(unbounded/(1-unbounded))), drop
}

func (a arrangement) rectifier(across, share float64) *rectifier {
	x := a.cutIn * (1 - across*across)
	angle, drop := a.damping(x, share)
	return a.build(a.assemble(x, drop), angle)
}

// flows is the mean and the variance of the current, at a distance from cut-in.
func (a arrangement) flows(across, share float64) (mean, variance float64) {
	r := a.rectifier(across, share)
	r.steady()
	return r.mean, math.Max(r.square-r.mean*r.mean, 0)
}

// bend is the distance from cut-in at which a whole bridge stops to idle between
// the currents of one pair of phases and of the next. There the mean has a bend, on
// which a node is put.
func (a arrangement) bend(share float64) float64 {
	if a.bends == nil {
		return float64(bendNode) / (acrossNodes - 1)
	}
	idles, runs := 0.15, 0.4
	for range 13 {
		if middle := (idles + runs) / 2; a.idle(middle, share) {
			idles = middle
		} else {
			runs = middle
		}
	}
	return runs
}

func (a arrangement) idle(across, share float64) bool {
	a.assemble = a.bends
	r := a.rectifier(across, share)
	r.steady()
	return r.idles
}

type column struct {
	bend            float64
	means, variance [acrossNodes]float64
}

// column is all values of one share. What is tabulated has the known ways to zero
// taken out: at cut-in the mean falls at least with the third power of the
// distance, the variance with the fifth. And behind a shorted diode the sink's
// voltage must hold its own against the mean drop in the shorted loop, which lets
// the sink have the less time the lower that drop is.
func (a arrangement) column(share float64) (c column) {
	reduced := func(across float64) (float64, float64) {
		mean, variance := a.flows(across, share)
		if a.shorted {
			held := 1 + a.cutIn*(1-across*across)*share/(1-share)
			mean, variance = mean*held, variance*held
		}
		return math.Max(mean, 0) / math.Pow(across, 3), variance / math.Pow(across, 5)
	}
	c.bend = a.bend(share)
	for n := 1; n < acrossNodes; n++ {
		across := c.bend * float64(n) / bendNode
		if n > bendNode {
			across = c.bend + (1-c.bend)*float64(n-bendNode)/(acrossNodes-1-bendNode)
		}
		c.means[n], c.variance[n] = reduced(across)
	}
	m, v := reduced(c.bend / bendNode / 2)
	c.means[0] = math.Max(2*m-c.means[1], 0)
	c.variance[0] = math.Max(2*v-c.variance[1], 0)
	return c
}

func (a arrangement) write(w *bytes.Buffer) {
	var columns [shareNodes]column
	var mean, variance float64
	for n := range columns {
		columns[n] = a.column(a.shareOf(n))
		for k := range acrossNodes {
			mean = math.Max(mean, columns[n].means[k])
			variance = math.Max(variance, columns[n].variance[k])
		}
	}
	fmt.Fprintf(w, "\n// %s is of %s.\nvar %s = table{\n", a.name, a.says, a.name)
	fmt.Fprintf(w, "cutIn: %.6g, mean: %.6g, variance: %.6g,\n", a.cutIn, mean/math.MaxUint16, variance/math.MaxUint16)
	fmt.Fprint(w, "bends: [shareNodes]float64{")
	for _, c := range columns {
		fmt.Fprintf(w, "%.5g, ", c.bend)
	}
	fmt.Fprint(w, "},\n")
	list(w, "means", columns, func(c column) [acrossNodes]float64 { return c.means }, mean)
	list(w, "variances", columns, func(c column) [acrossNodes]float64 { return c.variance }, variance)
	fmt.Fprint(w, "}\n")
}

func list(w *bytes.Buffer, name string, columns [shareNodes]column, of func(column) [acrossNodes]float64, biggest float64) {
	fmt.Fprintf(w, "%s: [shareNodes][acrossNodes]uint16{\n", name)
	for _, c := range columns {
		fmt.Fprint(w, "{")
		for _, v := range of(c) {
			fmt.Fprintf(w, "%.0f, ", v/biggest*math.MaxUint16)
		}
		fmt.Fprint(w, "},\n")
	}
	fmt.Fprint(w, "},\n")
}

func main() {
	var w bytes.Buffer
	fmt.Fprintln(&w, "// Code generated by generate_tables.go; DO NOT EDIT.\n\npackage circuit")
	fmt.Fprintf(&w, "\nconst (\nacrossNodes = %d\nbendNode = %d\nshareNodes = %d\nshortedRatio = %v\n)\n", acrossNodes, bendNode, shareNodes, shortedRatio)
	for _, a := range arrangements {
		a.write(&w)
	}
	text, err := format.Source(w.Bytes())
	if err == nil {
		err = os.WriteFile("tables.go", text, 0o644)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}
