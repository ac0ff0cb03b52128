package words

import (
	"strconv"
	"strings"

	"coilbook/app/tongue"
	"coilbook/engine/quantity"
)

// Numbers for people are printed here alone, with the decimal mark of the language
// of this run. What programs read (JSON, drawings, files) keeps the point.

// decimal writes a number with fixed decimals.
func decimal(v float64, decimals int) string { return tongue.Number(quantity.Decimal(v, decimals)) }

// Plain writes a number with as many decimals as it has.
func Plain(v float64) string { return tongue.Number(strconv.FormatFloat(v, 'f', -1, 64)) }

// twoDigits writes a number with two digits that count.
func twoDigits(v float64) string { return tongue.Number(strconv.FormatFloat(v, 'g', 2, 64)) }

// printed and printedIn write an SI value with as many decimals as its doubt supports.
func printed(k quantity.Kind, si, doubt float64) string {
	return tongue.Number(quantity.Print(k, si, doubt))
}

func printedIn(u quantity.Unit, si, doubt float64) string {
	return tongue.Number(quantity.PrintIn(u, si, doubt))
}

// Typed writes a reading as it stood on the display or, where the reader chose
// another unit than it was typed in, in that one.
func Typed(t quantity.Typed) string {
	switch t.State {
	case quantity.OverRange:
		return KeyOpen
	case quantity.Unsettled:
		return KeyUnsettled
	}
	return tongue.Number(units.Show(t).String())
}

// AsTyped writes what was typed by key or hand, which is kept as it was typed.
func AsTyped(text string) string {
	switch text {
	case quantity.Typed{State: quantity.OverRange}.String():
		return KeyOpen
	case quantity.Typed{State: quantity.Unsettled}.String():
		return KeyUnsettled
	}
	if strings.Trim(text, "0123456789.") == "" {
		return strings.ReplaceAll(text, ".", tongue.Mark()) // half typed, it may end with it
	}
	return tongue.Number(text)
}

// DecimalMark is what stands on the key for it.
func DecimalMark() string { return tongue.Mark() }
