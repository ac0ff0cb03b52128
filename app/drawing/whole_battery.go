package drawing

import (
	"coilbook/engine/check"
	"coilbook/engine/spec"
)

// batteryInMachine is volts at the battery's posts while something is asked of
// it. The probes lean as in the meter's self-check.
func (s *sheet) batteryInMachine() {
	b := upright{14, 84, 164, 60}
	const post = 17.0
	s.mark(check.BatteryPlus, Point{b.plus().X, b.y - post + 3})
	s.mark(check.BatteryMinus, Point{b.minus().X, b.y - post + 3})
	s.add(b.draw(post)...)
	s.add(words("label", Middle, b.x+b.w/2, b.y+42, fit(s.words.Battery, textSize, 90)))
	word := s.engineWord()
	if s.check.Measures == spec.BatteryLamp {
		s.add(bulb(Point{26, 11})...)
		word = s.words.Lamp
	}
	s.engineSign(Point{28, 34}, 15)
	s.add(words("label-accent", Start, b.x, 162, fit(word, textSize, 180)))
	s.add(drawMeter(s.check.Function)...)
	s.probes(map[check.Terminal]float64{check.BatteryPlus: -42, check.BatteryMinus: -16})
}

// supplyDrop is what is lost between regulator and battery: on the way through
// the fuse, or on the way back.
func (s *sheet) supplyDrop() {
	const low = 58.0
	b := upright{6, 116, 112, 48}
	plus, minus := b.plus().X, b.minus().X
	body := Point{98, 44}
	s.mark(check.RegulatorPlus, Point{plus, low + 6})
	s.mark(check.BatteryPlus, Point{plus, b.y - 7})
	s.mark(check.BatteryMinus, Point{minus, b.y - 7})
	s.mark(check.RegulatorBody, body)
	s.add(wire(plus, low, plus, b.y-4)...)
	s.add(wire(minus, low, minus, b.y-4)...)
	s.add(Rect{"case", 6, 6, 112, low - 6, 6, 2.5})
	s.add(words("label", Middle, 62, 25, fit(s.words.Regulator, textSize, 104)))
	s.add(b.draw(10)...)
	s.add(words("label", Middle, b.x+b.w/2, b.y+40, fit(s.words.Battery, textSize, 104)))
	if s.touched(check.RegulatorBody) {
		s.add(Circle{"bare", body, 6, 0})
	}
	s.add(fuse(Point{plus, low + 28})...)
	s.engineSign(Point{225, 26}, 11)
	s.add(words("label-accent", Start, 128, 24, fit(s.engineWord(), textSize, 76)))
	s.add(drawMeter(s.check.Function)...)
	s.probes(map[check.Terminal]float64{check.BatteryPlus: -14, check.BatteryMinus: -14})
}

// plusPost is the battery's plus post with its clamp around it.
func (s *sheet) plusPost() {
	b := upright{18, 96, 120, 50}
	s.post(b, check.BatteryPlus, b.plus(), s.engineWord())
	s.clampOn(b.plus().X, b.y)
	s.mark(check.PlusClamp, Point{b.plus().X + 32, b.y - 9})
	s.add(drawMeter(s.check.Function)...)
	s.probes(map[check.Terminal]float64{check.BatteryPlus: -42, check.PlusClamp: -30})
}

// minusPost is the minus post with its clamp lifted off and hanging on its cable:
// the meter takes its place. The plus clamp stays on.
func (s *sheet) minusPost() {
	b := upright{18, 96, 112, 50}
	s.post(b, check.BatteryMinus, b.minus(), s.words.NeverCrank)
	s.clampOn(b.plus().X, b.y)
	s.lifted(Point{160, 92})
	s.add(drawMeter(s.check.Function)...)
	s.probes(map[check.Terminal]float64{check.BatteryMinus: -42, check.MinusClamp: 0})
}

// post is the battery with the one of its posts that a probe goes on.
func (s *sheet) post(b upright, t check.Terminal, at Point, word string) {
	const high = 22.0
	s.mark(t, Point{at.X, b.y - high + 3})
	s.add(b.draw(high)...)
	s.add(words("label", Middle, b.x+b.w/2, 163, fit(s.words.Battery, textSize, 110)))
	s.engineSign(Point{22, 46}, 11)
	s.add(words("label-accent", Start, 5, 14, fit(word, textSize, 165)))
}

// clampOn grips a post; its cable goes down on the left.
func (s *sheet) clampOn(x, y float64) {
	s.add(thick(x-20, y-7, 9, y-7, 9, 165)...)
	s.add(Rect{"iron", x - 22, y - 13, 58, 12, 3, 0}, Rect{"metal", x + 24, y - 17, 8, 20, 2, 0})
}

// lifted is the clamp by itself, upright on its cable.
func (s *sheet) lifted(at Point) {
	s.add(thick(at.X, at.Y+10, at.X, 165)...)
	s.add(Rect{"iron", at.X - 7, at.Y - 18, 14, 38, 3, 0}, Circle{"paper", Point{at.X, at.Y - 10}, 4, 0})
	s.mark(check.MinusClamp, Point{at.X + 5, at.Y + 4})
}

// thick is a battery's cable.
func thick(xy ...float64) []Shape {
	steps := rounded(8, xy...)
	return []Shape{Path{"casing", 9, steps}, Path{"ink", 5, steps}}
}

// behindTheKey is what fuse and key let through.
func (s *sheet) behindTheKey() {
	const y, end = 28.0, 122.0
	b := upright{6, 112, 96, 48}
	plus := b.plus().X
	s.mark(check.KeyOut, Point{end, y})
	s.mark(check.BatteryMinus, Point{b.minus().X, b.y - 7})
	s.add(wire(plus, b.y-4, plus, y, 66, y)...)
	s.add(wire(98, y, end, y)...)
	s.add(line("accent", 3.4, 66, y, 98, y), Circle{"dial", Point{66, y}, 3.5, 0}, Circle{"dial", Point{98, y}, 3.5, 0})
	s.add(words("label-accent", Middle, 82, y+22, fit(s.words.KeyOn, textSize, 70)))
	s.add(fuse(Point{plus, 68})...)
	s.add(words("label", Start, plus+13, 76, fit(s.words.Fuse, textSize, 60)))
	s.add(b.draw(10)...)
	s.add(words("label", Middle, b.x+b.w/2, b.y+40, fit(s.words.Battery, textSize, 88)))
	s.add(drawMeter(s.check.Function)...)
	s.probes(map[check.Terminal]float64{check.BatteryMinus: -14})
}
