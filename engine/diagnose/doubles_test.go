package diagnose_test

import (
	"os"
	"runtime"
	"testing"

	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
)

func catalogue(tb testing.TB) fault.Catalogue {
	tb.Helper()
	faults, err := fault.Bundled()
	require.NoError(tb, err)
	return faults
}

// singles is the catalogue of before there were doubles.
func singles(tb testing.TB) fault.Catalogue {
	tb.Helper()
	text, err := os.ReadFile("../fault/testdata/faults_v1.json")
	require.NoError(tb, err)
	faults, err := fault.Decode(text)
	require.NoError(tb, err)
	return faults
}

func ask(s fault.Symptom) diagnose.Question {
	return diagnose.Question{Symptom: s, Build: check.DefaultBuild(), Meter: meter.Cheap()}
}

// readings are those of a machine at all checks that have a formula.
func readings(m *diagnose.Model, hidden machine.Machine) []diagnose.Evidence {
	var out []diagnose.Evidence
	for _, c := range m.Checks {
		p := hidden.Predict(c, meter.Cheap(), machine.Kit{})
		if !p.Known && !p.Rough || c.PeakHold {
			continue
		}
		e := diagnose.Evidence{Check: c.ID, Value: p.Value, Doubt: 0.05 + 0.01*max(p.Value, -p.Value)}
		if p.Open {
			e.State, e.Value = quantity.OverRange, 0
		}
		if c.Instrument == check.Eyes && p.Value < 0.5 {
			e.Value = 0
		}
		out = append(out, e)
	}
	return out
}

// Read at every check, a double is named with both its parts, and neither of its faults
// alone is taken for it.
func TestDoublesAreToldFromTheirFaults(t *testing.T) {
	typical := machine.Typical(machine.Usual())
	typical.Harness.Lamp *= 0.6 // a load under which a poor generator is noticed
	for id, c := range map[fault.ID]struct {
		symptom fault.Symptom
		both    []machine.Fault
	}{
		"charge-pin-and-phase-turns":              {fault.WontCharge, []machine.Fault{{Kind: machine.ChargePin, At: 2, Size: 3}, {Kind: machine.PhaseShorted, At: 2, Size: 0.45}}},
		"regulator-dead-and-battery-sulphated":    {fault.WontCharge, []machine.Fault{{Kind: machine.NoCharging}, {Kind: machine.Sulphated, Size: 12}}},
		"battery-cell-and-regulator-dead":         {fault.WontCharge, []machine.Fault{{Kind: machine.CellShorted}, {Kind: machine.NoCharging}}},
		"regulator-unbound-and-battery-sulphated": {fault.Overcharges, []machine.Fault{{Kind: machine.NoRegulating}, {Kind: machine.Sulphated, Size: 12}}},
	} {
		m := ready()[c.symptom]
		all := typical.With(c.both...)
		got := m.Weigh(readings(m, all))
		parts, p := got.Named()
		require.Equal(t, fault.PartsOf(c.both[0].Kind.Part(), c.both[1].Kind.Part()), parts, "%s: %v", id, got.Faults[:3])
		require.Greater(t, p, 0.5, id)
		require.Equal(t, id, got.Faults[0].Fault.ID)
		for _, one := range c.both {
			if c.symptom == fault.Overcharges && one.Kind == machine.Sulphated {
				continue // nobody comes with that complaint
			}
			alone := m.Weigh(readings(m, typical.With(one)))
			parts, _ := alone.Named()
			require.LessOrEqual(t, parts.Size(), 1, "%s alone: %v", one.Kind, alone.Faults[:3])
		}
	}
}

