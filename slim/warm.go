package slim

import (
	"bytes"
	_ "embed"
	"encoding/binary"
	"fmt"
	"slices"
	"strings"
)

// A browser may compile a function only when it is first called, on the thread
// that has a page to draw. So the program says which functions its start calls,
// and which come later, and web/loader.js has them compiled beside the page.
//
// The two lists are what browsers were seen to compile; functions that are gone
// or new cost nothing but time. "go test ./app -run TestNothingHoldsThePage -update" sees anew.
var (
	//go:embed warm/start.txt
	warmStart string
	//go:embed warm/later.txt
	warmLater string
)

// Sections of a program (WebAssembly core specification 2.0, section 5.5.2).
const (
	customSection = 0
	importSection = 2
	exportSection = 7
)

const (
	tableExport   = "functions" // the name under which the program gives its functions away
	stackExport   = "stack"     // and its stack pointer
	firstFunction = 0x1000      // the place of the first in them (funcValueOffset of cmd/link/internal/wasm)
	longGap       = 255         // stands for as many functions that are left out
)

// Names lists the names of a linked program's functions, and how many imported
// functions WebAssembly numbers before them.
func Names(program []byte) (names []string, imported int, err error) {
	parts, err := splitAtData(program)
	if err != nil {
		return nil, 0, err
	}
	t, err := tableOf(parts.image)
	if err != nil {
		return nil, 0, err
	}
	names, err = t.listed()
	if err != nil {
		return nil, 0, err
	}
	imports, ok := sectionOf(parts.before, importSection)
	if !ok {
		return nil, 0, errWasm
	}
	r := reader{rest: imports.body}
	return names, int(r.number()), nil
}

// listed is the names of all functions, in the order of their numbers.
func (t *table) listed() ([]string, error) {
	names := make([]string, t.header[nFunctions])
	for i := range names {
		e, err := t.entry(uint64(i))
		if err != nil {
			return nil, err
		}
		names[i] = nameAt(t.names(), word(e.fixed, atNameOff))
	}
	return names, nil
}

// warm adds what the loader needs: the functions under a name, and where those of
// the two lists are among them.
func (s *split) warm(names []string) error {
	if err := s.export(); err != nil {
		return err
	}
	start, later := strings.Split(warmStart, "\n"), strings.Split(warmLater, "\n")
	later = slices.DeleteFunc(later, func(name string) bool { return slices.Contains(start, name) })
	for _, list := range []struct {
		section string
		names   []string
	}{{"start", start}, {"later", later}} {
		body := binary.AppendUvarint(nil, uint64(len(list.section)))
		body = append(body, list.section...)
		s.behind = appendSection(s.behind, customSection, append(body, gaps(names, list.names)...))
	}
	return nil
}

// gaps are the steps from each wanted function to the next, from place 0 on.
func gaps(names, wanted []string) (out []byte) {
	want := map[string]bool{}
	for _, w := range wanted {
		want[w] = true
	}
	at := 0
	for i, name := range names {
		if !want[name] {
			continue
		}
		place := firstFunction + i
		for ; place-at >= longGap; at += longGap {
			out = append(out, longGap)
		}
		out = append(out, byte(place-at))
		at = place
	}
	return out
}

// export gives names to table 0, all functions, and to global 0, which holds the stack
// pointer (REG_SP in cmd/internal/obj/wasm).
func (s *split) export() error {
	old, ok := sectionOf(s.before, exportSection)
	if !ok {
		return fmt.Errorf("it exports nothing: %w", errWasm)
	}
	r := reader{rest: old.body}
	body := binary.AppendUvarint(nil, r.number()+2)
	body = append(body, r.rest...)
	for _, one := range []struct {
		name string
		kind byte
	}{{tableExport, 1}, {stackExport, 3}} {
		body = binary.AppendUvarint(body, uint64(len(one.name)))
		body = append(body, one.name...)
		body = append(body, one.kind, 0)
	}
	s.before = slices.Concat(s.before[:old.from], appendSection(nil, exportSection, body), s.before[old.to:])
	return nil
}

// section is one section of a program, and where it stands.
type section struct {
	body     []byte
	from, to int
}

// sectionOf is the first section with a number in what begins a program.
func sectionOf(program []byte, number uint64) (section, bool) {
	if !bytes.HasPrefix(program, []byte("\x00asm")) || len(program) < 8 {
		return section{}, false
	}
	r := reader{rest: program[8:]}
	for len(r.rest) > 0 && !r.short {
		from := len(program) - len(r.rest)
		id, body := r.number(), r.block()
		if id == number && !r.short {
			return section{body, from, len(program) - len(r.rest)}, true
		}
	}
	return section{}, false
}

func appendSection(out []byte, number byte, body []byte) []byte {
	out = binary.AppendUvarint(append(out, number), uint64(len(body)))
	return append(out, body...)
}
