package words

import (
	"errors"
	"math"
	"strings"

	"coilbook/app/tongue"
	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/practice"
	"coilbook/engine/quantity"
	"coilbook/engine/rig"
)

// Words of choosing a bench.
var (
	ToPractice     = text("Practise on a hidden machine")
	ToPracticeHint = text("A simulated one with a fault: probe it, name the fault")
	PracticeTitle  = text("Practise on a hidden machine")
	PracticeHint   = text("Somewhere in it hides one fault. Probe where you like, read what the meter shows, and name the fault when you are sure.")
	Simulated      = text("A simulation of invented machines. It behaves as such machines do, but none of its figures is that of your machine.")
	AskCode        = text("Or type a code that somebody shared")
	CodeHint       = text("such as 0K7-QPM")
	OpenCode       = text("Open")
	Unfinished     = text("Your bench")
	LevelsTitle    = text("How hard shall it be?")
	LostRecord     = text("Your last practice bench could not be read on this device. Start a new one.")
	NewerRecord    = text("Your last practice bench was kept by a newer Coilbook. Load the page again to get that version.")
)

// GoOnWith names the way back to an unfinished bench.
func GoOnWith(code string) string { return say("Go on with %s", code) }

// Level names how hard a bench is.
func Level(l practice.Level) string {
	return map[practice.Level]string{practice.Plain: say("Plain"), practice.Usual: say("As on the bench"), practice.Sly: say("Sly")}[l]
}

// LevelHint says what a level hides and what it is read with.
func LevelHint(l practice.Level) string {
	return say(levelHints.of(l))
}

var levelHints = table[practice.Level, text]{
	{practice.Plain, "Clear faults, read with a good meter that finds its range."},
	{practice.Usual, "Any fault, read with a cheap meter whose dial you turn."},
	{practice.Sly, "Mild faults, some of them only when warm, and the cheap meter."},
}

// CodeProblem says in a sentence why a code opens no bench.
func CodeProblem(err error) string {
	var bad *practice.CodeError
	if errors.As(err, &bad) {
		return say("That code %s: %s.", told(bad.Reason), told(bad.WayOut))
	}
	return err.Error()
}

// Complaint is what the owner says.
func Complaint(b practice.Bench) string {
	charging := b.Aim() == check.NoCharge
	switch b.Complaint {
	case practice.NotCharging:
		return say("“The battery does not stay charged.”")
	case practice.Overcharging:
		return say("“Bulbs blow, and the battery boils.”")
	case practice.CranksSlowly:
		return say("“The starter hardly turns it over.”")
	case practice.AllDead:
		return say("“No lights, no horn, nothing.”")
	case practice.NoSpark:
		return say("“It turns over, and it won't start.”")
	}
	if charging {
		return say("“It charges at first, and no longer once it is warm.”")
	}
	return say("“It starts cold, dies when it is warm, and starts again once it has cooled.”")
}

// MinutesSpent says what the readings so far would have cost.
func MinutesSpent(minutes float64, readings int) string {
	if readings == 0 {
		return say("No reading yet")
	}
	return count(readings, "%d reading", "%d readings") + ", " + minutesOf(minutes)
}

func minutesOf(minutes float64) string {
	if minutes < 1 {
		return say("half a minute")
	}
	return say("about %s", StepMinutes(minutes))
}

// Words of the bench.
var (
	BoardLabel   = text("Points of the machine")
	RedProbe     = text("Red")
	BlackProbe   = text("Black")
	Take         = text("Read")
	ReadingNow   = text("Reading…")
	PlaceProbes  = text("Take a probe, then tap where it goes.")
	PlaceOther   = text("Now the other probe.")
	ReadNow      = text("Set the dial, then read.")
	Understood   = text("Understood")
	LivePoints   = text("Live points: the number means nothing, and it can kill a real meter.")
	LogTitle     = text("Readings")
	NameIt       = text("I know what it is")
	NameEarly    = text("Name the fault")
	WaveTitle    = text("See the waveform")
	WaveWorking  = text("Running the machine…")
	WaveFailed   = text("The waveform could not be worked out: move a probe and try again.")
	WaveNeeds    = text("Put both probes on points first.")
	NoRanges     = text("This meter finds its range by itself.")
	RangeTitle   = text("Range")
	DialTitle    = text("Dial")
	StateTitle   = text("Machine")
	AskPlug      = text("Plug")
	AskEngine    = text("Engine")
	AskKey       = text("Key")
	AskHeat      = text("Heat")
	NoRun        = text("It does not run by itself.")
	RunsOnlyCold = text("Warm, it does not run.")
	Close        = text("Close")
)

// BenchCode names a bench by its code.
func BenchCode(code string) string { return say("Bench %s", code) }

