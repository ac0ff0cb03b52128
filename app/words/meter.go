package words

import (
	"strings"

	"coilbook/engine/meter"
)

// Words of the list of meters.
var (
	MetersTitle  = say("What do you measure with?")
	MetersHint   = say("The doubt of each reading comes from your meter's data sheet. Choose the meter in the set-up of a machine.")
	OwnTitle     = say("Your own")
	ClassesTitle = say("Ready to use")
	NoMeters     = say("None described yet. Do it once, with the leaflet of your meter at hand, and verdicts get as sharp as your meter allows.")
	ChangeSheet  = say("Change data sheet")
	CheckMeter   = say("Check the meter itself")
	WhatItTold   = say("What it told")
)

// MeterHint says in one line what kind of meter it is.
func MeterHint(id string) string {
	return map[string]string{
		"cheap":    say("The usual cheap one, with the widest doubt. It is taken unless you say otherwise."),
		"auto4000": say("Shows up to 3999 and finds the range by itself."),
		"auto6000": say("Shows up to 5999, with a tighter data sheet, and reads odd waves rightly on AC."),
	}[id]
}

// LearnedLine says what a self-check told, on one line of a list.
func LearnedLine(l *meter.Learned) string {
	if l == nil || l.Nothing() {
		return say("Not checked yet.")
	}
	var told []string
	for _, part := range []string{leadsShort[l.Leads], detectorShort(*l), resistorShort(*l)} {
		if part != "" {
			told = append(told, part)
		}
	}
	line := strings.Join(told, ", ")
	return strings.ToUpper(line[:1]) + line[1:] + "."
}

var leadsShort = map[meter.LeadState]string{
	meter.LeadsGood: say("leads good"), meter.LeadsWorn: say("leads worn"), meter.LeadsOpen: say("a lead is broken"),
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
