package quantity

import (
	"math"
	"strconv"
)

// String prints a reading as the display showed it: same unit, same decimals.
func (t Typed) String() string {
	switch t.State {
	case OverRange:
		return "open line"
	case Unsettled:
		return "won't settle"
	}
	return Decimal(t.Unit.In(t.Value), t.Decimals()) + " " + t.Unit.Name
}

// Print writes an SI value for people: a unit that suits its size, and as many
// decimals as its doubt supports (one digit beyond the first digit of the
// doubt). A doubt of zero or less prints three significant digits.
func Print(k Kind, si, doubt float64) string {
	return PrintIn(UnitFor(k, si), si, doubt)
}

// PrintIn writes an SI value in unit u, rounded as its doubt allows.
func PrintIn(u Unit, si, doubt float64) string {
	v, doubt := u.In(si), doubt/u.Factor
	return Decimal(supported(v, doubt), DecimalsFor(doubt, v)) + " " + u.Name
}

// supported rounds before the decimal point what a large doubt does not support.
func supported(v, doubt float64) float64 {
	if !(doubt >= 100) || math.IsInf(doubt, 0) {
		return v
	}
	p := math.Pow(10, math.Floor(math.Log10(doubt))-1)
	return math.Round(v/p) * p
}

// UnitFor picks the unit whose number for si is easiest to read.
func UnitFor(k Kind, si float64) Unit {
	units := Units(k)
	best := units[0]
	switch {
	case k == VoltageDC && si != 0 && math.Abs(si) < 1:
		return Millivolts
	case k != Resistance:
		return best
	}
	for _, u := range units {
		if math.Abs(si) >= u.Factor {
			best = u
		}
	}
	return best
}

// DecimalsFor is the number of decimals (0 to 6) that a doubt supports.
func DecimalsFor(doubt, value float64) int {
	if !(doubt > 0) || math.IsInf(doubt, 0) {
		if value == 0 || math.IsInf(value, 0) || math.IsNaN(value) {
			return 0
		}
		doubt = math.Abs(value) / 10
	}
	return min(max(int(1-math.Floor(math.Log10(doubt)+1e-9)), 0), 6)
}

// Decimal writes a number with fixed decimals, without a minus sign on a zero.
func Decimal(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if zero, err := strconv.ParseFloat(s, 64); err == nil && zero == 0 && s[0] == '-' {
		return s[1:]
	}
	return s
}
