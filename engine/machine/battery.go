package machine

// Open-circuit volts of one cell at rest by state of charge, in quarters. Lead:
// the widely reproduced table of a battery's 12.65, 12.45, 12.24, 12.06 and 11.89 V
// (seen on a vendor's page); AGM and LFP from memory, ±0.05 V a battery. They
// differ by design up to 0.1 V a battery.
var restVolts = map[Chemistry][5]float64{
	Flooded: {11.89 / 6, 12.06 / 6, 12.24 / 6, 12.45 / 6, 12.65 / 6},
	AGM:     {11.80 / 6, 12.00 / 6, 12.30 / 6, 12.60 / 6, 12.80 / 6},
	LFP:     {12.0 / 4, 13.0 / 4, 13.2 / 4, 13.3 / 4, 13.5 / 4},
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
	at := min(max(charge, 0), 1) * 4
	i := min(int(at), 3)
	return t[i] + (at-float64(i))*(t[i+1]-t[i])
}
