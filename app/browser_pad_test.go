//go:build !js

package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	downloads "github.com/chromedp/cdproto/browser"
	"github.com/chromedp/chromedp"

	"coilbook/engine/session"
)

// keyboard types keys as a hardware keyboard does, none of them in a field.
func (b *browser) keyboard(keys string) {
	b.t.Helper()
	b.do(chromedp.KeyEvent(keys))
}

// atFirstCheck opens a new session on the bench at its first check.
func atFirstCheck(t *testing.T) (*host, *browser) {
	t.Helper()
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.open(h.url("setup/bench"))
	b.press("begin")
	b.waitFor(`!!document.getElementById("enter")`)
	return h, b
}

// sibling is the path of another screen of the session that is shown.
func (b *browser) sibling(screen string) string {
	b.t.Helper()
	parts := strings.Split(evaluate[string](b, `location.pathname`), "/")
	return strings.Join([]string{"s", parts[2], screen}, "/")
}

// answer types a reading on the pad and enters it.
func (b *browser) answer(reading string) {
	b.t.Helper()
	b.typeOnPad(reading)
	b.enter()
}

func (b *browser) waitHeading(text string) {
	b.t.Helper()
	b.waitFor(fmt.Sprintf(`document.querySelector("h1").textContent === %q`, text))
}

func (b *browser) waitText(id, part string) {
	b.t.Helper()
	b.waitFor(fmt.Sprintf(`(document.getElementById(%q) || {textContent: ""}).textContent.includes(%q)`, id, part))
}

func TestAKeyboardWorksToo(t *testing.T) {
	_, b := atFirstCheck(t)
	b.keyboard("0.3")
	b.waitText("typed", "0.3")
	b.keyboard("\r")
	b.waitHeading("Ground lead to core")
	b.keyboard("o")
	b.waitText("verdict", "out of spec")
	b.keyboard("\b")
	b.waitText("typed", "–")
	b.keyboard("\r")
	b.waitText("because", "Type the number")
}

// A comma with three digits behind it has two meanings: it is asked back.
func TestAnAmbiguousReadingIsAskedBack(t *testing.T) {
	_, b := atFirstCheck(t)
	b.keyboard("1,234\r")
	b.waitText("because", "Which one?")
	if got := b.heading(); got != "Touch the probe tips together" {
		t.Fatalf("an ambiguous reading was entered: %s", got)
	}
	b.do(chromedp.Evaluate[chromedp.Void](`void document.querySelector("#because button").click()`))
	b.waitHeading("Ground lead to core")
	b.waitSaved()
	b.keyboard("\x1b")
	b.waitText("typed", "1.234")
}

func TestCorrectingKeepsTheEarlierReading(t *testing.T) {
	h, b := atFirstCheck(t)
	b.answer("0.9")
	sheet := b.sibling("sheet")
	b.open(h.url(sheet))
	b.press("row-lead-zero")
	b.waitText("typed", "0.9")
	b.answer("0.2")
	b.open(h.url(sheet))
	b.waitText("row-lead-zero", "0.2 Ω")
	b.waitText("row-lead-zero", "1 earlier reading kept")
}

func TestGoingBackLosesNothing(t *testing.T) {
	_, b := atFirstCheck(t)
	b.answer("0.3")
	b.typeOnPad("12")
	b.do(chromedp.Evaluate[chromedp.Void](`void document.querySelector(".back").click()`))
	b.waitHeading("Touch the probe tips together")
	b.waitText("typed", "0.3")
	b.press("enter")
	b.waitHeading("Ground lead to core")
	b.waitText("typed", "12")
}

// Back from the first check is to the set-up of this session, and begins no other.
func TestBackFromTheFirstCheckIsItsOwnSetup(t *testing.T) {
	_, b := atFirstCheck(t)
	const session = `(location.pathname.match(/\/s\/([^/]+)/) || [])[1]`
	first := evaluate[string](b, session)
	b.do(chromedp.Evaluate[chromedp.Void](`void history.back()`))
	b.waitFor(`/^\/s\/[^/]+\/setup$/.test(location.pathname)`)
	b.waitText("begin", "Keep")
	b.press("begin")
	b.waitFor(`!!document.getElementById("rows")`)
	if now := evaluate[string](b, session); now != first || first == "" {
		t.Errorf("the session was %q and is %q", first, now)
	}
}

func TestRefusedAndUnsettledChecks(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.open(h.url("setup/bench"))
	b.waitFor(`!!document.getElementById("begin")`)
	// The second half of a double tap comes as soon as the screen does, however slow.
	b.do(chromedp.Evaluate[chromedp.Void](`(() => {
		new MutationObserver((_, all) => {
			const key = document.getElementById("key-skip");
			if (!key) return;
			all.disconnect();
			key.click();
			window.tapped = true;
		}).observe(document.body, { childList: true, subtree: true });
		document.getElementById("begin").click();
	})()`))
	b.waitFor(`window.tapped === true`)
	time.Sleep(600 * time.Millisecond)
	if got := b.heading(); got != "Touch the probe tips together" {
		t.Fatalf("a double tap skipped to %s", got)
	}
	b.press("key-skip")
	b.waitHeading("Ground lead to core")
	if got := b.typeOnPad("w"); got != "cannot tell" {
		t.Errorf("digits that won't settle give %q", got)
	}
	b.enter()
	b.open(h.url(b.sibling("sheet")))
	b.waitText("row-lead-zero", "not done")
	b.waitText("row-core-continuity", "won't settle")
}

