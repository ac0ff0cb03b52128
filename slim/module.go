package slim

import (
	"bytes"
	"encoding/binary"
	"slices"
)

// The layout of runtime.moduledata of Go 1.26, in words of eight bytes: it begins
// with the address of the table of functions, and then of the names in it.
const (
	moduleNames  = 1
	moduleIndex  = 19 // findfunctab
	moduleMinPC  = 20
	moduleMaxPC  = 21
	moduleBlobs  = 40 // gofunc
	moduleEnd    = 42
	indexPerCode = 4096 // bytes of code for which the index has an entry of indexBytes
	indexBytes   = 20
)

// module is the runtime's description of a program.
type module struct {
	image []byte
	words [moduleEnd]uint64
	table *table
}

func moduleOf(image []byte, t *table) (*module, error) {
	start := binary.LittleEndian.AppendUint64(nil, uint64(t.address))
	start = binary.LittleEndian.AppendUint64(start, uint64(t.address)+t.header[nameTable])
	at := bytes.Index(image, start)
	if at < 0 || len(image)-at < 8*moduleEnd || bytes.Contains(image[at+1:], start) {
		return nil, ErrLayout
	}
	m := &module{image: image, table: t}
	for i := range m.words {
		m.words[i] = binary.LittleEndian.Uint64(image[at+8*i:])
	}
	return m, nil
}

// clearIndex clears what finds a function by the address of an instruction. In
// WebAssembly the functions are numbered in a row, so that the table itself is
// enough (see edits), which holds as long as it has all of them.
func (m *module) clearIndex() error {
	functions := m.table.memory[m.table.header[functionTable]:]
	first := uint64(word(functions, 0))
	for i := range m.table.header[nFunctions] {
		if uint64(word(functions, int(8*i))) != first+i {
			return ErrLayout
		}
	}
	entries := (m.words[moduleMaxPC] - m.words[moduleMinPC] + indexPerCode - 1) / indexPerCode
	at := m.words[moduleIndex]
	if entries < m.table.header[nFunctions] || at+entries*indexBytes > uint64(len(m.image)) {
		return ErrLayout
	}
	clear(m.image[at : at+entries*indexBytes])
	return nil
}

// unusedBlobs lists what only unused funcdata refer to. Each blob reaches to the
// next one; the last one's end is not known, so it stays.
func (t *table) unusedBlobs(m *module) (out [][]byte, err error) {
	used := map[uint32]bool{}
	for i := range t.header[nFunctions] {
		e, err := t.entry(i)
		if err != nil {
			return nil, err
		}
		for k, at := range words(e.funcdata) {
			if at != none {
				used[at] = used[at] || !slices.Contains(unusedFuncdata, k)
			}
		}
	}
	places := make([]uint32, 0, len(used))
	for at := range used {
		places = append(places, at)
	}
	slices.Sort(places)
	base := m.words[moduleBlobs]
	for i := range places[:max(len(places)-1, 0)] {
		from, to := base+uint64(places[i]), base+uint64(places[i+1])
		if to > uint64(len(m.image)) {
			return nil, ErrLayout
		}
		if !used[places[i]] {
			out = append(out, m.image[from:to])
		}
	}
	return out, nil
}
