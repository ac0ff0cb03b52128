//go:build !js

package device

// Keep puts a short text under a name on the device; "" takes it away.
func Keep(name, text string) (kept bool) { return false }

// Kept is the text under a name, "" where there is none.
func Kept(name string) string { return "" }

// CanShare reports whether the device has a way of its own to hand text on.
func CanShare() bool { return false }

// Share hands a text and an address of the app to the device's own way.
func Share(text, path string) {}

// Copy puts an address of the app behind a text on the clipboard and tells
// whether it could.
func Copy(text, path string, tell func(done bool)) { tell(false) }
