//go:build js && wasm

package store

import (
	"context"
	"syscall/js"
)

// transaction is the work that is done as a whole or not at all.
type transaction struct {
	tx, table js.Value
	held      listeners
}

func (c *connection) do(ctx context.Context, mode string, work func(*transaction)) error {
	tx, err := attempt(func() js.Value {
		return c.db.Call("transaction", table, mode, map[string]any{"durability": "strict"})
	})
	if err != nil {
		c.lose() // a database that starts no transaction is closed
		return err
	}
	t := &transaction{tx: tx}
	defer func() { t.held.free() }()
	done := make(chan error, 1)
	t.held.on(tx, "oncomplete", func(js.Value) { done <- nil })
	t.held.on(tx, "onabort", func(js.Value) { done <- failure(tx.Get("error")) })
	if err := t.start(work); err != nil {
		t.abort()
		<-done
		return err
	}
	select {
	case err = <-done:
		return err
	case <-ctx.Done():
	}
	t.abort()
	if <-done == nil {
		return nil // it was complete before the wish to stop came
	}
	return ctx.Err()
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
	t.held.on(request, "onerror", func(e js.Value) {
		if request.Get("error").Get("name").String() == "ConstraintError" {
			e.Call("preventDefault") // or the whole transaction would be aborted
			e.Call("stopPropagation")
		}
	})
}

// all asks for the rows in a range of keys; the answer is there once the
// transaction is complete.
func (t *transaction) all(keys js.Value) func() []row {
	names, texts := t.table.Call("getAllKeys", keys), t.table.Call("getAll", keys)
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
