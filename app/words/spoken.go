package words

import (
	"slices"
	"strings"
	"sync"

	"coilbook/app/tongue"
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// Words of the way to the answer of the next check.
var (
	ToReading = text("Enter the reading")
	ToAnswer  = text("Answer it")
)

// Words of reading aloud.
var (
	ReadAloud   = text("Read aloud")
	SampleVoice = text("Red on charge lead 1, black on charge lead 2. Let the digits rest.")
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
	words := strings.Fields(spacedSigns().Replace(text))
	for i, w := range words {
		bare := strings.TrimRight(w, ".,;:?")
		if full, ok := signs()[bare]; ok && (len(bare) > 1 || i > 0 && endsInDigit(words[i-1])) {
			words[i] = full + w[len(bare):]
		}
	}
	return tight.Replace(strings.Join(words, " "))
}

// endsInDigit tells the unit in "12 V" from the letter in "A battery".
func endsInDigit(s string) bool { return strings.ContainsAny(s[len(s)-1:], "0123456789") }

// tight takes back the blanks before punctuation.
var tight = strings.NewReplacer(" .", ".", " ,", ",", " ;", ";", " :", ":", " ?", "?")

// spacedSigns parts a sign from the number or word it is written to, and says those
// that are one wherever they stand.
var spacedSigns = sync.OnceValue(func() *strings.Replacer {
	return strings.NewReplacer(
		"kΩ", " kΩ ", "MΩ", " MΩ ", "°C", " °C ", "°F", " °F ", "“", "", "”", "", "…", "", "(", "", ")", "",
		"VΩ", spaced(tongue.In("read aloud", "volts and ohms")),
		"mV=", spaced(tongue.In("read aloud", "DC millivolts")),
		"mV~", spaced(tongue.In("read aloud", "AC millivolts")),
		"V=", spaced(tongue.In("read aloud", "DC volts")),
		"V~", spaced(tongue.In("read aloud", "AC volts")),
		"A=", spaced(tongue.In("read aloud", "DC amperes")),
		"Ω", spaced(tongue.In("read aloud", "ohms")),
		"±", spaced(tongue.In("read aloud", "plus or minus")),
		"·", spaced(tongue.In("read aloud", "and")),
		"−", spaced(tongue.In("read aloud", "minus")),
	)
})

func spaced(words string) string { return " " + words + " " }

// signs are those that stand alone as a word.
var signs = sync.OnceValue(func() map[string]string {
	return map[string]string{
		"kΩ":   tongue.In("read aloud", "kilohms"),
		"MΩ":   tongue.In("read aloud", "megohms"),
		"V":    tongue.In("read aloud", "volts"),
		"mV":   tongue.In("read aloud", "millivolts"),
		"kV":   tongue.In("read aloud", "kilovolts"),
		"A":    tongue.In("read aloud", "amperes"),
		"mA":   tongue.In("read aloud", "milliamperes"),
		"COM":  tongue.In("read aloud", "common"),
		"mm":   tongue.In("read aloud", "millimetres"),
		"thou": tongue.In("read aloud", "thousandths of an inch"),
		"°C":   tongue.In("read aloud", "degrees Celsius"),
		"°F":   tongue.In("read aloud", "degrees Fahrenheit"),
		"Hz":   tongue.In("read aloud", "hertz"),
		"rpm":  tongue.In("read aloud", "revolutions per minute"),
		"K":    tongue.In("read aloud", "kelvin"),
		"k":    tongue.In("read aloud", "kilo"),
		"M":    tongue.In("read aloud", "mega"),
		"µF":   tongue.In("read aloud", "microfarads"),
		"nF":   tongue.In("read aloud", "nanofarads"),
		"mm²":  tongue.In("read aloud", "square millimetres"),
	}
})
