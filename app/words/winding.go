package words

import (
	"fmt"
	"math"
	"strings"

	"coilbook/engine/assess"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/winding"
)

// Words of what the three leads tell together.
const (
	WindingTitle   = "The three leads together"
	StarOrDelta    = "Three ohm readings alone cannot tell star from delta: each star has a delta that reads the same. A look at the winding, or a lead from the common point, can."
	TouchTitle     = "Where it touches the core"
	HeatTitle      = "Worked out"
	FinerTitle     = "Windings alike, by drops"
	MethodsTitle   = "Better methods, same meter"
	NeedsTitle     = "What you need"
	MethodGo       = "Start these checks"
	AskResistor    = "Known resistor, Ω"
	ResistorHint   = "for example 0.47"
	AskTolerance   = "Its tolerance, %"
	ToleranceHint  = "5 if not known"
	AskBleeder     = "Bleeder resistor in it, MΩ"
	BadBleeder     = "Bleeder: type 0.01 to 1000 MΩ, or leave it empty."
	AskAdapter     = "Capacitor in the adapter, µF"
	NotSureHint    = "not sure"
	BadResistor    = "Known resistor: type its ohms, 0.01 to 1000."
	BadTolerance   = "Tolerance: type 0 to 20 %, or leave it empty for 5 %."
	BadAdapter     = "Capacitor: type 0.001 to 100 µF, or leave it empty."
	AskWarmth      = "How warm is the winding?"
	DescribeMeter  = "Describe my own meter"
	OddPairs       = "No winding with a single fault reads like this: take the readings again."
	SoundPairs     = "They do not contradict a sound winding."
	FaultsThatRead = "They do not read like a sound winding. What would read like this: "
)

// Warmth names how warm a winding is.
func Warmth(w string) string {
	return map[string]string{"": "Cold, stood for hours", "engine-warm": "Engine warm", "just-stopped": "Just stopped"}[w]
}

// OwnMeter names a meter that the user described.
func OwnMeter(name string) string {
	if name == "" {
		return "Your meter"
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
	if s := coils("If it is a star, its phases have ", w.Star); s != "" {
		out = append(out, s)
	}
	if s := coils("If it is a delta, its branches have ", w.Delta); s != "" {
		out = append(out, s)
	}
	return append(out, StarOrDelta)
}

func coils(start string, c assess.Coils) string {
	if c.None != nil {
		return ""
	}
	var list []string
	worst := max(c.Std[0], c.Std[1], c.Std[2])
	if float64(min(c.Phases[0], c.Phases[1], c.Phases[2])) < 2*worst {
		return "" // the doubt is as large as what it is of
	}
	for _, r := range c.Phases {
		list = append(list, strings.TrimSuffix(quantity.PrintIn(quantity.Ohms, float64(r), 2*worst), " Ω"))
	}
	return start + strings.Join(list, ", ") + " Ω, each ± " + strings.TrimSuffix(quantity.PrintIn(quantity.Ohms, 2*worst, 2*worst), " Ω") + " Ω."
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
	return FaultsThatRead + strings.Join(list, "; or ") + "."
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
		return of() + " is broken"
	case winding.LeadOpen:
		return fmt.Sprintf("lead %d is broken", f.Fault.At+1)
	case winding.PhaseShorted:
		return "all turns of " + of() + " are bridged"
	case winding.Bridged:
		return fmt.Sprintf("leads %d and %d touch", f.Fault.At+1, f.Fault.To+1)
	case winding.TurnsShorted:
		return fmt.Sprintf("about %s of the turns of %s are shorted (± %s)", percent(f.Fault.Share), of(), percent(min(2*f.ShareStd, 1)))
	case winding.PoorJoint:
		return fmt.Sprintf("a poor joint in lead %d", f.Fault.At+1)
	}
	return "no fault"
}

func phaseOf(c winding.Connection, i int) string {
	if c == winding.Delta {
		return fmt.Sprintf("the branch between leads %d and %d of a delta", i+1, (i+1)%3+1)
	}
	return fmt.Sprintf("the phase at lead %d of a star", i+1)
}

// Touch says where a winding touches the core.
func Touch(t winding.Touch) string {
	what := "It touches the core"
	if t.Leak {
		what = "It leaks to the core through dirt, damp or charred varnish"
	}
	switch t.Place {
	case winding.TouchAtLead:
		return fmt.Sprintf("%s at lead %d or its joint.", what, t.Lead+1)
	case winding.TouchAtNeutral:
		return what + " at the common point of the star."
	case winding.TouchInPhase:
		return fmt.Sprintf("%s about %s of the way into the winding, counted from lead %d (± %s).", what, percent(t.Share), t.Lead+1, percent(math.Min(2*t.ShareStd, 1)))
	case winding.TouchContradicts:
		return "No single touch reads like this: it touches in two places, or a reading is wrong."
	}
	return what + "; these readings are too coarse to say where. Turn the dial down to the lowest range that shows a number and read every lead to the core again."
}
