//go:build js && wasm

package store

import (
	"context"
	"errors"
	"syscall/js"
	"time"
)

// transaction is the work that is done as a whole or not at all.
type transaction struct {
	tx, table js.Value
	held      listeners
	done      chan error // one value, when the browser tells the end
	heard     bool       // the browser has answered a request
	listening bool
}

// A browser may forget a connection, and then answers nothing that is asked
// through it: it is given up when the first request has no answer for so long.
// An end that was asked for has farewell to come.
var (
	silence  = 5 * time.Second
	farewell = time.Second
)

// errMute says that the browser answered nothing.
var errMute = errors.New("the storage does not answer")

// do runs work in a transaction and returns nil only after it is complete. Where
// nothing is heard for so long, the connection is given up.
func (c *connection) do(ctx context.Context, quiet time.Duration, mode string, work func(*transaction)) error {
	tx, err := attempt(func() js.Value {
		return c.db.Call("transaction", table, mode, map[string]any{"durability": "strict"})
	})
	if err != nil {
		c.lose() // a database that starts no transaction is closed
		return err
	}
	t := &transaction{tx: tx, done: make(chan error, 1)}
	t.held.on(tx, "oncomplete", func(js.Value) { t.done <- nil })
	t.held.on(tx, "onabort", func(js.Value) { t.done <- failure(tx.Get("error")) })
	if err := t.start(work); err != nil {
		_ = t.stop(c, err)
		return err
	}
	mute := time.NewTimer(quiet)
	defer mute.Stop()
	for {
		select {
		case err := <-t.done:
			t.held.free()
			return err
		case <-mute.C:
			if !t.heard {
				c.giveUp()
				return t.stop(c, errMute)
			}
		case <-ctx.Done():
			return t.stop(c, ctx.Err())
		}
	}
}

// stop asks for the end of a transaction and gives the reason for it, or nil
// when all was complete before. Without an answer nothing is known, and so
// nothing is confirmed: to add the same rows again is harmless.
func (t *transaction) stop(c *connection, reason error) error {
	t.abort()
	select {
	case err := <-t.done:
		t.held.free()
		if err == nil {
			return nil
		}
	case <-time.After(farewell):
		c.giveUp()
		go func() {
			<-t.done
			t.held.free()
		}()
	}
	return reason
}

func (t *transaction) start(work func(*transaction)) error {
	_, err := attempt(func() js.Value {
		t.table = t.tx.Call("objectStore", table)
		work(t)
		return js.Undefined()
	})
	return err
}

// abort asks for the end; a transaction that is over already answers with an
// exception, which says nothing new.
func (t *transaction) abort() {
	_, _ = attempt(func() js.Value { return t.tx.Call("abort") })
}

// add writes a row that is not there yet, and keeps the one that is.
func (t *transaction) add(r row) {
	request := t.table.Call("add", r.text, []any{r.session, r.entry})
	t.listen(request)
	t.held.on(request, "onerror", func(e js.Value) {
		t.heard = true
		if request.Get("error").Get("name").String() == "ConstraintError" {
			e.Call("preventDefault") // or the whole transaction would be aborted
			e.Call("stopPropagation")
		}
	})
}

// listen notes that the browser answers; the first request is enough for that.
func (t *transaction) listen(request js.Value) {
	if !t.listening {
		t.listening = true
		t.held.on(request, "onsuccess", func(js.Value) { t.heard = true })
	}
}

// all asks for the rows in a range of keys; the answer is there once the
// transaction is complete.
func (t *transaction) all(keys js.Value) func() []row {
	names, texts := t.table.Call("getAllKeys", keys), t.table.Call("getAll", keys)
	t.listen(names)
	return func() []row {
		ks, vs := names.Get("result"), texts.Get("result")
		rows := make([]row, 0, ks.Length())
		for i := range ks.Length() {
			if k := ks.Index(i); js.Global().Get("Array").Call("isArray", k).Bool() && k.Length() == 2 {
				rows = append(rows, row{text(k.Index(0)), text(k.Index(1)), text(vs.Index(i))})
			}
		}
		return rows
	}
}

// text is empty for anything that is not a string.
func text(v js.Value) string {
	if v.Type() != js.TypeString {
		return ""
	}
	return v.String()
}
