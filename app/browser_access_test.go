//go:build !js

package main

import (
	"archive/tar"
	"bytes"
	"compress/gzip"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

var (
	keepGallery = flag.Bool("gallery", false, "leave pictures of every scene in build/gallery")
	onlyScene   = flag.String("scene", "", "show only scenes of the gallery that begin so")
)

// The rules come from axe-core, a general tool under the MPL 2.0 that is fetched
// when the test runs and never part of the site.
const (
	axeVersion = "4.14.1"
	axeSum     = "29348999450cdf2849a8e70b7912fc2da85a849da39c0d0d5394f51d4a9ed95c" // SHA-256 of axe.min.js
)

// axeRules runs every rule that is on by itself, best practices included, and one that
// is not: words at 7:1. None is switched off. "target-size" stays off: it takes what
// has half scrolled under a bar for small, and smallTargets asks for more.
const axeRules = `axe.run(document, { preload: false, resultTypes: ["violations"],
	rules: { "color-contrast-enhanced": { enabled: true } } })`

// axeSource gives the script. Without a way to get it the test is left out; where
// CI is true that is a failure.
func axeSource(t *testing.T) string {
	t.Helper()
	path := filepath.Join("..", "build", "axe-core-"+axeVersion+".js")
	text, err := os.ReadFile(path)
	if err != nil {
		if text, err = fetchAxe(t.TempDir()); err != nil {
			told := fmt.Sprintf("access not tried: axe-core %s could not be fetched with npm (%v)", axeVersion, err)
			if os.Getenv("CI") == "true" {
				t.Fatal(told)
			}
			t.Skip(told)
		}
		if err = errors.Join(os.MkdirAll(filepath.Dir(path), 0o755), os.WriteFile(path, text, 0o644)); err != nil {
			t.Fatal(err)
		}
	}
	if sum := sha256.Sum256(text); hex.EncodeToString(sum[:]) != axeSum {
		t.Fatalf("%s is not the axe-core that was pinned: its SHA-256 is %x", path, sum)
	}
	return string(text)
}

// fetchAxe gets the package from npm's registry and takes the script out.
func fetchAxe(dir string) ([]byte, error) {
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	pack := exec.CommandContext(ctx, "npm", "pack", "axe-core@"+axeVersion, "--silent", "--ignore-scripts", "--pack-destination", dir)
	if err := pack.Run(); err != nil {
		return nil, err
	}
	packed, err := os.ReadFile(filepath.Join(dir, "axe-core-"+axeVersion+".tgz"))
	if err != nil {
		return nil, err
	}
	plain, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		return nil, err
	}
	for files := tar.NewReader(plain); ; {
		file, err := files.Next()
		if err != nil {
			return nil, err
		}
		if file.Name == "package/axe.min.js" {
			return io.ReadAll(files)
		}
	}
}

// TestAccess walks the gallery with all that is folded open. Every scene in both looks
// has no violation of axe-core's rules; every target is large enough; nothing scrolls sideways or is
// cut off on a narrow phone and with text twice as large; and whatever takes the
// focus shows it and is not covered.
func TestAccess(t *testing.T) {
	axe := axeSource(t)
	b, all := atGallery(t)
	b.do(chromedp.Evaluate[chromedp.Void](axe))
	for _, sc := range all {
		if !strings.HasPrefix(sc.Name, *onlyScene) {
			continue
		}
		b.hang(sc)
		b.unfold()
		for _, theme := range themes {
			b.look(theme)
			b.holds(sc.Name+", "+theme, violations)
			if *keepGallery {
				b.galleryShot(sc.Name + "-" + theme)
			}
		}
		b.holds(sc.Name, smallTargets)
		b.typeKeys(kb.Tab) // from now on the focus is shown
		b.holds(sc.Name+", focus", unseenFocus)
		b.size(narrowWidth, phoneHeight)
		b.holds(fmt.Sprint(sc.Name, " at ", narrowWidth), cutOff)
		b.size(phoneWidth, phoneHeight)
		b.enlarge(200)
		b.holds(sc.Name+" at 200 %", cutOff)
		if *keepGallery {
			b.galleryShot(sc.Name + "-large")
		}
		b.enlarge(100)
		b.largeType(true)
		b.size(narrowWidth, phoneHeight)
		b.holds(fmt.Sprint(sc.Name, " in large type at ", narrowWidth), cutOff)
		b.size(phoneWidth, phoneHeight)
		b.largeType(false)
	}
}

