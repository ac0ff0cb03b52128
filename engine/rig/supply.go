package rig

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/transient"
)

// wireSupply joins battery, harness, loads and starter.
func (r *Rig) wireSupply() {
	h, n := r.parts.Harness, r.node
	r.wireBattery()
	r.contact(n(check.BatteryPlus), n(check.PlusClamp), h.Plus)
	r.contact(n(check.BatteryMinus), n(check.Core), h.Minus)
	r.contact(n(check.Core), n(check.Frame), h.Strap)
	r.contact(n(check.FuseIn), n(check.PlusClamp), h.Fuse)
	if r.state.Plug != check.RegulatorApart {
		r.feed = r.c.Resistor(n(check.RegulatorPlus), n(check.FuseIn), max(h.Feed.Ohms, wire))
	}
	if h.Drain > 0 {
		r.join(n(check.FuseIn), n(check.Frame), float64(r.made.Build.Volts)/h.Drain)
	}
	if r.state.Key {
		r.contact(n(check.FuseIn), n(check.KeyOut), h.Key)
	}
	r.join(n(check.KeyOut), n(check.Frame), h.Lamp)
	if r.state.Engine == check.Cranking {
		r.join(n(check.PlusClamp), n(check.Core), r.parts.Starter.Ohms)
	}
}

// wireBattery: what it takes up on charge lags behind the current, what it gives
// does not. The diode is that difference, not a part that one could point at.
func (r *Rig) wireBattery() {
	b := r.parts.Battery
	inner := r.c.Node("battery-inner")
	r.battery = r.c.Supply(inner, r.node(check.BatteryMinus), transient.Constant(r.parts.RestVolts()), b.Ohms)
	r.join(inner, r.node(check.BatteryPlus), b.Accept)
	r.c.Capacitor(r.node(check.BatteryPlus), inner, b.Layer, 0)
	r.c.Diode(inner, r.node(check.BatteryPlus), transient.Junction{Volts: 0, Ohms: math.Max(b.Ohms/100, wire)})
}
