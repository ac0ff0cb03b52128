//go:build !js

package main

import (
	"net/url"
	"regexp"
	"strconv"
	"testing"
)

// BenchmarkMachineSecondInTheBrowser runs the rig's own benchmark as WebAssembly
// in the browser: one second of a whole machine, running and sparking, is to cost
// less than 100 ms.
func BenchmarkMachineSecondInTheBrowser(b *testing.B) {
	h := hostTests(b, "../engine/rig")
	page := newBrowser(b)
	query := url.Values{"arg": {"-test.run=^$", "-test.bench=^BenchmarkOneSecond$"}}
	for b.Loop() {
		page.load(h.url("?" + query.Encode()))
		page.waitFor(`globalThis.exitCode !== undefined`)
	}
	output := page.written()
	b.ReportMetric(0, "ns/op")
	for _, m := range regexp.MustCompile(`BenchmarkOneSecond/(\S+)\s+\d+\s+(\d+) ns/op`).FindAllStringSubmatch(output, -1) {
		ns, err := strconv.ParseFloat(m[2], 64)
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(ns/1e6, "ms/s-"+m[1])
		b.ReportMetric(1e8/ns, "x-under-100ms-"+m[1])
	}
}
