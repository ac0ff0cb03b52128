package rig

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/machine"
)

// sparksSeen is how many sparks in a second of cranking are taken for a spark.
const sparksSeen = 2

// Seen answers a look at a machine with yes or no. Whether a plug looks burnt is
// left to luck, a number from 0 to 1.
func Seen(m machine.Machine, c check.Check, luck float64) (bool, error) {
	s := machine.Of(c).State
	parts := m.InState(s)
	good := machine.Typical(m.Build).Spark
	switch c.Looks {
	case check.FuseBlown:
		return math.IsInf(parts.Harness.Fuse.Ohms, 1), nil
	case check.PlugBurnt:
		return luck < looksBurnt(parts.Harness), nil
	case check.SparkAtGoodPlug, check.SparkWarm:
		m = m.Changed(func(m *machine.Machine) { m.Spark.Cap, m.Spark.Fouling = good.Cap, good.Fouling })
	case check.SparkAtLead:
		m = m.Changed(func(m *machine.Machine) { m.Spark.Cap, m.Spark.Fouling = wire, good.Fouling })
	case check.SparkWithoutKill:
		m = m.Changed(func(m *machine.Machine) { m.Kill = machine.Kill{Chafed: math.Inf(1)} })
	}
	n, err := Sparks(m, s, 1, nil)
	return n >= sparksSeen, err
}

// looksBurnt is how likely a plug looks it: pins that grew hot mostly do.
func looksBurnt(h machine.Harness) float64 {
	for _, p := range h.ChargePins {
		if p.Ohms+p.Loose > 0.4 {
			return 0.75
		}
	}
	if h.OtherPins.Ohms > 10 {
		return 0.6
	}
	return 0.05
}
