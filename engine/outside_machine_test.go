package engine_test

import "coilbook/engine/machine"

func init() {
	register(map[string]computation{
		"firing rate":           firingRate,
		"flux over a wider gap": fluxOverAGap,
		"rest voltage":          restVoltage,
	})
}

func firingRate(in *inputs) answers {
	return only(machine.Firing(in.number("rpm"), int(in.number("stroke")), int(in.number("cyl"))))
}

func fluxOverAGap(in *inputs) answers {
	usual := machine.Typical(machine.Usual()).Reluctor
	usual.Lambda, usual.Gap = in.number("tooth_pitch_mm")*1e-3, usual.Usual+in.number("extra_gap_mm")*1e-3
	return only(usual.Reach())
}

func restVoltage(in *inputs) answers {
	b := machine.Usual()
	b.Battery = machine.Chemistry(in.text("chemistry"))
	m := machine.Typical(b)
	m.Battery.Charge = in.number("charge")
	return only(m.RestVolts())
}
