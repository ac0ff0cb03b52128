//go:build gallery

package screen

import (
	"cmp"

	"coilbook/app/device"
)

// phone stands in for the phone: it keeps nothing, never ends a sentence, and can
// do what the scene says.
func (sc scene) phone(post func(func())) *phone {
	set := device.DefaultSettings()
	if sc.Set != nil {
		sc.Set(&set)
	}
	kept := ""
	if sc.Hint {
		kept = hintDue
	}
	p := &phone{
		post: post, set: set, theme: device.Theme(), voice: cmp.Or(sc.Voice, device.HasVoice), install: sc.Install,
		vibrates: !sc.Unable, wakes: !sc.Unable, dark: sc.Dark, unkept: sc.Unkept,
		device: hands{
			say: func([]string, func()) {}, hush: func() {}, vibrate: func(...int) {}, awake: func(bool, func()) {},
			keep: func(_, text string) bool { kept = text; return true }, kept: func(string) string { return kept },
			save: func(device.Settings) bool { return !sc.Unkept },
		},
	}
	if sc.Unable {
		p.voice = device.NoVoice
	}
	p.inForce()
	return p
}
