//go:build !js

package main

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/chromedp/chromedp"
)

// hanging is one entry of the gallery's index.
type hanging struct {
	Name, Press, Shows string
}

// themes are the looks that a walk shows each scene in.
var themes = []string{"light", "dark"}

// shownIn is the looks of which walks leave pictures: the second changes colours alone,
// which the gallery is tested in.
func shownIn() []string {
	if *makePictures {
		return themes
	}
	return themes[:1]
}

// galleryProgram is the app with the gallery in the place of its routes, built once.
var galleryProgram = sync.OnceValues(func() ([]byte, error) {
	return compile("build", "-tags=gallery", "-ldflags=-s -w", ".")
})

// atGallery opens the gallery's index on a phone of the usual size.
func atGallery(t *testing.T) (*browser, []hanging) {
	t.Helper()
	watchSources()
	program, err := galleryProgram()
	if err != nil {
		t.Fatal("compiling the gallery: ", err)
	}
	script, err := startScript()
	if err != nil {
		t.Fatal(err)
	}
	h := startSite(t, "/", siteOf(t, "/", program, script))
	b := newBrowser(t)
	b.size(phoneWidth, phoneHeight)
	b.open(h.url("gallery"))
	b.waitFor(`!!document.getElementById("scenes")`)
	all := evaluate[[]hanging](b, `[...document.querySelectorAll("#scenes a")].map(a => ({ ...a.dataset }))`)
	if len(all) < 50 {
		t.Fatalf("the gallery has %d scenes", len(all))
	}
	return b, all
}

// hang shows a scene, presses what it asks for, and returns once it stands.
func (b *browser) hang(sc hanging) {
	b.t.Helper()
	b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`goappNav(new URL("gallery/%s", location.origin + "/").href)`, sc.Name)))
	b.waitFor(fmt.Sprintf(`!!document.querySelector('[data-scene="gallery/%s"] h1')`, sc.Name))
	for _, id := range strings.Fields(sc.Press) {
		b.press(id)
	}
	b.waitFor(fmt.Sprintf(`!!document.querySelector(%q)`, sc.Shows))
}

// look puts on a theme, without keeping it.
func (b *browser) look(theme string) {
	b.t.Helper()
	b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`document.documentElement.dataset.theme = %q`, theme)))
}

// enlarge sets the size of all text, as the browser's own setting does.
func (b *browser) enlarge(percent int) {
	b.t.Helper()
	b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`document.documentElement.style.fontSize = "%d%%"`, percent)))
}

// The gallery is for contributors: nothing of it is in the program that is sent.
func TestTheGalleryIsNotSent(t *testing.T) {
	sent, err := compiled()
	if err != nil {
		t.Fatal(err)
	}
	shown, err := galleryProgram()
	if err != nil {
		t.Fatal(err)
	}
	mark := []byte("check-two-meanings") // the name of a scene
	if bytes.Contains(sent.Wasm, mark) {
		t.Error("the program holds the gallery")
	}
	if !bytes.Contains(shown, mark) {
		t.Error("the gallery's program does not hold it either, so this test tells nothing")
	}
}

// galleryShot leaves a picture of a scene in build/gallery.
func (b *browser) galleryShot(name string) {
	b.t.Helper()
	b.screenshot(filepath.Join("..", "build", "gallery", name+".png"))
}
