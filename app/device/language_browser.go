//go:build js && wasm

package device

// SetLanguage remembers a language by its id and starts the app anew in it.
func SetLanguage(id string) { window().Call("coilbookSetLanguage", id) }
