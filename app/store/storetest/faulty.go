package storetest

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/google/uuid"

	"coilbook/app/store"
	"coilbook/engine/session"
)

// ErrInjected is the failure that Faulty makes.
var ErrInjected = errors.New("injected failure")

// Faulty is a store whose Nth operation fails: before it is done, or after,
// when the answer is lost on its way.
type Faulty struct {
	store.Store
	FailAt int // 1 is the first operation; 0 never fails
	After  bool

	mu   sync.Mutex
	done int // operations so far
}

// Met reports whether the failure has happened.
func (f *Faulty) Met() bool {
	f.mu.Lock()
	defer f.mu.Unlock()
	return f.FailAt > 0 && f.done >= f.FailAt
}

// Append implements store.Store.
func (f *Faulty) Append(ctx context.Context, id uuid.UUID, entries ...session.Entry) error {
	return f.step(func() error { return f.Store.Append(ctx, id, entries...) })
}

// Load implements store.Store.
func (f *Faulty) Load(ctx context.Context, id uuid.UUID) (s session.Session, err error) {
	err = f.step(func() error { s, err = f.Store.Load(ctx, id); return err })
	return s, err
}

// List implements store.Store.
func (f *Faulty) List(ctx context.Context) (list []session.Session, err error) {
	err = f.step(func() error { list, err = f.Store.List(ctx); return err })
	return list, err
}

// Problems implements store.Store.
func (f *Faulty) Problems(ctx context.Context) (list []store.Problem, err error) {
	err = f.step(func() error { list, err = f.Store.Problems(ctx); return err })
	return list, err
}

func (f *Faulty) step(do func() error) error {
	f.mu.Lock()
	f.done++
	now := f.done == f.FailAt
	f.mu.Unlock()
	if !now {
		return do()
	}
	if f.After {
		if err := do(); err != nil {
			return err
		}
	}
	return ErrInjected
}

// walk fails every operation of a piece of work in turn, until the work gets
// through without meeting the failure.
func walk(t *testing.T, fresh func(t *testing.T) Subject) {
	for _, after := range []bool{false, true} {
		for n := 1; ; n++ {
			s := fresh(t)
			f := &Faulty{Store: s.Store, FailAt: n, After: after}
			met := work(t, f, s.Store)
			if !met && f.Met() {
				t.Fatalf("failure %d was swallowed", n)
			}
			if !met {
				break
			}
		}
	}
}

// work appends to two sessions, retries once what failed, and checks on the
// sound store that nothing confirmed is lost and nothing is there twice.
func work(t *testing.T, f *Faulty, sound store.Store) (met bool) {
	t.Helper()
	ids := []uuid.UUID{uuid.New(), uuid.New()}
	confirmed := map[uuid.UUID][]session.Entry{}
	for i := range 6 {
		id, e := ids[i%2], note(i, fmt.Sprint("reading ", i))
		err := f.Append(t.Context(), id, e)
		if err == nil {
			confirmed[id] = append(confirmed[id], e)
		}
		for id, entries := range confirmed {
			mustInclude(t, sound, id, entries)
		}
		if err != nil {
			met = met || errors.Is(err, ErrInjected)
			mustAppend(t, f, id, e)
			confirmed[id] = append(confirmed[id], e)
		}
		if _, err := f.Load(t.Context(), id); errors.Is(err, ErrInjected) {
			met = true
		}
	}
	for id, entries := range confirmed {
		mustHold(t, sound, id, entries...)
	}
	return met
}

func mustInclude(t *testing.T, s store.Store, id uuid.UUID, want []session.Entry) {
	t.Helper()
	got, err := s.Load(t.Context(), id)
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range want {
		if !slices.ContainsFunc(got.Entries, func(g session.Entry) bool { return g.ID == w.ID }) {
			t.Fatalf("confirmed entry %s is lost", w.ID)
		}
	}
}

func replaceID(text, entry string) string { return strings.Replace(text, `"ID"`, `"`+entry+`"`, 1) }
