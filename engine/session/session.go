// Package session holds the records: a session is an append-only list of
// entries, its state a fold over them, and merging two copies the union of
// their entries. Nothing is overwritten or removed in place: a correction is a
// new entry that names the one it replaces.
package session

import (
	"bytes"
	"cmp"
	"slices"
	"time"

	"github.com/google/uuid"

	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// Session is one visit to one machine.
type Session struct {
	ID      uuid.UUID
	Entries []Entry // in the order of their times, then ids
}

// Entry is one thing that happened; exactly one of its pointers is set.
type Entry struct {
	ID      uuid.UUID `json:"id"`
	At      time.Time `json:"at"`
	Setup   *Setup    `json:"setup,omitempty"`
	Reading *Reading  `json:"reading,omitempty"`
	Skip    *Skip     `json:"skip,omitempty"`
	Note    *Note     `json:"note,omitempty"`
	Mark    *Mark     `json:"mark,omitempty"`
}

// Setup says what is tested and with what; a later one replaces it.
type Setup struct {
	Name    string      `json:"name,omitempty"` // of the machine, in the user's words
	Aim     check.Aim   `json:"aim,omitempty"`
	Build   check.Build `json:"build"`
	Unsure  []string    `json:"unsure,omitempty"` // fields of the set-up the user is not sure of
	Meter   string      `json:"meter"`            // id of a described meter
	Ambient *float64    `json:"ambientCelsius,omitempty"`
	Profile string      `json:"profile,omitempty"` // id of a spec profile
	// Own describes the user's own meter, where Meter is OwnMeter: a copy, so
	// that a file on another phone is judged alike.
	Own     *Own           `json:"ownMeter,omitempty"`
	Winding spec.Warmth    `json:"winding,omitempty"` // how warm the windings are from now on
	Methods []check.Method `json:"methods,omitempty"` // in the order they were asked for
	Kit     *Kit           `json:"kit,omitempty"`
	Leads   []Lead         `json:"leads,omitempty"` // colours, where the user gave them
}

// OwnMeter is the id of a meter that the user described.
const OwnMeter = "own"

// Own is a meter's data sheet with what its self-check told.
type Own struct {
	Record  uuid.UUID      `json:"record"` // of the session that holds the self-check
	Sheet   meter.Sheet    `json:"sheet"`
	Learned *meter.Learned `json:"learned,omitempty"`
}

// Kit is what a method needs to know of the things at hand; zero is unknown.
type Kit struct {
	ResistorOhms       float64 `json:"resistorOhms,omitempty"`
	ResistorPercent    float64 `json:"resistorPercent,omitempty"` // tolerance, to either side
	AdapterMicrofarads float64 `json:"adapterMicrofarads,omitempty"`
	BleederMegohms     float64 `json:"bleederMegohms,omitempty"` // of the adapter
}

// Reading is what was typed for a check, as it was typed, so that a better
// reading of the same text stays possible.
type Reading struct {
	Check    check.ID   `json:"check"`
	Text     string     `json:"text"`
	Unit     string     `json:"unit"`
	Range    string     `json:"range,omitempty"`
	Corrects *uuid.UUID `json:"corrects,omitempty"`
	// Again says that the probes were lifted and placed anew: the reading counts
	// together with those before it.
	Again bool `json:"again,omitempty"`
	// Winding is how warm the winding was when it was read.
	Winding spec.Warmth `json:"winding,omitempty"`
}

// Skip says that a check could not be done.
type Skip struct {
	Check  check.ID `json:"check"`
	Reason string   `json:"reason,omitempty"`
	// Again says that the check was asked for once more: what was read stands.
	Again bool `json:"again,omitempty"`
}

// Note is free text of the user.
type Note struct {
	Text string `json:"text"`
}

// Mark changes how the session is listed.
type Mark string

// Marks.
const (
	Finished Mark = "finished"
	Removed  Mark = "removed"
	Restored Mark = "restored"
)

// Append gives a session with one more entry; the receiver is unchanged.
func (s Session) Append(e ...Entry) Session {
	return Session{ID: s.ID, Entries: ordered(append(slices.Clone(s.Entries), e...))}
}

// Merge is the union of the entries of two copies of one session. Should a
// tampered copy hold another entry under the same id, the earlier one stays,
// and of equally early ones the one whose text sorts first: the result never
// depends on which copy comes first.
func Merge(a, b Session) Session { return a.Append(b.Entries...) }

func ordered(entries []Entry) []Entry {
	slices.SortStableFunc(entries, func(a, b Entry) int {
		return cmp.Or(a.At.Compare(b.At), bytes.Compare(a.ID[:], b.ID[:]), compareText(a, b))
	})
	seen := map[uuid.UUID]bool{}
	return slices.DeleteFunc(entries, func(e Entry) bool {
		twice := seen[e.ID]
		seen[e.ID] = true
		return twice
	})
}

// compareText orders entries of one id and time, which are one and the same
// unless a copy was tampered with.
func compareText(a, b Entry) int {
	if a.ID != b.ID || !a.At.Equal(b.At) {
		return 0
	}
	textA, _ := EncodeEntry(a) // an entry of plain fields always encodes
	textB, _ := EncodeEntry(b)
	return bytes.Compare(textA, textB)
}
