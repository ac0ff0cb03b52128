package engine_test

import (
	"math"

	"coilbook/engine/circuit"
)

var arrangementNames = map[string]circuit.Arrangement{
	"star":                         circuit.StarBridge,
	"star, one diode open":         circuit.StarDiodeOpen,
	"star, one diode shorted":      circuit.StarDiodeShorted,
	"star, one phase open":         circuit.StarPhaseOpen,
	"delta":                        circuit.DeltaBridge,
	"delta, one branch open":       circuit.DeltaBranchOpen,
	"full wave":                    circuit.FullWave,
	"half wave":                    circuit.HalfWave,
	"full wave, one diode open":    circuit.FullWaveDiodeOpen,
	"full wave, one diode shorted": circuit.FullWaveDiodeShorted,
}

var rectifierNames = map[string]circuit.Rectified{
	"three-phase bridge": circuit.ThreePhaseMean, "full wave": circuit.FullWaveMean, "half wave": circuit.HalfWaveMean,
}

func init() {
	register(map[string]computation{
		"charging current":            chargingCurrent,
		"normalised charging current": normalisedCharging,
		"extended fundamental current": func(in *inputs) answers {
			a, s := generator(in)
			return only(a.ExtendedFundamental(s, circuit.Sink{Volts: in.number("V_sink"), DiodeVolts: in.number("Vd")}))
		},
		"boundary of continuous conduction": func(in *inputs) answers {
			return only(circuit.Continuous(in.number("omegaL_over_R")))
		},
		"generator frequency": func(in *inputs) answers {
			return only(circuit.Frequency(in.number("poles"), in.number("rpm")))
		},
		"generated emf": func(in *inputs) answers {
			return only(circuit.EMF(in.number("f"), in.number("N"), in.number("kw"), in.number("flux")))
		},
		"ideal rectifier mean": func(in *inputs) answers {
			rectifier, known := rectifierNames[in.text("rectifier")]
			in.must(known, "the rectifier is one of the three")
			return only(rectifier.Of(1))
		},
		"capacitor energy": func(in *inputs) answers {
			return only(circuit.Energy(in.number("C"), in.number("V")))
		},
		"ignition capacitor charging": capacitorCharging,
	})
}

// generator is the machine of a row. A star has its phases between terminal and
// star point, a delta and a coil between their terminals.
func generator(in *inputs) (circuit.Arrangement, circuit.Source) {
	a, known := arrangementNames[in.text("arrangement")]
	in.must(known, "the arrangement is one of the forward model")
	rpm := in.number("rpm")
	s := circuit.Source{
		Peak:    math.Sqrt2 * in.number("volts_per_rpm") * rpm,
		Ohms:    in.number("R"),
		Henries: in.number("L"),
		Hertz:   circuit.Frequency(in.number("poles"), rpm),
	}
	if a <= circuit.StarPhaseOpen {
		s.Peak /= math.Sqrt(3)
	}
	return a, s
}

func chargingCurrent(in *inputs) answers {
	a, s := generator(in)
	k := circuit.Sink{Volts: in.number("V_sink")}
	var c circuit.Current
	if in.has("Vd") {
		k.DiodeVolts = in.number("Vd")
		c = a.Charging(s, k)
	} else {
		c = chargingThrough(a, s, k, circuit.Diode{Saturation: in.number("IS"), Emission: in.number("N"), Ohms: in.number("RS")})
	}
	cutIn := (k.Volts + float64(a.Drops())*k.DiodeVolts) / a.CutInRatio()
	in.must(s.Peak > 1.1*cutIn, "the speed is above 1.1 times that of cut-in")
	return answers{"Iavg": c.Mean, "Iac_rms": c.Ripple}
}

// chargingThrough puts a straight line for the diodes' curve, touching it at the
// charge-weighted mean of the current that results.
func chargingThrough(a circuit.Arrangement, s circuit.Source, k circuit.Sink, d circuit.Diode) (c circuit.Current) {
	amps := 1.0
	for range 8 {
		k.DiodeVolts, k.DiodeOhms = d.Knee(amps)
		if c = a.Charging(s, k); c.Mean > 0 {
			amps = c.Mean + c.Ripple*c.Ripple/c.Mean
		}
	}
	return c
}

func normalisedCharging(in *inputs) answers {
	angle := math.Atan(in.number("omegaL_over_R"))
	s := circuit.Source{Peak: 1, Ohms: math.Cos(angle), Henries: math.Sin(angle), Hertz: 1 / (2 * math.Pi)}
	k := circuit.Sink{Volts: in.number("V0_over_Vs")}
	return answers{
		"Iavg_times_absZ_over_Vs": circuit.StarBridge.Charging(s, k).Mean,
		"EFA_value":               circuit.StarBridge.ExtendedFundamental(s, k),
	}
}

func capacitorCharging(in *inputs) answers {
	e := circuit.Exciter{
		Peak: in.number("Vp"), Ohms: in.number("R"), Henries: in.number("L"),
		Hertz: in.number("f"), DiodeVolts: in.number("Vd"),
	}
	c := in.number("C")
	return answers{
		"v1": e.Fills(c, 0, 1), "v2": e.Fills(c, 0, 2), "v3": e.Fills(c, 0, 3),
		"v5": e.Fills(c, 0, 5), "v10": e.Fills(c, 0, 10),
	}
}