// A part that is named alone says which other may be at fault with it, and how often;
// no fault has no other beside it.
func TestASecondPartIsPointedAt(t *testing.T) {
	c := begun()
	require.NoError(t, c.Answer("charge-core-1", "0.3", ""))
	require.NoError(t, c.Answer("charge-core-2", "0.5", ""))
	require.NoError(t, c.Answer("battery-5000", "12.4", ""))
	f := c.Finding()
	require.Equal(t, fault.PartsOf(check.ChargeWinding), f.Parts)
	require.NotEmpty(t, f.Also)
	require.Equal(t, check.Regulator, f.Also[0].Part)
	s := c.Suspects()
	want := s.Of(fault.PartsOf(check.ChargeWinding, check.Regulator)) / s.Of(fault.PartsOf(check.ChargeWinding))
	require.InDelta(t, want, f.Also[0].Share, 1e-12)
	require.Greater(t, f.Also[0].Share, 0.05)
	require.Less(t, f.Also[0].Share, 0.5)
	require.InDelta(t, s.Of(fault.PartsOf(check.ChargeWinding)), f.Probability, 1e-12)

	sound := replied(t, machine.Typical(machine.Usual())).Finding()
	require.True(t, sound.Parts.None())
	require.Empty(t, sound.Also)
}

// What is said of a part counts the doubles that hold it; the sets themselves do not
// overlap, and the leading part is the likeliest of all.
func TestPartsCountAloneAndWithOthers(t *testing.T) {
	for s, m := range ready() {
		for _, ev := range [][]diagnose.Evidence{nil, {volts("battery-rest", 12.1)}, {volts("battery-5000", 12.4), {Check: "charge-core-1", Value: 0.3, Doubt: 0.1}}} {
			got := m.Weigh(ev)
			lead, p := got.Lead()
			require.InDelta(t, got.Of(fault.PartsOf(lead)), p, 1e-12, s)
			byFault := map[fault.Parts]float64{}
			for _, x := range got.Faults {
				byFault[x.Fault.Parts()] += x.Probability
				for _, part := range x.Fault.Parts().List() {
					require.LessOrEqual(t, got.Of(fault.PartsOf(part)), p+1e-12, part)
				}
			}
			require.Len(t, got.Parts, len(byFault))
			for set, want := range byFault {
				require.InDelta(t, want, got.Parts[set], 1e-12, set)
			}
			named, sure := got.Named()
			require.InDelta(t, got.Of(named), sure, 1e-12)
			require.True(t, named == fault.PartsOf(lead) || named.Has(lead))
		}
	}
}

// A double that holds a fault is not held against it: what shows the fault shows both.
func TestADoubleIsNoReasonAgainstItsFault(t *testing.T) {
	ev := []diagnose.Evidence{{Check: "charge-core-1", Value: 0.3, Doubt: 0.1}, {Check: "charge-core-2", Value: 0.5, Doubt: 0.1}}
	loudest := func(faults fault.Catalogue) float64 {
		m := diagnose.New(ask(fault.WontCharge), faults).Ready()
		pro, _ := m.Explain(m.Weigh(nil), ev, "phase-to-core", 1)
		require.NotEmpty(t, pro)
		return pro[0].Weight
	}
	require.InDelta(t, loudest(singles(t)), loudest(catalogue(t)), 0.15)
}

// What the doubles cost: cases, time and memory to draw them, and the first question.
func BenchmarkDoubles(b *testing.B) {
	for name, faults := range map[string]fault.Catalogue{"without doubles": singles(b), "with doubles": catalogue(b)} {
		for _, s := range []fault.Symptom{fault.WontCharge, fault.NoSpark} {
			b.Run(string(s)+"/"+name, func(b *testing.B) {
				b.ReportAllocs()
				for range b.N {
					diagnose.New(ask(s), faults).Ready()
				}
				var before, after runtime.MemStats
				runtime.GC()
				runtime.ReadMemStats(&before)
				m := diagnose.New(ask(s), faults).Ready()
				runtime.GC()
				runtime.ReadMemStats(&after)
				_, cases := m.Progress()
				b.ReportMetric(float64(cases), "cases")
				b.ReportMetric(float64(after.HeapAlloc-before.HeapAlloc)/1e6, "MB-kept")
			})
			b.Run("first question/"+string(s)+"/"+name, func(b *testing.B) {
				m := diagnose.New(ask(s), faults).Ready()
				for range b.N {
					diagnose.Begin(m, nil).Ask()
				}
			})
		}
	}
}
