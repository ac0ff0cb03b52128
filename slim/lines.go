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

	atEntryOff, atNameOff, atPcsp, atPcfile, atPcln, atNpcdata = 0, 4, 16, 20, 24, 28
	atCuOffset, atStartLine, atNfuncdata                       = 32, 36, 43
)

// What nothing needs: the lines; where a program may be stopped from outside,
// which a browser does not do; and how a trace prints arguments (PCDATA and
// FUNCDATA in internal/abi/symtab.go of Go 1.26).
var (
	unused         = []int{atPcfile, atPcln, atCuOffset, atStartLine}
	unusedPcdata   = []int{0, 3}
	unusedFuncdata = []int{5, 6}
)

// none is the place of funcdata that is not there.
const none = ^uint32(0)

// magic begins the table: a version, two zeros, the quantum of code and the size
// of a pointer.
var magic = []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8}

// table is a program's table of functions, a part of its memory.
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

func tableOf(image []byte) (*table, error) {
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

// clearEntries clears what is not needed in every entry, and tells which bytes of
// the tables are still needed.
func (t *table) clearEntries() (kept []bool, err error) {
	pcs := t.memory[t.header[pcTable]:t.header[functionTable]]
	kept = make([]bool, len(pcs))
	for i := range t.header[nFunctions] {
		e, err := t.entry(i)
		if err != nil {
			return nil, err
		}
		for _, field := range unused {
			clear(e.fixed[field : field+4])
		}
		for k := range len(e.pcdata) / 4 {
			if slices.Contains(unusedPcdata, k) {
				clear(e.pcdata[4*k : 4*k+4])
			}
		}
		for k := range len(e.funcdata) / 4 {
			if slices.Contains(unusedFuncdata, k) {
				binary.LittleEndian.PutUint32(e.funcdata[4*k:], none)
			}
		}
		for _, o := range append(words(e.pcdata), word(e.fixed, atPcsp)) {
			if !keep(kept, pcs, o) {
				return nil, ErrLayout
			}
		}
	}
	return kept, nil
}

// entry is what the table says of one function, a part of its memory.
type entry struct {
	fixed            []byte
	pcdata, funcdata []byte // places of tables, four bytes each
}

func (t *table) entry(i uint64) (entry, error) {
	functions := t.memory[t.header[functionTable]:]
	at := uint64(word(functions, int(8*i+4)))
	if at+funcBytes > uint64(len(functions)) {
		return entry{}, ErrLayout
	}
	e := entry{fixed: functions[at : at+funcBytes]}
	name, npcdata, nfuncdata := word(e.fixed, atNameOff), uint64(word(e.fixed, atNpcdata)), uint64(e.fixed[atNfuncdata])
	rest := functions[at+funcBytes:]
	if uint64(name) >= uint64(len(t.names())) || npcdata > 8 || nfuncdata > 8 || 4*(npcdata+nfuncdata) > uint64(len(rest)) {
		return entry{}, ErrLayout
	}
	e.pcdata, e.funcdata = rest[:4*npcdata], rest[4*npcdata:4*(npcdata+nfuncdata)]
	return e, nil
}

func words(b []byte) (out []uint32) {
	for ; len(b) > 0; b = b[4:] {
		out = append(out, word(b, 0))
	}
	return out
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
