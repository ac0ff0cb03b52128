package meter

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"coilbook/engine/quantity"
)

// Bounds on what a data sheet may state, wide enough for any multimeter. An
// assumption, no source. No display is better than its last digit, so that a
// bare percentage counts as one digit too.
const (
	MaxSheetName       = 60 // characters
	maxSheetLines      = 40
	maxPercent         = 20
	minDigits          = 1
	maxDigits          = 100
	minBand            = quantity.Hertz(1)
	maxBandLow         = quantity.Hertz(1e3)
	maxBand            = quantity.Hertz(1e6)
	minInput, maxInput = 1e3, 1e9 // Ω
)

// Valid says what is wrong with a data sheet, as a *FieldError, or nil.
func (s Sheet) Valid() error {
	return firstOf(
		validName(s.Name),
		s.validClass(),
		s.validCounts(),
		between("acLowHz", float64(s.ACLow), float64(minBand), float64(maxBandLow)),
		between("acHighHz", float64(s.ACHigh), float64(s.ACLow)+1, float64(maxBand)),
		between("inputDCOhms", float64(s.InputDC), minInput, maxInput),
		between("inputACOhms", float64(s.InputAC), minInput, maxInput),
		s.validLines(),
	)
}

// validName is for what stands on one line of a list.
func validName(name string) error {
	if !utf8.ValidString(name) || strings.ContainsFunc(name, breaksLine) {
		return &FieldError{"name", "holds a line break or a control character", "leave it out"}
	}
	if utf8.RuneCountInString(name) > MaxSheetName {
		return &FieldError{"name", fmt.Sprintf("is longer than %d characters", MaxSheetName), "shorten it"}
	}
	return nil
}

func breaksLine(r rune) bool { return unicode.IsControl(r) || unicode.In(r, unicode.Zl, unicode.Zp) }

func (s Sheet) validClass() error {
	var known []string
	for _, m := range Bundled() {
		known = append(known, m.ID)
	}
	if slices.Contains(known, s.Class) {
		return nil
	}
	return &FieldError{"class", fmt.Sprintf("is %q, which is not described here", s.Class), "use " + strings.Join(known, ", ")}
}

func (s Sheet) validCounts() error {
	if slices.Contains(SheetCounts(), s.Counts) {
		return nil
	}
	return &FieldError{"counts", fmt.Sprintf("is %d", s.Counts), "use " + listed(SheetCounts())}
}

func (s Sheet) validLines() error {
	if len(s.Lines) > maxSheetLines {
		return &FieldError{"lines", fmt.Sprintf("are more than %d", maxSheetLines), "leave out the rest"}
	}
	type place struct {
		function string
		nominal  float64
	}
	seen := map[place]bool{}
	ohms := false
	for i, l := range s.Lines {
		at := fmt.Sprintf("lines[%d]", i)
		if err := l.valid(at, s.Counts); err != nil {
			return err
		}
		here := place{l.Function, l.Nominal}
		if seen[here] {
			return &FieldError{at, "is a range that stands twice", "keep one of the two lines"}
		}
		seen[here] = true
		ohms = ohms || l.Function == Ohms.String()
	}
	if !ohms {
		return &FieldError{"lines", "hold no range of ohms", "add one: most checks need it"}
	}
	return nil
}

func (l Line) valid(at string, counts int) error {
	f, known := FunctionNamed(l.Function)
	if !known {
		return &FieldError{at + ".function", fmt.Sprintf("is %q", l.Function), "use " + strings.Join(functionNames[:], ", ")}
	}
	if nominals := Nominals(f, counts); !slices.Contains(nominals, l.Nominal) {
		return &FieldError{at + ".nominal", fmt.Sprintf("is %v", l.Nominal), "use " + listed(nominals)}
	}
	return firstOf(
		between(at+".percent", l.Percent, 0, maxPercent),
		between(at+".digits", l.Digits, minDigits, maxDigits),
	)
}

func listed[N int | float64](numbers []N) string {
	texts := make([]string, len(numbers))
	for i, n := range numbers {
		texts[i] = decimal(float64(n))
	}
	return strings.Join(texts, ", ")
}
