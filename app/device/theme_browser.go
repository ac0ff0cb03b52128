//go:build js && wasm

package device

// Theme is the look in force: "light", "dark" or "system".
func Theme() string { return window().Call("coilbookTheme").String() }

// SetTheme changes the look and remembers it, where the browser lets it.
func SetTheme(name string) { window().Call("coilbookSetTheme", name) }
