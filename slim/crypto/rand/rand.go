//go:build js && wasm

// Package rand takes the place of the standard crypto/rand in the browser build
// only. It asks the browser for random bytes as the standard one does, without
// the generator that certified systems need between.
package rand

import (
	"io"
	"syscall/js"
)

// Reader gives cryptographically strong random bytes.
var Reader io.Reader = browser{}

type browser struct{}

// most is what the browser gives at one time (Web Cryptography, getRandomValues).
const most = 65536

// Read fills b.
func (browser) Read(b []byte) (int, error) {
	for rest := b; len(rest) > 0; {
		n := min(len(rest), most)
		array := js.Global().Get("Uint8Array").New(n)
		js.Global().Get("crypto").Call("getRandomValues", array)
		js.CopyBytesToGo(rest[:n], array)
		rest = rest[n:]
	}
	return len(b), nil
}
