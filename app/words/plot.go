package words

import (
	"strings"
	"time"

	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

// Words of the plots and of their tables.
var (
	PlotTable = text("As a table")

	SharesTitle  = text("All suspects in one picture")
	SharesHint   = text("All bars together make 100 %.")
	ShareColumn  = text("Probability")
	SuspectTitle = text("Suspect")

	SpeedUnit     = text("rpm")
	AtRestMark    = text("rest")
	OutputTitle   = text("Battery volts over engine speed")
	OpenTitle     = text("Volts of the unplugged charge leads over engine speed")
	OutputBand    = text("nine in ten sound machines of this build")
	OutputInside  = text("as sound machines read")
	OutputOutside = text("such as hardly a sound one reads")
	OutputBetween = text("cannot tell, the doubt crosses the edge")
	OutputHint    = text("The band is worked out from the formulas of many virtual machines built like yours. It is no limit: the service manual comes first.")
	CheckColumn   = text("Check")
	SpeedColumn   = text("Engine")
	YoursColumn   = text("Yours")
	SoundColumn   = text("Nine in ten sound ones")
	MeaningColumn = text("So yours is")
	CurveTitle    = text("What it gives over engine speed")
	CurveHint     = text("By formula, with everything plugged in and the lamp on. Where the regulator holds, it is an estimate.")
	CurveAmps     = text("Current into the battery")
	CurveVolts    = text("Battery volts, running")
	WithFault     = text("with the fault")
	WithoutFault  = text("the same machine without it")
	EarlierTitle  = text("Earlier readings")
	EarlierNone   = text("No check of this machine was read in two sessions yet. Sessions belong to one machine when they have the same name in the set-up.")
	EarlierHint   = text("All sessions with the same name in the set-up, each reading judged on its own meter and limits.")
	ToEarlier     = text("Earlier readings of this machine")
	DateColumn    = text("Date")
	ReadingColumn = text("Reading")
	LimitColumn   = text("Limit")
	VerdictColumn = text("Verdict")
	TrendBand     = text("limit of the latest session")
	OpenLineMark  = text("an arrow up is an open line")
	OpenLine      = text("open line")
)

// ShareOthers names the bar of the suspects that have none of their own.
func ShareOthers(n int) string { return say("All others of the list (%d)", n) }

// BarSaid is a row of a bar plot as it is said.
func BarSaid(name, figure string) string { return name + ": " + figure }

// SharesSaid stands for the picture of the suspects.
func SharesSaid(rows []string) string {
	return say("Probability of each suspect as a bar from 0 to 100 %%. %s.", strings.Join(rows, "; "))
}

// OutputSaid stands for a picture of readings over speed.
func OutputSaid(title string, rows []string) string {
	return say("%s: the band of nine in ten sound machines, and your readings. %s.", title, strings.Join(rows, "; "))
}

// CurveSaid stands for a picture of the hidden machine over speed, with what it gives
// at a speed with the fault and without.
func CurveSaid(title string, rpm float64, with, without string) string {
	return say("%s over engine speed, with the fault and without. At %s: %s with it, %s without.", title, Speed(rpm), with, without)
}

// TrendSaid stands for a picture of a check over the sessions.
func TrendSaid(name string, rows []string) string {
	return say("%s over the sessions: %s.", name, strings.Join(rows, "; "))
}

// EarlierOf heads the earlier readings of a machine.
func EarlierOf(name string) string {
	if name == "" {
		return EarlierTitle
	}
	return EarlierTitle + ": " + name
}

// TrendRow is one reading of it.
func TrendRow(day, reading string) string { return day + ", " + reading }

// Speed names an engine's speed in 1/min; zero stands.
func Speed(rpm float64) string {
	if rpm == 0 {
		return say("at rest")
	}
	return say("%s\u00a0rpm", decimal(rpm, 0))
}

// FromTo writes where most lie, in the decimals that the width supports.
func FromTo(u quantity.Unit, low, high float64) string {
	d := quantity.DecimalsFor(u.In(high-low)/4, u.In(high))
	return say("%s to %s %s", decimal(u.In(low), d), decimal(u.In(high), d), u.Name)
}

// FigureOf writes a value that was worked out, with a number of decimals.
func FigureOf(u quantity.Unit, v float64, decimals int) string {
	return strings.Replace(decimal(u.In(v), decimals), "-", "−", 1) + "\u00a0" + u.Name
}

// Against says in a table how a reading with its doubt lies to the band.
func Against(o spec.Outcome, above bool) string {
	switch {
	case o == spec.InSpec:
		return say("inside")
	case o == spec.CannotTell:
		return say("on the edge")
	case above:
		return say("higher")
	}
	return say("lower")
}

// WithDoubt writes a value in a unit with its doubt (95 %), both in SI.
func WithDoubt(u quantity.Unit, v, doubt float64) string {
	return number(u, v, doubt) + " ± " + number(u, doubt, doubt) + " " + u.Name
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
func Day(t time.Time) string {
	t = t.Local()
	return say("%d\u00a0%s\u00a0%d", t.Day(), month(t), t.Year())
}

// AxisDay is a date under an axis, as fine as the steps between the marks: days,
// months, years.
func AxisDay(t time.Time, step string) string {
	switch step {
	case "day":
		return say("%d %s", t.Day(), month(t))
	case "month":
		return say("%s %s", month(t), t.Format("06"))
	}
	return t.Format("2006")
}

// month is a month's short name.
func month(t time.Time) string {
	return strings.Fields(say("Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec"))[t.Month()-1]
}

// Printed heads a page on paper: which machine, and when it was last read.
func Printed(name string, at time.Time) string { return name + " · " + When(at) }
