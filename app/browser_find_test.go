//go:build !js

package main

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"coilbook/app/words"
	"coilbook/engine/check"
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

// unfoldAll opens what is folded on the screen.
func (b *browser) unfoldAll() {
	b.do(chromedp.Evaluate[chromedp.Void](`{ for (const d of document.querySelectorAll("details")) d.open = true }`))
}

// unlikeADoubleTap lets the time pass in which a tap counts as the second of two.
func unlikeADoubleTap() { time.Sleep(450 * time.Millisecond) }

// jump goes to a check of the list, unless it is asked for already.
func (b *browser) jump(id string) {
	b.t.Helper()
	b.press("other-check")
	b.waitFor(`!!document.getElementById("other-checks")`)
	if !evaluate[bool](b, fmt.Sprintf(`!!document.getElementById("other-%s")`, id)) {
		b.press("other-check")
		unlikeADoubleTap()
		return
	}
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
	whole := `!!document.querySelector("#suspects details:not(.suspect-why)")` // what comes in a turn of its own
	b.waitFor(whole)
	before := b.text("suspects")
	b.reload()
	b.waitFor(whole)
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
	for _, want := range []string{"Find out why before the next fuse", "Before you start, take once more"} {
		if told := b.text("finding"); !strings.Contains(told, want) {
			t.Errorf("the finding does not say %q: %s", want, told)
		}
	}
}

// refuseTheRest leaves out what is asked until the finding stands.
func (b *browser) refuseTheRest() {
	b.t.Helper()
	for range 40 {
		if evaluate[bool](b, `!!document.getElementById("finding")`) {
			return
		}
		name := b.text("next-name")
		unlikeADoubleTap()
		b.press("say-cannot")
		b.waitFor(fmt.Sprintf(`(document.getElementById("next-name") || {}).textContent !== %q`, name))
	}
	b.t.Error("no finding")
}

// tells checks what a part of the screen says.
func (b *browser) tells(id string, wants ...string) {
	b.t.Helper()
	told := b.text(id)
	for _, want := range wants {
		if !strings.Contains(told, want) {
			b.t.Errorf("%s does not say %q: %s", id, want, told)
		}
	}
}

func TestNoSparkWithoutServer(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.open(h.url(""))
	b.waitFor(kept)
	h.unplug()
	b.open(h.url(""))
	b.press("aim-no-spark")
	b.press("begin")
	b.press("to-find")
	b.waitHeading("No spark: what is it?")
	b.waitFor(`!!document.getElementById("suspects")`)
	b.jump("spark")
	b.press("say-no")
	b.waitText("said-spark", "No")
	b.jump("exciter")
	b.press("say-open")
	b.waitText("said-exciter", "open line")
	b.waitText("why-exciter-open", "With this fault nearly all read open line")
	b.measure("pickup", "190")
	b.refuseTheRest()
	b.tells("finding", "The exciter is broken inside", "A rewound or another stator")
	b.tells("home", "No: it will not run")
	b.tells("match", "12 poles around the core", "With an exciter")
	b.tells("never", "an exciter feeds with a stator that has none")
	b.tells("leave", "Pickup", "190 Ω")
	b.tells("rests", "Exciter resistance: open line")
	b.press("contradict")
	b.waitText("next-check", "What you enter now takes the place of “open line”")
}

// Every complaint has a way in: some begin with the guided plan, some with the
// suspects.
func TestEveryComplaintHasAWayIn(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	for _, aim := range check.Aims() {
		if aim == check.SelfCheck {
			continue
		}
		b.open(h.url(""))
		b.press("aim-" + string(aim))
		b.press("begin")
		switch aim {
		case check.NoCharge, check.NoSpark, check.Bench:
			b.waitFor(`!!document.getElementById("enter")`)
			b.press("to-find")
		}
		b.waitFor(`!!document.getElementById("next-check")`)
		b.waitHeading(words.FindHeading(aim))
	}
}

func TestTooMuchVoltageIsFoundAndStandsOnTheSheet(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.open(h.url("setup/overcharges"))
	b.press("begin")
	b.waitFor(`!!document.getElementById("next-check")`)
	if !evaluate[bool](b, `!!document.getElementById("next-check").querySelector(".outlook")`) {
		t.Error("it does not say why the check is next")
	}
	b.measure("battery-5000", "16.2")
	b.press("said-battery-5000")
	b.waitFor(`!!document.getElementById("count-both")`)
	b.press("count-both")
	b.waitText("answer", "counts together with “16.2 V”")
	b.shot("find-both")
	b.fill("find-reading", "16.4")
	b.press("find-enter")
	b.waitText("said-battery-5000", "16.4 V (2 readings)")
	b.measure("battery-rest", "12.8")
	b.refuseTheRest()
	b.tells("finding", "The regulator never holds the voltage down")
	b.tells("home", "stop above 15 V")
	b.tells("match", "3 AC leads, three-phase", "The same way to ground")
	b.waitSaved()
	b.open(strings.Replace(evaluate[string](b, `location.href`), "/find", "/sheet", 1))
	b.waitText("beyond", "Battery at 5000 rpm")
	b.tells("beyond", "16.3", "12.8 V")
	if !evaluate[bool](b, `document.getElementById("beyond").getBoundingClientRect().top < document.getElementById("rows").getBoundingClientRect().top`) {
		t.Error("the sheet of a search begins with the generator's plan")
	}
	b.size(360, 1500)
	b.shot("sheet-beyond")
	b.size(360, 640)
	b.waitText("next", words.ToFind)
	b.open(h.url(""))
	b.waitText("resume", "2 answers so far")
	b.press("resume")
	b.waitHeading("Charges too much: what is it?")
}

