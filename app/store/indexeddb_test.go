//go:build js && wasm

package store_test

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"syscall/js"
	"testing"
	"time"

	"github.com/google/uuid"

	"coilbook/app/store"
	"coilbook/app/store/storetest"
	"coilbook/engine/session"
)

// These tests run in a browser: "go test ./app" builds them and starts one.

func TestIndexedDB(t *testing.T) {
	storetest.Run(t, func(t *testing.T) storetest.Subject {
		name := databaseName()
		return storetest.Subject{Store: open(t, name), Put: func(t *testing.T, session, entry, text string) {
			rawPut(t, name, session, entry, text)
		}}
	})
}

func TestRecordsOutliveTheConnection(t *testing.T) {
	name, id, e := databaseName(), uuid.New(), note("kept")
	appendTo(t, open(t, name), id, e)
	holds(t, open(t, name), id, e)
}

func TestOpenUsesTheBrowser(t *testing.T) {
	_, where, err := store.Open(t.Context())
	if where != store.OnDevice || err != nil {
		t.Errorf("got %v, %v; want OnDevice", where, err)
	}
}

func TestOpenFallsBackToMemory(t *testing.T) {
	real := js.Global().Get("indexedDB")
	for _, descriptor := range []string{
		`({ configurable: true, value: undefined })`,
		`({ configurable: true, get() { throw new Error("blocked") } })`,
	} {
		define(js.Global().Call("eval", descriptor))
		s, where, err := store.Open(t.Context())
		if where != store.MemoryOnly || err == nil {
			t.Errorf("%s: got %v, %v; want MemoryOnly and a reason", descriptor, where, err)
		}
		appendTo(t, s, uuid.New(), note("works all the same"))
	}
	define(js.ValueOf(map[string]any{"configurable": true, "value": real}))
}

// The browser may forget a request to open, or be late with its answer.
func TestOpenAsksAgain(t *testing.T) {
	defer store.Hurry(300 * time.Millisecond)()
	for _, c := range []struct {
		name, script string
		want         store.Where
	}{
		{"the first is forgotten", `n === 1 ? {} : real()`, store.OnDevice},
		{"only the first is heard, and late", `n === 1 ? late(500) : {}`, store.OnDevice},
		{"none is heard", `({})`, store.MemoryOnly},
	} {
		t.Run(c.name, func(t *testing.T) {
			restore := patch("IDBFactory", "open", `(choose, open) => { let n = 0;
				return function (...args) { return choose(++n, () => open.apply(this, args), wait => {
					const stand = {}; const request = open.apply(this, args);
					request.onupgradeneeded = () => request.result.createObjectStore("entries");
					request.onsuccess = () => setTimeout(() => { stand.result = request.result; stand.onsuccess({}) }, wait);
					return stand }) } }`, "(n, real, late) => "+c.script)
			_, where, err := store.Open(t.Context())
			restore()
			if where != c.want || (err == nil) != (c.want == store.OnDevice) {
				t.Errorf("got %v, %v; want %v", where, err, c.want)
			}
		})
	}
}

func define(descriptor js.Value) {
	js.Global().Get("Object").Call("defineProperty", js.Global(), "indexedDB", descriptor)
}

// Deleting the database asks every connection to close: the store gives way,
// and opens it again with its next call.
func TestConnectionClosedByAnother(t *testing.T) {
	name, id, e := databaseName(), uuid.New(), note("after")
	s := open(t, name)
	appendTo(t, s, id, note("before"))
	await(t, js.Global().Get("indexedDB").Call("deleteDatabase", name))
	appendTo(t, s, id, e)
	holds(t, s, id, e)
}

func TestConnectionClosedUnnoticed(t *testing.T) {
	for _, first := range []string{"append", "load"} {
		name, id, before, after := databaseName(), uuid.New(), note("before"), note("after")
		handle := captureHandle(t)
		s := open(t, name)
		appendTo(t, s, id, before)
		handle().Call("close")
		if first == "append" {
			appendTo(t, s, id, after)
			holds(t, s, id, before, after)
		} else {
			holds(t, s, id, before)
		}
	}
}

