package drawing

import (
	"strings"

	"coilbook/engine/check"
)

// Board is a whole machine laid out flat: its parts, their wires, and every
// point that a probe can reach. Targets says where a finger meets each point.
type Board struct {
	Picture
	Targets []Target
}

// Target is a square of two by two cells around a point; Column and Row count
// cells from the upper left corner.
type Target struct {
	At          check.Terminal
	Column, Row int
}

// A board is a grid of cells, so that a style sheet can lay buttons over it.
const (
	Cell         = 26.0
	BoardColumns = 14
	BoardRows    = 18
)

// Machine is what a board shows: the build as one sees it, and the parts that
// the bench checks do not ask for.
type Machine struct {
	check.Build
	Pickups    int
	Lighting   bool
	BatteryFed bool // the box takes its power from the battery
}

// Scene is what is done to the machine. A probe in the hand is Nowhere.
type Scene struct {
	Red, Black check.Terminal
	Plug       check.Plug
	Turns, Key bool
}

// BoardWords are the words on a board and in its text alternative.
type BoardWords struct {
	Machine                                    string // said only: what the picture shows
	Generator, Regulator, Box, Battery         string
	Red, Black, InHand, Apart, Joined          string
	Unplugged                                  string // said only: the regulator is
	EngineTurns, EngineStands, KeyOn, KeyOff   string // said only
	Fuse, Key, Lamp, Coil, Cap, Frame, Exciter string // said only
}

// Laid draws a machine on the board. label names points in a word or two, full
// in a phrase.
func Laid(m Machine, s Scene, label, full func(check.Terminal) string, w BoardWords) Board {
	b := &board{machine: m, scene: s, label: label, words: w, anchors: map[check.Terminal]Point{}}
	b.generator()
	b.plugHalves()
	b.regulator()
	b.ignitionBox()
	b.supply()
	b.spark()
	b.probes()
	return Board{Picture{BoardColumns * Cell, BoardRows * Cell, b.alternative(full), b.shapes, b.anchors}, b.targets}
}

// board is a board in the making.
type board struct {
	machine Machine
	scene   Scene
	label   func(check.Terminal) string
	words   BoardWords
	shapes  []Shape
	anchors map[check.Terminal]Point
	targets []Target
}

func (b *board) add(shapes ...Shape) { b.shapes = append(b.shapes, shapes...) }

func (b *board) title(x, y float64, s string) {
	b.add(words("label-soft", Middle, x, y, s))
}

// boardText is the size of the points' names.
const boardText = 12.5

// contact gives a point its mark, its target and its name, above or below.
func (b *board) contact(t check.Terminal, column, row int, above bool) Point {
	p := Point{Cell * float64(column+1), Cell*float64(row) + 14}
	if above {
		p.Y = Cell*float64(row) + 40.5
	}
	b.add(Circle{"hole", p, 7.5, 0}, Circle{"pin", p, 4, 0})
	lines := b.lines(t)
	for i, text := range lines {
		y := p.Y + 19 + 12*float64(i)
		if above {
			y = p.Y - 12.5 - 12*float64(len(lines)-1-i)
		}
		b.add(Text{"label", Point{p.X, y}, boardText, Middle, text})
	}
	b.point(t, column, row, p)
	return p
}

func (b *board) point(t check.Terminal, column, row int, at Point) {
	b.anchors[t] = at
	b.targets = append(b.targets, Target{t, column, row})
}

// lines breaks a name in two where it is too wide for its target.
func (b *board) lines(t check.Terminal) []string {
	const room = 2*Cell - 0.3
	name := b.label(t)
	first, second, two := strings.Cut(name, " ")
	if textWidth(name, boardText) <= room || !two {
		return []string{fit(name, boardText, room)}
	}
	return []string{fit(first, boardText, room), fit(second, boardText, room)}
}

// alternative says the picture in words: the parts, then probes and state.
func (b *board) alternative(full func(check.Terminal) string) string {
	w := b.words
	parts := []string{w.Generator, w.Regulator, w.Fuse, w.Key, w.Lamp, w.Battery, w.Frame, w.Box, w.Coil, w.Cap}
	if b.machine.Exciter {
		parts = append(parts, w.Exciter)
	}
	place := func(t check.Terminal) string {
		if t == check.Nowhere {
			return w.InHand
		}
		return full(t)
	}
	state := []string{w.Red + ": " + place(b.scene.Red), w.Black + ": " + place(b.scene.Black)}
	return w.Machine + ": " + strings.Join(parts, ", ") + "; " + strings.Join(append(state, b.state()...), ", ")
}

// plugged says how the plugs are.
func (b *board) plugged() string {
	switch b.scene.Plug {
	case check.Apart:
		return b.words.Apart
	case check.RegulatorApart:
		return b.words.Unplugged
	}
	return b.words.Joined
}

func (b *board) state() []string {
	pick := func(on bool, yes, no string) string {
		if on {
			return yes
		}
		return no
	}
	w, s := b.words, b.scene
	return []string{b.plugged(), pick(s.Turns, w.EngineTurns, w.EngineStands), pick(s.Key, w.KeyOn, w.KeyOff)}
}
