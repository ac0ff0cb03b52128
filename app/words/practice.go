package words

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"coilbook/app/drawing"
	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/practice"
	"coilbook/engine/quantity"
	"coilbook/engine/rig"
)

// Words of choosing a bench.
const (
	ToPractice     = "Practise on a hidden machine"
	ToPracticeHint = "A simulated one with a fault: probe it, name the fault"
	PracticeTitle  = "Practise on a hidden machine"
	PracticeHint   = "Somewhere in it hides one fault. Probe where you like, read what the meter shows, and name the fault when you are sure."
	Simulated      = "A simulation of invented machines. It behaves as such machines do, but none of its figures is that of your machine."
	AskCode        = "Or type a code that somebody shared"
	CodeHint       = "such as 0K7-QPM"
	OpenCode       = "Open"
	Unfinished     = "Your bench"
	LevelsTitle    = "How hard shall it be?"
	LostRecord     = "Your last practice bench could not be read on this device. Start a new one."
	NewerRecord    = "Your last practice bench was kept by a newer Coilbook. Load the page again to get that version."
)

// GoOnWith names the way back to an unfinished bench.
func GoOnWith(code string) string { return "Go on with " + code }

// Level names how hard a bench is.
func Level(l practice.Level) string {
	return map[practice.Level]string{practice.Plain: "Plain", practice.Usual: "As on the bench", practice.Sly: "Sly"}[l]
}

// LevelHint says what a level hides and what it is read with.
func LevelHint(l practice.Level) string {
	return map[practice.Level]string{
		practice.Plain: "Clear faults, read with a good meter that finds its range.",
		practice.Usual: "Any fault, read with a cheap meter whose dial you turn.",
		practice.Sly:   "Mild faults, some of them only when warm, and the cheap meter.",
	}[l]
}

// CodeProblem says in a sentence why a code opens no bench.
func CodeProblem(err error) string {
	var bad *practice.CodeError
	if errors.As(err, &bad) {
		return "That code " + bad.Reason + ": " + bad.WayOut + "."
	}
	return err.Error()
}

// Complaint is what the owner says.
func Complaint(b practice.Bench) string {
	charging := b.Aim() == check.NoCharge
	switch b.Complaint {
	case practice.NotCharging:
		return "“The battery does not stay charged.”"
	case practice.Overcharging:
		return "“Bulbs blow, and the battery boils.”"
	case practice.CranksSlowly:
		return "“The starter hardly turns it over.”"
	case practice.AllDead:
		return "“No lights, no horn, nothing.”"
	case practice.NoSpark:
		return "“It turns over, and it won't start.”"
	}
	if charging {
		return "“It charges at first, and no longer once it is warm.”"
	}
	return "“It starts cold, dies when it is warm, and starts again once it has cooled.”"
}

// MinutesSpent says what the readings so far would have cost.
func MinutesSpent(minutes float64, readings int) string {
	if readings == 0 {
		return "No reading yet"
	}
	return count(readings, "reading", "readings") + ", " + minutesOf(minutes)
}

func minutesOf(minutes float64) string {
	if minutes < 1 {
		return "half a minute"
	}
	return "about " + strings.TrimSuffix(strconv.FormatFloat(minutes, 'f', 1, 64), ".0") + " min"
}

// Words of the bench.
const (
	BoardLabel   = "Points of the machine"
	RedProbe     = "Red"
	BlackProbe   = "Black"
	Take         = "Read"
	ReadingNow   = "Reading…"
	PlaceProbes  = "Take a probe, then tap where it goes."
	PlaceOther   = "Now the other probe."
	ReadNow      = "Set the dial, then read."
	Understood   = "Understood"
	LivePoints   = "Live points: the number means nothing, and it can kill a real meter."
	LogTitle     = "Readings"
	NameIt       = "I know what it is"
	NameEarly    = "Name the fault"
	WaveTitle    = "See the waveform"
	WaveWorking  = "Running the machine…"
	WaveNeeds    = "Put both probes on points first."
	NoRanges     = "This meter finds its range by itself."
	RangeTitle   = "Range"
	DialTitle    = "Dial"
	StateTitle   = "Machine"
	AskPlug      = "Plug"
	AskEngine    = "Engine"
	AskKey       = "Key"
	AskHeat      = "Heat"
	NoRun        = "It does not run by itself."
	RunsOnlyCold = "Warm, it does not run."
	Close        = "Close"
)

