package machine

import (
	"slices"

	"coilbook/engine/check"
)

// Part is what a fault of this kind is a fault of.
func (k Kind) Part() check.Part {
	switch k {
	case PhaseOpen, PhaseToCore, PhaseShorted, PhaseToPhase, PhaseJoint, NeutralToCore:
		return check.ChargeWinding
	case WeakMagnets:
		return check.Flywheel
	case DiodeIsOpen, DiodeIsShorted, NoCharging, NoRegulating, LowSetPoint:
		return check.Regulator
	case Sulphated, CellShorted, FlatBattery:
		return check.Battery
	case PickupOpen, PickupShorted, PickupToCore, GapWide:
		return check.Pickup
	case ExciterOpen, ExciterShorted, ExciterToCore:
		return check.Exciter
	case BoxDead, BoxShorted:
		return check.IgnitionBox
	case KillSwitch, KillWire:
		return check.KillCircuit
	case PrimaryOpen, PrimaryShorted, SecondaryOpen, SecondaryTurns:
		return check.IgnitionCoil
	case CapBroken, PlugFouled:
		return check.SparkPlug
	}
	return check.Wiring
}

// Charging reports whether the fault is one of the charging side.
func (k Kind) Charging() bool {
	return slices.Index(Kinds(), k) <= slices.Index(Kinds(), GroundStrap)
}
