package device

// Voice says whether the phone can read aloud by itself.
type Voice int

// A phone has no voice of its own, one of another language, or the one wanted.
const (
	NoVoice Voice = iota
	OtherLanguage
	HasVoice
)

// Install is a way to put the app on the home screen.
type Install int

// A browser has no way that could be named, has one of its own, leaves it to the
// menu for sharing, or shows the app as installed already.
const (
	NoWay Install = iota
	AskBrowser
	ByShareMenu
	Installed
)
