//go:build !js

package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"maps"
	"slices"
)

// Budgets of the download, in bytes as sent with brotli. On a slow connection
// of 1.6 Mbit/s the whole takes eight seconds.
const (
	programBudget = 1_500_000
	siteBudget    = 1_600_000
)

var errBudget = errors.New("the site is larger than its budget; \"make size\" lists the packages")

// weigh prints what a first visit loads, the files that are kept for offline use
// included, and fails when it is too much. Small is the compressed forms.
func weigh(w io.Writer, files, small map[string][]byte) error {
	sent := map[string]int{}
	total := 0
	for name, content := range files {
		sent[name] = len(content)
		if b, ok := small[name+".br"]; ok {
			sent[name] = len(b)
		}
		total += sent[name]
	}
	for _, name := range slices.SortedFunc(maps.Keys(sent), func(a, b string) int {
		return cmp.Or(cmp.Compare(sent[b], sent[a]), cmp.Compare(a, b))
	}) {
		fmt.Fprintf(w, "%9d  %s\n", sent[name], name)
	}
	program := sent["app.wasm"]
	fmt.Fprintf(w, "%9d  the program; at most %d\n", program, programBudget)
	fmt.Fprintf(w, "%9d  all that a first visit loads; at most %d\n", total, siteBudget)
	if program > programBudget || total > siteBudget {
		return errBudget
	}
	return nil
}
