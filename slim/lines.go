package slim

import (
	"bytes"
	"encoding/binary"
	"errors"
	"slices"
)

// ErrLayout says that a program's table of functions is not laid out as this
// package knows it.
var ErrLayout = errors.New("the table of functions is not laid out as Go 1.26 does it; " +
	"compare slim/lines.go with runtime.pcHeader and runtime._func of this version of Go")

// The layout of the table of functions (runtime.pcHeader and runtime._func of
// Go 1.26). Offsets are in bytes.
const (
	headerWords = 8  // counts and offsets, eight bytes each, behind the magic word
	funcBytes   = 44 // the fixed part of an entry

	atNameOff, atPcsp, atPcfile, atPcln, atNpcdata = 4, 16, 20, 24, 28
	atCuOffset, atStartLine                        = 32, 36
)

// magic begins the table: a version, two zeros, the quantum of code and the size
// of a pointer.
var magic = []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8}

// DropLines clears, in place, what tells the line and the file of an
// instruction. A crash still names its reason and its functions. What the
// runtime itself needs, sizes of frames, maps of pointers and calls that were
// inlined, stays. Cleared bytes cost nothing in a compressed file.
func DropLines(program []byte) error {
	parts, err := segmentsOf(program)
	if err != nil {
		return err
	}
	t, err := tableOf(parts)
	if err != nil {
		return err
	}
	kept, err := t.clearEntries()
	if err != nil {
		return err
	}
	t.clearTables(kept)
	t.write(parts)
	return nil
}

// table is a program's table of functions, a copy of the memory it will be in.
type table struct {
	address uint32
	memory  []byte // from the header on
	header  [headerWords]uint64
}

// The words of the header.
const (
	nFunctions = iota
	_          // files
	_          // start of the text
	nameTable
	unitTable
	fileTable
	pcTable
	functionTable
)

func tableOf(parts []segment) (*table, error) {
	image := imageOf(parts)
	at := bytes.Index(image, magic)
	if at < 0 || len(image)-at < len(magic)+8*headerWords || bytes.Contains(image[at+1:], magic) {
		return nil, ErrLayout
	}
	t := &table{address: uint32(at), memory: image[at:]}
	for i := range t.header {
		t.header[i] = binary.LittleEndian.Uint64(t.memory[len(magic)+8*i:])
	}
	order := t.header[nameTable:]
	if !slices.IsSorted(order) || t.header[functionTable]+8*t.header[nFunctions] > uint64(len(t.memory)) {
		return nil, ErrLayout
	}
	return t, nil
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

// clearEntries clears the lines' places in every entry, and tells which bytes of
// the tables other entries still need.
func (t *table) clearEntries() (kept []bool, err error) {
	pcs := t.memory[t.header[pcTable]:t.header[functionTable]]
	kept = make([]bool, len(pcs))
	functions := t.memory[t.header[functionTable]:]
	for i := range t.header[nFunctions] {
		at := uint64(binary.LittleEndian.Uint32(functions[8*i+4:]))
		if at+funcBytes > uint64(len(functions)) {
			return nil, ErrLayout
		}
		entry := functions[at:]
		name, npcdata := word(entry, atNameOff), uint64(word(entry, atNpcdata))
		if uint64(name) >= t.header[unitTable]-t.header[nameTable] || npcdata > 8 || funcBytes+4*npcdata > uint64(len(entry)) {
			return nil, ErrLayout
		}
		offsets := []uint32{word(entry, atPcsp)}
		for k := range int(npcdata) {
			offsets = append(offsets, word(entry, funcBytes+4*k))
		}
		for _, o := range offsets {
			if !keep(kept, pcs, o) {
				return nil, ErrLayout
			}
		}
		for _, field := range []int{atPcfile, atPcln, atCuOffset, atStartLine} {
			clear(entry[field : field+4])
		}
	}
	return kept, nil
}

func word(b []byte, at int) uint32 { return binary.LittleEndian.Uint32(b[at:]) }

// keep marks one table: pairs of numbers up to a first number of zero that is
// not the first pair's.
func keep(kept []bool, pcs []byte, offset uint32) bool {
	if offset == 0 || uint64(offset) < uint64(len(pcs)) && kept[offset] {
		return true // none, or marked before: tables overlap only as a whole
	}
	at := uint64(offset)
	for first := true; ; first = false {
		value, n := binary.Uvarint(pcs[min(at, uint64(len(pcs))):])
		if n <= 0 {
			return false
		}
		end := at + uint64(n)
		if value != 0 || first {
			_, n = binary.Uvarint(pcs[end:])
			end += uint64(max(n, 0))
		}
		for ; at < end; at++ {
			kept[at] = true
		}
		if value == 0 && !first {
			return true
		}
	}
}

func (t *table) clearTables(kept []bool) {
	pcs := t.memory[t.header[pcTable]:]
	for i, k := range kept {
		if !k {
			pcs[i] = 0
		}
	}
	clear(t.memory[t.header[fileTable]:t.header[pcTable]])
}

// write copies the table back over the segments. It only clears bytes, so a gap
// between segments, which is all zero, needs none.
func (t *table) write(parts []segment) {
	for _, s := range parts {
		for i := range s.bytes {
			if at := int64(s.address) + int64(i) - int64(t.address); at >= 0 {
				s.bytes[i] = t.memory[at]
			}
		}
	}
}
