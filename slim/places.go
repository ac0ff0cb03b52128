package slim

// clearPlaces clears what the runtime works out by itself at the start (see runtime.go):
// each function's number and the place of its entry, but for the first, and the number
// once more in the entry. They go up and up, which does not compress.
func (t *table) clearPlaces() error {
	functions := t.memory[t.header[functionTable]:]
	if t.header[nFunctions] == 0 {
		return ErrLayout
	}
	number, at := word(functions, 0), word(functions, 4)
	for i := range t.header[nFunctions] {
		e, err := t.entry(i)
		if err != nil {
			return err
		}
		place := functions[8*i : 8*i+8]
		if word(place, 0) != number || word(place, 4) != at || word(e.fixed, atEntryOff) != number {
			return ErrLayout
		}
		number++
		at += aligned(funcBytes + uint32(len(e.pcdata)+len(e.funcdata)))
	}
	for i := range t.header[nFunctions] {
		place := functions[8*i : 8*i+8]
		clear(functions[word(place, 4)+atEntryOff:][:4])
		if i > 0 {
			clear(place)
		}
	}
	return nil
}

// aligned is the room that an entry takes: whole words of eight bytes.
func aligned(size uint32) uint32 { return (size + 7) &^ 7 }
