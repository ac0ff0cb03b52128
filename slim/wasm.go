package slim

import (
	"encoding/binary"
	"errors"
)

// errWasm says that a file is not a program for the browser.
var errWasm = errors.New("not a WebAssembly program")

// dataSection is the number of the section with what memory holds at the start
// (WebAssembly core specification 2.0, section 5.5.14).
const dataSection = 11

// segment is a part of the program that is copied to memory when it starts.
type segment struct {
	address uint32
	bytes   []byte // of the program itself: a change is a change of it
}

// segmentsOf finds the segments of a program.
func segmentsOf(program []byte) (out []segment, err error) {
	if len(program) < 8 || string(program[:4]) != "\x00asm" {
		return nil, errWasm
	}
	r := reader{rest: program[8:]}
	for len(r.rest) > 0 {
		id, body := r.number(), r.block()
		if id == dataSection {
			out = segments(&reader{rest: body})
		}
	}
	if r.short || len(out) == 0 {
		return nil, errWasm
	}
	return out, nil
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
