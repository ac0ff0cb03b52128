package assess

import (
	"coilbook/engine/check"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
	"coilbook/engine/spec"
)

// UnitsToAsk lists the units between which only the display can decide: where
// the digits would condemn a part in the unit taken for granted and pass it in
// another, and where a meter that picks its range itself reads on scale what
// must be open. It is empty when the unit was chosen or written, or when it
// makes no difference.
func (b Bench) UnitsToAsk(c check.Check, r session.Reading, chosen bool) []quantity.Unit {
	line := b.Judge(c, r)
	if chosen || line.Unread != nil || line.Typed.State != quantity.Number || line.Typed.Unit.Name != r.Unit {
		return nil
	}
	units := quantity.Units(c.Kind())
	if line.Verdict.Limit.Open && b.Meter.Auto {
		return units
	}
	if line.Verdict.Outcome != spec.OutOfSpec {
		return nil
	}
	ask := []quantity.Unit{line.Typed.Unit}
	for _, u := range units {
		other := r
		other.Unit = u.Name
		if l := b.Judge(c, other); l.Unread == nil && u.Name != r.Unit && l.Verdict.Outcome == spec.InSpec && !l.Verdict.Limit.Open {
			ask = append(ask, u)
		}
	}
	if len(ask) < 2 {
		return nil
	}
	return ask
}
