package diagnose_test

import (
	"fmt"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

var poorCharging = sync.OnceValue(func() *diagnose.Model {
	faults, err := fault.Bundled()
	if err != nil {
		panic(err)
	}
	return diagnose.New(diagnose.Question{Symptom: fault.WontCharge, Build: check.DefaultBuild(), Meter: meter.Cheap()}, faults).Ready()
})

func begun(cannot ...check.Access) *diagnose.Conversation {
	return diagnose.Begin(poorCharging(), func(a check.Access) bool {
		for _, c := range cannot {
			if a == c {
				return true
			}
		}
		return false
	})
}

func last(c *diagnose.Conversation) diagnose.Evidence {
	all := c.Evidence()
	return all[len(all)-1]
}

// A reading becomes what it is worth with this meter: its unit, the leads taken
// off, the data sheet's doubt.
func TestAReadingBecomesEvidence(t *testing.T) {
	for _, c := range []struct {
		check      check.ID
		text, unit string
		state      quantity.State
		value      float64
	}{
		{"battery-rest", "12.61", "V", quantity.Number, 12.61},
		{"battery-rest", "12,61", "", quantity.Number, 12.61},
		{"battery-rest", "12610", "mV", quantity.Number, 12.61},
		{"drop-plus", "-0.12 V", "mV", quantity.Number, -0.12},
		{"exciter", "0.412", "kΩ", quantity.Number, 411.7},
		{"exciter", "412", "", quantity.Number, 411.7},
		{"charge-core-1", "0.9", "", quantity.Number, 0.9e6},
		{"charge-core-1", "OL", "", quantity.OverRange, 0},
		{"charge-core-1", "OL MΩ", "kΩ", quantity.OverRange, 0},
		{"charge-pair-1-2", "0.2", "", quantity.Number, 0},
		{"battery-5000", "won't settle", "V", quantity.Unsettled, 0},
		{"pickup-gap", "0.45", "", quantity.Number, 0.45e-3},
		{"pickup-gap", "18", "thou", quantity.Number, 18 * 25.4e-6},
		{"key-off-current", "0.02", "A", quantity.Number, 0.02},
	} {
		talk := begun()
		require.NoError(t, talk.Leads(0.3))
		require.NoError(t, talk.Answer(c.check, c.text, c.unit), "%s %s", c.check, c.text)
		e := last(talk)
		assert.Equal(t, c.check, e.Check)
		assert.Equal(t, c.state, e.State, c.text)
		assert.InDelta(t, c.value, e.Value, 1e-6*max(c.value, 1), "%s %s %s", c.check, c.text, c.unit)
		assert.Equal(t, c.state == quantity.Number, e.Doubt > 0, "%s %s", c.check, c.text)
	}
}

// A number in SI is worth what the same reading is when it is typed.
func TestANumberIsATypedReading(t *testing.T) {
	for _, c := range []struct {
		check check.ID
		text  string
		si    float64
	}{
		{"battery-rest", "12.61", 12.61}, {"exciter", "412", 412}, {"charge-core-1", "0.900", 0.9e6}, {"charge-pair-1-2", "1.20", 1.2},
		{"charge-ac-1-2", "41.3", 41.3}, {"key-off-current", "0.02", 0.02}, {"drop-plus", "0.120", 0.12}, {"exciter", "3.12 kΩ", 3120},
	} {
		typed, numbered := begun(), begun()
		require.NoError(t, typed.Answer(c.check, c.text, ""))
		require.NoError(t, numbered.Number(c.check, c.si))
		a, b := last(typed), last(numbered)
		assert.InDelta(t, a.Value, b.Value, 1e-9*a.Value, c.check)
		assert.InDelta(t, a.Doubt, b.Doubt, 1e-9*a.Doubt+1e-12, c.check)
	}
}

// Leads that are measured late count for what was read before; unmeasured ones
// leave more doubt.
func TestLeadsCountForAll(t *testing.T) {
	talk := begun()
	require.NoError(t, talk.Answer("charge-pair-1-2", "1.5", ""))
	before := last(talk)
	require.NoError(t, talk.Answer("lead-zero", "0.6", ""))
	after := last(talk)
	assert.InDelta(t, 0.9, after.Value, 1e-9)
	assert.Less(t, after.Doubt, before.Doubt)
	assert.Len(t, talk.Evidence(), 1, "the leads tell nothing of the machine")
	assert.Equal(t, []check.ID{"charge-pair-1-2"}, talk.Done())
	for _, bad := range []float64{-2, 11} {
		assert.ErrorContains(t, talk.Leads(bad), "leadsOhms: ")
	}
	assert.InDelta(t, 0.9, last(talk).Value, 1e-9)
}

func TestASecondAnswerTakesThePlaceOfTheFirst(t *testing.T) {
	talk, other := begun(), begun()
	require.NoError(t, talk.Answer("battery-rest", "1.26", ""))
	require.NoError(t, talk.Answer("battery-lamp", "12.2", ""))
	require.NoError(t, talk.Answer("battery-rest", "12.6", ""))
	require.NoError(t, other.Answer("battery-rest", "12.6", ""))
	require.NoError(t, other.Answer("battery-lamp", "12.2", ""))
	assert.Equal(t, other.Evidence(), talk.Evidence())
	assert.Equal(t, other.Finding().Faults, talk.Finding().Faults)
	assert.Equal(t, 2, talk.Finding().Checks)
}

// What is refused by its error leaves everything as it was.
func TestAnErrorLosesNothing(t *testing.T) {
	talk := begun()
	require.NoError(t, talk.Answer("battery-rest", "12.6", ""))
	ask, _ := talk.Ask()
	before := talk.Finding()
	for _, err := range []error{
		talk.Answer("battery-rest", "lots", ""), talk.Answer("battery-rest", "12", "Ω"), talk.Answer("fuse", "5", ""), talk.Answer("flux", "5", ""),
		talk.Answer("lead-zero", "50", ""), talk.Number("exciter-cranking", -1), talk.Number("battery-rest", 1e13), talk.See("battery-rest", true),
		talk.See("flux", true), talk.Refuse("flux"), talk.Refuse(""), talk.Number("fuse", 1),
	} {
		require.Error(t, err)
		assert.Contains(t, err.Error(), ": ")
		assert.NotContains(t, err.Error(), "\n")
	}
	again, _ := talk.Ask()
	assert.Equal(t, ask, again)
	assert.Equal(t, before, talk.Finding())
}

// Access is paid for once, by the first that needs it; refusals cost nothing.
func TestMinutesCountWhatIsGotAtOnce(t *testing.T) {
	talk := begun()
	require.NoError(t, talk.Answer("battery-rest", "12.6", "")) // 0.5, side panel 3
	assert.InDelta(t, 3.5, talk.Minutes(), 1e-9)
	require.NoError(t, talk.Answer("battery-lamp", "12.4", ""))
	assert.InDelta(t, 4, talk.Minutes(), 1e-9)
	require.NoError(t, talk.Refuse("battery-5000"))
	require.NoError(t, talk.Answer("lead-zero", "0.2", ""))
	assert.InDelta(t, 4.5, talk.Minutes(), 1e-9)
	ask, ok := talk.Ask()
	require.True(t, ok)
	before := talk.Minutes()
	if ask.Check.Instrument == check.Eyes {
		require.NoError(t, talk.See(ask.Check.ID, false))
	} else {
		require.NoError(t, talk.Answer(ask.Check.ID, "0.5", ""))
	}
	assert.InDelta(t, before+ask.Minutes, talk.Minutes(), 1e-9, "as was told with the question")
}

// What was refused, cannot be got at, or cannot be read with the meter is not
// asked for; a refusal is taken back by an answer.
func TestWhatIsOutOfReach(t *testing.T) {
	talk := begun(check.Helper, check.PlugParted)
	for range 60 {
		next, ok := talk.Ask()
		if !ok {
			break
		}
		assert.NotContains(t, next.Check.Needs, check.Helper)
		assert.NotContains(t, next.Check.Needs, check.PlugParted)
		require.NoError(t, talk.Refuse(next.Check.ID))
	}
	_, ok := talk.Ask()
	assert.False(t, ok)
	assert.Zero(t, talk.Finding().Checks)
	require.NoError(t, talk.Answer("battery-rest", "12.6", ""))
	assert.Equal(t, []check.ID{"battery-rest"}, talk.Done())

	onlyOhms := meter.Cheap()
	onlyOhms.Ranges = map[meter.Function][]meter.Range{meter.Ohms: onlyOhms.Ranges[meter.Ohms]}
	faults, err := fault.Bundled()
	require.NoError(t, err)
	talk = diagnose.Begin(diagnose.New(diagnose.Question{Symptom: fault.Overcharges, Build: check.DefaultBuild(), Meter: onlyOhms}, faults).Ready(), nil)
	for next, ok := talk.Ask(); ok; next, ok = talk.Ask() {
		assert.True(t, next.Check.Instrument != check.Multimeter || next.Check.Function == meter.Ohms, next.Check.ID)
		require.NoError(t, talk.Refuse(next.Check.ID))
	}
	assert.ErrorContains(t, talk.Answer("battery-rest", "12.6", ""), "no range")
}

// replied does what is asked on a machine, by the formulas, until it is enough.
func replied(t *testing.T, m machine.Machine) *diagnose.Conversation {
	t.Helper()
	talk, _ := heldWith(t, begun(), m)
	return talk
}

// heldWith does so in a conversation, and lists what was asked.
func heldWith(t *testing.T, talk *diagnose.Conversation, m machine.Machine) (_ *diagnose.Conversation, asked []diagnose.Choice) {
	t.Helper()
	for next, ok := talk.Ask(); ok; next, ok = talk.Ask() {
		asked = append(asked, next)
		if next.Again {
			talk.Beside(next.Check.ID)
		}
		p := m.Predict(next.Check, meter.Cheap(), machine.Kit{})
		var err error
		switch {
		case !p.Known && !p.Rough:
			err = talk.Refuse(next.Check.ID)
		case next.Check.Instrument == check.Eyes:
			err = talk.See(next.Check.ID, p.Value > 0.5)
		case p.Open:
			err = talk.Answer(next.Check.ID, "OL", "")
		default:
			err = talk.Number(next.Check.ID, p.Value)
		}
		require.NoError(t, err, next.Check.ID)
	}
	return talk, asked
}

// Faults that stand out are named, with what is to be done; it ends in time. The lamps
// take so much that an open phase is missed: otherwise nobody would complain.
func TestConversationsEndWithThePart(t *testing.T) {
	for kind, want := range map[machine.Kind]diagnose.Action{
		machine.MainFuse: diagnose.Repair, machine.PhaseOpen: diagnose.Replace, machine.NoCharging: diagnose.Replace, machine.CellShorted: diagnose.Replace,
	} {
		m := machine.Typical(machine.Usual())
		m.Harness.Lamp *= 0.6
		m = m.With(machine.Fault{Kind: kind, At: 1})
		talk := replied(t, m)
		f := talk.Finding()
		assert.Equal(t, fault.PartsOf(kind.Part()), f.Parts, kind)
		assert.Equal(t, fault.ID(kind), f.Fault, kind)
		assert.Equal(t, want, f.Action, kind)
		assert.GreaterOrEqual(t, f.Checks, 2, "one answer is not enough")
		assert.LessOrEqual(t, f.Checks, 25)
		assert.NotContains(t, f.Unsure, f.Fault)
	}
}

// among is a conversation over a catalogue of a few faults with their weights.
func among(t *testing.T, weights map[machine.Kind]float64) *diagnose.Conversation {
	t.Helper()
	faults := []fault.Fault{}
	for _, k := range append([]machine.Kind{""}, machine.Kinds()...) {
		f := fault.Fault{ID: fault.ID(k), Kind: k, Weights: map[fault.Symptom]float64{fault.WontCharge: weights[k]}}
		if k == "" {
			f.ID = fault.None
		}
		if weights[k] > 0 {
			faults = append(faults, f)
		}
	}
	q := diagnose.Question{Symptom: fault.WontCharge, Build: check.DefaultBuild(), Meter: meter.Cheap()}
	from := fault.Catalogue{Faults: faults, Unlisted: map[fault.Symptom]fault.Unlisted{fault.WontCharge: {Share: 0.04}}, Slips: fault.Slips{Share: 0.015}}
	return diagnose.Begin(diagnose.New(q, from).Ready(), nil)
}

// One answer is not enough, however plain it is.
func TestOneAnswerIsNotEnough(t *testing.T) {
	talk := among(t, map[machine.Kind]float64{"": 1, machine.MainFuse: 60, machine.NoCharging: 60})
	require.NoError(t, talk.See("fuse", true))
	require.GreaterOrEqual(t, talk.Finding().Probability, 0.95)
	_, ok := talk.Ask()
	assert.True(t, ok)
	require.NoError(t, talk.See("plug-burnt", false))
	_, ok = talk.Ask()
	assert.False(t, ok)
}

// The fault that is named is one of the part that is named, even where a fault of
// another part is likelier by itself.
func TestTheFaultIsThePartsOwn(t *testing.T) {
	f := among(t, map[machine.Kind]float64{"": 5, machine.MainFuse: 4, machine.FeedWire: 4}).Finding()
	require.Equal(t, fault.None, f.Faults[0].Fault.ID)
	assert.Equal(t, fault.PartsOf(check.Wiring), f.Parts)
	assert.Equal(t, fault.ID(machine.MainFuse), f.Fault)
	assert.Equal(t, []fault.ID{fault.None, fault.ID(machine.FeedWire)}, f.Unsure)
	assert.Equal(t, diagnose.Open, f.Action, "before any answer")
}

// A machine that shows nothing wrong is told so, and readings that no fault makes
// are said to be on no list.
func TestFindingsWithoutAFault(t *testing.T) {
	f := replied(t, machine.Typical(machine.Usual())).Finding()
	assert.Equal(t, diagnose.NoFault, f.Action)
	assert.Equal(t, fault.None, f.Fault)
	assert.True(t, f.Parts.None())

	talk := begun()
	odd := []struct {
		id check.ID
		si float64
	}{{"battery-rest", 30}, {"battery-lamp", 2}, {"battery-5000", 45}, {"charge-pair-1-2", 4e4}, {"battery-idle", -9}}
	for i, o := range odd {
		require.NoError(t, talk.Number(o.id, o.si))
		listed := talk.Finding().Action != diagnose.NotListed
		if i < 3 {
			assert.True(t, listed, "too few to say so")
		}
	}
	f = talk.Finding()
	assert.Greater(t, f.Strange, 0.995)
	assert.Equal(t, diagnose.NotListed, f.Action)
}

// A digit that slipped among readings of a sound battery is pointed at.
func TestASlipIsPointedAt(t *testing.T) {
	talk := begun()
	for _, a := range []struct{ id, text string }{
		{"battery-rest", "12.7"}, {"battery-lamp", "12.5"}, {"battery-5000", "14.3"}, {"battery-3000", "14.2"}, {"battery-idle", "1.39"},
	} {
		require.NoError(t, talk.Answer(check.ID(a.id), a.text, ""))
	}
	f := talk.Finding()
	assert.Equal(t, check.ID("battery-idle"), f.Slip)
	assert.GreaterOrEqual(t, f.SlipChance, 0.5)
	require.NoError(t, talk.Answer("battery-idle", "13.9", ""))
	assert.Empty(t, talk.Finding().Slip)
}

// The same answers lead to the same questions and the same finding.
func TestConversationsRepeat(t *testing.T) {
	m := machine.Typical(machine.Usual()).With(machine.Fault{Kind: machine.FeedWire, Size: 2})
	tell := func() string {
		talk := replied(t, m)
		f := talk.Finding()
		return fmt.Sprint(talk.Done(), f.Parts, f.Fault, f.Action, f.Unsure, f.Slip)
	}
	first := tell()
	assert.True(t, strings.Contains(first, "battery"), first)
	for range 3 {
		assert.Equal(t, first, tell())
	}
}

// What the leads themselves have is asked before the first reading of few ohms.
func TestTheLeadsComeFirst(t *testing.T) {
	talk := among(t, map[machine.Kind]float64{machine.PhaseOpen: 60, machine.NoCharging: 5})
	var asked []check.ID
	for range 20 {
		next, ok := talk.Ask()
		if !ok {
			break
		}
		asked = append(asked, next.Check.ID)
		if next.Check.Instrument == check.Eyes || next.Check.Function != meter.Ohms {
			require.NoError(t, talk.Refuse(next.Check.ID))
			continue
		}
		require.NoError(t, talk.Number(next.Check.ID, 0.5))
	}
	leads := slices.Index(asked, "lead-zero")
	pair := slices.IndexFunc(asked, func(id check.ID) bool { return strings.HasPrefix(string(id), "charge-pair") })
	require.GreaterOrEqual(t, pair, 1, "%v", asked)
	assert.Equal(t, pair-1, leads, "%v", asked)
}

// A reading that only a slip explains is asked for once more before the finding; the
// second one counts beside the first, and is not asked a third time.
func TestTheOddReadingIsTakenAgain(t *testing.T) {
	talk := begun()
	for _, a := range []struct{ id, text string }{
		{"battery-rest", "12.7"}, {"battery-lamp", "12.5"}, {"battery-5000", "14.3"}, {"battery-3000", "14.2"}, {"battery-idle", "1.39"},
	} {
		require.NoError(t, talk.Answer(check.ID(a.id), a.text, ""))
	}
	before, again := talk.Minutes(), false
	for range 30 {
		next, ok := talk.Ask()
		if !ok {
			break
		}
		if next.Check.ID == "battery-idle" {
			require.True(t, next.Again)
			require.False(t, again, "a third time")
			again = true
			talk.Beside(next.Check.ID)
			require.NoError(t, talk.Answer(next.Check.ID, "13.9", ""))
			continue
		}
		if next.Check.Instrument == check.Eyes {
			require.NoError(t, talk.Refuse(next.Check.ID))
			continue
		}
		require.NoError(t, talk.Refuse(next.Check.ID))
	}
	require.True(t, again)
	assert.Greater(t, talk.Minutes(), before)
	assert.Len(t, talk.Evidence(), 6)
	assert.Len(t, talk.Done(), 5)
	require.NoError(t, talk.Answer("battery-idle", "13.8", ""))
	assert.Len(t, talk.Evidence(), 5, "a correction replaces both")
}

func TestAConversationRestsBetweenChecks(t *testing.T) {
	c := diagnose.Begin(ready()[fault.NoSpark], nil)
	require.NoError(t, c.Answer("battery-rest", "12.6", "V"))
	rests := 0
	c.Resting(func() { rests++ })
	all := c.Choices()
	assert.Greater(t, rests, len(all)/2)
	quiet := diagnose.Begin(ready()[fault.NoSpark], nil)
	require.NoError(t, quiet.Answer("battery-rest", "12.6", "V"))
	assert.Equal(t, quiet.Choices(), all)
}

// A part that is named because all else is cleared is not bought before what could pass
// for it was read: a wire that the catalogue knows nothing of, say.
func TestWhatIsNamedIsConfirmed(t *testing.T) {
	from := catalogue(t)
	wires := []machine.Kind{machine.FeedWire, machine.MainFuse, machine.BatteryTerminal}
	from.Faults = slices.DeleteFunc(from.Faults, func(f fault.Fault) bool { return slices.Contains(wires, f.Kind) })
	unsaid := from
	unsaid.Faults = slices.Clone(from.Faults)
	for i := range unsaid.Faults {
		unsaid.Faults[i].Confirm = nil
	}
	burnt := machine.Typical(machine.Usual()).With(machine.Fault{Kind: machine.FeedWire, Size: 1.5})
	over := func(c fault.Catalogue) *diagnose.Conversation {
		return diagnose.Begin(diagnose.New(ask(fault.WontCharge), c).Ready(), nil)
	}

	without, _ := heldWith(t, over(unsaid), burnt)
	require.Equal(t, fault.PartsOf(check.Regulator), without.Finding().Parts, "it would be bought")
	require.Equal(t, diagnose.Replace, without.Finding().Action)

	with, asked := heldWith(t, over(from), burnt)
	at := slices.IndexFunc(asked, func(x diagnose.Choice) bool { return x.Confirms })
	require.GreaterOrEqual(t, at, 0)
	assert.Equal(t, check.ID("drop-plus"), asked[at].Check.ID)
	assert.Equal(t, diagnose.NotListed, with.Finding().Action)

	dead := machine.Typical(machine.Usual()).With(machine.Fault{Kind: machine.NoCharging})
	sound, _ := heldWith(t, over(from), dead)
	assert.Equal(t, fault.PartsOf(check.Regulator), sound.Finding().Parts)
	assert.Subset(t, sound.Done(), []check.ID{"drop-plus", "drop-ground"})

	shorted := machine.Typical(machine.Usual()).With(machine.Fault{Kind: machine.DiodeIsShorted, At: 1})
	seen := over(from)
	for _, id := range []check.ID{"diode-plus-1", "diode-ground-1", "diode-plus-2"} { // one of them shows it
		c, err := check.Find(check.Whole(check.DefaultBuild()), id)
		require.True(t, err)
		require.NoError(t, seen.Number(id, shorted.Predict(c, meter.Cheap(), machine.Kit{}).Value))
	}
	_, asked = heldWith(t, seen, shorted)
	assert.Equal(t, fault.PartsOf(check.Regulator), seen.Finding().Parts)
	assert.False(t, slices.ContainsFunc(asked, func(x diagnose.Choice) bool { return x.Confirms }), "the row is not gone through to its end")

	refusing := over(from)
	for _, id := range []check.ID{"drop-plus", "drop-ground"} {
		require.NoError(t, refusing.Refuse(id))
	}
	_, asked = heldWith(t, refusing, dead)
	assert.False(t, slices.ContainsFunc(asked, func(x diagnose.Choice) bool { return x.Confirms }), "what is refused is not asked for")
}
