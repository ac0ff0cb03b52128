package words

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/meter"
)

// Words of the search for the fault.
const (
	ToFind          = "Suspects, and the next check"
	FindNotHere     = "Suspects are named for a machine or its stator, not for a meter."
	FindNoFaults    = "The list of faults cannot be read: load the page again."
	SuspectsTitle   = "Suspects"
	NextCheckTitle  = "Next check"
	OwnChoiceTitle  = "The check you chose"
	TakenAgainTitle = "Take it again"
	FirstTitle      = "Before it"
	NothingBefore   = "All that it needs is open already."
	StepsTitle      = "How"
	AskReading      = "What does the meter show?"
	AskLeaf         = "Which leaf slides through?"
	AskUnitShown    = "Unit"
	EnterReading    = "Enter"
	SayOpen         = "Open line"
	SayUnsettled    = "Won't settle"
	SayCannot       = "Can't do it"
	OtherCheck      = "Another check"
	SuggestedCheck  = "Back to the suggested check"
	LeaveAsItIs     = "Leave it as it is"
	SaidTitle       = "What the readings say"
	SaidHint        = "Tap one to correct it."
	FindingTitle    = "The finding"
	NothingMore     = "No further check is worth its minutes now."
	ToldApartTitle  = "It may also be"
	NotToldApart    = "The checks so far cannot tell these apart from it."
	OffTheList      = "Something that is not on the list"
	NotSettled      = "Not settled yet"
	LeftOutEarlier  = "left out earlier"
	NotCounted      = "Does not count: "
	CountBoth       = "Count both"
	BeyondTitle     = "Read for the suspects"
	GeneratorTitle  = "Checks of the generator itself"
	FitNone         = "The readings fit no fault of the list: one of them may be wrong, or it is something else. Take the oddest again before you go on."
)

// FindHeading asks for the cause of what the machine does.
func FindHeading(a check.Aim) string {
	if a == check.Bench {
		return Aim(a) + ": is it sound?"
	}
	return Aim(a) + ": what is it?"
}

// FindProgress says how many checks of a search have an answer.
func FindProgress(answers int) string { return count(answers, "answer", "answers") + " so far" }

// Groups of the start screen.
const (
	ChargingAims = "Battery and charging"
	SparkAims    = "Ignition"
	BenchAims    = "Out of the machine"
)

// Growing says how far the machines are drawn that readings are weighed against.
func Growing(ready, of int) string {
	if of == 0 {
		return "Drawing virtual machines…"
	}
	return fmt.Sprintf("Drawing virtual machines with every fault, to compare yours with: %d of %d.", ready, of)
}

// SuspectsFrom says what the suspects rest on.
func SuspectsFrom(minutes float64, readings int) string {
	if readings == 0 {
		return "Nothing read yet: this is how often each is met."
	}
	return "After " + MinutesSpent(minutes, readings) + "."
}

// Suspect names a fault of the catalogue, or that there is none.
func Suspect(f fault.Fault) string {
	switch {
	case f.ID == fault.None:
		return "Nothing wrong that a check shows"
	case f.HotOnly:
		return Fault(f.Kind) + ", only when warm"
	}
	return namedFault(f)
}

// SuspectPart names the part of a suspect.
func SuspectPart(f fault.Fault) string {
	if f.ID == fault.None {
		return "The complaint has another cause"
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
			return Likelihoods - 1 - i, likelihoods[i]
		}
	}
	return 0, likelihoods[Likelihoods-1]
}

var likelihoods = [Likelihoods]string{"nearly sure", "likely", "possible", "unlikely", "hardly"}

// Leading tells the suspect in front in one sentence.
func Leading(s diagnose.Suspect) string {
	return "Most likely: " + lowerFirst(Suspect(s.Fault)) + ", " + SuspectChance(s.Probability) + "."
}

// First is what to do before a check, with its time.
func First(a check.Access) string { return Access(a) + " (" + StepMinutes(a.Minutes()) + ")" }

// Takes says how long a check takes with what comes before it.
func Takes(c check.Check, minutes float64) string {
	if minutes == c.Minutes {
		return Minutes(c)
	}
	return upperFirst(minutesOf(minutes)) + ": " + StepMinutes(minutes-c.Minutes) + " to get at it, " + StepMinutes(c.Minutes) + " for the check."
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
	return "What you enter now takes the place of “" + value + "”."
}

// OddReading says why a reading is asked for once more.
func OddReading(value string) string {
	return "“" + value + "” decides much and may be a slip. Place the probes anew and read once more: both readings count."
}

// TakenAlong says that what is entered counts together with a reading.
func TakenAlong(value string) string {
	return "What you enter now counts together with “" + value + "”."
}

// Together writes readings of one point: the last of them, and how many count.
func Together(values []string) string {
	if len(values) < 2 {
		return strings.Join(values, "")
	}
	return values[len(values)-1] + " (" + strconv.Itoa(len(values)) + " readings)"
}

// FindProblem turns an error about a reading into one sentence.
func FindProblem(err error) string {
	var f *meter.FieldError
	if errors.As(err, &f) {
		return "The reading " + f.Reason + ": " + f.WayOut + "."
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
		return "No fault that these checks can see"
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
		return "No fault of the list stands out."
	case f.Action == diagnose.NotListed:
		return "The readings fit no fault of the list. Nearest comes: " + lowerFirst(Suspect(s.Fault)) + "."
	case f.Action == diagnose.NoFault:
		return "With " + SuspectChance(f.Probability) + " the parts that were read are sound, and the complaint has another cause."
	case f.Action == diagnose.Open && s.Fault.ID == fault.None:
		return "Nothing stands out: " + SuspectChance(f.Probability) + " that no part is at fault."
	case f.Action == diagnose.Open:
		return "Nothing stands out. Likeliest: " + lowerFirst(PartsTogether(f.Parts)) + ", " + SuspectChance(f.Probability) + "."
	}
	if f.Parts.Size() > 1 {
		return bothChance(f, s)
	}
	return PartsTogether(f.Parts) + ": " + SuspectChance(f.Probability) + ". This fault of it: " + SuspectChance(s.Probability) + "."
}

// FindingRemedy says what to do about it.
func FindingRemedy(f diagnose.Finding, a check.Aim) string {
	s, ok := found(f)
	switch {
	case f.Action == diagnose.NotListed || !ok:
		return "Take the oddest readings again. If they stay, somebody who knows this machine should see it."
	case f.Action == diagnose.NoFault && a == check.Bench:
		return OnBenchSound
	case f.Action == diagnose.NoFault:
		return "Ride it, and come back when it fails: some faults show only then."
	case f.Action == diagnose.Open:
		return "Buy nothing yet: what was read does not settle it. Do one of the checks that were left out, or have it seen by somebody who knows this machine."
	}
	return remedyFor(s.Fault)
}

// Slipped asks to take a reading again that fits the others badly.
func Slipped(name string) string { return "Take this one again: " + name }

// SlipOf says why, with the reading's name.
func SlipOf(name string, p float64) string {
	return "“" + name + "” fits the others badly; with " + SuspectChance(p) + " it is a slip of probe, dial or pen."
}

// SlipReason says why, below the name.
func SlipReason(p float64) string {
	return "It fits the others badly; with " + SuspectChance(p) + " it is a slip of probe, dial or pen."
}

// FindingSpent is what the way to the finding took.
func FindingSpent(f diagnose.Finding) string { return MinutesSpent(f.Minutes, f.Checks) + "." }
