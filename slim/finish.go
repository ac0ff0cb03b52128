package slim

// Finish makes a linked program smaller and quicker to start, and changes nothing
// that it does.
//
//   - What tells the line and the file of an instruction is cleared, and so are
//     the names of functions that are not ours. A crash still names its reason
//     and our functions. What the runtime itself needs, sizes of frames, maps of
//     pointers and calls that were inlined, stays.
//   - The index of functions is cleared, and where each stands in the table; Prepare
//     has the runtime do without, and work the places out at the start.
//   - What memory holds at the start comes in few pieces.
//   - It says which functions are needed first (see warm.go).
//
// Cleared bytes cost nothing in a compressed file.
func Finish(program []byte) ([]byte, error) {
	parts, err := splitAtData(program)
	if err != nil {
		return nil, err
	}
	t, err := tableOf(parts.image)
	if err != nil {
		return nil, err
	}
	m, err := moduleOf(parts.image, t)
	if err != nil {
		return nil, err
	}
	names, err := t.listed() // before they are cleared
	if err != nil {
		return nil, err
	}
	dropped, err := t.unusedBlobs(m)
	if err != nil {
		return nil, err
	}
	kept, err := t.clearEntries()
	if err != nil {
		return nil, err
	}
	t.clearTables(kept)
	if err := t.dropNames(); err != nil {
		return nil, err
	}
	if err := m.clearIndex(); err != nil {
		return nil, err
	}
	if err := t.clearPlaces(); err != nil { // the entries are found by them until here
		return nil, err
	}
	for _, b := range dropped {
		clear(b)
	}
	if err := parts.warm(names); err != nil {
		return nil, err
	}
	return parts.program(), nil
}
