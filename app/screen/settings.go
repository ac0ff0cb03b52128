package screen

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/device"
	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/spec"
)

// settings is what was chosen for this phone, all of it in force at once.
type settings struct {
	app.Compo
	Phone *phone
	Rev   int
}

// Render draws one card for each kind of choice.
func (s *settings) Render() app.UI {
	return app.Div().Class("page").Body(
		head(words.PhoneTitle, plainSign(), "about"),
		app.Main().Class("main").Body(
			heading(words.PhoneHeading),
			part.Text("quiet", words.PhoneHint),
			app.P().Class("problem").Attr("role", "status").Text(s.unkept()),
			s.onScreen(), s.busy(), s.units(), installCard(s.Phone), keys(),
		),
		foot(""),
	)
}

func (s *settings) unkept() string {
	if s.Phone.unkept {
		return words.PhoneUnkept
	}
	return ""
}

// onScreen is how the app looks and reads.
func (s *settings) onScreen() app.UI {
	var looks []option
	for _, t := range words.Themes() {
		looks = append(looks, option{t.Name, t.ID == s.Phone.theme, func() { s.Phone.wear(t.ID) }})
	}
	return choices(words.ScreenTitle,
		languages(),
		askOne("look", words.LookTitle, looks...),
		askOne("type", words.TypeTitle,
			s.either(words.TypeNormal, !s.Phone.set.Large, func(set *device.Settings) { set.Large = false }),
			s.either(words.TypeLarge, s.Phone.set.Large, func(set *device.Settings) { set.Large = true })),
	)
}

func (s *settings) busy() app.UI {
	p := s.Phone
	return choices(words.BusyTitle,
		s.onOff("awake", words.AwakeName, words.AwakeHint, orWhy(p.wakes, words.AwakeCannot), p.set.Awake, func(set *device.Settings) { set.Awake = !set.Awake }),
		s.onOff("aloud", words.AloudName, words.AloudHint, orWhy(p.voice == device.HasVoice, noVoice(p.voice)), p.set.Aloud, func(set *device.Settings) { set.Aloud = !set.Aloud }),
		part.When("bare", p.voice == device.HasVoice, func() app.UI {
			return part.Button("option", words.AloudTry, func(app.Context) { s.Phone.device.say([]string{words.SampleVoice}, func() {}) }).ID("try-voice")
		}),
		s.onOff("vibrate", words.VibrateName, words.VibrateHint, orWhy(p.vibrates, words.VibrateCannot), p.set.Vibrate, func(set *device.Settings) { set.Vibrate = !set.Vibrate }),
		part.When("bare", p.vibrates, func() app.UI {
			return part.Button("option", words.VibrateTry, func(app.Context) { s.Phone.device.vibrate(allFeels()...) }).ID("try-vibrate")
		}),
	)
}

// allFeels is one pattern after the other, with a second between them.
func allFeels() []int {
	const apart = 1000
	var out []int
	for _, o := range []spec.Outcome{spec.InSpec, spec.OutOfSpec, spec.CannotTell} {
		if len(out) > 0 {
			out = append(out, apart)
		}
		out = append(out, feels[o]...)
	}
	return out
}

func (s *settings) units() app.UI {
	set := s.Phone.set
	return choices(words.UnitsTitle,
		askOne("gap-unit", words.GapUnits,
			s.either(words.GapMillis, !set.Thousandths, func(set *device.Settings) { set.Thousandths = false }),
			s.either(words.GapThous, set.Thousandths, func(set *device.Settings) { set.Thousandths = true })),
		askOne("warmth-unit", words.WarmthUnits,
			s.either("°C", !set.Fahrenheit, func(set *device.Settings) { set.Fahrenheit = false }),
			s.either("°F", set.Fahrenheit, func(set *device.Settings) { set.Fahrenheit = true })),
		part.Text("quiet", words.UnitsHint),
	)
}

func (s *settings) either(label string, on bool, change func(*device.Settings)) option {
	return option{label, on, func() { s.Phone.choose(change) }}
}

func orWhy(can bool, why string) string {
	if can {
		return ""
	}
	return why
}

// onOff is a switch with its state in words; cannot says why it has none.
func (s *settings) onOff(id, name, hint, cannot string, on bool, change func(*device.Settings)) app.UI {
	if cannot != "" {
		return app.Div().Class("switch still").ID("cannot-" + id).Body(
			app.Span().Class("row-name").Body(app.Strong().Text(name), app.Small().Text(cannot)))
	}
	state, class := words.Off, "switch"
	if on {
		state, class = words.On, "switch on"
	}
	return part.Press(app.Button().Type("button").Class(class).ID("set-"+id).Attr("role", "switch").Aria("checked", part.Aria(on)).Body(
		app.Span().Class("row-name").Body(app.Strong().Text(name), app.Small().Text(hint)),
		app.Span().Class("switch-state").Aria("hidden", "true").Text(state),
	), func(app.Context) { s.Phone.choose(change) }, id, on)
}

func choices(title string, body ...app.UI) app.UI {
	return app.Section().Class("card choosing").Body(append([]app.UI{app.H2().Text(title)}, body...)...)
}

func keys() app.UI {
	var rows []app.UI
	for _, k := range words.Keys() {
		rows = append(rows, app.Dt().Body(app.Kbd().Text(k.Keys)), app.Dd().Text(k.Does))
	}
	return app.Section().Class("card").ID("keys").Body(
		app.H2().Text(words.KeysTitle), part.Text("quiet", words.KeysHint), app.Dl().Class("key-list").Body(rows...))
}