// The digits alone may condemn a good part: the unit is asked.
func TestTheUnitIsAskedWhereItDecides(t *testing.T) {
	h, b := atFirstCheck(t)
	b.answer("0.3")
	b.open(h.url(strings.Replace(b.sibling("check"), "/check", "/check/pickup-gap", 1)))
	b.waitHeading("Pickup air gap")
	for i, digit := range "16" {
		b.press("key-" + string(digit))
		b.waitText("typed", "16"[:i+1])
	}
	b.waitText("because", "Which unit")
	b.press("enter")
	b.waitText("because", "Which unit")
	b.do(chromedp.Evaluate[chromedp.Void](`void document.querySelectorAll("#because button")[1].click()`))
	b.waitText("verdict", "in spec")
	b.waitText("unit", "thou")
}

func TestLongNamesFit(t *testing.T) {
	h, b := atFirstCheck(t)
	b.answer("0.3")
	b.open(h.url(b.sibling("setup")))
	b.waitFor(`!!document.getElementById("name")`)
	b.do(chromedp.Evaluate[chromedp.Void](`(() => { const e = document.getElementById("name");
		e.value = "W".repeat(80); e.dispatchEvent(new Event("input", { bubbles: true })) })()`))
	b.press("begin")
	b.waitText("rows", "0.3")
	b.shot("long-name-sheet")
	b.open(h.url("sessions"))
	b.waitFor(`document.querySelectorAll(".session").length === 1`)
	b.shot("long-name-sessions")
	b.open(h.url(""))
	b.waitFor(`!!document.getElementById("resume")`)
	b.shot("long-name-start")
}

// While another transaction holds the table the reading is not saved, the sign
// does not say so, and the browser asks before it leaves.
func TestNothingUnsavedIsLeftBehind(t *testing.T) {
	const leaves = `(() => { const e = new Event("beforeunload", { cancelable: true }); dispatchEvent(e); return !e.defaultPrevented })()`
	_, b := atFirstCheck(t)
	b.waitSaved()
	if !evaluate[bool](b, leaves) {
		t.Error("the page cannot be left although all is saved")
	}
	b.do(chromedp.Evaluate[chromedp.Void](`void (window.hold = true, indexedDB.open("coilbook").onsuccess = e => {
		const table = e.target.result.transaction("entries", "readwrite").objectStore("entries");
		const again = () => { table.count().onsuccess = () => { window.held = true; if (window.hold) again(); else e.target.result.close() } };
		again() })`))
	b.waitFor(`window.held === true`)
	b.typeOnPad("0.3")
	b.press("enter")
	b.waitHeading("Ground lead to core")
	b.waitText("saving", "saving…")
	if evaluate[bool](b, leaves) {
		t.Error("the page can be left while a reading is not saved")
	}
	b.do(chromedp.Evaluate[chromedp.Void](`void (window.hold = false)`))
	b.waitSaved()
	if !evaluate[bool](b, leaves) {
		t.Error("the page cannot be left although the reading is saved")
	}
}

func TestDeletingCanBeUndone(t *testing.T) {
	h, b := atFirstCheck(t)
	b.answer("0.3")
	b.open(h.url("sessions"))
	b.waitFor(`document.querySelectorAll(".session").length === 1`)
	b.do(chromedp.Evaluate[chromedp.Void](`void document.querySelector(".remove").click()`))
	b.waitFor(`document.querySelectorAll(".session").length === 0`)
	b.press("undo")
	b.waitFor(`document.querySelectorAll(".session").length === 1`)
	b.waitSaved()
	b.reload()
	b.waitFor(`document.querySelectorAll(".session").length === 1`)
}

func TestAnUpdateIsOfferedNotForced(t *testing.T) {
	h, b, old := installed(t)
	h.deploy(siteFiles(t, "/", "two"))
	if state := update(b); state != "installed" {
		t.Fatalf("the new version is %s", state)
	}
	b.waitText("update", "A new version is ready")
	if got := runningVersion(b); got != old {
		t.Fatal("the new version took over without being asked")
	}
	b.do(chromedp.Evaluate[chromedp.Void](`void document.querySelector("#update button").click()`))
	b.waitFor(fmt.Sprintf(`document.documentElement.dataset.version !== %q`, old))
}

// The file that the phone hands out is the one the command line reads.
func TestTheSavedFileIsAssessed(t *testing.T) {
	h, b := atFirstCheck(t)
	b.answer("0.3")
	dir := t.TempDir()
	call(b, downloads.SetDownloadBehavior, downloads.SetDownloadBehaviorParams{Behavior: downloads.SetDownloadBehaviorBehaviorAllow, DownloadPath: dir, BrowserContextID: chromedp.FromContext(b.ctx).BrowserContextID})
	b.open(h.url(b.sibling("result")))
	b.press("save-file")
	data := waitForFile(t, dir)
	s, err := session.Decode(data)
	if err != nil || len(s.Entries) != 2 {
		t.Fatalf("the saved file has %d entries: %v", len(s.Entries), err)
	}
	var out, problems bytes.Buffer
	if code := assessFile([]string{"-"}, bytes.NewReader(data), &out, &problems); code != 0 || !bytes.Contains(out.Bytes(), []byte(`"in spec"`)) {
		t.Errorf("assess ends with %d: %s", code, problems.String())
	}
}

func waitForFile(t *testing.T, dir string) []byte {
	t.Helper()
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(50 * time.Millisecond) {
		names, _ := filepath.Glob(filepath.Join(dir, "coilbook-*.json"))
		if len(names) == 1 {
			data, err := os.ReadFile(names[0])
			if err == nil && len(data) > 0 {
				return data
			}
		}
	}
	t.Fatal("no file was saved")
	return nil
}
