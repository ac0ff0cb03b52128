//go:build !js

package main

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/quantity"
)

// why says what a check is expected to bring: how likely the likeliest part is now
// and after it, in bits too, and what its answers would mean.
type why struct {
	Now      float64   `json:"now"`
	Expected float64   `json:"expected"`
	Bits     float64   `json:"bits"`
	Outcomes []outcome `json:"outcomes"`
}

// outcome is one answer, or a span of numbers in SI that lead to the same part; a
// missing end is open.
type outcome struct {
	Answer      string       `json:"answer"`
	Low         *float64     `json:"low,omitempty"`
	High        *float64     `json:"high,omitempty"`
	Chance      float64      `json:"chance"`
	Part        check.Part   `json:"part"`
	Parts       []check.Part `json:"parts"`
	Probability float64      `json:"probability"`
}

// suspectReasons are the answers that speak loudest about one suspect.
type suspectReasons struct {
	Fault   fault.ID `json:"fault"`
	For     []reason `json:"for"`
	Against []reason `json:"against"`
}

// reason is one answer, what nine in ten machines with the fault would read, in SI,
// the shares of them without a number, and what the answer weighs in bits.
type reason struct {
	Check    check.ID `json:"check"`
	Answer   string   `json:"answer"`
	Number   *float64 `json:"number,omitempty"`
	Low      *float64 `json:"low,omitempty"`
	High     *float64 `json:"high,omitempty"`
	Open     *float64 `json:"open,omitempty"`
	Restless *float64 `json:"restless,omitempty"`
	Yes      *float64 `json:"yes,omitempty"`
	Bits     float64  `json:"bits"`
}

// Answers in words.
const (
	answerNumber, answerOpen, answerRestless, answerYes, answerNo = "number", "open", "unsettled", "yes", "no"
)

// At most so many suspects are explained, by so many answers for and against.
const explained, reasonsEach = 3, 3

func whyOf(c *diagnose.Conversation, next diagnose.Choice) *why {
	_, now := c.Suspects().Lead()
	out := &why{Now: chance(now), Expected: chance(math.Min(now+math.Max(next.Gain, 0), 1)), Bits: chance(next.Bits), Outcomes: []outcome{}}
	look := next.Check.Instrument == check.Eyes
	for _, m := range c.Means(next.Check.ID) {
		one := outcome{Answer: answerNamed(m.State, look, m.Yes), Chance: chance(m.Chance), Part: firstOf(m.Parts), Parts: partsOf(m.Parts), Probability: chance(m.Sure)}
		if one.Answer == answerNumber {
			one.Low, one.High = finite(m.Low), finite(m.High)
		}
		out.Outcomes = append(out.Outcomes, one)
	}
	return out
}

func answerNamed(s quantity.State, look, yes bool) string {
	switch {
	case look && yes:
		return answerYes
	case look:
		return answerNo
	case s == quantity.OverRange:
		return answerOpen
	case s == quantity.Unsettled:
		return answerRestless
	}
	return answerNumber
}

// reasonsOf explains the likeliest suspects.
func reasonsOf(c *diagnose.Conversation, all []diagnose.Suspect) []suspectReasons {
	out := []suspectReasons{}
	for _, s := range all[:min(explained, len(all))] {
		pro, con := c.Reasons(s.Fault.ID, reasonsEach)
		out = append(out, suspectReasons{s.Fault.ID, written(c, pro), written(c, con)})
	}
	return out
}

func written(c *diagnose.Conversation, all []diagnose.Reason) []reason {
	out := []reason{}
	for _, r := range all {
		e, look := r.Answer, c.Looked(r.Check)
		one := reason{Check: r.Check, Answer: answerNamed(e.State, look, e.Value == 1), Bits: chance(r.Weight)}
		if one.Answer == answerNumber {
			one.Number = finite(e.Value)
		}
		if look {
			one.Yes = finite(r.Open)
		} else {
			one.Open, one.Restless = finite(r.Open), finite(r.Restless)
		}
		if r.Low != 0 || r.High != 0 {
			one.Low, one.High = finite(r.Low), finite(r.High)
		}
		out = append(out, one)
	}
	return out
}

// finite is a number with four figures, nil for one without end.
func finite(v float64) *float64 {
	if math.IsInf(v, 0) || math.IsNaN(v) {
		return nil
	}
	if v != 0 {
		parts := math.Pow(10, 3-math.Floor(math.Log10(math.Abs(v))))
		if !math.IsInf(parts, 0) && parts > 0 {
			v = math.Round(v*parts) / parts
		}
	}
	return &v
}
