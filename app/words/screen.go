package words

import (
	"errors"
	"strings"
	"time"

	"coilbook/app/tongue"
	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
	"coilbook/engine/spec"
)

// Title is a screen's; "" where it has none.
func Title(screen string) string { return say(titles.of(screen)) }

var titles = table[string, text]{
	{"start", "Start"}, {"setup", "Set-up"}, {"check", "Check"}, {"sheet", "All checks"}, {"result", "Result"},
	{"sessions", "Sessions"}, {"about", "Safety"}, {"meters", "Meters"}, {"meter", "Meter"}, {"nowhere", "Not found"},
	{"method", "Method"}, {"wire", "Wire"}, {"find", "Find the fault"},
	{"practice", "Practice"}, {"bench", "Practice bench"}, {"naming", "Name the fault"}, {"truth", "What it was"}, {"earlier", EarlierTitle},
	{"phone", PhoneTitle},
}

// Words of the frame.
var (
	Back          = text("Back")
	SavingOpening = text("opening…")
	SavingDone    = text("Saved ✓")
	SavingNow     = text("saving…")
	SavingFailed  = text("Not saved")
	SavingNowhere = text("not kept")
	LookingUp     = text("Reading the record…")
	NoStore       = text("This browser keeps no records (private mode?). Everything works; use “Save as file” before you close it.")
	UpdateReady   = text("A new version is ready.")
	UpdateNow     = text("Use it now")
	TryAgain      = text("Try again")
)

// Words of the start screen.
var (
	StartQuestion = text("What is the machine doing?")
	StartScope    = text("The checks cover the generator; “Suspects, and the next check” goes on to battery, regulator, wiring and ignition. All records stay on this phone.")
	Continue      = text("Continue")
)

// Words of the set-up.
var (
	SetupTitle = text("What do you have in front of you?")
	SetupHint  = text("Change what you know and leave the rest: every answer has a safe default.")
	SetupBegin = text("Start the checks")
	SetupKeep  = text("Keep these answers")
	AskLeads   = text("Charge leads in the plug (same colour)")
	AskPoles   = text("Poles on the stator")
	FewerPoles = text("Fewer poles")
	MorePoles  = text("More poles")
	AskExciter = text("Is one pole wrapped in tape or thin wire (exciter)?")
	AskPickup  = text("Is there a pickup beside the flywheel?")
	AskGround  = text("Does a plug lead go to the core (ground)?")
	AskMeter   = text("Your meter")
	AskProfile = text("Limits to judge by")
	AskAir     = text("Air temperature, °C")
	AirHint    = text("not sure")
	AskName    = text("Name of the machine")
	NameHint   = text("optional")
	NotSure    = text("Not sure")
	Yes        = text("Yes")
	No         = text("No")
	BadAir     = text("Air temperature: type −40 to 60 °C, or leave it empty.")
)

// Words of a check.
var (
	TrapsTitle   = text("What spoils this reading")
	CautionTitle = text("Take care")
	DialLabel    = text("Dial")
	JacksLabel   = text("Sockets")
	WhereLabel   = text("Plug, engine")
	ToSheet      = text("See all checks")
	PadLabel     = text("Reading")
	PadHint      = text("Type what the meter shows.")
	TypeFirst    = text("Type the number on the display first, or choose “can't do it”.")
	SkippedHint  = text("Left out. Type a reading to do it after all.")
	NotDone      = text("not done")
	ToDo         = text("to do")
	WhichOne     = text("Which one?")
	WhichUnit    = text("Which unit does the meter show?")
	KeyOpen      = text("open line")
	KeyUnsettled = text("won't settle")
	KeySkip      = text("can't do it")
	Erase        = text("Erase")
	Noted        = text("noted")
	DoubtTitle   = text("Where the doubt comes from")
	RunTitle     = text("Readings of this point")
	ReadOnceMore = text("Read once more")
	AgainHint    = text("Lift the probes, place them anew, and type what the meter shows now.")
)

// TakeAgain names the button of one reading of several.
func TakeAgain(n int, reading string) string {
	return say("Reading %d: %s. Tap to take it again", n, reading)
}

// TakeAgainHint says that what is typed takes the place of one reading.
func TakeAgainHint(n int) string { return say("Type reading %d anew.", n) }

// TooSmallDrop says that a drop shows no current.
var TooSmallDrop = text("Next to nothing: the bulb must burn, and the probes sit on bare metal.")

// Feeds says what a reading without a verdict of its own is for.
func Feeds(c check.Check) string {
	switch c.Measures {
	case spec.ResistorDrop:
		return say("Noted. It counts with the drop over the winding: read that next.")
	case spec.WindingDrop:
		return say("Noted. It counts with the drop over the known resistor and the resistor's value.")
	case spec.HotResistance:
		return say("Noted. It counts with the same reading taken cold.")
	}
	return say("Noted. What it tells stands in the result.")
}

// Words of sheet, result and list.
var (
	SheetHint     = text("Tap any row to enter or correct it.")
	PairsAlike    = text("Pairs alike")
	ToSetup       = text("Change the set-up")
	ToResult      = text("See the result")
	SaveFile      = text("Save as file")
	GoOn          = text("Go on")
	Finish        = text("Finish")
	NoFile        = text("The file could not be written: try again.")
	UntestedTitle = text("What remains untested")
	SessionsTitle = text("Saved on this phone")
	ShowExamples  = text("Put three examples here")
	AboutExamples = text("An invented workshop quad and a garden scooter; their readings are simulated. They can be removed like any other.")
	NoSessions    = text("Nothing saved yet. A session appears here with its first reading.")
	Delete        = text("Delete")
	Undo          = text("Undo")
	AboutTitle    = text("About Coilbook, and safety")
	LookTitle     = text("Look")
	NowhereTitle  = text("Nothing here")
	NoSuchPlace   = text("This address leads nowhere. Your records are untouched.")
	Unread        = text("That session could not be read just now. It is still on this phone.")
	NoSuchSession = text("That session is not on this phone.")
	NoSuchCheck   = text("The set-up of this machine has no such check.")
	ToStart       = text("To the start")
)