// BenchCode names a bench by its code.
func BenchCode(code string) string { return "Bench " + code }

// HeldPoint says where a probe is.
func HeldPoint(t check.Terminal) string {
	if t == check.Nowhere {
		return "in hand"
	}
	if n, ok := strings.CutPrefix(string(t), "charge-"); ok {
		return "lead " + n
	}
	return ShortTerminal(t)
}

// PointName is the name of a point on the board: what is written there, and what
// it is.
func PointName(t check.Terminal, red, black bool) string {
	name := ShortTerminal(t) + ", " + Terminal(t)
	switch {
	case red && black:
		return name + " (both probes are here)"
	case red:
		return name + " (the red probe is here)"
	case black:
		return name + " (the black probe is here)"
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
		return DialSign(f) + " auto"
	}
	if number, ok := strings.CutSuffix(label, " mV"); ok {
		return "m" + DialSign(f) + " " + number
	}
	if f == meter.Ohms {
		return "Ω " + strings.TrimSpace(strings.TrimSuffix(label, "Ω"))
	}
	return DialSign(f) + " " + strings.TrimSuffix(label, " V")
}

// EngineDoes says what the engine does. A machine without a starter is kicked.
func EngineDoes(e check.Engine, kick bool) string {
	if kick && e == check.Cranking {
		return "kicked"
	}
	return map[check.Engine]string{
		check.Stopped: "stopped", check.Cranking: "cranking", check.Idling: "idling", check.At3000: "3000 rpm", check.At5000: "5000 rpm",
	}[e]
}

// IgnitionStaysPlugged says what parting the plug leaves together.
const IgnitionStaysPlugged = "While the engine runs, exciter and pickup stay plugged in; only the charge leads are apart."

// PlugIs says how the generator's plug is.
func PlugIs(p check.Plug) string {
	switch p {
	case check.Apart:
		return "apart"
	case check.RegulatorApart:
		return RegulatorFree
	}
	return "together"
}

// KeyIs says where the key is.
func KeyIs(on bool) string {
	if on {
		return "on"
	}
	return "off"
}

// HeatIs says how warm the machine is.
func HeatIs(hot bool) string {
	if hot {
		return "warm"
	}
	return "cold"
}

// StateShort says the state of the machine on a button.
func StateShort(s machine.State, kick bool) string {
	out := EngineDoes(s.Engine, kick)
	if s.Engine == check.Stopped && s.Key {
		out = "key on"
	}
	if s.Hot {
		out += ", warm"
	}
	return out
}

// Probed says how a reading was taken.
func Probed(p machine.Probing, dial string, kick bool) string {
	parts := []string{"red " + HeldPoint(p.Red), "black " + HeldPoint(p.Black), DialAt(p.Function, dial),
		"plug " + PlugIs(p.Plug), EngineDoes(p.Engine, kick)}
	if p.Engine == check.Stopped && p.Key {
		parts = append(parts, "key on")
	}
	if p.Hot {
		parts = append(parts, "warm")
	}
	return upperFirst(strings.Join(parts, ", "))
}

// Shown says what the meter showed, on one line.
func Shown(d rig.Display, auto bool) string {
	switch {
	case d.Unread:
		return "not on this meter"
	case d.State == quantity.OverRange && auto:
		return "OL (over range)"
	case d.State == quantity.OverRange:
		return "1 at the left (over range)"
	case d.State == quantity.Unsettled:
		return strings.Join(ShownDigits(d, auto), " … ") + " " + d.Unit.Name + ", won't settle"
	}
	return d.Text() + " " + d.Unit.Name
}

// ShownDigits are the digits of each display in a row, with the meter's own sign for
// over-range.
func ShownDigits(d rig.Display, auto bool) []string {
	out := make([]string, len(d.Texts))
	for i, t := range d.Texts {
		if out[i] = t; t == "" {
			out[i] = OverRangeSign(auto)
		}
	}
	return out
}

