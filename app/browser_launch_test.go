//go:build !js

package main

import (
	"net"
	"net/http"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/chromedp/chromedp"
)

// browserPath comes from the same script that the Makefile asks.
var browserPath = sync.OnceValues(func() (string, error) {
	out, err := exec.Command("sh", filepath.Join("..", ".ci", "find-browser")).Output()
	return strings.TrimSpace(string(out)), err
})

func findBrowser(t testing.TB) string {
	t.Helper()
	path, err := browserPath()
	if err != nil {
		t.Fatal("no Chrome or Chromium found; set CHROME to its path, or run \"make test\", which can install one")
	}
	return path
}

func browserOptions(path, proxy string) []chromedp.ExecAllocatorOption {
	options := slices.Clone(chromedp.DefaultExecAllocatorOptions[:])
	return append(options,
		chromedp.ExecPath(path),
		chromedp.NoSandbox, // containers and the root user have none; only our own pages are opened
		chromedp.DisableGPU,
		chromedp.Flag("disable-quic", true),
		chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-features", "Translate,OptimizationHints,MediaRouter,NetworkTimeServiceQuerying,AutofillServerCommunication"),
		chromedp.Flag("no-pings", true),
		chromedp.Flag("lang", "en-GB"),
		chromedp.ProxyServer(proxy), // this machine's own addresses bypass it
		chromedp.WSURLReadTimeout(patience),
	)
}

// chatter tells whether a request may be the browser's own, which it makes
// whatever it shows. What the page itself asks for is seen in another way.
func chatter(host string) bool {
	name, _, _ := strings.Cut(host, ":")
	return slices.ContainsFunc([]string{".google.com", ".googleapis.com", ".gvt1.com", ".mozilla.com", ".mozilla.net", ".mozilla.org", ".firefox.com"}, func(suffix string) bool {
		return strings.HasSuffix(name, suffix)
	})
}

// startProxy takes every request that does not stay on this machine, those of
// workers included, and refuses it.
func (b *browser) startProxy() string {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		b.t.Fatal(err)
	}
	server := &http.Server{Handler: http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if !chatter(r.Host) {
			b.mu.Lock()
			b.foreign = append(b.foreign, r.Method+" "+r.Host+r.URL.Path)
			b.mu.Unlock()
		}
		w.WriteHeader(http.StatusBadGateway)
	})}
	go func() { _ = server.Serve(listener) }()
	b.t.Cleanup(func() { _ = server.Close() })
	return "http://" + listener.Addr().String()
}
