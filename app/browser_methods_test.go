//go:build !js

package main

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// fill types into a field as a person does.
func (b *browser) fill(id, text string) {
	b.t.Helper()
	b.waitFor(fmt.Sprintf(`!!document.getElementById(%q)`, id))
	b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`{ const e = document.getElementById(%q); e.value = %q; e.dispatchEvent(new Event("input", {bubbles: true})) }`, id, text)))
}

// unfold opens every folded part of the screen.
func (b *browser) unfold() {
	b.t.Helper()
	b.do(chromedp.Evaluate[chromedp.Void](`for (const d of document.querySelectorAll("details")) d.open = true`))
}

// drops are the six readings of milliohms with a bulb on three leads, in mV: a
// known resistor of 0.47 Ω and windings of 0.600, 0.600 and 0.560 Ω. An invented
// scenario: the phase between is short of some turns.
var drops = []string{"141.0", "180.0", "141.2", "180.2", "140.8", "167.7"}

// voltAmp goes from the sheet through all checks of the method; typed is called
// before each reading is entered.
func (b *browser) voltAmp(typed func(i int)) {
	b.t.Helper()
	b.press("method-volt-amp")
	b.waitHeading("Milliohms with a bulb")
	b.fill("resistor-ohms", "0,47")
	b.fill("resistor-percent", "1")
	b.press("begin")
	for i, reading := range drops {
		b.waitFor(`!!document.getElementById("enter") && document.getElementById("typed").textContent === "–"`)
		b.typeOnPad(reading)
		typed(i)
		b.enter()
	}
}

func TestMilliohmsFindWhatOhmsCannot(t *testing.T) {
	h, b := atFirstCheck(t)
	b.waitFor(kept)
	h.unplug()
	b.answer("0.3")
	for _, reading := range []string{"0.4", "0.9", "0.9", "0.9"} {
		b.answer(reading)
	}
	b.open(h.url(b.sibling("sheet")))
	b.waitText("row-charge-balance", "cannot be ruled out")
	b.press("method-volt-amp")
	b.fill("resistor-ohms", "none")
	b.press("begin")
	b.waitFor(`document.querySelector(".problem").textContent === "Known resistor: type its ohms, 0.01 to 1000."`)
	b.open(h.url(b.sibling("sheet")))
	b.voltAmp(func(int) {})
	b.open(h.url(b.sibling("result")))
	b.waitFor(`!!document.getElementById("parts")`)
	told := b.text("verdicts")
	for _, want := range []string{"Windings alike, by drops", "Leads 3 and 1 differ from the mean", "They do not read like a sound winding",
		"cannot tell star from delta", "Leads 1 and 2, by drops"} {
		if !strings.Contains(told, want) {
			t.Errorf("the result does not say %q: %s", want, told)
		}
	}
	if got := b.heading(); got != "Out of spec: charge winding" {
		t.Errorf("the result says %q", got)
	}
}

func TestOneMoreReadingOfThePoint(t *testing.T) {
	h, b := atFirstCheck(t)
	b.answer("0.3")
	b.answer("0.4")
	b.answer("0.9")
	b.open(h.url(b.sibling("check/charge-pair-1-2")))
	b.press("again")
	for n, reading := range []string{"0.9", "0.9", "0.9", "2.9"} {
		b.waitText("because", "place them anew")
		b.typeOnPad(reading)
		b.press("enter")
		b.waitFor(fmt.Sprintf(`document.querySelectorAll(".run-item").length === %d`, n+2))
		b.waitSaved()
		if n < 3 {
			b.waitText("because", "inside the limit")
			b.press("again")
		}
	}
	b.waitText("because", "Reading 5 (2.9 Ω) stands apart: take it again.")
	b.do(chromedp.Evaluate[chromedp.Void](`void document.querySelectorAll(".run-item")[4].click()`))
	b.waitText("because", "Type reading 5 anew.")
	b.typeOnPad("0.9")
	b.press("enter")
	b.waitFor(`document.querySelectorAll(".run-item").length === 5 && !document.querySelector(".run-item.apart")`)
	b.waitSaved()
	b.open(h.url(b.sibling("sheet")))
	b.waitText("row-charge-pair-1-2", "0.90 Ω (5×)")
	b.waitText("row-charge-pair-1-2", "1 earlier reading kept")
}

