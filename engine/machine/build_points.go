package machine

import (
	"slices"

	"coilbook/engine/check"
)

// Points lists where probes can be put on a machine of this build.
func (b Build) Points() []check.Terminal {
	var out []check.Terminal
	for lead := 1; lead <= b.Charge.Leads(); lead++ {
		out = append(out, check.Charge(lead), check.RegulatorLead(lead))
	}
	out = append(out, check.Core, check.Frame, check.RegulatorPlus, check.RegulatorBody, check.FuseIn, check.FuseOut, check.PlusClamp,
		check.BatteryPlus, check.BatteryMinus, check.KeyOut, check.PickupA, check.PickupB, check.BoxPickup, check.BoxGround,
		check.BoxOutput, check.KillWire, check.CoilPrimary, check.SparkLead, check.CapEnd)
	if b.GroundLead {
		out = append(out, check.GroundLead)
	}
	if b.Lighting {
		out = append(out, check.LightingLead)
	}
	if b.Pickups > 1 {
		out = append(out, check.PickupTwo)
	}
	if b.Exciter() {
		return append(out, check.ExciterLead, check.BoxExciter)
	}
	return append(out, check.BoxFeed)
}

// Has reports whether a machine of this build has a point.
func (b Build) Has(t check.Terminal) bool { return slices.Contains(b.Points(), t) }
