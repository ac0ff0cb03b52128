//go:build !js

package main

import (
	"fmt"
	"net/http"
	"testing"

	"github.com/stretchr/testify/require"
)

// holdBack keeps a file from whoever asks for it until it is released.
func (h *host) holdBack(path string) (release func()) {
	gate := make(chan struct{})
	h.mu.Lock()
	defer h.mu.Unlock()
	through := h.handler
	h.handler = http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == path {
			select {
			case <-gate:
			case <-r.Context().Done():
				return
			}
		}
		through.ServeHTTP(w, r)
	})
	return func() { close(gate) }
}

// shownFirst is the visible part of what stands in the page before the program.
const shownFirst = `[...document.querySelectorAll("#first-paint > *")].filter(e => e.checkVisibility()).map(e => e.className).join(", ")`

// While the program is still on its way the start can be read, and a choice on it is
// taken: the program begins there, and Back leads to the start.
func TestTheStartIsOfUseBeforeTheProgram(t *testing.T) {
	h := startSite(t, "/sub/", siteFiles(t, "/sub/", "one"))
	release := h.holdBack("/sub/app.wasm")
	b := newBrowser(t)
	b.size(phoneWidth, phoneHeight)
	b.load(h.url(""))
	b.waitFor(`!!document.querySelector(".at-start #first-paint .choice")`)
	require.Equal(t, "page", evaluate[string](b, shownFirst))
	b.holds("before the program", smallTargets)
	b.holds("before the program", cutOff)
	choose := func(path string) {
		b.click(fmt.Sprintf(`#first-paint .page[lang=en] a[href="/sub/%s"]`, path))
		b.waitFor(fmt.Sprintf(`location.pathname === "/sub/%s"`, path))
	}
	before := evaluate[int](b, `history.length`)
	choose("setup/bench")
	choose("setup/no-spark") // on second thoughts
	require.Equal(t, []string{"/sub/setup/no-spark"}, evaluate[[]string](b, `[...document.querySelectorAll("#first-paint [aria-current]")].map(a => a.pathname)`))
	require.Equal(t, before+1, evaluate[int](b, `history.length`))
	release()
	b.waitApp()
	b.waitText("begin", "Start")
	require.Equal(t, "No spark", evaluate[string](b, `document.querySelector(".head-title").textContent`))
	evaluate[bool](b, `(history.back(), true)`)
	b.waitHeading("What is the machine doing?")
}

// Every other address has the name and the progress of the download only.
func TestOtherAddressesDoNotShowTheStartFirst(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	release := h.holdBack("/app.wasm")
	b := newBrowser(t)
	b.load(h.url("sessions"))
	b.waitFor(`!!document.getElementById("first-paint")`)
	require.Equal(t, "plain", evaluate[string](b, shownFirst))
	release()
	b.waitApp()
	b.waitHeading("Saved on this phone")
}

// What stands in the page first is what the program draws, in each language: nothing
// moves when the one takes the place of the other.
func TestTheStartIsTheSameBeforeAndAfter(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.size(phoneWidth, phoneHeight)
	// Where each line of text stands.
	const places = `(root => { const out = [], walk = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
		for (let n; (n = walk.nextNode());) {
			if (n.parentElement.closest(".saving")) continue;
			const range = document.createRange(); range.selectNode(n);
			for (const r of range.getClientRects()) out.push([n.data, r.x, r.y, r.width, r.height].join(" ")); }
		for (const e of root.querySelectorAll("svg *")) out.push(e.tagName + [...e.attributes].map(a => " " + a.name + "=" + a.value).sort().join(""));
		return out })`
	for _, language := range []string{"en", "es"} {
		h.deploy(siteFiles(t, "/", language))
		release := h.holdBack("/app.wasm")
		b.load(h.url(""))
		b.waitFor(`!!document.querySelector("#first-paint .choice")`)
		if language != "en" {
			evaluate[bool](b, fmt.Sprintf(`(localStorage.setItem("coilbook-language", %q), true)`, language))
			b.load(h.url(""))
			b.waitFor(fmt.Sprintf(`document.documentElement.lang === %q && !!document.querySelector("#first-paint .choice")`, language))
		}
		before := evaluate[[]string](b, fmt.Sprintf(`%s(document.querySelector("#first-paint .page[lang=%s]"))`, places, language))
		require.Greater(t, len(before), 20)
		release()
		b.waitApp()
		b.waitFor(`!!document.querySelector(".shell .choice")`)
		require.Equal(t, before, evaluate[[]string](b, places+`(document.querySelector(".shell .page"))`), language)
	}
}
