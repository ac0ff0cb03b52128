// Package cipher takes the place of the standard crypto/cipher in the browser
// build only: the framework can encrypt what it keeps for a program, and this
// program keeps nothing there.
package cipher

import "errors"

// Block is a cipher.
type Block interface{ BlockSize() int }

// AEAD has the methods that the framework calls.
type AEAD interface {
	NonceSize() int
	Seal(dst, nonce, plaintext, additionalData []byte) []byte
	Open(dst, nonce, ciphertext, additionalData []byte) ([]byte, error)
}

// ErrAbsent is what NewGCM gives.
var ErrAbsent = errors.New("this build for the browser leaves encryption out")

// NewGCM fails.
func NewGCM(Block) (AEAD, error) { return nil, ErrAbsent }
