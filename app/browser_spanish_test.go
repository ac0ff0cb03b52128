//go:build !js

package main

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"coilbook/app/tongue/tonguetest"
)

// spokenTexts is all that a page says to eyes and ears, but for the names that
// languages have in themselves.
const spokenTexts = `(() => {
	const texts = [document.title];
	for (const e of document.querySelectorAll("body *")) {
		if (e.closest("#language-en, #first-paint")) continue;
		for (const n of e.childNodes) if (n.nodeType === 3 && n.data.trim() !== "") texts.push(n.data.trim());
		for (const a of ["aria-label", "placeholder", "title", "alt"]) if (e.getAttribute(a)) texts.push(e.getAttribute(a));
	}
	return texts })()`

// saysNoEnglish fails for each text with a word of English in it.
func (b *browser) saysNoEnglish(where string) {
	b.t.Helper()
	for _, text := range evaluate[[]string](b, spokenTexts) {
		for _, own := range ownWords {
			text = strings.ReplaceAll(text, own, "")
		}
		if word := tonguetest.Leftover(text); word != "" {
			b.t.Errorf("%s: %q in %q", where, word, text)
		}
	}
}

// ownWords are what the owner of the gallery's records wrote.
var ownWords = []string{"Barn moped with a name that is rather long", "Old yellow one", "Spare one", "Odd one", "Farm quad", "Red scooter", "Shed scooter", "Winding"}

// inSpanish changes the language as a person does.
func (b *browser) inSpanish() {
	b.t.Helper()
	b.press("language-es")
	b.waitFor(`document.documentElement.lang === "es"`)
	b.waitApp()
}

// A session in Spanish: chosen once, kept, with decimal commas, and without a server.
func TestSpanishWithoutServer(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.open(h.url("phone"))
	b.waitFor(kept)
	h.unplug()
	b.inSpanish()
	if manifest := call(b, page.GetAppManifest, page.GetAppManifestParams{}); !strings.HasSuffix(manifest.URL, "/es.webmanifest") || len(manifest.Errors) > 0 {
		t.Errorf("the manifest is %q, errors %v", manifest.URL, manifest.Errors)
	}
	if on := evaluate[[]string](b, `[...document.querySelectorAll("[id^=language-][aria-pressed=true]")].map(e => e.id)`); fmt.Sprint(on) != "[language-es]" {
		t.Errorf("pressed are %v", on)
	}
	b.saysNoEnglish("phone")
	b.shot("spanish-phone")
	b.open(h.url("about"))
	b.saysNoEnglish("about")
	b.shot("spanish-about")
	b.open(h.url(""))
	b.saysNoEnglish("start")
	b.shot("spanish-start")
	if got := b.heading(); got != "¿Qué le pasa a la máquina?" {
		t.Errorf("the first screen asks %q", got)
	}
	b.press("aim-bench")
	b.press("begin")
	b.waitHeading("Junta las dos puntas")
	if got := b.text("key-."); got != "," {
		t.Errorf("the key for decimals shows %q", got)
	}
	for i, key := range []string{"0", ".", "3"} {
		b.press("key-" + key)
		b.waitFor(fmt.Sprintf(`document.getElementById("typed").textContent === %q`, "0,3"[:i+1]))
	}
	if got := b.text("verdict"); got != "dentro de especificación" {
		t.Errorf("the verdict is %q", got)
	}
	bar := evaluate[string](b, `document.querySelector(".limit-bar").getAttribute("aria-label")`)
	if !strings.Contains(bar, "0,30 ± 0,58 Ω") {
		t.Errorf("the limit bar says %q", bar)
	}
	if drawn := evaluate[string](b, `document.querySelector(".limit-bar").outerHTML`); !strings.Contains(drawn, "como mucho 1 Ω") {
		t.Errorf("the limit bar shows %q", drawn)
	}
	b.saysNoEnglish("check")
	b.shot("spanish-check")
	b.press("enter")
	b.waitHeading("Cable de masa a núcleo")
	b.waitFor(`(document.getElementById("saving") || {}).textContent === "Guardado ✓"`)
	b.keyboard("0,4")
	b.waitFor(`document.getElementById("typed").textContent === "0,4"`)
	b.press("enter")
	b.waitHeading("Carga, cables 1 y 2")
	b.saysNoEnglish("next check")
	b.open(h.url(b.sibling("result")))
	b.waitFor(`!!document.getElementById("parts")`)
	b.saysNoEnglish("result")
	b.shot("spanish-result")
}

// Whoever's browser asks for Spanish gets it from the first page on, and whoever's asks
// for a language that is not spoken here gets English.
func TestTheBrowsersLanguageIsSpoken(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	for asked, want := range map[string]string{"es-MX,en": "es", "fr-FR,es,en": "es", "fr-FR": "en", "en-GB,es": "en"} {
		b := newBrowser(t)
		agent := evaluate[string](b, `navigator.userAgent`)
		call(b, emulation.SetUserAgentOverride, emulation.SetUserAgentOverrideParams{UserAgent: agent, AcceptLanguage: asked})
		b.open(h.url(""))
		if got := evaluate[string](b, `document.documentElement.lang`); got != want {
			t.Errorf("for %s the page speaks %q, want %q", asked, got, want)
		}
		heading := map[string]string{"en": "What is the machine doing?", "es": "¿Qué le pasa a la máquina?"}[want]
		if got := b.heading(); got != heading {
			t.Errorf("for %s the program asks %q", asked, got)
		}
		evaluate[bool](b, `(coilbookCrash("tried by a test"), true)`)
		title := map[string]string{"en": "Coilbook has stopped", "es": "Coilbook se ha parado"}[want]
		if got := b.text("crash-title"); got != title {
			t.Errorf("for %s the last screen says %q", asked, got)
		}
	}
}

// Every scene of the gallery in Spanish: no English is left, no rule of axe-core is
// broken, and nothing is cut off on narrow phones, though the words are longer. In dark
// colours, because TestAccess leaves its pictures of English in both.
func TestGalleryInSpanish(t *testing.T) {
	axe := axeSource(t)
	b, all := atGallery(t)
	b.do(chromedp.Evaluate[chromedp.Void](`localStorage.setItem("coilbook-language", "es")`))
	b.reload()
	b.do(chromedp.Evaluate[chromedp.Void](axe))
	b.look("dark")
	for _, sc := range all {
		if !strings.HasPrefix(sc.Name, *onlyScene) {
			continue
		}
		b.hang(sc)
		b.unfold()
		b.saysNoEnglish(sc.Name)
		b.holds(sc.Name, violations)
		for _, width := range []int{360, narrowWidth} {
			b.size(width, phoneHeight)
			b.holds(fmt.Sprint(sc.Name, " at ", width), cutOff)
		}
		b.size(360, phoneHeight)
		if *keepGallery {
			b.screenshot(filepath.Join("..", "build", "gallery", "es", sc.Name+".png"))
		}
		b.size(phoneWidth, phoneHeight)
	}
}
