package diagnose_test

import (
	"math"
	"slices"
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

var ready = sync.OnceValue(func() map[fault.Symptom]*diagnose.Model {
	faults, err := fault.Bundled()
	if err != nil {
		panic(err)
	}
	out := map[fault.Symptom]*diagnose.Model{}
	for _, s := range []fault.Symptom{fault.WontCharge, fault.NoSpark, fault.Overcharges} {
		q := diagnose.Question{Symptom: s, Build: check.DefaultBuild(), Meter: meter.Cheap()}
		out[s] = diagnose.New(q, faults).Ready()
	}
	return out
})

func volts(id check.ID, v float64) diagnose.Evidence {
	return diagnose.Evidence{Check: id, Value: v, Doubt: 0.05}
}

// Without evidence the suspects are the catalogue's weights, seen through the
// complaint; with any, probabilities sum to one, over faults and over parts.
func TestProbabilitiesSumToOne(t *testing.T) {
	for s, m := range ready() {
		for _, ev := range [][]diagnose.Evidence{nil, {volts("battery-rest", 12.6)}, {volts("battery-5000", 12.4), {Check: "charge-core-1", State: quantity.OverRange}}} {
			got := m.Weigh(ev)
			sum, parts := got.Unlisted, got.Unlisted
			for i, x := range got.Faults {
				require.False(t, math.IsNaN(x.Probability))
				sum += x.Probability
				if i > 0 {
					require.LessOrEqual(t, x.Probability, got.Faults[i-1].Probability)
				}
			}
			for _, p := range got.Parts {
				parts += p
			}
			assert.InDelta(t, 1, sum, 1e-9, s)
			assert.InDelta(t, 1, parts, 1e-9, s)
		}
	}
}

// The order of the readings does not matter, nor what is asked of no check, nor
// that the same is asked twice of the model.
func TestEvidenceHasNoOrder(t *testing.T) {
	m := ready()[fault.WontCharge]
	ev := []diagnose.Evidence{volts("battery-5000", 12.3), volts("battery-rest", 12.5), {Check: "charge-pair-1-2", Value: 0.5, Doubt: 0.1}, {Check: "fuse", Value: 0}}
	first := m.Weigh(ev)
	slices.Reverse(ev)
	second := m.Weigh(append(ev, diagnose.Evidence{Check: "no-such-check", Value: 3}, volts("battery-idle", math.NaN())))
	require.Len(t, second.Faults, len(first.Faults))
	for i := range first.Faults {
		assert.InDelta(t, first.Faults[i].Probability, second.Faults[i].Probability, 1e-9)
	}
	again := m.Weigh(ev)
	assert.Equal(t, again, m.Weigh(ev))
	assert.Equal(t, m.Next(again, ev, nil, nil), m.Next(again, ev, nil, nil))
}

// Megohms that a long range still shows are as good as open.
func TestMegohmsAreOpen(t *testing.T) {
	m := ready()[fault.WontCharge]
	open := m.Weigh([]diagnose.Evidence{{Check: "charge-core-1", State: quantity.OverRange}})
	damp := m.Weigh([]diagnose.Evidence{{Check: "charge-core-1", Value: 12.4e6, Doubt: 1e5}})
	assert.Equal(t, open.Faults, damp.Faults)
}

// What every workshop would conclude.
func TestPlainCases(t *testing.T) {
	open := func(id check.ID) diagnose.Evidence { return diagnose.Evidence{Check: id, State: quantity.OverRange} }
	ohms := func(id check.ID, v float64) diagnose.Evidence {
		return diagnose.Evidence{Check: id, Value: v, Doubt: 0.1}
	}
	yes := func(id check.ID, v float64) diagnose.Evidence { return diagnose.Evidence{Check: id, Value: v} }
	for name, c := range map[string]struct {
		symptom fault.Symptom
		ev      []diagnose.Evidence
		want    check.Part
	}{
		"a lead to the core reads ohms": {fault.WontCharge, []diagnose.Evidence{ohms("charge-core-1", 0.3), ohms("charge-core-2", 0.5), ohms("charge-core-3", 0.5)}, check.ChargeWinding},
		"the fuse is blown":             {fault.WontCharge, []diagnose.Evidence{yes("fuse", 1), volts("battery-5000", 12.5)}, check.Wiring},
		"good copper, nothing comes out": {fault.WontCharge, []diagnose.Evidence{
			ohms("charge-pair-1-2", 0.45), ohms("charge-pair-2-3", 0.45), ohms("charge-pair-3-1", 0.45), open("charge-core-1"), yes("fuse", 0),
			volts("battery-5000", 12.3), volts("charge-ac-1-2", 30), volts("charge-ac-2-3", 30), volts("charge-ac-3-1", 30), volts("drop-plus", 0.01), volts("drop-ground", 0.01),
			yes("plug-burnt", 0),
		}, check.Regulator},
		"one pair open":       {fault.WontCharge, []diagnose.Evidence{open("charge-pair-1-2"), open("charge-pair-3-1"), ohms("charge-pair-2-3", 0.4)}, check.ChargeWinding},
		"the exciter is open": {fault.NoSpark, []diagnose.Evidence{open("exciter")}, check.Exciter},
		"the pickup is open":  {fault.NoSpark, []diagnose.Evidence{open("pickup"), ohms("exciter", 320)}, check.Pickup},
		"spark without the kill wire": {fault.NoSpark, []diagnose.Evidence{
			yes("spark-good-plug", 0), yes("spark-kill-off", 1), ohms("kill-wire", 0.2)}, check.KillCircuit},
		"sixteen volts": {fault.Overcharges, []diagnose.Evidence{volts("battery-5000", 16.2), volts("battery-rest", 12.7)}, check.Regulator},
	} {
		got := ready()[c.symptom].Weigh(c.ev)
		parts, p := got.Named()
		assert.Equal(t, fault.PartsOf(c.want), parts, "%s: %v", name, got.Faults[:3])
		assert.Greater(t, p, 0.7, "%s: %v", name, got.Faults[:3])
	}
}

// In a world of the model's own the part is found, and a good stator is not
// condemned.
func TestAMatchedWorld(t *testing.T) {
	faults, err := fault.Bundled()
	require.NoError(t, err)
	for s, m := range ready() {
		if s == fault.Overcharges {
			continue
		}
		right, n := 0, 0
		for i, f := range slices.Repeat(faults.Faults, 3) {
			if f.Weights[s] == 0 || f.ID == fault.None || f.Double() {
				continue
			}
			hidden, ok := troubled(f, s, uint64(9000+100*i))
			if !ok {
				continue
			}
			var ev []diagnose.Evidence
			for _, c := range m.Checks {
				p := hidden.Predict(c, meter.Cheap(), machine.Kit{})
				if !p.Known && !p.Rough || c.PeakHold {
					continue
				}
				e := diagnose.Evidence{Check: c.ID, Value: p.Value, Doubt: 0.05 + 0.01*math.Abs(p.Value)}
				if p.Open {
					e.State, e.Value = quantity.OverRange, 0
				}
				if c.Instrument == check.Eyes {
					e.Value = math.Round(p.Value)
				}
				ev = append(ev, e)
			}
			parts, _ := m.Weigh(ev).Named()
			n++
			if parts == f.Parts() {
				right++
			} else {
				t.Logf("%s: %s named for %s", s, parts, f.ID)
			}
		}
		assert.GreaterOrEqual(t, float64(right), 0.85*float64(n), "%s: %d of %d", s, right, n)
	}
}

// troubled is a machine with a fault that its owner would complain of.
func troubled(f fault.Fault, s fault.Symptom, seed uint64) (machine.Machine, bool) {
	for n := range uint64(40) {
		luck := machine.NewChance(seed + n)
		m := machine.Drawn(machine.Usual(), luck)
		one, ok := luck.Sized(f.Kind, machine.Usual())
		if !ok {
			return m, false
		}
		m = m.With(one)
		at := machine.State{Plug: check.Together, Key: true, Engine: check.At5000}
		complains := m.ChargeState(at).BatteryVolts < m.RestVolts()+0.4
		if at.Engine = check.Cranking; s == fault.NoSpark {
			complains = m.Seen(check.SparkAtPlug, at) < 0.3
		}
		if complains {
			return m, true
		}
	}
	return machine.Machine{}, false
}

// A reading that contradicts many others is taken for a slip, and the part stays.
func TestOneSlip(t *testing.T) {
	m := ready()[fault.WontCharge]
	ev := []diagnose.Evidence{
		{Check: "charge-pair-1-2", Value: 0.45, Doubt: 0.1}, {Check: "charge-pair-2-3", Value: 0.45, Doubt: 0.1}, {Check: "charge-pair-3-1", Value: 0.45, Doubt: 0.1},
		volts("battery-5000", 12.3), volts("battery-3000", 12.3), volts("charge-ac-1-2", 30), volts("charge-ac-2-3", 30), volts("charge-ac-3-1", 30),
		{Check: "charge-core-1", State: quantity.OverRange}, {Check: "charge-core-2", State: quantity.OverRange}, {Check: "fuse", Value: 0},
		volts("drop-plus", 0.01), volts("drop-ground", 0.01), volts("battery-rest", 126),
	}
	got := m.Weigh(ev)
	part, _ := got.Lead()
	assert.Equal(t, check.Regulator, part, "%v", got.Faults[:3])
	assert.Greater(t, got.Slips["battery-rest"], 0.9)
	assert.Less(t, got.Slips["battery-5000"], 0.2)
}

// Readings that no fault of the catalogue gives look strange; usual ones do not.
func TestStrangeReadings(t *testing.T) {
	m := ready()[fault.WontCharge]
	usual := []diagnose.Evidence{volts("battery-rest", 12.6), volts("battery-5000", 12.4), {Check: "charge-core-1", State: quantity.OverRange}}
	assert.Less(t, m.Weigh(usual).Strange, 0.9)
	odd := []diagnose.Evidence{volts("battery-rest", 12.6), volts("battery-5000", 9.1), volts("battery-3000", 14.9), volts("battery-idle", 10.5), volts("battery-lamp", 12.5)}
	assert.Greater(t, m.Weigh(odd).Strange, 0.99)
	assert.Zero(t, m.Weigh(nil).Strange)
}

// Readings that contradict all of the catalogue make a fault that is none of it
// likelier, plain ones less likely than it was.
func TestUnlistedFaults(t *testing.T) {
	m := ready()[fault.WontCharge]
	first := m.Weigh(nil).Unlisted
	from, err := fault.Bundled()
	require.NoError(t, err)
	assert.InDelta(t, from.Unlisted[fault.WontCharge].Share, first, 1e-9)
	plain := m.Weigh([]diagnose.Evidence{{Check: "charge-core-1", Value: 0.3, Doubt: 0.1}, {Check: "charge-core-2", Value: 0.5, Doubt: 0.1}, volts("battery-5000", 12.4)})
	assert.Less(t, plain.Unlisted, first)
	odd := []diagnose.Evidence{volts("battery-rest", 12.6), volts("battery-5000", 9.1), volts("battery-3000", 14.9), volts("battery-idle", 10.5), volts("battery-lamp", 12.5)}
	assert.Greater(t, m.Weigh(odd).Unlisted, 5*first)
}

// A machine of which everything that is charged with is sound has no fault, or one that
// is not listed: how likely the catalogue makes the latter is kept beside the former. A
// catalogue that supposes none never names one.
func TestUnlistedFaultsThatNothingShows(t *testing.T) {
	from, err := fault.Bundled()
	require.NoError(t, err)
	all := readings(ready()[fault.WontCharge], machine.Typical(machine.Usual()))
	weigh := func(u map[fault.Symptom]fault.Unlisted) diagnose.Suspects {
		with := from
		with.Unlisted = u
		return diagnose.New(ask(fault.WontCharge), with).Ready().Weigh(all)
	}
	unseen := weigh(map[fault.Symptom]fault.Unlisted{fault.WontCharge: {Share: 0.05, Unseen: 0.5}})
	none := unseen.Of(fault.PartsOf())
	assert.Greater(t, none, 0.5)
	assert.Greater(t, unseen.Unlisted, 0.05*none)
	assert.Less(t, unseen.Unlisted, none)
	seen := weigh(map[fault.Symptom]fault.Unlisted{fault.WontCharge: {Share: 0.05}})
	assert.Less(t, seen.Unlisted, unseen.Unlisted/3)
	for _, u := range []map[fault.Symptom]fault.Unlisted{nil, {fault.WontCharge: {Unseen: 1}}} {
		whole := weigh(u)
		assert.Zero(t, whole.Unlisted)
		assert.Greater(t, whole.Of(fault.PartsOf()), none)
	}
}

// The same reading twice is hardly worth more than once, but no slip any longer.
func TestTheSameReadingTwice(t *testing.T) {
	m := ready()[fault.WontCharge]
	low := diagnose.Evidence{Check: "charge-pair-1-2", Value: 0.45, Doubt: 0.1}
	once := m.Weigh([]diagnose.Evidence{low, volts("battery-5000", 12.3)})
	twice := m.Weigh([]diagnose.Evidence{low, volts("battery-5000", 12.3), low})
	for part, p := range once.Parts {
		assert.InDelta(t, p, twice.Parts[part], 0.03, part)
	}
	open, winding := diagnose.Evidence{Check: "charge-pair-1-2", State: quantity.OverRange}, fault.PartsOf(check.ChargeWinding)
	closed := diagnose.Evidence{Check: "charge-pair-2-3", State: quantity.Number, Value: 0.4, Doubt: 0.1}
	first := m.Weigh([]diagnose.Evidence{open, closed})
	second := m.Weigh([]diagnose.Evidence{open, closed, open})
	assert.Less(t, second.Slips["charge-pair-1-2"], first.Slips["charge-pair-1-2"]/5)
	assert.GreaterOrEqual(t, second.Of(winding), first.Of(winding))
	one, _ := m.Weigh([]diagnose.Evidence{open, {Check: "charge-pair-1-2", Value: 0.4, Doubt: 0.1}}).Lead()
	assert.NotEqual(t, check.ChargeWinding, one, "one of two that differ is a slip")
}

// A meter whose rectifier nobody knows may show a half wave twice as high or not:
// what it reads of one then tells less apart than with a meter that is known.
func TestTheDetectorIsPartOfTheDoubt(t *testing.T) {
	faults, err := fault.Bundled()
	require.NoError(t, err)
	weigh := func(with meter.Meter, volts float64) diagnose.Suspects {
		b := machine.Usual().Known()
		require.True(t, b.Exciter)
		m := diagnose.New(diagnose.Question{Symptom: fault.NoSpark, Build: b, Meter: with}, faults).Ready()
		return m.Weigh([]diagnose.Evidence{{Check: "exciter-cranking", Value: volts, Doubt: 1}, {Check: "exciter-free-cranking", Value: 100, Doubt: 1}, {Check: "exciter", Value: 300, Doubt: 3}})
	}
	average := meter.Cheap()
	average.Detectors = []meter.Detector{meter.AverageAC}
	pin := func(s diagnose.Suspects) float64 {
		for _, x := range s.Faults {
			if x.Fault.Kind == machine.PlugPin {
				return x.Probability
			}
		}
		return 0
	}
	known, unknown := pin(weigh(average, 98)), pin(weigh(meter.Cheap(), 98))
	assert.Greater(t, known, 2*unknown, "98 V of 100 is no load, or half a wave on a half-wave meter")
}

// What is done or refused is not asked again, and what was got at is not paid
// twice.
func TestNext(t *testing.T) {
	m := ready()[fault.NoSpark]
	s := m.Weigh(nil)
	all := m.Next(s, nil, nil, nil)
	require.Greater(t, len(all), 25)
	for i, c := range all {
		require.GreaterOrEqual(t, c.Bits, 0.0)
		require.GreaterOrEqual(t, c.Gain, -1e-9)
		if i > 0 {
			require.LessOrEqual(t, c.Saves, all[i-1].Saves)
		}
	}
	minutes := func(list []diagnose.Choice, id check.ID) float64 {
		for _, c := range list {
			if c.Check.ID == id {
				return c.Minutes
			}
		}
		return 0
	}
	assert.InDelta(t, 0.5+3+1, minutes(all, "pickup-core"), 1e-9, "panel, plug and probes")
	after := m.Next(s, nil, []check.ID{"pickup"}, func(c check.Check) bool { return slices.Contains(c.Needs, check.FlywheelCover) })
	assert.InDelta(t, 0.5, minutes(after, "pickup-core"), 1e-9, "panel and plug are open")
	assert.Zero(t, minutes(after, "pickup"), "done")
	assert.Zero(t, minutes(after, "pickup-gap"), "refused")
	assert.NotZero(t, minutes(all, "pickup-gap"))
}

// A check that all suspects answer alike tells nothing.
func TestWhatTellsNothing(t *testing.T) {
	m := ready()[fault.WontCharge]
	for _, c := range m.Next(m.Weigh(nil), nil, nil, nil) {
		if c.Check.ID == "coil-secondary" || c.Check.ID == "plug-cap" {
			assert.Less(t, c.Bits, 0.02, c.Check.ID)
		}
	}
}

func TestGrowingInSteps(t *testing.T) {
	faults, err := fault.Bundled()
	require.NoError(t, err)
	q := diagnose.Question{Symptom: fault.Overcharges, Build: check.DefaultBuild(), Meter: meter.Cheap()}
	m, steps := diagnose.New(q, faults), 1
	for m.Grow() {
		steps++
	}
	assert.Greater(t, steps, 4)
	assert.False(t, m.Grow(), "nothing is left")
	ev := []diagnose.Evidence{volts("battery-5000", 15.9)}
	assert.Equal(t, ready()[fault.Overcharges].Weigh(ev), m.Weigh(ev), "however it was grown")
}

func BenchmarkReading(b *testing.B) {
	m := ready()[fault.WontCharge]
	ev := []diagnose.Evidence{volts("battery-5000", 12.3), volts("battery-rest", 12.5), {Check: "charge-pair-1-2", Value: 0.5, Doubt: 0.1}, {Check: "fuse", Value: 0}, volts("battery-3000", 12.3), volts("charge-ac-1-2", 30)}
	for b.Loop() {
		s := m.Weigh(ev)
		m.Next(s, ev, nil, nil)
	}
}

func BenchmarkPopulation(b *testing.B) {
	faults, _ := fault.Bundled()
	q := diagnose.Question{Symptom: fault.WontCharge, Build: check.DefaultBuild(), Meter: meter.Cheap()}
	for b.Loop() {
		diagnose.New(q, faults).Ready()
	}
}
