package screen

import (
	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
)

// usualUnit is the unit that digits without one are taken in: the reader's own
// where there is a choice, else what the meter's range shows. An entry says which
// it was, so another choice later changes no record.
func usualUnit(c check.Check, m meter.Meter) quantity.Unit {
	if u, ok := words.Units().Unit(c.Kind()); ok {
		return u
	}
	return c.Unit(m)
}

// unitAgain is the unit that a reading is taken in once more; "" stands for the
// usual one.
func unitAgain(c check.Check, r *session.Reading) string {
	if _, chosen := words.Units().Unit(c.Kind()); chosen {
		return ""
	}
	return r.Unit
}
