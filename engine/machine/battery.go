package machine

// charged is the voltage of a battery of nominal 12 V at a state of charge.
type charged struct{ charge, volts float64 }

// Open-circuit volts at rest, straight lines between. Flooded: a widely
// reproduced table, seen on a vendor's page. AGM and LFP from memory, ±0.05 V; a
// design may differ by 0.1 V.
var restVolts = map[Chemistry][]charged{
	Flooded: {{0, 11.89}, {0.25, 12.06}, {0.5, 12.24}, {0.75, 12.45}, {1, 12.65}},
	AGM:     {{0, 11.80}, {0.25, 12.00}, {0.5, 12.30}, {0.75, 12.60}, {1, 12.80}},
	LFP:     {{0, 12.0}, {0.1, 12.8}, {0.25, 13.0}, {0.5, 13.18}, {0.75, 13.3}, {0.9, 13.35}, {1, 13.5}},
}

// Cells is how many cells in series a battery has.
func (b Build) Cells() int {
	switch {
	case b.Battery == LFP:
		return b.Volts / 3
	default:
		return b.Volts / 2
	}
}

// RestVolts is the voltage of a battery that has rested, by its state of charge
// and the cells that are left.
func (m Machine) RestVolts() float64 {
	return float64(m.Build.Cells()-m.Battery.Shorted) * cellVolts(m.Build.Battery, m.Battery.Charge)
}

func cellVolts(c Chemistry, charge float64) float64 {
	t := restVolts[c]
	charge = min(max(charge, 0), 1)
	i := 1
	for i < len(t)-1 && charge > t[i].charge {
		i++
	}
	low, high := t[i-1], t[i]
	volts := low.volts + (charge-low.charge)/(high.charge-low.charge)*(high.volts-low.volts)
	return volts / float64(Build{Battery: c, Volts: 12}.Cells())
}
