package diagnose

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/fault"
	"coilbook/engine/machine"
)

// complains is how likely the owner of a machine comes with a symptom. Bounds and
// shares: assumptions, no source.
func complains(m machine.Machine, s fault.Symptom) float64 {
	return seldom + (1-seldom)*shows(m, s)
}

// seldom is how often a complaint has other causes. An assumption, no source.
const seldom = 0.03

func shows(m machine.Machine, s fault.Symptom) float64 {
	cranking := machine.State{Plug: check.Together, Engine: check.Cranking, Key: true}
	warm := cranking
	warm.Hot = true
	switch s {
	case fault.WontCharge:
		return 1 - (1-fallsBehind(m))*(1-weakens(m))
	case fault.Overcharges:
		return steps(m.ChargeState(running(check.At5000)).BatteryVolts*12/float64(m.Build.Volts), 15, 0.15)
	case fault.NoSpark, fault.WeakSpark:
		return 1 - m.Seen(check.SparkAtPlug, cranking)
	case fault.CutsOutHot:
		return m.Seen(check.SparkAtPlug, cranking) * (1 - m.Seen(check.SparkAtPlug, warm))
	case fault.FlatStanding:
		return 1 - (1-steps(m.Harness.Drain, 0.02, 0.004))*(1-0.5*weakens(m))*(1-0.7*fallsBehind(m)) // what is not charged goes flat too
	}
	return 1 // on the bench nothing is known
}

func running(e check.Engine) machine.State {
	return machine.State{Plug: check.Together, Engine: e, Key: true}
}

// fallsBehind is how likely charging is seen to be poor: the battery hardly above
// its rest at speed.
func fallsBehind(m machine.Machine) float64 {
	s := m.ChargeState(running(check.At5000))
	per := float64(m.Build.Volts) / 12
	return 1 - steps((s.BatteryVolts-m.RestVolts())/per, 0.55, 0.12)
}

// weakens is how likely a battery is taken for one that is not charged: it gives
// way under the starter or stands low.
func weakens(m machine.Machine) float64 {
	worn := 0.0
	if volts := m.CrankingSpeed() / m.Starter.PerVolt; !m.Build.Kick && volts < 0.8*float64(m.Build.Volts) {
		worn = 0.6
	}
	if m.Harness.Drain > 0.02 {
		worn = math.Max(worn, 0.5)
	}
	if m.Battery.Charge < 0.3 {
		worn = math.Max(worn, 0.6)
	}
	return worn
}

// steps rises from 0 to 1 about a value.
func steps(x, at, width float64) float64 { return 1 / (1 + math.Exp(-(x-at)/width)) }