// HeldPoint says where a probe is.
func HeldPoint(t check.Terminal) string {
	if t == check.Nowhere {
		return say("in hand")
	}
	if n, ok := strings.CutPrefix(string(t), "charge-"); ok {
		return say("lead %s", n)
	}
	return ShortTerminal(t)
}

// PointName is the name of a point on the board: what is written there, and what
// it is.
func PointName(t check.Terminal, red, black bool) string {
	name := ShortTerminal(t) + ", " + Terminal(t)
	switch {
	case red && black:
		return say("%s (both probes are here)", name)
	case red:
		return say("%s (the red probe is here)", name)
	case black:
		return say("%s (the black probe is here)", name)
	}
	return name
}

// DialSign is what is printed around the dial.
func DialSign(f meter.Function) string {
	return map[meter.Function]string{meter.Ohms: "Ω", meter.VoltsDC: "V=", meter.VoltsAC: "V~", meter.AmpsDC: "A=", meter.Diode: DiodeDial}[f]
}

// DialAt names a position of the dial.
func DialAt(f meter.Function, label string) string {
	if f == meter.Diode {
		return DialSign(f)
	}
	if label == "" {
		return say("%s auto", DialSign(f))
	}
	if number, ok := strings.CutSuffix(label, " mV"); ok {
		return "m" + DialSign(f) + " " + number
	}
	if f == meter.Ohms {
		return "Ω " + tongue.Number(strings.TrimSpace(strings.TrimSuffix(label, "Ω")))
	}
	return DialSign(f) + " " + tongue.Number(strings.TrimSuffix(label, " V"))
}

// EngineDoes says what the engine does. A machine without a starter is kicked.
func EngineDoes(e check.Engine, kick bool) string {
	if kick && e == check.Cranking {
		return say("kicked")
	}
	return say(engineDoes.of(e))
}

var engineDoes = table[check.Engine, text]{
	{check.Stopped, "stopped"}, {check.Cranking, "cranking"}, {check.Idling, "idling"}, {check.At3000, "3000 rpm"}, {check.At5000, "5000 rpm"},
}

// IgnitionStaysPlugged says what parting the plug leaves together.
var IgnitionStaysPlugged = text("While the engine runs, exciter and pickup stay plugged in; only the charge leads are apart.")

// PlugIs says how the generator's plug is.
func PlugIs(p check.Plug) string {
	switch p {
	case check.Apart:
		return say("apart")
	case check.RegulatorApart:
		return RegulatorFree
	}
	return say("together")
}

// KeyIs says where the key is.
func KeyIs(on bool) string {
	if on {
		return say("on")
	}
	return say("off")
}

// HeatIs says how warm the machine is.
func HeatIs(hot bool) string {
	if hot {
		return say("warm")
	}
	return say("cold")
}

// StateShort says the state of the machine on a button.
func StateShort(s machine.State, kick bool) string {
	out := EngineDoes(s.Engine, kick)
	if s.Engine == check.Stopped && s.Key {
		out = say("key on")
	}
	if s.Hot {
		return say("%s, warm", out)
	}
	return out
}

// Probed says how a reading was taken.
func Probed(p machine.Probing, dial string, kick bool) string {
	parts := []string{say("red %s", HeldPoint(p.Red)), say("black %s", HeldPoint(p.Black)), DialAt(p.Function, dial),
		say("plug %s", PlugIs(p.Plug)), EngineDoes(p.Engine, kick)}
	if p.Engine == check.Stopped && p.Key {
		parts = append(parts, say("key on"))
	}
	if p.Hot {
		parts = append(parts, say("warm"))
	}
	return upperFirst(strings.Join(parts, ", "))
}

// Shown says what the meter showed, on one line.
func Shown(d rig.Display, auto bool) string {
	switch {
	case d.Unread:
		return say("not on this meter")
	case d.State == quantity.OverRange && auto:
		return say("OL (over range)")
	case d.State == quantity.OverRange:
		return say("1 at the left (over range)")
	case d.State == quantity.Unsettled:
		return say("%s %s, won't settle", strings.Join(ShownDigits(d, auto), " … "), d.Unit.Name)
	}
	return tongue.Number(d.Text()) + " " + d.Unit.Name
}

// ShownDigits are the digits of each display in a row, with the meter's own sign for
// over-range.
func ShownDigits(d rig.Display, auto bool) []string {
	out := make([]string, len(d.Texts))
	for i, t := range d.Texts {
		if out[i] = tongue.Number(t); t == "" {
			out[i] = OverRangeSign(auto)
		}
	}
	return out
}

// DisplayNote says what a display means that is no plain number.
func DisplayNote(d rig.Display) string {
	switch {
	case d.Unread:
		return say("This meter has no such function.")
	case d.State == quantity.OverRange:
		return say("Over range: more than this position can show.")
	case d.State == quantity.Unsettled:
		return say("Won't settle.")
	}
	return ""
}

