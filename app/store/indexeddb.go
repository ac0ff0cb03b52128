//go:build js && wasm

package store

import (
	"context"
	"fmt"
	"sync/atomic"
	"syscall/js"

	"github.com/google/uuid"

	"coilbook/engine/session"
)

// IndexedDB keeps records in the browser's own database. A lost connection
// (closed by the browser, or given up for another tab) is opened again by the
// next call.
type IndexedDB struct {
	name    string
	opening chan struct{} // holds a token while nobody is opening
	current atomic.Pointer[connection]
}

// OpenIndexedDB opens the database of that name and creates it when needed.
func OpenIndexedDB(ctx context.Context, name string) (*IndexedDB, error) {
	s := &IndexedDB{name: name, opening: make(chan struct{}, 1)}
	s.opening <- struct{}{}
	if _, err := s.connection(ctx); err != nil {
		return nil, err
	}
	return s, nil
}

// Append implements Store.
func (s *IndexedDB) Append(ctx context.Context, id uuid.UUID, entries ...session.Entry) error {
	rows, err := encode(id, entries)
	if err != nil || len(rows) == 0 {
		return err
	}
	err = s.do(ctx, "readwrite", func(t *transaction) {
		for _, r := range rows {
			t.add(r)
		}
	})
	if err != nil {
		return fmt.Errorf("appending to session %s: %w", id, err)
	}
	return nil
}

// Load implements Store.
func (s *IndexedDB) Load(ctx context.Context, id uuid.UUID) (session.Session, error) {
	rows, err := s.rows(ctx, keysOf(id))
	if err != nil {
		return session.Session{}, fmt.Errorf("loading session %s: %w", id, err)
	}
	return read(rows).one(id)
}

// List implements Store.
func (s *IndexedDB) List(ctx context.Context) ([]session.Session, error) {
	rows, err := s.rows(ctx, js.Undefined())
	if err != nil {
		return nil, fmt.Errorf("listing sessions: %w", err)
	}
	return read(rows).all(), nil
}

// Problems implements Store.
func (s *IndexedDB) Problems(ctx context.Context) ([]Problem, error) {
	rows, err := s.rows(ctx, js.Undefined())
	if err != nil {
		return nil, fmt.Errorf("looking for unreadable entries: %w", err)
	}
	return read(rows).allProblems(), nil
}

func (s *IndexedDB) rows(ctx context.Context, keys js.Value) ([]row, error) {
	var found func() []row
	if err := s.do(ctx, "readonly", func(t *transaction) { found = t.all(keys) }); err != nil {
		return nil, err
	}
	return found(), nil
}

// keysOf is the range of all rows of a session: in the order of keys an array
// comes after every string.
func keysOf(id uuid.UUID) js.Value {
	from, to := []any{id.String()}, []any{id.String(), []any{}}
	return js.Global().Get("IDBKeyRange").Call("bound", from, to)
}

// do runs work in one transaction. Work that hits a lost connection is done
// once more on a new one, with more time; adding the same rows twice is harmless.
func (s *IndexedDB) do(ctx context.Context, mode string, work func(*transaction)) error {
	c, err := s.connection(ctx)
	if err != nil {
		return err
	}
	if err = c.do(ctx, silence, mode, work); err == nil || ctx.Err() != nil || !c.lost.Load() {
		return err
	}
	if c, err = s.connection(ctx); err != nil {
		return err
	}
	return c.do(ctx, 4*silence, mode, work)
}

func (s *IndexedDB) connection(ctx context.Context) (*connection, error) {
	select {
	case <-s.opening:
		defer func() { s.opening <- struct{}{} }()
	case <-ctx.Done():
		return nil, fmt.Errorf("opening the storage: %w", ctx.Err())
	}
	if c := s.current.Load(); c != nil && !c.lost.Load() {
		return c, nil
	}
	c, err := connect(ctx, s.name)
	if err != nil {
		return nil, fmt.Errorf("opening the storage: %w", err)
	}
	s.current.Store(c)
	return c, nil
}
