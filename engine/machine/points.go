package machine

import "coilbook/engine/check"

// point is a place of the machine that is connected to others. Those that many
// others hang on come first: they are taken out last.
type point uint8

const (
	core point = iota
	frame
	batteryMinus
	batteryPlus
	plusClamp
	fuseIn
	regulatorPlus
	regulatorBody
	boxGround
	keyOut
	boxFeed
	killWire
	neutral
	charge1 // … charge-4
	_
	_
	_
	phaseTouch1 // … of the third, where a phase may lie on the core
	_
	_
	regulator1 // … regulator-4
	_
	_
	_
	exciter
	exciterTouch
	boxExciter
	pickupA
	pickupTouch
	pickupB
	boxPickup
	pickupTwo
	pickupTwoTouch
	lighting
	lightingTouch
	coilPrimary
	primaryTouch
	sparkLead
	secondaryTouch
	capEnd
	groundLead
	points
)

func chargeLead(i int) point    { return charge1 + point(i) }
func regulatorLead(i int) point { return regulator1 + point(i) }

// pointAt is where a terminal is; ok is false where the build has no such
// terminal.
func (b Build) pointAt(t check.Terminal) (p point, ok bool) {
	switch t {
	case check.Core:
		return core, true
	case check.Frame:
		return frame, true
	case check.GroundLead:
		return groundLead, b.GroundLead
	case check.BatteryPlus:
		return batteryPlus, true
	case check.BatteryMinus, check.MinusClamp:
		return batteryMinus, true
	case check.PlusClamp, check.FuseOut:
		return plusClamp, true
	case check.FuseIn:
		return fuseIn, true
	case check.RegulatorPlus:
		return regulatorPlus, true
	case check.RegulatorBody:
		return regulatorBody, true
	case check.KeyOut:
		return keyOut, true
	case "charge-1", "charge-2", "charge-3", "charge-4":
		i := int(t[7] - '1')
		return chargeLead(i), i < b.leads()
	case "regulator-1", "regulator-2", "regulator-3", "regulator-4":
		i := int(t[10] - '1')
		return regulatorLead(i), i < b.leads()
	}
	return b.pointOfIgnition(t)
}

func (b Build) pointOfIgnition(t check.Terminal) (p point, ok bool) {
	switch t {
	case check.ExciterLead:
		return exciter, b.Exciter()
	case check.BoxExciter:
		return boxExciter, b.Exciter()
	case check.KillWire:
		if b.Exciter() {
			return boxExciter, true
		}
		return killWire, true
	case check.PickupA:
		return pickupA, b.Pickups > 0
	case check.PickupB:
		return pickupB, b.Pickups > 0
	case check.PickupTwo:
		return pickupTwo, b.Pickups > 1
	case check.BoxPickup:
		return boxPickup, true
	case check.BoxGround:
		return boxGround, true
	case check.BoxFeed:
		return boxFeed, b.Ignition == BatteryFed
	case check.LightingLead:
		return lighting, b.Lighting
	case check.CoilPrimary, check.BoxOutput:
		return coilPrimary, true
	case check.SparkLead, check.CapScrew:
		return sparkLead, true
	case check.CapEnd, check.PlugTop:
		return capEnd, true
	case check.PlugThread:
		return core, true
	}
	return 0, false
}

// leads and phases are those of Connection without a map: they are asked for in
// every prediction.
func (b Build) leads() int {
	switch b.Charge {
	case Star, Delta:
		return 3
	case TwoPhase:
		return 4
	case SinglePhase:
		return 2
	}
	return 1
}

func (b Build) phases() int {
	switch b.Charge {
	case Star, Delta:
		return 3
	case TwoPhase:
		return 2
	}
	return 1
}

// ends are the points that a phase lies between, its first end first.
func (b Build) ends(phase int) (first, second point) {
	switch b.Charge {
	case Star:
		return chargeLead(phase), neutral
	case Delta:
		return chargeLead(phase), chargeLead((phase + 1) % 3)
	case GroundedEnd:
		return charge1, core
	}
	return chargeLead(2 * phase), chargeLead(2*phase + 1)
}
