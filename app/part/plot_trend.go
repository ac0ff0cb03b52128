package part

import (
	"math"
	"time"

	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

// TrendPlot is one check over the sessions of a machine, by the day it was read, with
// the limit of the latest session.
func TrendPlot(track assess.Track) (*Plot, Table) {
	t := Table{Head: []string{words.DateColumn, words.ReadingColumn, words.LimitColumn, words.VerdictColumn}}
	var said []string
	var values []float64
	points := track.Points
	latest, unit := points[len(points)-1].Line.Verdict, trendUnit(track)
	p := &Plot{Across: days(points[0].At, points[len(points)-1].At)}
	for _, one := range points {
		v := one.Line.Verdict
		d := Dot{X: dayOf(one.At), Open: !v.HasValue}
		reading := words.OpenLine
		if v.HasLimit {
			d.Tone = Tone(v.Outcome)
		}
		if v.HasValue {
			d.Y, d.Doubt = unit.In(v.Value), 2*v.Std/unit.Factor
			values = append(values, d.Y-d.Doubt, d.Y+d.Doubt)
			reading = words.WithDoubt(unit, v.Value, 2*v.Std)
		}
		p.Dots = append(p.Dots, d)
		t.Rows = append(t.Rows, []string{words.Day(one.At), reading, words.LimitOf(v), words.VerdictOf(v)})
		said = append(said, words.TrendRow(words.Day(one.At), reading))
	}
	p.Said = words.TrendSaid(words.CheckName(track.Check), said)
	p.Up = Around(unit.Name, false, values...)
	p.hold(latest, unit)
	return p, t
}

// TrendLegend is that of such a plot.
func TrendLegend(p *Plot) []Sample {
	return p.legend(words.TrendBand, words.Outcome(spec.InSpec), words.Outcome(spec.OutOfSpec), words.OutcomeLong(spec.CannotTell))
}

// trendUnit is the limit's, or where that makes long numbers or there is none the one
// in which the largest value is easiest to read.
func trendUnit(track assess.Track) quantity.Unit {
	const long = 9999
	most, unit := 0.0, quantity.Unit{}
	for _, one := range track.Points {
		v := one.Line.Verdict
		if v.HasLimit && !v.Limit.Ratio {
			unit = v.Limit.Unit
		}
		most = max(most, math.Abs(v.Value))
	}
	if unit.Factor == 0 || math.Abs(unit.In(most)) > long {
		return quantity.UnitFor(track.Check.Kind(), most)
	}
	return unit
}

// hold draws a limit as a band, and makes room for those of its ends that are near
// enough for the readings to stay apart.
func (p *Plot) hold(v spec.Verdict, u quantity.Unit) {
	if !v.HasLimit || v.Limit.Ratio || v.Limit.Open {
		return
	}
	const near = 3 // times what the readings span
	low, high := u.In(v.Limit.Low), u.In(v.Limit.High)
	span := p.Up.High - p.Up.Low
	for _, end := range []float64{low, high} {
		if end > p.Up.Low-near*span && end < p.Up.High+near*span {
			p.Up = Around(p.Up.Unit, false, p.Up.Low+plotAir*span, p.Up.High-plotAir*span, end)
		}
	}
	low, high = max(low, p.Up.Low), min(high, p.Up.High)
	if high > low {
		p.Band = []Span{{p.Across.Low, low, high}, {p.Across.High, low, high}}
	}
}

// dayOf is a time in days, in the phone's own zone.
func dayOf(t time.Time) float64 {
	_, offset := t.Local().Zone()
	return float64(t.Unix()+int64(offset)) / secondsADay
}

const secondsADay = 86400.0

// days is an axis of dates with some room at both ends; its marks begin days, months
// or years, few enough to read.
func days(first, last time.Time) Axis {
	from, to := dayOf(first), dayOf(last)
	air := max((to-from)*0.08, 1)
	a := Axis{Low: from - air, High: to + air, Marks: []AxisMark{}}
	for _, step := range calendar {
		if (a.High-a.Low)/step.days <= mostDates || step.years == 10 {
			for t := step.before(a.Low); dayUTC(t) <= a.High; t = t.AddDate(step.years, step.months, step.each) {
				if dayUTC(t) >= a.Low {
					a.Marks = append(a.Marks, AxisMark{dayUTC(t), words.AxisDay(t, step.name)})
				}
			}
			return a
		}
	}
	return a
}

// mostDates is how many marks there may be.
const mostDates = 5

// stride is a step of the calendar.
type stride struct {
	name                string
	years, months, each int
	days                float64
}

// calendar lists the steps from the finest.
var calendar = []stride{
	{"day", 0, 0, 1, 1}, {"day", 0, 0, 2, 2}, {"day", 0, 0, 7, 7}, {"day", 0, 0, 14, 14}, {"month", 0, 1, 0, 30}, {"month", 0, 3, 0, 91},
	{"month", 0, 6, 0, 182}, {"year", 1, 0, 0, 365}, {"year", 2, 0, 0, 730}, {"year", 5, 0, 0, 1826}, {"year", 10, 0, 0, 3652},
}

// before is a beginning of a stride at or before a day.
func (s stride) before(day float64) time.Time {
	t := time.Unix(int64(math.Floor(day))*int64(secondsADay), 0).UTC()
	switch {
	case s.years > 0:
		return time.Date(t.Year()-t.Year()%s.years, 1, 1, 0, 0, 0, 0, time.UTC)
	case s.months > 0:
		return time.Date(t.Year(), 1, 1, 0, 0, 0, 0, time.UTC)
	}
	return t
}

func dayUTC(t time.Time) float64 { return float64(t.Unix()) / secondsADay }
