//go:build !js

package main

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// press clicks an element by its id; it must be there and on the screen.
func (b *browser) press(id string) {
	b.t.Helper()
	b.waitFor(fmt.Sprintf(`!!document.getElementById(%q)`, id))
	b.click(fmt.Sprintf(`[id=%q]`, id))
}

// text is the text of the element with an id.
func (b *browser) text(id string) string {
	b.t.Helper()
	return evaluate[string](b, fmt.Sprintf(`(document.getElementById(%q) || {textContent: ""}).textContent`, id))
}

// typeOnPad presses the keys of a reading, waits for each to show, and gives
// the verdict shown before it is entered.
func (b *browser) typeOnPad(reading string) string {
	b.t.Helper()
	for _, word := range []string{"o", "w"} {
		if reading == word {
			b.press("key-" + word)
			b.waitFor(`document.getElementById("typed").textContent.length > 3`)
			return b.text("verdict")
		}
	}
	for i, digit := range reading {
		b.press("key-" + string(digit))
		b.waitFor(fmt.Sprintf(`document.getElementById("typed").textContent === %q`, reading[:i+1]))
	}
	return b.text("verdict")
}

// enter confirms a reading and waits for the next screen and for its record.
func (b *browser) enter() {
	b.t.Helper()
	before := b.heading()
	b.press("enter")
	b.waitFor(fmt.Sprintf(`document.querySelector("h1").textContent !== %q`, before))
	b.waitSaved()
}

func (b *browser) waitSaved() {
	b.t.Helper()
	b.waitFor(`(document.getElementById("saving") || {}).textContent === "Saved ✓"`)
}

// benchSession is what a person types for the default machine, check by check,
// with the verdict that stands on the pad before each is entered. An invented
// scenario; the charge winding leaks to the core, so that all its leads do.
var benchSession = []struct{ heading, reading, verdict string }{
	{"Touch the probe tips together", "0.3", "in spec"},
	{"Ground lead to core", "0.4", "in spec"},
	{"Charge leads 1 and 2", "0.9", "in spec"},
	{"Charge leads 2 and 3", "0.9", "in spec"},
	{"Charge leads 3 and 1", "0.9", "in spec"},
	{"Charge lead 1 to core", "0.34", "out of spec"},
	{"Charge lead 2 to core", "0.34", "out of spec"},
	{"Charge lead 3 to core", "0.34", "out of spec"},
	{"Pickup resistance", "212", "in spec"},
	{"Pickup air gap", "0.4", "in spec"},
	{"Exciter resistance", "285", "in spec"},
	{"Exciter volts while cranking", "31.0", "cannot tell"},
}

// resultCards is what the result shows beside one verdict a check: whether the
// leads are alike, what they tell together, and where they touch the core.
const resultCards = 3

// shots are the screenshots a run leaves in build/screens.
func (b *browser) shot(name string) {
	b.t.Helper()
	b.fits(name)
	b.screenshot(filepath.Join("..", "build", "screens", name+".png"))
}

// fits checks that nothing sticks out sideways and that every target is large
// enough for a glove.
func (b *browser) fits(name string) {
	b.t.Helper()
	wrong := evaluate[[]string](b, `(() => {
		const wrong = [];
		if (document.documentElement.scrollWidth > innerWidth) wrong.push("page is " + document.documentElement.scrollWidth + " wide");
		for (const e of document.querySelectorAll("button, a, input, summary")) {
			const r = e.getBoundingClientRect();
			if (r.width > 0 && (r.height < 44 || r.width < 44)) wrong.push(e.tagName + " " + (e.id || e.className) + ": " + Math.round(r.width) + " by " + Math.round(r.height));
		}
		for (const e of document.querySelectorAll("h1, .chip, .typed, .row-reading")) {
			const r = e.getBoundingClientRect();
			if (r.width > 0 && (r.left < 0 || r.right > innerWidth + 0.5)) wrong.push(e.className + " ends at " + Math.round(r.right));
		}
		for (const e of document.querySelectorAll(".key, .main-act")) {
			const r = e.getBoundingClientRect();
			if (r.height > 0 && r.bottom > innerHeight + 0.5) wrong.push((e.id || e.className) + " ends below the screen, at " + Math.round(r.bottom));
		}
		return wrong })()`)
	for _, w := range wrong {
		b.t.Errorf("%s: %s", name, w)
	}
}

