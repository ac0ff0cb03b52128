//go:build !js

package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"

	"coilbook/web"
)

func site(args []string, _ io.Reader, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("site", flag.ContinueOnError)
	wasm := flags.String("wasm", "", "`file` with the compiled program")
	exec := flags.String("exec", "", "`file` wasm_exec.js of the toolchain that compiled it")
	out := flags.String("out", "", "`directory` for the site; it is made when it is not there")
	prefix := flags.String("prefix", "/", "`path` that the site is hosted under, with both slashes")
	compress := flags.String("compress", "none", "`how` hard: best also holds the site to its budget, quick, or none")
	cache := flags.String("cache", "", "`directory` that keeps compressed files for the next time")
	if code, done := parse(flags, args, stderr); done {
		return code
	}
	if *wasm == "" || *exec == "" || *out == "" {
		fmt.Fprintln(stderr, "coilbook site: -wasm, -exec and -out are needed")
		return exitUsage
	}
	if _, ok := efforts[*compress]; !ok && *compress != "none" {
		fmt.Fprintf(stderr, "coilbook site: -compress is %q; it takes best, quick or none\n", *compress)
		return exitUsage
	}
	files, err := makeSite(*wasm, *exec, *prefix)
	if err == nil {
		err = deliver(stdout, files, *out, *compress, *cache)
	}
	if err != nil {
		fmt.Fprintln(stderr, "coilbook site:", err)
		if errors.Is(err, web.ErrPrefix) || errors.Is(err, web.ErrParts) {
			return exitUsage
		}
		return exitFailed
	}
	fmt.Fprintln(stdout, "The site is in", *out)
	return exitDone
}

func makeSite(wasm, exec, prefix string) (map[string][]byte, error) {
	program, err := os.ReadFile(wasm)
	if err != nil {
		return nil, fmt.Errorf("reading the program: %w", err)
	}
	script, err := os.ReadFile(exec)
	if err != nil {
		return nil, fmt.Errorf("reading the start script: %w", err)
	}
	files, err := web.Site(web.Parts{Prefix: prefix, Wasm: program, Exec: script})
	if err != nil {
		return nil, fmt.Errorf("putting the site together: %w", err)
	}
	return files, nil
}

// deliver writes the site and its compressed forms; how is a word of efforts, or
// "none".
func deliver(stdout io.Writer, files map[string][]byte, out, how, cache string) error {
	if how == "none" {
		return writeFiles(out, files)
	}
	if cache == "" {
		dir, err := os.MkdirTemp("", "coilbook-site-")
		if err != nil {
			return err
		}
		defer os.RemoveAll(dir)
		cache = dir
	}
	small, err := packed(files, efforts[how], cache)
	if err != nil {
		return err
	}
	if how == "best" {
		if err := weigh(stdout, files, small); err != nil {
			return err
		}
	}
	maps.Copy(files, small)
	return writeFiles(out, files)
}

func writeFiles(dir string, files map[string][]byte) error {
	for name, content := range files {
		path := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			return fmt.Errorf("making a directory of the site: %w", err)
		}
		if err := os.WriteFile(path, content, 0o644); err != nil {
			return fmt.Errorf("writing the site: %w", err)
		}
	}
	return nil
}