// A connection that the browser has forgotten answers nothing, not even the wish
// to stop: the work is done on another one. Without one, the failure is told.
func TestConnectionForgotten(t *testing.T) {
	defer store.Hurry(200 * time.Millisecond)()
	name, id, before, after := databaseName(), uuid.New(), note("before"), note("after")
	s := open(t, name)
	appendTo(t, s, id, before)
	for _, forgotten := range []string{"1", "2"} {
		restore := patch("IDBDatabase", "transaction", `(forgotten, transaction) => { let n = 0;
			const mute = () => ({ objectStore: () => ({ add: () => ({}), getAll: () => ({}), getAllKeys: () => ({}) }), abort() {} });
			return function (...args) { return forgotten(++n) ? mute() : transaction.apply(this, args) } }`,
			"n => n <= "+forgotten)
		var err error
		if forgotten == "1" {
			err = s.Append(t.Context(), id, after)
		} else {
			_, err = s.Load(t.Context(), id)
		}
		restore()
		if told := err != nil; told != (forgotten == "2") {
			t.Errorf("%s forgotten: got %v", forgotten, err)
		}
	}
	holds(t, s, id, before, after)
}

// A long write is not given up once the browser has answered.
func TestSlowIsNotMute(t *testing.T) {
	defer store.Hurry(50 * time.Millisecond)()
	s, id := open(t, databaseName()), uuid.New()
	restore := sabotage(`(tx, n) => { globalThis.seenAdds = n; const until = Date.now() + 400;
		const table = tx.objectStore("entries"); const more = () => { if (Date.now() < until) table.count().onsuccess = more }; more() }`)
	err := s.Append(t.Context(), id, note("slow"))
	restore()
	if times := js.Global().Get("seenAdds").Int(); err != nil || times != 1 {
		t.Errorf("written %d times, with %v", times, err)
	}
}

func TestNewerVersionOwnsTheStorage(t *testing.T) {
	name := databaseName()
	s := open(t, name)
	newer := await(t, js.Global().Get("indexedDB").Call("open", name, 99))
	defer newer.Call("close")
	if err := s.Append(t.Context(), uuid.New(), note("x")); !errors.Is(err, store.ErrNewer) {
		t.Errorf("got %v, want ErrNewer", err)
	}
}

// An older version that does not give way must not block for ever.
func TestBlockedOpening(t *testing.T) {
	name := databaseName()
	await(t, js.Global().Get("indexedDB").Call("open", name, 1)).Call("close")
	stubborn := await(t, js.Global().Get("indexedDB").Call("open", name, 1))
	deleting := js.Global().Get("indexedDB").Call("deleteDatabase", name)
	ctx, cancel := context.WithTimeout(t.Context(), 300*time.Millisecond)
	defer cancel()
	if _, err := store.OpenIndexedDB(ctx, name); !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("got %v, want a deadline", err)
	}
	stubborn.Call("close")
	await(t, deleting)
	open(t, name)
}

// The browser may refuse a row, or the whole transaction at its end.
func TestAbortWritesNothing(t *testing.T) {
	for _, fault := range []struct {
		name, script string
		want         error
	}{
		{"abort at the end", `(tx, n) => { if (n === 2) queueMicrotask(() => tx.abort()) }`, nil},
		{"no room", `(tx, n) => { if (n === 2) throw new DOMException("no room", "QuotaExceededError") }`, store.ErrFull},
	} {
		t.Run(fault.name, func(t *testing.T) {
			s, id, e := open(t, databaseName()), uuid.New(), note("kept")
			appendTo(t, s, id, e)
			restore := sabotage(fault.script)
			err := s.Append(t.Context(), id, note("one"), note("two"), note("three"))
			restore()
			if err == nil || fault.want != nil && !errors.Is(err, fault.want) {
				t.Errorf("got %v, want %v", err, fault.want)
			}
			holds(t, s, id, e)
		})
	}
}

func TestCancelledWhileWriting(t *testing.T) {
	s, id := open(t, databaseName()), uuid.New()
	ctx, cancel := context.WithCancel(t.Context())
	stop := js.FuncOf(func(js.Value, []js.Value) any { cancel(); return nil })
	defer stop.Release()
	js.Global().Set("stopWriting", stop)
	restore := sabotage(`(tx, n) => { if (n === 1) globalThis.stopWriting() }`)
	err := s.Append(ctx, id, note("one"), note("two"))
	restore()
	_, loadErr := s.Load(t.Context(), id)
	if confirmed := err == nil; confirmed == errors.Is(loadErr, store.ErrNotFound) {
		t.Errorf("append said %v, but loading gave %v", err, loadErr)
	}
}

