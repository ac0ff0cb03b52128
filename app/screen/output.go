package screen

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/machine"
	"coilbook/engine/practice"
	"coilbook/engine/quantity"
)

// soundBands keeps what sound machines of a build read, which takes a moment to work
// out.
type soundBands struct {
	build         check.Build
	battery, open []diagnose.Band
}

func (s *soundBands) of(b check.Build, rest func()) *soundBands {
	if s.battery == nil || s.build != b {
		battery := diagnose.SoundBattery(b)
		rest()
		*s = soundBands{build: b, battery: battery, open: diagnose.SoundOpen(b)}
	}
	return s
}

// plotted reports readings that go beside those of sound machines.
func plotted(b assess.Bench) bool { return len(part.BatteryOver(b))+len(part.OpenOver(b)) > 0 }

// output sets the session's readings over engine speed beside those of sound machines.
func (s *soundBands) output(b assess.Bench) app.UI {
	battery, open := part.BatteryOver(b), part.OpenOver(b)
	return part.When("bare", len(battery)+len(open) > 0, func() app.UI {
		bands := s.of(b.State.Setup.Build, func() {})
		chart := func(id, title string, readings []part.Over, band []diagnose.Band) app.UI {
			return part.When("bare", len(readings) > 0, func() app.UI {
				p, table := part.OutputPlot(title, readings, band)
				return part.Chart(id, title, p.Picture(), part.OutputLegend(p), table)
			})
		}
		return app.Section().Class("card plots").ID("output").Body(
			chart("output-battery", words.OutputTitle, battery, bands.battery),
			chart("output-open", words.OpenTitle, open, bands.open),
			part.Text("quiet", words.OutputHint),
		)
	})
}

// shares is all suspects in one picture, and what they leave to none of the list.
func shares(s diagnose.Suspects) app.UI {
	picture, table := part.Shares(s)
	return app.Details().Class("fold").ID("shares").Body(
		app.Summary().Text(words.SharesTitle),
		part.Chart("share-plot", words.SharesHint, picture, nil, table),
	)
}

// curves are the hidden machine over engine speed, with its fault and without.
func curves(list []practice.Output) app.UI {
	chart := func(id, title string, u quantity.Unit, of func(machine.Supply) float64) app.UI {
		p, table := part.CurvePlot(title, u, list, of)
		return part.Chart(id, title, p.Picture(), part.CurveLegend(), table)
	}
	return app.Div().Class("card plots").ID("curves").Body(
		chart("curve-amps", words.CurveAmps, quantity.Amperes, func(s machine.Supply) float64 { return s.BatteryAmps }),
		chart("curve-volts", words.CurveVolts, quantity.Volts, func(s machine.Supply) float64 { return s.BatteryVolts }),
		part.Text("quiet", words.CurveHint),
	)
}
