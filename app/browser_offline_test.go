//go:build !js

package main

import (
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// kept waits until the worker has kept everything.
const kept = `navigator.serviceWorker.ready.then(r => r.active.state === "activated")`

func TestFirstVisit(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.open(h.url(""))
	if b.heading() == "" {
		t.Error("the first screen has no heading")
	}
	b.waitFor(kept)
	got := evaluate[[]string](b, `caches.keys().then(async names => {
		const paths = [];
		for (const name of names)
			for (const r of await (await caches.open(name)).keys()) paths.push(new URL(r.url).pathname);
		return paths.sort() })`)
	for _, want := range []string{"/", "/app.wasm", "/boot.js", "/icons/icon-192.png", "/style.css", "/wasm_exec.js"} {
		if !slices.Contains(got, want) {
			t.Errorf("%s is not kept; kept are %v", want, got)
		}
	}
}

func TestOffline(t *testing.T) {
	for _, prefix := range []string{"/", "/sub/"} {
		t.Run("under "+prefix, func(t *testing.T) {
			h := startSite(t, prefix, siteFiles(t, prefix, "one"))
			b := newBrowser(t)
			b.open(h.url(""))
			b.waitFor(kept)
			h.unplug()
			b.reload()
			for _, path := range []string{"", "sessions?x=1", "no/such/screen.html?y#z", "setup/bench"} {
				b.open(h.url(path))
			}
			if got := evaluate[string](b, `goappGetenv("GOAPP_ROOT_PREFIX")`); got != prefix {
				t.Errorf("the program sees the prefix %q, want %q", got, prefix)
			}
		})
	}
}

func TestBrokenDeploymentKeepsTheOldVersion(t *testing.T) {
	h, b, old := installed(t)
	h.deploy(without(siteFiles(t, "/", "two"), "icons/icon-512.png"))
	asked := h.asked("/icons/icon-512.png")
	if state := update(b); state == "installed" {
		t.Error("an incomplete version was installed")
	}
	if h.asked("/icons/icon-512.png") == asked {
		t.Error("the worker did not try to fetch the new version")
	}
	h.unplug()
	b.reload()
	if got := runningVersion(b); got != old {
		t.Errorf("version %s runs, want the old %s", got, old)
	}
	if names := evaluate[[]string](b, `caches.keys()`); len(names) != 1 {
		t.Errorf("leftovers of the broken version: %v", names)
	}
}

func TestUpdateWaitsForConsent(t *testing.T) {
	h, b, old := installed(t)
	evaluate[bool](b, `caches.open("of another app").then(() => true)`)
	h.deploy(siteFiles(t, "/", "two"))
	if state := update(b); state != "installed" {
		t.Fatalf("the new version is %s, want installed", state)
	}
	time.Sleep(3 * time.Second) // a version that does not wait takes over with some delay
	b.reload()
	if got := runningVersion(b); got != old {
		t.Errorf("version %s took over without consent", got)
	}
	b.waitFor(`navigator.serviceWorker.ready.then(r => !!r.waiting)`)
	evaluate[bool](b, `navigator.serviceWorker.ready.then(r => { r.waiting.postMessage({ type: "take-over" }); return true })`)
	b.waitFor(kept + `.then(async active => active && !(await navigator.serviceWorker.ready).waiting)`)
	h.unplug()
	b.reload()
	if got := runningVersion(b); got == old {
		t.Error("the old version still runs after consent")
	}
	names := evaluate[[]string](b, `caches.keys()`)
	if len(names) != 2 || !slices.Contains(names, "of another app") {
		t.Errorf("caches are %v, want the new version's and the other app's", names)
	}
}

// installed is a site and a browser that runs it from what it has kept.
func installed(t *testing.T) (h *host, b *browser, version string) {
	t.Helper()
	h = startSite(t, "/", siteFiles(t, "/", "one"))
	b = newBrowser(t)
	b.open(h.url(""))
	b.waitFor(kept)
	b.reload()
	return h, b, runningVersion(b)
}

// runningVersion is the version of the page; the worker's must be the same.
func runningVersion(b *browser) string {
	b.t.Helper()
	shown := evaluate[string](b, `document.documentElement.dataset.version`)
	worker := evaluate[string](b, `new Promise(resolve => {
		const channel = new MessageChannel();
		channel.port1.onmessage = e => resolve(e.data);
		navigator.serviceWorker.controller.postMessage({ type: "version" }, [channel.port2]) })`)
	if shown != worker {
		b.t.Errorf("the page is of version %s, its worker of %s", shown, worker)
	}
	return shown
}

// update looks for a new version and tells what became of it.
func update(b *browser) string {
	b.t.Helper()
	return evaluate[string](b, `(async () => {
		const r = await navigator.serviceWorker.ready;
		await r.update();
		const worker = r.installing || r.waiting;
		if (!worker) return "none";
		while (worker.state === "installing")
			await new Promise(resolve => worker.addEventListener("statechange", resolve, { once: true }));
		return worker.state })()`)
}

// WebKit stands still for half a minute where a worker that is there is installed again
// without a server.
func TestTheWorkerIsInstalledOnce(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowserIn(t, t.TempDir())
	call(b, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: `{
		const register = navigator.serviceWorker.register.bind(navigator.serviceWorker);
		window.installs = 0;
		navigator.serviceWorker.register = (...args) => (window.installs++, register(...args));
		const asked = navigator.serviceWorker.getRegistration.bind(navigator.serviceWorker);
		navigator.serviceWorker.getRegistration = async (...args) => { const found = await asked(...args); window.looked = true; return found; };
	}`})
	b.open(h.url(""))
	b.waitFor(kept)
	if n := evaluate[int](b, `window.installs`); n != 1 {
		t.Errorf("installed %d times at the first visit", n)
	}
	b.reload()
	b.waitFor(`window.looked`)
	if n := evaluate[int](b, `new Promise(done => setTimeout(() => done(window.installs), 200))`); n != 0 {
		t.Errorf("installed %d times where it is there", n)
	}
}

