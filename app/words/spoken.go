package words

import (
	"slices"
	"strings"

	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// Words of the way to the answer of the next check.
const (
	ToReading = "Enter the reading"
	ToAnswer  = "Answer it"
)

// Words of reading aloud.
const (
	ReadAloud   = "Read aloud"
	SampleVoice = "Red on charge lead 1, black on charge lead 2. Let the digits rest."
)

// Spoken is a check as it is read aloud, a sentence or two at a time: what it is,
// dial and sockets, probes, steps, cautions. Where the engine turns, the cautions
// come before the steps, as they do on the screen.
func Spoken(c check.Check, m meter.Meter, r meter.Range) []string {
	out := []string{CheckQuestion(c) + "."}
	if c.Instrument == check.Multimeter {
		out = append(out, DialLabel+": "+Dial(c, m, r)+".", JacksLabel+": "+Jacks(c)+".")
	}
	if c.Engine != check.Stopped {
		out = append(out, spokenCautions(c)...)
	}
	steps := Steps(c, m)
	told := func(step string) bool { return strings.Contains(step, probes(c)) }
	if c.Instrument == check.Multimeter && c.Red != check.OtherProbe && !slices.ContainsFunc(steps, told) {
		out = append(out, probes(c))
	}
	out = append(out, steps...)
	if c.Engine == check.Stopped {
		out = append(out, spokenCautions(c)...)
	}
	for i, s := range out {
		out[i] = sayable(s)
	}
	return out
}

func spokenCautions(c check.Check) []string {
	if len(c.Cautions) == 0 {
		return nil
	}
	out := []string{CautionTitle + "."}
	for _, caution := range c.Cautions {
		out = append(out, Caution(caution))
	}
	return out
}

// SpokenVerdict is a verdict as it is read aloud.
func SpokenVerdict(c check.Check, v spec.Verdict) []string {
	return []string{sayable(upperFirst(Outcome(v.Outcome)) + "."), sayable(Brief(c, v))}
}

// sayable writes out the signs that a voice would spell or leave out.
func sayable(text string) string {
	words := strings.Fields(spacedSigns.Replace(text))
	for i, w := range words {
		bare := strings.TrimRight(w, ".,;:?")
		if full, ok := signs[bare]; ok && (len(bare) > 1 || i > 0 && endsInDigit(words[i-1])) {
			words[i] = full + w[len(bare):]
		}
	}
	return tight.Replace(strings.Join(words, " "))
}

// endsInDigit tells the unit in "12 V" from the letter in "A battery".
func endsInDigit(s string) bool { return strings.ContainsAny(s[len(s)-1:], "0123456789") }

// tight takes back the blanks before punctuation.
var tight = strings.NewReplacer(" .", ".", " ,", ",", " ;", ";", " :", ":", " ?", "?")

// spacedSigns parts a sign from the number or word it is written to.
var spacedSigns = strings.NewReplacer(
	"VΩ", " volts-ohms ", "kΩ", " kΩ ", "MΩ", " MΩ ", "mV=", " DC-millivolts ", "mV~", " AC-millivolts ", "V=", " DC-volts ", "V~", " AC-volts ", "A=", " DC-amperes ",
	"Ω", " ohms ", "±", " plus or minus ", "·", " and ", "−", " minus ", "°C", " °C ", "°F", " °F ", "“", "", "”", "", "…", "", "(", "", ")", "",
)

var signs = map[string]string{
	"kΩ": "kilohms", "MΩ": "megohms", "V": "volts", "mV": "millivolts", "kV": "kilovolts", "A": "amperes", "mA": "milliamperes",
	"DC-millivolts": "DC millivolts", "AC-millivolts": "AC millivolts", "DC-volts": "DC volts", "AC-volts": "AC volts", "DC-amperes": "DC amperes",
	"volts-ohms": "volts and ohms", "COM": "common", "mm": "millimetres", "thou": "thousandths of an inch",
	"°C": "degrees Celsius", "°F": "degrees Fahrenheit", "Hz": "hertz", "rpm": "revolutions per minute", "K": "kelvin",
	"k": "kilo", "M": "mega", "µF": "microfarads", "nF": "nanofarads", "mm²": "square millimetres",
}
