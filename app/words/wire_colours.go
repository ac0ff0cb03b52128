package words

import (
	"slices"
	"strings"
	"sync"

	"coilbook/app/tongue"
	"coilbook/engine/check"
	"coilbook/engine/meter"
)

// Words of the colours of leads.
var (
	ColoursTitle = text("Colours of the leads")
	ColoursHint  = text("If you like: pictures and steps then name the leads by their colours. Look at the generator's side of the plug; the harness side often has others.")
	NoColour     = text("not given")
	NoStripe     = text("no stripe")
	AskColour    = text("Colour")
	AskStripe    = text("Stripe")
)

// Colour names one.
func Colour(c check.Colour) string { return colours()[c] }

var colours = sync.OnceValue(func() map[check.Colour]string {
	return map[check.Colour]string{
		check.Black:      tongue.In("a lead's colour", "black"),
		check.Brown:      tongue.In("a lead's colour", "brown"),
		check.Red:        tongue.In("a lead's colour", "red"),
		check.Orange:     tongue.In("a lead's colour", "orange"),
		check.Yellow:     tongue.In("a lead's colour", "yellow"),
		check.Green:      tongue.In("a lead's colour", "green"),
		check.LightGreen: tongue.In("a lead's colour", "light green"),
		check.Blue:       tongue.In("a lead's colour", "blue"),
		check.LightBlue:  tongue.In("a lead's colour", "light blue"),
		check.Violet:     tongue.In("a lead's colour", "violet"),
		check.Grey:       tongue.In("a lead's colour", "grey"),
		check.White:      tongue.In("a lead's colour", "white"),
		check.Pink:       tongue.In("a lead's colour", "pink"),
	}
})

// WireColour names a lead's colour with its stripe.
func WireColour(w check.Wire) string {
	if w.Stripe == "" {
		return Colour(w.Base)
	}
	return say("%s with %s stripe", Colour(w.Base), Colour(w.Stripe))
}

// PlugLead names a lead of the plug where leads are listed.
func PlugLead(t check.Terminal) string { return upperFirst(Terminal(t)) }

// AskOfLead names a choice for a lead to who does not see what it stands beside.
func AskOfLead(t check.Terminal, what string) string {
	return PlugLead(t) + ": " + what
}

// InColour names a point with the colour of its lead.
func InColour(point string, w check.Wire) string {
	return point + " (" + WireColour(w) + ")"
}

// StepsIn are the Steps of a check with the leads named by their colours, where those
// are known.
func StepsIn(c check.Check, m meter.Meter, wires map[check.Terminal]check.Wire) []string {
	steps := slices.Clone(Steps(c, m))
	for _, t := range []check.Terminal{c.Red, c.Black} {
		w, known := wires[t]
		if !known {
			continue
		}
		point := TerminalIn(c, t)
		for i, step := range steps {
			if at := placeOf(step, point); at >= 0 {
				steps[i] = step[:at] + InColour(point, w) + step[at+len(point):]
				break
			}
		}
	}
	return steps
}

// placeOf is where a point is named in a step, but not as what is beside it; -1 for
// nowhere. What is beside it is known by its words before the point.
func placeOf(step, point string) int {
	beside := strings.TrimSuffix(Terminal(check.RegulatorLead(1)), Terminal(check.Charge(1)))
	for from := 0; ; {
		at := strings.Index(step[from:], point)
		if at < 0 {
			return -1
		}
		at += from
		after := step[at+len(point):]
		whole := after == "" || after[0] < '0' || after[0] > '9'
		if whole && !strings.HasSuffix(step[:at], beside) {
			return at
		}
		from = at + len(point)
	}
}
