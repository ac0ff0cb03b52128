package quantity

import (
	"slices"
	"strings"
)

// splitUnit parts the digits from the unit; a text without one is taken in in.
// IEC 60062 writes the unit in the place of the decimal point: 1k2, 4R7, 2M2,
// and R47 for 0.47 Ω (from memory).
func splitUnit(k Kind, t string, in Unit) (digits string, u Unit, err error) {
	if k == Resistance {
		if whole, letter, rest, ok := letterAsPoint(t); ok {
			u, _ := unitOf(k, letter)
			return whole + "." + rest, u, nil
		}
	}
	digits = numberHead(t)
	tail := strings.TrimSpace(t[len(digits):])
	if tail == "" || strings.Trim(digits, "+-") == "" {
		return digits, in, nil // without digits it is no number, whatever follows
	}
	u, ok := unitOf(k, tail)
	if !ok {
		return "", Unit{}, &UnreadableError{t, "has a unit that is not one of " + k.String(),
			"use " + unitList(k) + ", or only the digits"}
	}
	return digits, u, nil
}

func unitList(k Kind) string {
	names := make([]string, 0, 3)
	for _, u := range Units(k) {
		names = append(names, u.Name)
	}
	return strings.Join(names, ", ")
}

// Capital M is mega and small m is milli; k may be written either way.
var prefixes = map[string]float64{"": 1, "k": 1e3, "K": 1e3, "M": 1e6, "m": 1e-3, "µ": 1e-6, "μ": 1e-6, "u": 1e-6, "meg": 1e6, "Meg": 1e6}

// bases lists what may follow a prefix. A resistance may be written with the
// prefix alone, as dials do.
var bases = map[Kind][]string{
	Resistance: {"Ω", ohmSign, "ohms", "ohm", "Ohms", "Ohm", "R", "r", ""},
	VoltageDC:  {"V", "v", "VDC", "Vdc", "volts", "volt", "V=", "V⎓"},
	VoltageAC:  {"V", "v", "VAC", "Vac", "volts", "volt", "V~"},
	Current:    {"A", "a", "amps", "amp"},
	Frequency:  {"Hz", "hz", "HZ"},
	Speed:      {"rpm", "RPM", "r/min", "1/min", "/min"},
}

// ohmSign is U+2126; Ω in this file is the Greek letter, as Unicode advises.
const ohmSign = "\u2126"

var baseUnit = map[Kind]Unit{Resistance: Ohms, VoltageDC: Volts, VoltageAC: Volts, Current: Amperes, Frequency: Hertzes, Speed: PerMin}

// spelt is a unit with all that people write for it.
type spelt struct {
	unit Unit
	as   []string
}

// Units that take no prefix.
var (
	lengths = []spelt{
		{Millis, []string{"mm", "MM", "Mm"}},
		{Inches, []string{"in", "in.", "In", "IN", "inch", "inches", `"`, "″", "”", "''"}},
		{Thous, []string{"thou", "Thou", "thous", "mil", "mils"}},
		{Unit{Name: "m", Factor: 1}, []string{"m"}},
		{Unit{Name: "µm", Factor: 1e-6}, []string{"µm", "μm", "um"}},
	}
	temperatures = []spelt{
		{DegreesC, []string{"°C", "° C", "ºC", "°c", "C", "c", "℃", "deg C", "degC", "Celsius", "celsius"}},
		{DegreesF, []string{"°F", "° F", "ºF", "°f", "F", "f", "℉", "deg F", "degF", "Fahrenheit", "fahrenheit"}},
	}
)

func wholeUnits(k Kind) []spelt {
	switch k {
	case Length:
		return lengths
	case Temperature:
		return temperatures
	}
	return nil
}

func unitOf(k Kind, tail string) (Unit, bool) {
	if whole := wholeUnits(k); whole != nil {
		for _, w := range whole {
			if slices.Contains(w.as, tail) {
				return w.unit, true
			}
		}
		return Unit{}, false
	}
	for _, base := range bases[k] {
		prefix, ok := strings.CutSuffix(tail, base)
		factor, known := prefixes[strings.TrimSpace(prefix)]
		if ok && known && prefix+base != "" {
			return scaled(baseUnit[k], strings.TrimSpace(prefix), factor), true
		}
	}
	return Unit{}, false
}

func scaled(base Unit, prefix string, factor float64) Unit {
	switch prefix {
	case "K":
		prefix = "k"
	case "u", "μ":
		prefix = "µ"
	case "meg", "Meg":
		prefix = "M"
	}
	return Unit{Name: prefix + base.Name, Factor: base.Factor * factor}
}
