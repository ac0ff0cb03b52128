package slim

import (
	"encoding/binary"
	"errors"
	"slices"
)

// errWasm says that a file is not a program for the browser.
var errWasm = errors.New("not a WebAssembly program")

// dataSection is the number of the section with what memory holds at the start
// (WebAssembly core specification 2.0, section 5.5.14).
const dataSection = 11

// worthAGap is how many zeros in a row are left out of what a program holds.
// Fewer cost almost nothing in a compressed file, while the linker's hundred
// thousand short segments, each with its address, cost a thirteenth of it.
const worthAGap = 1 << 16

// segment is a part of the program that is copied to memory when it starts.
type segment struct {
	address uint32
	bytes   []byte
}

// split is a program in three: what stands before its data, the memory when it
// starts, and what stands behind.
type split struct {
	before, image, behind []byte
}

func splitAtData(program []byte) (out split, err error) {
	if len(program) < 8 || string(program[:4]) != "\x00asm" {
		return split{}, errWasm
	}
	r := reader{rest: program[8:]}
	for len(r.rest) > 0 && !r.short {
		before := program[:len(program)-len(r.rest)]
		id, body := r.number(), r.block()
		if id == dataSection {
			data := reader{rest: body}
			out = split{before: before, image: imageOf(segments(&data)), behind: r.rest}
			r.short = r.short || data.short
		}
	}
	if r.short || len(out.image) == 0 {
		return split{}, errWasm
	}
	return out, nil
}

// imageOf is the memory when the program starts.
func imageOf(parts []segment) []byte {
	end := 0
	for _, s := range parts {
		end = max(end, int(s.address)+len(s.bytes))
	}
	image := make([]byte, end)
	for _, s := range parts {
		copy(image[s.address:], s.bytes)
	}
	return image
}

// program puts the three together again, the memory in few segments.
func (s split) program() []byte {
	parts := partsOf(s.image)
	body := binary.AppendUvarint(nil, uint64(len(parts)))
	for _, p := range parts {
		body = append(body, 0, 0x41)
		body = appendSigned(body, int64(p.address))
		body = append(body, 0x0b)
		body = binary.AppendUvarint(body, uint64(len(p.bytes)))
		body = append(body, p.bytes...)
	}
	out := append(slices.Clone(s.before), dataSection)
	out = binary.AppendUvarint(out, uint64(len(body)))
	return slices.Concat(out, body, s.behind)
}

// partsOf leaves out the long runs of zeros, which memory has anyway.
func partsOf(image []byte) (out []segment) {
	for at := 0; at < len(image); {
		zeros := zerosAt(image[at:])
		if zeros >= worthAGap || at == 0 || at+zeros == len(image) {
			at += zeros
			out = append(out, segment{address: uint32(at)})
		}
		if at == len(image) {
			return out[:len(out)-1]
		}
		last := &out[len(out)-1]
		for at += zerosAt(image[at:]); at < len(image) && image[at] != 0; {
			at++
		}
		last.bytes = image[last.address:at]
	}
	return out
}

func zerosAt(b []byte) int {
	for i, x := range b {
		if x != 0 {
			return i
		}
	}
	return len(b)
}

// appendSigned appends a number as WebAssembly writes a signed one.
func appendSigned(b []byte, v int64) []byte {
	for {
		low := byte(v & 0x7f)
		v >>= 7
		if v == 0 && low&0x40 == 0 || v == -1 && low&0x40 != 0 {
			return append(b, low)
		}
		b = append(b, low|0x80)
	}
}

// segments reads active segments: a kind, "i32.const", the address, "end", and
// the bytes.
func segments(r *reader) (out []segment) {
	for n := r.number(); n > 0 && !r.short; n-- {
		r.skip(2)
		address := r.number() // signed; the linker's addresses stay below the sign
		r.skip(1)
		out = append(out, segment{uint32(address), r.block()})
	}
	return out
}

// reader takes numbers and blocks off its front; short tells that they ended
// too soon.
type reader struct {
	rest  []byte
	short bool
}

func (r *reader) number() uint64 {
	v, n := binary.Uvarint(r.rest)
	if n <= 0 {
		r.rest, r.short = nil, true
		return 0
	}
	r.rest = r.rest[n:]
	return v
}

func (r *reader) block() []byte { return r.skip(r.number()) }

func (r *reader) skip(n uint64) []byte {
	if n > uint64(len(r.rest)) {
		n, r.short = uint64(len(r.rest)), true
	}
	b := r.rest[:n]
	r.rest = r.rest[n:]
	return b
}
