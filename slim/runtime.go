package slim

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// edits are what the runtime is changed in, so that it does without what Finish clears.
var edits = []struct{ old, new string }{
	// A function is looked up by its number, without the index. A number that were too
	// low would still do, because the runtime goes on from there.
	{
		"idx := ffb.idx + uint32(ffb.subbuckets[i])",
		"idx := pcOff - datap.ftab[0].entryoff; _, _ = ffb, i",
	},
	// The places of functions and of their entries are worked out before the first is
	// looked for: functions are numbered in a row, and entries stand in the same order
	// without gaps (see places.go).
	{
		"func moduledataverify1(datap *moduledata) {",
		`//go:noinline
func restorePlaces(datap *moduledata) {
	places := datap.ftab[:len(datap.ftab)-1]
	for i := range places {
		f := (*_func)(unsafe.Pointer(&datap.pclntable[places[i].funcoff]))
		f.entryOff = places[i].entryoff
		if i+1 < len(places) {
			size := uint32(unsafe.Sizeof(*f)) + 4*(f.npcdata+uint32(f.nfuncdata))
			places[i+1].entryoff = places[i].entryoff + 1
			places[i+1].funcoff = places[i].funcoff + (size+goarch.PtrSize-1)&^(goarch.PtrSize-1)
		}
	}
}

func moduledataverify1(datap *moduledata) {
	restorePlaces(datap)`,
	},
	// What is worked out in order needs no look whether it is in order: that took as long
	// again, and browsers found the loop worth optimising.
	{
		"for i := 0; i < nftab; i++ {",
		"for i := nftab; i < nftab; i++ {",
	},
}

func patchRuntime(replace map[string]string, goroot, dir string) error {
	const file = "runtime/symtab.go"
	source, err := os.ReadFile(filepath.Join(goroot, "src", filepath.FromSlash(file)))
	if err != nil {
		return fmt.Errorf("no file %s: %w", file, ErrGoroot)
	}
	text := string(source)
	for _, e := range edits {
		if strings.Count(text, e.old) != 1 {
			return fmt.Errorf("%s has not once %q: %w", file, e.old, ErrGoroot)
		}
		text = strings.Replace(text, e.old, e.new, 1)
	}
	return place(replace, goroot, dir, file, []byte(text))
}
