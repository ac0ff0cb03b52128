package rig

import (
	"math"
	"strconv"

	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

// Display is what a meter showed: a few displays in a row, as their digits stood
// there.
type Display struct {
	State  quantity.State // Unsettled when no two of them agree
	Value  float64        // the last one's, SI
	Texts  []string       // as shown, in the unit; the over-range sign is ""
	Unit   quantity.Unit
	Range  meter.Range
	Live   bool // the ohm range was held to points that carry a voltage
	Unread bool // the meter lacks the function
}

// Text is the last display as one would type it; "" stands for over-range.
func (d Display) Text() string {
	if len(d.Texts) == 0 {
		return ""
	}
	return d.Texts[len(d.Texts)-1]
}

// display rounds what a range shows of the values of one reading. dial is the
// range chosen by hand; a meter that picks its range itself ignores it.
func (in Instrument) display(f meter.Function, dial string, values []float64) Display {
	r, ok := in.rangeFor(f, dial, values)
	if !ok {
		return Display{Unread: true}
	}
	d := Display{Range: r, Unit: r.Unit}
	low, high := math.Inf(1), math.Inf(-1)
	for _, v := range values {
		shown := math.Round(in.shown(f, r, v)/r.Step) * r.Step
		if !(math.Abs(shown) <= r.Full*(1+1e-9)) {
			d.Texts, d.State = append(d.Texts, ""), quantity.OverRange
			continue
		}
		low, high = min(low, shown), max(high, shown)
		d.Value, d.State = shown, quantity.Number
		d.Texts = append(d.Texts, strconv.FormatFloat(r.Unit.In(shown)+0, 'f', decimals(r), 64))
	}
	if restless(d, low, high, r) {
		d.State = quantity.Unsettled
	}
	return d
}

// restless displays are those that nobody would write down one of: they differ
// by more than a few digits and a few percent, or come and go. The bounds:
// common practice, no source.
func restless(d Display, low, high float64, r meter.Range) bool {
	over := 0
	for _, t := range d.Texts {
		if t == "" {
			over++
		}
	}
	if over > 0 && over < len(d.Texts) {
		return true
	}
	return high-low > max(5*r.Step, 0.06*math.Abs(high+low)/2)
}

func (in Instrument) rangeFor(f meter.Function, dial string, values []float64) (meter.Range, bool) {
	if r, ok := in.Meter.RangeLabelled(f, dial); ok && !in.Meter.Auto {
		return r, true
	}
	most := 0.0
	for _, v := range values {
		if !math.IsInf(v, 0) {
			most = max(most, math.Abs(v))
		} else {
			most = math.Inf(1)
		}
	}
	return in.Meter.RangeFor(f, most)
}

func decimals(r meter.Range) int {
	step := r.Step / r.Unit.Factor
	if step >= 1 {
		return 0
	}
	return int(math.Round(-math.Log10(step)))
}
