package engine_test

import (
	"math"

	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

func init() {
	register(map[string]computation{
		"verdict on a resistance":      onResistance,
		"verdict on an open line":      onOpenLine,
		"verdict on alike readings":    onAlikeReadings,
		"verdict on a gap":             onGap,
		"verdict on volts at cranking": onCrankingVolts,
	})
}

// verdict answers with the outcome and how sure it is.
func verdict(v spec.Verdict) answers {
	sure := v.Probability
	if v.Outcome == spec.OutOfSpec {
		sure = 1 - sure
	}
	return answers{"outcome": v.Outcome.String(), "sure": sure}
}

// typed is a reading as a person types it, in a unit where it has none.
func typed(k quantity.Kind, text, unit string) quantity.Typed {
	u, known := quantity.UnitNamed(k, unit)
	if !known {
		panic("unit " + unit + " is not known")
	}
	t, err := quantity.Parse(k, text, u)
	if err != nil {
		panic(err)
	}
	return t
}

// measured is what the cheap meter's reading is worth.
func measured(f meter.Function, in *inputs, text, unit string, c meter.Conditions) meter.Measurement {
	m := meter.Cheap()
	dial, known := m.RangeLabelled(f, in.text("dial"))
	in.must(known, "the meter has this range")
	t := typed(f.Kind(), text, unit)
	return m.Measure(f, m.RangeOf(f, dial, t), t, c)
}

// leadZero is read on the lowest range.
func leadZero(in *inputs) meter.Conditions {
	m := meter.Cheap()
	t := typed(quantity.Resistance, in.text("lead_zero"), "Ω")
	zero := m.Measure(meter.Ohms, m.Ranges[meter.Ohms][0], t, meter.Conditions{RawLeads: true})
	return meter.Conditions{LeadZero: &zero}
}

func onResistance(in *inputs) answers {
	unit := in.text("unit")
	l := between(in, spec.PickupResistance, quantity.Resistance, unit)
	at := quantity.Celsius(in.number("celsius"))
	l.Condition.AtCelsius = &at
	return verdict(spec.Judge(l, measured(meter.Ohms, in, in.text("reading"), unit, leadZero(in)), spec.AirUnknown()))
}

func between(in *inputs, m spec.Measurand, k quantity.Kind, unit string) spec.Limit {
	u, known := quantity.UnitNamed(k, unit)
	in.must(known, "the unit suits the quantity")
	return spec.Between(m, k, u.SI(in.numberOr("low", math.Inf(-1))), u.SI(in.numberOr("high", math.Inf(1))))
}

func onOpenLine(in *inputs) answers {
	l := spec.Between(spec.ChargeToCore, quantity.Resistance, in.number("at_least_megohms")*1e6, math.Inf(1))
	l.Open = true
	return verdict(spec.Judge(l, measured(meter.Ohms, in, in.text("reading"), "Ω", meter.Conditions{}), spec.AirUnknown()))
}

func onAlikeReadings(in *inputs) answers {
	l := spec.Limit{Measurand: spec.ChargeBalance, Low: math.Inf(-1), High: in.number("within"), Ratio: true}
	var readings []meter.Measurement
	for _, text := range input[[]string](in, "readings") {
		readings = append(readings, measured(meter.Ohms, in, text, "Ω", leadZero(in)))
	}
	return verdict(spec.JudgeBalance(l, readings))
}

func onGap(in *inputs) answers {
	unit := in.text("unit")
	l := between(in, spec.PickupGap, quantity.Length, unit)
	return verdict(spec.Judge(l, meter.MeasureGap(typed(quantity.Length, in.text("reading"), unit)), spec.AirUnknown()))
}

func onCrankingVolts(in *inputs) answers {
	band := in.numbers("hertz")
	in.must(len(band) == 2, "the band has two ends")
	c := meter.Conditions{Low: quantity.Hertz(band[0]), High: quantity.Hertz(band[1]), Source: quantity.Ohm(in.number("source_ohms"))}
	l := between(in, spec.ExciterCranking, quantity.VoltageAC, "V")
	return verdict(spec.Judge(l, measured(meter.VoltsAC, in, in.text("reading"), "V", c), spec.AirUnknown()))
}
