package assess

import (
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
	"coilbook/engine/spec"
)

// Line is one check with what was read and what it means.
type Line struct {
	Check    check.Check
	Answer   session.Entry // the latest; zero when not answered
	Answered bool
	Skipped  bool
	Typed    quantity.Typed // the latest
	Unread   error          // why a stored text cannot be read; nil otherwise
	Run      []Point        // all readings of the point that count together
	Repeats  meter.Repeats  // what they are worth together
	Measured meter.Measurement
	Verdict  spec.Verdict
	Air      spec.Temperature // of the winding when it was read
	Peak     *meter.Peak      // behind a peak-hold adapter, where there is a number
	// NotPeak says that pulses were read without an adapter: what a meter shows
	// of them hangs on their width and is not their height.
	NotPeak bool
	// Derived says that the value was worked out from other lines.
	Derived bool
	Earlier int // how many readings were replaced
}

// Point is one reading of a run.
type Point struct {
	Entry    session.Entry // zero for one that is being typed
	Typed    quantity.Typed
	Measured meter.Measurement
}

// Judged reports whether the line has a verdict: it was read, and the reading
// counts by itself.
func (l Line) Judged() bool { return l.Read() && !l.Check.Feeds }

// Read reports whether there is a reading that can be read.
func (l Line) Read() bool { return l.Answered && !l.Skipped && l.Unread == nil }

// Judge gives the line that a text would make, without recording it: together
// with those before it when it is one more of the same point.
func (b Bench) Judge(c check.Check, r session.Reading) Line {
	readings := []session.Reading{r}
	if r.Again {
		readings = append(readingsOf(b.State.Runs[c.ID]), r)
	}
	return b.judge(c, readings)
}

// Line gives the line of a check of the plan.
func (b Bench) Line(c check.Check) Line {
	e, ok := b.State.Current[c.ID]
	l := Line{Check: c}
	if run := b.State.Runs[c.ID]; len(run) > 0 {
		l = b.judge(c, readingsOf(run))
		for i := range l.Run {
			l.Run[i].Entry = run[i]
		}
	}
	l.Answer, l.Answered, l.Skipped = e, ok, ok && e.Skip != nil
	l.Earlier = len(b.State.Earlier[c.ID])
	return l
}

func readingsOf(run []session.Entry) []session.Reading {
	out := make([]session.Reading, len(run))
	for i, e := range run {
		out[i] = *e.Reading
	}
	return out
}

func (b Bench) judge(c check.Check, readings []session.Reading) Line {
	l := Line{Check: c, Air: b.Air}
	var measured []meter.Measurement
	for _, r := range readings {
		t, err := b.typed(c, r)
		l.Typed = t
		if err != nil {
			l.Unread = err
			return l
		}
		l.Air = b.airOf(r)
		m := b.measure(c, r, t)
		l.Run = append(l.Run, Point{Typed: t, Measured: m})
		measured = append(measured, m)
	}
	l.Repeats, l.Answered = meter.Repeat(measured)
	l.Measured = l.Repeats.Measurement
	l.NotPeak = c.Function == meter.VoltsAC && c.Engine == check.Cranking && c.Instrument == check.Multimeter
	b.decide(&l)
	return l
}

// airOf is the temperature of a winding when it was read.
func (b Bench) airOf(r session.Reading) spec.Temperature {
	return spec.TemperatureOf(r.Winding, (*quantity.Celsius)(b.State.Setup.Ambient))
}

// decide gives a line its verdict.
func (b Bench) decide(l *Line) {
	c := l.Check
	limit, ok := b.Profile.Limit(c.Measures)
	switch {
	case c.PeakHold:
		b.decidePeak(l, limit, ok)
	case ok:
		l.Verdict = spec.Judge(limit, l.Measured, l.Air)
	default:
		l.Verdict = spec.NoLimitFor(l.Measured)
	}
	switch {
	case l.Repeats.Retake >= 0:
		l.Verdict = spec.First(spec.RetakeOne, l.Verdict)
	case l.Repeats.Wanders:
		l.Verdict = spec.First(spec.CleanContact, l.Verdict)
	}
	if b.badLeads && c.Measures != spec.LeadZero && c.Instrument == check.Multimeter && c.Function == meter.Ohms {
		l.Verdict = spec.LeadsFirst(l.Verdict)
	}
}
