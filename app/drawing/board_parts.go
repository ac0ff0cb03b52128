package drawing

import "coilbook/engine/check"

// Rows of the parts below the plug.
const (
	boxRow     = 11
	middleRow  = 14
	batteryRow = 16
)

const (
	boxTop    = 10*Cell + 2
	boxBottom = 13*Cell - 2
)

// wire joins parts through points given as x, y, ...
func (b *board) wire(width float64, xy ...float64) {
	b.run("ink", width, rounded(6, xy...)...)
}

// ground is the sign for a connection to engine or frame; it hangs from a point.
func (b *board) ground(x, y float64) {
	b.add(line("ink", 2.2, x, y, x, y+5), line("ink", 2.2, x-8, y+5, x+8, y+5), line("ink", 2.2, x-5, y+9, x+5, y+9),
		line("ink", 2.2, x-2, y+13, x+2, y+13))
}

// regulator is the box with the leads of the generator going in.
func (b *board) regulator() {
	for i := range b.machine.ChargeLeads {
		x := Cell * float64(2*i+1)
		b.run("lead-grey", 4, moveTo(x, Cell*harnessRow+50), curveTo(x, boxTop-8, min(x, 142), boxTop-18, min(x, 142), boxTop))
	}
	b.wire(2.6, 26, boxBottom, 26, boxBottom+3)
	b.ground(26, boxBottom)
	b.add(Rect{"case", 3, boxTop, 150, boxBottom - boxTop, 6, 2})
	b.title(78, boxTop+15, b.words.Regulator)
	b.contact(check.RegulatorBody, 0, boxRow, false)
	b.contact(check.RegulatorPlus, 3, boxRow, false)
}

// ignitionBox is the box with exciter and pickup going in.
func (b *board) ignitionBox() {
	columns := []int{10, 12}
	if b.machine.Exciter {
		columns = append(columns, 8)
	}
	for _, c := range columns {
		x := Cell * float64(c+1)
		b.run("lead-grey", 4, moveTo(x, Cell*harnessRow+50), lineTo(x, boxTop))
	}
	b.ground(182, boxBottom)
	b.wire(2.6, 286, boxBottom, 286, Cell*middleRow)
	b.kill(338, boxBottom)
	if b.machine.BatteryFed {
		b.wire(2.6, 234, boxBottom, 234, boxBottom+18, 204, boxBottom+18, 204, Cell*middleRow+14)
	}
	b.add(Rect{"case", 163, boxTop, BoardColumns*Cell - 166, boxBottom - boxTop, 6, 2})
	b.title(262, boxTop+15, b.words.Box)
	b.contact(check.BoxGround, 6, boxRow, false)
	if b.machine.BatteryFed {
		b.contact(check.BoxFeed, 8, boxRow, false)
	}
	b.contact(check.BoxOutput, 10, boxRow, false)
	b.contact(check.KillWire, 12, boxRow, false)
}

// kill is the switch that grounds the box to stop the engine.
func (b *board) kill(x, y float64) {
	const lever = 10.0
	end := x + 6
	if !b.scene.Key {
		end = x
	}
	b.add(line("ink", 2.2, x, y, x, y+3), line("accent", 2.6, x, y+3, end, y+lever))
	b.ground(x, y+lever+1)
}

// supply is fuse, key, lamp, battery and frame.
func (b *board) supply() {
	y := Cell*middleRow + 14.0
	if b.scene.Plug == check.RegulatorApart {
		b.wire(2.6, 104, boxBottom, 104, boxBottom+4)
		b.wire(2.6, 104, boxBottom+14, 104, y)
	} else {
		b.wire(2.6, 104, boxBottom, 104, y)
	}
	b.fuse(y)
	b.key(y)
	low := Cell*batteryRow + 14.0
	b.wire(2.6, 26, y, 8, y, 8, low, 78, low)
	b.wire(2.6, 130, low, 200, low)
	b.ground(166, low)
	b.add(Rect{"case", 53, low - 12, 102, 48, 5, 2}, Rect{"metal", 184, low - 6, 58, 12, 6, 0})
	b.title(104, low+32, b.words.Battery)
	b.contact(check.FuseOut, 0, middleRow, false)
	b.contact(check.FuseIn, 3, middleRow, false)
	b.contact(check.KeyOut, 6, middleRow, false)
	b.contact(check.PlusClamp, 0, batteryRow, false)
	b.contact(check.BatteryPlus, 2, batteryRow, false)
	b.contact(check.BatteryMinus, 4, batteryRow, false)
	b.contact(check.Frame, 7, batteryRow, false)
}

// fuse lies between its two points.
func (b *board) fuse(y float64) {
	b.wire(2.6, 26, y, 104, y)
	b.add(Rect{"case", 45, y - 7, 40, 14, 3, 1.6}, line("ink", 1.6, 45, y, 85, y),
		Rect{"metal", 42, y - 8, 9, 16, 2, 0}, Rect{"metal", 79, y - 8, 9, 16, 2, 0})
}

// key is the switch from the fuse to what it turns on, and the lamp behind it.
func (b *board) key(y float64) {
	end := Point{165, y - 13}
	if b.scene.Key {
		end = Point{166, y}
	}
	b.wire(2.6, 104, y, 136, y)
	b.wire(2.6, 166, y, 232, y)
	b.add(line("accent", 3.4, 136, y, end.X, end.Y), Circle{"dial", Point{136, y}, 3, 0}, Circle{"dial", Point{166, y}, 3, 0})
	lamp := Point{232, y}
	class := "case"
	if b.scene.Key {
		class = "wrap"
	}
	b.ground(lamp.X, y+11)
	b.add(Circle{class, lamp, 11, 2}, line("ink", 2, lamp.X-6, y-6, lamp.X+6, y+6), line("ink", 2, lamp.X-6, y+6, lamp.X+6, y-6))
}

// spark is the ignition coil, the cap and the spark plug.
func (b *board) spark() {
	top, low := Cell*middleRow, Cell*batteryRow+14.0
	b.wire(5, 338, top+40, 338, low)
	b.add(Rect{"case", 262, top, 99, 49, 8, 2})
	b.contact(check.CoilPrimary, 10, middleRow, false)
	b.contact(check.SparkLead, 12, middleRow, false)
	b.add(Group{Move: Point{324, low - 13}, Turn: 90, Shapes: sparkPlug()})
	b.add(Rect{"plug", 320, low - 11, 36, 22, 7, 2})
	b.contact(check.CapEnd, 12, batteryRow, false)
}
