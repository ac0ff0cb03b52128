package words

import (
	"strings"

	"coilbook/engine/meter"
)

// Words of the list of meters.
var (
	MetersTitle  = text("What do you measure with?")
	MetersHint   = text("The doubt of each reading comes from your meter's data sheet. Choose the meter in the set-up of a machine.")
	OwnTitle     = text("Your own")
	ClassesTitle = text("Ready to use")
	NoMeters     = text("None described yet. Do it once, with the leaflet of your meter at hand, and verdicts get as sharp as your meter allows.")
	ChangeSheet  = text("Change data sheet")
	CheckMeter   = text("Check the meter itself")
	WhatItTold   = text("What it told")
)

// MeterHint says in one line what kind of meter it is.
func MeterHint(id string) string {
	return say(meterHints.of(id))
}

var meterHints = table[string, text]{
	{"cheap", "The usual cheap one, with the widest doubt. It is taken unless you say otherwise."},
	{"auto4000", "Shows up to 3999 and finds the range by itself."},
	{"auto6000", "Shows up to 5999, with a tighter data sheet, and reads odd waves rightly on AC."},
}

// LearnedLine says what a self-check told, on one line of a list.
func LearnedLine(l *meter.Learned) string {
	if l == nil || l.Nothing() {
		return say("Not checked yet.")
	}
	var told []string
	for _, part := range []string{say(leadsShort.of(l.Leads)), detectorShort(*l), resistorShort(*l)} {
		if part != "" {
			told = append(told, part)
		}
	}
	line := strings.Join(told, ", ")
	return strings.ToUpper(line[:1]) + line[1:] + "."
}

var leadsShort = table[meter.LeadState, text]{
	{meter.LeadsGood, "leads good"}, {meter.LeadsWorn, "leads worn"}, {meter.LeadsOpen, "a lead is broken"},
}

func detectorShort(l meter.Learned) string {
	switch {
	case l.NoneFits:
		return say("AC range of an unknown kind")
	case l.BlocksDC():
		return say("no DC gets into the AC range")
	case only(l, meter.HalfWave):
		return say("a single diode on AC")
	case only(l, meter.AverageDC):
		return say("DC gets into the AC range")
	case len(l.Detectors) > 0:
		return say("AC range not told for sure")
	}
	return ""
}

func only(l meter.Learned, d meter.Detector) bool {
	return len(l.Detectors) == 1 && l.Detectors[0] == d
}

func resistorShort(l meter.Learned) string {
	switch l.Resistor {
	case meter.ResistorAgrees:
		return say("ohms agree")
	case meter.ResistorOff:
		return say("ohms read %s", off(l.Deviation))
	}
	return ""
}
