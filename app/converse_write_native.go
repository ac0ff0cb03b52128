//go:build !js

package main

import (
	"math"

	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/meter"
)

// The lines of the program.
type (
	askLine struct {
		Ask      ask       `json:"ask"`
		Suspects []suspect `json:"suspects"`
	}
	problemLine struct {
		Problem string `json:"problem"`
	}
	findingLine struct {
		Finding finding `json:"finding"`
	}
)

// ask is one check to do. Red to Unit are for readings, Look and Question for
// looks.
type ask struct {
	Check      check.ID        `json:"check"`
	Instrument string          `json:"instrument"`
	Red        check.Terminal  `json:"red,omitempty"`
	Black      check.Terminal  `json:"black,omitempty"`
	Function   string          `json:"function,omitempty"`
	Range      string          `json:"range,omitempty"`
	Unit       string          `json:"unit,omitempty"` // of a reading that is given without one
	Look       check.Look      `json:"look,omitempty"`
	Question   string          `json:"question,omitempty"`
	Engine     string          `json:"engine"`
	Plug       string          `json:"plug"`
	Off        check.Off       `json:"off,omitempty"` // taken off besides
	Key        string          `json:"key"`
	Warm       bool            `json:"warm"`
	Needs      []check.Access  `json:"needs"`
	Cautions   []check.Caution `json:"cautions"`
	Minutes    float64         `json:"minutes"`
	PeakHold   bool            `json:"peakHold,omitempty"` // an adapter stands between probes and meter
	Again      bool            `json:"again,omitempty"`    // counts beside the reading that was given before
	Confirms   bool            `json:"confirms,omitempty"` // what is named stands already
	Why        *why            `json:"why,omitempty"`
}

// suspect is a fault and its parts, of which Part is the first, "" for none.
type suspect struct {
	Fault       fault.ID     `json:"fault"`
	Part        check.Part   `json:"part"`
	Parts       []check.Part `json:"parts"`
	Probability float64      `json:"probability"`
}

// also is a part that may be at fault beside those that are named.
type also struct {
	Part  check.Part `json:"part"`
	Share float64    `json:"share"`
}

type finding struct {
	Part        check.Part      `json:"part"`
	Parts       []check.Part    `json:"parts"`
	Also        []also          `json:"also"`
	Fault       fault.ID        `json:"fault"`
	Probability float64         `json:"probability"`
	Suspects    []suspect       `json:"suspects"`
	Strange     float64         `json:"strange"`
	Unlisted    float64         `json:"unlisted"`
	Minutes     float64         `json:"minutes"`
	Checks      int             `json:"checks"`
	Action      diagnose.Action `json:"action"`
	Unsure      []fault.ID      `json:"unsure"`
	Slip        *slip           `json:"slip,omitempty"`

	Reasons []suspectReasons `json:"reasons,omitempty"`
}

type slip struct {
	Check       check.ID `json:"check"`
	Probability float64  `json:"probability"`
}

var (
	instruments = map[check.Instrument]string{check.Multimeter: "multimeter", check.FeelerGauge: "feeler-gauge", check.Eyes: "eyes"}
	engines     = map[check.Engine]string{
		check.Stopped: "stopped", check.Cranking: "cranking", check.Idling: "idling", check.At3000: "3000 rpm", check.At5000: "5000 rpm",
	}
	plugs = map[check.Plug]string{check.Apart: "apart", check.Together: "together", check.RegulatorApart: "regulator-apart"}
	keys  = map[bool]string{false: "off", true: "on"}
)

// asking is a check to do, and why.
func asking(c *diagnose.Conversation, next diagnose.Choice, with meter.Meter) ask {
	out := askOf(next, with)
	out.Why = whyOf(c, next)
	return out
}

func askOf(next diagnose.Choice, with meter.Meter) ask {
	c := next.Check
	out := ask{
		Check: c.ID, Instrument: instruments[c.Instrument], Red: c.Red, Black: c.Black, Engine: engines[c.Engine], Plug: plugs[c.Plug],
		Key: keys[c.Key || c.Engine != check.Stopped], Warm: c.Hot || c.Method == check.HotWinding, Minutes: rounded(next.Minutes, 100),
		Needs: append([]check.Access{}, c.Needs...), Cautions: append([]check.Caution{}, c.Cautions...), PeakHold: c.PeakHold, Again: next.Again, Confirms: next.Confirms,
		Off: c.Off,
	}
	if c.Instrument == check.Eyes {
		out.Look, out.Question = c.Looks, words.Look(c.Looks)
		return out
	}
	out.Unit = c.Unit(with).Name
	if r, ok := c.Dial(with); ok {
		out.Function = c.Function.String()
		if !with.Auto {
			out.Range = r.Label
		}
	}
	return out
}

// named is how many suspects a line lists.
const named = 5

func suspectsOf(all []diagnose.Suspect) []suspect {
	out := []suspect{}
	for _, s := range all[:min(named, len(all))] {
		out = append(out, suspect{s.Fault.ID, firstOf(s.Fault.Parts()), partsOf(s.Fault.Parts()), chance(s.Probability)})
	}
	return out
}

// findingOf is where a conversation stands.
func findingOf(c *diagnose.Conversation) finding {
	f := c.Finding()
	out := finding{
		Part: firstOf(f.Parts), Parts: partsOf(f.Parts), Also: []also{}, Fault: f.Fault, Probability: chance(f.Probability), Suspects: suspectsOf(f.Faults), Strange: chance(f.Strange), Unlisted: chance(f.Unlisted),
		Minutes: rounded(f.Minutes, 100), Checks: f.Checks, Action: f.Action, Unsure: append([]fault.ID{}, f.Unsure...),
	}
	if f.Slip != "" {
		out.Slip = &slip{f.Slip, chance(f.SlipChance)}
	}
	for _, a := range f.Also {
		out.Also = append(out.Also, also{a.Part, chance(a.Share)})
	}
	out.Reasons = reasonsOf(c, f.Faults)
	return out
}

// partsOf is the parts at fault as a list that is never null.
func partsOf(s fault.Parts) []check.Part { return append([]check.Part{}, s.List()...) }

// firstOf is the first of them, "" where there is none.
func firstOf(s fault.Parts) check.Part {
	for _, p := range s.List() {
		return p
	}
	return ""
}

// chance rounds a probability to four decimals.
func chance(p float64) float64 { return rounded(p, 1e4) }

func rounded(v, parts float64) float64 { return math.Round(v*parts) / parts }
