package words

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
	"coilbook/engine/spec"
)

// Titles of the screens.
var Titles = map[string]string{
	"start": "Start", "setup": "Set-up", "check": "Check", "sheet": "All checks", "result": "Result",
	"sessions": "Sessions", "about": "Safety", "meters": "Meters", "meter": "Meter", "nowhere": "Not found",
	"method": "Method", "wire": "Wire", "find": "Find the fault",
	"practice": "Practice", "bench": "Practice bench", "naming": "Name the fault", "truth": "What it was", "earlier": EarlierTitle,
	"phone": PhoneTitle,
}

// Words of the frame.
const (
	Back          = "Back"
	SavingOpening = "opening…"
	SavingDone    = "Saved ✓"
	SavingNow     = "saving…"
	SavingFailed  = "Not saved"
	SavingNowhere = "not kept"
	LookingUp     = "Reading the record…"
	NoStore       = "This browser keeps no records (private mode?). Everything works; use “Save as file” before you close it."
	UpdateReady   = "A new version is ready."
	UpdateNow     = "Use it now"
	TryAgain      = "Try again"
)

// Words of the start screen.
const (
	StartQuestion = "What is the machine doing?"
	StartScope    = "The checks cover the generator; “Suspects, and the next check” goes on to battery, regulator, wiring and ignition. All records stay on this phone."
	Continue      = "Continue"
)

// Words of the set-up.
const (
	SetupTitle = "What do you have in front of you?"
	SetupHint  = "Change what you know and leave the rest: every answer has a safe default."
	SetupBegin = "Start the checks"
	SetupKeep  = "Keep these answers"
	AskLeads   = "Charge leads in the plug (same colour)"
	AskPoles   = "Poles on the stator"
	FewerPoles = "Fewer poles"
	MorePoles  = "More poles"
	AskExciter = "Is one pole wrapped in tape or thin wire (exciter)?"
	AskPickup  = "Is there a pickup beside the flywheel?"
	AskGround  = "Does a plug lead go to the core (ground)?"
	AskMeter   = "Your meter"
	AskProfile = "Limits to judge by"
	AskAir     = "Air temperature, °C"
	AirHint    = "not sure"
	AskName    = "Name of the machine"
	NameHint   = "optional"
	NotSure    = "Not sure"
	Yes        = "Yes"
	No         = "No"
	BadAir     = "Air temperature: type −40 to 60 °C, or leave it empty."
)

// Words of a check.
const (
	TrapsTitle   = "What spoils this reading"
	CautionTitle = "Take care"
	DialLabel    = "Dial"
	JacksLabel   = "Sockets"
	WhereLabel   = "Plug, engine"
	ToSheet      = "See all checks"
	PadLabel     = "Reading"
	PadHint      = "Type what the meter shows."
	TypeFirst    = "Type the number on the display first, or choose “can't do it”."
	SkippedHint  = "Left out. Type a reading to do it after all."
	NotDone      = "not done"
	ToDo         = "to do"
	WhichOne     = "Which one?"
	WhichUnit    = "Which unit does the meter show?"
	KeyOpen      = "open line"
	KeyUnsettled = "won't settle"
	KeySkip      = "can't do it"
	Erase        = "Erase"
	Noted        = "noted"
	DoubtTitle   = "Where the doubt comes from"
	RunTitle     = "Readings of this point"
	ReadOnceMore = "Read once more"
	AgainHint    = "Lift the probes, place them anew, and type what the meter shows now."
)

// TakeAgain names the button of one reading of several.
func TakeAgain(n int, reading string) string {
	return fmt.Sprintf("Reading %d: %s. Tap to take it again", n, reading)
}

// TakeAgainHint says that what is typed takes the place of one reading.
func TakeAgainHint(n int) string { return fmt.Sprintf("Type reading %d anew.", n) }

// TooSmallDrop says that a drop shows no current.
const TooSmallDrop = "Next to nothing: the bulb must burn, and the probes sit on bare metal."

// Feeds says what a reading without a verdict of its own is for.
func Feeds(c check.Check) string {
	switch c.Measures {
	case spec.ResistorDrop:
		return "Noted. It counts with the drop over the winding: read that next."
	case spec.WindingDrop:
		return "Noted. It counts with the drop over the known resistor and the resistor's value."
	case spec.HotResistance:
		return "Noted. It counts with the same reading taken cold."
	}
	return "Noted. What it tells stands in the result."
}

// Words of sheet, result and list.
const (
	SheetHint     = "Tap any row to enter or correct it."
	PairsAlike    = "Pairs alike"
	ToSetup       = "Change the set-up"
	ToResult      = "See the result"
	SaveFile      = "Save as file"
	GoOn          = "Go on"
	Finish        = "Finish"
	NoFile        = "The file could not be written: try again."
	UntestedTitle = "What remains untested"
	SessionsTitle = "Saved on this phone"
	ShowExamples  = "Put three examples here"
	AboutExamples = "An invented workshop quad and a garden scooter; their readings are simulated. They can be removed like any other."
	NoSessions    = "Nothing saved yet. A session appears here with its first reading."
	Delete        = "Delete"
	Undo          = "Undo"
	AboutTitle    = "About Coilbook, and safety"
	LookTitle     = "Look"
	NowhereTitle  = "Nothing here"
	NoSuchPlace   = "This address leads nowhere. Your records are untouched."
	Unread        = "That session could not be read just now. It is still on this phone."
	NoSuchSession = "That session is not on this phone."
	NoSuchCheck   = "The set-up of this machine has no such check."
	ToStart       = "To the start"
)