// Loading stands at the top until the program is there.
var Loading = text("Loading…")

// Offline says whether the signal may go now.
func Offline(ready bool) string {
	if ready {
		return say("works without signal")
	}
	return say("needs signal until loaded")
}

// Unreadable says that entries of a newer version are kept but not shown.
func Unreadable(n int) string {
	return count(n, "%d entry on this phone cannot be read by this version. It is kept; an update may show it.", "%d entries on this phone cannot be read by this version. They are kept; an update may show them.")
}

// Why the last entries are not on the device yet.
var (
	StoreSlow    = text("The phone's storage does not answer. Nothing is kept for now: load the page again, or “Save as file” before you close it.")
	StoreFull    = text("The phone is full: your readings are kept here but not saved. Free some room, then try again.")
	StoreNewer   = text("A newer Coilbook is open in another tab. Reload this one; “Save as file” keeps what is here.")
	StoreRefused = text("The phone did not take the last readings. They are kept here; do not close Coilbook.")
)

// CheckOf is the heading of the bar on a check.
func CheckOf(n, of int) string { return say("Check %d of %d", n, of) }

// Progress counts answered checks.
func Progress(done, of int) string {
	return tongue.Count(of, "%[1]d of %[2]d check done", "%[1]d of %[2]d checks done", done, of)
}

// TurnDial says what the button that shows the dial is for.
var TurnDial = text("Tap if yours stands elsewhere")

// ChangeUnit names the button that changes the unit.
func ChangeUnit(now string) string { return say("Unit %s. Tap to change", now) }

// Enter is the label of the main key.
func Enter(onlyOn bool) string {
	if onlyOn {
		return say("Next")
	}
	return say("Enter")
}

// Earlier says that a reading was corrected.
func Earlier(n int) string {
	if n == 0 {
		return ""
	}
	return count(n, "%d earlier reading kept", "%d earlier readings kept")
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
		return say("“%s” %s: %s.", bad.Text, told(bad.Reason), told(bad.WayOut))
	}
	var two *quantity.AmbiguousError
	if errors.As(err, &two) {
		return say("“%s” can mean %s or %s: choose one.", two.Text, Typed(two.Choices[0]), Typed(two.Choices[1]))
	}
	return err.Error() + "."
}

// MachineName is the name that was given; the examples have theirs in every language.
func MachineName(st session.State) string {
	if strings.HasPrefix(st.Setup.Name, "Example: ") {
		return told(st.Setup.Name)
	}
	return st.Setup.Name
}

// SessionName names a session in lists.
func SessionName(st session.State) string {
	if st.Setup.Name != "" {
		return MachineName(st) + ", " + lowerFirst(Aim(st.Setup.Aim))
	}
	return Aim(st.Setup.Aim)
}

// NextCheck names the next step on the sheet.
func NextCheck(name string) string { return say("Next: %s", name) }

// When writes a time for lists, in the phone's own time zone.
func When(t time.Time) string {
	t = t.Local()
	months := strings.Fields(say("Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec"))
	return say("%d %s %d, %s", t.Day(), months[t.Month()-1], t.Year(), t.Format("15:04"))
}

// Deleted says what was just removed.
func Deleted(name string) string { return say("Deleted: %s.", name) }

// OutcomeLong is the outcome for the legend.
func OutcomeLong(o spec.Outcome) string {
	if o == spec.CannotTell {
		return say("cannot tell with this meter")
	}
	return Outcome(o)
}

// PartResult says how far a part was tested and how it came out.
func PartResult(p assess.PartResult) string {
	if p.Tested == 0 {
		return say("not tested")
	}
	if p.Tested < p.Of && p.Outcome != spec.OutOfSpec {
		return say("%s so far, %d of %s", Outcome(p.Outcome), p.Tested, count(p.Of, "%d check", "%d checks"))
	}
	return say("%s, %d of %s", Outcome(p.Outcome), p.Tested, count(p.Of, "%d check", "%d checks"))
}

// Headline is the result in one sentence, never surer than the readings.
// Beside it, beyond is how many readings were taken for the suspects.
func Headline(r assess.Report, beyond int) string {
	var bad, open []string
	tested := 0
	for _, p := range r.Parts {
		tested += p.Tested
		switch {
		case p.Tested == 0:
		case p.Outcome == spec.OutOfSpec:
			bad = append(bad, lowerFirst(Part(p.Part)))
		case p.Outcome == spec.CannotTell:
			open = append(open, lowerFirst(Part(p.Part)))
		}
	}
	switch {
	case tested == 0 && beyond > 0:
		return count(beyond, "Generator not tested, %d reading for the suspects", "Generator not tested, %d readings for the suspects")
	case tested == 0:
		return say("Nothing measured yet")
	case len(bad) > 0:
		return say("Out of spec: %s", strings.Join(bad, ", "))
	case len(open) > 0:
		return say("No fault found, but cannot tell: %s", strings.Join(open, ", "))
	}
	return say("All that was measured is in spec")
}

// JudgedBy names limits and meter behind the verdicts.
func JudgedBy(b assess.Bench) string {
	return say("Judged by “%s” (wide, common practice) with the doubt of: %s.", ProfileName(b.Profile), MeterOf(b))
}

// Themes are the looks on offer.
func Themes() []Choice {
	return []Choice{{"light", say("Light, for the sun")}, {"dark", say("Dark")}, {"system", say("As the phone")}}
}
