//go:build !js

package main

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// driver is what a walk needs of a browser that shows one page. Positions and
// sizes are in CSS pixels.
type driver interface {
	// load opens an address and returns once the page's own files are loaded.
	load(ctx context.Context, url string) error
	reload(ctx context.Context) error
	// evaluate gives the string that a JavaScript promise resolves to.
	evaluate(ctx context.Context, promise string) (string, error)
	// tap presses and releases at a point of the screen, by the browser's own
	// input and not by a script.
	tap(ctx context.Context, x, y int) error
	// keys types text on a keyboard, wherever the focus is.
	keys(ctx context.Context, text string) error
	size(ctx context.Context, width, height int) error
	png(ctx context.Context) ([]byte, error)
	// end closes page and browser.
	end()
}

// engine is one way to run the pages of the app.
type engine struct {
	name  string // as .ci/find-browser and .ci/need know it
	start func(b *browser, path string) (driver, error)
}

// others are the engines beside Chromium.
var others = []engine{{"firefox", startFirefox}, {"webkit", startWebKit}}

// everyBrowser runs a walk in each engine, always with a fresh profile and the
// browser's own input. An engine that is not installed is left out with a
// sentence; where CI is true that is a failure.
func everyBrowser(t *testing.T, walk func(t *testing.T, b *browser)) {
	t.Run("chromium", func(t *testing.T) {
		b := newBrowser(t)
		b.real = true
		b.size(phoneWidth, phoneHeight)
		walk(t, b)
	})
	otherBrowsers(t, walk)
}

// otherBrowsers runs a walk in each engine but Chromium.
func otherBrowsers(t *testing.T, walk func(t *testing.T, b *browser)) {
	for _, e := range others {
		t.Run(e.name, func(t *testing.T) { walk(t, e.browser(t)) })
	}
}

// A phone of the usual size.
const phoneWidth, phoneHeight = 390, 844

// starts is how often a browser may fail to come up before the test does.
const starts = 2

func (e engine) browser(t *testing.T) *browser {
	t.Helper()
	path := e.find(t)
	ctx, cancel := context.WithCancel(context.Background())
	b := &browser{t: t, ctx: ctx, real: true}
	t.Cleanup(cancel)
	t.Cleanup(b.judge)
	var err error
	for range starts {
		if b.driver, err = e.start(b, path); err == nil {
			t.Cleanup(b.driver.end)
			b.size(phoneWidth, phoneHeight)
			return b
		}
		t.Logf("starting %s: %v", e.name, err)
	}
	t.Fatalf("%s did not start %d times; the last time: %v", e.name, starts, err)
	return nil
}

// find gives the path of the engine's program.
func (e engine) find(t *testing.T) string {
	t.Helper()
	out, err := exec.Command("sh", filepath.Join("..", ".ci", "find-browser"), e.name).Output()
	if err == nil {
		return strings.TrimSpace(string(out))
	}
	text := fmt.Sprintf("not tried in %s, which is not installed; \".ci/need %s\" installs it where it may", e.name, e.name)
	if os.Getenv("CI") == "true" {
		t.Fatal(text)
	}
	t.Skip(text)
	return ""
}

// click presses an element as a finger does: it is brought into view, and
// nothing may lie over its middle.
func (b *browser) click(selector string) {
	b.t.Helper()
	if !b.real {
		evaluate[bool](b, fmt.Sprintf(`(document.querySelector(%q).click(), true)`, selector))
		return
	}
	type spot struct {
		X, Y float64
		Over string // what lies over it
	}
	var at spot
	for deadline := time.Now().Add(patience); ; time.Sleep(50 * time.Millisecond) {
		at = evaluate[spot](b, fmt.Sprintf(spotOf, selector))
		if at.Over == "" {
			break
		}
		if time.Now().After(deadline) {
			b.t.Fatalf("%s cannot be pressed at (%.0f, %.0f): there is %s", selector, at.X, at.Y, at.Over)
		}
	}
	b.step("pressing "+selector, func(ctx context.Context) error {
		return b.driver.tap(ctx, int(at.X), int(at.Y))
	})
}

const spotOf = `(() => {
	const e = document.querySelector(%q);
	if (!e) return { x: 0, y: 0, over: "no such element" };
	const inside = r => r.top >= 0 && r.bottom <= innerHeight;
	if (!inside(e.getBoundingClientRect())) e.scrollIntoView({ block: "center", behavior: "instant" });
	const r = e.getBoundingClientRect(), x = r.left + r.width / 2, y = r.top + r.height / 2;
	const there = document.elementFromPoint(x, y);
	return { x, y, over: there && e.contains(there) ? "" : there ? there.outerHTML.slice(0, 200) : "nothing" } })()`

// typeKeys types keys as a hardware keyboard does, wherever the focus is.
func (b *browser) typeKeys(text string) {
	b.t.Helper()
	b.step("typing", func(ctx context.Context) error { return b.driver.keys(ctx, text) })
}

// step bounds one thing that the browser is asked to do.
func (b *browser) step(what string, do func(ctx context.Context) error) {
	b.t.Helper()
	ctx, cancel := context.WithTimeout(b.ctx, patience)
	defer cancel()
	if err := do(ctx); err != nil {
		b.t.Fatalf("%s: %v", what, err)
	}
}
