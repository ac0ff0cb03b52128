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
	Air     spec.Temperature // of the windings from now on
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
	if m, ok := meterOf(st.Setup); ok {
		b.Meter = m
	}
	for _, p := range profiles {
		if p.ID == st.Setup.Profile {
			b.Profile = p
		}
	}
	b.Air = spec.TemperatureOf(st.Setup.Winding, (*quantity.Celsius)(st.Setup.Ambient))
	for _, c := range st.Plan() {
		b.Plan = append(b.Plan, b.aimed(c))
	}
	b.zero = b.leadZero()
	return b
}

// meterOf is the meter of a set-up, with what its self-check told; ok is false
// for one that is not described.
func meterOf(s session.Setup) (m meter.Meter, ok bool) {
	if s.Meter != session.OwnMeter || s.Own == nil {
		return meter.ByID(s.Meter)
	}
	m, err := s.Own.Sheet.Meter()
	if err == nil && s.Own.Learned != nil {
		m = m.With(*s.Own.Learned)
	}
	return m, err == nil
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
		if c.Measures != spec.LeadZero || len(b.State.Runs[c.ID]) == 0 {
			continue
		}
		l := b.judge(c, readingsOf(b.State.Runs[c.ID]))
		if l.Unread != nil {
			return nil
		}
		b.badLeads = l.Measured.State != quantity.Number || l.Verdict.Outcome == spec.OutOfSpec
		return &l.Measured
	}
	return nil
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