func TestInstallable(t *testing.T) {
	for _, prefix := range []string{"/", "/sub/"} {
		h := startSite(t, prefix, siteFiles(t, prefix, "one"))
		b := newBrowserIn(t, t.TempDir())
		b.open(h.url("sessions"))
		b.waitFor(kept)
		manifest := call(b, page.GetAppManifest, page.GetAppManifestParams{})
		for _, e := range manifest.Errors {
			t.Errorf("%s: manifest: %s", prefix, e.Message)
		}
		if !strings.HasSuffix(manifest.URL, prefix+"manifest.webmanifest") || manifest.Manifest == nil {
			t.Fatalf("%s: no manifest at %q", prefix, manifest.URL)
		}
		if got := manifest.Manifest.Scope; got != h.url("") {
			t.Errorf("scope is %q, want %q", got, h.url(""))
		}
		for _, e := range call(b, page.GetInstallabilityErrors, cdp.Empty{}).InstallabilityErrors {
			t.Errorf("%s: not installable: %s %v", prefix, e.ErrorID, e.ErrorArguments)
		}
	}
}

func TestUpdateIsOfferedAndTaken(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.open(h.url("sessions"))
	b.waitFor(kept)
	if evaluate[bool](b, `!!document.getElementById("update")`) {
		t.Error("the first installation was announced as an update")
	}
	b.reload()
	old := runningVersion(b)
	h.deploy(siteFiles(t, "/", "two"))
	update(b)
	b.do(chromedp.Click(chromedp.CSS("#update button")))
	b.waitFor(`document.documentElement.dataset.version !== "` + old + `"`)
	b.waitApp()
	runningVersion(b)
	if place := evaluate[string](b, `location.pathname`); place != "/sessions" {
		t.Errorf("the update led to %s", place)
	}
}

// tell writes what the content policy forbids to the console.
const tell = `addEventListener("securitypolicyviolation", e => console.error("forbidden: " + e.violatedDirective + " " + e.blockedURI))`

// A walk asks for nothing that the policy forbids, which the page carries for
// hosts that send no headers of ours.
func TestThePolicyForbidsNothingThatIsNeeded(t *testing.T) {
	h := startSite(t, "/sub/", siteFiles(t, "/sub/", "one"))
	b := newBrowser(t)
	call(b, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: tell})
	for _, path := range []string{"", "setup/bench", "setup/no-charge", "sessions", "meters", "meter/new", "practice", "about"} {
		b.open(h.url(path))
	}
	b.waitFor(kept)
	b.reload()
	if strings.Contains(b.written(), "forbidden") {
		t.Error(b.written())
	}
	evaluate[bool](b, `document.head.append(Object.assign(document.createElement("script"), { textContent: "1" })) || true`)
	b.waitFor(`new Promise(resolve => setTimeout(() => resolve(true), 50))`)
	if !strings.Contains(b.written(), "forbidden: script-src-elem inline") {
		t.Error("a script inside the page is not forbidden, or nobody tells: ", b.written())
	}
}
