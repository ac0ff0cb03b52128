//go:build js && wasm

package store

import (
	"context"
	"time"
)

// patience bounds the wait for the browser's storage, which in some private
// modes never answers.
const patience = 8 * time.Second

// Open gives the store of this browser. When there is none the store is in
// memory, and the error says why; the store works all the same.
func Open(ctx context.Context) (Store, Where, error) {
	ctx, cancel := context.WithTimeout(ctx, patience)
	defer cancel()
	db, err := OpenIndexedDB(ctx, "coilbook")
	if err != nil {
		return &Memory{}, MemoryOnly, err
	}
	return db, OnDevice, nil
}
