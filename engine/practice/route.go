package practice

import (
	"time"

	"github.com/google/uuid"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/rig"
	"coilbook/engine/session"
)

// Route is a session on a simulated machine in the making, one check a step, so
// that a screen can draw between them.
type Route struct {
	machine    machine.Machine
	instrument rig.Instrument
	session    session.Session
	checks     []check.Check
	at         time.Time
}

// Route is the guided checks on this machine, begun at a time.
func (b Bench) Route(at time.Time, profile string) *Route {
	return begin(b.hidden, b.Instrument, session.Setup{
		Name: "Practice bench " + b.Code(), Aim: b.Aim(), Build: b.Build.Known(), Meter: b.Instrument.Meter.ID, Profile: profile,
	}, at)
}

func begin(m machine.Machine, in rig.Instrument, s session.Setup, at time.Time) *Route {
	id := uuid.NewSHA1(uuid.NameSpaceOID, []byte("coilbook session "+s.Name))
	r := &Route{
		machine: m, instrument: in, session: session.Session{ID: id}, checks: check.Plan(s.Build, s.Aim, s.Methods...), at: at,
	}
	r.add("setup", session.Entry{Setup: &s})
	return r
}

// Step reads the next check; more is false once the route is at its end.
func (r *Route) Step() (more bool, err error) {
	if len(r.checks) == 0 {
		return false, nil
	}
	c := r.checks[0]
	text, unit, err := read(r.machine, r.instrument, c)
	if err != nil {
		return false, err
	}
	r.checks = r.checks[1:]
	r.add(string(c.ID), session.Entry{Reading: &session.Reading{Check: c.ID, Text: text, Unit: unit}})
	return len(r.checks) > 0, nil
}

// Session is what was read so far.
func (r *Route) Session() session.Session { return r.session }

func (r *Route) add(name string, e session.Entry) {
	e.ID, e.At = uuid.NewSHA1(r.session.ID, []byte(name)), r.at
	r.at = r.at.Add(time.Minute)
	r.session = r.session.Append(e)
}

// whole takes all steps.
func (r *Route) whole() (session.Session, error) {
	for more := true; more; {
		var err error
		if more, err = r.Step(); err != nil {
			return r.session, err
		}
	}
	return r.session, nil
}
