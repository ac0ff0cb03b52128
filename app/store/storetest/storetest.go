// Package storetest holds what every store must do, as tests that run on any
// adapter.
package storetest

import (
	"context"
	"encoding/json"
	"errors"
	"reflect"
	"testing"
	"time"

	"github.com/google/uuid"

	"coilbook/app/store"
	"coilbook/engine/check"
	"coilbook/engine/session"
)

// Subject is an empty store under test, and a way past its checks.
type Subject struct {
	store.Store
	// Put writes a raw row, as another version of the app might have done.
	Put func(t *testing.T, session, entry, text string)
}

// Run tests the stores that fresh makes.
func Run(t *testing.T, fresh func(t *testing.T) Subject) {
	for _, c := range []struct {
		name string
		test func(t *testing.T, s Subject)
	}{
		{"what was appended is loaded in the order of time", ordered},
		{"an unknown session is not found", unknown},
		{"the newest change is listed first", listed},
		{"appending twice changes nothing", twice},
		{"the first content of an id stays", firstWins},
		{"nothing to append is fine", nothing},
		{"an invalid entry is refused with all that came with it", invalid},
		{"a cancelled context writes nothing", cancelled},
		{"rows of other versions are reported and kept", unreadable},
		{"a session of unreadable rows only is still there", onlyUnreadable},
		{"every kind of entry comes back as it was", kinds},
		{"many entries at once", many},
		{"no failure loses what was confirmed", func(t *testing.T, s Subject) { walk(t, fresh) }},
	} {
		t.Run(c.name, func(t *testing.T) { c.test(t, fresh(t)) })
	}
}

var noon = time.Date(2026, 5, 1, 12, 0, 0, 0, time.UTC)

// note is an entry made that many seconds after noon.
func note(second int, text string) session.Entry {
	at := noon.Add(time.Duration(second) * time.Second)
	return session.Entry{ID: uuid.New(), At: at, Note: &session.Note{Text: text}}
}

func ordered(t *testing.T, s Subject) {
	id, a, b, c := uuid.New(), note(1, "a"), note(2, "b"), note(3, "c")
	mustAppend(t, s, id, c, a)
	mustAppend(t, s, id, b)
	mustHold(t, s, id, a, b, c)
}

func unknown(t *testing.T, s Subject) {
	mustAppend(t, s, uuid.New(), note(1, "of another session"))
	if _, err := s.Load(t.Context(), uuid.New()); !errors.Is(err, store.ErrNotFound) {
		t.Errorf("got %v, want ErrNotFound", err)
	}
}

func listed(t *testing.T, s Subject) {
	old, young := uuid.New(), uuid.New()
	mustAppend(t, s, young, note(1, "first"))
	mustAppend(t, s, old, note(2, "second"))
	mustList(t, s, old, young)
	mustAppend(t, s, young, note(3, "third"))
	mustList(t, s, young, old)
}

func twice(t *testing.T, s Subject) {
	id, a, b := uuid.New(), note(1, "a"), note(2, "b")
	mustAppend(t, s, id, a, a)
	mustAppend(t, s, id, a, b)
	mustHold(t, s, id, a, b)
}

func firstWins(t *testing.T, s Subject) {
	id, a, b := uuid.New(), note(1, "first"), note(2, "b")
	mustAppend(t, s, id, a)
	other := a
	other.Note = &session.Note{Text: "second"}
	mustAppend(t, s, id, other, b)
	mustHold(t, s, id, a, b)
}

func nothing(t *testing.T, s Subject) {
	mustAppend(t, s, uuid.New())
	mustList(t, s)
}

func invalid(t *testing.T, s Subject) {
	id, mark := uuid.New(), session.Finished
	two := note(1, "also a mark")
	two.Mark = &mark
	for _, bad := range []session.Entry{two, {ID: uuid.New(), At: noon}, {At: noon, Mark: &mark}} {
		if err := s.Append(t.Context(), id, note(1, "good"), bad); !errors.Is(err, store.ErrInvalid) {
			t.Errorf("%+v: got %v, want ErrInvalid", bad, err)
		}
	}
	if err := s.Append(t.Context(), uuid.Nil, note(1, "good")); !errors.Is(err, store.ErrInvalid) {
		t.Errorf("session without id: got %v, want ErrInvalid", err)
	}
	mustList(t, s)
}

