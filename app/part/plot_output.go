package part

import (
	"coilbook/app/drawing"
	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/practice"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

// speeds is the axis of engine speeds, with those that the checks name as marks.
func speeds() Axis {
	a := Axis{Low: -250, High: 6000, Unit: words.SpeedUnit, Marks: []AxisMark{{0, words.AtRestMark}}}
	for _, rpm := range []float64{machine.IdleSpeed, machine.MidSpeed, machine.QuickSpeed} {
		a.Marks = append(a.Marks, AxisMark{rpm, words.Plain(rpm)})
	}
	return a
}

// Over is one of the user's readings at an engine speed.
type Over struct {
	RPM  float64
	Line assess.Line
}

// overSpeed picks the lines with a number that belong to a plot over speed: volts of
// the battery, or AC of the unplugged leads.
func overSpeed(b assess.Bench, ac bool) []Over {
	var out []Over
	for _, c := range check.Whole(b.State.Setup.Build) {
		switch c.Measures {
		case spec.BatteryRest, spec.BatteryIdle, spec.Battery3000, spec.Battery5000, spec.ChargeAC:
		default:
			continue
		}
		if (c.Function == meter.VoltsAC) != ac {
			continue
		}
		if l := b.Line(c); l.Read() && l.Verdict.HasValue {
			out = append(out, Over{machine.Running(c.Engine), l})
		}
	}
	return out
}

// BatteryOver and OpenOver are a session's readings over engine speed.
func BatteryOver(b assess.Bench) []Over { return overSpeed(b, false) }

// OpenOver is that of the unplugged charge leads.
func OpenOver(b assess.Bench) []Over { return overSpeed(b, true) }

// OutputPlot sets readings, each with its doubt (95 %), in the band of sound machines.
func OutputPlot(title string, readings []Over, band []diagnose.Band) (*Plot, Table) {
	p := &Plot{Across: speeds()}
	t := Table{Head: []string{words.CheckColumn, words.SpeedColumn, words.YoursColumn, words.SoundColumn, words.MeaningColumn}}
	var values []float64
	for _, b := range band {
		p.Band = append(p.Band, Span{b.RPM, b.Low, b.High})
		values = append(values, b.Low, b.High)
	}
	var said []string
	for _, r := range readings {
		v := r.Line.Verdict
		doubt := 2 * v.Std
		reading := words.WithDoubt(quantity.Volts, v.Value, doubt)
		values = append(values, v.Value-doubt, v.Value+doubt)
		o, above, where := inBand(band, r.RPM, v.Value, doubt)
		p.Dots = append(p.Dots, Dot{X: r.RPM, Y: v.Value, Doubt: doubt, Tone: Tone(o)})
		t.Rows = append(t.Rows, []string{words.CheckName(r.Line.Check), words.Speed(r.RPM), reading, where, words.Against(o, above)})
		said = append(said, words.BarSaid(words.CheckName(r.Line.Check), reading))
	}
	p.Up = Around(quantity.Volts.Name, false, values...)
	p.Said = words.OutputSaid(title, said)
	return p, t
}

// inBand tells whether a reading lies in the band at a speed with all of its doubt,
// outside with all of it, or across the edge; where says the band in words.
func inBand(band []diagnose.Band, rpm, v, doubt float64) (o spec.Outcome, above bool, where string) {
	for _, b := range band {
		if b.RPM != rpm {
			continue
		}
		where = words.FromTo(quantity.Volts, b.Low, b.High)
		switch {
		case v-doubt >= b.Low && v+doubt <= b.High:
			return spec.InSpec, false, where
		case v-doubt > b.High:
			return spec.OutOfSpec, true, where
		case v+doubt < b.Low:
			return spec.OutOfSpec, false, where
		}
	}
	return spec.CannotTell, false, where
}

// OutputLegend is that of a plot of readings over speed: the shapes that it has.
func OutputLegend(p *Plot) []Sample {
	return p.legend(words.OutputBand, words.OutputInside, words.OutputOutside, words.OutputBetween)
}

// CurvePlot is a figure of the hidden machine over speed, with its fault and without.
func CurvePlot(title string, u quantity.Unit, curve []practice.Output, of func(machine.Supply) float64) (*Plot, Table) {
	const decimals = 1
	p := &Plot{Across: speeds(), Lines: []Curve{{Dashed: true}, {}}}
	t := Table{Head: []string{words.SpeedColumn, words.WithFault, words.WithoutFault}}
	var values []float64
	for _, o := range curve {
		sound, with := of(o.Sound), of(o.With)
		p.Lines[0].Points = append(p.Lines[0].Points, drawing.Point{X: o.RPM, Y: sound})
		p.Lines[1].Points = append(p.Lines[1].Points, drawing.Point{X: o.RPM, Y: with})
		values = append(values, sound, with)
		t.Rows = append(t.Rows, []string{words.Speed(o.RPM), words.FigureOf(u, with, decimals), words.FigureOf(u, sound, decimals)})
		if o.RPM == machine.QuickSpeed {
			p.Said = words.CurveSaid(title, o.RPM, words.FigureOf(u, with, decimals), words.FigureOf(u, sound, decimals))
		}
	}
	p.Up = Around(u.Name, u.Name == quantity.Amperes.Name, values...)
	p.Across.Low, p.Across.Marks = 500, p.Across.Marks[1:]
	return p, t
}

// CurveLegend is that of the hidden machine over speed.
func CurveLegend() []Sample {
	return []Sample{{SampleLine, words.WithFault}, {SampleDashed, words.WithoutFault}}
}