// Offline says whether the signal may go now.
func Offline(ready bool) string {
	if ready {
		return "works without signal"
	}
	return "needs signal until loaded"
}

// Unreadable says that entries of a newer version are kept but not shown.
func Unreadable(n int) string {
	return fmt.Sprintf("%s on this phone cannot be read by this version. They are kept; an update may show them.", count(n, "entry", "entries"))
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// Why the last entries are not on the device yet.
const (
	StoreSlow    = "The phone's storage does not answer. Nothing is kept for now: load the page again, or “Save as file” before you close it."
	StoreFull    = "The phone is full: your readings are kept here but not saved. Free some room, then try again."
	StoreNewer   = "A newer Coilbook is open in another tab. Reload this one; “Save as file” keeps what is here."
	StoreRefused = "The phone did not take the last readings. They are kept here; do not close Coilbook."
)

// CheckOf is the heading of the bar on a check.
func CheckOf(n, of int) string { return fmt.Sprintf("Check %d of %d", n, of) }

// Progress counts answered checks.
func Progress(done, of int) string {
	return fmt.Sprintf("%d of %s done", done, count(of, "check", "checks"))
}

// TurnDial says what the button that shows the dial is for.
const TurnDial = "Tap if yours stands elsewhere"

// ChangeUnit names the button that changes the unit.
func ChangeUnit(now string) string { return "Unit " + now + ". Tap to change" }

// Enter is the label of the main key.
func Enter(onlyOn bool) string {
	if onlyOn {
		return "Next"
	}
	return "Enter"
}

// Earlier says that a reading was corrected.
func Earlier(n int) string {
	if n == 0 {
		return ""
	}
	return count(n, "earlier reading", "earlier readings") + " kept"
}

// Entered comes before the reason of a reading already entered.
func Entered(earlier int) string {
	if earlier == 0 {
		return ""
	}
	return Earlier(earlier) + ". "
}

// NotAReading turns a parser's error into the sentence on the pad.
func NotAReading(err error) string {
	var bad *quantity.UnreadableError
	if errors.As(err, &bad) {
		return "“" + bad.Text + "” " + bad.Reason + ": " + bad.WayOut + "."
	}
	return err.Error() + "."
}

// SessionName names a session in lists.
func SessionName(st session.State) string {
	if st.Setup.Name != "" {
		return st.Setup.Name + ", " + strings.ToLower(Aim(st.Setup.Aim))
	}
	return Aim(st.Setup.Aim)
}

// NextCheck names the next step on the sheet.
func NextCheck(name string) string { return "Next: " + name }

// When writes a time for lists, in the phone's own time zone.
func When(t time.Time) string { return t.Local().Format("2 Jan 2006, 15:04") }

// Deleted says what was just removed.
func Deleted(name string) string { return "Deleted: " + name + "." }

// OutcomeLong is the outcome for the legend.
func OutcomeLong(o spec.Outcome) string {
	if o == spec.CannotTell {
		return "cannot tell with this meter"
	}
	return Outcome(o)
}

// PartResult says how far a part was tested and how it came out.
func PartResult(p assess.PartResult) string {
	if p.Tested == 0 {
		return "not tested"
	}
	soFar := ""
	if p.Tested < p.Of && p.Outcome != spec.OutOfSpec {
		soFar = " so far"
	}
	return fmt.Sprintf("%s%s, %d of %s", Outcome(p.Outcome), soFar, p.Tested, count(p.Of, "check", "checks"))
}

// Headline is the result in one sentence, never surer than the readings.
func Headline(r assess.Report) string {
	var bad, open []string
	tested := 0
	for _, p := range r.Parts {
		tested += p.Tested
		switch {
		case p.Tested == 0:
		case p.Outcome == spec.OutOfSpec:
			bad = append(bad, strings.ToLower(Part(p.Part)))
		case p.Outcome == spec.CannotTell:
			open = append(open, strings.ToLower(Part(p.Part)))
		}
	}
	switch {
	case tested == 0:
		return "Nothing measured yet"
	case len(bad) > 0:
		return "Out of spec: " + strings.Join(bad, ", ")
	case len(open) > 0:
		return "No fault found, but cannot tell: " + strings.Join(open, ", ")
	}
	return "All that was measured is in spec"
}

// JudgedBy names limits and meter behind the verdicts.
func JudgedBy(b assess.Bench) string {
	return "Judged by “" + b.Profile.Name + "” (wide, common practice) with the doubt of: " + MeterOf(b) + "."
}

// Themes are the looks on offer, by their ids, and their names.
var Themes = []struct{ ID, Name string }{{"light", "Light, for the sun"}, {"dark", "Dark"}, {"system", "As the phone"}}
