package screen

import (
	"coilbook/app/device"
	"coilbook/app/words"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

// phone is what was chosen for this phone, in hand, and what the phone can do. All
// its methods run on the goroutine of the screens.
type phone struct {
	device   hands
	post     func(func()) // later, on the goroutine of the screens
	revision int

	set      device.Settings
	theme    string // "light", "dark" or "system"
	unkept   bool   // the browser keeps no choices
	voice    device.Voice
	vibrates bool
	wakes    bool // the browser can keep the screen on
	install  device.Install
	asked    bool // the browser asks the user to install, or has asked

	dark    bool     // the phone refused to keep its screen on, which is being said
	told    bool     // that was said once
	verdict []string // that is being read aloud, before the next check is
}

// hands are what a phone does, so that a stand-in can do it instead.
type hands struct {
	say     func(sentences []string, done func())
	hush    func()
	vibrate func(pattern ...int)
	awake   func(on bool, refused func())
	keep    func(name, text string) bool
	kept    func(name string) string
	save    func(device.Settings) bool
}

func realHands() hands {
	return hands{say: device.Say, hush: device.Hush, vibrate: device.Vibrate, awake: device.StayAwake,
		keep: device.Keep, kept: device.Kept, save: device.KeepSettings}
}

// newPhone takes what is kept on the device and listens to what it finds out
// later.
func newPhone(post func(func())) *phone {
	p := &phone{device: realHands(), post: post, set: device.KeptSettings(), theme: device.Theme(), vibrates: device.CanVibrate(), wakes: device.CanStayAwake()}
	p.look()
	p.inForce()
	device.OnVoices(func() { post(p.look) })
	device.OnInstallChange(func() { post(p.look) })
	return p
}

func (p *phone) touch() { p.revision++ }

// look finds out anew what the phone can do.
func (p *phone) look() {
	p.voice, p.install = device.VoiceFor(), device.HowToInstall()
	p.touch()
}

func (p *phone) inForce() {
	words.WriteIn(quantity.Chosen{Thousandths: p.set.Thousandths, Fahrenheit: p.set.Fahrenheit})
}

// choose changes one setting, at once and for later.
func (p *phone) choose(change func(*device.Settings)) {
	change(&p.set)
	p.unkept = !p.device.save(p.set)
	p.inForce()
	p.touch()
}

// wear changes the look, at once and for later.
func (p *phone) wear(theme string) {
	p.theme = theme
	device.SetTheme(theme)
	p.touch()
}

// during keeps the screen on while a person works through a session.
func (p *phone) during(at place) {
	p.device.awake(p.set.Awake && working(at), func() { p.post(p.refused) })
}

// working are the places where a hand may be on the probes.
func working(at place) bool {
	switch at.name {
	case "setup", "check", "sheet", "find", "method", "wire", "bench":
		return true
	}
	return false
}

// refused says once that the screen may go dark.
func (p *phone) refused() {
	if !p.told {
		p.told, p.dark = true, true
		p.touch()
	}
}

// feels are the patterns of the verdicts, in milliseconds on, off, on: told apart
// by how many and how long, through a glove.
var feels = map[spec.Outcome][]int{
	spec.InSpec:     {80},
	spec.OutOfSpec:  {300, 150, 300, 150, 300},
	spec.CannotTell: {80, 150, 80},
}

// tell makes a verdict felt and heard, as far as that was chosen.
func (p *phone) tell(o spec.Outcome, sentences []string) {
	if p.set.Vibrate {
		p.device.vibrate(feels[o]...)
	}
	if p.set.Aloud && p.voice == device.HasVoice {
		p.verdict = sentences
		p.device.say(sentences, func() { p.post(func() { p.verdict = nil }) })
	}
}

// worthInstalling notes that a result was seen that is safely kept: from now on
// the way to the home screen is worth a hint, once.
func (p *phone) worthInstalling() {
	if p.device.kept(installKey) == "" {
		p.device.keep(installKey, hintDue)
	}
}

// hint takes the hint, which is then given away, where there is a way to the home
// screen.
func (p *phone) hint() (due bool) {
	if p.device.kept(installKey) != hintDue || p.install != device.AskBrowser && p.install != device.ByShareMenu {
		return false
	}
	p.device.keep(installKey, hintGiven)
	return true
}

// What is kept of the hint.
const (
	installKey = "install"
	hintDue    = "due"
	hintGiven  = "given"
)

// ask has the browser ask the user to install.
func (p *phone) ask() {
	p.asked = true
	p.touch()
	device.AskInstall(func(accepted bool) {
		p.post(func() {
			p.asked = accepted
			p.look()
		})
	})
}
