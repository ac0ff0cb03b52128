// Package web is everything of the site that is not the program itself: the
// page shell, the script that starts the program, the offline worker, the
// manifest, the style sheet and the icons. Site puts them together; it reads
// and writes no files, and gives the same bytes for the same input.
package web

import (
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"coilbook/app/tongue"
)

//go:generate go run ./icons/generate.go -dir icons
//go:generate go run ./start/generate.go -out start.html

//go:embed shell.html start.html start.js boot.js loader.js theme.js language.js install.js worker.js manifest.webmanifest *.css icons/*.png icons/*.svg
var source embed.FS

// webmanifest is how the names of manifests end: one for each language besides the source's,
// which language.js asks for.
const webmanifest = ".webmanifest"

// manifestWords are what the manifest says, and the same in other languages.
var manifestWords = map[string][]string{"es": {
	`"lang": "en"`, `"lang": "es"`,
	"Finds out why a small machine stopped charging or sparking, with a phone and a cheap multimeter.",
	"Averigua por qué una máquina pequeña dejó de cargar o de dar chispa, con un teléfono y un multímetro barato.",
	"Stator on the bench", "Estátor en el banco",
	"Saved sessions", "Sesiones guardadas",
}}

// Parts are what a site is made of besides the files of this package.
type Parts struct {
	Prefix string // path the site is hosted under, such as "/" or "/sub/"
	Wasm   []byte // the program
	Exec   []byte // the toolchain's script that runs it
}

// Policy is the content security policy of every page: what may be loaded comes
// from the page's own host, no script and no style stands inside a page, and
// nothing else is allowed (Content Security Policy Level 3).
const Policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self'; " +
	"connect-src 'self'; manifest-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'"

// Errors of Site.
var (
	ErrPrefix = errors.New(`prefix must be "/" or like "/sub/": letters, digits, ".", "_", "-" between slashes`)
	ErrParts  = errors.New("the program or its start script is empty")
)

var prefixes = regexp.MustCompile(`^/([A-Za-z0-9._-]*[A-Za-z0-9_-][A-Za-z0-9._-]*/)*$`)

// Site gives the files of the site by their names.
func Site(p Parts) (map[string][]byte, error) {
	if !prefixes.MatchString(p.Prefix) {
		return nil, fmt.Errorf("%q: %w", p.Prefix, ErrPrefix)
	}
	if len(p.Wasm) == 0 || len(p.Exec) == 0 {
		return nil, ErrParts
	}
	files, err := embedded()
	if err != nil {
		return nil, fmt.Errorf("reading the embedded files: %w", err)
	}
	files["app.wasm"], files["wasm_exec.js"] = p.Wasm, p.Exec
	files["shell.html"] = bytes.Replace(files["shell.html"], []byte("{{start}}"), files["start.html"], 1)
	delete(files, "start.html")
	for name, text := range tongue.Catalogues() {
		files[name] = []byte(text)
	}
	for language, words := range manifestWords {
		files[language+webmanifest] = []byte(strings.NewReplacer(words...).Replace(string(files["manifest"+webmanifest])))
	}
	fill := strings.NewReplacer(
		"{{prefix}}", p.Prefix,
		"{{policy}}", Policy,
		"{{version}}", version(p.Prefix, files),
		"{{wasm-size}}", strconv.Itoa(len(p.Wasm)),
		"{{files}}", list(p.Prefix, files),
	)
	for name, text := range files {
		if name == "shell.html" || name == "worker.js" || strings.HasSuffix(name, webmanifest) {
			files[name] = []byte(fill.Replace(string(text)))
		}
	}
	// Static hosts answer unknown paths with 404.html: the app shows them all.
	files["index.html"], files["404.html"] = files["shell.html"], files["shell.html"]
	delete(files, "shell.html")
	return files, nil
}

func embedded() (map[string][]byte, error) {
	files := map[string][]byte{}
	err := fs.WalkDir(source, ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		files[path], err = source.ReadFile(path)
		return err
	})
	return files, err
}

// version changes with every byte of the site and with nothing else.
func version(prefix string, files map[string][]byte) string {
	sum := sha256.New()
	fmt.Fprintf(sum, "%s\n", prefix)
	for _, name := range slices.Sorted(maps.Keys(files)) {
		fmt.Fprintf(sum, "%s %d\n", name, len(files[name]))
		sum.Write(files[name])
	}
	return hex.EncodeToString(sum.Sum(nil))[:16]
}

// list names what the worker keeps. The entry page goes by the path it is
// asked for; the worker itself is the browser's to keep.
func list(prefix string, files map[string][]byte) string {
	paths := []string{prefix}
	for _, name := range slices.Sorted(maps.Keys(files)) {
		if name != "shell.html" && name != "worker.js" {
			paths = append(paths, prefix+name)
		}
	}
	text, err := json.Marshal(paths)
	if err != nil {
		panic(err) // strings always encode
	}
	return string(text)
}
