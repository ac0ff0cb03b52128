//go:build !js

package main

import (
	"fmt"
	"path/filepath"
	"testing"
)

// What a person does beside the machine, in every kind of browser and with the
// browser's own input. Chromium goes further in tests of its own.

// takeReadings begins a session from the first screen and enters the first
// readings of benchSession, one on a keyboard and the others on the pad.
func (b *browser) takeReadings(n int) {
	b.t.Helper()
	b.press("aim-bench")
	b.press("begin")
	for i, step := range benchSession[:n] {
		b.waitHeading(step.heading)
		if i == 0 {
			b.typeKeys(step.reading)
			b.waitText("typed", step.reading)
		} else {
			b.typeOnPad(step.reading)
		}
		b.waitText("verdict", step.verdict)
		if i == n-1 {
			b.engineShot(fmt.Sprintf("check-%02d", n))
		}
		b.enter()
	}
	b.waitHeading(benchSession[n].heading)
}

// engineShot leaves a picture named after the kind of browser, and holds the page
// to what fits on a phone.
func (b *browser) engineShot(name string) {
	b.t.Helper()
	kind := filepath.Base(b.t.Name())
	b.fits(name + " in " + kind)
	b.screenshot(filepath.Join("..", "build", "screens", name+"-in-"+kind+".png"))
}

func TestSessionInEveryBrowser(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	everyBrowser(t, func(t *testing.T, b *browser) {
		b.open(h.url(""))
		b.takeReadings(6)
		b.open(h.url(b.sibling("sheet")))
		b.waitText("row-charge-core-1", "0.34 MΩ")
		b.press("row-charge-core-1")
		b.waitText("typed", "0.34")
		b.open(h.url(b.sibling("result")))
		b.waitHeading("Out of spec: charge winding")
		b.waitSaved()
		b.engineShot("result")
		b.open(h.url(""))
		b.press("resume")
		b.waitHeading(benchSession[6].heading)
	})
}

func TestOfflineInEveryBrowser(t *testing.T) {
	files := siteFiles(t, "/", "one")
	everyBrowser(t, func(t *testing.T, b *browser) {
		h := startSite(t, "/", files)
		b.open(h.url(""))
		b.waitFor(kept)
		h.unplug()
		b.reload()
		b.takeReadings(2)
		b.reload()
		b.waitHeading(benchSession[2].heading)
		b.open(h.url(b.sibling("sheet") + "?x=1"))
		b.waitText("row-core-continuity", benchSession[1].reading)
		b.open(h.url(""))
		b.waitText("resume", "2 of 12")
	})
}