func TestBenchSessionWithoutServer(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.open(h.url(""))
	b.waitFor(kept)
	h.unplug()
	b.reload()
	b.press("aim-bench")
	b.press("begin")
	for i, step := range benchSession {
		b.waitFor(fmt.Sprintf(`document.querySelector("h1").textContent === %q`, step.heading))
		if got := b.typeOnPad(step.reading); got != step.verdict {
			t.Errorf("check %d, %s: %s reads %q, want %q (%s)", i+1, step.heading, step.reading, got, step.verdict, b.text("because"))
		}
		b.enter()
	}
	b.waitFor(`!!document.getElementById("parts")`)
	if got := b.heading(); got != "Out of spec: charge winding" {
		t.Errorf("the result says %q", got)
	}
	place := evaluate[string](b, `location.href`)
	b.open(place)
	b.waitFor(`!!document.getElementById("parts")`)
	if got := evaluate[int](b, `document.querySelectorAll("#verdicts article").length`); got != len(benchSession)+resultCards {
		t.Errorf("after a restart the result shows %d verdicts, want %d", got, len(benchSession)+resultCards)
	}
	b.press("finish")
	b.waitFor(`document.querySelectorAll("#session-rows .session").length === 1`)
}

func TestFirstReadingIsThreeTapsAway(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.open(h.url(""))
	b.press("aim-bench") // one
	b.press("begin")     // two
	b.waitFor(`!!document.getElementById("key-0")`)
	if got := b.typeOnPad("0"); got != "in spec" { // three
		t.Errorf("the third tap gives %q", got)
	}
}

// A killed process has no time to write anything late: what says "Saved" must
// be on the device already.
func TestSavedOutlivesAKill(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	profile := t.TempDir()
	b := newBrowserIn(t, profile)
	b.open(h.url("setup/bench"))
	b.press("begin")
	b.typeOnPad("0.3")
	b.enter()
	b.kill()
	again := newBrowserIn(t, profile)
	again.open(h.url(""))
	again.waitFor(`!!document.getElementById("resume")`)
	if got := again.text("resume"); !strings.Contains(got, "1 of 12") {
		t.Errorf("after the kill the start screen offers %q", got)
	}
}

// A phone that lies on its side shows the whole pad, and the longest answers.
func TestLyingPhone(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.size(640, 360)
	b.open(h.url("setup/bench"))
	b.press("begin")
	b.waitFor(`!!document.getElementById("enter")`)
	b.shot("lying-1")
	b.typeOnPad("0.3")
	b.enter()
	b.typeOnPad("o")
	b.shot("lying-2")
	b.enter()
	b.typeOnPad("w")
	b.shot("lying-3")
}

func TestScreens(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	for _, theme := range shownIn() {
		b.open(h.url("about"))
		b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`void localStorage.setItem("coilbook-theme", %q)`, theme)))
		b.walk(h, theme)
	}
}

// walk goes through every screen, with a picture of each.
func (b *browser) walk(h *host, theme string) {
	b.open(h.url(""))
	b.shot("start-" + theme)
	b.press("aim-bench")
	b.waitFor(`!!document.getElementById("begin")`)
	b.shot("setup-" + theme)
	b.press("begin")
	for i, step := range benchSession {
		b.waitFor(fmt.Sprintf(`document.querySelector("h1").textContent === %q`, step.heading))
		b.typeOnPad(step.reading)
		time.Sleep(50 * time.Millisecond)
		b.shot(fmt.Sprintf("check-%02d-%s", i+1, theme))
		if i == 3 {
			b.size(390, 844)
			b.shot("check-" + theme)
			b.size(640, 360)
			b.shot("check-landscape-" + theme)
			b.size(360, 640)
		}
		b.enter()
	}
	b.waitFor(`!!document.getElementById("parts")`)
	b.size(390, 844)
	b.shot("result-" + theme)
	b.size(360, 640)
	b.open(h.url(b.sibling("sheet")))
	b.waitFor(`!!document.getElementById("rows")`)
	b.shot("sheet-" + theme)
	b.walkMethods(h, theme)
	b.walkMeters(h, theme)
	b.open(h.url("sessions"))
	b.waitFor(`document.querySelectorAll("#session-rows .session").length > 0`)
	b.shot("sessions-" + theme)
	b.open(h.url("about"))
	b.shot("about-" + theme)
	b.open(h.url("no/such/place"))
	b.shot("nowhere-" + theme)
}
