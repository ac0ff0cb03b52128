//go:build !js

package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// floor gives the packages of ours that a package may import, by prefix.
var floor = map[string][]string{
	"engine/quantity":    {},
	"engine/uncertainty": {},
	"engine/meter":       {"engine/quantity", "engine/uncertainty"},
	"engine/winding":     {"engine/quantity", "engine/uncertainty"},
	"engine/spec":        {"engine/quantity", "engine/uncertainty", "engine/meter", "engine/winding"},
	"engine/check":       {"engine/quantity", "engine/meter", "engine/spec"},
	"engine/circuit":     {"engine/quantity"},
	"engine/transient":   {},
	"engine/machine":     {"engine/quantity", "engine/meter", "engine/circuit", "engine/spec", "engine/check"},
	"engine/rig":         {"engine/quantity", "engine/meter", "engine/transient", "engine/check", "engine/machine"},
	"engine/practice":    {"engine/"},
	"engine/fault":       {"engine/check", "engine/machine"},
	"engine/diagnose":    {"engine/quantity", "engine/uncertainty", "engine/meter", "engine/spec", "engine/check", "engine/fault", "engine/machine"},
	"engine/session":     {"engine/check", "engine/meter", "engine/spec"},
	"engine/assess":      {"engine/"},
	"specs":              {"engine/spec"},
	"web":                {"app/tongue"}, // a catalogue is a file of the site
	"slim":               {},
	"slim/net/http":      {}, "slim/net/netip": {}, "slim/regexp": {}, "slim/internal/godebug": {},
	"slim/crypto/aes": {}, "slim/crypto/cipher": {}, "slim/crypto/md5": {}, "slim/crypto/rand": {}, "slim/crypto/sha1": {},
	"app/tongue":            {},
	"app/tongue/tonguetest": {},
	"app/words":             {"engine/", "app/drawing", "app/tongue"},
	"app/drawing":           {"engine/check", "engine/meter", "engine/spec"},
	"app/store":             {"engine/session"},
	"app/store/storetest":   {"engine/", "app/store"},
	"app/device":            {},
	"app/desk":              {"engine/", "app/store"},
	"app/part":              {"engine/", "app/drawing", "app/words", "app/device"},
	"app/screen":            {"engine/", "app/desk", "app/device", "app/drawing", "app/part", "app/store", "app/words", "specs"},
	"app":                   {"engine/", "app/", "specs", "web", "slim"},
}

// touching is where a package of the outside may be imported from, and no
// other place.
var touching = map[string][]string{
	"syscall/js":    {"app/store", "app/device", "app/tongue", "slim/crypto/rand"},
	"net/http":      {"app"},
	"html/template": {},
	"math/rand":     {},
	"math/rand/v2":  {"engine/machine"}, // seeded streams only
	"github.com/maxence-charriere/go-app/v10/pkg/app": {"app/part", "app/screen", "app"},
}

func TestNoFloorIsBroken(t *testing.T) {
	seen := map[string]bool{}
	err := filepath.WalkDir("..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") || strings.Contains(path, "generate.go") {
			return err
		}
		room := filepath.ToSlash(filepath.Dir(strings.TrimPrefix(path, ".."+string(filepath.Separator))))
		seen[room] = true
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, i := range file.Imports {
			name, _ := strconv.Unquote(i.Path.Value)
			if why := broken(room, name); why != "" {
				t.Errorf("%s imports %s: %s", path, name, why)
			}
			if name == "net/http" && !strings.HasSuffix(path, "_native.go") {
				t.Errorf("%s would bring %s into the browser build", path, name)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	for room := range floor {
		if !seen[room] {
			t.Errorf("%s is on the plan and not in the house", room)
		}
	}
}

func broken(room, name string) string {
	if places, ok := touching[name]; ok && !within(room, places) {
		return "only for " + strings.Join(places, ", ")
	}
	own, ok := strings.CutPrefix(name, "coilbook/")
	if !ok {
		return ""
	}
	allowed, known := floor[room]
	if !known {
		return "a room that is not on the plan"
	}
	for _, a := range allowed {
		if own == a || strings.HasSuffix(a, "/") && strings.HasPrefix(own, a) {
			return ""
		}
	}
	return "not a floor below it"
}

func within(room string, places []string) bool {
	for _, p := range places {
		if room == p {
			return true
		}
	}
	return false
}

func TestTheFloorTestCanFail(t *testing.T) {
	for _, c := range [][2]string{
		{"engine/meter", "coilbook/app/words"}, {"app/screen", "syscall/js"}, {"app/store", "coilbook/app/screen"},
		{"engine/assess", "net/http"}, {"engine/new", "coilbook/engine/quantity"},
	} {
		if broken(c[0], c[1]) == "" {
			t.Errorf("%s may import %s", c[0], c[1])
		}
	}
}
