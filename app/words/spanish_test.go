package words_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/app/drawing"
	"coilbook/app/tongue/tonguetest"
	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/practice"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
	"coilbook/engine/spec"
	"coilbook/specs"
)

// What is true of the words in English whoever reads them is true in Spanish.
func TestWordsHoldInSpanish(t *testing.T) {
	tonguetest.Others(t, "es", "TestEveryCheckIsDescribed", "TestEveryCheckCanBeAsked", "TestEveryConstantHasWords", "TestEveryReasonHasASentence",
		"TestEveryAimHasWords", "TestEverySuspectHasWords", "TestEveryFaultHasWords", "TestEveryTruthIsASentence", "TestEveryClassAndFunctionHasWords",
		"TestNoTwoChecksOfAPlanAreNamedAlike", "TestDialPositionsOfEveryMeter", "TestACodeProblemIsOneSentence", "TestNothingInThePicturesIsCut",
		"TestEveryCheckCanBeReadAloud", "TestStepsNameTheLeadsByTheirColours", "TestWhatIsBesideALeadIsNotTheLead")
}

// pointed is a number with a decimal point.
var pointed = regexp.MustCompile(`\d\.\d`)

// In Spanish no word of English is left, and no decimal point, whatever is said.
func TestSpanishIsWhole(t *testing.T) {
	if !tonguetest.Run(t, "es") {
		return
	}
	require.Equal(t, "es", words.Language())
	said := 0
	say := func(about any, sentences ...string) {
		for _, s := range sentences {
			said++
			assert.Empty(t, tonguetest.Leftover(s), "%v: %q", about, s)
			assert.NotRegexp(t, pointed, s, "%v", about)
			assert.NotContains(t, s, "%!", about)
			assert.NotRegexp(t, `(?i)(^| )(de|a) el `, s, "%v: not contracted", about)
		}
	}
	everyCheck(func(c check.Check) { sayCheck(say, c) })
	for _, f := range catalogue(t) {
		sayFault(say, f)
	}
	sayReports(t, say)
	sayTruths(say)
	for _, name := range unsaid["ids of screens, as keys"] {
		assert.NotEmpty(t, words.Title(name), name)
		say(name, words.Title(name))
	}
	for _, card := range words.About() {
		say(card.Title, append(card.Lines, card.Title)...)
	}
	for _, k := range words.Keys() {
		say("keys", k.Keys, k.Does)
	}
	say("home screen", words.InstallByShare()...)
	for _, lead := range check.PlugLeads(check.DefaultBuild()) {
		for _, c := range check.Colours() {
			w := check.Wire{Base: c, Stripe: check.Red}
			say(lead, words.AskOfLead(lead, words.AskStripe), words.InColour(words.Terminal(lead), w))
		}
	}
	sayPlots(say)
	for _, w := range words.WireWays() {
		say(w.ID, w.Name)
		for _, f := range words.WireFigures(w.ID) {
			say(f.ID, f.Name, f.Hint)
		}
	}
	drawn := fmt.Sprintf("%v %v", words.Drawn(), words.DrawnBoard())
	say("pictures", drawn, words.StatorPicture(check.DefaultBuild()))
	require.Greater(t, said, 5000)
}

