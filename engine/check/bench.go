package check

import "slices"

// OnTheBench lists the checks of a bare stator: nothing has to be got at.
func OnTheBench(b Build) []Check {
	out := slices.DeleteFunc(Whole(b), func(c Check) bool { return !BareStator(c) })
	for i := range out {
		out[i].Needs = nil
	}
	return out
}

// BareStator reports whether a check can be done at a stator that lies on the
// bench: nothing turns, and what it plugs into is not there.
func BareStator(c Check) bool {
	return c.Engine == Stopped && c.Plug == Apart && c.Instrument == Multimeter && !c.Key && !c.Hot && c.Method == "" &&
		slices.Contains([]Part{MeterLeads, CoreGround, ChargeWinding, Pickup, Exciter}, c.Part)
}

// GivenOnBench are the accesses that a stator on the bench has already.
func GivenOnBench() []Access { return []Access{SidePanel, PlugParted} }
