//go:build js && wasm

package store

import (
	"context"
	"errors"
	"fmt"
	"sync/atomic"
	"syscall/js"
)

const (
	schema = 1 // version of the database's layout
	table  = "entries"
)

// connection is one opened database.
type connection struct {
	db   js.Value
	lost atomic.Bool
	held listeners
}

func connect(ctx context.Context, name string) (*connection, error) {
	var held listeners
	leave := inLine(name)
	request, err := attempt(func() js.Value { return factory().Call("open", name, schema) })
	if err != nil {
		leave()
		held.free()
		return nil, err
	}
	done, blocked := make(chan error, 1), false
	held.on(request, "onupgradeneeded", func(js.Value) { request.Get("result").Call("createObjectStore", table) })
	held.on(request, "onblocked", func(js.Value) { blocked = true })
	held.on(request, "onsuccess", func(js.Value) { done <- nil })
	held.on(request, "onerror", func(e js.Value) {
		e.Call("preventDefault")
		done <- failure(request.Get("error"))
	})
	select {
	case err := <-done:
		leave()
		held.free()
		if err != nil {
			return nil, err
		}
		return attend(request.Get("result")), nil
	case <-ctx.Done():
		go abandon(request, done, leave, &held)
		if blocked {
			return nil, fmt.Errorf("another tab holds an older version open: %w", ctx.Err())
		}
		return nil, ctx.Err()
	}
}

// factory is a call and not a plain property, because a browser that blocks
// storage throws already when the property is read.
func factory() js.Value {
	f := js.Global().Get("Reflect").Call("get", js.Global(), "indexedDB")
	if !f.Truthy() {
		panic(js.Error{Value: js.Global().Get("Error").New("this browser has no storage")})
	}
	return f
}

// abandon closes a database that opens after its caller has gone.
func abandon(request js.Value, done <-chan error, leave func(), held *listeners) {
	if <-done == nil {
		request.Get("result").Call("close")
	}
	leave()
	held.free()
}

// inLine asks for a lock while the storage is being opened, until done is called.
// A browser may freeze a page that is left, for the way back, while it waits for
// the storage; there it would keep its place in the queue, and no page after it
// would ever get an answer. Browsers drop a frozen page whose lock another one asks
// for. Nothing waits for the lock itself: two pages may open the storage at once.
func inLine(name string) (done func()) {
	locks := js.Global().Get("navigator").Get("locks")
	if !locks.Truthy() {
		return func() {}
	}
	var open js.Value
	executor := js.FuncOf(func(_ js.Value, args []js.Value) any { open = args[0]; return nil })
	held := js.Global().Get("Promise").New(executor)
	take := js.FuncOf(func(js.Value, []js.Value) any { return held })
	var over js.Func
	over = js.FuncOf(func(js.Value, []js.Value) any {
		for _, f := range []js.Func{executor, take, over} {
			f.Release()
		}
		return nil
	})
	// It may be given only after it is not needed any more.
	locks.Call("request", "opening "+name, take).Call("then", over, over)
	return func() { open.Invoke() }
}

// attend watches for the end of a connection. Giving way to another tab's
// request keeps that tab from waiting for this one.
func attend(db js.Value) *connection {
	c := &connection{db: db}
	c.held.on(db, "onversionchange", func(js.Value) {
		db.Call("close")
		c.lose()
	})
	c.held.on(db, "onclose", func(js.Value) { c.lose() })
	return c
}

// giveUp ends a connection through which nothing is heard any more.
func (c *connection) giveUp() {
	if !c.lost.Load() {
		c.db.Call("close")
		c.lose()
	}
}

func (c *connection) lose() {
	if !c.lost.Swap(true) {
		c.held.free()
	}
}

// failure is a DOMException as an error.
func failure(reason js.Value) error {
	if !reason.Truthy() {
		return errors.New("transaction was aborted")
	}
	text := reason.Get("name").String() + ": " + reason.Get("message").String()
	switch reason.Get("name").String() {
	case "QuotaExceededError":
		return fmt.Errorf("%w (%s)", ErrFull, text)
	case "VersionError":
		return fmt.Errorf("%w (%s)", ErrNewer, text)
	}
	return errors.New(text)
}

// attempt gives what the browser throws as an error.
func attempt(f func() js.Value) (v js.Value, err error) {
	defer func() {
		switch r := recover().(type) {
		case nil:
		case js.Error:
			err = failure(r.Value)
		default:
			panic(r)
		}
	}()
	return f(), nil
}

// listeners are Go functions that the browser holds; they are freed together.
type listeners []js.Func

func (l *listeners) on(target js.Value, property string, f func(event js.Value)) {
	listener := js.FuncOf(func(_ js.Value, args []js.Value) any {
		f(args[0])
		return nil
	})
	target.Set(property, listener)
	*l = append(*l, listener)
}

func (l *listeners) free() {
	for _, f := range *l {
		f.Release()
	}
	*l = nil
}
