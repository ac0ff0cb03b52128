package practice

import (
	"time"

	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/rig"
	"coilbook/engine/session"
	"coilbook/engine/spec"
)

// Aim is what a rider with this complaint would choose on the start screen.
func (b Bench) Aim() check.Aim {
	switch {
	case b.Complaint == NoSpark:
		return check.NoSpark
	case b.Complaint == FailsWarm && !b.fault.Kind.Charging():
		return check.CutsOutHot
	}
	return check.NoCharge
}

// Guided is how the guided checks would have gone on this machine: a session with
// the readings that the same meter would have shown, in the order of the plan,
// begun at a time.
func (b Bench) Guided(at time.Time, profile string) (session.Session, error) {
	return b.Route(at, profile).whole()
}

// Recorded is a session of the checks that a set-up asks for, on a simulated
// machine. Its ids follow from its name, so that the same is always the same.
func Recorded(m machine.Machine, in rig.Instrument, s session.Setup, at time.Time) (session.Session, error) {
	return begin(m, in, s, at).whole()
}

// Kit is what lies on the practice bench beside the meter.
var Kit = machine.Kit{ResistorOhms: 0.5, BulbOhms: 7, SupplyVolts: 12.5, AdapterFarads: 1e-6, BleederOhms: 10e6}

// read is what one would type after a check.
func read(m machine.Machine, in rig.Instrument, c check.Check) (text, unit string, err error) {
	d, err := rig.Check(m, c, in, Kit)
	if err != nil {
		return "", "", err
	}
	return d.Typed(), d.Unit.Name, nil
}

// Step is one check of the guided route with its verdict.
type Step struct {
	assess.Line
	Minutes float64 // spent up to and with it
	// Finds says that it is the first out of spec.
	Finds bool
}

// Steps judges a recorded session.
func Steps(s session.Session, profiles []spec.Profile) []Step {
	b := assess.Open(s.Fold(), profiles)
	var out []Step
	minutes, found := 0.0, false
	for _, c := range b.Plan {
		minutes += c.Minutes
		step := Step{Line: b.Line(c), Minutes: minutes}
		if step.Verdict.Outcome == spec.OutOfSpec && step.Judged() && !found {
			step.Finds, found = true, true
		}
		out = append(out, step)
	}
	return out
}