func cancelled(t *testing.T, s Subject) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if err := s.Append(ctx, uuid.New(), note(1, "too late")); !errors.Is(err, context.Canceled) {
		t.Errorf("append: got %v, want context.Canceled", err)
	}
	if _, err := s.List(ctx); !errors.Is(err, context.Canceled) {
		t.Errorf("list: got %v, want context.Canceled", err)
	}
	mustList(t, s)
}

func unreadable(t *testing.T, s Subject) {
	id, good := uuid.New(), note(1, "good")
	mustAppend(t, s, id, good)
	for _, text := range []string{
		`{"id":"ID","at":"2026-05-01T12:00:00Z","sound":{"hertz":120}}`,
		`{"id":"ID","at":"2026-05-01T12:00:00Z","note":{"text":"x","colour":"red"}}`,
		`{"id":"ID","at":"2026-05-01T12:00:00Z"}`,
		`{"id":"00000000-0000-4000-8000-000000000001","at":"2026-05-01T12:00:00Z","note":{"text":"x"}}`,
		`{"id":`,
		``,
	} {
		s.put(t, id, text)
	}
	mustHold(t, s, id, good)
	mustReport(t, s, store.Problem{Session: id, Newer: 3, Damaged: 3})
	mustAppend(t, s, id, note(2, "later"))
	mustReport(t, s, store.Problem{Session: id, Newer: 3, Damaged: 3})
}

func onlyUnreadable(t *testing.T, s Subject) {
	id, other := uuid.New(), uuid.New()
	s.put(t, id, `{"id":"ID","sound":1}`)
	mustAppend(t, s, other, note(1, "x"))
	mustHold(t, s, id)
	mustList(t, s, other, id)
	mustReport(t, s, store.Problem{Session: id, Newer: 1})
}

func kinds(t *testing.T, s Subject) {
	id, mark, twenty := uuid.New(), session.Removed, 20.5
	before := uuid.New()
	entries := []session.Entry{
		{Setup: &session.Setup{Name: "moped \"é\" \u2028", Build: check.DefaultBuild(), Meter: "cheap", Ambient: &twenty, Unsure: []string{"build"}}},
		{Reading: &session.Reading{Check: "c", Text: "0,5", Unit: "ohm", Range: "200", Corrects: &before}},
		{Skip: &session.Skip{Check: "c", Reason: "no tool"}},
		{Note: &session.Note{Text: "\x00\ufffd 😀"}},
		{Mark: &mark},
	}
	for i := range entries {
		entries[i].ID, entries[i].At = uuid.New(), noon.Add(time.Duration(i)*time.Nanosecond)
	}
	mustAppend(t, s, id, entries...)
	mustHold(t, s, id, entries...)
}

func many(t *testing.T, s Subject) {
	id := uuid.New()
	entries := make([]session.Entry, 500)
	for i := range entries {
		entries[i] = note(i, "reading")
	}
	mustAppend(t, s, id, entries...)
	mustHold(t, s, id, entries...)
}

// put writes a row under a fresh id, which stands for ID in the text.
func (s Subject) put(t *testing.T, id uuid.UUID, text string) {
	t.Helper()
	entry := uuid.NewString()
	s.Put(t, id.String(), entry, replaceID(text, entry))
}

func mustAppend(t *testing.T, s store.Store, id uuid.UUID, entries ...session.Entry) {
	t.Helper()
	if err := s.Append(t.Context(), id, entries...); err != nil {
		t.Fatal(err)
	}
}

func mustHold(t *testing.T, s store.Store, id uuid.UUID, want ...session.Entry) {
	t.Helper()
	got, err := s.Load(t.Context(), id)
	if err != nil {
		t.Fatal(err)
	}
	if got.ID != id {
		t.Errorf("loaded session %s, want %s", got.ID, id)
	}
	if g, w := asJSON(t, got.Entries), asJSON(t, want); g != w {
		t.Errorf("session holds\n%s\nwant\n%s", g, w)
	}
}

func mustList(t *testing.T, s store.Store, want ...uuid.UUID) {
	t.Helper()
	list, err := s.List(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	var got []uuid.UUID
	for _, one := range list {
		got = append(got, one.ID)
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("listed %v, want %v", got, want)
	}
}

func mustReport(t *testing.T, s store.Store, want ...store.Problem) {
	t.Helper()
	got, err := s.Problems(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("problems %+v, want %+v", got, want)
	}
}

func asJSON(t *testing.T, entries []session.Entry) string {
	t.Helper()
	if len(entries) == 0 {
		return "[]"
	}
	text, err := json.MarshalIndent(entries, "", " ")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