// OverRangeSign is what the display shows beyond its range.
func OverRangeSign(auto bool) string {
	if auto {
		return "OL"
	}
	return "1"
}

// Wave describes a waveform for who does not see it: mean, peaks, and how often
// it comes round.
func Wave(t rig.Trace) string {
	if len(t.Volts) == 0 {
		return ""
	}
	mean, low, high := 0.0, math.Inf(1), math.Inf(-1)
	for _, v := range t.Volts {
		mean += v / float64(len(t.Volts))
		low, high = min(low, v), max(high, v)
	}
	if high-low < 0.02 {
		return say("A steady %s.", waveVolts(mean))
	}
	if hertz := waveHertz(t, mean, low, high); hertz > 0 {
		return say("Mean %s, from %s to %s, about %s Hz.", waveVolts(mean), waveVolts(low), waveVolts(high), short(hertz))
	}
	return say("Mean %s, from %s to %s.", waveVolts(mean), waveVolts(low), waveVolts(high))
}

func waveVolts(v float64) string {
	if math.Abs(v) < 0.005 {
		return "0 V"
	}
	if v < 0 {
		return "−" + short(-v) + " V"
	}
	return short(v) + " V"
}

// waveHertz counts how often the voltage comes up through its mean; 0 where it
// is too seldom to tell.
func waveHertz(t rig.Trace, mean, low, high float64) float64 {
	first, last, ups, below := 0, 0, 0, false
	for i, v := range t.Volts {
		switch {
		case v < mean-(mean-low)*0.2:
			below = true
		case v > mean+(high-mean)*0.2 && below:
			if below = false; ups == 0 {
				first = i
			}
			last = i
			ups++
		}
	}
	if ups < 3 {
		return 0
	}
	return float64(ups-1) / (float64(last-first) * t.Step)
}

// Words of naming.
var (
	NamingTitle = text("What is wrong with it?")
	NamingHint  = text("All that such a machine can have, by part. One of them is it.")
	NamingGo    = text("This is it")
	NamingFirst = text("Choose one first.")
)

// NamingSure asks once more.
func NamingSure(k machine.Kind) string { return Fault(k) + "?" }

// Words of the truth.
var (
	RightFault    = text("Right: that is the fault")
	RightPart     = text("The right part, another fault")
	WrongPart     = text("No, it was something else")
	NotNamed      = text("Name the fault first: then all is told.")
	ToldTitle     = text("What your readings told")
	ToldNothing   = text("You took no reading, so nothing spoke against anything.")
	GuidedTitle   = text("The guided checks on this machine")
	GuidedWorking = text("Going through the guided checks…")
	NextBenchWord = text("Next bench")
	SameAgain     = text("Same again")
	ShareTitle    = text("Let somebody else try it")
	ShareHint     = text("The code opens the same machine on any phone.")
	ShareIt       = text("Share")
	CopyIt        = text("Copy")
	Copied        = text("Copied.")
	NotCopied     = text("Copying is not allowed here: write the code down.")
	Suspects      = text("Which ones")
)

// Named says how near the named fault came.
func Named(o practice.Outcome) string {
	return map[practice.Outcome]string{practice.RightFault: RightFault, practice.RightPart: RightPart, practice.WrongPart: WrongPart}[o]
}

// YouNamed says what was named, where it was not the fault.
func YouNamed(k machine.Kind) string { return say("You named: %s.", lowerFirst(Fault(k))) }

// SpokeAgainst says what one reading ruled out.
func SpokeAgainst(n, of int) string {
	if n == 0 {
		return say("Spoke against none of %d other faults.", of)
	}
	return say("Spoke against %d of %d other faults.", n, of)
}

// Working says how far the simulation of the other faults is.
func Working(done, of int) string {
	return say("Trying the other faults on your readings: %d of %d", done, of)
}

// LeftOver says which other faults all readings together left.
func LeftOver(left []machine.Kind) string {
	switch len(left) {
	case 0:
		return say("Together your readings spoke against every other fault.")
	case 1:
		return say("Together your readings left one other fault: %s.", lowerFirst(Fault(left[0])))
	}
	return say("Together your readings left %d other faults.", len(left))
}

// GuidedFound says how the guided checks went.
func GuidedFound(name string, minutes float64) string {
	return say("Found at “%s”, after %s.", name, minutesOf(minutes))
}

// GuidedMissed says honestly that they see nothing.
var GuidedMissed = text("None of today's guided checks sees this fault.")

// StepMinutes is the time spent up to a step of the guided route.
func StepMinutes(minutes float64) string {
	return Plain(math.Round(minutes*10)/10) + " min"
}

// ShareText is what is handed on.
func ShareText(code string) string { return say("Practice bench %s: find the fault.", code) }