// largeType chooses large type, without keeping it.
func (b *browser) largeType(on bool) {
	b.t.Helper()
	b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`void (document.documentElement.style.fontSize = "", document.documentElement.classList.toggle("large", %v))`, on)))
}

// narrowWidth is what WCAG 2.2 asks a page to fit without scrolling sideways (1.4.10).
const narrowWidth = 320

// holds fails for each line that a script finds wrong.
func (b *browser) holds(where, script string) {
	b.t.Helper()
	for _, wrong := range evaluate[[]string](b, script) {
		b.t.Errorf("%s: %s", where, wrong)
	}
}

// toldBy is the beginning of each script: how an element is told in a sentence.
const toldBy = `const named = e => e.tagName.toLowerCase() + (e.id ? "#" + e.id : "") + (e.className ? "." + e.className : "") + " “" + e.textContent.trim().slice(0, 40) + "”";
	const seen = e => e.checkVisibility({ visibilityProperty: true }) && e.getBoundingClientRect().width > 1;
	const targets = () => [...document.querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex='0']")].filter(seen);
	const wrong = [];`

// violations are those of axe-core, one line for each element.
const violations = axeRules + `.then(r => r.violations.flatMap(v => v.nodes.map(n =>
	v.id + ": " + v.help + ": " + n.target.join(" ") + ": " + n.failureSummary.replace(/\s+/g, " "))))`

// smallTargets are below 44 by 44 CSS px. A link inside a sentence may be smaller
// (WCAG 2.2, 2.5.8); there is none yet.
const smallTargets = `(() => { ` + toldBy + `
	for (const e of targets()) {
		const r = e.getBoundingClientRect();
		if (r.width < 43.9 || r.height < 43.9) wrong.push(named(e) + " is " + r.width.toFixed(1) + " by " + r.height.toFixed(1));
	}
	return wrong })()`

// unseenFocus are targets without a ring of at least 2 px while they have the focus,
// or with something over their middle then.
const unseenFocus = `(() => { ` + toldBy + `
	for (const e of targets()) {
		if (e.disabled) continue;
		e.focus();
		const s = getComputedStyle(e);
		if (document.activeElement !== e) { wrong.push(named(e) + " does not take the focus"); continue; }
		if (s.outlineStyle === "none" || parseFloat(s.outlineWidth) < 2) wrong.push(named(e) + " does not show the focus");
		const r = e.getBoundingClientRect(), at = document.elementFromPoint(r.left + r.width / 2, r.top + r.height / 2);
		if (!at || !(e.contains(at) || at.contains(e))) wrong.push(named(e) + " is covered by " + (at ? named(at) : "nothing") + " while it has the focus");
	}
	return wrong })()`

// cutOff is what sticks out of the page, or does not fit its own box.
const cutOff = `(() => { ` + toldBy + `
	if (document.documentElement.scrollWidth > innerWidth) wrong.push("the page is " + document.documentElement.scrollWidth + " wide");
	for (const e of document.querySelectorAll("body *")) {
		if (!(e instanceof HTMLElement) || !seen(e) || e.closest(".unseen") || e.matches("input")) continue; // what is typed scrolls in its field
		const r = e.getBoundingClientRect(), s = getComputedStyle(e);
		const text = [...e.childNodes].some(n => n.nodeType === 3 && n.data.trim() !== "");
		if (text && (r.right > innerWidth + 1 || r.left < -1)) wrong.push(named(e) + " ends at " + r.right.toFixed());
		if (e.clientWidth > 0 && (text || s.overflowX !== "visible") && e.scrollWidth > e.clientWidth + 1) wrong.push(named(e) + " is " + e.scrollWidth + " wide in " + e.clientWidth);
		if (e.clientHeight > 0 && (s.overflowY === "hidden" || s.overflowY === "clip") && e.scrollHeight > e.clientHeight + 1) wrong.push(named(e) + " is " + e.scrollHeight + " high in " + e.clientHeight);
	}
	for (const e of document.querySelectorAll(".keys .key")) {
		if (e.getBoundingClientRect().bottom > innerHeight + 1) wrong.push(named(e) + " ends below the screen");
	}
	return wrong })()`
