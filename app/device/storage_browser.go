//go:build js && wasm

package device

import "syscall/js"

// PersistStorage asks for records that the browser does not clear by itself. It
// never waits: some browsers leave the answer pending for ever.
func PersistStorage() {
	if storage := window().Get("navigator").Get("storage"); storage.Truthy() && storage.Get("persist").Truthy() {
		ignore(storage.Call("persist"))
	}
}

// Download hands the user a file.
func Download(name, mime string, data []byte) {
	bytes := window().Get("Uint8Array").New(len(data))
	js.CopyBytesToJS(bytes, data)
	blob := window().Get("Blob").New([]any{bytes}, map[string]any{"type": mime})
	url := window().Get("URL").Call("createObjectURL", blob)
	link := document().Call("createElement", "a")
	link.Set("href", url)
	link.Set("download", name)
	link.Call("click")
	later(func() { window().Get("URL").Call("revokeObjectURL", url) })
}
