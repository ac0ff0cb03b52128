//go:build js && wasm

package device

import (
	"strings"
	"syscall/js"
)

// speech is what is being said. Every call of Say or Hush makes what came before
// it stale, whatever the browser still tells of it.
var speech struct {
	turn int
	now  js.Value // the utterance, which some browsers forget when nothing holds it
	free func()
}

func synthesis() js.Value { return window().Get("speechSynthesis") }

// VoiceFor tells whether the phone has a voice of its own that speaks the page's
// language. Voices that are spoken by a server are none: nothing leaves the
// phone.
func VoiceFor() Voice {
	_, v := voice()
	return v
}

func voice() (js.Value, Voice) {
	if !synthesis().Truthy() || !window().Get("SpeechSynthesisUtterance").Truthy() {
		return js.Undefined(), NoVoice
	}
	all, answer := synthesis().Call("getVoices"), NoVoice
	for i := range all.Length() {
		v := all.Index(i)
		if !v.Get("localService").Truthy() {
			continue
		}
		if speaks(v.Get("lang").String(), language()) {
			return v, HasVoice
		}
		answer = OtherLanguage
	}
	return js.Undefined(), answer
}

// speaks compares the languages of two tags, such as "en" and "en-GB"; older
// phones write "en_GB".
func speaks(tag, wanted string) bool {
	first := func(t string) string {
		t, _, _ = strings.Cut(strings.ReplaceAll(strings.ToLower(t), "_", "-"), "-")
		return t
	}
	return first(tag) == first(wanted)
}

func language() string {
	if l := document().Get("documentElement").Get("lang").String(); l != "" {
		return l
	}
	return "en"
}

// OnVoices calls tell when the phone has found its voices, which browsers do some
// time after the page came.
func OnVoices(tell func()) {
	if synthesis().Truthy() && synthesis().Get("addEventListener").Truthy() {
		listen(synthesis(), "voiceschanged", tell)
	}
}

// Say speaks sentences one after the other in the place of what is being said,
// with a voice of the phone's own in the page's language, and calls done once it
// is through or gives up. Without such a voice it calls done at once.
func Say(sentences []string, done func()) {
	Hush()
	speech.turn++
	turn := speech.turn
	v, has := voice()
	if has != HasVoice {
		done()
		return
	}
	var next func(i int)
	next = func(i int) {
		if turn != speech.turn {
			return
		}
		if i == len(sentences) {
			speech.now = js.Undefined()
			done()
			return
		}
		utter(v, sentences[i], func(ended bool) {
			if !ended {
				i = len(sentences) - 1
			}
			next(i + 1)
		})
	}
	next(0)
}

// utter speaks one sentence: what is long is broken off by some browsers.
func utter(v js.Value, sentence string, done func(ended bool)) {
	u := window().Get("SpeechSynthesisUtterance").New(sentence)
	u.Set("voice", v)
	u.Set("lang", v.Get("lang"))
	var ended, failed js.Func
	over := false
	answer := func(well bool) {
		if !over {
			over = true
			ended.Release()
			failed.Release()
			done(well)
		}
	}
	ended = js.FuncOf(func(js.Value, []js.Value) any { answer(true); return nil })
	failed = js.FuncOf(func(js.Value, []js.Value) any { answer(false); return nil })
	u.Set("onend", ended)
	u.Set("onerror", failed)
	speech.now = u
	speech.free = func() {
		u.Set("onend", js.Null())
		u.Set("onerror", js.Null())
		if !over {
			over = true
			ended.Release()
			failed.Release()
		}
	}
	synthesis().Call("speak", u)
}

// Hush ends what is being said; what waited for its end is not called.
func Hush() {
	speech.turn++
	if speech.free != nil {
		speech.free()
		speech.free = nil
	}
	speech.now = js.Undefined()
	if synthesis().Truthy() {
		synthesis().Call("cancel")
	}
}
