// Package desk holds the records in hand: the session that is open, what was
// typed and is not entered yet, and what is still on its way to the store. The
// screens read it and send it intents; it alone talks to the store. It knows no
// framework: all its methods run on one goroutine, the one that Post runs on.
package desk

import (
	"context"
	"errors"
	"maps"
	"slices"
	"strings"
	"time"

	"github.com/google/uuid"

	"coilbook/app/store"
	"coilbook/engine/check"
	"coilbook/engine/session"
	"coilbook/engine/spec"
)

// World is what the desk needs from outside.
type World struct {
	Open  func(context.Context) (store.Store, store.Where, error)
	Now   func() time.Time
	NewID func() uuid.UUID
	// Profiles are asked for when a session is looked at, and often: the start does
	// without them.
	Profiles func() []spec.Profile
	// Post runs a function later on the goroutine that owns the desk, and
	// redraws after it.
	Post func(func())
}

// Desk is the records in hand.
type Desk struct {
	world    World
	store    store.Store
	where    store.Where
	opening  bool
	ready    bool
	pending  []pending
	saving   bool
	trouble  error
	current  session.Session
	loading  uuid.UUID // the session that is being read
	missing  uuid.UUID // a session that was asked for and is not here
	failed   uuid.UUID // a session that could not be read
	listRead bool
	sessions []session.Session
	problems []store.Problem
	drafts   map[draftKey]Draft
	revision int
}

type pending struct {
	session uuid.UUID
	entry   session.Entry
}

type draftKey struct {
	session uuid.UUID
	check   check.ID
}

// Draft is what was typed for a check and is not entered yet.
type Draft struct {
	Text, Unit, Range string
	Again             bool      // one more reading of the same point
	Corrects          uuid.UUID // the reading of several that is taken again
}

// New makes a desk; nothing happens before Start.
func New(w World) *Desk { return &Desk{world: w, drafts: map[draftKey]Draft{}} }

// Revision changes whenever anything a screen may show has changed.
func (d *Desk) Revision() int { return d.revision }

func (d *Desk) touch() { d.revision++ }

// Start opens the store and reads the list of sessions; further calls do
// nothing.
func (d *Desk) Start() {
	if d.opening || d.ready {
		return
	}
	d.opening = true
	go func() {
		st, where, err := d.world.Open(context.Background())
		d.world.Post(func() { d.opened(st, where, err) })
	}()
}

func (d *Desk) opened(st store.Store, where store.Where, err error) {
	d.store, d.where, d.opening, d.ready = st, where, false, true
	d.trouble = err
	d.touch()
	d.save()
	d.Refresh()
}

// Refresh reads the list of sessions again.
func (d *Desk) Refresh() {
	if !d.ready {
		return
	}
	st := d.store
	go func() {
		list, err := st.List(context.Background())
		problems, problemsErr := st.Problems(context.Background())
		d.world.Post(func() { d.listed(list, problems, errors.Join(err, problemsErr)) })
	}()
}

func (d *Desk) listed(list []session.Session, problems []store.Problem, err error) {
	if err != nil {
		d.trouble = err
	} else {
		d.sessions, d.problems, d.listRead = union(d.sessions, list), problems, true
		for _, s := range d.sessions {
			if s.ID == d.current.ID {
				d.current = session.Merge(d.current, s) // another tab may have added to it
			}
		}
	}
	d.touch()
}

// union merges two readings of the list. Records only grow, so nothing that was
// seen once is dropped because the other reading is a moment older.
func union(a, b []session.Session) []session.Session {
	byID := map[uuid.UUID]session.Session{}
	for _, s := range slices.Concat(a, b) {
		if old, ok := byID[s.ID]; ok {
			s = session.Merge(old, s)
		}
		byID[s.ID] = s
	}
	return slices.SortedFunc(maps.Values(byID), func(x, y session.Session) int {
		if c := changed(y).Compare(changed(x)); c != 0 {
			return c
		}
		return strings.Compare(x.ID.String(), y.ID.String())
	})
}

func changed(s session.Session) time.Time {
	if len(s.Entries) == 0 {
		return time.Time{}
	}
	return s.Entries[len(s.Entries)-1].At
}

// fold keeps the list in step with an entry that was just made.
func (d *Desk) fold(id uuid.UUID, e session.Entry) {
	for i, s := range d.sessions {
		if s.ID == id {
			d.sessions = slices.Delete(slices.Clone(d.sessions), i, i+1)
			d.sessions = slices.Insert(d.sessions, 0, s.Append(e))
			return
		}
	}
	d.sessions = slices.Insert(slices.Clone(d.sessions), 0, session.Session{ID: id}.Append(e))
}

// append records entries of a session: in hand at once, in the store as soon as
// it takes them.
func (d *Desk) append(id uuid.UUID, bodies ...session.Entry) {
	for _, e := range bodies {
		e.ID, e.At = d.world.NewID(), d.now(id)
		d.pending = append(d.pending, pending{id, e})
		d.fold(id, e)
		if d.current.ID == id {
			d.current = d.current.Append(e)
		}
		if d.missing == id {
			d.missing = uuid.Nil
		}
	}
	d.touch()
	d.save()
}

// now is the time for a session's next entry: after its last one even when the
// phone's clock was set back, because the order of entries is their meaning.
func (d *Desk) now(id uuid.UUID) time.Time {
	at := d.world.Now().UTC()
	for _, s := range append([]session.Session{d.current}, d.sessions...) {
		if n := len(s.Entries); s.ID == id && n > 0 && !at.After(s.Entries[n-1].At) {
			at = s.Entries[n-1].At.Add(time.Millisecond)
		}
	}
	return at
}

// save writes what is pending, one transaction per session at a time. What
// cannot be written stays pending.
func (d *Desk) save() {
	if d.saving || !d.ready || len(d.pending) == 0 {
		return
	}
	d.saving = true
	id := d.pending[0].session
	var batch []session.Entry
	for _, p := range d.pending {
		if p.session == id {
			batch = append(batch, p.entry)
		}
	}
	st := d.store
	go func() {
		ctx, cancel := context.WithTimeout(context.Background(), writePatience)
		defer cancel()
		err := st.Append(ctx, id, batch...)
		d.world.Post(func() { d.saved(batch, err) })
	}()
}

func (d *Desk) saved(batch []session.Entry, err error) {
	d.saving = false
	d.touch()
	if err != nil {
		d.trouble = err
		return
	}
	done := map[uuid.UUID]bool{}
	for _, e := range batch {
		done[e.ID] = true
	}
	d.pending = slices.DeleteFunc(d.pending, func(p pending) bool { return done[p.entry.ID] })
	if d.where == store.OnDevice {
		d.trouble = nil
	}
	d.save()
}

// writePatience bounds a write that the browser never answers; what it held
// stays pending and can be tried again.
const writePatience = 15 * time.Second

// Retry tries again to write what is pending.
func (d *Desk) Retry() { d.save() }
