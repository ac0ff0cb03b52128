package words

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"text/tabwriter"

	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/spec"
)

// ReportVersion is the version of the JSON report.
const ReportVersion = 5

type reportJSON struct {
	Format   string       `json:"format"`
	Version  int          `json:"version"`
	Session  string       `json:"session"`
	Machine  string       `json:"machine,omitempty"`
	Meter    string       `json:"meter"`
	Profile  string       `json:"profile"`
	Air      *float64     `json:"airCelsius"`
	Warmth   string       `json:"winding,omitempty"`
	Checks   []lineJSON   `json:"checks"`
	Worked   []lineJSON   `json:"workedOut,omitempty"`
	Beyond   []lineJSON   `json:"beyondPlan,omitempty"`
	Balance  *verdictJSON `json:"balance,omitempty"`
	Fine     *verdictJSON `json:"fineBalance,omitempty"`
	Leads    *leadsJSON   `json:"leadsTogether,omitempty"`
	Meaning  []string     `json:"meterTold,omitempty"`
	Parts    []partJSON   `json:"parts"`
	Untested []string     `json:"untested"`
	// Diagnosis is what the readings say of the fault, where a fault was looked for.
	Diagnosis any `json:"diagnosis,omitempty"`
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
	Repeats int          `json:"readings,omitempty"` // of one point, where there are several
	Retake  int          `json:"retake,omitempty"`   // the one of them that stands apart, from 1
	Steps   []stepJSON   `json:"steps,omitempty"`
}

// stepJSON is one step between display and verdict, in words.
type stepJSON struct {
	Step string `json:"step"`
	Text string `json:"text"`
}

// leadsJSON is what three leads tell together; resistances in Ω.
type leadsJSON struct {
	Sound bool       `json:"sound"`
	Star  *coilsJSON `json:"star,omitempty"`
	Delta *coilsJSON `json:"delta,omitempty"`
	Tells []string   `json:"tells"`
}

type coilsJSON struct {
	Ohms  []float64 `json:"ohms"`
	Doubt []float64 `json:"standardUncertainty"`
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
	// The shares of one winding's turns whose short these readings would show in
	// half of cases and in 95 %; above 1, none.
	ShortHalf *float64 `json:"shortSeenHalf,omitempty"`
	ShortMost *float64 `json:"shortSeenMost,omitempty"`
}

// outcomeCodes are for programs, the same in every language.
var outcomeCodes = map[spec.Outcome]string{spec.InSpec: "in spec", spec.OutOfSpec: "out of spec", spec.CannotTell: "cannot tell"}

type partJSON struct {
	Part    string `json:"part"`
	Outcome string `json:"outcome"`
	Tested  int    `json:"tested"`
	Of      int    `json:"of"`
}

// ReportJSON writes a session's verdicts for programs, with a diagnosis beside them
// unless that is nil.
func ReportJSON(b assess.Bench, diagnosis any) ([]byte, error) {
	r := b.Report()
	out := reportJSON{
		Format: "coilbook report", Version: ReportVersion, Session: b.State.ID.String(), Machine: b.State.Setup.Name,
		Meter: b.Meter.ID, Profile: b.Profile.ID, Air: b.State.Setup.Ambient, Untested: []string{},
		Diagnosis: diagnosis,
	}
	out.Warmth = string(b.State.Setup.Winding)
	for _, l := range r.Lines {
		out.Checks = append(out.Checks, lineOf(b, l))
	}
	for _, l := range r.Derived {
		out.Worked = append(out.Worked, lineOf(b, l))
	}
	for _, l := range b.Beyond() {
		out.Beyond = append(out.Beyond, beyondOf(b, l))
	}
	out.Balance, out.Fine = balanceOf(r.Balance), balanceOf(r.Fine)
	out.Leads = leadsTogether(r)
	if b.State.Setup.Aim == check.SelfCheck {
		out.Meaning = meterTold(b)
	}
	for _, p := range r.Parts {
		out.Parts = append(out.Parts, partJSON{string(p.Part), outcomeCodes[p.Outcome], p.Tested, p.Of})
	}
	for _, id := range r.Untested {
		out.Untested = append(out.Untested, string(id))
	}
	j, err := json.MarshalIndent(out, "", "  ")
	return append(j, '\n'), err
}

