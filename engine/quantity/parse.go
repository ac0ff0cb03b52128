package quantity

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// AmbiguousError says that a text has two meanings; the caller asks which.
type AmbiguousError struct {
	Text    string
	Choices []Typed
}

func (e *AmbiguousError) Error() string {
	return fmt.Sprintf("%q can mean %s or %s: type it with a point, or choose one",
		e.Text, e.Choices[0], e.Choices[1])
}

// UnreadableError says why a text is no reading and what would be one.
type UnreadableError struct {
	Text   string
	Reason string
	WayOut string
}

func (e *UnreadableError) Error() string {
	return fmt.Sprintf("%q %s: %s", clip(e.Text), e.Reason, e.WayOut)
}

func clip(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}

// Parse reads what a person typed or a meter shows for a quantity of kind k.
// A text without a unit is taken in the given unit (the one the dial's range
// shows). It returns *AmbiguousError for a comma that may group thousands and
// *UnreadableError for anything that is no reading.
func Parse(k Kind, text string, in Unit) (Typed, error) {
	t := strings.TrimSpace(text)
	if t == "" {
		return Typed{}, &UnreadableError{text, "is empty", "type the number on the display"}
	}
	if state := stateOf(t, text); state != Number {
		return withoutNumber(k, text, state, in)
	}
	digits, unit, err := splitUnit(k, t, in)
	if err != nil {
		return Typed{}, err
	}
	return readNumber(k, text, digits, unit)
}

// withoutNumber is for signs that only a meter's display gives: a gauge or a
// thermometer that is read by eye always has a number.
func withoutNumber(k Kind, text string, s State, in Unit) (Typed, error) {
	if k == Length || k == Temperature {
		return Typed{}, &UnreadableError{text, "is no " + k.String(), "type a number"}
	}
	return Typed{Kind: k, State: s, Unit: in}, nil
}

func readNumber(k Kind, text, digits string, u Unit) (Typed, error) {
	plain, other, ok := separators(digits)
	if !ok {
		return Typed{}, &UnreadableError{text, "is not a number", "type digits with one decimal point, like 12.6"}
	}
	first, err := build(k, text, plain, u)
	if err != nil || other == "" {
		return first, err
	}
	second, err := build(k, text, other, u)
	if err != nil {
		return second, err
	}
	return Typed{}, &AmbiguousError{Text: text, Choices: []Typed{first, second}}
}

// Texts beyond these cannot come from a meter and would only hide a slip. So few
// digits also come back unchanged through a float64.
const (
	maxMagnitude = 1e12
	maxDigits    = 12
	maxDecimals  = 9
)

func build(k Kind, text, plain string, u Unit) (Typed, error) {
	v, err := strconv.ParseFloat(plain, 64)
	si := u.SI(v)
	if err != nil || math.Abs(si) > maxMagnitude {
		return Typed{}, &UnreadableError{text, "is too large for any meter", "check the digits and the unit"}
	}
	if digitsIn(plain) > maxDigits {
		return Typed{}, &UnreadableError{text, "has more digits than any meter shows", "type the digits on the display"}
	}
	if v < 0 && !signed(k) {
		return Typed{}, &UnreadableError{text, "is below zero, which no " + k.String() + " can be", "leave out the minus sign"}
	}
	decimals := 0
	if dot := strings.IndexByte(plain, '.'); dot >= 0 {
		decimals = len(plain) - dot - 1
	}
	if decimals > maxDecimals {
		return Typed{}, &UnreadableError{text, "has more decimals than any meter shows", "type the digits on the display"}
	}
	step := math.Pow(10, -float64(decimals)) * u.Factor
	return Typed{Kind: k, Value: si + 0, Step: step, Unit: u}, nil // + 0: no minus on a zero
}

func digitsIn(plain string) int {
	return len(strings.TrimLeft(plain, "+-")) - strings.Count(plain, ".")
}

func signed(k Kind) bool {
	return k == VoltageDC || k == Current || k == Temperature || k == Resistance
}

// separators turns digits with points and commas into plain decimal notation.
// other is set when a single comma with three digits behind it may as well
// group thousands.
func separators(s string) (plain, other string, ok bool) {
	points, commas := strings.Count(s, "."), strings.Count(s, ",")
	switch {
	case points > 1 && commas > 1:
		return "", "", false
	case points > 0 && commas > 0:
		plain = lastIsDecimal(s)
	case commas > 1:
		if !isGrouped(s) {
			return "", "", false
		}
		plain = strings.ReplaceAll(s, ",", "")
	case commas == 1:
		plain = strings.Replace(s, ",", ".", 1)
		if isGrouped(s) {
			other = strings.Replace(s, ",", "", 1)
		}
	default:
		plain = s
	}
	return plain, other, isNumber(plain)
}

func lastIsDecimal(s string) string {
	group, decimal := ",", "."
	if strings.LastIndex(s, ",") > strings.LastIndex(s, ".") {
		group, decimal = ".", ","
	}
	head, tail, _ := strings.Cut(s, decimal)
	if !isGrouped(strings.ReplaceAll(head, group, ",")) {
		return "" // groups of other lengths are a slip, not a number
	}
	return strings.ReplaceAll(head, group, "") + "." + tail
}
