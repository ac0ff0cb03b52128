//go:build !js

package main

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
)

// before runs a script in every page from now on, ahead of the page's own.
func (b *browser) before(script string) {
	b.t.Helper()
	call(b, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: script})
}

// chooseFor presses one answer of a question of the settings, counted from 1, and
// waits until it is the one in force.
func (b *browser) chooseFor(question string, answer int) {
	b.t.Helper()
	button := fmt.Sprintf(`#ask-%s button:nth-child(%d)`, question, answer)
	b.waitFor(fmt.Sprintf(`!!document.querySelector(%q)`, button))
	b.click(button)
	b.waitFor(fmt.Sprintf(`document.querySelector(%q).getAttribute("aria-pressed") === "true"`, button))
}

// Every choice counts at once and is there after a restart, without a server.
func TestChoicesForThePhoneStay(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.size(phoneWidth, phoneHeight)
	b.open(h.url(""))
	b.waitFor(kept)
	h.unplug()
	b.open(h.url("about"))
	b.press("to-phone")
	b.waitHeading("How Coilbook behaves on this phone")
	b.chooseFor("look", 2)
	b.waitFor(`document.documentElement.dataset.theme === "dark"`)
	b.chooseFor("type", 2)
	b.waitFor(`getComputedStyle(document.documentElement).fontSize === "20px"`)
	b.press("set-vibrate")
	b.waitFor(`document.getElementById("set-vibrate").getAttribute("aria-checked") === "true"`)
	b.press("set-awake")
	b.waitFor(`document.getElementById("set-awake").getAttribute("aria-checked") === "false"`)
	b.chooseFor("gap-unit", 2)
	b.chooseFor("warmth-unit", 2)
	b.reload()
	b.waitHeading("How Coilbook behaves on this phone")
	b.waitFor(`document.documentElement.dataset.theme === "dark" && document.documentElement.classList.contains("large")`)
	on := evaluate[[]string](b, `[...document.querySelectorAll("[aria-pressed=true], [aria-checked=true]")].map(e => e.id || e.textContent)`)
	if got, want := strings.Join(on, ", "), "language-en, Dark, Large, set-vibrate, thousandths of an inch, °F"; got != want {
		t.Errorf("after a restart %s is on, not %s", got, want)
	}
	b.open(h.url("setup/bench"))
	b.waitText("begin", "Start")
	if text := evaluate[string](b, `document.querySelector("label[for=air]").textContent`); text != "Air temperature, °F" {
		t.Errorf("the set-up asks for %q", text)
	}
}

// The page is painted in its size before the program is there.
func TestLargeTypeDoesNotFlash(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.open(h.url(""))
	evaluate[bool](b, `(localStorage.setItem("coilbook-large", "on"), true)`)
	b.before(`addEventListener("DOMContentLoaded", () => { globalThis.painted = getComputedStyle(document.querySelector("#first-paint h1")).fontSize })`)
	b.reload()
	if got := evaluate[string](b, `painted`); got != "40px" {
		t.Errorf("the first paint's heading is %s, not 2rem of 20px", got)
	}
}

// The same gap in both units: typed in one, shown in the other, the record as it
// was typed. 12 thou are 0.3048 mm by definition.
func TestGapsInTheChosenUnit(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.open(h.url("phone"))
	b.chooseFor("gap-unit", 2)
	b.open(h.url("setup/bench"))
	b.press("begin")
	b.answer("0.3")
	at := strings.Replace(b.sibling("check"), "/check", "/check/pickup-gap", 1)
	sheet := b.sibling("sheet")
	b.open(h.url(at))
	b.waitText("unit", "thou")
	if got := b.typeOnPad("12"); got != "in spec" {
		t.Errorf("12 thou are %q", got)
	}
	b.waitText("because", "thou")
	if bar := evaluate[string](b, `document.querySelector(".limit-bar").outerHTML`); !strings.Contains(bar, "51.2 thou") {
		t.Errorf("the limit bar does not end in thousandths: %s", bar)
	}
	b.enter()
	b.open(h.url(sheet))
	b.waitText("row-pickup-gap", "12 thou")
	b.open(h.url("phone"))
	b.chooseFor("gap-unit", 1)
	b.open(h.url(sheet))
	b.waitText("row-pickup-gap", "0.30 mm")
	b.press("row-pickup-gap")
	b.waitText("typed", "0.30")
	b.waitText("unit", "mm")
	record := evaluate[string](b, `new Promise(done => { indexedDB.open("coilbook").onsuccess = e => {
		e.target.result.transaction("entries").objectStore("entries").getAll().onsuccess = r => { e.target.result.close(); done(JSON.stringify(r.target.result)) } } })`)
	if plain := strings.ReplaceAll(record, `\`, ""); !strings.Contains(plain, `"text":"12","unit":"thou"`) {
		t.Errorf("the record is not as it was typed: %s", plain)
	}
	b.typeOnPad("0.35")
	b.enter()
	b.open(h.url(sheet))
	b.waitText("row-pickup-gap", "0.35 mm")
}

func TestAirInFahrenheit(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.open(h.url("phone"))
	b.chooseFor("warmth-unit", 2)
	b.open(h.url("setup/bench"))
	b.fill("air", "500")
	b.press("begin")
	b.waitFor(`document.querySelector(".problem").textContent.includes("−40 to 140 °F")`)
	b.fill("air", "80")
	b.press("begin")
	b.waitHeading("Touch the probe tips together")
	setup := b.sibling("setup")
	b.open(h.url(setup))
	b.waitFor(`document.getElementById("air").value === "80"`)
	b.open(h.url("phone"))
	b.chooseFor("warmth-unit", 1)
	b.open(h.url(setup))
	b.waitFor(`document.getElementById("air").value === "26.7"`)
	b.press("begin") // nothing changed: 26.666… stays
	b.open(h.url("phone"))
	b.chooseFor("warmth-unit", 2)
	b.open(h.url(setup))
	b.waitFor(`document.getElementById("air").value === "80"`)
}

const iPhoneAgent = "Mozilla/5.0 (iPhone; CPU iPhone OS 17_5 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/17.5 Mobile/15E148 Safari/604.1"

func (b *browser) passFor(agent string) {
	b.t.Helper()
	call(b, emulation.SetUserAgentOverride, emulation.SetUserAgentOverrideParams{UserAgent: agent})
}
