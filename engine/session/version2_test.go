package session_test

import (
	"math"
	"math/rand/v2"
	"os"
	"slices"
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
	sheet.Lines = slices.DeleteFunc(sheet.Lines, func(l meter.Line) bool { return l.Function == meter.Diode.String() }) // it came later
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
	b, err := os.ReadFile(name)
	require.NoError(t, err)
	got, err := session.Decode(b)
	require.NoError(t, err)
	assert.Equal(t, fresh(), got)
	assert.Equal(t, strings.Replace(string(b), `"version": 2`, `"version": 4`, 1), text(t, got), "only the version changes")
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
		ab := session.Merge(a, b).Fold()
		require.Equal(t, ab, session.Merge(b, a).Fold())
		runs, earlier := len(ab.Runs["pickup"]), len(ab.Earlier["pickup"])
		if ab.Current["pickup"].Skip != nil {
			runs++
		}
		require.Equal(t, countIDs(a, b), runs+earlier, "each entry counts or was replaced")
	}
}

func TestWhatVersion2AddsIsChecked(t *testing.T) {
	good := string(v2(t))
	own := good[strings.Index(good, `"ownMeter"`):strings.Index(good, `"winding"`)]
	const first = `"function": "ohms",
                "nominal": 200,`
	for _, c := range []struct{ old, new, field, reason string }{
		{`"meter": "own"`, `"meter": "cheap"`, "[0].setup.ownMeter", "is given beside a bundled meter"},
		{`"meter": "own"`, `"meter": "golden"`, "[0].setup.meter", `is "golden"`},
		{own, "", "[0].setup.ownMeter", "is missing"},
		{`"winding": "engine-warm"`, `"winding": "lukewarm"`, "[0].setup.winding", `is "lukewarm"`},
		{`"winding": "engine-warm"`, `"winding": 7`, "[0].setup.winding", "holds a number where a text belongs"},

		{`"record": "0e7e0000`, `"record": "0e7e`, "[0].setup.ownMeter.record", "is not a UUID"},
		{`"counts": 1999`, `"counts": 2000`, "[0].setup.ownMeter.sheet.counts", "is 2000"},
		{`"class": "cheap"`, `"class": "golden"`, "[0].setup.ownMeter.sheet.class", `is "golden"`},
		{`"old yellow one"`, `"old\nyellow"`, "[0].setup.ownMeter.sheet.name", "line break"},
		{`"acHighHz": 400`, `"acHighHz": 30`, "[0].setup.ownMeter.sheet.acHighHz", "is 30"},
		{`"inputACOhms": 450000`, `"inputACOhms": 0`, "[0].setup.ownMeter.sheet.inputACOhms", "is 0"},
		{first, strings.Replace(first, "ohms", "farads", 1), "[0].setup.ownMeter.sheet.lines[0].function", `is "farads"`},
		{first, strings.Replace(first, "200", "300", 1), "[0].setup.ownMeter.sheet.lines[0].nominal", "is 300"},
		{first, strings.Replace(first, "200", "2000", 1), "[0].setup.ownMeter.sheet.lines[1]", "stands twice"},
		{`"percent": 0.8`, `"percent": 80`, "[0].setup.ownMeter.sheet.lines[0].percent", "is 80"},
		{`"digits": 5`, `"digits": 0`, "[0].setup.ownMeter.sheet.lines[0].digits", "is 0"},

		{`"half-wave"`, `"by ear"`, "[0].setup.ownMeter.learned.detectors", `name "by ear"`},
		{`"half-wave"`, `7`, "[0].setup.ownMeter.learned.detectors", "holds a number where a text belongs"},
		{`"half-wave"`, `"half-wave", "half-wave"`, "[0].setup.ownMeter.learned.detectors", "twice"},
		{`"leads": "good"`, `"noneFits": true`, "[0].setup.ownMeter.learned.noneFits", "beside detectors"},
		{`"leads": "good"`, `"leads": "lost"`, "[0].setup.ownMeter.learned.leads", `is "lost"`},
		{`"resistor": "off"`, `"resistor": "agrees"`, "[0].setup.ownMeter.learned.bound", "is 0.13"},
		{`"bound": 0.13`, `"bound": 11`, "[0].setup.ownMeter.learned.bound", "is 11"},

		{`"volt-amp",`, `"magic",`, "[0].setup.methods[0]", `is "magic"`},
		{`"volt-amp",`, `"peak-hold",`, "[0].setup.methods[2]", "stands twice"},
		{`"volt-amp",`, strings.Repeat(`"volt-amp",`, 7), "[0].setup.methods", "too many"},

		{`"resistorOhms": 0.47`, `"resistorOhms": -1`, "[0].setup.kit.resistorOhms", "is -1"},
		{`"resistorOhms": 0.47`, `"resistorOhms": 1e8`, "[0].setup.kit.resistorOhms", "is 1e+08"},
		{`"resistorOhms": 0.47`, `"resistorOhms": "NaN"`, "[0].setup.kit.resistorOhms", "holds a text where a number belongs"},
		{`"resistorPercent": 1`, `"resistorPercent": 21`, "[0].setup.kit.resistorPercent", "is 21"},
		{`"resistorPercent": 1`, `"resistorPercent": -1`, "[0].setup.kit.resistorPercent", "is -1"},
		{`"adapterMicrofarads": 0.22`, `"adapterMicrofarads": 1000`, "[0].setup.kit.adapterMicrofarads", "is 1000"},
		{`"adapterMicrofarads": 0.22`, `"adapterMicrofarads": 1e-6`, "[0].setup.kit.adapterMicrofarads", "is 1e-06"},
		{`"bleederMegohms": 10`, `"bleederMegohms": -1`, "[0].setup.kit.bleederMegohms", "is -1"},
		{`"bleederMegohms": 10`, `"bleederMegohms": 1001`, "[0].setup.kit.bleederMegohms", "is 1001"},

		{`"again": true`, `"again": 7`, "[2].reading.again", "holds a number where true or false belongs"},
		{`"again": true`, `"winding": "lukewarm"`, "[2].reading.winding", `is "lukewarm"`},
	} {
		require.Contains(t, good, c.old)
		_, err := session.Decode([]byte(strings.Replace(good, c.old, c.new, 1)))
		var f *session.FieldError
		require.ErrorAs(t, err, &f, "%s", c.new)
		assert.Equal(t, "entries"+c.field, f.Field, "%s: %v", c.new, err)
		assert.Contains(t, f.Reason, c.reason, "%s", c.new)
		assert.NotEmpty(t, f.WayOut, "%s", c.new)
	}
	_, err := session.Decode([]byte(strings.Replace(good, "0.47", "NaN", 1)))
	assert.ErrorContains(t, err, "is not JSON")
}

// What JSON cannot hold is refused all the same: the kit comes from the screens
// too.
func TestAKitIsOfNumbers(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		for field, kit := range map[string]session.Kit{
			"resistorOhms": {ResistorOhms: v}, "resistorPercent": {ResistorPercent: v},
			"adapterMicrofarads": {AdapterMicrofarads: v}, "bleederMegohms": {BleederMegohms: v},
		} {
			e := entry(1, setup(3, check.Bench))
			e.Setup.Kit = &kit
			assert.ErrorContains(t, e.Valid(), "setup.kit."+field, "%v", v)
		}
	}
	e := entry(1, setup(3, check.Bench))
	e.Setup.Kit = &session.Kit{}
	assert.NoError(t, e.Valid(), "zero is unknown")
}
