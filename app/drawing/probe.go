package drawing

import "math"

// probe is a test probe: its tip touches a place, its handle leans away from it
// at an angle, and its cable leaves at the tail.
type probe struct {
	red   bool
	tip   Point
	angle float64 // degrees, clockwise from the right, from tip to handle
	scale float64
	word  string
}

// Lengths along a probe from its tip.
const (
	needleEnd  = 21.0
	handleFrom = 25.0
	ringStep   = 4.2
	relief     = 6.0
)

func (p probe) handle() float64 { return textWidth(p.word, textSize) + 8 + p.rings()*ringStep }

func (p probe) rings() float64 {
	if p.red {
		return 1
	}
	return 2
}

// tail is where the cable leaves.
func (p probe) tail() Point { return p.past(0) }

// past is a point that far behind the tail, where a cable has room to bend.
func (p probe) past(d float64) Point {
	return polar(p.tip, (handleFrom+p.handle()+relief)*p.scale+d, p.angle)
}

// draw gives the probe with its word on the handle. Red ends in a needle and
// has one ring, black ends blunt and has two: without colour they still differ.
func (p probe) draw() Shape {
	body, ring, word, tip := "probe-red", "ring-red", "on-red", needleTip()
	if !p.red {
		body, ring, word, tip = "probe-black", "ring-black", "on-black", bluntTip()
	}
	end := handleFrom + p.handle()
	out := []Shape{
		Path{"paper", 0, append(casing(end), closed())},
		tip,
		Path{body, 1.6, area(body, end-2, -5, end+relief, -2, end+relief, 2, end-2, 5).Steps},
		Rect{body, needleEnd - 1, -10, 5, 20, 2, 1.6},
		Rect{body, handleFrom - 1, -8.5, end - handleFrom + 1, 17, 4, 1.6},
		words(word, Start, handleFrom+4, 4.6, p.word),
	}
	for i := range int(p.rings()) {
		x := end - 4 - ringStep*float64(i)
		out = append(out, line(ring, 2, x, -7.5, x, 7.5))
	}
	return Group{p.tip, p.angle, p.scale, out}
}

// casing is a margin of paper that keeps a probe apart from what lies below it.
func casing(end float64) []Step {
	return []Step{moveTo(9, -3.5), lineTo(needleEnd-3, -4.5), lineTo(needleEnd-3, -12), lineTo(needleEnd+6, -12),
		lineTo(needleEnd+6, -10.5), lineTo(end+2, -10.5), lineTo(end+2, 10.5), lineTo(needleEnd+6, 10.5),
		lineTo(needleEnd+6, 12), lineTo(needleEnd-3, 12), lineTo(needleEnd-3, 4.5), lineTo(9, 3.5)}
}

func needleTip() Shape {
	return area("tip", 0, 0, 11, -2, needleEnd, -2, needleEnd, 2, 11, 2)
}

func bluntTip() Shape {
	return area("tip", 0, -1.6, 8, -1.6, 8, -3.4, needleEnd, -3.4, needleEnd, 3.4, 8, 3.4, 8, 1.6, 0, 1.6)
}

// cable runs through points given as x, y, ... with round corners, on a casing.
func cable(red bool, xy ...float64) []Shape {
	class := "cable-red"
	if !red {
		class = "cable-black"
	}
	steps := rounded(8, xy...)
	return []Shape{Path{"casing", 6.5, steps}, Path{class, 3.2, steps}}
}

// rounded is a line whose corners are cut by curves of radius r at most.
func rounded(r float64, xy ...float64) []Step {
	steps := []Step{moveTo(xy[0], xy[1])}
	for i := 2; i+3 < len(xy); i += 2 {
		p, q, s := Point{xy[i-2], xy[i-1]}, Point{xy[i], xy[i+1]}, Point{xy[i+2], xy[i+3]}
		a, b := toward(q, p, r), toward(q, s, r)
		c, d := mid(a, q), mid(b, q)
		steps = append(steps, lineTo(a.X, a.Y), curveTo(c.X, c.Y, d.X, d.Y, b.X, b.Y))
	}
	return append(steps, lineTo(xy[len(xy)-2], xy[len(xy)-1]))
}

// toward is the point r from p in the direction of q, halfway at most.
func toward(p, q Point, r float64) Point {
	d := math.Hypot(q.X-p.X, q.Y-p.Y)
	if d == 0 {
		return p
	}
	t := min(r/d, 0.5)
	return Point{p.X + (q.X-p.X)*t, p.Y + (q.Y-p.Y)*t}
}

func mid(p, q Point) Point { return Point{(p.X + q.X) / 2, (p.Y + q.Y) / 2} }
