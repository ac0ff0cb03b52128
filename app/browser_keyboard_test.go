//go:build !js

package main

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// listen notes, from now on, what a screen reader would say: text that comes into a
// live region that was there before.
const listen = `{
	window.spoken = [];
	const live = n => n && n.closest && n.closest("[role=status], [role=alert], [aria-live=polite]");
	new MutationObserver(changes => {
		for (const c of changes) {
			const at = live(c.target.nodeType === 1 ? c.target : c.target.parentElement);
			if (at && at.isConnected) spoken.push(at.textContent);
		}
	}).observe(document.body, { subtree: true, childList: true, characterData: true });
}`

// tabTo goes on with the Tab key alone until the element with an id has the focus.
func (b *browser) tabTo(id string) {
	b.t.Helper()
	const most = 80
	b.waitFor(fmt.Sprintf(`!!document.getElementById(%q)`, id))
	for range most {
		b.typeKeys(kb.Tab)
		if evaluate[string](b, `document.activeElement.id`) == id {
			if ring := evaluate[string](b, `getComputedStyle(document.activeElement).outlineStyle`); ring == "none" {
				b.t.Errorf("%s has the focus and does not show it", id)
			}
			return
		}
	}
	b.t.Fatalf("%d times Tab does not lead to %s", most, id)
}

// hears waits until a live region has said a text, and forgets what was said.
func (b *browser) hears(text string) {
	b.t.Helper()
	b.waitFor(fmt.Sprintf(`spoken.some(s => s.includes(%q))`, text))
	b.do(chromedp.Evaluate[chromedp.Void](`spoken.length = 0`))
}

// A whole session without a finger: each screen puts the focus on its heading, what
// is typed goes to the pad, and each verdict and problem is announced.
func TestSessionByKeyboard(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.size(phoneWidth, phoneHeight)
	b.open(h.url(""))
	b.do(chromedp.Evaluate[chromedp.Void](listen))
	b.tabTo("aim-bench")
	b.typeKeys(kb.Enter)
	b.onHeading("What do you have in front of you?")
	b.tabTo("air")
	b.typeKeys("warm")
	b.tabTo("begin")
	b.typeKeys(kb.Enter)
	b.hears("Air temperature")
	b.typeBack("air", len("warm"))
	b.tabTo("name")
	b.typeKeys("Shed scooter")
	b.tabTo("begin")
	b.typeKeys(kb.Enter)
	for i, step := range benchSession {
		b.onHeading(step.heading)
		if i == 0 {
			b.typeKeys(kb.Enter)
			b.hears("Type the number on the display first")
		}
		b.typeKeys(step.reading)
		b.waitText("typed", step.reading)
		b.hears(step.verdict)
		b.typeKeys(kb.Enter)
	}
	b.onHeading("Out of spec: charge winding")
	b.waitSaved()
	b.tabTo("finish")
	b.typeKeys(kb.Enter)
	b.onHeading("Saved on this phone")
	if got := b.text("session-rows"); !strings.Contains(got, "Shed scooter") {
		t.Errorf("the list says %q", got)
	}
}

// onHeading waits for a screen and for the focus on its heading.
func (b *browser) onHeading(text string) {
	b.t.Helper()
	b.waitFor(fmt.Sprintf(`document.activeElement.tagName === "H1" && document.activeElement.textContent === %q`, text))
}

// typeBack goes back to a field and clears it.
func (b *browser) typeBack(id string, letters int) {
	b.t.Helper()
	b.tabTo(id)
	b.typeKeys(kb.End + strings.Repeat(kb.Backspace, letters))
	b.waitFor(fmt.Sprintf(`document.getElementById(%q).value === ""`, id))
}
