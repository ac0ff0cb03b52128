//go:build !js

package main

import (
	"fmt"
	"slices"
	"testing"

	"github.com/chromedp/cdproto/emulation"
)

// asks sets what the phone's own settings ask of a page, as name and value; none takes
// all back.
func (b *browser) asks(features ...string) {
	b.t.Helper()
	var list []*emulation.MediaFeature
	for i := 0; i+1 < len(features); i += 2 {
		list = append(list, &emulation.MediaFeature{Name: features[i], Value: features[i+1]})
	}
	call(b, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: list})
}

// show hangs the scene with a name.
func (b *browser) show(all []hanging, name string) {
	b.t.Helper()
	at := slices.IndexFunc(all, func(sc hanging) bool { return sc.Name == name })
	if at < 0 {
		b.t.Fatalf("no scene %s", name)
	}
	b.hang(all[at])
}

// paint is how the colours of a page are read and compared: by WCAG's contrast.
const paint = `const rgb = text => (text.match(/[\d.]+/g) || [0, 0, 0, 0]).map(Number);
	const light = text => { const [r, g, b] = rgb(text).map(v => v / 255).map(v => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4); return 0.2126 * r + 0.7152 * g + 0.0722 * b };
	const contrast = (a, b) => { const x = light(a) + 0.05, y = light(b) + 0.05; return Math.max(x, y) / Math.min(x, y) };
	const ground = e => { for (; e; e = e.parentElement) { const c = getComputedStyle(e).backgroundColor, [, , , a] = rgb(c); if (a === undefined || a > 0) return c; } return "rgb(255, 255, 255)" };
	const named = e => e.tagName + "." + (e.className.baseVal ?? e.className) + " “" + e.textContent.trim().slice(0, 30) + "”";
	const wrong = [];`

// lostShapes are marks and pictures of which a line can hardly be seen, and words that
// can hardly be read.
const lostShapes = `(() => { ` + paint + `
	let shapes = 0;
	for (const e of document.querySelectorAll(".mark :is(path, circle, rect), .plot-picture :is(.bar-point-in, .bar-point-out, .bar-shown, .wave-line, .plot-dashed, .plot-band)")) {
		const s = getComputedStyle(e), at = Math.max(...[s.stroke, s.fill].filter(c => c !== "none").map(c => contrast(c, ground(e))));
		if (!e.checkVisibility({ visibilityProperty: true })) continue;
		shapes++;
		if (at < 3) wrong.push(named(e.parentElement) + " stands out by " + at.toFixed(2) + ": " + s.stroke + ", " + s.fill);
	}
	if (!shapes) wrong.push("no mark at all");
	for (const e of document.querySelectorAll(".drawing text, h1, .chip span, .because, button, .quiet")) {
		if (!e.textContent.trim() || !e.checkVisibility({ visibilityProperty: true }) || e.matches(".on-red, .on-black, .plot-on-bar, .unseen")) continue;
		if (e.matches(".on-screen") && !matchMedia("(forced-colors: active)").matches) continue; // it stands on the display's own ground
		const s = getComputedStyle(e), c = e.ownerSVGElement ? s.fill : s.color, at = contrast(c, ground(e));
		if (at < 4.5) wrong.push(named(e) + " is read at " + at.toFixed(2) + ": " + c + " on " + ground(e));
	}
	return wrong })()`

// alike are chosen answers that look like those beside them.
const alike = `(() => { ` + paint + `
	const look = e => { const s = getComputedStyle(e); return [s.backgroundColor, s.borderTopColor, s.borderTopWidth, s.color].join() };
	let chosen = 0;
	for (const e of document.querySelectorAll(".option.on")) {
		const other = e.parentElement.querySelector(".option:not(.on)");
		if (!other) continue;
		chosen++;
		if (look(e) === look(other)) wrong.push(named(e) + " looks like " + named(other));
	}
	if (!chosen) wrong.push("nothing is chosen");
	return wrong })()`

// moving are elements that something moves, or would.
const moving = `(() => { const wrong = [];
	const probe = document.createElement("div");
	probe.innerHTML = '<div class="dance d2"><span class="lcd-digits"><span>1</span><span>2</span></span></div><button class="key">1</button>';
	document.querySelector(".page").append(probe);
	for (const e of document.querySelectorAll("body *")) for (const pseudo of [null, "::before", "::after"]) {
		const s = getComputedStyle(e, pseudo);
		if (s.animationName !== "none" || s.transitionDuration.split(",").some(t => parseFloat(t) > 0)) wrong.push((e.className.baseVal ?? e.className) + " " + s.animationName + " " + s.transitionDuration);
	}
	if ([...probe.querySelectorAll(".lcd-digits span")].every(e => getComputedStyle(e).visibility === "hidden")) wrong.push("digits that dance are not shown at all");
	probe.remove();
	return wrong })()`

// Where the system sets the colours, in its light and its dark scheme, verdicts keep a
// shape that can be seen, words can be read, and what is chosen is told apart.
func TestForcedColours(t *testing.T) {
	b, all := atGallery(t)
	for _, scheme := range []string{"light", "dark"} {
		b.asks("forced-colors", "active", "prefers-color-scheme", scheme)
		for _, name := range []string{"check-out-of-spec", "check-cannot-tell", "result-bad", "result-output", "earlier", "practice-truth"} {
			b.show(all, name)
			for _, theme := range themes {
				b.look(theme)
				b.holds(fmt.Sprintf("%s, forced %s on %s", name, scheme, theme), lostShapes)
			}
		}
		b.show(all, "setup-of-a-session")
		b.holds("forced "+scheme, alike)
		b.screenshot("../build/screens/forced-" + scheme + ".png")
	}
}

// Whoever asks for more contrast gets words at 14:1 and lines as strong as words.
func TestMoreContrast(t *testing.T) {
	b, all := atGallery(t)
	const weak = `(() => { ` + paint + `
		for (const e of document.querySelectorAll(".quiet, .because, .why, .row-name, small, h1, h2, label, .question")) {
			const at = contrast(getComputedStyle(e).color, ground(e));
			if (at < 14) wrong.push(named(e) + " is read at " + at.toFixed(2));
		}
		for (const e of document.querySelectorAll(".card")) {
			const at = contrast(getComputedStyle(e).borderTopColor, ground(e));
			if (at < 7) wrong.push(named(e) + " has an edge of " + at.toFixed(2));
		}
		return wrong })()`
	for _, theme := range themes {
		b.asks()
		b.show(all, "result-bad")
		b.look(theme)
		if len(evaluate[[]string](b, weak)) == 0 {
			t.Fatal("without being asked it is as strong, so this test tells nothing")
		}
		b.asks("prefers-contrast", "more")
		for _, name := range []string{"result-bad", "check-out-of-spec", "result-output", "earlier"} {
			b.show(all, name)
			b.holds(name+", "+theme, weak)
			b.holds(name+", "+theme, lostShapes)
		}
		b.screenshot("../build/screens/contrast-" + theme + ".png")
	}
}

// Nothing moves for whoever asks for less motion, and what danced is still shown.
func TestLessMotion(t *testing.T) {
	b, all := atGallery(t)
	b.show(all, "practice-bench")
	if len(evaluate[[]string](b, moving)) == 0 {
		t.Fatal("nothing moves without being asked, so this test tells nothing")
	}
	b.asks("prefers-reduced-motion", "reduce")
	for _, name := range []string{"practice-bench", "check-out-of-spec", "meters", "result-bad"} {
		b.show(all, name)
		b.holds(name, moving)
	}
}
