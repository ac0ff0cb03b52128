package session

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"github.com/google/uuid"

	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/spec"
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
	case s.Aim != check.EveryPart && !slices.Contains(check.Aims(), s.Aim):
		return &FieldError{"aim", fmt.Sprintf("is %.40q", s.Aim), "use " + aimsListed()}
	case !slices.Contains(spec.Warmths(), s.Winding):
		return &FieldError{"winding", fmt.Sprintf("is %q", s.Winding), "use engine-warm or just-stopped, or leave it out"}
	}
	for _, err := range []error{s.meterValid(), s.methodsValid(), s.Kit.valid(), s.leadsValid()} {
		if err != nil {
			return err
		}
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

func aimsListed() string {
	var names []string
	for _, a := range check.Aims() {
		names = append(names, string(a))
	}
	return strings.Join(names[:len(names)-1], ", ") + " or " + names[len(names)-1]
}

func (s Setup) meterValid() error {
	_, bundled := meter.ByID(s.Meter)
	switch {
	case !bundled && s.Meter != OwnMeter:
		return &FieldError{"meter", fmt.Sprintf("is %q, which is not described here", s.Meter), "use cheap, auto4000, auto6000 or own"}
	case bundled && s.Own != nil:
		return &FieldError{"ownMeter", "is given beside a bundled meter", "leave it out, or name own as the meter"}
	case bundled:
		return nil
	case s.Own == nil:
		return &FieldError{"ownMeter", "is missing", "describe the meter, or name a bundled one"}
	}
	return within("ownMeter", s.Own.valid())
}

func (o Own) valid() error {
	if _, err := o.Sheet.Meter(); err != nil {
		return within("sheet", asField(err))
	}
	if o.Learned != nil {
		return within("learned", asField(o.Learned.Valid()))
	}
	return nil
}

// asField brings the meter's own errors to the shape of a file's.
func asField(err error) error {
	var f *meter.FieldError
	if errors.As(err, &f) {
		return &FieldError{f.Field, f.Reason, f.WayOut}
	}
	return err
}

// A plan stays of a size that can be walked through.
const maxMethods = 8

func (s Setup) methodsValid() error {
	if len(s.Methods) > maxMethods {
		return &FieldError{"methods", "names too many", "leave out the rest"}
	}
	for i, m := range s.Methods {
		switch {
		case !slices.Contains([]check.Method{check.VoltAmp, check.HotWinding, check.PeakHold, check.ResistorCheck}, m):
			return &FieldError{fmt.Sprintf("methods[%d]", i), fmt.Sprintf("is %q", m), "use volt-amp, hot-winding, peak-hold or resistor-check"}
		case slices.Contains(s.Methods[:i], m):
			return &FieldError{fmt.Sprintf("methods[%d]", i), "stands twice", "name it once"}
		}
	}
	return nil
}

// Bounds on what a kit may say.
const (
	MinResistor, MaxResistor = 0.01, 10e6 // Ω
	MaxTolerance             = 20.0       // percent
	MinAdapter, MaxAdapter   = 0.001, 100 // µF
	MinBleeder, MaxBleeder   = 0.01, 1000 // MΩ
)

func (k *Kit) valid() error {
	switch {
	case k == nil:
		return nil
	case k.ResistorOhms != 0 && !(k.ResistorOhms >= MinResistor && k.ResistorOhms <= MaxResistor):
		return &FieldError{"kit.resistorOhms", fmt.Sprintf("is %g", k.ResistorOhms), "use 0.01 to 10000000, or leave it out"}
	case !(k.ResistorPercent >= 0 && k.ResistorPercent <= MaxTolerance):
		return &FieldError{"kit.resistorPercent", fmt.Sprintf("is %g", k.ResistorPercent), "use 0 to 20"}
	case k.AdapterMicrofarads != 0 && !(k.AdapterMicrofarads >= MinAdapter && k.AdapterMicrofarads <= MaxAdapter):
		return &FieldError{"kit.adapterMicrofarads", fmt.Sprintf("is %g", k.AdapterMicrofarads), "use 0.001 to 100, or leave it out"}
	case k.BleederMegohms != 0 && !(k.BleederMegohms >= MinBleeder && k.BleederMegohms <= MaxBleeder):
		return &FieldError{"kit.bleederMegohms", fmt.Sprintf("is %g", k.BleederMegohms), "use 0.01 to 1000, or leave it out"}
	}
	return nil
}

func (r Reading) valid() error {
	if r.Corrects != nil && *r.Corrects == uuid.Nil {
		return &FieldError{"corrects", "is an empty id", "name the corrected entry or leave it out"}
	}
	if !slices.Contains(spec.Warmths(), r.Winding) {
		return &FieldError{"winding", fmt.Sprintf("is %q", r.Winding), "use engine-warm or just-stopped, or leave it out"}
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
