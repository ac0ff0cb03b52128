//go:build js && wasm

package device

// CanVibrate reports whether the browser has a way to vibrate. A phone may still
// have it switched off.
func CanVibrate() bool { return window().Get("navigator").Get("vibrate").Truthy() }

// Vibrate plays a pattern: milliseconds on, off, on and so forth.
func Vibrate(pattern ...int) {
	if !CanVibrate() {
		return
	}
	list := make([]any, len(pattern))
	for i, ms := range pattern {
		list[i] = ms
	}
	window().Get("navigator").Call("vibrate", list)
}

// showLarge puts large type on the page, or takes it off.
func showLarge(large bool) {
	document().Get("documentElement").Get("classList").Call("toggle", "large", large)
}
