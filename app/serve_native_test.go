//go:build !js

package main

import (
	"net"
	"net/http"
	"net/http/httptest"
	"testing"
	"testing/fstest"
)

func TestSiteHandler(t *testing.T) {
	site := fstest.MapFS{
		"index.html":           {Data: []byte("shell")},
		"app.wasm":             {Data: []byte("program")},
		"worker.js":            {Data: []byte("worker")},
		"manifest.webmanifest": {Data: []byte("manifest")},
		"icons/icon.svg":       {Data: []byte("icon")},
	}
	const page, script = "text/html,*/*", "*/*"
	for _, c := range []struct {
		prefix, method, path, accept string
		code                         int
		mime, body                   string
	}{
		{"/", "GET", "/", script, 200, "text/html; charset=utf-8", "shell"},
		{"/", "GET", "/index.html", page, 200, "text/html; charset=utf-8", "shell"},
		{"/", "GET", "/app.wasm", script, 200, "application/wasm", "program"},
		{"/", "GET", "/worker.js?v=2", script, 200, "text/javascript; charset=utf-8", "worker"},
		{"/", "GET", "/manifest.webmanifest", script, 200, "application/manifest+json", "manifest"},
		{"/", "GET", "/icons/icon.svg", script, 200, "image/svg+xml", "icon"},
		{"/", "HEAD", "/app.wasm", script, 200, "application/wasm", ""},
		{"/", "GET", "/sessions", page, 200, "text/html; charset=utf-8", "shell"},
		{"/", "GET", "/icons", page, 200, "text/html; charset=utf-8", "shell"},
		{"/", "GET", "/sessions", script, 404, "", ""},
		{"/", "GET", "/gone.png", script, 404, "", ""},
		{"/", "GET", "/../app.wasm", script, 404, "", ""},
		{"/", "POST", "/", page, 405, "", ""},
		{"/sub/", "GET", "/sub/", script, 200, "text/html; charset=utf-8", "shell"},
		{"/sub/", "GET", "/sub/x/y", page, 200, "text/html; charset=utf-8", "shell"},
		{"/sub/", "GET", "/sub", page, 302, "", ""},
		{"/sub/", "GET", "/", page, 404, "", ""},
		{"/sub/", "GET", "/app.wasm", page, 404, "", ""},
	} {
		r := httptest.NewRequest(c.method, c.path, nil)
		r.Header.Set("Accept", c.accept)
		w := httptest.NewRecorder()
		siteHandler(site, c.prefix).ServeHTTP(w, r)
		if w.Code != c.code {
			t.Errorf("%s %s: code %d, want %d", c.method, c.path, w.Code, c.code)
		}
		if c.code != http.StatusOK {
			continue
		}
		if got := w.Header().Get("Content-Type"); got != c.mime {
			t.Errorf("%s: type %q, want %q", c.path, got, c.mime)
		}
		if got := w.Body.String(); got != c.body {
			t.Errorf("%s: body %q, want %q", c.path, got, c.body)
		}
		if got := w.Header().Get("Cache-Control"); got != "no-cache" {
			t.Errorf("%s: Cache-Control %q", c.path, got)
		}
	}
}

func TestShownAddress(t *testing.T) {
	real := &net.TCPAddr{IP: net.IPv4(127, 0, 0, 1), Port: 4711}
	for asked, want := range map[string]string{
		"localhost:0": "localhost:4711", ":0": "127.0.0.1:4711", "127.0.0.1:4711": "127.0.0.1:4711",
	} {
		if got := shown(asked, real); got != want {
			t.Errorf("%q is shown as %q, want %q", asked, got, want)
		}
	}
}
