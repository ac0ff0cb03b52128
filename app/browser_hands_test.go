//go:build !js

package main

import (
	"testing"
)

// Stand-ins for what a phone does, in the place of the browser's own.
const (
	fakeSpeech = `globalThis.said = []; globalThis.hushed = 0;
		globalThis.SpeechSynthesisUtterance = function (text) { this.text = text };
		Object.defineProperty(globalThis, "speechSynthesis", { configurable: true, value: Object.assign(new EventTarget(), {
			getVoices: () => [{ name: "own", lang: "en-GB", localService: true }],
			speak(u) { said.push(u.text); globalThis.last = u; }, cancel() { hushed++; } }) });`
	fakeVibrate = `globalThis.felt = []; navigator.vibrate = p => { felt.push([].concat(p).join()); return true };`
	fakeWake    = `globalThis.locks = { asked: 0, held: 0, refuse: false };
		Object.defineProperty(navigator, "wakeLock", { configurable: true, value: { request() {
			locks.asked++;
			if (locks.refuse) return Promise.reject(new DOMException("battery", "NotAllowedError"));
			const l = { released: false, release() { if (!this.released) { this.released = true; locks.held--; } return Promise.resolve() } };
			globalThis.lock = l; locks.held++;
			return Promise.resolve(l) } } });`
	fakeOffer = `globalThis.prompts = 0; globalThis.offer = () => {
		const e = new Event("beforeinstallprompt", { cancelable: true });
		e.prompt = () => { prompts++; return Promise.resolve() };
		e.userChoice = Promise.resolve({ outcome: "accepted" });
		dispatchEvent(e); return e.defaultPrevented };`
)

func TestACheckIsReadAloud(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.before(fakeSpeech)
	b.open(h.url("setup/bench"))
	b.press("begin")
	b.waitHeading("Touch the probe tips together")
	if n := evaluate[int](b, `said.length`); n != 0 {
		t.Errorf("%d sentences were said unasked", n)
	}
	b.press("read-aloud")
	b.waitFor(`document.getElementById("read-aloud").getAttribute("aria-pressed") === "true"`)
	b.waitFor(`said.join("|") === "Touch the probe tips together." && last.lang === "en-GB"`)
	evaluate[bool](b, `(last.onend(), true)`)
	b.waitFor(`said.at(-1) === "Dial: ohms 200."`)
	b.shot("check-being-read")
	b.press("read-aloud") // again: stop
	b.waitFor(`document.getElementById("read-aloud").getAttribute("aria-pressed") === "false"`)
	if late := evaluate[bool](b, `last.onend === null`); !late {
		t.Error("what was stopped goes on")
	}
	b.press("read-aloud")
	b.waitFor(`document.getElementById("read-aloud").getAttribute("aria-pressed") === "true"`)
	hushed := evaluate[int](b, `hushed`)
	b.answer("0.3")
	b.waitHeading("Ground lead to core")
	b.waitFor(`document.getElementById("read-aloud").getAttribute("aria-pressed") === "false"`)
	if now := evaluate[int](b, `hushed`); now <= hushed {
		t.Error("the check was left and is still being read")
	}
	if got := evaluate[string](b, `said.at(-1)`); got != "Touch the probe tips together." {
		t.Errorf("said %q unasked", got)
	}
}

// By itself: verdict first, then the next check; leaving ends it.
func TestChecksAndVerdictsAreReadByThemselves(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.before(fakeSpeech + fakeVibrate)
	b.open(h.url("phone"))
	b.press("set-aloud")
	b.press("set-vibrate")
	b.waitFor(`document.getElementById("set-vibrate").getAttribute("aria-checked") === "true"`)
	b.open(h.url("setup/bench"))
	b.press("begin")
	b.waitFor(`said.at(-1) === "Touch the probe tips together."`)
	b.answer("0.3")
	b.waitHeading("Ground lead to core")
	b.waitFor(`said.at(-1) === "In spec."`)
	b.waitFor(`felt.join(";") === "80"`)
	for range 2 {
		evaluate[bool](b, `(last.onend(), true)`)
	}
	b.waitFor(`said.slice(-3).join("|").startsWith("In spec.|") && said.at(-1) === "Ground lead to core."`)
	evaluate[bool](b, `(globalThis.before = hushed, true)`)
	b.press("key-o")
	b.waitText("verdict", "out of spec")
	b.press("enter")
	b.waitFor(`felt.at(-1) === "300,150,300,150,300" && said.at(-1) === "Out of spec."`)
	b.open(h.url("sessions"))
	b.waitFor(`document.querySelectorAll(".session").length === 1`)
}

func TestWithoutAVoiceThePhoneSaysSo(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.before(fakeSpeech + `speechSynthesis.getVoices = () => [{ name: "far", lang: "en-GB", localService: false }]; delete Navigator.prototype.vibrate;`)
	b.open(h.url("phone"))
	b.waitText("cannot-aloud", "no voice of its own")
	b.waitText("cannot-vibrate", "cannot vibrate")
	b.open(h.url("setup/bench"))
	b.press("begin")
	b.waitText("no-voice", "no voice of its own")
	if evaluate[bool](b, `!!document.getElementById("read-aloud")`) {
		t.Error("a button that cannot read")
	}
}

