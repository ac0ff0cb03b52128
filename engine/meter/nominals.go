package meter

import "slices"

// SheetCounts are the counts that a data sheet may state.
func SheetCounts() []int { return []int{1999, 3999, 5999, 9999, 19999} }

// tops are the highest volts ranges, which end where the insulation does and not
// where the counts do. Common practice, no source.
var tops = []float64{500, 600, 750, 1000}

// Nominals are the ranges that a meter of these counts may have for a function,
// by the number in their label in SI units, rising; nil for counts that
// SheetCounts does not list. Common practice, no source: 20 Ω (40, 60, 100) is
// lower than most meters go, 200 MΩ is higher, and AC starts at whole volts.
func Nominals(f Function, counts int) []float64 {
	if !slices.Contains(SheetCounts(), counts) {
		return nil
	}
	switch f {
	case Ohms:
		return roundNumbers(counts, 20, 200e6)
	case VoltsDC:
		return withTops(roundNumbers(counts, 0.1, 1000))
	case VoltsAC:
		return withTops(roundNumbers(counts, 1, 1000))
	case AmpsDC:
		return []float64{10}
	case Diode:
		return []float64{diodeTop}
	}
	return nil
}

// roundNumbers are the decades of the number just above the counts.
func roundNumbers(counts int, low, high float64) []float64 {
	var found []float64
	lead := float64(counts + 1)
	for lead >= 10 {
		lead /= 10
	}
	for n := lead / 10; n <= high; n *= 10 {
		if n >= low {
			found = append(found, n)
		}
	}
	return found
}

func withTops(volts []float64) []float64 {
	volts = append(volts, tops...)
	slices.Sort(volts)
	return slices.Compact(volts)
}
