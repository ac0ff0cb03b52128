package drawing

import (
	"strings"

	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// sheet is a picture in the making.
type sheet struct {
	check   check.Check
	build   check.Build
	label   func(check.Terminal) string
	words   Words
	wires   Wires // colours that are known
	shapes  []Shape
	anchors map[check.Terminal]Point
}

func (s *sheet) add(shapes ...Shape) { s.shapes = append(s.shapes, shapes...) }

func (s *sheet) mark(t check.Terminal, p Point) { s.anchors[t] = p }

func (s *sheet) touched(t check.Terminal) bool {
	return t != check.Nowhere && (t == s.check.Red || t == s.check.Black)
}

func (s *sheet) picture(w, h float64) Picture {
	return Picture{w, h, s.alternative(), s.shapes, s.anchors}
}

// alternative says the picture in words.
func (s *sheet) alternative() string {
	if s.check.Instrument == check.FeelerGauge {
		return s.words.Leaf + ": " + s.words.Gap + ", " + s.words.Pickup
	}
	if s.check.Instrument == check.Eyes {
		return strings.Join(s.lookAlternative(), ", ")
	}
	parts := []string{
		s.words.Red + ": " + s.place(s.check.Red),
		s.words.Black + ": " + s.place(s.check.Black),
	}
	return strings.Join(append(append(parts, s.state()...), functionSign(s.check.Function)), ", ")
}

// state says what is set up around the probes.
func (s *sheet) state() []string {
	var out []string
	say := func(when bool, word string) {
		if when {
			out = append(out, word)
		}
	}
	c := s.check
	onMachine := c.Part != check.MeterLeads && c.Part != check.MeterItself
	say(onMachine && parted(c), s.words.Apart)
	say(c.Plug == check.RegulatorApart, s.words.Unplugged)
	say(onMachine && c.Plug == check.Together, s.words.Joined)
	say(c.Engine != check.Stopped, s.engineWord())
	say(c.Measures == spec.BatteryLamp, s.words.Lamp)
	say(c.Engine == check.Stopped && c.Key && c.Measures != spec.BatteryLamp, s.words.KeyOn)
	say(c.Method == check.HotWinding, s.words.Hot)
	say(c.Method == check.VoltAmp, s.words.Series)
	say(c.Method == check.VoltAmp && c.Red != check.ResistorA && c.Red != check.ResistorB, s.words.Inside)
	say(c.PeakHold, s.words.Adapter)
	say(c.Swapped, s.words.Swapped)
	say(c.Function == meter.AmpsDC, s.words.NeverCrank)
	return out
}

func (s *sheet) place(t check.Terminal) string {
	if t == check.Core {
		return s.metalWord()
	}
	return s.inColour(t)
}
