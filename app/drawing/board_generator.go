package drawing

import "coilbook/engine/check"

// Where the generator stands, and the rows of its plug.
const (
	boardStatorR = 42.0
	generatorRow = 4 // the generator's half of the plug
	harnessRow   = 7
)

var boardStator = Point{62, 56}

// generator is the engine case with stator and pickup.
func (b *board) generator() {
	c, r := boardStator, boardStatorR
	b.add(Rect{"case", 3, 2, 188, 100, 14, 2})
	b.add(Circle{"paper", c, r + 3, 0})
	b.add(stator(b.machine.Build, c, r)...)
	if b.scene.Turns {
		b.add(turningArrow(c, r+6, 112, 196)...)
	}
	b.add(Path{"iron", 0, ringSector(c, r+1, r+5, -15, 15)}, Group{Move: Point{c.X + r + 9, c.Y}, Scale: 0.72, Shapes: pickup()})
	at := corePoint(c, r)
	b.add(Circle{"bare", at, 6, 0}, Text{"label", Point{9, 15}, boardText, Start, b.label(check.Core)})
	b.point(check.Core, 1, 1, at)
	b.add(words("label-soft", End, 184, 17, b.words.Generator))
	b.besides()
}

// besides are the leads that do not go through the plug.
func (b *board) besides() {
	add := func(t check.Terminal, column int, from Point) {
		x := Cell * float64(column+1)
		b.run("lead-grey", 4, moveTo(from.X, from.Y), curveTo(from.X+70, from.Y+6, x, 84, x, 40))
		b.contact(t, column, 0, true)
	}
	if b.machine.Lighting {
		add(check.LightingLead, 10, Point{boardStator.X + 26, boardStator.Y - 28})
	}
	if b.machine.Pickups > 1 {
		add(check.PickupTwo, 12, Point{boardStator.X + boardStatorR + 40, boardStator.Y - 8})
	}
	if b.machine.GroundLead && b.machine.ChargeLeads > 3 {
		add(check.GroundLead, 8, Point{boardStator.X + 34, boardStator.Y - 18})
	}
}

// run is a wire on a casing, so that crossings stay clear.
func (b *board) run(class string, width float64, steps ...Step) {
	b.add(Path{"casing", width + 3, steps}, Path{class, width, steps})
}

// seat is a place in the plug.
type seat struct {
	column             int
	generator, harness check.Terminal
	from               Point // where its lead begins
}

// seats are the charge leads from the left, pickup and exciter from the right,
// the ground lead between.
func (b *board) seats() []seat {
	c, r := boardStator, boardStatorR
	var out []seat
	for i := range b.machine.ChargeLeads {
		n := string(rune('1' + i))
		out = append(out, seat{2 * i, check.Charge(i + 1), check.Terminal("regulator-" + n), Point{c.X - 16 + 15*float64(i), c.Y + r - 4}})
	}
	if b.machine.GroundLead && b.machine.ChargeLeads <= 3 {
		out = append(out, seat{6, check.GroundLead, check.Nowhere, Point{c.X + 34, c.Y + 24}})
	}
	if b.machine.Exciter {
		out = append(out, seat{8, check.ExciterLead, check.BoxExciter, exciterPoint(c, r)})
	}
	back := Point{c.X + r + 40, c.Y}
	return append(out,
		seat{10, check.PickupA, check.BoxPickup, Point{back.X, back.Y - 5}},
		seat{12, check.PickupB, check.Nowhere, Point{back.X, back.Y + 5}})
}

// plugHalves are both halves of the plug with the leads into each.
func (b *board) plugHalves() {
	top, bottom := Cell*generatorRow, Cell*harnessRow
	seats := b.seats()
	for _, s := range seats {
		b.intoPlug(s, top+2)
	}
	left, right := 3.0, BoardColumns*Cell-3
	if b.scene.Plug == check.Together {
		b.add(Rect{"plug", left + 6, top + 40, right - left - 12, bottom - top - 28, 3, 2})
	}
	b.add(Rect{"plug", left, top + 2, right - left, 48, 6, 2}, Rect{"plug", left, bottom + 2, right - left, 48, 6, 2})
	if b.scene.Plug == check.Together {
		b.title((left+right)/2, bottom-8, b.words.Joined)
	} else {
		b.title((left+right)/2, bottom-8, b.words.Apart)
	}
	for _, s := range seats {
		b.contact(s.generator, s.column, generatorRow, true)
		if s.harness != check.Nowhere {
			b.contact(s.harness, s.column, harnessRow, false)
		}
	}
}

// intoPlug is the lead from the generator to its seat.
func (b *board) intoPlug(s seat, y float64) {
	x := Cell * float64(s.column+1)
	switch s.generator {
	case check.PickupA, check.PickupB:
		b.run("lead-grey", 4, moveTo(s.from.X, s.from.Y), curveTo(x-70, s.from.Y, x, s.from.Y, x, y))
	case check.ExciterLead:
		b.run("lead-grey", 4, moveTo(s.from.X, s.from.Y), curveTo(s.from.X+60, s.from.Y-4, x, s.from.Y, x, y))
	default:
		b.run("lead-grey", 4, moveTo(s.from.X, s.from.Y), curveTo(s.from.X, y-6, x, y-16, x, y))
	}
}
