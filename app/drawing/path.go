package drawing

import (
	"math"
	"strconv"
	"strings"
)

// Step is one step of a path: Op is M (move), L (line), C (cubic) or Z (close).
// M and L use the last of the three points only.
type Step struct {
	Op byte
	P  [3]Point
}

func moveTo(x, y float64) Step { return Step{Op: 'M', P: [3]Point{2: {x, y}}} }
func lineTo(x, y float64) Step { return Step{Op: 'L', P: [3]Point{2: {x, y}}} }
func closed() Step             { return Step{Op: 'Z'} }

func curveTo(x1, y1, x2, y2, x, y float64) Step {
	return Step{Op: 'C', P: [3]Point{{x1, y1}, {x2, y2}, {x, y}}}
}

// line is a stroke through points given as x, y, x, y ...
func line(class string, width float64, xy ...float64) Path {
	steps := []Step{moveTo(xy[0], xy[1])}
	for i := 2; i+1 < len(xy); i += 2 {
		steps = append(steps, lineTo(xy[i], xy[i+1]))
	}
	return Path{class, width, steps}
}

// area is a filled outline through points given as x, y, x, y ...
func area(class string, xy ...float64) Path {
	p := line(class, 0, xy...)
	p.Steps = append(p.Steps, closed())
	return p
}

// polar is the point at radius r and an angle in degrees, clockwise from the
// right.
func polar(c Point, r, degrees float64) Point {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return Point{c.X + r*cos, c.Y + r*sin}
}

// arc goes round c from one angle to another in steps of at most 45 degrees;
// it starts with a line or a move (first) to its beginning.
func arc(first byte, c Point, r, from, to float64) []Step {
	n := int(math.Ceil(math.Abs(to-from)/45 - 1e-9))
	d := (to - from) / float64(n)
	k := 4.0 / 3 * math.Tan(d*math.Pi/180/4) * r
	steps := []Step{{Op: first, P: [3]Point{2: polar(c, r, from)}}}
	for i := range n {
		a, b := from+d*float64(i), from+d*float64(i+1)
		p, q := polar(c, r, a), polar(c, r, b)
		steps = append(steps, Step{'C', [3]Point{polar(p, k, a+90), polar(q, k, b-90), q}})
	}
	return steps
}

// D is the value of the d attribute.
func (p Path) D() string {
	var out strings.Builder
	for i, s := range p.Steps {
		if i > 0 {
			out.WriteByte(' ')
		}
		out.WriteByte(s.Op)
		switch s.Op {
		case 'C':
			out.WriteString(pair(s.P[0]) + " " + pair(s.P[1]) + " " + pair(s.P[2]))
		case 'M', 'L':
			out.WriteString(pair(s.P[2]))
		}
	}
	return out.String()
}

// Transform is the value of the transform attribute.
func (g Group) Transform() string {
	out := "translate(" + Number(g.Move.X) + " " + Number(g.Move.Y) + ")"
	if g.Turn != 0 {
		out += " rotate(" + Number(g.Turn) + ")"
	}
	if g.Scale != 0 && g.Scale != 1 {
		out += " scale(" + Number(g.Scale) + ")"
	}
	return out
}

// Number prints a coordinate with at most two decimals. Half a hundredth goes up
// even when the last bit of a sine differs between processors.
func Number(x float64) string {
	out := strconv.FormatFloat(math.Floor(x*100+0.5+1e-6)/100, 'f', 2, 64)
	out = strings.TrimSuffix(strings.TrimRight(out, "0"), ".")
	if out == "-0" {
		return "0"
	}
	return out
}

func pair(p Point) string { return Number(p.X) + " " + Number(p.Y) }
