//go:build !js

package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"net"
	"net/http"
	"os"
	"path"
	"strconv"
	"strings"
	"time"

	"coilbook/web"
)

func serve(args []string, _ io.Reader, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("serve", flag.ContinueOnError)
	addr := flags.String("addr", "localhost:8080", "`address` to listen on; port 0 takes a free one")
	dir := flags.String("dir", "dist", "`directory` of the site")
	prefix := flags.String("prefix", "/", "`path` that the site was made for")
	if code, done := parse(flags, args, stderr); done {
		return code
	}
	if _, err := os.Stat(path.Join(*dir, "index.html")); err != nil {
		fmt.Fprintf(stderr, "coilbook serve: no site in %q; make one with \"coilbook site\" (%v)\n", *dir, err)
		return exitUsage
	}
	listener, err := net.Listen("tcp", *addr)
	if err != nil {
		fmt.Fprintln(stderr, "coilbook serve:", err)
		return exitFailed
	}
	fmt.Fprintf(stdout, "Coilbook is at http://%s%s (Ctrl-C stops it)\n", shown(*addr, listener.Addr()), *prefix)
	server := &http.Server{Handler: siteHandler(os.DirFS(*dir), *prefix), ReadHeaderTimeout: 10 * time.Second}
	fmt.Fprintln(stderr, "coilbook serve:", server.Serve(listener))
	return exitFailed
}

// shown is the address as it was asked for, with the port that it really is:
// browsers treat localhost as secure, and not every address it stands for.
func shown(asked string, real net.Addr) string {
	host, _, err := net.SplitHostPort(asked)
	_, port, err2 := net.SplitHostPort(real.String())
	if err != nil || err2 != nil || host == "" {
		return real.String()
	}
	return net.JoinHostPort(host, port)
}

// mimeTypes are fixed here because those of the system differ.
var mimeTypes = map[string]string{
	".css":         "text/css; charset=utf-8",
	".html":        "text/html; charset=utf-8",
	".js":          "text/javascript; charset=utf-8",
	".png":         "image/png",
	".po":          "text/plain; charset=utf-8",
	".svg":         "image/svg+xml",
	".wasm":        "application/wasm",
	".webmanifest": "application/manifest+json",
}

// siteHandler serves a site under its prefix. It never redirects a page of the
// app, because a redirected page cannot be kept for offline use.
func siteHandler(site fs.FS, prefix string) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		name, inside := strings.CutPrefix(r.URL.Path, prefix)
		switch {
		case r.Method != http.MethodGet && r.Method != http.MethodHead:
			w.Header().Set("Allow", "GET, HEAD")
			http.Error(w, "only reading is possible here", http.StatusMethodNotAllowed)
		case r.URL.Path+"/" == prefix:
			http.Redirect(w, r, prefix, http.StatusFound)
		case !inside || !serveInside(w, r, site, name):
			http.NotFound(w, r)
		}
	})
}

// serveInside answers an unknown path with the page shell, which shows what is
// to be seen there; but only to a browser that wants a page.
func serveInside(w http.ResponseWriter, r *http.Request, site fs.FS, name string) bool {
	if name == "" {
		name = "index.html"
	}
	if serveFile(w, r, site, name) {
		return true
	}
	return strings.Contains(r.Header.Get("Accept"), "text/html") && serveFile(w, r, site, "index.html")
}

func serveFile(w http.ResponseWriter, r *http.Request, site fs.FS, name string) bool {
	content, c, ok := encoded(r, site, name)
	if !ok {
		return false
	}
	h := w.Header()
	if t := mimeTypes[path.Ext(name)]; t != "" {
		h.Set("Content-Type", t)
	}
	sum := sha256.Sum256(content) // of the compressed bytes: each form has a tag of its own
	h.Set("ETag", `"`+hex.EncodeToString(sum[:12])+`"`)
	h.Set("Vary", "Accept-Encoding")
	h.Set("Cache-Control", "no-cache")
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
	h.Set("Content-Security-Policy", web.Policy+"; frame-ancestors 'none'")
	if c.name != "" {
		r.Header.Del("Range") // a part of a compressed file is of no use
		h.Set("Content-Encoding", c.name)
		h.Set("Content-Length", strconv.Itoa(len(content)))
	}
	http.ServeContent(w, r, name, time.Time{}, bytes.NewReader(content))
	return true
}
