// Package device is what the phone can do for the app: persistent storage,
// downloads, updates, keys, focus. Outside a browser every function is a
// harmless stand-in, so that screens build and run in native tests.
package device

import "github.com/google/uuid"

// NewID gives an id that sorts by the time it was made.
func NewID() uuid.UUID { return uuid.Must(uuid.NewV7()) }
