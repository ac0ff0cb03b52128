// Package assess puts a session's readings, its meter and a spec profile
// together: every check with its reading and verdict, and what stays untested.
// It judges nothing itself; the path of a reading is quantity, meter, spec.
package assess

import (
	"math"

	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
	"coilbook/engine/spec"
)

// Bench is what readings are judged on: meter, limits, temperature, plan.
type Bench struct {
	State   session.State
	Meter   meter.Meter
	Profile spec.Profile
	Air     spec.Temperature
	Plan    []check.Check
	zero    *meter.Measurement

	// badLeads says that the probes held together read open, restless or far
	// too much: no ohm reading through such leads says anything.
	badLeads bool
}

// Open lays out a session's bench. profiles must not be empty; a profile or
// meter that is not known gives way to the first profile and the cheap meter.
func Open(st session.State, profiles []spec.Profile) Bench {
	b := Bench{State: st, Meter: meter.Cheap(), Profile: profiles[0], Air: spec.AirUnknown()}
	if m, ok := meter.ByID(st.Setup.Meter); ok {
		b.Meter = m
	}
	for _, p := range profiles {
		if p.ID == st.Setup.Profile {
			b.Profile = p
		}
	}
	if st.Setup.Ambient != nil {
		b.Air = spec.AirAt(quantity.Celsius(*st.Setup.Ambient))
	}
	for _, c := range st.Plan() {
		b.Plan = append(b.Plan, b.aimed(c))
	}
	b.zero = b.leadZero()
	return b
}

// aimed chooses the range for the limit's size where the limit is known.
func (b Bench) aimed(c check.Check) check.Check {
	if l, ok := b.Profile.Limit(c.Measures); ok {
		c = c.Toward(l)
	}
	return c
}

func (b *Bench) leadZero() *meter.Measurement {
	for _, c := range b.Plan {
		e, ok := b.State.Current[c.ID]
		if c.Measures != spec.LeadZero || !ok || e.Reading == nil {
			continue
		}
		if t, err := b.typed(c, *e.Reading); err == nil {
			m := b.measure(c, *e.Reading, t)
			limit, known := b.Profile.Limit(c.Measures)
			b.badLeads = t.State != quantity.Number || known && spec.Judge(limit, m, b.Air).Outcome == spec.OutOfSpec
			return &m
		}
	}
	return nil
}

// Line is one check with what was read and what it means.
type Line struct {
	Check    check.Check
	Answer   session.Entry // zero when not answered
	Answered bool
	Skipped  bool
	Typed    quantity.Typed
	Unread   error // why a stored text cannot be read; nil otherwise
	Measured meter.Measurement
	Verdict  spec.Verdict
	Earlier  int // how many readings this one replaced
}

// Judge gives the line that a text would make, without recording it.
func (b Bench) Judge(c check.Check, r session.Reading) Line {
	l := Line{Check: c}
	l.Typed, l.Unread = b.typed(c, r)
	if l.Unread != nil {
		return l
	}
	l.Answered = true
	l.Measured = b.measure(c, r, l.Typed)
	if limit, ok := b.Profile.Limit(c.Measures); ok {
		l.Verdict = spec.Judge(limit, l.Measured, b.Air)
	} else {
		l.Verdict = spec.NoLimitFor(l.Measured)
	}
	if b.badLeads && c.Measures != spec.LeadZero && c.Instrument == check.Multimeter && c.Function == meter.Ohms {
		l.Verdict = spec.LeadsFirst(l.Verdict)
	}
	return l
}

func (b Bench) typed(c check.Check, r session.Reading) (quantity.Typed, error) {
	unit := c.Unit(b.Meter)
	if u, ok := quantity.UnitNamed(c.Kind(), r.Unit); ok {
		unit = u
	}
	t, err := quantity.Parse(c.Kind(), r.Text, unit)
	if err != nil || c.Instrument == check.FeelerGauge || t.State != quantity.Number {
		return t, err
	}
	if top, ok := b.Meter.Highest(c.Function); ok && math.Abs(t.Value) > top.Full*1.0001 {
		return t, &quantity.UnreadableError{Text: t.String(), Reason: "is more than any range of this meter shows", WayOut: "check the dial and the unit"}
	}
	return t, nil
}

// Cranking turns a small engine at about 150 to 600 per minute; with the pole
// pairs of small flywheels that is 5 to 60 Hz. From memory, no source.
const crankLow, crankHigh = 5, 60

// exciterSource is a usual exciter resistance, for the meter's loading.
const exciterSource = 500

func (b Bench) measure(c check.Check, r session.Reading, t quantity.Typed) meter.Measurement {
	if c.Instrument == check.FeelerGauge {
		return meter.MeasureGap(t)
	}
	dial, _ := c.Dial(b.Meter)
	if chosen, ok := b.Meter.RangeLabelled(c.Function, r.Range); ok {
		dial = chosen
	}
	cond := meter.Conditions{LeadZero: b.zero, RawLeads: c.Measures == spec.LeadZero}
	if c.Engine == check.Cranking {
		cond.Low, cond.High, cond.Source = crankLow, crankHigh, exciterSource
	}
	return b.Meter.Measure(c.Function, b.Meter.RangeOf(c.Function, dial, t), t, cond)
}

// Line gives the line of a check of the plan.
func (b Bench) Line(c check.Check) Line {
	e, ok := b.State.Current[c.ID]
	l := Line{Check: c}
	if ok && e.Reading != nil {
		l = b.Judge(c, *e.Reading)
	}
	l.Answer, l.Answered, l.Skipped = e, ok, ok && e.Skip != nil
	l.Earlier = len(b.State.Earlier[c.ID])
	return l
}
