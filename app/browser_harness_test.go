//go:build !js

package main

import (
	"context"
	"encoding/json"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/cdproto/target"
	"github.com/chromedp/cdproto/tracing"
	"github.com/chromedp/chromedp"
)

// patience bounds every wait for the browser; it is generous because slow
// machines share it with everything else.
const patience = 30 * time.Second

// browser is one browser with one page. The test fails when
// the page throws an exception that nothing catches, or asks another host for
// anything.
type browser struct {
	t      testing.TB
	ctx    context.Context
	driver driver
	real   bool // input is the browser's own, not a script's

	mu         sync.Mutex
	console    []string // what the page wrote
	exceptions []string
	foreign    []string // requests to other hosts
	events     []event  // of the trace under way
	traceEnd   chan struct{}
}

// newBrowser gives a browser that shows a small phone's screen and was never used: its
// profile is kept in memory, in a process that the tests share.
func newBrowser(t testing.TB) *browser {
	t.Helper()
	b := &browser{t: t, driver: chromium{}}
	proxy := b.startProxy()
	return b.begin(chromedp.NewContext(commonProcess(t), chromedp.WithListener(b.hear),
		chromedp.WithNewBrowserContext(func(p *target.CreateBrowserContextParams) { p.ProxyServer = proxy })))
}

// newBrowserIn starts one in a process of its own, on a profile in a folder, which may
// have been used before.
func newBrowserIn(t testing.TB, profile string) *browser {
	t.Helper()
	b := &browser{t: t, driver: chromium{}}
	process, stop := chromiumIn(t, profile, b.startProxy())
	t.Cleanup(stop)
	return b.begin(chromedp.NewContext(process, chromedp.WithListener(b.hear)))
}

func (b *browser) begin(ctx context.Context, cancel context.CancelFunc) *browser {
	b.t.Helper()
	b.ctx = ctx
	b.t.Cleanup(func() {
		_ = chromedp.Cancel(ctx)
		cancel()
		b.judge()
	})
	if err := chromedp.Do(ctx); err != nil {
		b.t.Fatal("starting the browser: ", err)
	}
	b.size(360, 640)
	return b
}

// hear takes what Chromium tells of the page.
func (b *browser) hear(event any) {
	switch e := event.(type) {
	case *runtime.EventConsoleAPICalled:
		var words []string
		for _, a := range e.Args {
			words = append(words, consoleText(a))
		}
		b.wrote(strings.Join(words, " "))
	case *network.EventRequestWillBeSent:
		b.requested(e.Request.URL)
	case *runtime.EventExceptionThrown:
		text := e.ExceptionDetails.Text
		if e.ExceptionDetails.Exception != nil {
			text += " " + e.ExceptionDetails.Exception.Description
		}
		b.threw(text)
	case *tracing.EventDataCollected:
		b.hearTrace(e)
	case *tracing.EventTracingComplete:
		close(b.traceEnd)
	}
}

func (b *browser) wrote(text string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.console = append(b.console, text)
}

func (b *browser) threw(text string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.exceptions = append(b.exceptions, text)
}

func (b *browser) requested(address string) {
	u, err := url.Parse(address)
	if err != nil || !strings.HasPrefix(u.Scheme, "http") || u.Hostname() == "127.0.0.1" {
		return
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	b.foreign = append(b.foreign, address)
}

func consoleText(a *runtime.RemoteObject) string {
	var text string
	if json.Unmarshal(a.Value, &text) != nil {
		text = string(a.Value) + a.Description
	}
	return text
}

// judge is the verdict on what the page did during the whole test.
func (b *browser) judge() {
	b.mu.Lock()
	defer b.mu.Unlock()
	for _, e := range b.exceptions {
		b.t.Error("the page threw: ", e)
	}
	for _, request := range b.foreign {
		b.t.Error("a request to another host: ", request)
	}
	if b.t.Failed() {
		b.t.Log("console:\n" + strings.Join(b.console, "\n"))
	}
}

// kill ends the browser's process at once, as a phone does that needs memory.
func (b *browser) kill() {
	b.t.Helper()
	process := chromedp.FromContext(b.ctx).Browser.Process()
	if err := process.Kill(); err != nil {
		b.t.Fatal("killing the browser: ", err)
	}
	_, _ = process.Wait() // the allocator may have waited already
}

// expectException takes the exceptions with that text off the list.
func (b *browser) expectException(text string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	n := len(b.exceptions)
	b.exceptions = slices.DeleteFunc(b.exceptions, func(e string) bool { return strings.Contains(e, text) })
	if len(b.exceptions) == n {
		b.t.Errorf("no exception with %q", text)
	}
}

// written is what the page wrote to its console so far.
func (b *browser) written() string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return strings.Join(b.console, "\n")
}

