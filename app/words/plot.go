package words

import (
	"fmt"
	"strings"
	"time"

	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

// Words of the plots and of their tables.
const (
	PlotTable = "As a table"

	SharesTitle  = "All suspects in one picture"
	SharesHint   = "All bars together make 100 %."
	ShareColumn  = "Probability"
	SuspectTitle = "Suspect"

	SpeedUnit     = "rpm"
	AtRestMark    = "rest"
	OutputTitle   = "Battery volts over engine speed"
	OpenTitle     = "Volts of the unplugged charge leads over engine speed"
	OutputBand    = "nine in ten sound machines of this build"
	OutputInside  = "as sound machines read"
	OutputOutside = "such as hardly a sound one reads"
	OutputBetween = "cannot tell, the doubt crosses the edge"
	OutputHint    = "The band is worked out from the formulas of many virtual machines built like yours. It is no limit: the service manual comes first."
	CheckColumn   = "Check"
	SpeedColumn   = "Engine"
	YoursColumn   = "Yours"
	SoundColumn   = "Nine in ten sound ones"
	MeaningColumn = "So yours is"
	CurveTitle    = "What it gives over engine speed"
	CurveHint     = "By formula, with everything plugged in and the lamp on. Where the regulator holds, it is an estimate."
	CurveAmps     = "Current into the battery"
	CurveVolts    = "Battery volts, running"
	WithFault     = "with the fault"
	WithoutFault  = "the same machine without it"
	EarlierTitle  = "Earlier readings"
	EarlierNone   = "No check of this machine was read in two sessions yet. Sessions belong to one machine when they have the same name in the set-up."
	EarlierHint   = "All sessions with the same name in the set-up, each reading judged on its own meter and limits."
	ToEarlier     = "Earlier readings of this machine"
	DateColumn    = "Date"
	ReadingColumn = "Reading"
	LimitColumn   = "Limit"
	VerdictColumn = "Verdict"
	TrendBand     = "limit of the latest session"
	OpenLineMark  = "an arrow up is an open line"
	OpenLine      = "open line"
)

// ShareOthers names the bar of the suspects that have none of their own.
func ShareOthers(n int) string { return fmt.Sprintf("All others of the list (%d)", n) }

// BarSaid is a row of a bar plot as it is said.
func BarSaid(name, figure string) string { return fmt.Sprintf("%s: %s", name, figure) }

// SharesSaid stands for the picture of the suspects.
func SharesSaid(rows []string) string {
	return fmt.Sprintf("Probability of each suspect as a bar from 0 to 100 %%. %s.", strings.Join(rows, "; "))
}

// OutputSaid stands for a picture of readings over speed.
func OutputSaid(title string, rows []string) string {
	return fmt.Sprintf("%s: the band of nine in ten sound machines, and your readings. %s.", title, strings.Join(rows, "; "))
}

// CurveSaid stands for a picture of the hidden machine over speed, with what it gives
// at a speed with the fault and without.
func CurveSaid(title string, rpm float64, with, without string) string {
	return fmt.Sprintf("%s over engine speed, with the fault and without. At %s: %s with it, %s without.", title, Speed(rpm), with, without)
}

// TrendSaid stands for a picture of a check over the sessions.
func TrendSaid(name string, rows []string) string {
	return fmt.Sprintf("%s over the sessions: %s.", name, strings.Join(rows, "; "))
}

// EarlierOf heads the earlier readings of a machine.
func EarlierOf(name string) string {
	if name == "" {
		return EarlierTitle
	}
	return fmt.Sprintf("%s: %s", EarlierTitle, name)
}

// TrendRow is one reading of it.
func TrendRow(day, reading string) string { return fmt.Sprintf("%s, %s", day, reading) }

// Speed names an engine's speed in 1/min; zero stands.
func Speed(rpm float64) string {
	if rpm == 0 {
		return "at rest"
	}
	return fmt.Sprintf("%.0f\u00a0rpm", rpm)
}

// FromTo writes where most lie, in the decimals that the width supports.
func FromTo(u quantity.Unit, low, high float64) string {
	d := quantity.DecimalsFor(u.In(high-low)/4, u.In(high))
	return fmt.Sprintf("%s to %s %s", quantity.Decimal(u.In(low), d), quantity.Decimal(u.In(high), d), u.Name)
}

// FigureOf writes a value that was worked out, with a number of decimals.
func FigureOf(u quantity.Unit, v float64, decimals int) string {
	return fmt.Sprintf("%s\u00a0%s", strings.Replace(quantity.Decimal(u.In(v), decimals), "-", "−", 1), u.Name)
}

// Against says in a table how a reading with its doubt lies to the band.
func Against(o spec.Outcome, above bool) string {
	switch {
	case o == spec.InSpec:
		return "inside"
	case o == spec.CannotTell:
		return "on the edge"
	case above:
		return "higher"
	}
	return "lower"
}

// WithDoubt writes a value in a unit with its doubt (95 %), both in SI.
func WithDoubt(u quantity.Unit, v, doubt float64) string {
	return fmt.Sprintf("%s ± %s %s", number(u, v, doubt), number(u, doubt, doubt), u.Name)
}

// LimitOf is a verdict's limit, or a dash.
func LimitOf(v spec.Verdict) string {
	if !v.HasLimit {
		return "–"
	}
	return Limit(v.Limit)
}

// VerdictOf is a verdict's word, or a dash where there is no limit.
func VerdictOf(v spec.Verdict) string {
	if !v.HasLimit {
		return "–"
	}
	return Outcome(v.Outcome)
}

// Day writes a date in the phone's own time zone.
func Day(t time.Time) string { return t.Local().Format("2\u00a0Jan\u00a02006") }

// AxisDay is a date under an axis, as fine as the steps between the marks: days,
// months, years.
func AxisDay(t time.Time, step string) string {
	return t.Format(map[string]string{"day": "2 Jan", "month": "Jan 06", "year": "2006"}[step])
}

// Printed heads a page on paper: which machine, and when it was last read.
func Printed(name string, at time.Time) string { return fmt.Sprintf("%s · %s", name, When(at)) }
