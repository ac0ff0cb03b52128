package screen

import (
	"slices"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/quantity"
	"coilbook/engine/rig"
)

// cautionsOf are those that a real bench would call for: of the state that the
// machine is in and of the points that the probes are on.
func cautionsOf(p machine.Probing) []check.Caution {
	var out []check.Caution
	turns, runs := p.Engine != check.Stopped, p.Engine > check.Cranking
	add := func(when bool, list ...check.Caution) {
		for _, c := range list {
			if when && !slices.Contains(out, c) {
				out = append(out, c)
			}
		}
	}
	on := func(points ...check.Terminal) bool {
		return slices.Contains(points, p.Red) || slices.Contains(points, p.Black)
	}
	add(turns, check.RotatingParts)
	add(p.Engine == check.Cranking, check.InNeutral)
	add(runs, check.ExhaustIndoor)
	add(p.Hot, check.HotParts)
	add(turns && on(check.ExciterLead, check.BoxExciter), check.ShockExciter, check.MeterRating)
	add(turns && on(check.BoxOutput, check.CoilPrimary, check.SparkLead, check.CapEnd), check.ShockIgnition, check.MeterRating)
	return out
}

// fresh are the cautions of now that were not understood yet.
func (s *practiceBench) fresh() []check.Caution {
	return slices.DeleteFunc(cautionsOf(s.Room.placed.Probing), func(c check.Caution) bool { return s.Room.seen[c] })
}

// care says what is new among the cautions, in the place of the panel.
func (s *practiceBench) care() app.UI {
	var items []app.UI
	for _, c := range s.fresh() {
		items = append(items, app.Li().Text(words.Caution(c)))
	}
	return app.Aside().Class("caution care").ID("care").Aria("label", words.CautionTitle).Body(
		app.Strong().Text(words.CautionTitle), app.Ul().Body(items...),
		part.Button("banner-act", words.Understood, func(app.Context) { s.Room.understand() }).ID("understood"),
	)
}

// understand takes the cautions of now as read.
func (r *room) understand() {
	for _, c := range cautionsOf(r.placed.Probing) {
		r.seen[c] = true
	}
	r.touch()
}

// restless displays are shown in turn.
func restless(d rig.Display) bool { return d.State == quantity.Unsettled && len(d.Texts) > 1 }
