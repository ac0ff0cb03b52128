package assess

import (
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

// Learned is what a session of the meter's self-check tells about the meter.
func (b Bench) Learned() meter.Learned {
	var sc meter.SelfCheck
	for _, c := range b.Plan {
		l := b.Line(c)
		if !l.Read() {
			continue
		}
		m := l.Measured
		switch {
		case c.Measures == spec.LeadZero:
			sc.LeadZero = &m
		case c.Measures == spec.BatteryVolts:
			sc.BatteryDC = &m
		case c.Measures == spec.BatteryOnAC && c.Swapped:
			sc.BatteryACSwapped = &m
		case c.Measures == spec.BatteryOnAC:
			sc.BatteryAC = &m
		case c.Measures == spec.KnownResistor:
			sc.Resistor = &m
		}
	}
	if k := b.State.Setup.Kit; k != nil {
		sc.Known = meter.KnownResistor{Nominal: quantity.Ohm(k.ResistorOhms), Tolerance: k.ResistorPercent / 100}
	}
	return sc.Learned()
}
