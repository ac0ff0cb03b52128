package rig

import (
	"math"
	"strconv"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/transient"
)

// Check is what the instrument shows at a check of the catalogue, on the range
// that the check asks for and, should that show over-range, on the lowest that
// does not. The gauge and the meter's own leads have no waveform.
func Check(m machine.Machine, c check.Check, in Instrument, k machine.Kit) (Display, error) {
	if c.Instrument == check.FeelerGauge {
		return gauge(m.InState(machine.State{}).Reluctor.Gap), nil
	}
	dial, ok := c.Dial(in.Meter)
	if !ok {
		return Display{Unread: true}, nil
	}
	if c.Red == check.OtherProbe {
		return in.display(meter.Ohms, dial.Label, []float64{in.Leads}), nil
	}
	d, err := at(m, c, in, k, dial.Label)
	for _, r := range in.Meter.Ranges[c.Function] {
		if err != nil || d.State != quantity.OverRange || r.Full <= dial.Full {
			continue
		}
		d, err = at(m, c, in, k, r.Label)
	}
	return d, err
}

func at(m machine.Machine, c check.Check, in Instrument, k machine.Kit, dial string) (Display, error) {
	p := machine.Of(c)
	r := wired(m, p.State, sidesOf(p.Red, p.Black)...)
	if c.Method == check.VoltAmp || c.Red == check.ResistorA {
		r.wireKit(c, k)
	}
	if c.PeakHold {
		r.wireAdapter(p, in, k)
		p.Red, p.Black = adapterPlus, adapterMinus
	}
	return r.show(p, in, dial)
}

// wireKit lays the known resistor, alone for an ohm reading, else in series with
// a bulb, a battery and the winding of the check.
func (r *Rig) wireKit(c check.Check, k machine.Kit) {
	near, far := r.node(check.ResistorA), r.node(check.ResistorB)
	r.join(near, far, k.ResistorOhms)
	if c.Function == meter.Ohms {
		return
	}
	plus, end := r.c.Node(""), transient.Ground
	if len(c.Leads) > 1 {
		end = r.node(check.Charge(c.Leads[1]))
	}
	r.c.Supply(plus, end, transient.Constant(k.SupplyVolts), wire)
	r.join(plus, near, k.BulbOhms)
	r.join(far, r.node(check.Charge(c.Leads[0])), wire)
}

const (
	adapterPlus  check.Terminal = "adapter-plus"
	adapterMinus check.Terminal = "adapter-minus"
)

// wireAdapter lays a peak-hold adapter between the probes: a diode, its
// capacitor, its bleeder.
func (r *Rig) wireAdapter(p machine.Probing, in Instrument, k machine.Kit) {
	plus, minus := r.node(adapterPlus), r.node(adapterMinus)
	r.c.Diode(r.node(p.Red), plus, transient.Junction{Volts: float64(meter.DiodeDrop), Ohms: 1})
	r.join(r.node(p.Black), minus, wire)
	r.c.Capacitor(plus, minus, k.AdapterFarads, 0)
	if k.BleederOhms > 0 {
		r.join(plus, minus, k.BleederOhms)
	}
	r.held = k.AdapterFarads * float64(in.Meter.InputDC)
}

// gauge reads a gap in leaves of a twentieth of a millimetre.
func gauge(gap float64) Display {
	const leaf = 0.05
	mm := math.Floor(gap*1e3/leaf+1e-9) * leaf
	return Display{Value: mm * 1e-3, Unit: quantity.Millis, Texts: []string{strconv.FormatFloat(mm, 'f', 2, 64)}}
}

// Typed is what one would type of a display: its digits, "OL" for over-range, and
// "won't settle" for digits that never come to rest.
func (d Display) Typed() string {
	switch d.State {
	case quantity.Unsettled:
		return "won't settle"
	case quantity.OverRange:
		return "OL"
	}
	return d.Text()
}