func TestDurabilityIsStrict(t *testing.T) {
	s := open(t, databaseName())
	restore := sabotage(`(tx) => { globalThis.seenDurability = tx.durability }`)
	appendTo(t, s, uuid.New(), note("x"))
	restore()
	if got := js.Global().Get("seenDurability").String(); got != "strict" {
		t.Errorf("durability is %q", got)
	}
}

// sabotage calls a script with the transaction and the count of every row
// that is about to be added.
func sabotage(script string) (restore func()) {
	return patch("IDBObjectStore", "add", `(fault, add) => { let n = 0;
		return function (...args) { fault(this.transaction, ++n); return add.apply(this, args) } }`, script)
}

// captureHandle gives access to the database that is opened next.
func captureHandle(t *testing.T) func() js.Value {
	restore := patch("IDBDatabase", "transaction", `(keep, transaction) =>
		function (...args) { keep(this); return transaction.apply(this, args) }`, `(db) => { globalThis.seenDatabase = db }`)
	t.Cleanup(restore)
	return func() js.Value { return js.Global().Get("seenDatabase") }
}

func patch(class, method, wrapper, script string) (restore func()) {
	prototype := js.Global().Get(class).Get("prototype")
	original := prototype.Get(method)
	eval := js.Global().Get("eval")
	prototype.Set(method, eval.Invoke(wrapper).Invoke(eval.Invoke(script), original))
	return func() { prototype.Set(method, original) }
}

var databases int

func databaseName() string {
	databases++
	return fmt.Sprint("test ", databases)
}

func open(t *testing.T, name string) *store.IndexedDB {
	t.Helper()
	s, err := store.OpenIndexedDB(t.Context(), name)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func rawPut(t *testing.T, name, session, entry, text string) {
	t.Helper()
	db := await(t, js.Global().Get("indexedDB").Call("open", name))
	defer db.Call("close")
	table := db.Call("transaction", "entries", "readwrite").Call("objectStore", "entries")
	await(t, table.Call("put", text, []any{session, entry}))
}

// await gives the result of a request.
func await(t *testing.T, request js.Value) js.Value {
	t.Helper()
	done := make(chan string, 1)
	ok := js.FuncOf(func(js.Value, []js.Value) any { done <- ""; return nil })
	bad := js.FuncOf(func(js.Value, []js.Value) any { done <- request.Get("error").Call("toString").String(); return nil })
	defer ok.Release()
	defer bad.Release()
	request.Set("onsuccess", ok)
	request.Set("onerror", bad)
	if failed := <-done; failed != "" {
		t.Fatal(failed)
	}
	return request.Get("result")
}

var second int

func note(text string) session.Entry {
	second++
	at := time.Date(2026, 5, 1, 12, 0, second, 0, time.UTC)
	return session.Entry{ID: uuid.New(), At: at, Note: &session.Note{Text: text}}
}

func appendTo(t *testing.T, s store.Store, id uuid.UUID, entries ...session.Entry) {
	t.Helper()
	if err := s.Append(t.Context(), id, entries...); err != nil {
		t.Fatal(err)
	}
}

func holds(t *testing.T, s store.Store, id uuid.UUID, want ...session.Entry) {
	t.Helper()
	got, err := s.Load(t.Context(), id)
	if err != nil {
		t.Fatal(err)
	}
	if len(got.Entries) != len(want) {
		t.Fatalf("session holds %d entries, want %d", len(got.Entries), len(want))
	}
	for i := range want {
		if got.Entries[i].ID != want[i].ID {
			t.Errorf("entry %d is %s, want %s", i, got.Entries[i].ID, want[i].ID)
		}
	}
}

// The page that runs this test leaves little room to its origin.
func TestNoRoomLeft(t *testing.T) {
	s, id, e := open(t, databaseName()), uuid.New(), note("kept")
	appendTo(t, s, id, e)
	many := []session.Entry{note("lost with the others")}
	for len(many) < 2000 { // noise, because the browser would compress anything simpler
		many = append(many, note(noise(1800)))
	}
	if err := s.Append(t.Context(), id, many...); !errors.Is(err, store.ErrFull) {
		t.Errorf("got %v, want ErrFull", err)
	}
	holds(t, s, id, e)
}

func noise(length int) string {
	var out strings.Builder
	for out.Len() < length {
		out.WriteString(uuid.NewString())
	}
	return out.String()
}
