package engine_test

import (
	"fmt"
	"math"

	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/uncertainty"
	"coilbook/engine/winding"
)

func init() {
	register(map[string]computation{
		"star pairs, turns shorted": func(in *inputs) answers {
			in.must(in.text("order") == "AB,BC,CA; fault in phase A", "order of leads")
			return pairsWith(in, winding.Star, shortedTurns(in))
		},
		"delta pairs, turns shorted": func(in *inputs) answers {
			in.must(in.text("order") == "AB,BC,CA; fault in branch AB", "order of leads")
			return pairsWith(in, winding.Delta, shortedTurns(in))
		},
		"delta pairs, terminals bridged": func(in *inputs) answers {
			in.must(in.text("order") == "AB,BC,CA", "order of leads")
			return pairsWith(in, winding.Delta, winding.Fault{Kind: winding.Bridged, To: 1})
		},
		"star pairs, phase shorted": func(in *inputs) answers {
			return pairsWith(in, winding.Star, winding.Fault{Kind: winding.PhaseShorted})
		},
		"star to core, neutral grounded": func(in *inputs) answers {
			return toCoreWith(in, winding.Star, winding.Fault{Kind: winding.NeutralToCore})
		},
		"star to core, phase grounded": func(in *inputs) answers {
			return toCoreWith(in, winding.Star, winding.Fault{Kind: winding.PhaseToCore, Share: in.number("x")})
		},
		"delta to core, terminal grounded": func(in *inputs) answers {
			return toCoreWith(in, winding.Delta, winding.Fault{Kind: winding.LeadToCore})
		},
		"star from pairs":            starFromPairs,
		"noise gain of solving":      noiseGain,
		"insulation factor to 40 °C": insulationFactor,
	})
	register(map[string]computation{
		"decision limit of shorted turns": func(in *inputs) answers {
			return only(connectedAs(in).DecisionLimit(in.number("u_rel")))
		},
		"detection limit of shorted turns": func(in *inputs) answers {
			return only(connectedAs(in).DetectionLimit(in.number("u_rel")))
		},
		"shorted turns told by ohms":                                      toldByOhms,
		"shorted turns told by two ohm readings":                          toldByTwoOhms,
		"shorted turns told by volts and amperes":                         toldByAmperes,
		"shorted turns told by volts, phase to phase":                     toldByVolts,
		"shorted turns told by volts, phase to phase, temperatures apart": toldByVoltsApart,
	})
}

func assembled(in *inputs, c winding.Connection, f winding.Fault) *winding.Circuit {
	r := ohm(in, "R")
	return winding.Assemble(c, []quantity.Ohm{r, r, r}, f)
}

func shortedTurns(in *inputs) winding.Fault {
	return winding.Fault{Kind: winding.TurnsShorted, Share: in.number("k")}
}

func pairsWith(in *inputs, c winding.Connection, f winding.Fault) answers {
	p := assembled(in, c, f).Pairs()
	return answers{"": []float64{float64(p[0]), float64(p[1]), float64(p[2])}}
}

func toCoreWith(in *inputs, c winding.Connection, f winding.Fault) answers {
	w := assembled(in, c, f)
	return answers{"": []float64{float64(w.ToCore(0)), float64(w.ToCore(1)), float64(w.ToCore(2))}}
}

func starFromPairs(in *inputs) answers {
	p := winding.Pairs{ohm(in, "AB"), ohm(in, "BC"), ohm(in, "CA")}
	phases, _, err := winding.Star.Solve(p, uncertainty.Certain(3))
	in.must(err == nil, "the pairs are those of a star")
	return answers{"Ra": float64(phases[0]), "Rb": float64(phases[1]), "Rc": float64(phases[2])}
}

// noiseGain is at balance, with equal and independent doubts.
func noiseGain(in *inputs) answers {
	const u = 1e-4
	gain := func(c winding.Connection) float64 {
		_, cov, err := c.Solve(winding.Pairs{1, 1, 1}, uncertainty.Independent(u, u, u))
		in.must(err == nil, "a balanced winding can be solved")
		return cov.U(0) / u
	}
	return answers{"star_u_phase_over_u_LL": gain(winding.Star), "delta_u_branch_over_u_LL": gain(winding.Delta)}
}

func insulationFactor(in *inputs) answers {
	k, ok := winding.Halving.Factor(celsius(in, "T"))
	in.must(ok, "the rule holds at T")
	return only(k)
}

func connectedAs(in *inputs) winding.Connection {
	c := map[string]winding.Connection{"star": winding.Star, "delta": winding.Delta}[in.text("conn")]
	in.must(in.number("factor") == c.SharePerDrop(), "factor is the one of the connection")
	return c
}

// told is the smallest share of a star that shows at a relative doubt.
func told(uRel float64) answers {
	return answers{"u_rel": uRel, "k_min": winding.Star.DecisionLimit(uRel)}
}

func toldByOhms(in *inputs) answers {
	r := in.number("R_LL")
	u := readAs(in, r, "ohm", 1)
	return answers{"u": u, "k_min": winding.Star.DecisionLimit(u / r)}
}

// readAs is the doubt of a reading under an accuracy written as "0.8%+3d, 0.1 ohm".
func readAs(in *inputs, reading float64, unit string, factor float64) float64 {
	var percent, digits, step float64
	var stepUnit string
	n, err := fmt.Sscanf(in.text("spec"), "%f%%+%fd, %f %s", &percent, &digits, &step, &stepUnit)
	in.must(n == 4 && err == nil && stepUnit == unit, "an accuracy that can be read")
	a := meter.Accuracy{Percent: percent, Digits: digits}
	return uncertainty.Rectangular(a.HalfWidth(reading, step*factor))
}

// toldByTwoOhms is one pair over another on one range: gain and offset cancel,
// and both quantisations stay.
func toldByTwoOhms(in *inputs) answers {
	u := uncertainty.Resolution(in.number("lsd")) * math.Sqrt2 / in.number("R_LL")
	return only(winding.Star.DecisionLimit(u))
}

// toldByAmperes has 180.0 mV over the winding, as in the rows beside it, read
// within 0.5 % and two digits (common practice, no source).
func toldByAmperes(in *inputs) answers {
	i := in.number("I")
	volts := uncertainty.Rectangular(meter.Accuracy{Percent: 0.5, Digits: 2}.HalfWidth(0.180, 0.0001)) / 0.180
	return told(math.Hypot(readAs(in, i, "mA", 0.001)/i, volts))
}

// betweenPhases is the relative doubt of one phase's volts over a reference
// resistor's, over the same of another phase: four readings of one range, whose
// gain, here 0.5 %, cancels.
func betweenPhases(vx, vref, digits, step float64) float64 {
	x := []float64{vx, vref, vx, vref}
	u := uncertainty.Rectangular(digits * step)
	cov := uncertainty.Independent(u, u, u, u).Plus(uncertainty.Common(uncertainty.Rectangular(0.005), x...))
	_, uRel := uncertainty.Propagate(func(x []float64) float64 { return x[0] / x[1] / (x[2] / x[3]) }, x, cov)
	return uRel
}

func toldByVolts(in *inputs) answers {
	return told(betweenPhases(in.number("Vx_mV"), in.number("Vref_mV"), in.number("digits"), in.number("lsd")))
}

// toldByVoltsApart adds to the readings of the row before what the phases may
// differ in temperature.
func toldByVoltsApart(in *inputs) answers {
	apart := winding.RelativeDoubt(winding.Reference, in.number("dT_half_width"))
	return told(math.Hypot(betweenPhases(180, 141, 2, 0.1), apart))
}
