//go:build !js

package main

import (
	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
)

// diagnosis is what a session's readings say of the fault: the suspects, the check
// to do next unless it is enough, and the finding as it stands.
type diagnosis struct {
	Suspects []suspect `json:"suspects"`
	Next     *ask      `json:"next"`
	Finding  finding   `json:"finding"`
}

func reportWithDiagnosis(b assess.Bench) ([]byte, error) {
	d, err := diagnosisOf(b)
	if err != nil {
		return nil, err
	}
	if d == nil {
		return words.ReportJSON(b, nil)
	}
	return words.ReportJSON(b, d)
}

// diagnosisOf is nil for a session that looks for no fault.
func diagnosisOf(b assess.Bench) (*diagnosis, error) {
	symptom, ok := fault.Of(b.State.Setup.Aim)
	if !ok {
		return nil, nil
	}
	faults, err := fault.Bundled()
	if err != nil {
		return nil, err
	}
	q := diagnose.Question{Symptom: symptom, Build: b.State.Setup.Build, Meter: b.Meter, Kit: b.Kit()}
	c := diagnose.Begin(diagnose.New(q, faults).Ready(), nil)
	for _, k := range check.Whole(b.State.Setup.Build) {
		answer := b.State.Current[k.ID]
		switch {
		case answer.Reading != nil:
			for i, e := range b.State.Runs[k.ID] {
				say := c.Again
				if i == 0 {
					say = c.Answer
				}
				// What cannot be read is told in its line of the report.
				_ = say(k.ID, e.Reading.Text, e.Reading.Unit)
			}
		case answer.Skip != nil:
			_ = c.Refuse(k.ID)
		}
	}
	out := &diagnosis{Suspects: suspectsOf(c.Suspects().Faults), Finding: findingOf(c)}
	if next, more := c.Ask(); more {
		a := asking(c, next, b.Meter)
		out.Next = &a
	}
	return out, nil
}
