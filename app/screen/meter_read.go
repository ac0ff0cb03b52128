package screen

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
)

// figure reads a number of a data sheet; NaN, which no field takes, for
// anything else.
func figure(text string) float64 {
	v, ok := decimal(text, math.NaN())
	if !ok {
		return math.NaN()
	}
	return v
}

// read makes a data sheet of what is typed; problem is the sentence for the
// first thing wrong and at the function that it belongs to.
func (m *meterForm) read() (s meter.Sheet, problem string, at meter.Function) {
	s = meter.Sheet{
		Name: strings.TrimSpace(m.name), Class: m.class, Counts: m.counts, Auto: m.auto,
		ACLow: quantity.Hertz(figure(m.acLow)), ACHigh: quantity.Hertz(figure(m.acHigh)),
		InputDC: quantity.Ohm(1e6 * figure(m.inputDC)), InputAC: quantity.Ohm(1e6 * figure(m.inputAC)),
	}
	var on []*sheetLine
	for _, l := range m.lines {
		if l.on {
			on = append(on, l)
			s.Lines = append(s.Lines, meter.Line{Function: l.function.String(), Nominal: l.nominal,
				Accuracy: meter.Accuracy{Percent: figure(l.percent), Digits: figure(l.digits)}})
		}
	}
	problem, at = explain(s.Valid(), on)
	return s, problem, at
}

// explain puts a data sheet's error into the words of the form.
func explain(err error, on []*sheetLine) (problem string, at meter.Function) {
	var field *meter.FieldError
	switch {
	case err == nil:
		return "", 0
	case !errors.As(err, &field):
		return words.NotASheet, 0
	}
	for i, l := range on {
		if strings.HasPrefix(field.Field, fmt.Sprintf("lines[%d]", i)) {
			return words.SheetProblem(field, l.name()), l.function
		}
	}
	switch field.Field {
	case "acLowHz", "acHighHz", "inputACOhms":
		at = meter.VoltsAC
	case "inputDCOhms":
		at = meter.VoltsDC
	}
	return words.SheetProblem(field, ""), at
}

// readKit puts the known resistor into a set-up, or takes it out, and with it
// the check that needs it.
func (m *meterForm) readKit(s *session.Setup) (problem string) {
	var kit session.Kit
	if s.Kit != nil {
		kit = *s.Kit
	}
	if kit.ResistorOhms, kit.ResistorPercent, problem = m.readResistor(); problem != "" {
		return problem
	}
	s.Methods = slices.DeleteFunc(slices.Clone(s.Methods), func(method check.Method) bool { return method == check.ResistorCheck })
	if kit.ResistorOhms != 0 {
		s.Methods = append(s.Methods, check.ResistorCheck)
	}
	if s.Kit = &kit; kit == (session.Kit{}) {
		s.Kit = nil
	}
	return ""
}

func (m *meterForm) readResistor() (ohms, percent float64, problem string) {
	if strings.TrimSpace(m.resistor) == "" {
		return 0, 0, ""
	}
	r, err := quantity.Parse(quantity.Resistance, m.resistor, quantity.Ohms)
	if err != nil || r.State != quantity.Number || r.Value < session.MinResistor || r.Value > session.MaxResistor {
		return 0, 0, words.BadMeterResistor
	}
	percent = figure(m.tolerance)
	if !(percent >= 0 && percent <= session.MaxTolerance) {
		return 0, 0, words.BadMeterTolerance
	}
	return r.Value, percent, ""
}
