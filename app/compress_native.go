//go:build !js

package main

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"os"
	"path"
	"path/filepath"
	"slices"

	"github.com/andybalholm/brotli"
)

// coding is one way to send a file in fewer bytes.
type coding struct {
	name, suffix string // of Accept-Encoding, and of the file beside the plain one
	pack         func(w io.Writer, effort int) (io.WriteCloser, error)
}

// codings are tried in this order where a browser takes several alike.
var codings = []coding{
	{"br", ".br", func(w io.Writer, effort int) (io.WriteCloser, error) {
		return brotli.NewWriterOptions(w, brotli.WriterOptions{Quality: effort, LGWin: 24}), nil
	}},
	{"gzip", ".gz", func(w io.Writer, effort int) (io.WriteCloser, error) {
		return gzip.NewWriterLevel(w, min(effort, gzip.BestCompression))
	}},
}

// efforts are the words of -compress: half a minute against half a second for
// the program.
var efforts = map[string]int{"best": 11, "quick": 4}

// compressible are the kinds of files that get smaller; the others are packed
// already.
var compressible = []string{".css", ".html", ".js", ".po", ".svg", ".wasm", ".webmanifest"}

// packed gives the compressed forms of files by their names, those that are
// smaller. What was packed before is taken from the directory cache.
func packed(files map[string][]byte, effort int, cache string) (map[string][]byte, error) {
	out := map[string][]byte{}
	for name, content := range files {
		if !slices.Contains(compressible, path.Ext(name)) {
			continue
		}
		for _, c := range codings {
			small, err := c.cached(content, effort, cache)
			if err != nil {
				return nil, fmt.Errorf("compressing %s: %w", name, err)
			}
			if len(small) < len(content) {
				out[name+c.suffix] = small
			}
		}
	}
	return out, nil
}

func (c coding) cached(content []byte, effort int, cache string) ([]byte, error) {
	sum := sha256.Sum256(content)
	file := filepath.Join(cache, fmt.Sprintf("%s-%d%s", hex.EncodeToString(sum[:16]), effort, c.suffix))
	if small, err := os.ReadFile(file); err == nil {
		return small, nil
	}
	small, err := c.packed(content, effort)
	if err != nil {
		return nil, err
	}
	return small, keep(file, small)
}

func (c coding) packed(content []byte, effort int) ([]byte, error) {
	var out bytes.Buffer
	w, err := c.pack(&out, effort)
	if err != nil {
		return nil, err
	}
	if _, err := w.Write(content); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// keep writes a file as a whole or not at all.
func keep(file string, content []byte) error {
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		return err
	}
	part := file + ".part"
	if err := os.WriteFile(part, content, 0o644); err != nil {
		return err
	}
	return os.Rename(part, file)
}
