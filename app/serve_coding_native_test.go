//go:build !js

package main

import (
	"bytes"
	"compress/gzip"
	"io"
	"net/http"
	"net/http/httptest"
	"strconv"
	"testing"
	"testing/fstest"

	"github.com/andybalholm/brotli"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTheBestCodingIsSent(t *testing.T) {
	site := fstest.MapFS{
		"index.html": {Data: []byte("plain page")}, "index.html.br": {Data: []byte("br")}, "index.html.gz": {Data: []byte("gz")},
		"icon.png": {Data: []byte("picture")}, "boot.js": {Data: []byte("plain script")}, "boot.js.gz": {Data: []byte("gz script")},
	}
	tags := map[string]bool{}
	for _, c := range []struct{ path, accept, coding, body string }{
		{"/", "", "", "plain page"},
		{"/", "gzip, deflate, br, zstd", "br", "br"},
		{"/", "gzip", "gzip", "gz"},
		{"/", "x-gzip", "gzip", "gz"},
		{"/", "br;q=0.2, gzip;q=0.8", "gzip", "gz"},
		{"/", "br;q=0.8, gzip;q=0.8", "br", "br"},
		{"/", "br;q=0, gzip;q=0", "", "plain page"},
		{"/", "br;q=x, *;q=0.5", "gzip", "gz"},
		{"/", "BR ; Q=1", "br", "br"},
		{"/", "*", "br", "br"},
		{"/", "identity", "", "plain page"},
		{"/boot.js", "br, gzip;q=0.1", "gzip", "gz script"},
		{"/icon.png", "br, gzip", "", "picture"},
	} {
		w := request(site, http.MethodGet, c.path, c.accept, "")
		name := c.path + " " + c.accept
		assert.Equal(t, 200, w.Code, name)
		assert.Equal(t, c.coding, w.Header().Get("Content-Encoding"), name)
		assert.Equal(t, c.body, w.Body.String(), name)
		assert.Equal(t, strconv.Itoa(len(c.body)), w.Header().Get("Content-Length"), name)
		assert.Equal(t, "Accept-Encoding", w.Header().Get("Vary"), name)
		assert.Contains(t, w.Header().Get("Content-Security-Policy"), "default-src 'none'", name)
		tag := w.Header().Get("ETag")
		tags[tag] = true

		again := request(site, http.MethodGet, c.path, c.accept, tag)
		assert.Equal(t, http.StatusNotModified, again.Code, name)
		assert.Empty(t, again.Body.String(), name)
		head := request(site, http.MethodHead, c.path, c.accept, "")
		assert.Empty(t, head.Body.String(), name)
		assert.Equal(t, w.Header(), head.Header(), name)
	}
	assert.Len(t, tags, 5, "each form of a file has a tag of its own")
}

func request(site fstest.MapFS, method, path, accept, tag string) *httptest.ResponseRecorder {
	r := httptest.NewRequest(method, path, nil)
	r.Header.Set("Accept", "text/html")
	r.Header.Set("Range", "bytes=0-0")
	if accept == "" || accept == "identity" || path == "/icon.png" || accept == "br;q=0, gzip;q=0" {
		r.Header.Del("Range")
	}
	r.Header.Set("Accept-Encoding", accept)
	if tag != "" {
		r.Header.Set("If-None-Match", tag)
	}
	w := httptest.NewRecorder()
	siteHandler(site, "/").ServeHTTP(w, r)
	return w
}

// What is packed unpacks to what it was, once from the work and once from the
// files that the work left.
func TestPackedFilesUnpack(t *testing.T) {
	cache := t.TempDir()
	content := make([]byte, 5000)
	copy(content, "beginning")
	for range 2 {
		small, err := packed(map[string][]byte{"a.js": content, "b.png": content, "c.css": []byte("x")}, 11, cache)
		require.NoError(t, err)
		require.Len(t, small, 2, "pictures, and files that would grow, stay as they are")
		for _, c := range codings {
			assert.Equal(t, content, unpacked(t, c.name, small["a.js"+c.suffix]), c.name)
		}
	}
}

func unpacked(t *testing.T, coding string, small []byte) []byte {
	t.Helper()
	var r io.Reader = brotli.NewReader(bytes.NewReader(small))
	if coding == "gzip" {
		var err error
		r, err = gzip.NewReader(bytes.NewReader(small))
		require.NoError(t, err)
	}
	plain, err := io.ReadAll(r)
	require.NoError(t, err)
	return plain
}

func TestTheBudgetIsHeld(t *testing.T) {
	files := map[string][]byte{"app.wasm": make([]byte, 9_000_000), "icons/icon.png": make([]byte, 50_000)}
	for _, c := range []struct {
		program int
		want    error
	}{{programBudget, nil}, {programBudget + 1, errBudget}} {
		var out bytes.Buffer
		err := weigh(&out, files, map[string][]byte{"app.wasm.br": make([]byte, c.program)})
		assert.ErrorIs(t, err, c.want)
		assert.Contains(t, out.String(), strconv.Itoa(c.program)+"  app.wasm")
	}
	files["icons/more.png"] = make([]byte, 60_000)
	assert.ErrorIs(t, weigh(io.Discard, files, map[string][]byte{"app.wasm.br": make([]byte, programBudget)}), errBudget)
}