func sayCheck(say func(any, ...string), c check.Check) {
	say(c.ID, words.CheckName(c), words.CheckQuestion(c), words.Why(c), words.Minutes(c), words.Where(c), words.Jacks(c), words.AskOf(c), words.Feeds(c),
		words.TerminalIn(c, c.Red), words.TerminalIn(c, c.Black), words.PointName(c.Red, true, false), words.HeldPoint(c.Black), words.Takes(c, 7.5))
	for _, m := range meter.Bundled() {
		r, _ := c.Dial(m)
		say(c.ID, words.Steps(c, m)...)
		say(c.ID, words.Dial(c, m, r))
		say(c.ID, words.Spoken(c, m, r)...)
	}
	for _, x := range c.Traps {
		say(c.ID, words.Trap(x))
	}
	for _, x := range c.Cautions {
		say(c.ID, words.Caution(x))
	}
	for _, a := range c.Needs {
		say(c.ID, words.First(a))
	}
	limit := spec.Between(c.Measures, c.Kind(), 0.125, 2.5)
	for _, reason := range []spec.Reason{spec.Within, spec.Below, spec.Above, spec.Leaks, spec.LineBroken, spec.OpenAsMust, spec.CoolerHot, spec.AtLeastRead,
		spec.NearLimit, spec.TooCoarse, spec.RangeTooLow, spec.PastRange, spec.WontSettle, spec.BadLeads, spec.NoLimit, spec.PeakHidden, spec.NegativeOhms} {
		v := spec.Verdict{Reason: reason, HasLimit: true, HasValue: true, Value: 1.25, Std: 0.05, Limit: limit, Probability: 0.7, Remedies: []spec.Remedy{spec.Repeat}}
		say(c.ID, words.Because(c, v), words.Brief(c, v), words.Doubt(v), words.Limit(v.Limit), words.Decides(v))
	}
	for _, r := range []diagnose.Reason{{Weight: 2, Low: 0.5, High: 1.5}, {Weight: -1.3, Low: 0.5, High: 1.5, Open: 0.3}, {Weight: 9, Open: 1}, {Weight: 1, Restless: 1}, {Weight: 1, Low: 1, High: 2, Restless: 0.4}} {
		say(c.ID, words.Reason(c, words.AsTyped("1.25"), fault.Fault{ID: fault.None}, r), words.RestsOn(c, diagnose.Replace, r), words.RestsOn(c, diagnose.Repair, r))
	}
	for _, m := range []diagnose.Meaning{{Yes: true, Sure: 0.5}, {State: quantity.OverRange}, {State: quantity.Unsettled}, {Low: 0.125, High: 0.25, Parts: fault.PartsOf(check.Pickup), Sure: 0.4, Chance: 0.3}} {
		say(c.ID, words.MeaningAnswer(c, m), words.MeaningTells(m), words.MeaningChance(m))
	}
}

func sayFault(say func(any, ...string), f fault.Fault) {
	s := diagnose.Suspect{Fault: f, Probability: 0.62}
	say(f.ID, words.Suspect(f), words.SuspectPart(f), words.Leading(s))
	if len(f.Parts().List()) == 0 {
		return // there is none
	}
	for _, set := range setups() {
		say(f.ID, append(words.Match(f.Kind, set), words.NeverPair(f.Kind, set)...)...)
		say(f.ID, append(words.OrderOfWork(f), words.MendingCautions(f)...)...)
		say(f.ID, words.WhyBoth(f))
		for _, a := range []diagnose.Action{diagnose.Replace, diagnose.Repair, diagnose.NoFault, diagnose.NotListed, diagnose.Open} {
			found := diagnose.Finding{Action: a, Fault: f.ID, Parts: f.Parts(), Faults: []diagnose.Suspect{s}, Probability: 0.7, Minutes: 7.5, Checks: 3}
			say(f.ID, words.FindingIs(found), words.FindingChance(found), words.FindingRemedy(found, set.Aim), words.Home(found, set), words.FindingSpent(found))
		}
	}
	for _, p := range f.Parts().List() {
		say(f.ID, words.LeaveAlone(p, 0.3, 0.002, []string{"1"}), words.LookAtToo(diagnose.AlsoPart{Part: p, Share: 0.2}), words.LookAtToo(diagnose.AlsoPart{Part: p, Share: 0.45}))
	}
	say(f.ID, words.WhyConfirm(f.Parts(), 0.97), words.WhyNext(diagnose.Choice{Gain: 0.1}, 0.5, nil, true),
		words.WhyNext(diagnose.Choice{Bits: 1}, 0.5, nil, true), words.OnlyThisMuch(0.7), words.LeadingUnlisted(0.7), words.MayBeUnlisted(0.1), words.StrangeReadings(0.03))
}

