//go:build gallery

package screen

import (
	"fmt"
	"time"

	"github.com/google/uuid"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/practice"
	"coilbook/engine/session"
)

// recordID is the id of a fixed record, by its name.
func recordID(name string) uuid.UUID {
	return uuid.NewSHA1(uuid.NameSpaceOID, []byte("gallery "+name))
}

// galleryBench is a practice bench of the usual kind whose charge winding touches
// the core.
const galleryBench = "800-4GM"

// said in a record: a check and the text typed for it; "" says that it was left
// out.
type answered struct {
	check check.ID
	text  string
}

// Invented readings on the default machine. In the sound ones everything is within
// the limits; in the bad ones a charge winding leaks to the core.
var (
	soundReadings = []answered{
		{"lead-zero", "0.3"}, {"core-continuity", "0.4"}, {"charge-pair-1-2", "0.9"}, {"charge-pair-2-3", "0.9"}, {"charge-pair-3-1", "0.9"},
		{"charge-core-1", "open line"}, {"charge-core-2", "open line"}, {"charge-core-3", "open line"},
		{"pickup", "212"}, {"pickup-gap", "0.4"}, {"exciter", "285"}, {"exciter-cranking", "62.0"},
	}
	badReadings = []answered{
		{"lead-zero", "0.3"}, {"core-continuity", "0.4"}, {"charge-pair-1-2", "0.9"}, {"charge-pair-2-3", "0.9"}, {"charge-pair-3-1", "0.9"},
		{"charge-core-1", "0.34"}, {"charge-core-2", "0.34"}, {"charge-core-3", "0.34"},
		{"pickup", "212"}, {"pickup-gap", "0.4"}, {"exciter", "285"}, {"exciter-cranking", "31.0"},
	}
	unclearReadings = []answered{
		{"lead-zero", "0.5"}, {"core-continuity", ""}, {"charge-pair-1-2", "0.5"}, {"charge-pair-2-3", "won't settle"}, {"charge-pair-3-1", "0.5"},
		{"charge-core-1", "open line"}, {"charge-core-2", ""}, {"charge-core-3", ""},
		{"pickup", "80.5"}, {"pickup-gap", ""}, {"exciter", ""}, {"exciter-cranking", "31.0"},
	}
	selfReadings = []answered{{"lead-zero", "0.3"}, {"battery-dc", "12.6"}, {"battery-ac", "27.8"}, {"battery-ac-swapped", "0.0"}}
	runReadings  = []answered{{"battery-rest", "12.7"}, {"battery-idle", "13.1"}, {"battery-3000", "12.9"}, {"battery-5000", "12.8"},
		{"charge-ac-1-2", "31.0"}, {"charge-ac-2-3", "31.6"}, {"charge-ac-3-1", "10.4"}}
	oddReadings = []answered{{"battery-rest", "12.6"}, {"battery-5000", "14.3"}, {"battery-3000", "11.2"}, {"battery-idle", "13.2"}}
)

// GalleryRecords are the fixed records that the gallery hangs.
func GalleryRecords() []session.Session {
	whole := check.Whole(check.DefaultBuild())
	return []session.Session{
		recorded("meter-begun", ownMeter("meter-begun", "Spare one"), nil),
		recorded("meter", ownMeter("meter", "Old yellow one"), selfReadings),
		recorded("fresh", machineOf("", check.Bench), nil),
		recorded("fresh-in", machineOf("", check.Bench), nil),
		recorded("charging", machineOf("", check.NoCharge), nil),
		recorded("find", machineOf("", check.NoCharge), nil),
		recorded("pad-open", machineOf("", check.Bench), soundReadings[:2]),
		recorded("pad-two", machineOf("", check.Bench), soundReadings[:4]),
		recorded("pad-unit", machineOf("", check.Bench), soundReadings[:4]),
		recorded("good", machineOf("Red scooter", check.Bench), soundReadings),
		recorded("bad", machineOf("Barn moped with a name that is rather long", check.NoCharge), badReadings),
		recorded("unclear", machineOf("Quad", check.Bench), unclearReadings),
		recorded("find-some", machineOf("Farm quad", check.NoCharge), []answered{{"battery-rest", "12.4"}, {"battery-5000", "12.3"}}),
		recorded("find-diodes", machineOf("Six diodes", check.NoCharge), []answered{{"battery-5000", "12.5"}, {"diode-ground-1", "524"}, {"diode-ground-2", "521"},
			{"diode-ground-3", "519"}, {"diode-plus-1", "522"}, {"diode-plus-2", "1"}, {"diode-plus-2", "1"}}),
		recorded("find-odd", machineOf("Odd one", check.NoCharge), oddReadings),
		recorded("find-winding", machineOf("Winding", check.NoCharge), refused(whole, answered{"charge-core-1", "300 Ω"}, answered{"charge-core-2", "300 Ω"}, answered{"charge-core-3", "300 Ω"})),
		recorded("find-fuse", machineOf("Fuse", check.NoCharge), refused(whole, answered{"battery-rest", "12.6"}, answered{"fuse", seenYes})),
		recorded("find-confirm", machineOf("Regulator", check.NoCharge), []answered{{"battery-lamp", "12.1"}, {"charge-core-3", "open line"}, {"battery-5000", "12.2"},
			{"drop-plus", "0.02"}, {"drop-ground", "0.01"}, {"charge-core-3", "open line"}, {"supply-key", ""}, {"charge-ac-2-3", "52"}, {"fuse", seenNo},
			{"battery-lamp", "12.1"}, {"charge-ac-1-2", "52"}}),
		recorded("find-exciter", machineOf("Exciter", check.NoSpark), refused(whole, answered{"spark", seenNo}, answered{"exciter", "open line"}, answered{"exciter", "open line"}, answered{"pickup", "190"})),
		recorded("find-double", machineOf("Boiled", check.Overcharges), refused(whole, answered{"battery-5000", "26.9"}, answered{"battery-cranking", "5.7"})),
		recorded("find-nothing", machineOf("Nothing", check.NoCharge), refused(whole, append(oddReadings, oddReadings...)...)),
		recorded("colours", inColour(machineOf("Striped moped", check.Bench)), soundReadings[:2]),
		recorded("colours-find", inColour(machineOf("Striped quad", check.NoCharge)), oddReadings[:1]),
		recorded("output", machineOf("Yard quad", check.NoCharge), runReadings),
		recordedOn(time.Date(2026, 4, 18, 8, 0, 0, 0, time.UTC), "moped-april", machineOf("Works moped", check.Bench), append(soundReadings[:9:9], answered{"exciter-cranking", "44.0"}, answered{"battery-5000", "13.6"})),
		recordedOn(time.Date(2026, 1, 30, 8, 0, 0, 0, time.UTC), "moped-january", machineOf("Works moped", check.Bench), append(soundReadings[:9:9], answered{"exciter-cranking", "58.0"}, answered{"battery-5000", "14.1"})),
		recordedOn(time.Date(2025, 9, 6, 8, 0, 0, 0, time.UTC), "moped-september", machineOf("works moped", check.NoCharge), append(soundReadings[:9:9], answered{"pickup", "230"}, answered{"exciter-cranking", "62.0"}, answered{"battery-5000", "14.2"})),
		recorded("pad", machineOf("Shed scooter", check.Bench), soundReadings[:5]),
	}
}

