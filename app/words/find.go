package words

import (
	"errors"
	"strings"

	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/meter"
)

// Words of the search for the fault.
var (
	WhyWord         = text("why")
	ToFind          = text("Suspects, and the next check")
	FindNotHere     = text("Suspects are named for a machine or its stator, not for a meter.")
	FindNoFaults    = text("The list of faults cannot be read: load the page again.")
	SuspectsTitle   = text("Suspects")
	NextCheckTitle  = text("Next check")
	OwnChoiceTitle  = text("The check you chose")
	ConfirmTitle    = text("Before you buy or mend")
	TakenAgainTitle = text("Take it again")
	FirstTitle      = text("Before it")
	NothingBefore   = text("All that it needs is open already.")
	StepsTitle      = text("How")
	AskReading      = text("What does the meter show?")
	AskLeaf         = text("Which leaf slides through?")
	AskUnitShown    = text("Unit")
	EnterReading    = text("Enter")
	SayOpen         = text("Open line")
	SayUnsettled    = text("Won't settle")
	SayCannot       = text("Can't do it")
	OtherCheck      = text("Another check")
	SuggestedCheck  = text("Back to the suggested check")
	LeaveAsItIs     = text("Leave it as it is")
	SaidTitle       = text("What the readings say")
	SaidHint        = text("Tap one to correct it.")
	FindingTitle    = text("The finding")
	NothingMore     = text("No further check is worth its minutes now.")
	ConfirmAbove    = text("One reading is left before you buy or mend anything: it stands above.")
	ToldApartTitle  = text("It may also be")
	NotToldApart    = text("The checks so far cannot tell these apart from it.")
	OffTheList      = text("Something that is not on the list")
	NotSettled      = text("Not settled yet")
	LeftOutEarlier  = text("left out earlier")
	notCounted      = text("Does not count:")
	CountBoth       = text("Count both")
	BeyondTitle     = text("Read for the suspects")
	GeneratorTitle  = text("Checks of the generator itself")
	FitNone         = text("The readings fit no fault of the list: one of them may be wrong, or it is something else. Take the oddest again before you go on.")
)

// FindHeading asks for the cause of what the machine does.
func FindHeading(a check.Aim) string {
	if a == check.Bench {
		return say("%s: is it sound?", Aim(a))
	}
	return say("%s: what is it?", Aim(a))
}

// FindProgress says how many checks of a search have an answer.
func FindProgress(answers int) string {
	return count(answers, "%d answer so far", "%d answers so far")
}

// Groups of the start screen.
var (
	ChargingAims = text("Battery and charging")
	SparkAims    = text("Ignition")
	BenchAims    = text("Out of the machine")
)

// Growing says how far the machines are drawn that readings are weighed against.
func Growing(ready, of int) string {
	if of == 0 {
		return say("Drawing virtual machines…")
	}
	return say("Drawing virtual machines with every fault, to compare yours with: %d of %d.", ready, of)
}

// SuspectsFrom says what the suspects rest on.
func SuspectsFrom(minutes float64, readings int) string {
	if readings == 0 {
		return say("Nothing read yet: this is how often each is met.")
	}
	return say("After %s.", MinutesSpent(minutes, readings))
}

// Suspect names a fault of the catalogue, or that there is none.
func Suspect(f fault.Fault) string {
	switch {
	case f.ID == fault.None:
		return say("Nothing wrong that a check shows")
	case f.HotOnly:
		return say("%s, only when warm", Fault(f.Kind))
	}
	return namedFault(f)
}

// SuspectPart names the part of a suspect.
func SuspectPart(f fault.Fault) string {
	if f.ID == fault.None {
		return say("The complaint has another cause")
	}
	return PartsTogether(f.Parts())
}

// SuspectChance writes a probability, never as certain.
func SuspectChance(p float64) string { return certainty(p) }

// Likelihoods are how many steps a probability is told in.
const Likelihoods = 5

// Likelihood is a probability's step, from 0 to Likelihoods-1, and its word.
func Likelihood(p float64) (step int, word string) {
	for i, from := range []float64{0.95, 0.5, 0.1, 0.02} {
		if p >= from {
			return Likelihoods - 1 - i, say(likelihoods[i])
		}
	}
	return 0, say(likelihoods[Likelihoods-1])
}

var likelihoods = [Likelihoods]text{text("nearly sure"), text("likely"), text("possible"), text("unlikely"), text("hardly")}

// Leading tells the suspect in front in one sentence.
func Leading(s diagnose.Suspect) string {
	return say("Most likely: %s, %s.", lowerFirst(Suspect(s.Fault)), SuspectChance(s.Probability))
}

// LeadingUnlisted says the same where what is likeliest is on no list.
func LeadingUnlisted(p float64) string {
	return say("Most likely: %s, %s.", lowerFirst(OffTheList), SuspectChance(p))
}

// First is what to do before a check, with its time.
func First(a check.Access) string { return Access(a) + " (" + StepMinutes(a.Minutes()) + ")" }

