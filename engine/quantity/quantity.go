// Package quantity is the ground floor: a named type per physical quantity, SI
// inside, converted only where text is read or printed. A function that takes
// ohms cannot be handed volts. It reads what people type and what meters show,
// and refuses to guess where a text has two meanings.
package quantity

import "math"

// Physical quantities in SI units, except where a docstring says otherwise.
type (
	// Ohm is a resistance in Ω.
	Ohm float64
	// Volt is a voltage in V, DC or the AC value a meter shows.
	Volt float64
	// Ampere is a current in A.
	Ampere float64
	// Hertz is a frequency in Hz.
	Hertz float64
	// RPM is a rotational speed in revolutions per minute.
	RPM float64
	// Metre is a length in m.
	Metre float64
	// Celsius is a temperature in °C.
	Celsius float64
)

// MetresPerInch is exact (international inch, 1959).
const MetresPerInch = 0.0254

// Thousandths gives a length in thousandths of an inch.
func (m Metre) Thousandths() float64 { return float64(m) / MetresPerInch * 1000 }

// FromThousandths reads a length given in thousandths of an inch.
func FromThousandths(t float64) Metre { return Metre(t * MetresPerInch / 1000) }

// Kind names a physical quantity where it is only known at run time.
type Kind int

// The kinds of quantity a check can ask for.
const (
	Resistance Kind = iota
	VoltageDC
	VoltageAC
	Current
	Frequency
	Speed
	Length
	Temperature
)

var kindNames = [...]string{
	"resistance", "DC voltage", "AC voltage", "current",
	"frequency", "speed", "length", "temperature",
}

func (k Kind) String() string {
	if k < 0 || int(k) >= len(kindNames) {
		return "unknown quantity"
	}
	return kindNames[k]
}

// Unit is a way to write one kind of quantity: Name is what is printed,
// SI = typed·Factor + Offset.
type Unit struct {
	Name   string
	Factor float64
	Offset float64
}

// The units that readings are typed and printed in.
var (
	Ohms       = Unit{Name: "Ω", Factor: 1}
	KiloOhms   = Unit{Name: "kΩ", Factor: 1e3}
	MegaOhms   = Unit{Name: "MΩ", Factor: 1e6}
	Volts      = Unit{Name: "V", Factor: 1}
	Millivolts = Unit{Name: "mV", Factor: 1e-3}
	Amperes    = Unit{Name: "A", Factor: 1}
	Hertzes    = Unit{Name: "Hz", Factor: 1}
	PerMin     = Unit{Name: "rpm", Factor: 1}
	Millis     = Unit{Name: "mm", Factor: 1e-3}
	Inches     = Unit{Name: "in", Factor: MetresPerInch}
	Thous      = Unit{Name: "thou", Factor: MetresPerInch / 1000}
	DegreesC   = Unit{Name: "°C", Factor: 1}
	DegreesF   = Unit{Name: "°F", Factor: 5.0 / 9, Offset: -160.0 / 9}
)

// Units lists the units offered for a kind; the first is the usual one.
func Units(k Kind) []Unit {
	switch k {
	case Resistance:
		return []Unit{Ohms, KiloOhms, MegaOhms}
	case VoltageDC:
		return []Unit{Volts, Millivolts}
	case VoltageAC:
		return []Unit{Volts}
	case Current:
		return []Unit{Amperes}
	case Frequency:
		return []Unit{Hertzes}
	case Speed:
		return []Unit{PerMin}
	case Length:
		return []Unit{Millis, Thous, Inches}
	case Temperature:
		return []Unit{DegreesC, DegreesF}
	}
	return nil
}

// UnitNamed finds an offered unit by the name that it prints.
func UnitNamed(k Kind, name string) (Unit, bool) {
	for _, u := range Units(k) {
		if u.Name == name {
			return u, true
		}
	}
	return Unit{}, false
}

// SI converts a number written in u to SI.
func (u Unit) SI(typed float64) float64 { return typed*u.Factor + u.Offset }

// In converts an SI value to a number written in u.
func (u Unit) In(si float64) float64 { return (si - u.Offset) / u.Factor }

// State tells what kind of answer a display gave.
type State int

// A display shows a number, nothing it can measure (an open line, over-range),
// or digits that never come to rest.
const (
	Number State = iota
	OverRange
	Unsettled
)

// Typed is one reading as it was typed: its value in SI, and the smallest step
// that the typed decimals could show. OverRange and Unsettled carry no value.
type Typed struct {
	Kind  Kind
	State State
	Value float64 // SI
	Step  float64 // SI, weight of the last digit typed, > 0 for a Number
	Unit  Unit
}

// Decimals is how many decimals were typed, so that a reading is printed back
// just as it stood on the display. In another unit it is as many as show the
// step that was typed.
func (t Typed) Decimals() int {
	step := t.Step / t.Unit.Factor
	if step <= 0 || step >= 1 {
		return 0
	}
	return int(math.Ceil(-math.Log10(step) - 1e-6))
}