func TestTheDoubtUnfolds(t *testing.T) {
	_, b := atFirstCheck(t)
	b.answer("0.3")
	b.answer("0.4")
	b.typeOnPad("0.9")
	b.unfold()
	told := evaluate[string](b, `document.querySelector(".doubt dl").textContent`)
	for _, want := range []string{"0.9 Ω on the 200 Ω range", "less 0.3", "the winding is taken to be at 20 ± 15 °C", "covers about 95 %", "common practice", "over 99 %"} {
		if !strings.Contains(told, want) {
			t.Errorf("the details do not say %q: %s", want, told)
		}
	}
}

func TestTheWireIsEstimated(t *testing.T) {
	h, b := atFirstCheck(t)
	b.open(h.url(b.sibling("check/exciter")))
	b.waitHeading("Exciter resistance")
	b.answer("285")
	b.open(h.url(b.sibling("wire")))
	b.fill("wire-turns", "2000")
	b.fill("wire-turn", "60")
	b.waitFor(`document.querySelector(".wire-answer").textContent.includes("AWG")`)
	if got := evaluate[string](b, `document.querySelector(".wire-answer").textContent`); !strings.HasPrefix(got, "About 120 ± 1") {
		t.Errorf("the estimate reads %q", got)
	}
	b.fill("wire-turn", "-1")
	b.waitFor(`document.querySelector(".wire-answer").textContent === "Length of one turn, mm: type a number above zero."`)
}

// walkMethods goes through the better methods, with a picture of each screen.
func (b *browser) walkMethods(h *host, theme string) {
	b.t.Helper()
	b.open(h.url(b.sibling("check/charge-pair-1-2")))
	b.press("again")
	b.waitText("because", "place them anew")
	b.typeOnPad("1.0")
	b.unfold()
	b.size(360, 1400)
	b.shot("again-" + theme)
	b.size(360, 640)
	b.open(h.url(b.sibling("sheet")))
	b.press("method-volt-amp")
	b.waitHeading("Milliohms with a bulb")
	b.size(360, 1100)
	b.shot("method-volt-amp-" + theme)
	b.size(360, 640)
	b.open(h.url(b.sibling("sheet")))
	b.voltAmp(func(i int) {
		if i < 2 {
			b.shot(fmt.Sprintf("drop-%d-%s", i+1, theme))
		}
	})
	for _, m := range []string{"hot-winding", "peak-hold"} {
		b.open(h.url(b.sibling("method/" + m)))
		b.waitFor(`!!document.getElementById("begin")`)
		b.shot("method-" + m + "-" + theme)
		b.press("begin")
		b.waitFor(`!!document.getElementById("enter")`)
		b.typeOnPad(map[string]string{"hot-winding": "365", "peak-hold": "120"}[m])
		b.shot("check-" + m + "-" + theme)
		b.enter()
	}
	b.open(h.url(b.sibling("result")))
	b.waitFor(`!!document.getElementById("parts")`)
	b.size(390, 5200)
	b.shot("result-long-" + theme)
	b.size(360, 640)
	b.open(h.url(b.sibling("wire")))
	b.fill("wire-turns", "50")
	b.fill("wire-turn", "60")
	b.waitFor(`document.querySelector(".wire-answer").textContent.includes("About")`)
	b.shot("wire-" + theme)
}

// selfCheck is what a cheap meter with a half-wave detector shows of its leads,
// of a 12 V battery and of a resistor of 100 Ω. An invented scenario.
var selfCheck = []string{"0.3", "12.60", "28.0", "0.0", "101.2"}

