package screen

import (
	"errors"
	"fmt"
	"strconv"

	"github.com/google/uuid"
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/desk"
	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
	"coilbook/engine/winding"
)

// wire estimates what a coil is wound with, from its ohms and one thing more
// that the user knows of it.
type wire struct {
	app.Compo
	Desk    *desk.Desk
	Rev     int
	Session uuid.UUID

	coil    check.ID
	by      string // one of words.WireWays
	figures map[string]string
}

// Render draws the question and, as soon as it can, the answer.
func (s *wire) Render() app.UI {
	b, ok := s.Desk.Bench(s.Session)
	if !ok {
		return waiting()
	}
	if s.figures == nil {
		s.figures, s.by = map[string]string{}, words.WireWays()[0].ID
	}
	coils := coilsOf(b)
	body := []app.UI{heading(words.WireTitle), part.Text("quiet", words.WireHint)}
	if len(coils) == 0 {
		body = append(body, part.Text("", words.NoCoil))
	} else {
		body = append(body, s.pickCoil(coils), s.pickWay())
		for _, f := range words.WireFigures(s.by) {
			body = append(body, askText("wire-"+f.ID, f.Name, f.Hint, "decimal", s.figures[f.ID], func(v string) { s.figures[f.ID] = v }))
		}
		body = append(body, part.Text("card wire-answer", s.answer(s.chosen(coils))))
	}
	return app.Div().Class("page").Body(
		head(words.Title("wire"), savedSign(s.Desk), resultPath(s.Session)),
		app.Main().Class("main").Body(body...),
	)
}

// coilsOf are the lines that hold a resistance of one path of wire, the better
// one where two methods read the same.
func coilsOf(b assess.Bench) (out []assess.Line) {
	r := b.Report()
	seen := map[string]bool{}
	for _, l := range append(r.Derived, r.Lines...) {
		switch l.Check.Measures {
		case spec.ChargePair, spec.ChargeGrounded, spec.PickupResistance, spec.ExciterResist:
			path := fmt.Sprint(l.Check.Measures, l.Check.Leads)
			if l.Judged() && l.Verdict.HasValue && l.Verdict.Value > 0 && !seen[path] {
				seen[path] = true
				out = append(out, l)
			}
		}
	}
	return out
}

func (s *wire) chosen(coils []assess.Line) assess.Line {
	for _, l := range coils {
		if l.Check.ID == s.coil {
			return l
		}
	}
	return coils[0]
}

func (s *wire) pickCoil(coils []assess.Line) app.UI {
	here := s.chosen(coils)
	var list []option
	for _, l := range coils {
		list = append(list, option{words.CheckName(l.Check), l.Check.ID == here.Check.ID, func() { s.coil = l.Check.ID }})
	}
	return askOne("coil", words.AskCoil, list...)
}

func (s *wire) pickWay() app.UI {
	var list []option
	for _, w := range words.WireWays() {
		list = append(list, option{w.Name, w.ID == s.by, func() { s.by = w.ID }})
	}
	return askOne("way", words.AskWay, list...)
}

// How well people know what they state of a coil, as a fraction, one standard
// uncertainty. Assumptions, no source.
const (
	turnsStd    = 0.01
	turnStd     = 0.05
	weightStd   = 0.05
	diameterStd = 0.02
)

func (s *wire) answer(l assess.Line) string {
	figure := func(id string) float64 { v, _ := decimal(s.figures[id], 0); return v }
	for _, f := range words.WireFigures(s.by) {
		if v, ok := decimal(s.figures[f.ID], 0); !ok || (v <= 0 && f.ID != words.WireInHand) {
			return words.WireMissing(f.Name)
		}
	}
	inHand, err := strconv.Atoi(s.figures[words.WireInHand])
	if s.figures[words.WireInHand] == "" {
		inHand, err = 1, nil
	}
	if err != nil {
		return words.WireBadInHand
	}
	c := winding.Coil{Resistance: quantity.Ohm(l.Verdict.Value), ResistanceStd: quantity.Ohm(l.Verdict.Std), InHand: inHand}
	w, err := wireBy(c, s.by, figure)
	var bad *winding.InputError
	if errors.As(err, &bad) {
		return words.WireProblem(bad.Field, bad.Reason, bad.WayOut)
	}
	return words.Wire(w) + words.WireAs(l.Check)
}

func wireBy(c winding.Coil, way string, figure func(string) float64) (winding.Wire, error) {
	switch way {
	case words.WireByWeight:
		kg := winding.Kilogram(figure(words.WireWeight) / 1000)
		return c.FromWeight(kg, kg*weightStd)
	case words.WireByDiameter:
		d := quantity.Metre(figure(words.WireDiameter) / 1000)
		return c.FromDiameter(d, d*diameterStd)
	}
	turns, turn := figure(words.WireTurns), quantity.Metre(figure(words.WireTurn)/1000)
	return c.FromTurns(turns, turns*turnsStd, turn, turn*turnStd)
}
