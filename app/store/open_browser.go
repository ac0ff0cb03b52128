//go:build js && wasm

package store

import (
	"context"
	"errors"
	"time"
)

// The browser's storage never answers in some private modes, and now and then a
// request to open it is forgotten while the page before is still being put away:
// another request is heard then.
const (
	patience = 5 * time.Second // for one request
	requests = 3
)

// Open gives the store of this browser. When there is none the store is in
// memory, and the error says why; the store works all the same.
func Open(ctx context.Context) (Store, Where, error) {
	var err error
	for range requests {
		var db *IndexedDB
		if db, err = openOnce(ctx); err == nil {
			return db, OnDevice, nil
		}
		if !errors.Is(err, context.DeadlineExceeded) {
			break
		}
	}
	return &Memory{}, MemoryOnly, err
}

func openOnce(ctx context.Context) (*IndexedDB, error) {
	ctx, cancel := context.WithTimeout(ctx, patience)
	defer cancel()
	return OpenIndexedDB(ctx, "coilbook")
}
