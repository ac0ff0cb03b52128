package machine

import (
	"coilbook/engine/check"
	"coilbook/engine/meter"
)

// Kit is what a check uses besides the meter: a known resistor and a bulb in
// series with a battery, a peak-hold adapter with its bleeder. Ω, V, F.
type Kit struct {
	ResistorOhms, BulbOhms, SupplyVolts, AdapterFarads, BleederOhms float64
}

// Predict is what an ideal display would show at a check. Besides what Shows does
// not know: a peak without an adapter's capacitor, and that of a box that fires.
func (m Machine) Predict(c check.Check, with meter.Meter, k Kit) Prediction {
	switch {
	case c.Instrument == check.FeelerGauge:
		return known(m.InState(State{}).Reluctor.Gap)
	case c.Instrument == check.Eyes:
		return known(m.Seen(c.Looks, Of(c).State))
	case c.Function == meter.AmpsDC:
		return known(m.keyOffAmps())
	case c.Red == check.OtherProbe:
		return known(float64(with.Leads.Low+with.Leads.High) / 2)
	case c.Red == check.ResistorA && c.Function == meter.Ohms:
		return known(k.ResistorOhms)
	case c.Method == check.VoltAmp:
		return m.drop(c, with, k)
	case c.PeakHold:
		return m.peak(c, with, k)
	}
	return m.Shows(Of(c), with)
}

func (m Machine) peak(c check.Check, with meter.Meter, k Kit) Prediction {
	p := Of(c)
	a, found := m.Build.pointAt(p.Red)
	b, also := m.Build.pointAt(p.Black)
	if !found || !also {
		return Prediction{}
	}
	at := probed{a, b, p.Function, p.State}
	now := m.InState(p.State)
	if !now.loose() {
		return now.peakHold(at, &with, k)
	}
	return now.shaking(func(m *Machine) Prediction { return m.peakHold(at, &with, k) })
}

// drop is over the known resistor or the winding, both in series with the bulb
// and the battery.
func (m Machine) drop(c check.Check, with meter.Meter, k Kit) Prediction {
	winding := c
	winding.Red, winding.Black, winding.Function = windingOf(c)
	ohms := m.Shows(Of(winding), with)
	if !ohms.Known {
		return ohms
	}
	series := k.BulbOhms + k.ResistorOhms
	over, rest := k.ResistorOhms, k.BulbOhms+ohms.Value
	if c.Red != check.ResistorA {
		over, rest = ohms.Value, series
	}
	conducts := 1/over + 1/float64(with.InputDC) // the meter lies beside it
	return known(k.SupplyVolts / (1 + rest*conducts))
}

// windingOf is between the leads of a volt-amp check, or from its one lead to the
// core.
func windingOf(c check.Check) (red, black check.Terminal, f meter.Function) {
	if len(c.Leads) < 2 {
		return check.Charge(1), check.Core, meter.Ohms
	}
	return check.Charge(c.Leads[0]), check.Charge(c.Leads[1]), meter.Ohms
}
