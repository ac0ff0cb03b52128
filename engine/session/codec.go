package session

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"

	"github.com/google/uuid"
)

// The session file: its name for itself and the version this program writes.
// Version 2 adds the user's own meter, warmth, methods and repeated readings; a
// file of version 1 is one of version 2 without them. Version 3 adds four aims; a
// file of version 2 is one of version 3 without them. Version 4 adds the colours of
// leads and readings that are not taken once more; a file of version 3 is one of version 4 without them.
const (
	Format  = "coilbook session"
	Version = 4
)

// Bounds on a file, so that a wrong one is refused before it fills a phone.
const (
	maxBytes   = 8 << 20
	maxEntries = 20000
	maxText    = 2000
)

// FieldError says which field of a file is wrong, why, and what to do.
type FieldError struct {
	Field  string
	Reason string
	WayOut string
}

func (e *FieldError) Error() string {
	if e.WayOut == "" {
		return e.Field + ": " + e.Reason
	}
	return e.Field + ": " + e.Reason + "; " + e.WayOut
}

type file struct {
	Format  string    `json:"format"`
	Version int       `json:"version"`
	ID      uuid.UUID `json:"id"`
	Entries []Entry   `json:"entries"`
}

// Encode writes a session file of the current version, ending in a newline.
func Encode(s Session) ([]byte, error) {
	entries := s.Entries
	if entries == nil {
		entries = []Entry{}
	}
	b, err := json.MarshalIndent(file{Format, Version, s.ID, entries}, "", "  ")
	return append(b, '\n'), err
}

// Decode reads a session file of any version up to the current one. It returns
// a *FieldError for the first thing wrong.
func Decode(b []byte) (Session, error) {
	if len(b) > maxBytes {
		return Session{}, &FieldError{"file", "is larger than 8 MB", "choose a session file"}
	}
	if err := recognise(b); err != nil {
		return Session{}, err
	}
	var f sealedFile
	if err := strictly(b, &f); err != nil {
		return Session{}, err
	}
	if len(f.Entries) > maxEntries {
		return Session{}, &FieldError{"entries", fmt.Sprintf("holds more than %d entries", maxEntries), "split the file"}
	}
	return f.opened()
}

// recognise looks at the head alone, so that a file of a newer version is told
// apart from a broken one.
func recognise(b []byte) error {
	var head struct {
		Format  any `json:"format"`
		Version any `json:"version"`
	}
	if err := json.Unmarshal(b, &head); err != nil {
		return fieldOf(b, err)
	}
	if head.Format != Format {
		return &FieldError{"format", fmt.Sprintf("must be %q", Format), "choose a file that Coilbook saved"}
	}
	version, ok := head.Version.(float64)
	switch {
	case !ok || version < 1 || version != math.Trunc(version):
		return &FieldError{"version", "must be a whole number from 1", "choose a file that Coilbook saved"}
	case version > Version:
		return &FieldError{"version", fmt.Sprintf("is %g, newer than this program's %d", version, Version), "update Coilbook and open it again"}
	}
	return nil
}

// sealedFile leaves each entry for DecodeEntry, so that an error names it.
type sealedFile struct {
	Format  string            `json:"format"`
	Version int               `json:"version"`
	ID      uuid.UUID         `json:"id"`
	Entries []json.RawMessage `json:"entries"`
}

func (f sealedFile) opened() (Session, error) {
	if f.ID == uuid.Nil {
		return Session{}, &FieldError{"id", "is missing", "choose a file that Coilbook saved"}
	}
	seen := map[uuid.UUID]bool{}
	entries := make([]Entry, 0, len(f.Entries))
	for i, b := range f.Entries {
		e, err := DecodeEntry(b)
		if err != nil {
			return Session{}, within(fmt.Sprintf("entries[%d]", i), err)
		}
		if seen[e.ID] {
			return Session{}, &FieldError{fmt.Sprintf("entries[%d].id", i), "stands twice", "keep one of the two entries"}
		}
		seen[e.ID] = true
		entries = append(entries, e)
	}
	return Session{ID: f.ID}.Append(entries...), nil
}

// EncodeEntry writes one entry on one line, as the device keeps it.
func EncodeEntry(e Entry) ([]byte, error) { return json.Marshal(e) }

// DecodeEntry reads one entry back and checks it.
func DecodeEntry(b []byte) (Entry, error) {
	var e Entry
	if err := strictly(b, &e); err != nil {
		return Entry{}, err
	}
	if err := e.Valid(); err != nil {
		return Entry{}, err
	}
	return e, nil
}

func strictly(b []byte, into any) error {
	d := json.NewDecoder(bytes.NewReader(b))
	d.DisallowUnknownFields()
	if err := d.Decode(into); err != nil {
		return fieldOf(b, err)
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		return &FieldError{"file", "goes on after its end", "remove what follows the last brace"}
	}
	return nil
}

func within(place string, err error) error {
	var f *FieldError
	if errors.As(err, &f) {
		return &FieldError{place + "." + f.Field, f.Reason, f.WayOut}
	}
	return err
}
