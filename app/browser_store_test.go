//go:build !js

package main

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/storage"
)

// runner is a page that runs a test binary, as far as a browser can.
var runner = map[string][]byte{
	"index.html": []byte(`<!doctype html><title>tests</title><link rel="icon" href="data:,">
<body><main><h1>Tests</h1></main><script src="wasm_exec.js"></script><script src="run.js"></script></body>`),
	"run.js": []byte(`const go = new Go();
go.argv = ["test", ...new URLSearchParams(location.search).getAll("arg")];
go.exit = code => {
	globalThis.exitCode = code;
	go._scheduledTimeouts.forEach(clearTimeout); // an alarm or an event after the program's end would throw
	go._resume = () => {};
};
globalThis.printed = []; // not every browser tells what a page writes to its console
console.log = line => { printed.push(line) };
WebAssembly.instantiateStreaming(fetch("test.wasm"), go.importObject).then(r => go.run(r.instance));`),
}

func TestStoreInTheBrowser(t *testing.T) {
	h := hostTests(t, "./store")
	t.Run("all", func(t *testing.T) {
		everyBrowser(t, func(_ *testing.T, b *browser) { runTests(b, h, "-test.skip=TestNoRoomLeft") })
	})
	t.Run("no room left", func(t *testing.T) {
		b, quota := newBrowser(t), 200_000.0
		call(b, storage.OverrideQuotaForOrigin, storage.OverrideQuotaForOriginParams{
			Origin: strings.TrimSuffix(h.url(""), "/"), QuotaSize: &quota,
		})
		runTests(b, h, "-test.run=TestNoRoomLeft")
	})
}

func TestDeviceInTheBrowser(t *testing.T) {
	h := hostTests(t, "./device")
	everyBrowser(t, func(_ *testing.T, b *browser) {
		runTests(b, h)
		b.tellsTales(h)
	})
}

// hostTests builds the tests of a package for the browser and serves them.
func hostTests(t testing.TB, pkg string) *host {
	t.Helper()
	watchSources()
	binary, err := compile("test", "-c", "-trimpath", "-ldflags=-s -w", pkg)
	if err != nil {
		t.Fatal(err)
	}
	script, err := startScript()
	if err != nil {
		t.Fatal(err)
	}
	files := map[string][]byte{"test.wasm": binary, "wasm_exec.js": script}
	for name, content := range runner {
		files[name] = content
	}
	h := startSite(t, "/", files)
	site := h.handler
	h.handler = http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) { site.ServeHTTP(withoutPolicy{w}, r) })
	return h
}

// withoutPolicy lets tests evaluate texts, which no page of the app may.
type withoutPolicy struct{ http.ResponseWriter }

// WriteHeader implements http.ResponseWriter.
func (w withoutPolicy) WriteHeader(code int) {
	w.Header().Del("Content-Security-Policy")
	w.ResponseWriter.WriteHeader(code)
}

func runTests(b *browser, h *host, args ...string) {
	b.t.Helper()
	query := url.Values{"arg": append([]string{"-test.v", "-test.timeout=60s"}, args...)}
	b.load(h.url("?" + query.Encode()))
	b.waitFor(`globalThis.exitCode !== undefined`)
	output := evaluate[string](b, `printed.join("\n")`)
	if code := evaluate[int](b, `exitCode`); code != 0 || !strings.Contains(output, "\nPASS") {
		b.t.Errorf("tests in the browser failed with exit code %d:\n%s", code, output)
	}
	if !strings.Contains(output, "--- PASS") {
		b.t.Error("no test ran")
	}
}

// tellsTales holds the harness to noticing what a page must not do, in this kind
// of browser too.
func (b *browser) tellsTales(h *host) {
	b.t.Helper()
	quick := h.url("?arg=-test.run=^$")
	b.load(quick)
	b.waitFor(`globalThis.exitCode !== undefined`)
	evaluate[bool](b, `new Promise(over => {
		setTimeout(() => { throw new Error("nobody catches this") });
		const picture = new Image();
		picture.onerror = () => over(true);
		picture.src = "http://elsewhere.test/" })`)
	b.load(quick)
	b.waitFor(`globalThis.exitCode !== undefined`)
	b.expectException("nobody catches this")
	b.mu.Lock()
	defer b.mu.Unlock()
	if len(b.foreign) == 0 {
		b.t.Error("a request to another host went by unnoticed")
	}
	b.foreign = nil
}
