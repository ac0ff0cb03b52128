package session_test

import (
	"flag"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"github.com/google/uuid"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/session"
	"coilbook/engine/spec"
)

var update = flag.Bool("update", false, "write the fixture of version 2 anew")

func again(id check.ID, text string) session.Entry {
	e := reading(id, text)
	e.Reading.Again = true
	return e
}

func warm(e session.Entry) session.Entry {
	e.Reading.Winding = spec.JustStopped
	return e
}

func corrected(id check.ID, text string, old session.Entry) session.Entry {
	e := reading(id, text)
	e.Reading.Corrects = &old.ID
	return e
}

// ownSetup holds all that version 2 adds to a set-up.
func ownSetup() session.Entry {
	e := setup(3, check.Bench)
	e.Setup.Meter, e.Setup.Winding = session.OwnMeter, spec.EngineWarm
	e.Setup.Methods = []check.Method{check.VoltAmp, check.HotWinding, check.PeakHold}
	e.Setup.Kit = &session.Kit{ResistorOhms: 0.47, ResistorPercent: 1, AdapterMicrofarads: 0.22, BleederMegohms: 10}
	sheet := meter.SheetOf(meter.Cheap())
	sheet.Name = "old yellow one"
	e.Setup.Own = &session.Own{Record: uuid.MustParse("0e7e0000-0000-4000-8000-000000000000"), Sheet: sheet,
		Learned: &meter.Learned{Detectors: []meter.Detector{meter.HalfWave}, Leads: meter.LeadsGood, Resistor: meter.ResistorOff, Deviation: 0.12, Bound: 0.13}}
	return e
}

// fresh is a session of version 2: a run of three, of which the second was
// corrected.
func fresh() session.Session {
	s := session.Session{ID: uuid.MustParse("5e551000-0000-4000-8000-000000000002")}
	first, second := entry(2, reading("charge-pair-1-2", "0.9")), entry(3, again("charge-pair-1-2", "9.0"))
	return s.Append(entry(1, ownSetup()), first, second, entry(4, warm(again("charge-pair-1-2", "1.0"))),
		entry(5, corrected("charge-pair-1-2", "0.8", second)))
}

func v2(t testing.TB) []byte {
	b, err := session.Encode(fresh())
	require.NoError(t, err)
	return b
}

func TestVersion2OpensForEver(t *testing.T) {
	const name = "testdata/session_v2.json"
	if *update {
		require.NoError(t, os.WriteFile(name, v2(t), 0o644))
	}
	b, err := os.ReadFile(name)
	require.NoError(t, err)
	got, err := session.Decode(b)
	require.NoError(t, err)
	assert.Equal(t, text(t, fresh()), text(t, got))
	st := got.Fold()
	assert.Equal(t, []string{"0.9", "0.8", "1.0"}, texts(st.Runs["charge-pair-1-2"]))
	assert.Equal(t, []string{"9.0"}, texts(st.Earlier["charge-pair-1-2"]))
	_, found := check.Find(st.Plan(), "volt-amp-known-1-2")
	assert.True(t, found, "the methods are part of the plan")
}

func texts(run []session.Entry) (out []string) {
	for _, e := range run {
		if e.Reading != nil {
			out = append(out, e.Reading.Text)
		}
	}
	return out
}

