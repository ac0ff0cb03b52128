package drawing

import (
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/spec"
)

// wholeMachine is how a check around the generator is drawn; nil for others.
func (s *sheet) wholeMachine() func() {
	if s.check.Instrument == check.Eyes {
		return s.look
	}
	switch s.check.Measures {
	case spec.BatteryRest, spec.BatteryLamp, spec.BatteryCranking, spec.BatteryIdle, spec.Battery3000, spec.Battery5000:
		return s.batteryInMachine
	case spec.DropPlus, spec.DropGround:
		return s.supplyDrop
	case spec.DropTerminal:
		return s.plusPost
	case spec.KeyOffCurrent:
		return s.minusPost
	case spec.SupplyKey:
		return s.behindTheKey
	case spec.ChargeAC, spec.PickupCranking, spec.ExciterFree:
		return s.unloaded
	case spec.PlugDrop, spec.PinPickup, spec.PinExciter:
		return s.acrossThePlug
	case spec.KillWire, spec.BoxGround, spec.BoxFeed:
		return s.boxPoints
	case spec.BoxOutputAC:
		return s.boxOutput
	case spec.CoilPrimary, spec.CoilSecondary:
		return s.coilOhms
	case spec.PlugCap:
		return s.capOhms
	case spec.DiodeToPlus, spec.DiodeFromGround:
		return s.regulatorDiode
	case spec.PlugLeak:
		return s.plugLeak
	}
	return nil
}

// parted reports that the generator's plug is apart for the check, not only that
// nothing was said about it.
func parted(c check.Check) bool {
	if c.Instrument == check.Eyes {
		return slices.Contains(c.Needs, check.PlugParted)
	}
	return c.Plug == check.Apart && (len(c.Needs) == 0 || slices.Contains(c.Needs, check.PlugParted))
}

// metalWord is for the core as it is met: on the machine it lies under its cover.
func (s *sheet) metalWord() string {
	c := s.check
	bench := c.Part == check.ChargeWinding || c.Part == check.Exciter || c.Part == check.CoreGround
	if bench && c.Engine == check.Stopped {
		return s.words.Core
	}
	return s.words.Case
}

// engineWord says what the engine does; nothing where it stands.
func (s *sheet) engineWord() string {
	switch s.check.Engine {
	case check.Cranking:
		return s.words.Turns
	case check.Idling:
		return s.words.Idles
	case check.At3000:
		return s.words.At3000
	case check.At5000:
		return s.words.At5000
	}
	return ""
}

// engineSign is a small flywheel that turns.
func (s *sheet) engineSign(c Point, r float64) {
	if s.check.Engine == check.Stopped {
		return
	}
	s.add(flywheel(c, r)...)
	s.add(Circle{"metal", c, r * 0.4, 0})
	s.add(turningArrow(c, r+7, 205, 284)...)
}

// engineBlock is metal of the engine with a bare patch for a probe.
func (s *sheet) engineBlock(top float64) {
	s.add(Rect{"case", 4, top, 102, 134 - top, 8, 2.5})
	s.bareMetal(Point{88, 119}, s.words.Case, 188, 147, 88)
}

// leanOnMetal is how a probe on the engine's metal leans, so that its cable
// comes along the floor.
const leanOnMetal = 16.0
