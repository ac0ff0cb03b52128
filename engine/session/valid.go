package session

import (
	"fmt"
	"strings"
	"unicode"

	"github.com/google/uuid"

	"coilbook/engine/check"
	"coilbook/engine/meter"
)

// Air temperatures that a set-up accepts, in °C.
const (
	MinAmbient = -40
	MaxAmbient = 60
)

// Valid says what is wrong with an entry, as a *FieldError, or nil.
func (e Entry) Valid() error {
	switch {
	case e.ID == uuid.Nil:
		return &FieldError{"id", "is missing", "give the entry a UUID"}
	case e.At.IsZero():
		return &FieldError{"at", "is missing", "give the entry a time"}
	case e.bodies() != 1:
		return &FieldError{"entry", fmt.Sprintf("has %d contents", e.bodies()),
			"give it exactly one of setup, reading, skip, note, mark"}
	case e.Setup != nil:
		return within("setup", e.Setup.valid())
	case e.Reading != nil:
		return within("reading", e.Reading.valid())
	case e.Skip != nil:
		return within("skip", idAndText(e.Skip.Check, e.Skip.Reason))
	case e.Note != nil:
		return within("note", textWithin("text", e.Note.Text))
	}
	return e.Mark.valid()
}

func (e Entry) bodies() int {
	n := 0
	for _, set := range []bool{e.Setup != nil, e.Reading != nil, e.Skip != nil, e.Note != nil, e.Mark != nil} {
		if set {
			n++
		}
	}
	return n
}

func (s Setup) valid() error {
	b := s.Build
	switch {
	case b.StatorPoles < check.MinPoles || b.StatorPoles > check.MaxPoles:
		return &FieldError{"build.statorPoles", fmt.Sprintf("is %d", b.StatorPoles), fmt.Sprintf("use %d to %d", check.MinPoles, check.MaxPoles)}
	case b.ChargeLeads < check.MinChargeLeads || b.ChargeLeads > check.MaxChargeLeads:
		return &FieldError{"build.chargeLeads", fmt.Sprintf("is %d", b.ChargeLeads), fmt.Sprintf("use %d to %d", check.MinChargeLeads, check.MaxChargeLeads)}
	case s.Ambient != nil && !(*s.Ambient >= MinAmbient && *s.Ambient <= MaxAmbient):
		return &FieldError{"ambientCelsius", fmt.Sprintf("is %g °C", *s.Ambient), fmt.Sprintf("use %d to %d °C, or leave it out", MinAmbient, MaxAmbient)}
	case s.Aim != check.Bench && s.Aim != check.NoCharge && s.Aim != check.NoSpark && s.Aim != check.EveryPart:
		return &FieldError{"aim", fmt.Sprintf("is %q", s.Aim), "use bench, no-charge or no-spark"}
	}
	if _, ok := meter.ByID(s.Meter); !ok {
		return &FieldError{"meter", fmt.Sprintf("is %q, which is not described here", s.Meter), "use cheap, auto4000 or auto6000"}
	}
	if len(s.Unsure) > 20 {
		return &FieldError{"unsure", "names too many fields", "leave out the rest"}
	}
	for _, field := range append([]string{s.Profile}, s.Unsure...) {
		if err := plainText("profile or unsure", field); err != nil {
			return err
		}
	}
	return plainText("name", s.Name)
}

func (r Reading) valid() error {
	if r.Corrects != nil && *r.Corrects == uuid.Nil {
		return &FieldError{"corrects", "is an empty id", "name the corrected entry or leave it out"}
	}
	if r.Text == "" {
		return &FieldError{"text", "is empty", "give what the meter showed"}
	}
	return idAndText(r.Check, r.Text+r.Unit+r.Range)
}

func idAndText(id check.ID, text string) error {
	if id == "" || len(id) > 64 {
		return &FieldError{"check", "is missing or too long", "name a check such as charge-pair-1-2"}
	}
	return plainText("text", text)
}

// plainText is for what stands on one line of a list, a table or a terminal.
func plainText(field, text string) error {
	if strings.ContainsFunc(text, unicode.IsControl) {
		return &FieldError{field, "holds a line break or a control character", "leave it out"}
	}
	return textWithin(field, text)
}

func textWithin(field, text string) error {
	if len(text) > maxText {
		return &FieldError{field, fmt.Sprintf("is longer than %d bytes", maxText), "shorten it"}
	}
	return nil
}

func (m Mark) valid() error {
	switch m {
	case Finished, Removed, Restored:
		return nil
	}
	return &FieldError{"mark", fmt.Sprintf("is %q", string(m)), "use finished, removed or restored"}
}
