//go:build !js

package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
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
	if code, done := parse(flags, args, stderr); done {
		return code
	}
	if *wasm == "" || *exec == "" || *out == "" {
		fmt.Fprintln(stderr, "coilbook site: -wasm, -exec and -out are needed")
		return exitUsage
	}
	if err := makeSite(*wasm, *exec, *out, *prefix); err != nil {
		fmt.Fprintln(stderr, "coilbook site:", err)
		if errors.Is(err, web.ErrPrefix) || errors.Is(err, web.ErrParts) {
			return exitUsage
		}
		return exitFailed
	}
	fmt.Fprintln(stdout, "The site is in", *out)
	return exitDone
}

func makeSite(wasm, exec, out, prefix string) error {
	program, err := os.ReadFile(wasm)
	if err != nil {
		return fmt.Errorf("reading the program: %w", err)
	}
	script, err := os.ReadFile(exec)
	if err != nil {
		return fmt.Errorf("reading the start script: %w", err)
	}
	files, err := web.Site(web.Parts{Prefix: prefix, Wasm: program, Exec: script})
	if err != nil {
		return fmt.Errorf("putting the site together: %w", err)
	}
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