func lineOf(b assess.Bench, l assess.Line) lineJSON {
	out := lineJSON{Check: string(l.Check.ID), Name: CheckName(l.Check), Skipped: l.Skipped, Earlier: l.Earlier}
	switch {
	case !l.Answered || l.Skipped:
		return out
	case l.Unread != nil:
		out.Problem = NotAReading(l.Unread)
		return out
	}
	out.Reading, out.Range = Reading(l), l.Measured.Range.Label
	if l.Repeats.Count > 1 {
		out.Repeats, out.Retake = l.Repeats.Count, l.Repeats.Retake+1
	}
	if l.Judged() {
		out.Verdict = verdictOf(l.Verdict, Because(l.Check, l.Verdict))
	}
	for _, d := range Details(b, l) {
		out.Steps = append(out.Steps, stepJSON{d.Label, d.Text})
	}
	return out
}

// beyondOf is a line beyond the plan; a look holds yes or no.
func beyondOf(b assess.Bench, l assess.Line) lineJSON {
	if l.Check.Instrument != check.Eyes || l.Skipped {
		return lineOf(b, l)
	}
	return lineJSON{Check: string(l.Check.ID), Name: CheckName(l.Check), Reading: BeyondReading(l), Earlier: l.Earlier}
}

// BeyondReading is what a line beyond the plan reads, in words.
func BeyondReading(l assess.Line) string {
	if l.Check.Instrument == check.Eyes && l.Answer.Reading != nil {
		return Answer(strings.EqualFold(l.Answer.Reading.Text, "yes"))
	}
	return Reading(l)
}

func balanceOf(b *assess.Balance) *verdictJSON {
	if b == nil {
		return nil
	}
	out := verdictOf(b.Verdict, Balance(*b))
	if b.Most > 0 {
		out.ShortHalf, out.ShortMost = finite(rounded(b.Half, 1e-3)), finite(rounded(b.Most, 1e-3))
	}
	return out
}

func leadsTogether(r assess.Report) *leadsJSON {
	if r.Winding == nil {
		return nil
	}
	out := &leadsJSON{Sound: r.Winding.Sound, Star: coilsOf(r.Winding.Star), Delta: coilsOf(r.Winding.Delta), Tells: Winding(*r.Winding)}
	if r.Touch != nil {
		out.Tells = append(out.Tells, Touch(*r.Touch))
	}
	return out
}

func coilsOf(c assess.Coils) *coilsJSON {
	if c.None != nil {
		return nil
	}
	out := &coilsJSON{}
	for i, r := range c.Phases {
		digit := c.Std[i] / 100
		out.Ohms = append(out.Ohms, rounded(float64(r), digit))
		out.Doubt = append(out.Doubt, rounded(c.Std[i], digit))
	}
	return out
}

func verdictOf(v spec.Verdict, because string) *verdictJSON {
	out := verdictJSON{
		Outcome: outcomeCodes[v.Outcome], Probability: rounded(v.Probability, 1e-3), Reason: string(v.Reason), Because: because,
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
		fmt.Fprintf(&buf, "%s\n", MachineName(b.State))
	}
	fmt.Fprintf(&buf, "%s\n%s\n\n", say("Meter: %s", MeterOf(b)), say("Limits: %s (wide, common practice)", ProfileName(b.Profile)))
	w := tabwriter.NewWriter(&buf, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, strings.Join([]string{say("CHECK"), say("READING"), say("VERDICT"), say("SURE"), say("BECAUSE")}, "\t"))
	for _, l := range append(r.Lines, r.Derived...) {
		fmt.Fprintln(w, tableRow(l))
	}
	for _, bal := range []*assess.Balance{r.Balance, r.Fine} {
		if bal != nil {
			v := bal.Verdict
			fmt.Fprintf(w, "%s\t%s\t%s\t%s\t%s\n", BalanceName(*bal), Doubt(v), Outcome(v.Outcome), chance(v), Balance(*bal))
		}
	}
	if err := w.Flush(); err != nil {
		return nil, err
	}
	if err := tableBeyond(&buf, b.Beyond()); err != nil {
		return nil, err
	}
	if together := leadsTogether(r); together != nil {
		fmt.Fprintf(&buf, "\n%s\n", strings.Join(together.Tells, "\n"))
	}
	if b.State.Setup.Aim == check.SelfCheck {
		fmt.Fprintf(&buf, "\n%s\n", strings.Join(meterTold(b), "\n"))
		return buf.Bytes(), nil
	}
	fmt.Fprintf(&buf, "\n%s\n%s\n", say("Not tested here: %s", NotCovered(r)), DeferToManual)
	return buf.Bytes(), nil
}