// Takes says how long a check takes with what comes before it.
func Takes(c check.Check, minutes float64) string {
	if minutes == c.Minutes {
		return Minutes(c)
	}
	return say("%s: %s to get at it, %s for the check.", upperFirst(minutesOf(minutes)), StepMinutes(minutes-c.Minutes), StepMinutes(c.Minutes))
}

// AskOf is the question above the input of a check.
func AskOf(c check.Check) string {
	switch c.Instrument {
	case check.FeelerGauge:
		return AskLeaf
	case check.Eyes:
		return Look(c.Looks)
	}
	return AskReading
}

// TakenAgain says that what is entered replaces a reading.
func TakenAgain(value string) string {
	return say("What you enter now takes the place of “%s”.", value)
}

// OddReading says why a reading is asked for once more.
func OddReading(value string) string {
	return say("“%s” decides much and may be a slip. Place the probes anew and read once more: both readings count.", value)
}

// TakenAlong says that what is entered counts together with a reading.
func TakenAlong(value string) string {
	return say("What you enter now counts together with “%s”.", value)
}

// Together writes readings of one point: the last of them, and how many count.
func Together(values []string) string {
	if len(values) < 2 {
		return strings.Join(values, "")
	}
	return say("%s (%d readings)", values[len(values)-1], len(values))
}

// FindProblem turns an error about a reading into one sentence.
func FindProblem(err error) string {
	var f *meter.FieldError
	if errors.As(err, &f) {
		return say("The reading %s: %s.", told(f.Reason), told(f.WayOut))
	}
	return NotAReading(err)
}

// FindingIs is the finding in a phrase: the fault, or that none fits.
func FindingIs(f diagnose.Finding) string {
	s, ok := found(f)
	switch {
	case f.Action == diagnose.NotListed || !ok:
		return OffTheList
	case f.Action == diagnose.NoFault:
		return say("No fault that these checks can see")
	case f.Action == diagnose.Open:
		return NotSettled
	}
	return Suspect(s.Fault)
}

// found is the suspect that a finding names.
func found(f diagnose.Finding) (s diagnose.Suspect, ok bool) {
	for _, s := range f.Faults {
		if s.Fault.ID == f.Fault {
			return s, true
		}
	}
	return diagnose.Suspect{}, false
}

// FindingChance says how sure a finding is, of its part and of the fault.
func FindingChance(f diagnose.Finding) string {
	s, ok := found(f)
	switch {
	case !ok:
		return say("No fault of the list stands out.")
	case f.Action == diagnose.NotListed:
		return say("The readings fit no fault of the list. Nearest comes: %s.", lowerFirst(Suspect(s.Fault)))
	case f.Action == diagnose.NoFault:
		return say("With %s the parts that were read are sound, and the complaint has another cause.", SuspectChance(f.Probability))
	case f.Action == diagnose.Open && s.Fault.ID == fault.None:
		return say("Nothing stands out: %s that no part is at fault.", SuspectChance(f.Probability))
	case f.Action == diagnose.Open:
		return say("Nothing stands out. Likeliest: %s, %s.", lowerFirst(PartsTogether(f.Parts)), SuspectChance(f.Probability))
	}
	if f.Parts.Size() > 1 {
		return bothChance(f, s)
	}
	return say("%s: %s. This fault of it: %s.", PartsTogether(f.Parts), SuspectChance(f.Probability), SuspectChance(s.Probability))
}

// FindingRemedy says what to do about it.
func FindingRemedy(f diagnose.Finding, a check.Aim) string {
	s, ok := found(f)
	switch {
	case f.Action == diagnose.NotListed || !ok:
		return say("Take the oddest readings again. If they stay, somebody who knows this machine should see it.")
	case f.Action == diagnose.NoFault && a == check.Bench:
		return OnBenchSound
	case f.Action == diagnose.NoFault:
		return say("Ride it, and come back when it fails: some faults show only then.")
	case f.Action == diagnose.Open:
		return say("Buy nothing yet: what was read does not settle it. Do one of the checks that were left out, or have it seen by somebody who knows this machine.")
	}
	return remedyFor(s.Fault)
}

// Slipped asks to take a reading again that fits the others badly.
func Slipped(name string) string { return say("Take this one again: %s", name) }

// SlipOf says why, with the reading's name.
func SlipOf(name string, p float64) string {
	return say("“%s” fits the others badly; with %s it is a slip of probe, dial or pen.", name, SuspectChance(p))
}

// SlipReason says why, below the name.
func SlipReason(p float64) string {
	return say("It fits the others badly; with %s it is a slip of probe, dial or pen.", SuspectChance(p))
}

// FindingSpent is what the way to the finding took.
func FindingSpent(f diagnose.Finding) string { return MinutesSpent(f.Minutes, f.Checks) + "." }

// NotCounted says why a reading does not count.
func NotCounted(err error) string { return notCounted + " " + FindProblem(err) }
