//go:build !js

package main

import (
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
)

// slow makes the browser's page so many times as slow.
func (b *browser) slow(times float64) {
	b.t.Helper()
	call(b, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: times})
}

// farOff fails a benchmark whose figure is more than twice its goal, both in ms: less
// may be the machine's.
func farOff(b *testing.B, what string, got, goal float64) {
	b.Helper()
	if got > 2*goal {
		b.Errorf("%s takes %.0f ms, more than twice the goal of %.0f ms: measure again with nothing else running, then look what it does", what, got, goal)
	}
}

// BenchmarkStartFromCache is how long it takes, four times as slow and from what is on
// the device, from opening the app until a press on the start is taken: the goal is
// 1.5 s. Beside it stands how long until the screen that was pressed for is there, and
// what blocks the page meanwhile.
func BenchmarkStartFromCache(b *testing.B) {
	h := startSite(b, "/", siteFiles(b, "/", "one"))
	page := newBrowser(b)
	page.open(h.url(""))
	page.waitFor(kept)
	h.unplug()
	page.open(h.url(""))
	page.slow(4)
	taken, next := 0.0, 0.0
	for b.Loop() {
		began := time.Now()
		page.load(h.url(""))
		page.waitFor(`!!` + benchChoice)
		evaluate[bool](page, benchChoice+`.click() === undefined`)
		page.waitFor(`location.pathname === "/setup/bench"`)
		taken += time.Since(began).Seconds() * 1e3
		page.waitFor(`!!document.getElementById("begin")`)
		next += time.Since(began).Seconds() * 1e3
	}
	page.slow(1)
	start := page.trace(func() { page.open(h.url("")); time.Sleep(time.Second) })
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(taken/float64(b.N), "ms-to-first-tap(≤1500)")
	b.ReportMetric(next/float64(b.N), "ms-to-next-screen")
	b.ReportMetric(start.blocked(4).Seconds()*1e3, "ms-blocked-4x(≤200)")
	farOff(b, "the start", taken/float64(b.N), 1500)
}

// BenchmarkKeyToVerdict is how long it takes, four times as slow, from a press on the
// pad until what is typed and its verdict stand there: the goal is 100 ms. The first
// keys come as soon as there is a pad, when much is not compiled yet.
func BenchmarkKeyToVerdict(b *testing.B) {
	h := startSite(b, "/", siteFiles(b, "/", "one"))
	page := newBrowser(b)
	page.open(h.url("setup/bench"))
	page.press("begin")
	page.waitFor(`!!document.getElementById("key-0")`)
	page.slow(4)
	sum, worst, keys := 0.0, 0.0, 0
	for b.Loop() {
		for n := range 24 {
			key := []string{"key-o", "key-w"}[n%2]
			took := page.keyShown(key)
			sum, worst, keys = sum+took, max(worst, took), keys+1
			time.Sleep(200 * time.Millisecond)
		}
	}
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(sum/float64(keys), "ms-key-to-verdict(≤100)")
	b.ReportMetric(worst, "ms-at-most")
	farOff(b, "a verdict", sum/float64(keys), 100)
}
