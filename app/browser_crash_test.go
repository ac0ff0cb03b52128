//go:build !js

package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// A navigation without a target is a mistake that the program does not expect.
func TestPanicShowsAWayOut(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.open(h.url(""))
	evaluate[bool](b, `goappNav() || true`)
	reason := waitCrash(b)
	if !strings.Contains(reason, "index out of range") {
		t.Errorf("the reason shown is %q", reason)
	}
	if !evaluate[bool](b, `document.activeElement.id === "crash-reload"`) {
		t.Error("the way out has no focus")
	}
	b.do(chromedp.Click(chromedp.CSS("#crash-reload")))
	b.waitFor(`!document.getElementById("crash")`)
	b.waitApp()
}

// doomed ends outside the main goroutine, in one of two ways.
const doomed = `package main

import (
	"syscall/js"
	"time"
)

func main() {
	if js.Global().Get("location").Get("hash").String() == "#panic" {
		go func() { time.Sleep(10 * time.Millisecond); panic("lost a bolt") }()
	}
	js.Global().Set("stumble", js.FuncOf(func(this js.Value, args []js.Value) any { return args[0].Get("trap") }))
	select {}
}
`

func TestProgramThatEndsOnItsOwn(t *testing.T) {
	dir := t.TempDir()
	source := filepath.Join(dir, "main.go")
	if err := os.WriteFile(source, []byte(doomed), 0o644); err != nil {
		t.Fatal(err)
	}
	program, err := compile("build", source)
	if err != nil {
		t.Fatal(err)
	}
	script, err := startScript()
	if err != nil {
		t.Fatal(err)
	}
	h := startSite(t, "/", siteOf(t, "/", program, script))
	b := newBrowser(t)
	b.load(h.url("#panic"))
	if reason := waitCrash(b); !strings.Contains(reason, "lost a bolt") {
		t.Errorf("the reason shown is %q", reason)
	}
	b.load(h.url("?again"))
	b.waitFor(`typeof stumble === "function"`)
	evaluate[bool](b, `setTimeout(() => stumble({ get trap() { throw new Error("bad trap") } })) > 0`)
	if reason := waitCrash(b); !strings.Contains(reason, "bad trap") {
		t.Errorf("the reason shown is %q", reason)
	}
	b.expectException("bad trap")
}

func TestMissingProgramIsToldOnTheFirstVisit(t *testing.T) {
	h := startSite(t, "/", without(siteFiles(t, "/", "one"), "app.wasm"))
	b := newBrowser(t)
	b.load(h.url(""))
	if reason := waitCrash(b); !strings.Contains(reason, "404") {
		t.Errorf("the reason shown is %q", reason)
	}
	h.deploy(siteFiles(t, "/", "one"))
	b.do(chromedp.Click(chromedp.CSS("#crash-reload")))
	b.waitApp()
}

// waitCrash waits for the crash screen and gives the reason that it shows.
func waitCrash(b *browser) string {
	b.t.Helper()
	b.waitFor(`!!document.getElementById("crash")`)
	return evaluate[string](b, `document.getElementById("crash-reason").textContent`)
}

// A version that stops must not keep the next one from its turn.
func TestStartingAgainUsesTheWaitingVersion(t *testing.T) {
	h, b, old := installed(t)
	h.deploy(siteFiles(t, "/", "two"))
	if state := update(b); state != "installed" {
		t.Fatalf("the new version is %s", state)
	}
	evaluate[bool](b, `(coilbookCrash("tried by a test"), true)`)
	b.press("crash-reload")
	b.waitFor(fmt.Sprintf(`document.documentElement.dataset.version !== %q`, old))
}