// sayReports tells everything about the sample sessions.
func sayReports(t *testing.T, say func(any, ...string)) {
	files, err := filepath.Glob("../../testdata/sessions/*.json")
	require.NoError(t, err)
	profiles, err := specs.Bundled()
	require.NoError(t, err)
	for _, file := range files {
		if strings.HasSuffix(file, ".report.json") {
			continue
		}
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		s, err := session.Decode(text)
		require.NoError(t, err)
		st := s.Fold()
		if !strings.HasPrefix(st.Setup.Name, "Example:") {
			st.Setup.Name = "" // is as its owner wrote it
		}
		b := assess.Open(st, profiles)
		table, err := words.ReportTable(b)
		require.NoError(t, err)
		say(file, strings.Split(string(table), "\n")...)
		r := b.Report()
		say(file, words.Headline(r, 0), words.Headline(assess.Report{}, 2), words.JudgedBy(b), words.SessionName(b.State))
		for _, l := range append(r.Lines, r.Derived...) {
			for _, d := range words.Details(b, l) {
				say(file, d.Label, strings.ReplaceAll(d.Text, "IEC 60085", ""))
			}
		}
		for _, p := range r.Parts {
			say(file, words.PartResult(p))
		}
	}
}

func sayPlots(say func(any, ...string)) {
	rows := []string{words.BarSaid(words.Part(check.Battery), words.Speed(1500))}
	say("plots", words.SharesSaid(rows), words.ShareOthers(3), words.OutputSaid(words.OutputTitle, rows), words.TrendSaid(words.OpenTitle, rows),
		words.CurveSaid(words.CurveTitle, 3000, words.FigureOf(quantity.Amperes, -1.25, 2), words.FromTo(quantity.Volts, 13.06, 14.61)),
		words.WithDoubt(quantity.Volts, 12.6, 0.12), words.EarlierOf(""), words.Speed(0))
	for _, o := range []spec.Outcome{spec.InSpec, spec.CannotTell, spec.OutOfSpec} {
		say(o, words.Against(o, true), words.Against(o, false))
	}
	for month := time.January; month <= time.December; month++ {
		day := time.Date(2026, month, 3, 9, 0, 0, 0, time.UTC)
		say(month, words.Day(day), words.AxisDay(day, "day"), words.AxisDay(day, "month"), words.AxisDay(day, "year"))
	}
}

func sayTruths(say func(any, ...string)) {
	for seed := range uint32(120) {
		b := practice.Open(practice.Level(seed%3), seed)
		say(b.Code(), words.FaultIs(b.Truth(), b.Build), words.Complaint(b))
	}
	for _, k := range machine.Kinds() {
		say(k, words.Fault(k), words.FaultRemedy(k), words.NamingSure(k))
	}
}

// A voice says the signs in the language of the page, and a gap or a warmth is written
// with its mark in whatever units were chosen.
func TestSignsAndUnitsInSpanish(t *testing.T) {
	if !tonguetest.Run(t, "es") {
		return
	}
	c := find(t, "charge-pair-1-2")
	r, _ := c.Dial(meter.Cheap())
	said := strings.Join(words.Spoken(c, meter.Cheap(), r), " ")
	for _, want := range []string{"ohmios 200", "común y voltios y ohmios", "Roja en el cable de carga 1, negra en el cable de carga 2."} {
		assert.Contains(t, said, want)
	}
	b := benchOf(t, session.DefaultSetup(), "pickup-gap 12 thou")
	assert.Equal(t, "0,30 mm", words.Reading(lineOf(t, b, "pickup-gap")))
	writeIn(t, quantity.Chosen{Thousandths: true, Fahrenheit: true})
	assert.Equal(t, "12 thou", words.Reading(lineOf(t, b, "pickup-gap")))
	assert.Contains(t, strings.Join(words.SpokenVerdict(c, lineOf(t, b, "pickup-gap").Verdict), " "), "milésimas de pulgada")
	assert.Equal(t, "72,5", words.Air(22.5))
	assert.Equal(t, "3\u00a0feb\u00a02026", words.Day(time.Date(2026, 2, 3, 12, 0, 0, 0, time.UTC)))
	assert.Equal(t, "amarillo con trazo rojo", words.WireColour(check.Wire{Base: check.Yellow, Stripe: check.Red}))
}

// The words in the pictures have room, in each language.
func TestNothingInThePicturesIsCut(t *testing.T) {
	everyCheck(func(c check.Check) {
		b := check.DefaultBuild()
		b.ChargeLeads = max(1, slices.Max(append(c.Leads, 1)))
		picture := drawing.Inline("", drawing.ForCheck(c, b, words.ShortTerminal, words.Drawn()))
		for _, cut := range regexp.MustCompile(`>[^<>]*…<`).FindAllString(picture, -1) {
			assert.Fail(t, "cut", "%s: %s", c.ID, cut)
		}
	})
}
