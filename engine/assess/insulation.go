package assess

import (
	"coilbook/engine/quantity"
	"coilbook/engine/winding"
)

// Insulation is what a reading from winding to core, or between windings, says
// against the least resistance of the standard at the winding's temperature.
type Insulation struct {
	// Shown is the full scale of the range for an open line, else the reading.
	Shown quantity.Ohm
	Open  bool
	// Least and Flattest are the minimum by the standard's two rules for
	// temperature; where they disagree the standard does not settle it.
	Least    quantity.Ohm
	Flattest quantity.Ohm
	At       quantity.Celsius
	Proof    winding.Proof
}

// InsulationOf reads a line that must be open; ok is false for others, and
// where digits won't settle.
func (b Bench) InsulationOf(l Line) (in Insulation, ok bool) {
	if !l.Judged() || !l.Verdict.Limit.Open || l.Measured.State == quantity.Unsettled {
		return Insulation{}, false
	}
	coldest := l.Air.At - quantity.Celsius(l.Air.HalfWidth)
	in = Insulation{At: l.Air.At, Open: l.Measured.State == quantity.OverRange}
	in.Least, _ = winding.Halving.Minimum(l.Air.At)
	in.Flattest, _ = winding.Thermosetting.Minimum(l.Air.At)
	strictest, _ := winding.Halving.Minimum(coldest)
	if in.Open {
		in.Shown = quantity.Ohm(l.Measured.Range.Nominal)
		in.Proof = winding.OpenLineProves(in.Shown, strictest)
		return in, true
	}
	in.Shown = quantity.Ohm(l.Measured.Value)
	mildest := min(strictest, in.Flattest)
	in.Proof = winding.InsulationProves(in.Shown, quantity.Ohm(l.Measured.Std), mildest)
	if in.Proof == winding.ProvesNoDefect && in.Shown < strictest {
		in.Proof = winding.ProvesNothing
	}
	return in, true
}
