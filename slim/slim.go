// Package slim makes the program for the browser smaller. It puts packages of
// its own in the place of some of the standard library, which the framework
// imports and no browser ever runs, and clears what tells the lines of the
// source. It is a tool of the build: nothing of it runs in a browser but the
// packages in its folders.
package slim

import (
	"embed"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"strings"
)

//go:embed net/*/*.go regexp/regexp.go crypto/*/*.go internal/godebug/godebug.go slices/sortfunc.go.txt
var source embed.FS

// Replaced lists the packages of the standard library that the browser build
// has a small one for.
var Replaced = []string{
	"net/http", "net/netip", "regexp", "internal/godebug",
	"crypto/aes", "crypto/cipher", "crypto/md5", "crypto/rand", "crypto/sha1",
}

// ErrGoroot says that the standard library is not as it was in Go 1.26.
var ErrGoroot = errors.New("the standard library is not as Go 1.26 has it; compare its files with the folder slim")

// inlined lists the packages that are compiled for speed. The others are
// compiled for size: calls are not replaced by what they call.
var inlined = []string{
	"internal/runtime/...", "internal/abi", "internal/bytealg",
	"math", "math/bits", "math/cmplx", "slices",
	"coilbook/engine/circuit", "coilbook/engine/machine", "coilbook/engine/diagnose",
	"github.com/maxence-charriere/go-app/v10/...", "syscall/js",
}

// Prepare writes what the build needs into a directory, for a standard library
// in goroot, and gives the flags of "go build". No flag has a space in it.
func Prepare(goroot, dir string) (flags []string, err error) {
	dir, err = filepath.Abs(dir)
	if err != nil {
		return nil, err
	}
	replace := map[string]string{}
	for _, name := range Replaced {
		if err := hide(replace, filepath.Join(goroot, "src", filepath.FromSlash(name))); err != nil {
			return nil, err
		}
		own := name + "/" + path.Base(name) + ".go"
		if err := put(replace, goroot, dir, own, own); err != nil {
			return nil, err
		}
	}
	if err := sharedSorting(replace, goroot, dir); err != nil {
		return nil, err
	}
	if err := patchRuntime(replace, goroot, dir); err != nil {
		return nil, err
	}
	text, err := json.MarshalIndent(map[string]any{"Replace": replace}, "", "  ")
	if err != nil {
		return nil, err
	}
	overlay := filepath.Join(dir, "overlay.json")
	if err := os.WriteFile(overlay, text, 0o644); err != nil {
		return nil, fmt.Errorf("writing the list of replaced files: %w", err)
	}
	flags = []string{"-overlay=" + overlay, "-trimpath", "-buildvcs=false", "-gcflags=all=-l"}
	for _, name := range inlined {
		flags = append(flags, "-gcflags="+name+"=")
	}
	return flags, nil
}

// hide leaves out every Go file of a directory.
func hide(replace map[string]string, dir string) error {
	files, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil || len(files) == 0 {
		return fmt.Errorf("no Go files in %s: %w", dir, ErrGoroot)
	}
	for _, f := range files {
		replace[f] = ""
	}
	return nil
}

// put writes one of the embedded files to dir and has it stand in the standard
// library under the name as.
func put(replace map[string]string, goroot, dir, name, as string) error {
	text, err := source.ReadFile(name)
	if err != nil {
		return err
	}
	return place(replace, goroot, dir, as, text)
}

func place(replace map[string]string, goroot, dir, as string, text []byte) error {
	file := filepath.Join(dir, filepath.FromSlash(as)+".txt") // no package of this module
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		return fmt.Errorf("making a directory for replaced files: %w", err)
	}
	if err := os.WriteFile(file, text, 0o644); err != nil {
		return fmt.Errorf("writing a replaced file: %w", err)
	}
	replace[filepath.Join(goroot, "src", filepath.FromSlash(as))] = file
	return nil
}

// sharedSorting replaces one file of slices, and puts a file of sort beside it.
func sharedSorting(replace map[string]string, goroot, dir string) error {
	const old = "slices/zsortanyfunc.go"
	if _, err := os.Stat(filepath.Join(goroot, "src", old)); err != nil {
		return fmt.Errorf("no file %s: %w", old, ErrGoroot)
	}
	text, err := os.ReadFile(filepath.Join(goroot, "src", "sort", "zsortfunc.go"))
	if err != nil || !strings.Contains(string(text), "\npackage sort\n") {
		return fmt.Errorf("no file sort/zsortfunc.go: %w", ErrGoroot)
	}
	text = []byte(strings.Replace(string(text), "\npackage sort\n", "\npackage slices\n", 1))
	if err := place(replace, goroot, dir, "slices/zsortfunc.go", text); err != nil {
		return err
	}
	replace[filepath.Join(goroot, "src", "slices", "zsortordered.go")] = ""
	return put(replace, goroot, dir, "slices/sortfunc.go.txt", old)
}
