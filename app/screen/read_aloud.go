package screen

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/device"
	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/check"
)

// readAloud is the button that reads a check, and stops it again. Where that was
// chosen it starts by itself with each new check. It ends when its check goes.
type readAloud struct {
	app.Compo
	Phone *phone
	Rev   int
	Small bool   // a sign without words
	Of    string // what is read: when it changes, another check has come
	Text  []string

	reads bool
	of    string
	post  func(func(app.Context))
}

// OnMount begins by itself where that was chosen.
func (r *readAloud) OnMount(ctx app.Context) {
	r.post = func(f func(app.Context)) { ctx.Dispatch(f) }
	r.arrive()
}

// OnUpdate notices another check.
func (r *readAloud) OnUpdate(app.Context) { r.arrive() }

// OnDismount ends the reading. A verdict that is being told goes on: it is why
// the check was left.
func (r *readAloud) OnDismount() {
	if r.Phone.verdict == nil {
		r.Phone.device.hush()
	}
}

func (r *readAloud) arrive() {
	if r.of == r.Of {
		return
	}
	r.of = r.Of
	switch {
	case r.Phone.set.Aloud:
		r.read(append(r.Phone.verdict, r.Text...))
	case r.reads:
		r.stop()
	}
}

func (r *readAloud) read(text []string) {
	if r.Phone.voice != device.HasVoice {
		return
	}
	r.Phone.verdict = nil
	of := r.Of
	r.post(func(app.Context) { r.reads = true })
	r.Phone.device.say(text, func() {
		r.post(func(app.Context) {
			if r.of == of {
				r.reads = false
			}
		})
	})
}

func (r *readAloud) stop() {
	r.Phone.device.hush()
	r.post(func(app.Context) { r.reads = false })
}

func (r *readAloud) press(app.Context) {
	if r.reads {
		r.stop()
		return
	}
	r.read(r.Text)
}

// Render draws the button; without a voice there is none.
func (r *readAloud) Render() app.UI {
	return part.When("aloud", r.Phone.voice == device.HasVoice, func() app.UI {
		class, sign := "aloud-act", "aloud"
		if r.reads {
			class, sign = "aloud-act on", "hush"
		}
		if r.Small {
			class += " small"
		}
		return part.Press(app.Button().Type("button").Class(class).ID("read-aloud").Aria("pressed", part.Aria(r.reads)).Aria("label", words.ReadAloud).Body(
			part.Icon("aloud-sign", sign), part.When("bare", !r.Small, func() app.UI { return app.Span().Text(words.ReadAloud) }),
		), r.press, r.reads, r.Of)
	})
}

// toNoVoice unfolds why nothing is read aloud.
func toNoVoice(p *phone) app.UI {
	return part.When("bare", p.voice != device.HasVoice, func() app.UI {
		return app.Details().Class("traps").ID("no-voice").Body(app.Summary().Text(words.ReadAloud), part.Text("quiet", noVoice(p.voice)))
	})
}

// noVoice says why nothing can be read aloud.
func noVoice(v device.Voice) string {
	if v == device.OtherLanguage {
		return words.NoVoiceInLanguage
	}
	return words.NoVoice
}

// spokenCheck is a check's text for the voice.
func spokenCheck(b assess.Bench, c check.Check) []string {
	r, _ := c.Dial(b.Meter)
	return words.Spoken(c, b.Meter, r)
}

// tellVerdict makes the verdict on a reading, or on what is worked out from it,
// felt and heard, where it has one.
func tellVerdict(p *phone, b assess.Bench, l assess.Line) {
	if worked, ok := b.WorkedOut(l); ok {
		l = worked
	}
	if l.Read() && l.Judged() && l.Verdict.HasLimit {
		p.tell(l.Verdict.Outcome, words.SpokenVerdict(l.Check, l.Verdict))
	}
}
