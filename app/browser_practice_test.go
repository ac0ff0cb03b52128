//go:build !js

package main

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"coilbook/engine/machine"
	"coilbook/engine/practice"
)

// reach puts a probe on a point.
func (b *browser) reach(hand, point string) {
	b.t.Helper()
	b.press("hand-" + hand)
	b.waitFor(fmt.Sprintf(`document.getElementById("hand-%s").getAttribute("aria-pressed") === "true"`, hand))
	b.press("point-" + point)
	b.waitFor(fmt.Sprintf(`document.getElementById("point-%s").getAttribute("aria-label").includes("%s probe")`, point, hand))
}

// takeReading presses "Read" and waits for the log to grow.
func (b *browser) takeReading(n int) {
	b.t.Helper()
	b.waitFor(`document.getElementById("take").getAttribute("aria-disabled") === "false"`)
	b.press("take")
	b.waitFor(fmt.Sprintf(`document.querySelectorAll("#log .logged").length === %d`, n))
}

// choose presses an option of an open panel.
func (b *browser) choose(panel, id string) {
	b.t.Helper()
	if !evaluate[bool](b, fmt.Sprintf(`!!document.getElementById("panel-%s")`, panel)) {
		b.press("fold-" + panel)
	}
	b.press(id)
	b.waitFor(fmt.Sprintf(`document.getElementById(%q).getAttribute("aria-pressed") === "true"`, id))
}

// practised is a bench for the walk: of the usual kind, with a charge winding that
// touches the core.
func practised(t testing.TB) practice.Bench {
	t.Helper()
	for seed := range uint32(4000) {
		b := practice.Open(practice.Usual, seed)
		if b.Build == machine.Usual() && b.Truth().Kind == machine.PhaseToCore {
			return b
		}
	}
	t.Fatal("no such bench")
	return practice.Bench{}
}

func TestPracticeWithoutServer(t *testing.T) {
	bench := practised(t)
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.open(h.url(""))
	b.waitFor(kept)
	h.unplug()
	b.reload()
	b.press("to-practice")
	b.waitHeading("Practise on a hidden machine")
	b.fill("code", "0K7-QPX1")
	b.press("open-code")
	b.waitText("code-problem", "That code has not six characters: type it as it was shared")
	if got := evaluate[string](b, `document.getElementById("code").value`); got != "0K7-QPX1" {
		t.Errorf("the field reads %q after the refusal", got)
	}
	b.fill("code", strings.ToLower(bench.Code()))
	b.press("open-code")
	b.waitFor(`!!document.getElementById("take")`)
	b.reach("red", "charge-1")
	b.reach("black", "core")
	b.choose("state", "plug-1")
	b.choose("dial", "function-0")
	b.takeReading(1)
	b.reach("black", "charge-2")
	b.takeReading(2)
	log := b.text("log")
	b.reload()
	b.waitFor(`document.querySelectorAll("#log .logged").length === 2 && !document.getElementById("log").textContent.includes("Reading…")`)
	if got := b.text("log"); got != log {
		t.Errorf("after a reload the log reads %q, was %q", got, log)
	}
	b.waitText("hand-black", "lead 2")
	b.open(h.url("practice"))
	b.waitText("go-on", "Go on with "+bench.Code())
	b.press("go-on")
	b.press("name")
	b.waitHeading("What is wrong with it?")
	b.press("confirm")
	b.waitFor(`document.querySelector(".problem").textContent === "Choose one first."`)
	b.press("fault-" + string(machine.PhaseToCore))
	b.waitText("chosen", "A charge winding touches the core?")
	b.press("confirm")
	b.waitHeading("Right: that is the fault")
	b.waitFor(`!!document.getElementById("left") && !!document.getElementById("guided")`)
	if told := b.text("told"); !strings.Contains(told, "Spoke against") {
		t.Errorf("the readings tell nothing: %s", told)
	}
	if told := b.text("guided"); !strings.Contains(told, "Found at “Charge lead") {
		t.Errorf("the guided checks do not see it: %s", told)
	}
	b.press("copy")
	b.waitFor(`/^Cop/.test(document.querySelector(".share [role=status]").textContent)`)
	b.reload()
	b.waitFor(`!!document.getElementById("left")`)
	b.press("again")
	b.waitFor(`!!document.getElementById("take") && document.querySelectorAll("#log .logged").length === 0`)
}

func TestABadPracticeAddressSaysSo(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.open(h.url("practice/no-such"))
	b.waitHeading("Nothing here")
	b.waitFor(`document.querySelector("main").textContent.includes("That code")`)
	b.do(chromedp.Evaluate[chromedp.Void](`void localStorage.setItem("coilbook-practice", "{")`))
	b.open(h.url("practice"))
	b.waitFor(`document.querySelector("main").textContent.includes("could not be read on this device")`)
}

// walkPractice goes through the practice screens, with a picture of each.
func (b *browser) walkPractice(h *host, theme string) {
	b.t.Helper()
	bench := practised(b.t)
	b.do(chromedp.Evaluate[chromedp.Void](`void localStorage.removeItem("coilbook-practice")`))
	b.open(h.url("practice"))
	b.waitFor(`!!document.getElementById("open-code")`)
	b.shot("practice-" + theme)
	b.open(h.url("practice/" + bench.Code()))
	b.waitFor(`!!document.getElementById("take")`)
	b.shot("practice-bench-" + theme)
	b.reach("red", "charge-1")
	b.reach("black", "core")
	b.choose("state", "plug-1")
	b.choose("dial", "function-0")
	b.shot("practice-dial-" + theme)
	b.press("fold-dial")
	b.takeReading(1)
	b.reach("red", "battery-plus")
	b.reach("black", "battery-minus")
	b.choose("dial", "function-1")
	b.press("fold-state")
	b.press("engine-1")
	b.waitFor(`!!document.getElementById("care")`)
	b.shot("practice-care-" + theme)
	b.press("understood")
	b.waitFor(`!document.getElementById("care")`)
	b.shot("practice-state-" + theme)
	b.press("fold-state")
	b.takeReading(2)
	b.size(390, 1180)
	b.press("wave")
	b.waitFor(`!!document.getElementById("plot")`)
	b.shot("practice-wave-" + theme)
	b.size(360, 640)
	b.press("name")
	b.waitFor(`!!document.getElementById("confirm")`)
	b.press("fault-" + string(machine.PhaseShorted))
	b.waitText("chosen", "?")
	b.shot("practice-name-" + theme)
	b.press("confirm")
	b.waitFor(`!!document.getElementById("left") && !!document.getElementById("guided")`)
	b.size(390, 2300)
	b.shot("practice-truth-" + theme)
	b.size(360, 640)
}

func TestScreensOfPractice(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	for _, theme := range shownIn() {
		b.open(h.url("about"))
		b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`void localStorage.setItem("coilbook-theme", %q)`, theme)))
		b.walkPractice(h, theme)
	}
}
