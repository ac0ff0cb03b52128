package words

import (
	"math"
	"slices"

	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// Told is one thing that a self-check told, and what follows from it.
type Told struct {
	Title     string
	Sentences []string
	Open      bool // nothing is told yet
}

// WhatMeterTold says what a session of the meter's self-check tells.
func WhatMeterTold(b assess.Bench) []Told {
	if !anyRead(b) {
		return []Told{{Title: say("Nothing read yet"), Open: true,
			Sentences: []string{say("Do the checks: what they tell of your meter stands here then, and counts in every verdict with it.")}}}
	}
	l := b.Learned()
	return []Told{leadsTold(b, l), batteryTold(b), detectorTold(b, l), pulsesTold(l), resistorTold(b, l)}
}

func anyRead(b assess.Bench) bool {
	return slices.ContainsFunc(b.Plan, func(c check.Check) bool { return b.Line(c).Read() })
}

// lineMeasuring finds the line of what was measured; ok is false unless it was read.
func lineMeasuring(b assess.Bench, m spec.Measurand) (l assess.Line, ok bool) {
	for _, c := range b.Plan {
		if c.Measures == m {
			l = b.Line(c)
			return l, l.Read()
		}
	}
	return l, false
}

func leadsTold(b assess.Bench, l meter.Learned) Told {
	t := Told{Title: say("Test leads")}
	line, read := lineMeasuring(b, spec.LeadZero)
	switch {
	case l.Leads == meter.LeadsGood:
		t.Sentences = []string{say("Good: less than 1 Ω together (%s).", Reading(line))}
	case l.Leads == meter.LeadsWorn:
		t.Sentences = []string{say("Worn: more than 1 Ω together (%s).", Reading(line)),
			say("Clean the tips and sockets, or change the leads: every small reading hangs on them.")}
	case l.Leads == meter.LeadsOpen:
		t.Sentences = []string{say("Open line: a lead is broken or sits in the wrong socket."), say("Put that right first: until then no reading counts.")}
	case read:
		t.Sentences = []string{say("Not told: %s is too near the limit of 1 Ω for this meter.", Reading(line))}
	default:
		t.Open, t.Sentences = true, []string{say("Not told: the probes were not read together.")}
	}
	return t
}

func batteryTold(b assess.Bench) Told {
	line, read := lineMeasuring(b, spec.BatteryVolts)
	if !read {
		return Told{Title: say("Battery"), Open: true, Sentences: []string{say("Not read on the DC range: the AC range has nothing to be compared with.")}}
	}
	return Told{Title: say("Battery"), Sentences: []string{say("The DC range reads %s.", Reading(line))}}
}

func detectorTold(b assess.Bench, l meter.Learned) Told {
	t := Told{Title: say("What the AC range does with DC")}
	switch {
	case l.NoneFits:
		t.Sentences = []string{say("The readings fit no kind of AC range known here."), say("Read the battery once more, the same leads on it all the time. Until then AC readings are given the widest doubt.")}
	case only(l, meter.HalfWave):
		t.Sentences = []string{say("A single diode, no capacitor: it reads DC as about double one way and nothing the other."), say("A clean AC wave it reads rightly.")}
	case only(l, meter.AverageDC):
		t.Sentences = []string{say("DC gets in: it reads DC about 11 % too high, both ways round."), say("A clean AC wave it reads rightly.")}
	case l.BlocksDC():
		t.Sentences = []string{say("A capacitor keeps DC out: a battery reads nothing."),
			say("Whether it then averages or reads true RMS, a battery cannot tell. That matters only for waves that are not clean.")}
	case len(l.Detectors) > 0:
		t.Sentences = []string{say("More than one kind of AC range fits these readings."), say("A fuller battery, 12 V, may tell them apart.")}
	case batteryRead(b):
		t.Sentences = []string{say("Not told: the battery is too weak for the digits of this range."), say("Take a fuller one, 12 V.")}
	default:
		t.Open, t.Sentences = true, []string{say("Not told: it takes the battery on the DC range, and on the AC range both ways round.")}
	}
	return t
}

// batteryRead reports whether the battery was read in all three ways.
func batteryRead(b assess.Bench) bool {
	return !slices.ContainsFunc(b.Plan, func(c check.Check) bool {
		battery := c.Measures == spec.BatteryVolts || c.Measures == spec.BatteryOnAC
		return battery && !b.Line(c).Read()
	})
}

// pulsesTold says what the AC range is good for in the checks.
func pulsesTold(l meter.Learned) Told {
	t := Told{Title: say("What that means"), Sentences: []string{
		say("Ignition pulses: no ordinary AC range shows their height. Use the peak-hold adapter."),
	}}
	switch {
	case l.BlocksDC():
		t.Sentences = append(t.Sentences, say("AC ripple on a battery: this meter can show it, since it keeps DC out."))
	case only(l, meter.HalfWave), only(l, meter.AverageDC):
		t.Sentences = append(t.Sentences, say("AC ripple on a battery: never judge it with this meter. It would show the battery itself."))
	default:
		t.Sentences = append(t.Sentences, say("AC ripple on a battery: do not judge it with this meter until you know what its AC range does with DC."))
	}
	return t
}

func resistorTold(b assess.Bench, l meter.Learned) Told {
	t := Told{Title: say("Ohms against the known resistor")}
	line, read := lineMeasuring(b, spec.KnownResistor)
	switch {
	case l.Resistor == meter.ResistorAgrees:
		t.Sentences = []string{say("Agrees: %s, within what the data sheet and the resistor allow.", Reading(line))}
	case l.Resistor == meter.ResistorOff:
		t.Sentences = []string{say("Reads %s: %s.", off(l.Deviation), Reading(line)),
			say("The doubt of all ohm ranges is widened to %s for it.", tenths(l.Bound)),
			say("Try a fresh battery in the meter, then read the resistor once more.")}
	case read:
		t.Sentences = []string{say("Not told: the doubt is too large."), say("Take a resistor with a closer tolerance, one that fills more of the range.")}
	case line.Check.ID == "":
		t.Open, t.Sentences = true, []string{say("Not told: the data sheet here names no known resistor. Add one there and this check comes along.")}
	default:
		t.Open, t.Sentences = true, []string{say("Not told: the known resistor was not read.")}
	}
	return t
}

// off says how far a reading lies from the print on the resistor.
func off(deviation float64) string {
	if deviation < 0 {
		return say("%s too low", tenths(deviation))
	}
	return say("%s too high", tenths(deviation))
}

// tenths is a fraction in percent, with a decimal place where it is small.
func tenths(fraction float64) string {
	p := math.Abs(fraction) * 100
	if p < 9.95 {
		return decimal(p, 1) + " %"
	}
	return decimal(p, 0) + " %"
}
