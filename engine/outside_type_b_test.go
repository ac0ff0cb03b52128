package engine_test

import (
	"coilbook/engine/meter"
	"coilbook/engine/uncertainty"
)

func init() {
	register(map[string]computation{
		"uncertainty of a reading": func(in *inputs) answers {
			accuracy := meter.Accuracy{Percent: in.number("pct"), Digits: in.number("digits")}
			h := accuracy.HalfWidth(in.number("reading"), in.number("lsd"))
			return answers{"half_width": h, "u": uncertainty.Rectangular(h)}
		},
		"triangular uncertainty": func(in *inputs) answers {
			return only(uncertainty.Triangular(in.number("half_width")))
		},
		"arcsine uncertainty": func(in *inputs) answers {
			return only(uncertainty.Arcsine(in.number("half_width")))
		},
		"resolution uncertainty": func(in *inputs) answers {
			return only(uncertainty.Resolution(in.number("step")))
		},
	})
}