// refused leaves out all checks that have no answer.
func refused(all []check.Check, given ...answered) []answered {
	done := map[check.ID]bool{}
	for _, a := range given {
		done[a.check] = true
	}
	for _, c := range all {
		if !done[c.ID] {
			given = append(given, answered{c.ID, ""})
		}
	}
	return given
}

func machineOf(name string, aim check.Aim) session.Setup {
	s := session.DefaultSetup()
	s.Name, s.Aim = name, aim
	return s
}

// inColour gives the leads of a set-up colours.
func inColour(s session.Setup) session.Setup {
	wires := map[check.Terminal]check.Wire{"charge-1": {Base: check.Yellow, Stripe: check.Red}, "charge-2": {Base: check.Black, Stripe: check.White},
		"charge-3": {Base: check.White}, "exciter": {Base: check.Black}, "ground-lead": {Base: check.Green}, "pickup-a": {Base: check.LightBlue, Stripe: check.Yellow}}
	for _, lead := range check.PlugLeads(s.Build) {
		s.Leads = session.Painted(s.Leads, lead, wires[lead])
	}
	return s
}

func ownMeter(record, name string) session.Setup {
	sheet := meter.SheetOf(meter.Cheap())
	sheet.Name = name
	return session.Setup{Name: name, Aim: check.SelfCheck, Build: check.DefaultBuild(), Meter: session.OwnMeter,
		Own: &session.Own{Record: recordID(record), Sheet: sheet}}
}

// recorded makes a record with an entry every 20 seconds. What was read before counts
// together with the new reading.
func recorded(name string, with session.Setup, given []answered) session.Session {
	return recordedOn(time.Date(2026, 5, 4, 9, 30, 0, 0, time.UTC), name, with, given)
}

// recordedOn is one of a given day.
func recordedOn(began time.Time, name string, with session.Setup, given []answered) session.Session {
	out := session.Session{ID: recordID(name)}
	add := func(e session.Entry) {
		n := len(out.Entries)
		e.ID = recordID(fmt.Sprint(name, n))
		e.At = began.Add(time.Duration(20*n) * time.Second)
		out = out.Append(e)
	}
	add(session.Entry{Setup: &with})
	read := map[check.ID]bool{}
	for _, a := range given {
		if a.text == "" {
			add(session.Entry{Skip: &session.Skip{Check: a.check}})
			continue
		}
		add(session.Entry{Reading: &session.Reading{Check: a.check, Text: a.text, Unit: unitFor(with, a.check), Again: read[a.check]}})
		read[a.check] = true
	}
	return out
}

// unitFor is the unit that the cheap meter shows for a check.
func unitFor(with session.Setup, id check.ID) string {
	for _, list := range [][]check.Check{check.Plan(with.Build, with.Aim), check.Whole(with.Build), check.OnTheBench(with.Build)} {
		if c, ok := check.Find(list, id); ok && c.Instrument != check.Eyes {
			return c.Unit(meter.Cheap()).Name
		}
	}
	return ""
}

// benchKept is what is kept of the practice bench with two readings taken, and
// maybe a fault named.
func benchKept(named machine.Kind) string {
	at := practice.Taken{Dial: "200 Ω", Probing: machine.Probing{Red: "charge-1", Black: "core", Function: meter.Ohms, State: machine.State{Plug: check.Apart}}}
	between := at
	between.Black = "charge-2"
	text, err := practice.Record{Code: galleryBench, Taken: []practice.Taken{at, between}, Named: named, Placed: between}.Encode()
	if err != nil {
		panic(err)
	}
	return text
}
