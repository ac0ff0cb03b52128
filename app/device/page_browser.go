//go:build js && wasm

package device

import (
	"sync"
	"syscall/js"
)

func window() js.Value { return js.Global() }

func document() js.Value { return window().Get("document") }

// Prefix is the path under which the app is hosted, with both slashes. It stays
// the same as long as the page.
var Prefix = sync.OnceValue(func() string {
	if p := document().Get("documentElement").Get("dataset").Get("prefix"); p.Truthy() {
		return p.String()
	}
	return "/"
})

// OnKey calls handle for every key pressed outside text fields, without a
// modifier; handle says whether it used the key, and the browser then does not.
func OnKey(handle func(key string) (handled bool)) (release func()) {
	listener := js.FuncOf(func(_ js.Value, args []js.Value) any {
		e := args[0]
		if !taken(e) && handle(e.Get("key").String()) {
			e.Call("preventDefault")
		}
		return nil
	})
	document().Call("addEventListener", "keydown", listener)
	return func() {
		document().Call("removeEventListener", "keydown", listener)
		listener.Release()
	}
}

// taken reports whether a key belongs to the browser, to a text field or to
// the control that has the focus.
func taken(e js.Value) bool {
	for _, name := range []string{"ctrlKey", "metaKey", "altKey", "isComposing"} {
		if e.Get(name).Truthy() {
			return true
		}
	}
	target := e.Get("target")
	if !target.Truthy() || target.Get("closest").IsUndefined() {
		return false
	}
	own := "input, textarea, select, [contenteditable]"
	if e.Get("key").String() == "Enter" {
		own += ", a, button, summary" // it presses what has the focus
	}
	return target.Call("closest", own).Truthy()
}

// FocusHeading moves the focus to the first heading of the page, so that a
// screen reader announces the new screen.
func FocusHeading() {
	h := document().Call("querySelector", "h1")
	if !h.Truthy() {
		return
	}
	h.Call("setAttribute", "tabindex", "-1")
	h.Call("focus", map[string]any{"preventScroll": true})
}

// Pause lets the page answer a touch between two long steps. A timer of this
// program would not do: when a step took long it has run out already; and browsers make
// one timer after the other wait, so that the page sends itself a message.
func Pause() {
	turn := make(chan struct{})
	paused = append(paused, turn)
	if !wake.Truthy() {
		wake = awaken()
	}
	wake.Call("postMessage", nil)
	<-turn
}

// paused are those who wait for the page to have its turn, the first at the front.
var (
	paused []chan struct{}
	wake   js.Value // the end of a channel that wakes the first of them
)

func awaken() js.Value {
	ends := window().Get("MessageChannel").New()
	ends.Get("port1").Set("onmessage", js.FuncOf(func(js.Value, []js.Value) any {
		first := paused[0]
		paused = paused[1:]
		close(first)
		return nil
	}))
	return ends.Get("port2")
}

// The setting up of all packages would be one long step; this one's turn comes
// behind the runtime's and before the most.
func init() { Pause() }

// EndFirstPaint takes away what the page showed before the program, once a screen of
// the program stands below it.
func EndFirstPaint() {
	if first := document().Call("getElementById", "first-paint"); first.Truthy() {
		first.Call("remove")
	}
}

// ScrollTop shows the top of the page, and of its main part where that scrolls
// by itself.
func ScrollTop() {
	window().Call("scrollTo", 0, 0)
	if main := document().Call("querySelector", "main"); main.Truthy() {
		main.Set("scrollTop", 0)
	}
}

// ShowPart brings a part of the page into view and moves the focus to it.
func ShowPart(id string) {
	el := document().Call("getElementById", id)
	if !el.Truthy() {
		return
	}
	el.Call("scrollIntoView", map[string]any{"block": "start"})
	el.Call("focus", map[string]any{"preventScroll": true})
}

// GuardLeaving has the browser ask before it closes or reloads the page, while
// unsafe says that something would be lost.
func GuardLeaving(unsafe func() bool) {
	window().Call("addEventListener", "beforeunload", js.FuncOf(func(_ js.Value, args []js.Value) any {
		if unsafe() {
			args[0].Call("preventDefault")
			args[0].Set("returnValue", true) // older browsers look at this alone
		}
		return nil
	}))
}

// RenamePlace gives the place that is shown another address: Back comes to that one.
func RenamePlace(path string) { window().Get("history").Call("replaceState", nil, "", path) }

// SetTitle names the page.
func SetTitle(title string) { document().Set("title", title) }
