//go:build js && wasm

package device

import (
	"syscall/js"
	"time"
)

// then calls ok with what a promise resolves to; a refusal ends in silence,
// because everything asked for through it is optional.
func then(promise js.Value, ok func(js.Value)) { thenOr(promise, ok, func() {}) }

// thenOr calls ok or refused.
func thenOr(promise js.Value, ok func(js.Value), refused func()) {
	var fulfilled, rejected js.Func
	free := func() {
		fulfilled.Release()
		rejected.Release()
	}
	fulfilled = js.FuncOf(func(_ js.Value, args []js.Value) any {
		free()
		ok(args[0])
		return nil
	})
	rejected = js.FuncOf(func(js.Value, []js.Value) any {
		free()
		refused()
		return nil
	})
	promise.Call("then", fulfilled, rejected)
}

func ignore(promise js.Value) { then(promise, func(js.Value) {}) }

// later leaves the browser time to start what it was just asked to do.
func later(f func()) { time.AfterFunc(10*time.Second, f) }
