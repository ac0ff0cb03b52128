package engine_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// The outside checks are vectors in files that any language can read: inputs,
// what must come out, how near, and who says so. One row is one test. A row that
// is not understood to the last key fails, so that no check can rot unseen.

// row is one outside check, as written in the files.
type row struct {
	Name       string                     `json:"name"`
	Quantity   string                     `json:"quantity"`
	Inputs     map[string]json.RawMessage `json:"inputs"`
	Expected   any                        `json:"expected"`
	Tolerance  any                        `json:"tolerance"`
	Source     string                     `json:"source"`
	SourceKind string                     `json:"source_kind"`
	Note       string                     `json:"note"`
}

// computation works out one quantity. It panics on inputs it cannot use.
type computation func(in *inputs) answers

// answers holds numbers, texts, truths and lists of numbers by expected key.
type answers map[string]any

// only answers a row that expects a bare value.
func only(value any) answers { return answers{"": value} }

var computations = map[string]computation{}

// register adds computations by the quantity they work out.
func register(more map[string]computation) {
	for quantity, compute := range more {
		if computations[quantity] != nil {
			panic("two computations of " + quantity)
		}
		computations[quantity] = compute
	}
}

func TestOutside(t *testing.T) {
	unused := map[string]bool{}
	for quantity := range computations {
		unused[quantity] = true
	}
	for _, r := range outsideRows(t) {
		delete(unused, r.Quantity)
		t.Run(r.Name, func(t *testing.T) {
			if err := checkRow(r); err != nil {
				t.Error(err)
			}
		})
	}
	for quantity := range unused {
		t.Errorf("no row asks for %q", quantity)
	}
}

func outsideRows(t *testing.T) []row {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("..", "testdata", "outside", "*.json"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	var all []row
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		rows, err := readRows(text)
		require.NoError(t, err, file)
		all = append(all, rows...)
	}
	require.NoError(t, namesDiffer(all))
	return all
}

func readRows(text []byte) ([]row, error) {
	var file struct {
		Note   string `json:"note"`
		Checks []row  `json:"checks"`
	}
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(&file); err != nil {
		return nil, err
	}
	if _, err := d.Token(); err != io.EOF {
		return nil, errors.New("something follows the checks")
	}
	if len(file.Checks) == 0 {
		return nil, errors.New("no checks")
	}
	return file.Checks, nil
}

func namesDiffer(rows []row) error {
	seen := map[string]bool{}
	for _, r := range rows {
		if seen[r.Name] {
			return fmt.Errorf("two rows are named %q", r.Name)
		}
		seen[r.Name] = true
	}
	return nil
}

// checkRow says what is wrong with a row or with the engine's answer to it.
func checkRow(r row) (err error) {
	if err := r.provenance(); err != nil {
		return err
	}
	compute := computations[r.Quantity]
	if compute == nil {
		return fmt.Errorf("unknown quantity %q", r.Quantity)
	}
	defer func() {
		if problem := recover(); problem != nil {
			err = fmt.Errorf("%s: %v", r.Quantity, problem)
		}
	}()
	in := &inputs{values: r.Inputs, read: map[string]bool{}}
	got := compute(in)
	if err := in.allRead(); err != nil {
		return err
	}
	return compare(r.Expected, r.Tolerance, got)
}

func (r row) provenance() error {
	switch {
	case r.Name == "":
		return errors.New("a row has no name")
	case r.Source == "":
		return errors.New("no source")
	}
	switch r.SourceKind {
	case "published", "recomputed", "common_practice", "memory":
		return nil
	}
	return fmt.Errorf("unknown kind of source %q", r.SourceKind)
}
