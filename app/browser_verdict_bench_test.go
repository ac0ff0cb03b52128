//go:build !js

package main

import (
	"net/url"
	"regexp"
	"strconv"
	"testing"
)

// benchInBrowser runs a package's benchmark as WebAssembly in the browser and gives
// what it wrote.
func benchInBrowser(b *testing.B, dir, name string) string {
	h := hostTests(b, dir)
	page := newBrowser(b)
	query := url.Values{"arg": {"-test.run=^$", "-test.bench=^" + name + "$"}}
	for b.Loop() {
		page.load(h.url("?" + query.Encode()))
		page.waitFor(`globalThis.exitCode !== undefined`)
	}
	return evaluate[string](page, `printed.join("\n")`)
}

// BenchmarkVerdictInTheBrowser runs the verdict's own benchmark as WebAssembly
// in the browser, and passes on what it measured there: a verdict is to cost
// less than 1 ms, and the named alternative is timed in the same run.
func BenchmarkVerdictInTheBrowser(b *testing.B) {
	output := benchInBrowser(b, "../engine/assess", "BenchmarkVerdict")
	figure := func(unit string) float64 {
		found := regexp.MustCompile(`([\d.]+) ` + unit).FindStringSubmatch(output)
		if found == nil {
			b.Fatalf("the browser's run says nothing in %s:\n%s", unit, output)
		}
		v, err := strconv.ParseFloat(found[1], 64)
		if err != nil {
			b.Fatal(err)
		}
		return v
	}
	each := figure("ns/op")
	b.ReportMetric(0, "ns/op") // of loading the page, which is not what is asked
	b.ReportMetric(each/1e6, "ms/verdict")
	b.ReportMetric(1e6/each, "x-under-1-ms")
	b.ReportMetric(figure("x-faster-than-1000-draws"), "x-faster-than-1000-draws")
}
