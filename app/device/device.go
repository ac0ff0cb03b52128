// Package device is what the phone can do for the app: persistent storage,
// downloads, updates, keys, focus. Outside a browser every function is a
// harmless stand-in, so that screens build and run in native tests.
package device

import (
	"encoding/binary"

	"github.com/google/uuid"
)

// NewID gives an id that sorts by the time it was made.
func NewID() uuid.UUID { return uuid.Must(uuid.NewV7()) }

// Seed gives a number that nobody can foretell, from what the device has for it.
func Seed() uint32 {
	id := uuid.New()
	return binary.BigEndian.Uint32(id[12:])
}