// describeMeter fills in a data sheet and does the self-check.
func (b *browser) describeMeter(h *host) {
	b.t.Helper()
	b.open(h.url("meter/new"))
	b.fill("meter-name", "old yellow one")
	b.fill("percent-1", "1,5")
	b.fill("resistor", "100")
	b.fill("tolerance", "1")
	b.press("save-and-check")
	for _, reading := range selfCheck {
		b.waitFor(`!!document.getElementById("enter") && document.getElementById("typed").textContent === "–"`)
		b.answer(reading)
	}
	b.waitHeading("old yellow one")
}

// A meter described and checked without a server counts in the next session,
// and in the file that is saved from it.
func TestTheMeterTellsWhatItIs(t *testing.T) {
	h, b := atFirstCheck(t)
	b.waitFor(kept)
	h.unplug()
	b.describeMeter(h)
	told := evaluate[string](b, `document.querySelector("main").textContent`)
	for _, want := range []string{"A single diode, no capacitor", "less than 1 Ω together", "12.60 V"} {
		if !strings.Contains(told, want) {
			t.Errorf("the meter's result does not say %q: %s", want, told)
		}
	}
	b.open(h.url("sessions"))
	b.waitFor(`!!document.querySelector("h1")`)
	if n := evaluate[int](b, `document.querySelectorAll("#session-rows .session").length`); n != 0 {
		t.Errorf("%d sessions on machines are listed, and there is none", n)
	}
	b.open(h.url("setup/bench"))
	b.waitFor(`[...document.querySelectorAll("#ask-meter button")].some(e => e.textContent === "old yellow one")`)
	b.do(chromedp.Evaluate[chromedp.Void](`[...document.querySelectorAll("#ask-meter button")].find(e => e.textContent === "old yellow one").click()`))
	b.press("begin")
	b.answer("0.3")
	b.open(h.url(b.sibling("result")))
	b.waitFor(`!!document.getElementById("parts")`)
	if text := evaluate[string](b, `document.querySelector("main").textContent`); !strings.Contains(text, "with the doubt of: old yellow one") {
		t.Errorf("the result does not name the meter: %s", text)
	}
}

func TestABadDataSheetIsRefusedAndKept(t *testing.T) {
	h, b := atFirstCheck(t)
	b.open(h.url("meter/new"))
	b.fill("meter-name", "old yellow one")
	b.fill("percent-1", "lots")
	b.press("save-sheet")
	b.waitFor(`document.querySelector(".problem").textContent.includes("200 Ω")`)
	if got := evaluate[string](b, `document.getElementById("percent-1").value`); got != "lots" {
		t.Errorf("the field reads %q after the refusal", got)
	}
	b.fill("percent-1", "0,8")
	b.press("save-sheet")
	b.waitFor(`[...document.querySelectorAll(".card.meter")].some(e => e.textContent.includes("old yellow one"))`)
}

// walkMeters describes a meter and checks it, with a picture of each screen.
func (b *browser) walkMeters(h *host, theme string) {
	b.t.Helper()
	b.open(h.url("meters"))
	b.waitSaved()
	b.open(h.url("meter/new"))
	b.waitFor(`!!document.getElementById("save-sheet")`)
	b.size(360, 1700)
	b.shot("meter-form-" + theme)
	b.size(360, 640)
	b.describeMeter(h)
	b.size(360, 1100)
	b.shot("meter-told-" + theme)
	b.size(360, 640)
	b.open(h.url(b.sibling("check/battery-ac-swapped")))
	b.waitFor(`!!document.getElementById("enter")`)
	b.shot("check-battery-" + theme)
	b.open(h.url("meters"))
	b.waitFor(`document.querySelectorAll(".card.meter").length > 3`)
	b.size(360, 1100)
	b.shot("meters-" + theme)
	b.size(360, 640)
}