// DisplayNote says what a display means that is no plain number.
func DisplayNote(d rig.Display) string {
	switch {
	case d.Unread:
		return "This meter has no such function."
	case d.State == quantity.OverRange:
		return "Over range: more than this position can show."
	case d.State == quantity.Unsettled:
		return "Won't settle."
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
		return "A steady " + waveVolts(mean) + "."
	}
	out := "Mean " + waveVolts(mean) + ", from " + waveVolts(low) + " to " + waveVolts(high)
	if hertz := waveHertz(t, mean, low, high); hertz > 0 {
		out += ", about " + short(hertz) + " Hz"
	}
	return out + "."
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
const (
	NamingTitle = "What is wrong with it?"
	NamingHint  = "All that such a machine can have, by part. One of them is it."
	NamingGo    = "This is it"
	NamingFirst = "Choose one first."
)

// NamingSure asks once more.
func NamingSure(k machine.Kind) string { return Fault(k) + "?" }

// Words of the truth.
const (
	RightFault    = "Right: that is the fault"
	RightPart     = "The right part, another fault"
	WrongPart     = "No, it was something else"
	NotNamed      = "Name the fault first: then all is told."
	ToldTitle     = "What your readings told"
	ToldNothing   = "You took no reading, so nothing spoke against anything."
	GuidedTitle   = "The guided checks on this machine"
	GuidedWorking = "Going through the guided checks…"
	NextBenchWord = "Next bench"
	SameAgain     = "Same again"
	ShareTitle    = "Let somebody else try it"
	ShareHint     = "The code opens the same machine on any phone."
	ShareIt       = "Share"
	CopyIt        = "Copy"
	Copied        = "Copied."
	NotCopied     = "Copying is not allowed here: write the code down."
	Suspects      = "Which ones"
)

// Named says how near the named fault came.
func Named(o practice.Outcome) string {
	return map[practice.Outcome]string{practice.RightFault: RightFault, practice.RightPart: RightPart, practice.WrongPart: WrongPart}[o]
}

// YouNamed says what was named, where it was not the fault.
func YouNamed(k machine.Kind) string { return "You named: " + lowerFirst(Fault(k)) + "." }

// SpokeAgainst says what one reading ruled out.
func SpokeAgainst(n, of int) string {
	if n == 0 {
		return fmt.Sprintf("Spoke against none of %d other faults.", of)
	}
	return fmt.Sprintf("Spoke against %d of %d other faults.", n, of)
}

// Working says how far the simulation of the other faults is.
func Working(done, of int) string {
	return fmt.Sprintf("Trying the other faults on your readings: %d of %d", done, of)
}

// LeftOver says which other faults all readings together left.
func LeftOver(left []machine.Kind) string {
	switch len(left) {
	case 0:
		return "Together your readings spoke against every other fault."
	case 1:
		return "Together your readings left one other fault: " + lowerFirst(Fault(left[0])) + "."
	}
	return fmt.Sprintf("Together your readings left %d other faults.", len(left))
}

// GuidedFound says how the guided checks went.
func GuidedFound(name string, minutes float64) string {
	return "Found at “" + name + "”, after " + minutesOf(minutes) + "."
}

// GuidedMissed says honestly that they see nothing.
const GuidedMissed = "None of today's guided checks sees this fault."

// StepMinutes is the time spent up to a step of the guided route.
func StepMinutes(minutes float64) string {
	return strings.TrimSuffix(strconv.FormatFloat(minutes, 'f', 1, 64), ".0") + " min"
}

// ShareText is what is handed on.
func ShareText(code string) string { return "Practice bench " + code + ": find the fault." }

// DrawnBoard are the words on the board.
func DrawnBoard() drawing.BoardWords {
	return drawing.BoardWords{
		Machine: "The machine", Generator: "generator", Regulator: "regulator", Box: "ignition box", Battery: "battery",
		Red: "red", Black: "black", InHand: "in your hand", Apart: "plug apart", Joined: "plug together", Unplugged: RegulatorFree,
		EngineTurns: "engine turns", EngineStands: "engine stands", KeyOn: "key on", KeyOff: "key off",
		Fuse: "fuse", Key: "key", Lamp: "lamp", Coil: "ignition coil", Cap: "spark plug with its cap", Frame: "frame", Exciter: "exciter",
	}
}
