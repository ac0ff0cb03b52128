// Package store keeps the records on this device. A session is a set of rows,
// one for each entry; rows are added and never changed or removed, so that
// adding the same entry again is harmless and two writers cannot undo each
// other.
//
// In the browser every method waits for the page's event loop: call them from a
// goroutine, never from inside an event handler.
package store

import (
	"context"
	"errors"

	"github.com/google/uuid"

	"coilbook/engine/session"
)

// Errors that a caller decides on.
var (
	// ErrNotFound says that no entry of the session is kept here.
	ErrNotFound = errors.New("session not found")
	// ErrFull says that the device has no room left; nothing was written.
	ErrFull = errors.New("storage is full")
	// ErrNewer says that a newer version of the app owns the storage now.
	ErrNewer = errors.New("storage belongs to a newer version of the app")
	// ErrInvalid says that an entry could not be read back, so it was refused.
	ErrInvalid = errors.New("entry is not valid")
)

// Store keeps sessions.
type Store interface {
	// Append adds entries to a session, all or none, and returns nil only
	// after they are durably written. An entry id that is already there keeps
	// its first content.
	Append(ctx context.Context, id uuid.UUID, entries ...session.Entry) error
	// Load gives one session, or ErrNotFound.
	Load(ctx context.Context, id uuid.UUID) (session.Session, error)
	// List gives all sessions, the newest change first.
	List(ctx context.Context) ([]session.Session, error)
	// Problems tells which sessions hold rows that this version cannot read.
	// Such rows are left out of Load and List, and are kept as they are.
	Problems(ctx context.Context) ([]Problem, error)
}

// Problem counts the rows of one session that were left out.
type Problem struct {
	Session uuid.UUID
	Newer   int // well-formed, with something that this version does not know
	Damaged int // not an entry at all
}

// Where says where the records end up.
type Where int

// Places for the records.
const (
	MemoryOnly Where = iota // lost when the app closes
	OnDevice                // kept by the browser
)
