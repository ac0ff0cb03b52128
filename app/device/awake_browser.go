//go:build js && wasm

package device

import "syscall/js"

// awake is the one lock on the screen. A browser takes it away whenever the page
// is hidden, and asks for nothing when the page is back: this does.
var awake struct {
	want    bool
	asking  bool
	lock    js.Value // the one held, or the last one
	refused func()
	heard   bool // the page's coming and going is listened to
}

// CanStayAwake reports whether the browser can keep the screen on.
func CanStayAwake() bool { return window().Get("navigator").Get("wakeLock").Truthy() }

// StayAwake keeps the screen on until it is called with false, through every
// time that the page was hidden meanwhile. refused is called when the browser
// says no while the page is in sight, as on a battery that is nearly flat.
func StayAwake(on bool, refused func()) {
	awake.want, awake.refused = on, refused
	if !CanStayAwake() {
		return
	}
	if !on {
		letSleep()
		return
	}
	if !awake.heard {
		awake.heard = true
		listen(document(), "visibilitychange", askAwake)
		listen(window(), "pageshow", askAwake)
	}
	askAwake()
}

func askAwake() {
	if !awake.want || awake.asking || !visible() || held() {
		return
	}
	awake.asking = true
	thenOr(window().Get("navigator").Get("wakeLock").Call("request", "screen"), func(lock js.Value) {
		awake.asking, awake.lock = false, lock
		if !awake.want {
			letSleep()
		}
	}, func() {
		awake.asking = false
		if awake.want && visible() && awake.refused != nil {
			awake.refused()
		}
	})
}

func letSleep() {
	if held() {
		ignore(awake.lock.Call("release"))
	}
	awake.lock = js.Undefined()
}

func held() bool { return awake.lock.Truthy() && !awake.lock.Get("released").Truthy() }

func visible() bool { return document().Get("visibilityState").String() != "hidden" }
