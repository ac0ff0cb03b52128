package drawing

import "coilbook/engine/check"

// upright is a battery seen from the front; its posts stand on top, plus left.
type upright struct{ x, y, w, h float64 }

func (b upright) plus() Point  { return Point{b.x + b.w*0.23, b.y} }
func (b upright) minus() Point { return Point{b.x + b.w*0.77, b.y} }

// draw gives the posts, the body with its lid, and the signs under the posts.
func (b upright) draw(post float64) []Shape {
	lid, arm, stroke := b.h*0.17, post*0.45, post*0.22
	signY := b.y + lid + arm + stroke + 4
	p, m := b.plus(), b.minus()
	return []Shape{
		Rect{"metal", p.X - post/2, b.y - post, post, post + 2, 2, 0},
		Rect{"metal", m.X - post/2, b.y - post, post, post + 2, 2, 0},
		Rect{"case", b.x, b.y, b.w, b.h, 5, 2.5},
		line("ink", 1.6, b.x+1.5, b.y+lid, b.x+b.w-1.5, b.y+lid),
		line("ink", stroke, p.X-arm, signY, p.X+arm, signY),
		line("ink", stroke, p.X, signY-arm, p.X, signY+arm),
		line("ink", stroke, m.X-arm, signY, m.X+arm, signY),
	}
}

// batteryPosts is the meter's self-check: a probe on each post of a battery. The
// probe on the left leans more, so that its cable passes over the other.
func (s *sheet) batteryPosts() {
	b := upright{14, 88, 164, 72}
	const post = 17.0
	s.mark(check.BatteryPlus, Point{b.plus().X, b.y - post + 3})
	s.mark(check.BatteryMinus, Point{b.minus().X, b.y - post + 3})
	s.add(b.draw(post)...)
	s.add(
		Text{"label", Point{b.x + b.w/2, b.y + 34}, 18, Middle, "12 V"},
		words("label", Middle, b.x+b.w/2, b.y+58, fit(s.words.Battery, textSize, 150)),
	)
	s.add(drawMeter(s.check.Function)...)
	s.probes(map[check.Terminal]float64{check.BatteryPlus: -42, check.BatteryMinus: -16})
}
