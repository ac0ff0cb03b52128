package engine_test

import (
	"coilbook/engine/check"
	"coilbook/engine/circuit"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

func init() {
	register(map[string]computation{
		"forward volts":          forwardVolts,
		"shown by a diode range": diodeRange,
	})
}

func forwardVolts(in *inputs) answers {
	return only(circuit.Diode{Saturation: in.number("IS"), Emission: in.number("N")}.Volts(in.number("amps")))
}

func diodeRange(in *inputs) answers {
	m, with := machine.Typical(machine.Usual()), meter.Auto6000()
	m.Regulator.Silicon = machine.Silicon{Volts: in.number("volts_at_1mA"), Emission: in.number("N")}
	with.Drive = meter.Drive{Volts: quantity.Volt(in.number("drive_volts")), Amps: in.number("short_amps")}
	return only(m.Shows(machine.Probing{
		Red: check.RegulatorBody, Black: check.RegulatorLead(1), Function: meter.Diode, State: machine.State{Plug: check.RegulatorApart},
	}, with).Value)
}