// size sets the screen, in CSS pixels.
func (b *browser) size(width, height int) {
	b.t.Helper()
	b.step("setting the size", func(ctx context.Context) error { return b.driver.size(ctx, width, height) })
}

// load opens a page and returns once its own files are loaded.
func (b *browser) load(url string) {
	b.t.Helper()
	b.step("opening "+url, func(ctx context.Context) error { return b.driver.load(ctx, url) })
}

// open opens a page of the app and returns once the program runs.
func (b *browser) open(url string) {
	b.t.Helper()
	b.load(url)
	b.waitApp()
}

// reload does what the user's reload does.
func (b *browser) reload() {
	b.t.Helper()
	b.step("loading again", b.driver.reload)
	b.waitApp()
}

// waitApp waits until the program has replaced the first paint.
func (b *browser) waitApp() {
	b.t.Helper()
	b.waitFor(`typeof goappNav === "function" && !document.getElementById("first-paint") && !!document.querySelector("h1")`)
}

// do runs steps that only Chromium knows.
func (b *browser) do(steps ...chromedp.Action[chromedp.Void]) {
	b.t.Helper()
	ctx, cancel := context.WithTimeout(b.ctx, patience)
	defer cancel()
	if err := chromedp.Do(ctx, steps...); err != nil {
		b.t.Fatal(err)
	}
}

// waitFor waits until a JavaScript expression is true. Errors count as not yet:
// a page that is being replaced has no values.
func (b *browser) waitFor(expression string) {
	b.t.Helper()
	ctx, cancel := context.WithTimeout(b.ctx, patience)
	defer cancel()
	for {
		text, err := b.driver.evaluate(ctx, promised(expression))
		switch {
		case text == "true" && err == nil:
			return
		case ctx.Err() != nil:
			b.t.Fatalf("waited in vain for %s (%v) at %s", expression, err, b.seen())
		}
		time.Sleep(20 * time.Millisecond)
	}
}

// promised makes a promise of the text of an expression's value.
func promised(expression string) string {
	return "(async () => (" + expression + "))().then(v => JSON.stringify(v === undefined ? null : v))"
}

// seen is where the page is and how its text begins, to find out what went
// wrong.
func (b *browser) seen() string {
	ctx, cancel := context.WithTimeout(b.ctx, patience)
	defer cancel()
	text, err := b.driver.evaluate(ctx, promised(`location.href + "\n" + document.body.innerText.slice(0, 400)`))
	if err != nil {
		return err.Error()
	}
	return text
}

// evaluate gives the value of a JavaScript expression, or what its promise
// resolves to.
func evaluate[T any](b *browser, expression string) (v T) {
	b.t.Helper()
	ctx, cancel := context.WithTimeout(b.ctx, patience)
	defer cancel()
	text, err := b.driver.evaluate(ctx, promised(expression))
	if err == nil {
		err = json.Unmarshal([]byte(text), &v)
	}
	if err != nil {
		b.t.Fatalf("%s: %v", expression, err)
	}
	return v
}

// call sends a command of Chromium's protocol to the page.
func call[P, R any](b *browser, command cdp.Command[P, R], params P) R {
	b.t.Helper()
	ctx, cancel := context.WithTimeout(b.ctx, patience)
	defer cancel()
	r, err := chromedp.Call(ctx, command, params)
	if err != nil {
		b.t.Fatalf("%s: %v", command.Method, err)
	}
	return r
}

// heading is the text of the page's first heading.
func (b *browser) heading() string {
	b.t.Helper()
	return evaluate[string](b, `document.querySelector("h1").textContent`)
}

// screenshot writes what the screen shows to a PNG file.
func (b *browser) screenshot(path string) {
	b.t.Helper()
	ctx, cancel := context.WithTimeout(b.ctx, patience)
	defer cancel()
	png, err := b.driver.png(ctx)
	if err == nil {
		err = os.MkdirAll(filepath.Dir(path), 0o755)
	}
	if err == nil {
		err = os.WriteFile(path, png, 0o644)
	}
	if err != nil {
		b.t.Fatal(fmt.Errorf("taking a screenshot: %w", err))
	}
}
