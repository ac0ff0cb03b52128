//go:build !js

package device

// CanStayAwake reports whether the browser can keep the screen on.
func CanStayAwake() bool { return false }

// StayAwake keeps the screen on until it is called with false.
func StayAwake(on bool, refused func()) {}

// VoiceFor tells whether the phone has a voice of its own that speaks the page's
// language.
func VoiceFor() Voice { return NoVoice }

// OnVoices calls tell when the phone has found its voices.
func OnVoices(tell func()) {}

// Say speaks sentences and calls done once it is through or gives up.
func Say(sentences []string, done func()) { done() }

// Hush ends what is being said.
func Hush() {}

// CanVibrate reports whether the browser has a way to vibrate.
func CanVibrate() bool { return false }

// Vibrate plays a pattern: milliseconds on, off, on and so forth.
func Vibrate(pattern ...int) {}

// HowToInstall is the way in which this browser puts the app on the home screen.
func HowToInstall() Install { return NoWay }

// OnInstallChange calls tell when that may have changed.
func OnInstallChange(tell func()) {}

// AskInstall has the browser ask the user and calls answered with what was said.
func AskInstall(answered func(accepted bool)) { answered(false) }

func showLarge(bool) {}
