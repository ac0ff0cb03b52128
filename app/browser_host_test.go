//go:build !js

package main

import (
	"io/fs"
	"maps"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"coilbook/slim"
	"coilbook/web"
)

// compiled is the program, built once for all tests, and its start script.
var compiled = sync.OnceValues(func() (web.Parts, error) {
	watchSources()
	program, err := compileApp()
	if err != nil {
		return web.Parts{}, err
	}
	script, err := startScript()
	return web.Parts{Wasm: program, Exec: script}, err
})

// compileApp builds the very program that "make site" builds.
func compileApp() ([]byte, error) {
	program, err := linkApp()
	if err != nil {
		return nil, err
	}
	return slim.Finish(program)
}

// linkApp builds it as the linker leaves it.
func linkApp() ([]byte, error) {
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return nil, err
	}
	dir, err := os.MkdirTemp("", "coilbook-slim-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	flags, err := slim.Prepare(strings.TrimSpace(string(root)), dir)
	if err != nil {
		return nil, err
	}
	return compile("build", append(flags, "-ldflags=-s", ".")...)
}

// watchSources lets the go command see what the result depends on; without it
// a cached result would survive changes of code that only browsers run.
func watchSources() {
	_ = filepath.WalkDir("..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() && strings.HasPrefix(d.Name(), ".") && len(d.Name()) > 2 {
			return fs.SkipDir
		}
		if filepath.Ext(path) == ".go" {
			_, err = os.Stat(path)
		}
		return err
	})
}

// compile runs the go command for the browser and gives what it made. The last
// argument is the package.
func compile(command string, args ...string) ([]byte, error) {
	dir, err := os.MkdirTemp("", "coilbook-test-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	out := filepath.Join(dir, "out.wasm")
	build := exec.Command("go", append([]string{command, "-o", out}, args...)...)
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	build.Stdout, build.Stderr = os.Stdout, os.Stderr
	if err := build.Run(); err != nil {
		return nil, err
	}
	return os.ReadFile(out)
}

func startScript() ([]byte, error) {
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return nil, err
	}
	return os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"))
}

// siteFiles is the site for a prefix. Each edition has the same program and a
// version of its own.
func siteFiles(t testing.TB, prefix, edition string) map[string][]byte {
	t.Helper()
	parts, err := compiled()
	if err != nil {
		t.Fatal("compiling the app: ", err)
	}
	return siteOf(t, prefix, parts.Wasm, append(parts.Exec[:len(parts.Exec):len(parts.Exec)], "\n// "+edition+"\n"...))
}

func siteOf(t testing.TB, prefix string, wasm, script []byte) map[string][]byte {
	t.Helper()
	files, err := web.Site(web.Parts{Prefix: prefix, Wasm: wasm, Exec: script})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func without(files map[string][]byte, name string) map[string][]byte {
	files = maps.Clone(files)
	delete(files, name)
	return files
}

// host serves a site on one port, can be unplugged, and can get a new edition.
type host struct {
	t       testing.TB
	prefix  string
	address string
	server  *http.Server

	mu       sync.Mutex
	handler  http.Handler
	requests []string
}

func startSite(t testing.TB, prefix string, files map[string][]byte) *host {
	t.Helper()
	h := &host{t: t, prefix: prefix, address: "127.0.0.1:0"}
	h.deploy(files)
	h.plug()
	t.Cleanup(h.unplug)
	return h
}

// deploy replaces the files of the site.
func (h *host) deploy(files map[string][]byte) {
	site := fstest.MapFS{}
	for name, content := range files {
		site[name] = &fstest.MapFile{Data: content}
	}
	h.mu.Lock()
	defer h.mu.Unlock()
	h.handler = siteHandler(site, h.prefix)
}

// plug starts serving, on the same port as before.
func (h *host) plug() {
	h.t.Helper()
	listener, err := net.Listen("tcp", h.address)
	if err != nil {
		h.t.Fatal(err)
	}
	h.address = listener.Addr().String()
	h.server = &http.Server{Handler: h}
	go func() { _ = h.server.Serve(listener) }()
}

// unplug stops serving and cuts every connection.
func (h *host) unplug() { _ = h.server.Close() }

// ServeHTTP implements http.Handler.
func (h *host) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	h.mu.Lock()
	handler := h.handler
	h.requests = append(h.requests, r.URL.Path)
	h.mu.Unlock()
	handler.ServeHTTP(w, r)
}

// asked counts the requests for a path.
func (h *host) asked(path string) (n int) {
	h.mu.Lock()
	defer h.mu.Unlock()
	for _, r := range h.requests {
		if r == path {
			n++
		}
	}
	return n
}

// url is the address of a path of the app, such as "sessions".
func (h *host) url(path string) string { return "http://" + h.address + h.prefix + path }
