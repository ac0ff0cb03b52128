//go:build !js

package main

import (
	"regexp"
	"strconv"
	"testing"
)

// BenchmarkMachineSecondInTheBrowser runs the rig's own benchmark as WebAssembly
// in the browser: one second of a whole machine, running and sparking, is to cost
// less than 100 ms.
func BenchmarkMachineSecondInTheBrowser(b *testing.B) {
	output := benchInBrowser(b, "../engine/rig", "BenchmarkOneSecond")
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
