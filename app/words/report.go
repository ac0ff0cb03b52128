package words

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"text/tabwriter"

	"coilbook/engine/assess"
	"coilbook/engine/spec"
)

// ReportVersion is the version of the JSON report.
const ReportVersion = 1

type reportJSON struct {
	Format   string       `json:"format"`
	Version  int          `json:"version"`
	Session  string       `json:"session"`
	Machine  string       `json:"machine,omitempty"`
	Meter    string       `json:"meter"`
	Profile  string       `json:"profile"`
	Air      *float64     `json:"airCelsius"`
	Checks   []lineJSON   `json:"checks"`
	Balance  *verdictJSON `json:"balance,omitempty"`
	Parts    []partJSON   `json:"parts"`
	Untested []string     `json:"untested"`
}

type lineJSON struct {
	Check   string       `json:"check"`
	Name    string       `json:"name"`
	Reading string       `json:"reading,omitempty"`
	Range   string       `json:"range,omitempty"`
	Skipped bool         `json:"skipped,omitempty"`
	Problem string       `json:"problem,omitempty"`
	Verdict *verdictJSON `json:"verdict,omitempty"`
	Earlier int          `json:"earlierReadings,omitempty"`
}

// verdictJSON gives value and doubt in SI units (Ω, V, m; a fraction for the
// balance), rounded to what the doubt supports.
type verdictJSON struct {
	Outcome     string   `json:"outcome"`
	Probability float64  `json:"probabilityInSpec"`
	Value       *float64 `json:"value,omitempty"`
	Doubt       *float64 `json:"standardUncertainty,omitempty"`
	Low         *float64 `json:"low,omitempty"`
	High        *float64 `json:"high,omitempty"`
	Limit       string   `json:"limit,omitempty"`
	Source      string   `json:"limitSource,omitempty"`
	Reason      string   `json:"reason"`
	Because     string   `json:"because"`
	Decides     []string `json:"wouldDecide,omitempty"`
}

type partJSON struct {
	Part    string `json:"part"`
	Outcome string `json:"outcome"`
	Tested  int    `json:"tested"`
	Of      int    `json:"of"`
}

// ReportJSON writes a session's verdicts for programs.
func ReportJSON(b assess.Bench) ([]byte, error) {
	r := b.Report()
	out := reportJSON{
		Format: "coilbook report", Version: ReportVersion, Session: b.State.ID.String(), Machine: b.State.Setup.Name,
		Meter: b.Meter.ID, Profile: b.Profile.ID, Air: b.State.Setup.Ambient, Untested: []string{},
	}
	for _, l := range r.Lines {
		out.Checks = append(out.Checks, lineOf(l))
	}
	if r.Balance != nil {
		out.Balance = verdictOf(r.Balance.Verdict, Balance(*r.Balance))
	}
	for _, p := range r.Parts {
		out.Parts = append(out.Parts, partJSON{string(p.Part), Outcome(p.Outcome), p.Tested, p.Of})
	}
	for _, id := range r.Untested {
		out.Untested = append(out.Untested, string(id))
	}
	j, err := json.MarshalIndent(out, "", "  ")
	return append(j, '\n'), err
}

func lineOf(l assess.Line) lineJSON {
	out := lineJSON{Check: string(l.Check.ID), Name: CheckName(l.Check), Skipped: l.Skipped, Earlier: l.Earlier}
	switch {
	case !l.Answered || l.Skipped:
		return out
	case l.Unread != nil:
		out.Problem = l.Unread.Error()
		return out
	}
	out.Reading, out.Range = Reading(l), l.Measured.Range.Label
	out.Verdict = verdictOf(l.Verdict, Because(l.Check, l.Verdict))
	return out
}

func verdictOf(v spec.Verdict, because string) *verdictJSON {
	out := verdictJSON{
		Outcome: Outcome(v.Outcome), Probability: rounded(v.Probability, 1e-3), Reason: string(v.Reason), Because: because,
	}
	if v.HasLimit {
		out.Limit, out.Source = Limit(v.Limit), string(v.Limit.Provenance.Kind)
		out.Low, out.High = finite(v.Limit.Low), finite(v.Limit.High)
	}
	if v.HasValue {
		digit := v.Std / 100
		out.Value, out.Doubt = finite(rounded(v.Value, digit)), finite(rounded(v.Std, digit))
	}
	for _, r := range v.Remedies {
		out.Decides = append(out.Decides, Remedy(r))
	}
	return &out
}

func finite(v float64) *float64 {
	if math.IsInf(v, 0) || math.IsNaN(v) {
		return nil
	}
	return &v
}

// rounded rounds to the power of ten at or above digit, so that last-bit
// differences between builds do not show.
func rounded(v, digit float64) float64 {
	if !(digit > 0) {
		return v
	}
	p := math.Pow(10, -math.Ceil(math.Log10(digit)))
	return math.Round(v*p) / p
}

// ReportTable writes a session's verdicts for people.
func ReportTable(b assess.Bench) ([]byte, error) {
	var buf bytes.Buffer
	r := b.Report()
	if b.State.Setup.Name != "" {
		fmt.Fprintf(&buf, "%s\n", b.State.Setup.Name)
	}
	fmt.Fprintf(&buf, "Meter: %s\nLimits: %s (%s)\n\n", Meter(b.Meter.ID), b.Profile.Name, "wide, common practice")
	w := tabwriter.NewWriter(&buf, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "CHECK\tREADING\tVERDICT\tSURE\tBECAUSE")
	for _, l := range r.Lines {
		fmt.Fprintln(w, tableRow(l))
	}
	if r.Balance != nil {
		v := r.Balance.Verdict
		fmt.Fprintf(w, "Pairs alike\t%s\t%s\t%s\t%s\n", Doubt(v), Outcome(v.Outcome), chance(v), Balance(*r.Balance))
	}
	if err := w.Flush(); err != nil {
		return nil, err
	}
	fmt.Fprintf(&buf, "\nNot tested here: %s\n%s\n", NotCovered, DeferToManual)
	return buf.Bytes(), nil
}

func tableRow(l assess.Line) string {
	name := CheckName(l.Check)
	switch {
	case l.Unread != nil:
		return fmt.Sprintf("%s\t%s\t–\t–\t%s", name, Reading(l), l.Unread)
	case !l.Answered || l.Skipped:
		return fmt.Sprintf("%s\t%s\t–\t–\t%s", name, Reading(l), "Untested.")
	}
	v := l.Verdict
	because := Because(l.Check, v)
	if v.Outcome == spec.CannotTell && len(v.Remedies) > 0 {
		because += " " + Decides(v)
	}
	return fmt.Sprintf("%s\t%s\t%s\t%s\t%s", name, Reading(l), Outcome(v.Outcome), chance(v), because)
}

// chance is left out where a probability would pretend to know something.
func chance(v spec.Verdict) string {
	if !v.HasValue && v.Outcome == spec.CannotTell {
		return "–"
	}
	return Chance(v)
}

// NotCovered lists what these checks say nothing about.
const NotCovered = "a few shorted turns, insulation at running voltage, battery, regulator-rectifier, wiring, ignition box, coil, plug, and faults that show only when hot or at speed."
