//go:build !js

package main

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// pick chooses from a list as a person does, and waits until the page took it.
func (b *browser) pick(id, value string) {
	b.t.Helper()
	b.pickFor(id, value, value)
}

// pickFor chooses from a list, and waits until it shows what the page made of that.
func (b *browser) pickFor(id, value, shown string) {
	b.t.Helper()
	b.waitFor(fmt.Sprintf(`!!document.getElementById(%q)`, id))
	b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`{ const e = document.getElementById(%q); e.value = %q; e.dispatchEvent(new Event("change", { bubbles: true })) }`, id, value)))
	b.waitFor(fmt.Sprintf(`document.getElementById(%q).value === %q`, id, shown))
}

// visitTo begins a session on a named machine with a reading of the pickup, and gives
// the path of its pages.
func (b *browser) visitTo(h *host, name, pickup string, set func()) (path string) {
	b.t.Helper()
	b.open(h.url("setup/bench"))
	b.fill("name", name)
	set()
	b.press("begin")
	b.waitFor(`!!document.getElementById("typed")`)
	path = strings.TrimSuffix(b.sibling(""), "/")
	b.open(h.url(path + "/check/pickup"))
	b.waitFor(`!!document.getElementById("typed")`)
	b.typeOnPad(pickup)
	b.enter()
	return path
}

// Colours of leads are chosen, drawn, named in the steps, changed and taken away again,
// and are still there after a reload. Two sessions with one name are one machine's.
func TestColoursAndEarlierReadings(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.size(phoneWidth, phoneHeight)
	first := b.visitTo(h, "Red moped", "212", func() {
		b.unfold()
		b.pick("colour-charge-1", "yellow")
		b.pick("stripe-charge-1", "red")
		b.pick("colour-charge-2", "white")
		b.pickFor("stripe-charge-2", "white", "") // a stripe in its own colour is none
		b.waitFor(`document.querySelectorAll(".wire .wire-yellow").length === 1 && document.querySelectorAll(".wire .wire-red").length === 1`)
	})
	b.open(h.url(first + "/check/charge-pair-1-2"))
	for range 2 {
		b.waitFor(`!!document.querySelector(".wire-legend")`)
		page := evaluate[string](b, `document.querySelector(".main").textContent`)
		for _, text := range []string{"charge lead 1 (yellow with red stripe)", "charge lead 2 (white)"} {
			if !strings.Contains(page, text) {
				t.Errorf("the check does not say %q: %s", text, page)
			}
		}
		if said := evaluate[string](b, `document.querySelector(".picture").getAttribute("aria-label")`); !strings.Contains(said, "1 (yellow with red stripe)") {
			t.Errorf("the picture says %q", said)
		}
		if n := evaluate[int](b, `document.querySelectorAll(".picture .wire-yellow, .picture .wire-red, .picture .wire-white").length`); n != 3 {
			t.Errorf("%d strokes of colour", n)
		}
		b.reload()
	}
	b.open(h.url(first + "/setup"))
	b.unfold()
	b.pick("colour-charge-1", "")
	b.press("begin")
	b.waitSaved()
	b.open(h.url(first + "/check/charge-core-1"))
	b.waitFor(`!!document.getElementById("typed")`)
	if evaluate[bool](b, `!!document.querySelector(".wire-yellow")`) {
		t.Error("a colour that was taken away is still drawn")
	}
	b.open(h.url(first + "/sheet"))
	b.waitFor(`!!document.getElementById("rows")`)
	if evaluate[bool](b, `!!document.getElementById("to-earlier")`) {
		t.Error("one session has earlier readings")
	}

	b.visitTo(h, "red  moped", "236", func() {})
	b.open(h.url(b.sibling("sheet")))
	b.press("to-earlier")
	b.waitFor(`document.querySelectorAll("#trend-pickup tbody tr").length === 2`)
	table := b.text("trend-pickup-table")
	for _, text := range []string{"212 ±", "236 ±", "in spec"} {
		if !strings.Contains(table, text) {
			t.Errorf("the table lacks %q: %s", text, table)
		}
	}
	if n := evaluate[int](b, `document.querySelectorAll("#trend-pickup .plot-picture .bar-point-in").length`); n != 2 {
		t.Errorf("%d readings are drawn", n)
	}
	b.fits("earlier")
}