// Two faults at once are named together, with the order of the work and its cautions.
func TestADoubleSaysWhatToMendFirst(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	for _, theme := range shownIn() {
		b.open(h.url("about"))
		b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`void localStorage.setItem("coilbook-theme", %q)`, theme)))
		b.open(h.url("setup/overcharges"))
		b.press("begin")
		b.waitFor(`!!document.getElementById("next-check")`)
		b.measure("battery-cranking", "5.7")
		b.measure("battery-5000", "26.9")
		b.waitFor(`!!document.getElementById("order")`)
		b.waitText("leading", "Most likely: the regulator never holds the voltage down, and the battery is boiled dry")
		for id, want := range map[string]string{
			"finding": "Battery, and regulator-rectifier, both: over 99 %", "order": "Regulator first", "mending": "gas that explodes",
			"match": "Regulator-rectifier", "home": "Only if you must",
		} {
			if told := b.text(id); !strings.Contains(told, want) {
				t.Errorf("%s does not say %q: %s", id, want, told)
			}
		}
		b.unfoldAll()
		b.size(390, 3000)
		b.shot("finding-double-" + theme)
		b.size(360, 640)
	}
}

// Readings that fit nothing are said to, and the one that is out of line is named.
func TestReadingsThatFitNothing(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.atFind(h, "no-charge")
	for _, r := range [][2]string{{"battery-rest", "12.6"}, {"battery-5000", "14.3"}, {"battery-3000", "11.2"}, {"battery-idle", "13.2"}} {
		b.measure(r[0], r[1])
	}
	b.waitText("said-battery-3000", "fits the others badly")
	b.refuseTheRest()
	b.press("slip")
	b.waitText("next-name", "Battery at 3000 rpm")
	b.atFind(h, "no-charge")
	for _, r := range [][2]string{{"battery-rest", "12.6"}, {"battery-5000", "9.1"}, {"battery-3000", "14.9"}, {"battery-idle", "10.5"}, {"battery-lamp", "12.5"}} {
		b.measure(r[0], r[1])
	}
	b.waitText("odd", "fit no fault of the list")
	b.shot("find-odd")
	b.refuseTheRest()
	b.tells("finding", "Something that is not on the list", "Take the oddest readings again")
	b.tells("leading", "Most likely: something that is not on the list")
	b.tells("off-the-list", "Something that is not on the list")
	b.tells("home", "the cause is not known")
}

func TestWhatIsNotToldApartIsListed(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.atFind(h, "no-charge")
	for _, id := range []string{"charge-core-1", "charge-core-2", "charge-core-3"} {
		b.jump(id)
		b.fill("find-reading", "300 Ω")
		b.press("find-enter")
		b.waitText("said-"+id, "300 Ω")
	}
	b.refuseTheRest()
	b.tells("finding", "The star point touches the core") // all three alike: the likelier of the two
	b.tells("unsure", "It may also be", "A charge winding touches the core")
	b.tells("unknown", "What stays unknown")
	b.do(chromedp.Evaluate[chromedp.Void](`{ for (const d of document.querySelectorAll("#leave, #rests")) d.open = true }`))
	b.size(360, 2300)
	b.shot("find-stator")
}

// A stator on the bench is diagnosed too, from what can be read there.
func TestTheBenchHasSuspects(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.atFind(h, "bench")
	b.press("other-check")
	b.waitFor(`!!document.getElementById("other-checks")`)
	if evaluate[bool](b, `!!document.getElementById("other-battery-rest")`) {
		t.Error("a stator on the bench has no battery")
	}
	b.press("other-check")
	b.jump("exciter")
	b.press("say-open")
	b.waitText("leading", "the exciter is broken inside")
	b.refuseTheRest()
	b.tells("finding", "The exciter is broken inside")
	if evaluate[bool](b, `!!document.getElementById("home")`) {
		t.Error("a stator on the bench is ridden home")
	}
}

func TestScreensOfFind(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	for _, theme := range shownIn() {
		b.open(h.url("about"))
		b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`void localStorage.setItem("coilbook-theme", %q)`, theme)))
		b.atFind(h, "no-charge")
		b.shot("find-start-" + theme)
		b.measure("battery-rest", "12.4")
		b.measure("battery-5000", "12.3")
		b.unfoldAll()
		b.size(390, 2300)
		b.shot("find-next-" + theme)
		b.jump("fuse")
		b.shot("find-look-" + theme)
		b.press("say-yes")
		b.waitText("said-fuse", "Yes")
		b.unfoldAll()
		b.size(390, 2300)
		b.shot("find-why-" + theme)
		b.open(h.url(""))
		b.waitHeading("What is the machine doing?")
		b.size(360, 900)
		b.shot("start-aims-" + theme)
		b.size(360, 640)
		b.size(360, 640)
	}
}
