//go:build !js

package main

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// atFind begins a session that came for a complaint and opens its suspects.
func (b *browser) atFind(h *host, aim string) {
	b.t.Helper()
	b.open(h.url("setup/" + aim))
	b.press("begin")
	b.waitFor(`!!document.getElementById("enter")`)
	b.press("to-find")
	b.waitFor(`!!document.getElementById("suspects")`)
}

// unlikeADoubleTap lets the time pass in which a tap counts as the second of two.
func unlikeADoubleTap() { time.Sleep(450 * time.Millisecond) }

// jump goes to a check of the list.
func (b *browser) jump(id string) {
	b.t.Helper()
	b.press("other-check")
	b.press("other-" + id)
	b.waitFor(fmt.Sprintf(`!document.getElementById("other-checks") && !document.getElementById("other-%s")`, id))
	unlikeADoubleTap()
}

// measure enters a reading of a check and waits for it to be listed.
func (b *browser) measure(id, text string) {
	b.t.Helper()
	b.jump(id)
	b.fill("find-reading", text)
	b.press("find-enter")
	b.waitText("said-"+id, text)
	b.waitSaved()
}

func TestFindTheFaultWithoutServer(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.open(h.url(""))
	b.waitFor(kept)
	h.unplug()
	b.open(h.url("setup/no-charge"))
	b.do(chromedp.Evaluate[chromedp.Void](`{ window.long = []; new PerformanceObserver(l => { for (const e of l.getEntries()) window.long.push(Math.round(e.duration)) }).observe({type: "longtask"}) }`))
	b.press("begin")
	b.press("to-find")
	b.waitHeading("Won't charge: what is it?")
	b.waitFor(`!!document.getElementById("suspects")`)
	t.Log("tasks over 50 ms while the machines were drawn: ", evaluate[string](b, `JSON.stringify(window.long)`))
	b.waitText("suspects", "Nothing read yet")

	b.jump("battery-rest")
	b.fill("find-reading", "12.x")
	b.press("find-enter")
	b.waitText("find-problem", "12.x")
	if got := evaluate[string](b, `document.getElementById("find-reading").value`); got != "12.x" {
		t.Errorf("the field reads %q after the refusal", got)
	}
	b.fill("find-reading", "12.4")
	b.press("find-enter")
	b.waitText("said-battery-rest", "12.4 V")
	b.measure("battery-5000", "12.3")
	b.jump("fuse")
	b.waitText("next-name", "Is the main fuse blown?")
	b.press("say-yes")
	b.waitText("said-fuse", "Yes")
	b.waitText("leading", "Most likely: the main fuse is blown")
	b.waitSaved()
	before := b.text("suspects")
	b.reload()
	b.waitFor(`!!document.getElementById("suspects")`)
	if got := b.text("suspects"); got != before {
		t.Errorf("after a reload the suspects are %q, were %q", got, before)
	}

	b.press("said-battery-rest")
	b.waitFor(`(document.getElementById("find-reading") || {}).value === "12.4"`)
	b.fill("find-reading", "12.6")
	b.press("find-enter")
	b.waitText("said-battery-rest", "12.6 V")
	for range 12 { // what cannot be done is not asked again
		if evaluate[bool](b, `!!document.getElementById("finding")`) {
			break
		}
		name := b.text("next-name")
		unlikeADoubleTap()
		b.press("say-cannot")
		b.waitFor(fmt.Sprintf(`(document.getElementById("next-name") || {}).textContent !== %q`, name))
	}
	b.waitText("finding", "The main fuse is blown")
	for _, want := range []string{"Find out why before the next fuse", "Before you start, do"} {
		if told := b.text("finding"); !strings.Contains(told, want) {
			t.Errorf("the finding does not say %q: %s", want, told)
		}
	}
}

func TestTheBenchHasNoSuspects(t *testing.T) {
	_, b := atFirstCheck(t)
	if evaluate[bool](b, `!!document.getElementById("to-find")`) {
		t.Error("a stator on the bench leads to suspects")
	}
}

func TestScreensOfFind(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	for _, theme := range []string{"light", "dark"} {
		b.open(h.url("about"))
		b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`void localStorage.setItem("coilbook-theme", %q)`, theme)))
		b.atFind(h, "no-charge")
		b.shot("find-start-" + theme)
		b.measure("battery-rest", "12.4")
		b.measure("battery-5000", "12.3")
		b.size(390, 2300)
		b.shot("find-next-" + theme)
		b.jump("fuse")
		b.shot("find-look-" + theme)
		b.press("say-yes")
		b.waitText("said-fuse", "Yes")
		b.press("other-check")
		time.Sleep(100 * time.Millisecond)
		b.shot("find-fuse-" + theme)
		b.size(360, 640)
	}
}