func TestReadingsOfOnePointCountTogether(t *testing.T) {
	const id = check.ID("pickup")
	first := entry(1, reading(id, "210"))
	second := entry(2, again(id, "211"))
	for _, c := range []struct {
		name         string
		then         []session.Entry
		run, earlier []string
	}{
		{"two", nil, []string{"210", "211"}, nil},
		{"a plain reading begins anew", []session.Entry{reading(id, "99")}, []string{"99"}, []string{"210", "211"}},
		{"a correction of one of several", []session.Entry{corrected(id, "212", first)}, []string{"212", "211"}, []string{"210"}},
		{"a correction of what is not there", []session.Entry{corrected(id, "212", entry(9, reading(id, "1")))}, []string{"212"}, []string{"210", "211"}},
		{"a skip", []session.Entry{skip(id)}, nil, []string{"210", "211"}},
		{"a reading after a skip", []session.Entry{skip(id), again(id, "213")}, []string{"213"}, []string{"210", "211"}},
		{"another check", []session.Entry{reading("exciter", "300")}, []string{"210", "211"}, nil},
	} {
		s := session.Session{ID: uuid.Max}.Append(first, second)
		for i, e := range c.then {
			s = s.Append(entry(3+i, e))
		}
		st := s.Fold()
		assert.Equal(t, c.run, texts(st.Runs[id]), c.name)
		assert.Equal(t, c.earlier, texts(st.Earlier[id]), c.name)
	}
}

// Whichever copy comes first, a merge of two tells the same runs.
func TestRunsDoNotHangOnTheOrderOfCopies(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	for range 300 {
		var a, b session.Session
		a.ID, b.ID = uuid.Max, uuid.Max
		var last session.Entry
		for n := 1; n < 9; n++ {
			e := entry(n, reading("pickup", string(rune('0'+n))))
			switch random.IntN(4) {
			case 0:
				e.Reading.Again = true
			case 1:
				if last.Reading != nil {
					e.Reading.Corrects = &last.ID
				}
			case 2:
				e = entry(n, skip("pickup"))
			}
			last = e
			if random.IntN(3) > 0 {
				a = a.Append(e)
			}
			if random.IntN(3) > 0 {
				b = b.Append(e)
			}
		}
		require.Equal(t, session.Merge(a, b).Fold().Runs, session.Merge(b, a).Fold().Runs)
	}
}

func TestWhatVersion2AddsIsChecked(t *testing.T) {
	good := string(v2(t))
	for _, c := range []struct{ old, new, field, reason string }{
		{`"meter": "own"`, `"meter": "cheap"`, "ownMeter", "beside a bundled meter"},
		{`"winding": "engine-warm"`, `"winding": "lukewarm"`, "winding", "lukewarm"},
		{`"volt-amp",`, `"magic",`, "methods[0]", "magic"},
		{`"volt-amp",`, `"peak-hold",`, "methods[2]", "twice"},
		{`"resistorOhms": 0.47`, `"resistorOhms": -1`, "kit.resistorOhms", "is -1"},
		{`"resistorPercent": 1`, `"resistorPercent": 21`, "kit.resistorPercent", "is 21"},
		{`"adapterMicrofarads": 0.22`, `"adapterMicrofarads": 1000`, "kit.adapterMicrofarads", "is 1000"},
		{`"counts": 1999`, `"counts": 2000`, "ownMeter.sheet.counts", "is 2000"},
		{`"percent": 0.8`, `"percent": 80`, "ownMeter.sheet.lines[0].percent", "80"},
		{`"leads": "good"`, `"leads": "lost"`, "ownMeter.learned.leads", "lost"},
		{`"half-wave"`, `"by ear"`, "detectors", "by ear"},
		{`"again": true`, `"again": 7`, "again", "number"},
		{`"again": true`, `"winding": "lukewarm"`, "winding", "lukewarm"},
		{`"bleederMegohms": 10`, `"bleederMegohms": -1`, "kit.bleederMegohms", "is -1"},
	} {
		require.Contains(t, good, c.old)
		_, err := session.Decode([]byte(strings.Replace(good, c.old, c.new, 1)))
		var f *session.FieldError
		require.ErrorAs(t, err, &f, "%s", c.new)
		assert.Contains(t, f.Field, c.field, "%s: %v", c.new, err)
		assert.Contains(t, f.Error(), c.reason, "%s", c.new)
	}
	missing := strings.Replace(setupBody(""), `"meter":"cheap"`, `"meter":"own"`, 1)
	_, err := session.Decode([]byte(file(missing)))
	require.ErrorContains(t, err, "ownMeter")
}
