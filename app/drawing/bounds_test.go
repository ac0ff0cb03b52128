package drawing

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// box is an upright rectangle.
type box struct{ x0, y0, x1, y1 float64 }

func (b box) join(c box) box {
	return box{min(b.x0, c.x0), min(b.y0, c.y0), max(b.x1, c.x1), max(b.y1, c.y1)}
}

func (b box) overlaps(c box) bool {
	return b.x0 < c.x1 && c.x0 < b.x1 && b.y0 < c.y1 && c.y0 < b.y1
}

var nothing = box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}

// place takes points of a group to the picture.
type place func(Point) (Point, float64)

func whole(p Point) (Point, float64) { return p, 1 }

func (g Group) within(outer place) place {
	scale := g.Scale
	if scale == 0 {
		scale = 1
	}
	sin, cos := math.Sincos(g.Turn * math.Pi / 180)
	return func(p Point) (Point, float64) {
		q, s := outer(Point{g.Move.X + scale*(p.X*cos-p.Y*sin), g.Move.Y + scale*(p.X*sin+p.Y*cos)})
		return q, s * scale
	}
}

// leaf is a shape that is no group, with where it stands.
type leaf struct {
	shape Shape
	at    place
	box   box
	deep  int
}

// corners of a text in the picture, turned with it.
func (l leaf) corners() []Point {
	points, _ := outline(l.shape)
	out := make([]Point, len(points))
	for i, p := range points {
		out[i], _ = l.at(p)
	}
	return out
}

// apart reports whether a line along a side of one of two turned rectangles
// parts them.
func apart(a, b []Point) bool {
	for _, r := range [][]Point{a, b} {
		for _, end := range []Point{r[1], r[2]} {
			axis := Point{end.X - r[0].X, end.Y - r[0].Y}
			a0, a1 := spread(a, axis)
			b0, b1 := spread(b, axis)
			if a1 <= b0 || b1 <= a0 {
				return true
			}
		}
	}
	return false
}

func spread(points []Point, axis Point) (least, most float64) {
	least, most = math.Inf(1), math.Inf(-1)
	for _, p := range points {
		d := p.X*axis.X + p.Y*axis.Y
		least, most = min(least, d), max(most, d)
	}
	return least, most
}

func leaves(shapes []Shape, at place, deep int) []leaf {
	var out []leaf
	for _, s := range shapes {
		if g, ok := s.(Group); ok {
			out = append(out, leaves(g.Shapes, g.within(at), deep+1)...)
			continue
		}
		out = append(out, leaf{s, at, bounds(s, at), deep})
	}
	return out
}

func bounds(s Shape, at place) box {
	points, grow := outline(s)
	out := nothing
	for _, p := range points {
		q, scale := at(p)
		g := grow * scale
		out = out.join(box{q.X - g, q.Y - g, q.X + g, q.Y + g})
	}
	return out
}

// outline gives points that span a shape and by how much its stroke widens it.
func outline(s Shape) ([]Point, float64) {
	switch s := s.(type) {
	case Path:
		return s.sampled(), s.Width / 2
	case Circle:
		return []Point{s.Center}, s.R + s.Width/2
	case Rect:
		return corners(s.X, s.Y, s.X+s.W, s.Y+s.H), s.Width / 2
	case Text:
		w := textWidth(s.Text, s.Size)
		x := s.At.X - map[Anchor]float64{Start: 0, Middle: w / 2, End: w}[s.Anchor]
		return corners(x, s.At.Y-0.75*s.Size, x+w, s.At.Y+0.2*s.Size), 0
	}
	return nil, 0
}

func corners(x0, y0, x1, y1 float64) []Point {
	return []Point{{x0, y0}, {x1, y0}, {x0, y1}, {x1, y1}}
}

// sampled gives points along a path.
func (p Path) sampled() []Point {
	var out []Point
	var at Point
	for _, s := range p.Steps {
		if s.Op == 'Z' {
			continue
		}
		a, b, end := at, s.P[2], s.P[2]
		if s.Op == 'C' {
			a, b = s.P[0], s.P[1]
		}
		for i := 1; i <= 16 && s.Op != 'M'; i++ {
			t := float64(i) / 16
			u := 1 - t
			out = append(out, Point{
				u*u*u*at.X + 3*u*u*t*a.X + 3*u*t*t*b.X + t*t*t*end.X,
				u*u*u*at.Y + 3*u*u*t*a.Y + 3*u*t*t*b.Y + t*t*t*end.Y,
			})
		}
		at = end
		out = append(out, end)
	}
	return out
}

func class(s Shape) string {
	switch s := s.(type) {
	case Path:
		return s.Class
	case Circle:
		return s.Class
	case Rect:
		return s.Class
	case Text:
		return s.Class
	}
	return ""
}

func TestBoundsFollowTurnAndScale(t *testing.T) {
	g := Group{Move: Point{10, 20}, Turn: 90, Scale: 2, Shapes: []Shape{Rect{X: 1, Y: 0, W: 4, H: 1}}}
	got := leaves([]Shape{g}, whole, 0)[0].box
	want := box{8, 22, 10, 30}
	for i, d := range []float64{got.x0 - want.x0, got.y0 - want.y0, got.x1 - want.x1, got.y1 - want.y1} {
		if math.Abs(d) > 1e-9 {
			t.Errorf("side %d: got %v, want %v", i, got, want)
		}
	}
}

func TestTurnedRectanglesAreToldApart(t *testing.T) {
	diamond := []Point{{10, 0}, {20, 10}, {0, 10}, {10, 20}}
	assert.True(t, apart(diamond, corners(0, 0, 4, 4)), "in the corner of its upright box")
	assert.False(t, apart(diamond, corners(0, 0, 6, 6)), "over its edge")
	assert.False(t, apart(diamond, corners(8, 8, 12, 12)), "inside")
}
