//go:build !js

package main

import (
	"bytes"
	"cmp"
	"encoding/binary"
	"errors"
	"flag"
	"fmt"
	"io"
	"maps"
	"os"
	"regexp"
	"slices"
	"strings"
)

// errWasm says that a file is not a program with names.
var errWasm = errors.New("not a WebAssembly program with the names of its functions; build it without -ldflags=-s")

// size lists what the program for the browser is made of.
func size(args []string, _ io.Reader, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("size", flag.ContinueOnError)
	wasm := flags.String("wasm", "", "`file` with the program, its names left in")
	packages := flags.String("packages", "", "`file` with the program's packages, one a line, as \"go list -deps\" prints them")
	only := flags.String("only", "", "list the functions of one `package`")
	if code, done := parse(flags, args, stderr); done {
		return code
	}
	program, err := os.ReadFile(*wasm)
	if err == nil {
		err = printSize(stdout, program, *packages, *only)
	}
	if err != nil {
		fmt.Fprintln(stderr, "coilbook size:", err)
		return exitUsage
	}
	return exitDone
}

func printSize(w io.Writer, program []byte, packages, only string) error {
	list, err := os.ReadFile(packages)
	if err != nil {
		return err
	}
	functions, data, err := functionsOf(program)
	if err != nil {
		return err
	}
	groups := byPackage(functions, strings.Fields(string(list)))
	if only != "" {
		return printFunctions(w, groups[only])
	}
	fmt.Fprintf(w, "%10s %10s  package (code alone; the second figure is brotli of it alone, quality 5)\n", "bytes", "brotli")
	for _, name := range heaviest(groups) {
		fmt.Fprintf(w, "%10d %10d  %s\n", total(groups[name]), packedLength(groups[name]), name)
	}
	_, err = fmt.Fprintf(w, "%10d %10d  data of all packages: tables, texts, types, places of functions\n", len(data), brotliLength(data))
	return err
}

func printFunctions(w io.Writer, functions []function) error {
	slices.SortFunc(functions, func(a, b function) int { return cmp.Compare(len(b.body), len(a.body)) })
	for _, f := range functions {
		if _, err := fmt.Fprintf(w, "%10d  %s\n", len(f.body), f.name); err != nil {
			return err
		}
	}
	return nil
}

func heaviest(groups map[string][]function) []string {
	return slices.SortedFunc(maps.Keys(groups), func(a, b string) int {
		return cmp.Or(cmp.Compare(total(groups[b]), total(groups[a])), cmp.Compare(a, b))
	})
}

func total(functions []function) (n int) {
	for _, f := range functions {
		n += len(f.body)
	}
	return n
}

func packedLength(functions []function) int {
	var all []byte
	for _, f := range functions {
		all = append(all, f.body...)
	}
	return brotliLength(all)
}

func brotliLength(b []byte) int {
	small, _ := codings[0].packed(b, 5) // a buffer takes everything
	return len(small)
}

// byPackage sorts functions by the longest package whose name theirs begins
// with. The linker writes "_" for all but letters, digits, "_" and ".".
func byPackage(functions []function, packages []string) map[string][]function {
	short := map[string]string{}
	for _, p := range packages {
		short[mangled.ReplaceAllString(p, "_")] = p
	}
	groups := map[string][]function{}
	for _, f := range functions {
		name := "other"
		for i := range f.name {
			if p, ok := short[f.name[:i]]; ok && f.name[i] == '.' {
				name = p
			}
		}
		groups[name] = append(groups[name], f)
	}
	return groups
}

var mangled = regexp.MustCompile(`[^\w.]`)

// function is one of the program's own, with the code it was compiled to.
type function struct {
	name string
	body []byte
}

// Sections of a program that are read (WebAssembly core specification 2.0,
// section 5.5).
const (
	customSection = 0
	importSection = 2
	codeSection   = 10
	dataSection   = 11
)

// functionsOf reads a program: its functions and its data.
func functionsOf(program []byte) (functions []function, data []byte, err error) {
	if len(program) < 8 || string(program[:4]) != "\x00asm" {
		return nil, nil, errWasm
	}
	var bodies [][]byte
	var names map[uint64]string
	imported := uint64(0)
	r := &wasmReader{bytes.NewReader(program[8:])}
	for r.Len() > 0 {
		id := r.number()
		section := &wasmReader{bytes.NewReader(r.block())}
		switch id {
		case importSection:
			imported = section.number() // of Go's imports all are functions
		case codeSection:
			bodies = section.blocks()
		case dataSection:
			data, _ = io.ReadAll(section)
		case customSection:
			if string(section.block()) == "name" {
				names = section.names()
			}
		}
	}
	if names == nil {
		return nil, nil, errWasm
	}
	for i, body := range bodies {
		functions = append(functions, function{names[imported+uint64(i)], body})
	}
	return functions, data, nil
}

// wasmReader reads a program's numbers and blocks; past the end all is empty.
type wasmReader struct{ *bytes.Reader }

func (r *wasmReader) number() uint64 {
	n, err := binary.ReadUvarint(r)
	if err != nil {
		return 0
	}
	return n
}

// block is a length and that many bytes.
func (r *wasmReader) block() []byte {
	n := r.number()
	if n > uint64(r.Len()) {
		n = uint64(r.Len())
	}
	b := make([]byte, n)
	_, _ = io.ReadFull(r, b) // there are as many
	return b
}

func (r *wasmReader) blocks() [][]byte {
	var out [][]byte
	for n := r.number(); n > 0 && r.Len() > 0; n-- {
		out = append(out, r.block())
	}
	return out
}

// names reads the names of functions out of a section of names.
func (r *wasmReader) names() map[uint64]string {
	out := map[uint64]string{}
	for r.Len() > 0 {
		kind := r.number()
		part := &wasmReader{bytes.NewReader(r.block())}
		if kind != 1 {
			continue
		}
		for n := part.number(); n > 0 && part.Len() > 0; n-- {
			i := part.number()
			out[i] = string(part.block())
		}
	}
	return out
}
