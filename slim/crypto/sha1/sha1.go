// Package sha1 takes the place of the standard crypto/sha1 in the browser build
// only: the same sums (FIPS 180-4, section 6.1), without what certified systems
// need beside. Names of example records come from it, and nothing secret does.
package sha1

import (
	"encoding/binary"
	"hash"
	"math/bits"
)

// Sizes in bytes.
const (
	Size      = 20
	BlockSize = 64
)

// New gives a hash that keeps what is written until its sum is asked for.
func New() hash.Hash { return &digest{} }

type digest struct{ text []byte }

// Write takes everything.
func (d *digest) Write(b []byte) (int, error) {
	d.text = append(d.text, b...)
	return len(b), nil
}

// Sum appends the sum.
func (d *digest) Sum(b []byte) []byte {
	sum := Sum(d.text)
	return append(b, sum[:]...)
}

// Reset forgets what was written.
func (d *digest) Reset() { d.text = nil }

// Size is that of a sum.
func (*digest) Size() int { return Size }

// BlockSize is that of a step.
func (*digest) BlockSize() int { return BlockSize }

// Sum gives the sum of a text.
func Sum(text []byte) (sum [Size]byte) {
	padded := append(append([]byte{}, text...), 0x80)
	for len(padded)%BlockSize != BlockSize-8 {
		padded = append(padded, 0)
	}
	padded = binary.BigEndian.AppendUint64(padded, 8*uint64(len(text)))
	h := [5]uint32{0x67452301, 0xefcdab89, 0x98badcfe, 0x10325476, 0xc3d2e1f0}
	for ; len(padded) > 0; padded = padded[BlockSize:] {
		step(&h, padded)
	}
	for i, v := range h {
		binary.BigEndian.PutUint32(sum[4*i:], v)
	}
	return sum
}

func step(h *[5]uint32, block []byte) {
	var w [80]uint32
	for i := range w {
		if i < 16 {
			w[i] = binary.BigEndian.Uint32(block[4*i:])
			continue
		}
		w[i] = bits.RotateLeft32(w[i-3]^w[i-8]^w[i-14]^w[i-16], 1)
	}
	a, b, c, d, e := h[0], h[1], h[2], h[3], h[4]
	for i, v := range w {
		f, k := mix(i, b, c, d)
		a, b, c, d, e = bits.RotateLeft32(a, 5)+f+e+k+v, a, bits.RotateLeft32(b, 30), c, d
	}
	for i, v := range [5]uint32{a, b, c, d, e} {
		h[i] += v
	}
}

// mix gives the function and the constant of a round.
func mix(round int, b, c, d uint32) (f, k uint32) {
	switch round / 20 {
	case 0:
		return b&c | ^b&d, 0x5a827999
	case 1:
		return b ^ c ^ d, 0x6ed9eba1
	case 2:
		return b&c | b&d | c&d, 0x8f1bbcdc
	}
	return b ^ c ^ d, 0xca62c1d6
}
