//go:build js && wasm

package store

import (
	"context"
	"time"
)

// The browser's storage never answers in some private modes, and a request may be
// forgotten: another one is made then. On a busy device the first answer may also
// be late, so earlier requests stay in the race.
var (
	patience = 5 * time.Second // before one more request
	requests = 4
)

// Open gives the store of this browser. When there is none the store is in
// memory, and the error says why; the store works all the same.
func Open(ctx context.Context) (Store, Where, error) {
	ctx, cancel := context.WithTimeout(ctx, time.Duration(requests)*patience)
	defer cancel() // requests that lost the race close what they open
	again := time.NewTicker(patience)
	defer again.Stop()
	answers := make(chan answer, requests)
	for asked := 1; ; asked++ {
		if asked <= requests {
			go func() {
				db, err := OpenIndexedDB(ctx, "coilbook")
				answers <- answer{db, err}
			}()
		}
		select {
		case a := <-answers:
			if a.err != nil {
				return &Memory{}, MemoryOnly, a.err
			}
			return a.db, OnDevice, nil
		case <-again.C:
		}
	}
}

// answer is what became of a request to open.
type answer struct {
	db  *IndexedDB
	err error
}
