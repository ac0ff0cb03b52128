package engine_test

import (
	"math"

	"coilbook/engine/uncertainty"
)

func init() {
	register(map[string]computation{
		"means": func(in *inputs) answers {
			m, _ := uncertainty.Means(observed(in))
			return answers{"V": m[0], "I_mA": m[1] * 1000, "phi": m[2]}
		},
		"uncertainty of means": func(in *inputs) answers {
			_, c := uncertainty.Means(observed(in))
			return answers{"V": c.U(0), "I_mA": c.U(1) * 1000, "phi": c.U(2)}
		},
		"correlation of means": func(in *inputs) answers {
			_, c := uncertainty.Means(observed(in))
			return answers{"r_VI": c.R(0, 1), "r_Vphi": c.R(0, 2), "r_Iphi": c.R(1, 2)}
		},
		"impedance": func(in *inputs) answers {
			y, _ := impedance(uncertainty.Means(observed(in)))
			return answers{"R": y[0], "X": y[1], "Z": y[2]}
		},
		"correlation of impedance": func(in *inputs) answers {
			_, c := impedance(uncertainty.Means(observed(in)))
			return answers{"r_RX": c.R(0, 1), "r_RZ": c.R(0, 2), "r_XZ": c.R(1, 2)}
		},
		"uncertainty of impedance": func(in *inputs) answers {
			_, c := impedance(uncertainty.Means(observed(in)))
			return uncertaintyByPart(c)
		},
		"uncertainty of impedance, correlation ignored": func(in *inputs) answers {
			m, c := uncertainty.Means(observed(in))
			_, c = impedance(m, uncertainty.Independent(c.U(0), c.U(1), c.U(2)))
			return uncertaintyByPart(c)
		},
		"uncertainty of impedance, row by row": func(in *inputs) answers {
			rows := observed(in)
			for i, x := range rows {
				rows[i], _ = impedance(x, uncertainty.Certain(3))
			}
			_, c := uncertainty.Means(rows)
			return uncertaintyByPart(c)
		},
	})
}

// observed holds one row per repetition: volt, ampere, radian.
func observed(in *inputs) [][]float64 {
	volts, milliamperes, radians := in.numbers("V_volt"), in.numbers("I_mA"), in.numbers("phi_rad")
	rows := make([][]float64, len(volts))
	for i := range rows {
		rows[i] = []float64{volts[i], milliamperes[i] / 1000, radians[i]}
	}
	return rows
}

// impedance gives resistance, reactance and their magnitude in ohm.
func impedance(x []float64, cov uncertainty.Covariance) ([]float64, uncertainty.Covariance) {
	return uncertainty.PropagateAll([]func([]float64) float64{
		func(x []float64) float64 { return x[0] / x[1] * math.Cos(x[2]) },
		func(x []float64) float64 { return x[0] / x[1] * math.Sin(x[2]) },
		func(x []float64) float64 { return x[0] / x[1] },
	}, x, cov)
}

func uncertaintyByPart(c uncertainty.Covariance) answers {
	return answers{"R": c.U(0), "X": c.U(1), "Z": c.U(2)}
}
