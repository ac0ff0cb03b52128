//go:build js && wasm

package device

import "syscall/js"

// Keep puts a short text under a name on the device; "" takes it away. Browsers
// that keep nothing refuse with an exception: then kept is false.
func Keep(name, text string) (kept bool) {
	defer func() { _ = recover() }()
	store := window().Get("localStorage")
	if text == "" {
		store.Call("removeItem", keepPrefix+name)
	} else {
		store.Call("setItem", keepPrefix+name, text)
	}
	return true
}

// Kept is the text under a name, "" where there is none.
func Kept(name string) (text string) {
	defer func() { _ = recover() }()
	if v := window().Get("localStorage").Call("getItem", keepPrefix+name); v.Truthy() {
		return v.String()
	}
	return ""
}

// Several apps may share the store of one host.
const keepPrefix = "coilbook-"

// CanShare reports whether the device has a way of its own to hand text on.
func CanShare() bool { return window().Get("navigator").Get("share").Truthy() }

// Share hands a text and an address of the app to the device's own way.
func Share(text, path string) {
	ignore(window().Get("navigator").Call("share", map[string]any{"text": text, "url": address(path)}))
}

// Copy puts an address of the app behind a text on the clipboard and tells
// whether it could.
func Copy(text, path string, tell func(done bool)) {
	board := window().Get("navigator").Get("clipboard")
	if !board.Truthy() {
		tell(false)
		return
	}
	thenOr(board.Call("writeText", text+" "+address(path)), func(js.Value) { tell(true) }, func() { tell(false) })
}

func address(path string) string {
	return window().Get("location").Get("origin").String() + Prefix() + path
}
