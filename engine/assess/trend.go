package assess

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"github.com/google/uuid"

	"coilbook/engine/check"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
)

// Track is one check as it was read in several sessions of one machine.
type Track struct {
	Check  check.Check
	Points []TrackPoint // the earliest first
}

// TrackPoint is the reading of one session, judged on that session's own meter,
// temperature and limits.
type TrackPoint struct {
	Session uuid.UUID
	At      time.Time // when it was read
	Line    Line      // its verdict has a value, or it read an open line
}

// SameMachine reports whether two set-ups are of one machine: the same name, as far
// as case and spaces go. Set-ups without a name are of no known machine.
func SameMachine(a, b session.Setup) bool {
	name := nameOf(a)
	return name != "" && name == nameOf(b)
}

func nameOf(s session.Setup) string {
	return strings.ToLower(strings.Join(strings.Fields(s.Name), " "))
}

// Tracks lists the checks with a number in at least two of the sessions of one
// machine, in the order of the plans. Looks are left out, readings that cannot be
// read, and the meter's own leads.
func Tracks(benches []Bench) []Track {
	var out []Track
	at := map[check.ID]int{}
	for _, b := range benches {
		for _, l := range numbersOf(b) {
			i, known := at[l.Check.ID]
			if !known {
				i = len(out)
				at[l.Check.ID] = i
				out = append(out, Track{Check: l.Check})
			}
			out[i].Points = append(out[i].Points, TrackPoint{b.State.ID, l.Answer.At, l})
		}
	}
	for _, t := range out {
		slices.SortFunc(t.Points, func(a, b TrackPoint) int {
			return cmp.Or(a.At.Compare(b.At), slices.Compare(a.Session[:], b.Session[:]))
		})
	}
	return slices.DeleteFunc(out, func(t Track) bool { return t.numbers() < 2 })
}

// numbers counts the points with a number: open lines alone make no trend.
func (t Track) numbers() int {
	n := 0
	for _, p := range t.Points {
		if p.Line.Verdict.HasValue {
			n++
		}
	}
	return n
}

// numbersOf are the lines of a session that hold a number or an open line.
func numbersOf(b Bench) []Line {
	var lines []Line
	for _, c := range b.Plan {
		lines = append(lines, b.Line(c))
	}
	return slices.DeleteFunc(append(lines, b.Beyond()...), func(l Line) bool {
		open := l.Typed.State == quantity.OverRange
		return !l.Read() || l.Check.Feeds || l.Check.Instrument == check.Eyes || l.Check.Part == check.MeterLeads || !l.Verdict.HasValue && !open
	})
}
