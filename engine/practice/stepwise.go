package practice

import (
	"time"

	"github.com/google/uuid"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/rig"
	"coilbook/engine/session"
)

// What takes long comes in steps too, each one simulation, so that a screen can
// draw between them.

// Places are the faults that a rival stands for: its kind at each place that is
// tried.
func (b Bench) Places(rival machine.Kind) []machine.Fault { return b.like(rival) }

// Unlike reports whether the machine with that fault in place of its own would
// have shown something else. A reading speaks against a rival that is unlike at
// all its places.
func (b Bench) Unlike(p Probe, f machine.Fault) (bool, error) {
	d, err := rig.Show(b.sound().With(f), p.Probing, b.Instrument, p.Dial)
	return err == nil && !alike(p.Display, d), err
}

// Starts reports whether the engine runs by itself: not where the owner says that
// it gives no spark, nor, where it stops when warm, once it is warm.
func (b Bench) Starts(hot bool) bool {
	return b.Aim() == check.NoCharge || b.Complaint == FailsWarm && !hot
}

// Route is the guided session in the making, one check a step.
type Route struct {
	bench  Bench
	whole  session.Session
	checks []check.Check
	at     time.Time
}

// Route begins what Guided does at once.
func (b Bench) Route(at time.Time, profile string) *Route {
	setup := session.Setup{Name: "Practice bench " + b.Code(), Aim: b.Aim(), Build: b.Build.Known(), Meter: b.Instrument.Meter.ID, Profile: profile}
	id := uuid.NewSHA1(uuid.NameSpaceOID, []byte("coilbook session "+setup.Name))
	r := &Route{bench: b, whole: session.Session{ID: id}, checks: check.Plan(setup.Build, setup.Aim), at: at}
	r.add("setup", session.Entry{Setup: &setup})
	return r
}

// Step reads the next check; more is false once the route is at its end.
func (r *Route) Step() (more bool, err error) {
	if len(r.checks) == 0 {
		return false, nil
	}
	c := r.checks[0]
	text, unit, err := read(r.bench.hidden, r.bench.Instrument, c)
	if err != nil {
		return false, err
	}
	r.checks = r.checks[1:]
	r.add(string(c.ID), session.Entry{Reading: &session.Reading{Check: c.ID, Text: text, Unit: unit}})
	return len(r.checks) > 0, nil
}

// Session is what was read so far.
func (r *Route) Session() session.Session { return r.whole }

func (r *Route) add(name string, e session.Entry) {
	e.ID, e.At = uuid.NewSHA1(r.whole.ID, []byte(name)), r.at
	r.at = r.at.Add(time.Minute)
	r.whole = r.whole.Append(e)
}
