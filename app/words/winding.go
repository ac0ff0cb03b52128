package words

import (
	"math"
	"strings"

	"coilbook/app/tongue"
	"coilbook/engine/assess"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/winding"
)

// Words of what the three leads tell together.
var (
	WindingTitle  = text("The three leads together")
	StarOrDelta   = text("Three ohm readings alone cannot tell star from delta: each star has a delta that reads the same. A look at the winding, or a lead from the common point, can.")
	TouchTitle    = text("Where it touches the core")
	HeatTitle     = text("Worked out")
	FinerTitle    = text("Windings alike, by drops")
	MethodsTitle  = text("Better methods, same meter")
	NeedsTitle    = text("What you need")
	MethodGo      = text("Start these checks")
	AskResistor   = text("Known resistor, Ω")
	ResistorHint  = text("for example 0.47")
	AskTolerance  = text("Its tolerance, %")
	ToleranceHint = text("5 if not known")
	AskBleeder    = text("Bleeder resistor in it, MΩ")
	BadBleeder    = text("Bleeder: type 0.01 to 1000 MΩ, or leave it empty.")
	AskAdapter    = text("Capacitor in the adapter, µF")
	NotSureHint   = text("not sure")
	BadResistor   = text("Known resistor: type its ohms, 0.01 to 1000.")
	BadTolerance  = text("Tolerance: type 0 to 20 %, or leave it empty for 5 %.")
	BadAdapter    = text("Capacitor: type 0.001 to 100 µF, or leave it empty.")
	AskWarmth     = text("How warm is the winding?")
	DescribeMeter = text("Describe my own meter")
	OddPairs      = text("No winding with a single fault reads like this: take the readings again.")
	SoundPairs    = text("They do not contradict a sound winding.")
)

// Warmth names how warm a winding is.
func Warmth(w string) string {
	return map[string]string{"": say("Cold, stood for hours"), "engine-warm": say("Engine warm"), "just-stopped": say("Just stopped")}[w]
}

// OwnMeter names a meter that the user described.
func OwnMeter(name string) string {
	if name == "" {
		return say("Your meter")
	}
	return name
}

// MeterOf names the meter of a session.
func MeterOf(b assess.Bench) string {
	if own := b.State.Setup.Own; b.Meter.ID == meter.OwnID && own != nil {
		return OwnMeter(own.Sheet.Name)
	}
	return Meter(b.Meter.ID)
}

// Winding says in a few sentences what the readings of three leads tell.
func Winding(w assess.Winding) []string {
	var out []string
	if w.Sound {
		out = append(out, SoundPairs)
	} else {
		out = append(out, faults(w.Fits))
	}
	if list, doubt, ok := coils(w.Star); ok {
		out = append(out, say("If it is a star, its phases have %s Ω, each ± %s Ω.", list, doubt))
	}
	if list, doubt, ok := coils(w.Delta); ok {
		out = append(out, say("If it is a delta, its branches have %s Ω, each ± %s Ω.", list, doubt))
	}
	return append(out, StarOrDelta)
}

// coils lists the ohms of a connection's three windings and their common doubt.
func coils(c assess.Coils) (list, doubt string, ok bool) {
	if c.None != nil {
		return "", "", false
	}
	var each []string
	worst := max(c.Std[0], c.Std[1], c.Std[2])
	if float64(min(c.Phases[0], c.Phases[1], c.Phases[2])) < 2*worst {
		return "", "", false // the doubt is as large as what it is of
	}
	for _, r := range c.Phases {
		each = append(each, number(quantity.Ohms, float64(r), 2*worst))
	}
	return tongue.List(each), number(quantity.Ohms, 2*worst, 2*worst), true
}

// mostFaults is how many of several explanations are told.
const mostFaults = 3

func faults(fits winding.Fits) string {
	if len(fits) == 0 {
		return OddPairs
	}
	var list []string
	for _, f := range fits {
		s := faultOf(f)
		if len(list) < mostFaults && !contains(list, s) {
			list = append(list, s)
		}
	}
	return say("They do not read like a sound winding. What would read like this: %s.", strings.Join(list, say("; or")+" "))
}

func contains(list []string, s string) bool {
	for _, have := range list {
		if have == s {
			return true
		}
	}
	return false
}

func faultOf(f winding.Fit) string {
	of := func() string { return phaseOf(f.Connection, f.Fault.At) }
	switch f.Fault.Kind {
	case winding.PhaseOpen:
		return say("%s is broken", of())
	case winding.LeadOpen:
		return say("lead %d is broken", f.Fault.At+1)
	case winding.PhaseShorted:
		return say("all turns of %s are bridged", of())
	case winding.Bridged:
		return say("leads %d and %d touch", f.Fault.At+1, f.Fault.To+1)
	case winding.TurnsShorted:
		return say("about %s of the turns of %s are shorted (± %s)", percent(f.Fault.Share), of(), percent(min(2*f.ShareStd, 1)))
	case winding.PoorJoint:
		return say("a poor joint in lead %d", f.Fault.At+1)
	}
	return say("no fault")
}

func phaseOf(c winding.Connection, i int) string {
	if c == winding.Delta {
		return say("the branch between leads %d and %d of a delta", i+1, (i+1)%3+1)
	}
	return say("the phase at lead %d of a star", i+1)
}

// Touch says where a winding touches the core.
func Touch(t winding.Touch) string {
	what := say("It touches the core")
	if t.Leak {
		what = say("It leaks to the core through dirt, damp or charred varnish")
	}
	switch t.Place {
	case winding.TouchAtLead:
		return say("%s at lead %d or its joint.", what, t.Lead+1)
	case winding.TouchAtNeutral:
		return say("%s at the common point of the star.", what)
	case winding.TouchInPhase:
		return say("%s about %s of the way into the winding, counted from lead %d (± %s).", what, percent(t.Share), t.Lead+1, percent(math.Min(2*t.ShareStd, 1)))
	case winding.TouchContradicts:
		return say("No single touch reads like this: it touches in two places, or a reading is wrong.")
	}
	return say("%s; these readings are too coarse to say where. Turn the dial down to the lowest range that shows a number and read every lead to the core again.", what)
}