// tableBeyond adds what was read for the suspects.
func tableBeyond(buf *bytes.Buffer, lines []assess.Line) error {
	if len(lines) == 0 {
		return nil
	}
	fmt.Fprintf(buf, "\n%s\n", BeyondTitle)
	w := tabwriter.NewWriter(buf, 0, 0, 2, ' ', 0)
	for _, l := range lines {
		row := tableRow(l)
		if l.Check.Instrument == check.Eyes && !l.Skipped {
			row = CheckName(l.Check) + "\t" + BeyondReading(l) + "\t–\t–\t" + say("Seen.")
		}
		fmt.Fprintln(w, row)
	}
	return w.Flush()
}

// meterTold is what a self-check told, a line for each thing.
func meterTold(b assess.Bench) (lines []string) {
	for _, t := range WhatMeterTold(b) {
		lines = append(lines, t.Title+": "+strings.Join(t.Sentences, " "))
	}
	return lines
}

func tableRow(l assess.Line) string {
	name := CheckName(l.Check)
	switch {
	case l.Unread != nil:
		return fmt.Sprintf("%s\t%s\t–\t–\t%s", name, Reading(l), NotAReading(l.Unread))
	case !l.Answered || l.Skipped:
		return fmt.Sprintf("%s\t%s\t–\t–\t%s", name, Reading(l), say("Untested."))
	}
	if !l.Judged() {
		return fmt.Sprintf("%s\t%s\t–\t–\t%s", name, Reading(l), Feeds(l.Check))
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

// NotCovered lists what a session's checks say nothing about.
func NotCovered(r assess.Report) string {
	var rest []string
	if r.Fine == nil || r.Fine.Verdict.Outcome == spec.CannotTell {
		rest = append(rest, say("a few shorted turns"))
	}
	rest = append(rest, say("insulation at running voltage"), say("battery"), say("regulator-rectifier"), say("wiring"))
	if !decided(r.Lines, spec.BoxPeak) {
		rest = append(rest, say("ignition box"))
	}
	rest = append(rest, say("coil"), say("plug"))
	if hotDecided(r) {
		return say("%s, and faults that show only at speed.", strings.Join(rest, ", "))
	}
	return say("%s, and faults that show only when hot or at speed.", strings.Join(rest, ", "))
}

// hotDecided reports that every winding read hot was decided, and one was.
func hotDecided(r assess.Report) bool {
	planned, told := 0, 0
	for _, l := range r.Lines {
		if l.Check.Measures == spec.HotResistance {
			planned++
		}
	}
	for _, l := range r.Derived {
		if l.Check.Measures == spec.WindingHeat && l.Verdict.Outcome != spec.CannotTell {
			told++
		}
	}
	return planned > 0 && told == planned
}

// decided reports that a line of the measurand has a verdict that tells.
func decided(lines []assess.Line, m spec.Measurand) bool {
	return slices.ContainsFunc(lines, func(l assess.Line) bool {
		return l.Check.Measures == m && l.Judged() && l.Verdict.Outcome != spec.CannotTell
	})
}
