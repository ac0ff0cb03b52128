package web

import (
	"encoding/json"
	"errors"
	"path"
	"regexp"
	"strings"
	"testing"

	"coilbook/app/tongue/tonguetest"
)

func build(t *testing.T, prefix, wasm string) map[string]string {
	t.Helper()
	site, err := Site(Parts{Prefix: prefix, Wasm: []byte(wasm), Exec: []byte("script")})
	if err != nil {
		t.Fatal(err)
	}
	files := map[string]string{}
	for name, content := range site {
		files[name] = string(content)
	}
	return files
}

func TestNoPlaceholderIsLeft(t *testing.T) {
	for name, content := range build(t, "/sub/", "program") {
		if path.Ext(name) != ".png" && strings.Contains(content, "{{") {
			t.Errorf("%s still has a placeholder", name)
		}
	}
}

// Every address that the shell, the manifest and the worker name is a file of
// the site or a path of the app below the prefix.
func TestAddressesLeadSomewhere(t *testing.T) {
	files := build(t, "/sub/", "program")
	screens := map[string]bool{"": true, "sessions": true, "meters": true, "about": true, "practice": true, "phone": true}
	for _, aim := range []string{"no-charge", "flat-after-standing", "overcharges", "no-spark", "weak-spark", "cuts-out-hot", "bench"} {
		screens["setup/"+aim] = true
	}
	for _, name := range []string{"index.html", "worker.js", "manifest.webmanifest", "es.webmanifest"} {
		found := regexp.MustCompile(`"(/[^"/][^"]*)"`).FindAllStringSubmatch(files[name], -1)
		if len(found) == 0 {
			t.Errorf("%s names nothing", name)
		}
		for _, match := range found {
			rest, inside := strings.CutPrefix(match[1], "/sub/")
			if _, ok := files[rest]; !inside || !ok && !screens[rest] {
				t.Errorf("%s leads to %s, which is not there", name, match[1])
			}
		}
	}
}

func TestVersionFollowsTheContent(t *testing.T) {
	version := func(files map[string]string) string {
		return regexp.MustCompile(`VERSION = "([0-9a-f]{16})"`).FindStringSubmatch(files["worker.js"])[1]
	}
	one := version(build(t, "/", "program"))
	if again := version(build(t, "/", "program")); again != one {
		t.Error("the same content has two versions")
	}
	if other := version(build(t, "/", "Program")); other == one {
		t.Error("another program has the same version")
	}
	if other := version(build(t, "/sub/", "program")); other == one {
		t.Error("another prefix has the same version")
	}
	if !strings.Contains(build(t, "/", "program")["index.html"], one) {
		t.Error("the page has another version than the worker")
	}
}

func TestManifest(t *testing.T) {
	files := build(t, "/sub/", "x")
	for name, language := range map[string]string{"manifest.webmanifest": "en", "es.webmanifest": "es"} {
		var m struct {
			ID, Scope, Lang, Name, Description string
			StartURL                           string `json:"start_url"`
			Icons                              []struct{ Src, Sizes, Purpose string }
			Shortcuts                          []struct{ Name, URL string }
		}
		if err := json.Unmarshal([]byte(files[name]), &m); err != nil {
			t.Fatal(err)
		}
		if m.ID != "/sub/" || m.Scope != "/sub/" || m.StartURL != "/sub/" || m.Lang != language || len(m.Icons) != 4 || len(m.Shortcuts) != 2 {
			t.Errorf("unexpected manifest: %+v", m)
		}
		for _, said := range []string{m.Description, m.Shortcuts[0].Name, m.Shortcuts[1].Name} {
			if word := tonguetest.Leftover(said); language != "en" && word != "" || said == "" {
				t.Errorf("%s: %q in %q", name, word, said)
			}
		}
	}
}

// What the manifest says is there to be said in each language.
func TestTheManifestSaysWhatIsTranslated(t *testing.T) {
	source := build(t, "/", "x")["manifest.webmanifest"]
	for language, words := range manifestWords {
		for i := 0; i < len(words); i += 2 {
			if strings.Count(source, words[i]) != 1 {
				t.Errorf("%s: the manifest has not once %q", language, words[i])
			}
		}
	}
	if words := strings.Count(source, `"name":`) + strings.Count(source, `"description":`) - 1; len(manifestWords["es"]) != 2*(words+1) { // its own name stays, its language changes
		t.Errorf("the manifest says %d things", words)
	}
}

func TestWhatCannotBeASite(t *testing.T) {
	full := func(prefix string) Parts { return Parts{Prefix: prefix, Wasm: []byte("x"), Exec: []byte("x")} }
	for _, prefix := range []string{"", "sub", "/sub", "sub/", "//", "/a//b/", "/../", "/a/./", `/"/`, "/a b/", "/{{files}}/"} {
		if _, err := Site(full(prefix)); !errors.Is(err, ErrPrefix) {
			t.Errorf("prefix %q: got %v, want ErrPrefix", prefix, err)
		}
	}
	for _, prefix := range []string{"/", "/sub/", "/a/b.c/", "/.well-known/"} {
		if _, err := Site(full(prefix)); err != nil {
			t.Errorf("prefix %q: %v", prefix, err)
		}
	}
	if _, err := Site(Parts{Prefix: "/"}); !errors.Is(err, ErrParts) {
		t.Errorf("no parts: got %v, want ErrParts", err)
	}
}

// The content policy forbids scripts and styles inside the page.
func TestNothingIsInline(t *testing.T) {
	page := build(t, "/", "x")["index.html"]
	for _, bad := range []string{"<style", " style=", "onclick=", "onload=", "javascript:"} {
		if strings.Contains(page, bad) {
			t.Errorf("the page has %q", bad)
		}
	}
	if regexp.MustCompile(`<script[^>]*>[^<]`).MatchString(page) {
		t.Error("the page has a script of its own")
	}
}
