//go:build js && wasm

package device

import "syscall/js"

// OfflineReady calls tell once everything the app needs is kept on the device.
func OfflineReady(tell func()) {
	workers := window().Get("navigator").Get("serviceWorker")
	if workers.Truthy() {
		then(workers.Get("ready"), func(js.Value) { tell() })
	}
}

// UpdateWaiting calls onReady, perhaps more than once, when a new version is
// installed and waits for consent.
func UpdateWaiting(onReady func()) {
	workers := window().Get("navigator").Get("serviceWorker")
	if !workers.Truthy() {
		return
	}
	then(workers.Get("ready"), func(reg js.Value) {
		tell := func() {
			if reg.Get("waiting").Truthy() && workers.Get("controller").Truthy() {
				onReady()
			}
		}
		tell()
		// The registration lives as long as the page, and so do its listeners.
		listen(reg, "updatefound", func() { watch(reg.Get("installing"), tell) })
		watch(reg.Get("installing"), tell)
	})
}

func watch(worker js.Value, tell func()) {
	if worker.Truthy() {
		listen(worker, "statechange", tell)
	}
}

// TakeOverUpdate puts the waiting version in charge and reloads the page once
// it is. Other tabs go on as they are: only this one has the user's consent.
func TakeOverUpdate() {
	workers := window().Get("navigator").Get("serviceWorker")
	if !workers.Truthy() {
		return
	}
	then(workers.Get("ready"), func(reg js.Value) {
		waiting := reg.Get("waiting")
		if !waiting.Truthy() {
			return
		}
		done := false
		listen(workers, "controllerchange", func() {
			if !done {
				done = true
				window().Get("location").Call("reload")
			}
		})
		waiting.Call("postMessage", map[string]any{"type": "take-over"})
	})
}

func listen(target js.Value, event string, f func()) {
	target.Call("addEventListener", event, js.FuncOf(func(js.Value, []js.Value) any {
		f()
		return nil
	}))
}
