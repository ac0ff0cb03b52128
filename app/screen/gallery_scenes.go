//go:build gallery

package screen

import (
	"cmp"

	"github.com/google/uuid"

	"coilbook/app/desk"
	"coilbook/app/device"
	"coilbook/engine/check"
)

// scene is one state of one screen.
type scene struct {
	Name     string
	Path     string // of the screen in the app
	Press    string // ids of what is pressed once it stands, with spaces between
	Shows    string // selector of what is there in the end; "h1" unless said
	Empty    bool   // no records
	Practice string // what is kept of a practice bench
	Drafts   map[check.ID]desk.Draft

	Set     func(*device.Settings) // what is chosen for the phone
	Voice   device.Voice           // HasVoice unless said
	Install device.Install
	Unable  bool // the phone cannot speak, vibrate or stay on
	Unkept  bool // the browser keeps no choices
	Hint    bool // a first result was just seen
	Dark    bool // the phone refused to keep its screen on
}

func sceneNamed(name string) (scene, bool) {
	for _, sc := range scenes() {
		if sc.Name == name {
			return sc, true
		}
	}
	return scene{}, false
}

// scenes is the whole gallery, in the order of the app.
func scenes() []scene {
	all := []scene{
		{Name: "start", Path: "", Shows: "#resume"},
		{Name: "start-first-time", Path: "", Empty: true},
		{Name: "setup-bench", Path: "setup/bench"},
		{Name: "setup-no-charge", Path: "setup/no-charge"},
		{Name: "setup-cuts-out-hot", Path: "setup/cuts-out-hot", Empty: true},
		{Name: "setup-colours", Path: setupPath(recordID("colours")), Shows: "#colour-charge-1"},
		{Name: "setup-fahrenheit", Path: "setup/bench", Set: inFull},
		{Name: "setup-of-a-session", Path: setupPath(recordID("bad")), Shows: "#begin"},

		onPad("check-empty", "fresh", "lead-zero", ""),
		{Name: "check-refused", Path: checkPath(recordID("fresh"), "lead-zero"), Press: "enter", Shows: ".because.problem"},
		onPad("check-in-spec", "fresh-in", "lead-zero", "0.3"),
		onPad("check-out-of-spec", "pad", "charge-core-1", "0.34"),
		onPad("check-cannot-tell", "pad", "exciter-cranking", "31.0"),
		onPad("check-open-line", "pad-open", "charge-pair-1-2", "open line"),
		onPad("check-two-meanings", "pad-two", "pickup", "1,234"),
		onPad("check-which-unit", "pad-unit", "exciter", "0.285"),
		{Name: "check-entered", Path: checkPath(recordID("bad"), "charge-core-1"), Shows: "#verdict"},
		{Name: "check-skipped", Path: checkPath(recordID("unclear"), "exciter"), Shows: ".chip"},
		{Name: "check-no-charge", Path: checkPath(recordID("charging"), "core-continuity"), Shows: "#enter"},
		{Name: "check-colours", Path: checkPath(recordID("colours"), "charge-pair-1-2"), Shows: ".wire-legend"},
		{Name: "check-colours-black", Path: checkPath(recordID("colours"), "charge-core-2"), Shows: ".wire-legend"},
		{Name: "check-nowhere", Path: checkPath(recordID("bad"), "no-such-check")},

		{Name: "check-read-aloud", Path: checkPath(recordID("bad"), "charge-core-1"), Press: "read-aloud", Shows: "#read-aloud[aria-pressed=true]"},
		{Name: "check-no-voice", Path: checkPath(recordID("bad"), "charge-core-2"), Unable: true, Shows: "#no-voice"},
		{Name: "check-screen-dark", Path: checkPath(recordID("bad"), "charge-core-3"), Dark: true, Shows: "#dark"},
		{Name: "check-in-thousandths", Path: checkPath(recordID("good"), "pickup-gap"), Set: inFull, Shows: "#verdict"},

		{Name: "sheet-begun", Path: sheetPath(recordID("pad")), Shows: "#rows"},
		{Name: "sheet-done", Path: sheetPath(recordID("bad")), Shows: "#rows"},
		{Name: "method", Path: methodPath(recordID("bad"), check.VoltAmp), Shows: "#begin"},
		{Name: "result-good", Path: resultPath(recordID("good")), Shows: "#parts"},
		{Name: "result-bad", Path: resultPath(recordID("bad")), Shows: "#parts"},
		{Name: "result-other-units", Path: resultPath(recordID("good")), Set: inFull, Shows: "#parts"},
		{Name: "result-unclear", Path: resultPath(recordID("unclear")), Shows: "#parts"},
		{Name: "result-output", Path: resultPath(recordID("output")), Shows: "#output"},
		{Name: "earlier", Path: earlierPath(recordID("moped-april")), Shows: "#trends .plot"},
		{Name: "earlier-none", Path: earlierPath(recordID("good")), Shows: "h1"},
		{Name: "wire", Path: wirePath(recordID("bad"))},

		{Name: "find-suspects", Path: findPath(recordID("find")), Shows: "#suspects"},
		{Name: "find-readings", Path: findPath(recordID("find-some")), Shows: "#suspects"},
		{Name: "find-output", Path: findPath(recordID("output")), Shows: "#output"},
		{Name: "find-refused", Path: findPath(recordID("find-some")), Press: "find-enter", Shows: "#find-problem"},
		{Name: "find-others", Path: findPath(recordID("find-some")), Press: "other-check", Shows: "#other-checks"},
		{Name: "find-look", Path: findPath(recordID("find-some")), Press: "other-check other-fuse", Shows: "#say-yes"},
		{Name: "find-diode", Path: findPath(recordID("find-some")), Press: "other-check other-diode-plus-1", Shows: "#find-reading"},
		{Name: "find-diodes-read", Path: findPath(recordID("find-diodes")), Shows: "#said"},
		{Name: "find-taken-again", Path: findPath(recordID("find-some")), Press: "said-battery-rest", Shows: "#count-both"},
		{Name: "find-odd", Path: findPath(recordID("find-odd")), Shows: "#next-check"},
		{Name: "finding-to-confirm", Path: findPath(recordID("find-confirm")), Shows: "main:has(#next-check) #finding"},
		{Name: "finding-winding", Path: findPath(recordID("find-winding")), Shows: "#finding"},
		{Name: "finding-fuse", Path: findPath(recordID("find-fuse")), Shows: "#finding"},
		{Name: "finding-exciter", Path: findPath(recordID("find-exciter")), Shows: "#finding"},
		{Name: "finding-double", Path: findPath(recordID("find-double")), Shows: "#order"},
		{Name: "finding-nothing", Path: findPath(recordID("find-nothing")), Shows: "main:has(#finding) #off-the-list"},

		{Name: "practice", Path: "practice", Shows: "#open-code"},
		{Name: "practice-going-on", Path: "practice", Practice: benchKept(""), Shows: "#go-on"},
		{Name: "practice-bad-code", Path: "practice", Press: "open-code", Shows: "#open-code"},
		{Name: "practice-bench", Path: "practice/" + galleryBench, Shows: "#take"},
		{Name: "practice-dial", Path: "practice/" + galleryBench, Press: "fold-dial", Shows: "#panel-dial"},
		{Name: "practice-state", Path: "practice/" + galleryBench, Press: "fold-state", Shows: "#panel-state"},
		{Name: "practice-log", Path: "practice/" + galleryBench, Practice: benchKept(""), Press: "wave", Shows: "#plot"},
		{Name: "practice-naming", Path: "practice/" + galleryBench + "/name", Practice: benchKept(""), Press: "fault-phase-to-core", Shows: "#chosen:not(:empty)"},
		{Name: "practice-truth", Path: "practice/" + galleryBench + "/truth", Practice: benchKept("phase-to-core"), Shows: "#guided"},
		{Name: "practice-truth-wrong", Path: "practice/" + galleryBench + "/truth", Practice: benchKept("exciter-open"), Shows: "#guided"},

		{Name: "meters", Path: "meters", Shows: "#own-meters article"},
		{Name: "meters-none", Path: "meters", Empty: true, Shows: "#describe"},
		{Name: "meter-new", Path: "meter/new", Shows: "#save-sheet"},
		{Name: "meter-sheet", Path: meterPath(recordID("meter")), Shows: "#save-sheet"},
		onPad("self-check", "meter-begun", "battery-dc", "12.6"),
		{Name: "self-check-sheet", Path: sheetPath(recordID("meter")), Shows: "#rows"},
		{Name: "self-check-result", Path: resultPath(recordID("meter"))},

		{Name: "sessions", Path: "sessions", Shows: "#session-rows .session"},
		{Name: "sessions-none", Path: "sessions", Empty: true, Shows: "#examples"},
		{Name: "sessions-install", Path: "sessions", Hint: true, Install: device.AskBrowser, Shows: "#install-hint"},
		{Name: "sessions-install-by-share", Path: "sessions", Hint: true, Install: device.ByShareMenu, Shows: "#by-share"},
		{Name: "about", Path: "about"},
		{Name: "phone", Path: "phone", Install: device.AskBrowser, Shows: "#set-awake"},
		{Name: "phone-other-choices", Path: "phone", Set: inFull, Install: device.Installed, Shows: "#set-aloud.on"},
		{Name: "phone-unable", Path: "phone", Unable: true, Shows: "#cannot-awake"},
		{Name: "phone-other-language", Path: "phone", Voice: device.OtherLanguage, Install: device.ByShareMenu, Shows: "#cannot-aloud"},
		{Name: "phone-unkept", Path: "phone", Unkept: true, Press: "set-vibrate", Shows: ".problem:not(:empty)"},
		{Name: "nowhere", Path: "no/such/place", Shows: "#to-start"},
		{Name: "no-such-session", Path: resultPath(uuid.UUID{1}), Shows: "#to-start"},
	}
	for i := range all {
		all[i].Shows = cmp.Or(all[i].Shows, "h1")
	}
	return all
}

// inFull is the other choice everywhere.
func inFull(set *device.Settings) {
	*set = device.Settings{Large: true, Aloud: true, Vibrate: true, Thousandths: true, Fahrenheit: true}
}

// onPad is a check with a text on the pad that is not entered.
func onPad(name, record string, c check.ID, text string) scene {
	sc := scene{Name: name, Path: checkPath(recordID(record), c), Shows: "#enter"}
	if text != "" {
		sc.Drafts = map[check.ID]desk.Draft{c: {Text: text}}
	}
	return sc
}
