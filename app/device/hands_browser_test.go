//go:build js && wasm

package device

import (
	"slices"
	"strings"
	"syscall/js"
	"testing"
	"time"
)

// inPlace puts a JavaScript expression in the place of a property for one test.
func inPlace(t *testing.T, object, name, expression string) {
	t.Helper()
	window().Call("eval", `Object.defineProperty(`+object+`, "`+name+`", { configurable: true, writable: true, value: `+expression+` })`)
	t.Cleanup(func() { window().Call("eval", `delete `+object+`["`+name+`"]`) })
}

func truth(expression string) bool { return window().Call("eval", expression).Truthy() }

// eventually waits for what a promise brings about.
func eventually(t *testing.T, expression string) {
	t.Helper()
	for range 200 {
		if truth(expression) {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	t.Errorf("waited in vain for %s", expression)
}

func TestSettingsAreKept(t *testing.T) {
	forget := func() {
		for name := range new(Settings).switches() {
			Keep(name, "")
		}
		showLarge(false)
	}
	t.Cleanup(forget)
	forget()
	if got := KeptSettings(); got != DefaultSettings() {
		t.Errorf("nothing kept gives %+v", got)
	}
	for _, want := range []Settings{
		{}, {Large: true}, {Aloud: true}, {Vibrate: true}, {Awake: true}, {Thousandths: true}, {Fahrenheit: true},
		{true, true, true, true, true, true},
	} {
		if !KeepSettings(want) {
			t.Errorf("%+v is not kept", want)
		}
		if got := KeptSettings(); got != want {
			t.Errorf("kept %+v, found %+v", want, got)
		}
		if truth(`document.documentElement.classList.contains("large")`) != want.Large {
			t.Errorf("%+v is not shown", want)
		}
	}
	Keep("vibrate", "perhaps")
	if KeptSettings().Vibrate {
		t.Error("what is neither on nor off counts as on")
	}
}

func TestSettingsWithoutStorage(t *testing.T) {
	inPlace(t, "window", "localStorage", `({ getItem() { throw new Error("no") }, setItem() { throw new Error("no") }, removeItem() { throw new Error("no") } })`)
	if KeepSettings(DefaultSettings()) {
		t.Error("kept where nothing can be")
	}
	if got := KeptSettings(); got != DefaultSettings() {
		t.Errorf("found %+v", got)
	}
}

// fakeLock stands in for the screen's lock: it counts what is asked for, and a
// hidden page loses what it holds.
const fakeLock = `(globalThis.locks = { asked: 0, held: [], refuse: false,
	take() { for (const l of this.held) l.released = true; this.held = [] } },
	{ request() { locks.asked++; if (locks.refuse) return Promise.reject(new Error("battery"));
		const l = { released: false, release() { this.released = true; locks.held = locks.held.filter(x => x !== this); return Promise.resolve() } };
		locks.held.push(l); return Promise.resolve(l) } })`

const (
	hide = `(Object.defineProperty(document, "visibilityState", { configurable: true, value: "hidden" }), locks.take(), document.dispatchEvent(new Event("visibilitychange")))`
	show = `(delete document.visibilityState, document.dispatchEvent(new Event("visibilitychange")))`
)

func TestTheScreenStaysOn(t *testing.T) {
	inPlace(t, "navigator", "wakeLock", fakeLock)
	t.Cleanup(func() { StayAwake(false, nil) })
	refusals := 0
	refused := func() { refusals++ }
	StayAwake(true, refused)
	eventually(t, `locks.held.length === 1`)
	StayAwake(true, refused) // another screen of the same session
	time.Sleep(50 * time.Millisecond)
	if !truth(`locks.asked === 1`) {
		t.Error("a lock that is held is asked for again")
	}
	window().Call("eval", hide)
	time.Sleep(50 * time.Millisecond)
	if !truth(`locks.held.length === 0`) {
		t.Error("asked for while the page was hidden")
	}
	window().Call("eval", show)
	eventually(t, `locks.held.length === 1`)
	time.Sleep(50 * time.Millisecond) // until the answer is heard, too
	window().Call("eval", `(locks.take(), dispatchEvent(new Event("pageshow")))`)
	eventually(t, `locks.held.length === 1`)
	StayAwake(false, nil)
	eventually(t, `locks.held.length === 0`)
	window().Call("eval", `(document.dispatchEvent(new Event("visibilitychange")), dispatchEvent(new Event("pageshow")))`)
	time.Sleep(50 * time.Millisecond)
	if !truth(`locks.held.length === 0`) {
		t.Error("asked for after the session's end")
	}
	window().Call("eval", `locks.refuse = true`)
	StayAwake(true, refused)
	eventually(t, `locks.asked >= 4`)
	time.Sleep(50 * time.Millisecond)
	if refusals != 1 {
		t.Errorf("a refusal was told %d times", refusals)
	}
}

// A lock that comes after it was given up is let go.
func TestALateLockIsLetGo(t *testing.T) {
	inPlace(t, "navigator", "wakeLock", fakeLock)
	StayAwake(true, nil)
	StayAwake(false, nil)
	eventually(t, `locks.asked === 1 && locks.held.length === 0`)
}

func TestWithoutALockNothingHappens(t *testing.T) {
	inPlace(t, "navigator", "wakeLock", `undefined`)
	if CanStayAwake() {
		t.Error("a browser without it can")
	}
	StayAwake(true, func() { t.Error("refused") })
	StayAwake(false, nil)
}

// fakeVoice stands in for the phone's speech; an utterance ends when finish is
// called.
const fakeVoice = `(globalThis.spoken = [], globalThis.canceled = 0, Object.assign(new EventTarget(), {
	voices: [], getVoices() { return this.voices }, speak(u) { spoken.push(u) }, cancel() { canceled++ } }))`

func voices(list string) { window().Call("eval", `speechSynthesis.voices = `+list) }

func saidSoFar() string { return window().Call("eval", `spoken.map(u => u.text).join("|")`).String() }

func withVoice(t *testing.T) {
	t.Helper()
	inPlace(t, "window", "speechSynthesis", fakeVoice)
	inPlace(t, "window", "SpeechSynthesisUtterance", `function (text) { this.text = text }`)
	lang := document().Get("documentElement").Get("lang")
	document().Get("documentElement").Set("lang", "en")
	t.Cleanup(func() { Hush(); document().Get("documentElement").Set("lang", lang) })
}

const local = `[{ name: "far", lang: "en-GB", localService: false }, { name: "near", lang: "en-US", localService: true }]`

func TestOnlyVoicesOfThePhoneCount(t *testing.T) {
	withVoice(t)
	for list, want := range map[string]Voice{
		`[]`: NoVoice, `[{ lang: "en-GB", localService: false }]`: NoVoice, `[{ lang: "de-DE", localService: true }]`: OtherLanguage,
		local: HasVoice, `[{ lang: "en_US", localService: true }]`: HasVoice, `[{ lang: "EN", localService: true }]`: HasVoice,
	} {
		voices(list)
		if got := VoiceFor(); got != want {
			t.Errorf("%s gives %d, not %d", list, got, want)
		}
	}
	document().Get("documentElement").Set("lang", "de")
	voices(local)
	if VoiceFor() != OtherLanguage {
		t.Error("an English voice reads German")
	}
	told := 0
	OnVoices(func() { told++ })
	window().Call("eval", `speechSynthesis.dispatchEvent(new Event("voiceschanged"))`)
	if told != 1 {
		t.Errorf("new voices were told %d times", told)
	}
	inPlace(t, "window", "speechSynthesis", `undefined`)
	if VoiceFor() != NoVoice {
		t.Error("a browser without speech has a voice")
	}
	Say([]string{"nothing"}, func() { told++ })
	Hush()
	if told != 2 {
		t.Error("without a voice it is not through at once")
	}
}

func TestSentencesAreSaidOneByOne(t *testing.T) {
	withVoice(t)
	voices(local)
	done := 0
	Say([]string{"one", "two"}, func() { done++ })
	if saidSoFar() != "one" {
		t.Fatalf("said %q at once", saidSoFar())
	}
	if !truth(`spoken[0].voice.name === "near" && spoken[0].lang === "en-US"`) {
		t.Error("another voice than the phone's own")
	}
	window().Call("eval", `spoken[0].onend()`)
	if saidSoFar() != "one|two" || done != 0 {
		t.Errorf("said %q, through %d times", saidSoFar(), done)
	}
	window().Call("eval", `spoken[1].onend()`)
	if done != 1 {
		t.Errorf("through %d times", done)
	}
}

// What was broken off is never taken up again and never calls back.
func TestHushAndSayBreakOff(t *testing.T) {
	withVoice(t)
	voices(local)
	var done []string
	Say([]string{"a1", "a2"}, func() { done = append(done, "a") })
	late := window().Call("eval", `spoken[0].onend`)
	Say([]string{"b1"}, func() { done = append(done, "b") })
	if !truth(`spoken[0].onend === null`) || !late.Truthy() {
		t.Error("the first is still listened to")
	}
	window().Call("eval", `spoken[1].onend()`)
	Say([]string{"c1", "c2"}, func() { done = append(done, "c") })
	Hush()
	if got := saidSoFar(); got != "a1|b1|c1" {
		t.Errorf("said %q", got)
	}
	if !slices.Equal(done, []string{"b"}) {
		t.Errorf("through: %v", done)
	}
	Say([]string{"d1", "d2"}, func() { done = append(done, "d") })
	window().Call("eval", `spoken.at(-1).onerror()`)
	if !slices.Equal(done, []string{"b", "d"}) || strings.Contains(saidSoFar(), "d2") {
		t.Errorf("after an error: %v, said %q", done, saidSoFar())
	}
}

func TestVibrate(t *testing.T) {
	inPlace(t, "navigator", "vibrate", `p => { globalThis.felt = p; return true }`)
	if !CanVibrate() {
		t.Error("it cannot")
	}
	Vibrate(80, 150, 80)
	if !truth(`Array.isArray(felt) && felt.join() === "80,150,80"`) {
		t.Error("another pattern was played")
	}
	inPlace(t, "navigator", "vibrate", `undefined`)
	if CanVibrate() {
		t.Error("a browser without it can")
	}
	Vibrate(80)
}

const (
	iPhone  = `"Mozilla/5.0 (iPhone; CPU iPhone OS 17_5 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/17.5 Mobile/15E148 Safari/604.1"`
	other   = `"Mozilla/5.0 (iPhone; CPU iPhone OS 17_5 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) CriOS/126.0 Mobile/15E148 Safari/604.1"`
	desktop = `"Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/17.5 Safari/605.1.15"`
	android = `"Mozilla/5.0 (Linux; Android 14; K) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/126.0.0.0 Mobile Safari/537.36"`
)

func TestTheWayToTheHomeScreen(t *testing.T) {
	for _, c := range []struct {
		agent, touches string
		want           Install
	}{
		{iPhone, "5", ByShareMenu}, {other, "5", NoWay}, {desktop, "0", NoWay}, {desktop, "5", ByShareMenu}, {android, "5", NoWay},
	} {
		inPlace(t, "navigator", "userAgent", c.agent)
		inPlace(t, "navigator", "maxTouchPoints", c.touches)
		if got := HowToInstall(); got != c.want {
			t.Errorf("%s with %s touches: %d, not %d", c.agent, c.touches, got, c.want)
		}
	}
	inPlace(t, "navigator", "userAgent", iPhone)
	inPlace(t, "navigator", "standalone", `true`)
	if HowToInstall() != Installed {
		t.Error("from the home screen it still offers the way there")
	}
}

func TestTheBrowsersOwnOffer(t *testing.T) {
	changes := 0
	OnInstallChange(func() { changes++ })
	window().Call("eval", `(globalThis.prompts = 0, globalThis.coilbookInstall = {
		prompt() { prompts++; return Promise.resolve() }, userChoice: Promise.resolve({ outcome: "accepted" }) }, dispatchEvent(new Event("coilbook-install")))`)
	t.Cleanup(func() { window().Set("coilbookInstall", js.Null()) })
	if changes != 1 || HowToInstall() != AskBrowser {
		t.Errorf("told %d times, way %d", changes, HowToInstall())
	}
	answers := make(chan bool, 2)
	AskInstall(func(accepted bool) { answers <- accepted })
	if !<-answers || !truth(`prompts === 1`) {
		t.Error("the user was not asked, or the answer is lost")
	}
	AskInstall(func(accepted bool) { answers <- accepted })
	if <-answers || !truth(`prompts === 1`) {
		t.Error("one offer was used twice")
	}
	if HowToInstall() == AskBrowser {
		t.Error("a used offer still counts")
	}
}
