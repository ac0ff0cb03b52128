package spec

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"

	"coilbook/engine/quantity"
)

// ProfileFormat is what a spec profile file calls itself.
const ProfileFormat = "coilbook spec profile"

// ProfileVersion is the version of profile files that this program reads.
const ProfileVersion = 1

type profileFile struct {
	Format  string      `json:"format"`
	Version int         `json:"version"`
	ID      string      `json:"id"`
	Name    string      `json:"name"`
	About   string      `json:"about"`
	Limits  []limitFile `json:"limits"`
}

type limitFile struct {
	Measurand  Measurand      `json:"measurand"`
	Low        *float64       `json:"low,omitempty"`
	High       *float64       `json:"high,omitempty"`
	Unit       string         `json:"unit"`
	Open       bool           `json:"open,omitempty"`
	AtCelsius  *float64       `json:"atCelsius,omitempty"`
	State      string         `json:"state"`
	Provenance provenanceFile `json:"provenance"`
}

type provenanceFile struct {
	Kind Source `json:"kind"`
	Note string `json:"note"`
	Date string `json:"date"`
}

// DecodeProfile reads a spec profile file. Errors name the limit and field.
func DecodeProfile(b []byte) (Profile, error) {
	var f profileFile
	d := json.NewDecoder(bytes.NewReader(b))
	d.DisallowUnknownFields()
	if err := d.Decode(&f); err != nil {
		return Profile{}, fmt.Errorf("spec profile: %w", err)
	}
	if d.More() {
		return Profile{}, fmt.Errorf("spec profile %s: goes on after its end", f.ID)
	}
	if f.Format != ProfileFormat || f.Version != ProfileVersion {
		return Profile{}, fmt.Errorf("spec profile: format %q version %d is not %q version %d", f.Format, f.Version, ProfileFormat, ProfileVersion)
	}
	p := Profile{ID: f.ID, Name: f.Name, About: f.About, Limits: map[Measurand]Limit{}}
	for i, l := range f.Limits {
		limit, err := l.limit()
		if err != nil {
			return Profile{}, fmt.Errorf("spec profile %s: limits[%d] (%s): %w", f.ID, i, l.Measurand, err)
		}
		if _, twice := p.Limits[l.Measurand]; twice {
			return Profile{}, fmt.Errorf("spec profile %s: limits[%d]: %s stands twice", f.ID, i, l.Measurand)
		}
		p.Limits[l.Measurand] = limit
	}
	return p, nil
}

// ratioUnit marks a limit on a fraction of the mean.
const ratioUnit = "%"

func (l limitFile) limit() (Limit, error) {
	kind, known := kindOf[l.Measurand]
	if !known {
		return Limit{}, fmt.Errorf("measurand is not known")
	}
	unit, ok := quantity.UnitNamed(kind, l.Unit)
	if l.Measurand == ChargeBalance || l.Measurand == FineBalance {
		unit, ok = quantity.Unit{Name: ratioUnit, Factor: 0.01}, l.Unit == ratioUnit
	}
	if !ok {
		return Limit{}, fmt.Errorf("unit %q does not suit a %s", l.Unit, kind)
	}
	if l.Provenance.Kind == "" || l.Provenance.Date == "" {
		return Limit{}, fmt.Errorf("provenance needs a kind and a date")
	}
	if !knownSource[l.Provenance.Kind] {
		return Limit{}, fmt.Errorf("provenance kind %q is not known", l.Provenance.Kind)
	}
	out := Limit{Measurand: l.Measurand, Kind: kind, Unit: unit, Open: l.Open, Ratio: l.Unit == ratioUnit,
		Low: side(l.Low, unit, -1), High: side(l.High, unit, 1),
		Condition:  Condition{State: l.State},
		Provenance: Provenance{l.Provenance.Kind, l.Provenance.Note, l.Provenance.Date}}
	if l.AtCelsius != nil {
		c := quantity.Celsius(*l.AtCelsius)
		out.Condition.AtCelsius = &c
	}
	if !(out.Low < out.High) {
		return Limit{}, fmt.Errorf("low must lie under high")
	}
	return out, nil
}

func side(v *float64, u quantity.Unit, sign int) float64 {
	if v == nil {
		return math.Inf(sign)
	}
	return u.SI(*v)
}

var knownSource = map[Source]bool{Manual: true, OwnUnits: true, CommonPractice: true, FromMemory: true}

var kindOf = map[Measurand]quantity.Kind{
	LeadZero: quantity.Resistance, CoreContinuity: quantity.Resistance, ChargePair: quantity.Resistance,
	ChargeGrounded: quantity.Resistance, ChargeToCore: quantity.Resistance, PhaseToPhase: quantity.Resistance,
	ChargeBalance: quantity.Resistance, PickupResistance: quantity.Resistance, PickupGap: quantity.Length,
	ExciterResist: quantity.Resistance, ExciterCranking: quantity.VoltageAC,
	FineBalance: quantity.Resistance, WindingHeat: quantity.Temperature,
	ExciterPeak: quantity.VoltageDC, PickupPeak: quantity.VoltageDC, BoxPeak: quantity.VoltageDC,
	DiodeToPlus: quantity.VoltageDC, DiodeFromGround: quantity.VoltageDC,
}
