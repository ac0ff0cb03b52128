package engine_test

import (
	"coilbook/engine/quantity"
	"coilbook/engine/uncertainty"
	"coilbook/engine/winding"
)

func init() {
	register(map[string]computation{
		"touch of the core":               touchOfTheCore,
		"balance limits of shorted turns": balanceLimits,
		"wire from its gauge": func(in *inputs) answers {
			w, err := wound(in, 1).FromGauge(gauge(in))
			in.must(err == nil, "the gauge is one")
			return only(float64(w.Length))
		},
		"wire from its turns": func(in *inputs) answers {
			w, err := wound(in, int(in.number("in_hand"))).FromTurns(in.number("turns"), 0, quantity.Metre(in.number("turn")), 0)
			return estimated(in, w, err)
		},
		"wire from its weight": func(in *inputs) answers {
			const kilogramsPerPound = 0.45359237 // exact, international pound of 1959
			w, err := wound(in, 1).FromWeight(winding.Kilogram(in.number("lb")*kilogramsPerPound), 0)
			return estimated(in, w, err)
		},
	})
}

func touchOfTheCore(in *inputs) answers {
	toCore, between := ohms(in, "to_core"), ohms(in, "between")
	var u []float64
	for range len(toCore) + len(between) {
		u = append(u, in.number("u"))
	}
	t := winding.ReadTouch(joinedAs(in), toCore, between, uncertainty.Independent(u...))
	return answers{"place": t.Place.String(), "phase": float64(t.Phase), "lead": float64(t.Lead), "share": t.Share,
		"touch": float64(t.Resistance), "leak": t.Leak}
}

func balanceLimits(in *inputs) answers {
	decision, detection := joinedAs(in).BalanceLimits(in.number("limit"), in.number("u"))
	return answers{"decision": decision, "detection": detection}
}

func joinedAs(in *inputs) winding.Connection {
	c, known := map[string]winding.Connection{"star": winding.Star, "delta": winding.Delta, "single": winding.Single,
		"two coils": winding.Two}[in.text("conn")]
	in.must(known, "the connection is one known here")
	return c
}

func wound(in *inputs, inHand int) winding.Coil {
	return winding.Coil{Resistance: ohm(in, "R"), InHand: inHand}
}

func estimated(in *inputs, w winding.Wire, err error) answers {
	in.must(err == nil && w.HasGauge, "the figures are those of a wire with a gauge")
	return answers{"length": float64(w.Length), "diameter": float64(w.Diameter) * 1000, "awg": float64(w.Gauge)}
}

func ohms(in *inputs, key string) []quantity.Ohm {
	var out []quantity.Ohm
	for _, r := range in.numbers(key) {
		out = append(out, quantity.Ohm(r))
	}
	return out
}
