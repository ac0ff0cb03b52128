package engine_test

import (
	"coilbook/engine/quantity"
	"coilbook/engine/winding"
)

func init() {
	register(map[string]computation{
		"copper resistance ratio": func(in *inputs) answers {
			return only(material(in).Ratio(celsius(in, "T1"), celsius(in, "T2")))
		},
		"copper coefficient at 20 °C": func(in *inputs) answers {
			return only(winding.Copper.Coefficient(winding.Reference))
		},
		"temperature rise by resistance": func(in *inputs) answers {
			r1, t1, r2 := ohm(in, "R1"), celsius(in, "T1"), ohm(in, "R2")
			return answers{
				"T2":   float64(material(in).Warmed(r1, t1, r2)),
				"rise": material(in).Rise(r1, t1, r2, celsius(in, "Tamb")),
			}
		},
		"resistance at 20 °C": func(in *inputs) answers {
			in.must(material(in) == winding.Copper, "k is the one that the app uses")
			return only(float64(winding.ToReference(ohm(in, "R"), celsius(in, "T"))))
		},
		"wire gauge diameter": func(in *inputs) answers {
			return only(float64(gauge(in).Diameter()) * 1000)
		},
		"wire gauge resistance": func(in *inputs) answers {
			in.must(in.text("rho") == "IACS 1/58 uohm.m", "resistivity is that of the copper standard")
			return only(gauge(in).OhmPer1000Feet())
		},
	})
}

func material(in *inputs) winding.Material { return winding.Material(in.number("k")) }

func gauge(in *inputs) winding.Gauge { return winding.Gauge(in.number("awg")) }

func celsius(in *inputs, key string) quantity.Celsius { return quantity.Celsius(in.number(key)) }

func ohm(in *inputs, key string) quantity.Ohm { return quantity.Ohm(in.number(key)) }