// The lock is taken for the session, again whenever the page is back, and let go
// at its end; a refusal is said once.
func TestTheScreenStaysOnThroughASession(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.before(fakeWake)
	b.open(h.url(""))
	if n := evaluate[int](b, `locks.asked`); n != 0 {
		t.Errorf("asked %d times before a session", n)
	}
	b.press("aim-bench")
	b.press("begin")
	b.waitHeading("Touch the probe tips together")
	b.waitFor(`locks.held === 1`)
	b.answer("0.3")
	b.waitHeading("Ground lead to core")
	if n := evaluate[int](b, `locks.asked`); n != 1 {
		t.Errorf("asked %d times in one session", n)
	}
	evaluate[bool](b, `(lock.release(), document.dispatchEvent(new Event("visibilitychange")))`)
	b.waitFor(`locks.held === 1 && locks.asked === 2`)
	evaluate[bool](b, `(locks.refuse = true, lock.release(), dispatchEvent(new Event("pageshow")))`)
	b.waitText("dark", "does not keep its screen on")
	b.shot("check-screen-dark")
	evaluate[bool](b, `(document.querySelector("#dark button").click(), true)`)
	b.waitFor(`!document.getElementById("dark")`)
	evaluate[bool](b, `(document.dispatchEvent(new Event("visibilitychange")))`)
	b.waitFor(`locks.asked === 4`)
	if evaluate[bool](b, `new Promise(r => setTimeout(() => r(!!document.getElementById("dark")), 200))`) {
		t.Error("the refusal is said twice")
	}
	evaluate[bool](b, `(locks.refuse = false, document.dispatchEvent(new Event("visibilitychange")))`)
	b.waitFor(`locks.held === 1`)
	evaluate[bool](b, `(goappNav(new URL("sessions", document.baseURI.replace(/\/s\/.*/, "/")).href), true)`)
	b.waitHeading("Saved on this phone")
	b.waitFor(`locks.held === 0`)
	evaluate[bool](b, `(document.dispatchEvent(new Event("visibilitychange")))`)
	if n := evaluate[int](b, `new Promise(r => setTimeout(() => r(locks.held), 200))`); n != 0 {
		t.Error("asked for outside a session")
	}
}

// once takes a first reading and looks at the result, then at the list.
func (b *browser) once(h *host) {
	b.t.Helper()
	b.open(h.url("setup/bench"))
	b.press("begin")
	b.answer("0.3")
	b.waitSaved()
	b.open(h.url(b.sibling("result")))
	b.waitFor(`!!document.getElementById("parts")`)
	b.waitFor(`localStorage.getItem("coilbook-install") === "due"`)
}

func TestTheWayToTheHomeScreenIsOfferedOnce(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.before(fakeOffer)
	b.open(h.url(""))
	if !evaluate[bool](b, `offer()`) {
		t.Error("the browser's own banner is not held back")
	}
	if evaluate[bool](b, `!!document.getElementById("install-hint")`) {
		t.Error("offered before anything is worth keeping")
	}
	b.once(h)
	b.open(h.url("sessions"))
	b.waitHeading("Saved on this phone")
	evaluate[bool](b, `offer()`)
	b.press("install-now")
	b.waitFor(`prompts === 1`)
	b.waitText("install-hint", "It is being put there")
	b.shot("install-hint")
	b.press("install-later")
	b.waitFor(`!document.getElementById("install-hint")`)
	b.reload()
	evaluate[bool](b, `offer()`)
	b.open(h.url(""))
	evaluate[bool](b, `offer()`)
	if evaluate[bool](b, `new Promise(r => setTimeout(() => r(!!document.getElementById("install-hint")), 300))`) {
		t.Error("offered twice")
	}
	b.open(h.url("phone"))
	evaluate[bool](b, `offer()`)
	b.waitFor(`!!document.querySelector("#install #install-now")`) // for whoever looks for it
}

func TestTheWayToTheHomeScreenOfAnIPhone(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.passFor(iPhoneAgent)
	b.before(`addEventListener("beforeinstallprompt", e => e.stopImmediatePropagation())`) // that browser makes no offer
	b.once(h)
	b.open(h.url("sessions"))
	b.waitText("install-hint", "Add to Home Screen")
	b.waitFor(`!!document.querySelector("#by-share svg")`)
	b.shot("install-hint-iphone")
	b.before(`Object.defineProperty(navigator, "standalone", { value: true })`)
	evaluate[bool](b, `(localStorage.setItem("coilbook-install", "due"), true)`)
	b.open(h.url("sessions"))
	b.waitHeading("Saved on this phone")
	if evaluate[bool](b, `new Promise(r => setTimeout(() => r(!!document.getElementById("install-hint")), 300))`) {
		t.Error("offered from the home screen")
	}
	b.open(h.url("phone"))
	b.waitText("install", "runs from the home screen")
}
