package practice

import "coilbook/engine/machine"

// Complaint is what the owner says.
type Complaint string

// Complaints.
const (
	NotCharging  Complaint = "not-charging"
	Overcharging Complaint = "overcharging"
	CranksSlowly Complaint = "cranks-slowly"
	AllDead      Complaint = "all-dead" // no lights, nothing
	NoSpark      Complaint = "no-spark"
	FailsWarm    Complaint = "fails-warm"
)

func complains(f machine.Fault) Complaint {
	switch f.Kind {
	case machine.NoRegulating:
		return Overcharging
	case machine.MainFuse:
		return AllDead
	case machine.Sulphated, machine.CellShorted, machine.FlatBattery, machine.BatteryTerminal:
		return CranksSlowly
	}
	switch {
	case f.HotOnly:
		return FailsWarm
	case f.Kind.Charging():
		return NotCharging
	}
	return NoSpark
}
