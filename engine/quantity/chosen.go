package quantity

import "math"

// Chosen says in which units a person reads and types lengths and temperatures,
// where a trade uses two. The zero value is mm and °C. Values stay SI; only
// text changes.
type Chosen struct {
	Thousandths bool // lengths of a gap in thousandths of an inch
	Fahrenheit  bool // temperatures in °F
}

// Unit is the unit for a kind that there is a choice for; ok is false for the
// other kinds, which everybody reads alike.
func (c Chosen) Unit(k Kind) (u Unit, ok bool) {
	switch {
	case k == Length && c.Thousandths:
		return Thous, true
	case k == Length:
		return Millis, true
	case k == Temperature && c.Fahrenheit:
		return DegreesF, true
	case k == Temperature:
		return DegreesC, true
	}
	return Unit{}, false
}

// UnitFor is the unit to print an SI value in: the chosen one, or the one whose
// number is easiest to read.
func (c Chosen) UnitFor(k Kind, si float64) Unit {
	if u, ok := c.Unit(k); ok {
		return u
	}
	return UnitFor(k, si)
}

// Units lists the units offered for a kind, the chosen one first.
func (c Chosen) Units(k Kind) []Unit {
	first, ok := c.Unit(k)
	if !ok {
		return Units(k)
	}
	out := []Unit{first}
	for _, u := range Units(k) {
		if u.Name != first.Name {
			out = append(out, u)
		}
	}
	return out
}

// Show puts a reading into the chosen unit; value and step stay what they are.
func (c Chosen) Show(t Typed) Typed {
	if u, ok := c.Unit(t.Kind); ok && t.State == Number {
		t.Unit = u
	}
	return t
}

// Difference is the unit of a difference between two values written in u: it
// has no zero point of its own. 5 K are 9 °F.
func (u Unit) Difference() Unit {
	u.Offset = 0
	return u
}

// Figure rounds a number in u to three figures where it came from another unit:
// 0.3 mm are 11.8 thou. One that was given in u stays as it was given.
func (u Unit) Figure(si float64, given Unit) float64 {
	v := u.In(si)
	if u.Name == given.Name || v == 0 || math.IsInf(v, 0) || math.IsNaN(v) {
		return math.Round(v*1e6) / 1e6
	}
	p := math.Pow(10, 2-math.Floor(math.Log10(math.Abs(v))))
	return math.Round(v*p) / p
}
