//go:build !js

package main

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func command3(t *testing.T, args ...string) (code int, stdout, stderr string) {
	t.Helper()
	var out, errs bytes.Buffer
	code = run(args, strings.NewReader(""), &out, &errs)
	return code, out.String(), errs.String()
}

// inputs writes a stand-in for the program and its start script.
func inputs(t *testing.T) (wasm, exec string) {
	t.Helper()
	dir := t.TempDir()
	wasm, exec = filepath.Join(dir, "app.wasm"), filepath.Join(dir, "wasm_exec.js")
	for _, path := range []string{wasm, exec} {
		if err := os.WriteFile(path, []byte("content of "+filepath.Base(path)), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return wasm, exec
}

func TestSiteIsTheSameTwice(t *testing.T) {
	wasm, exec := inputs(t)
	var sites []map[string]string
	for range 2 {
		out := filepath.Join(t.TempDir(), "dist")
		if code, _, stderr := command3(t, "site", "-wasm", wasm, "-exec", exec, "-out", out, "-prefix", "/sub/"); code != 0 {
			t.Fatal(stderr)
		}
		sites = append(sites, readAll(t, out))
	}
	for name, content := range sites[0] {
		if sites[1][name] != content {
			t.Errorf("%s differs", name)
		}
	}
	for _, name := range []string{"index.html", "404.html", "app.wasm", "boot.js", "worker.js", "manifest.webmanifest",
		"style.css", "wasm_exec.js", "icons/icon.svg", "icons/icon-maskable-512.png", "icons/apple-touch-icon.png"} {
		if sites[0][name] == "" || len(sites[0]) != len(sites[1]) {
			t.Errorf("%s is missing", name)
		}
	}
}

func readAll(t *testing.T, dir string) map[string]string {
	t.Helper()
	files := map[string]string{}
	err := fs.WalkDir(os.DirFS(dir), ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		content, err := os.ReadFile(filepath.Join(dir, path))
		files[path] = string(content)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func TestExitCodes(t *testing.T) {
	wasm, exec := inputs(t)
	out := t.TempDir()
	for _, c := range []struct {
		args string
		want int
		says string
	}{
		{"", 2, "usage"},
		{"help", 0, ""},
		{"weld", 2, `no command "weld"`},
		{"site -h", 0, "-prefix"},
		{"site", 2, "needed"},
		{"site -wasm x", 2, "needed"},
		{"site -colour red", 2, "not defined"},
		{"site extra", 2, "unexpected"},
		{"site -wasm missing -exec " + exec + " -out " + out, 1, "reading the program"},
		{"site -wasm " + wasm + " -exec missing -out " + out, 1, "start script"},
		{"site -wasm " + wasm + " -exec " + exec + " -out " + wasm, 1, "of the site"},
		{"site -wasm " + wasm + " -exec " + exec + " -out " + out + " -prefix sub", 2, "prefix"},
		{"site -wasm " + wasm + " -exec " + exec + " -out " + out, 0, ""},
		{"serve -dir missing", 2, "no site"},
		{"serve -dir " + out + " -addr nowhere:x", 1, "serve:"},
	} {
		code, _, stderr := command3(t, strings.Fields(c.args)...)
		if code != c.want || !strings.Contains(stderr, c.says) {
			t.Errorf("%q: exit code %d, want %d with %q; stderr: %s", c.args, code, c.want, c.says, stderr)
		}
	}
}
