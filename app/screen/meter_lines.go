package screen

import (
	"cmp"
	"math"
	"slices"

	"coilbook/app/words"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

// sheetLine is one range of the form, as it stands there: what is typed stays
// when the range is left out.
type sheetLine struct {
	function        meter.Function
	nominal         float64
	label           string
	on              bool
	percent, digits string
}

// name is what the line is called in sentences.
func (l sheetLine) name() string { return words.RangeName(l.function, l.label) }

// linesOf are all ranges that a meter of these counts may have, those of the
// data sheet on. A range that is not there is given the accuracy of a
// neighbour, to start from.
func linesOf(s meter.Sheet) []*sheetLine {
	var out []*sheetLine
	labels := labelsFor(s)
	for _, f := range meter.Functions() {
		stated := statedFor(s, f)
		for _, n := range meter.Nominals(f, s.Counts) {
			l := &sheetLine{function: f, nominal: n, label: labels[f][n]}
			a := neighbour(stated, n)
			l.percent, l.digits = words.Plain(a.Percent), words.Plain(a.Digits)
			l.on = slices.ContainsFunc(stated, func(line meter.Line) bool { return line.Nominal == n })
			out = append(out, l)
		}
	}
	return out
}

// statedFor are a data sheet's lines of one function, rising.
func statedFor(s meter.Sheet, f meter.Function) []meter.Line {
	var out []meter.Line
	for _, l := range s.Lines {
		if l.Function == f.String() {
			out = append(out, l)
		}
	}
	slices.SortFunc(out, func(a, b meter.Line) int { return cmp.Compare(a.Nominal, b.Nominal) })
	return out
}

// neighbour is the accuracy of the lowest stated range that reaches as far, or
// of the highest.
func neighbour(stated []meter.Line, nominal float64) meter.Accuracy {
	for _, l := range stated {
		if l.Nominal >= nominal {
			return l.Accuracy
		}
	}
	if len(stated) == 0 {
		return meter.Accuracy{Percent: 1, Digits: 5}
	}
	return stated[len(stated)-1].Accuracy
}

// labelsFor are the labels of all ranges that a meter of these counts may have.
func labelsFor(s meter.Sheet) map[meter.Function]map[float64]string {
	bundled, _ := meter.ByID(s.Class)
	all := meter.SheetOf(bundled)
	all.Counts, all.Lines = s.Counts, nil
	for _, f := range meter.Functions() {
		for _, n := range meter.Nominals(f, s.Counts) {
			all.Lines = append(all.Lines, meter.Line{Function: f.String(), Nominal: n, Accuracy: meter.Accuracy{Digits: 1}})
		}
	}
	m, _ := all.Meter()
	out := map[meter.Function]map[float64]string{}
	for f, ranges := range m.Ranges {
		out[f] = map[float64]string{}
		for _, r := range ranges {
			out[f][r.Nominal] = r.Label
		}
	}
	return out
}

// sheetFor is the data sheet of a class, moved to other counts: each range to
// the one of the same decade. The highest volts stay what they are.
func sheetFor(class meter.Meter, counts int) meter.Sheet {
	s := meter.SheetOf(class)
	if counts == s.Counts {
		return s
	}
	from := s
	s.Counts, s.Lines = counts, nil
	for _, f := range meter.Functions() {
		stated := statedFor(from, f)
		for _, n := range meter.Nominals(f, counts) {
			if hasLike(f, stated, n) {
				s.Lines = append(s.Lines, meter.Line{Function: f.String(), Nominal: n, Accuracy: neighbour(stated, n)})
			}
		}
	}
	return s
}

// hasLike reports whether a class has the very range, or one of its decade.
func hasLike(f meter.Function, stated []meter.Line, nominal float64) bool {
	return slices.ContainsFunc(stated, func(l meter.Line) bool {
		return l.Nominal == nominal || decade(l.Nominal) == decade(nominal) && !isTop(f, nominal) && !isTop(f, l.Nominal)
	})
}

// isTop tells the volts that end where the insulation does.
func isTop(f meter.Function, n float64) bool { return f != meter.Ohms && n >= 500 && n <= 1000 }

func decade(n float64) float64 { return math.Floor(math.Log10(n) + 1e-9) }

// megaohms writes ohms as the form asks for them.
func megaohms(r quantity.Ohm) string { return words.Plain(math.Round(float64(r)) / 1e6) }
