//go:build js && wasm

package device

import (
	"slices"
	"syscall/js"
	"testing"
	"time"

	"github.com/google/uuid"
)

// These tests run in a browser: "go test ./app" builds them and starts one.

func TestOnKey(t *testing.T) {
	var got []string
	release := OnKey(func(key string) bool { got = append(got, key); return key == "7" })
	if !press("7", "", nil) {
		t.Error("a handled key was left to the browser")
	}
	if press("x", "", nil) {
		t.Error("a key that was not handled was kept from the browser")
	}
	press("c", "", map[string]any{"ctrlKey": true})
	press("9", "input", nil)
	press("8", "textarea", nil)
	release()
	press("6", "", nil)
	if want := []string{"7", "x"}; !slices.Equal(got, want) {
		t.Errorf("heard %q, want %q", got, want)
	}
}

// press sends a key to an element of that kind and tells whether its usual
// effect was prevented.
func press(key, kind string, options map[string]any) bool {
	target := document().Get("body")
	if kind != "" {
		target = target.Call("appendChild", document().Call("createElement", kind))
		defer target.Call("remove")
	}
	init := map[string]any{"key": key, "bubbles": true, "cancelable": true}
	for name, value := range options {
		init[name] = value
	}
	return !target.Call("dispatchEvent", window().Get("KeyboardEvent").New("keydown", init)).Bool()
}

func TestFocusHeading(t *testing.T) {
	FocusHeading()
	if focused := document().Get("activeElement").Get("tagName").String(); focused != "H1" {
		t.Errorf("%s has the focus", focused)
	}
}

func TestSetTitle(t *testing.T) {
	SetTitle(`Battery at rest – "12 V"`)
	if got := document().Get("title").String(); got != `Battery at rest – "12 V"` {
		t.Errorf("title is %q", got)
	}
}

func TestDownload(t *testing.T) {
	type file struct{ name, href string }
	got := make(chan file, 1)
	catch := js.FuncOf(func(_ js.Value, args []js.Value) any {
		args[0].Call("preventDefault")
		link := args[0].Get("target")
		got <- file{link.Get("download").String(), link.Get("href").String()}
		return nil
	})
	defer catch.Release()
	prototype := window().Get("HTMLAnchorElement").Get("prototype")
	original := prototype.Get("click")
	prototype.Set("click", window().Call("eval", `(catcher => function () {
		this.addEventListener("click", catcher); document.body.append(this);
		this.dispatchEvent(new MouseEvent("click", { cancelable: true })); this.remove() })`).Invoke(catch))
	Download("session.json", "application/json", []byte("{\"é\":1}"))
	prototype.Set("click", original)
	f := <-got
	if f.name != "session.json" {
		t.Errorf("the file is called %q", f.name)
	}
	text := make(chan string, 1)
	then(window().Call("fetch", f.href), func(r js.Value) {
		then(r.Call("text"), func(v js.Value) { text <- v.String() })
	})
	if s := <-text; s != "{\"é\":1}" {
		t.Errorf("the file holds %q", s)
	}
}

// fakeWorkers stands in for the browser's service workers.
const fakeWorkers = `(() => {
	const registration = Object.assign(new EventTarget(), { waiting: null, installing: null });
	const workers = Object.assign(new EventTarget(), { controller: {}, ready: Promise.resolve(registration), registration });
	Object.defineProperty(navigator, "serviceWorker", { configurable: true, value: workers });
	return workers })()`

func TestUpdateWaiting(t *testing.T) {
	workers := window().Call("eval", fakeWorkers)
	defer window().Call("eval", `delete navigator.serviceWorker`)
	ready := make(chan bool, 9)
	UpdateWaiting(func() { ready <- true })
	quiet(t, ready)
	window().Set("fake", workers)
	window().Call("eval", `{ const r = fake.registration;
		r.installing = Object.assign(new EventTarget(), { state: "installing" });
		r.dispatchEvent(new Event("updatefound")) }`)
	quiet(t, ready)
	window().Call("eval", `{ const r = fake.registration;
		r.waiting = r.installing; r.installing = null; r.waiting.dispatchEvent(new Event("statechange")) }`)
	select {
	case <-ready:
	case <-time.After(5 * time.Second):
		t.Error("a waiting version was not announced")
	}
}

func TestFirstInstallIsNoUpdate(t *testing.T) {
	window().Set("fake", window().Call("eval", fakeWorkers))
	defer window().Call("eval", `delete navigator.serviceWorker`)
	window().Call("eval", `fake.controller = null; fake.registration.waiting = new EventTarget()`)
	ready := make(chan bool, 9)
	UpdateWaiting(func() { ready <- true })
	quiet(t, ready)
}

func quiet(t *testing.T, ready <-chan bool) {
	t.Helper()
	select {
	case <-ready:
		t.Error("an update was announced too early")
	case <-time.After(50 * time.Millisecond):
	}
}

// None of these may fail or wait where the browser says no.
func TestOptionalAbilities(t *testing.T) {
	PersistStorage()
	ScrollTop()
	time.Sleep(100 * time.Millisecond) // an answer after the end of the program would raise an error
	if Prefix() != "/" {
		t.Errorf("prefix is %q", Prefix())
	}
	if id := NewID(); id.Version() != 7 || id == uuid.Nil {
		t.Errorf("id %s is not of version 7", id)
	}
}

func TestKeep(t *testing.T) {
	defer Keep("try", "")
	if Kept("try") != "" || !Keep("try", "one – “two”") || Kept("try") != "one – “two”" {
		t.Errorf("kept is %q", Kept("try"))
	}
	if Keep("try", ""); Kept("try") != "" {
		t.Error("taken away, and still there")
	}
}

func TestSeedsDiffer(t *testing.T) {
	seen := map[uint32]bool{}
	for range 4 {
		seen[Seed()] = true
	}
	if len(seen) < 3 {
		t.Errorf("four seeds gave %d", len(seen))
	}
}
