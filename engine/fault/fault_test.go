package fault_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/fault"
	"coilbook/engine/machine"
)

// Every kind of fault that a machine can have is in the catalogue, with a weight
// for some complaint; every complaint has faults and the possibility of none.
func TestTheCatalogueIsWhole(t *testing.T) {
	faults, err := fault.Bundled()
	require.NoError(t, err)
	kinds, symptoms, none := map[machine.Kind]bool{}, map[fault.Symptom]int{}, map[fault.Symptom]bool{}
	for _, f := range faults.Faults {
		if !f.Double() {
			kinds[f.Kind] = true
		}
		for s := range f.Weights {
			symptoms[s]++
			none[s] = none[s] || f.ID == fault.None
		}
		assert.Equal(t, f.ID == fault.None, f.Parts().None())
		assert.Len(t, f.Kinds(), f.Parts().Size(), f.ID)
	}
	for _, k := range machine.Kinds() {
		assert.True(t, kinds[k], k)
	}
	for _, s := range fault.Symptoms() {
		assert.Greater(t, symptoms[s], 3, s)
		assert.True(t, none[s], "%s may have another cause", s)
	}
}

func TestABadCatalogueSaysWhere(t *testing.T) {
	const good = `{"format":"coilbook faults","version":1,"faults":[{"id":"box-dead","kind":"box-dead","weights":{"no-spark":2},"because":"x"}]}`
	_, err := fault.Decode([]byte(good))
	require.NoError(t, err)
	for old, c := range map[string][2]string{
		`"version":1`:               {`"version":5`, "version 5"},
		`"id":"box-dead"`:           {`"id":"box"`, `asks for the id "box-dead"`},
		`"kind":"box-dead"`:         {`"kind":"gremlin"`, `fault "box-dead"`},
		`"no-spark":2`:              {`"no-spark":0`, "not above zero"},
		`{"no-spark":2}`:            {`{"magic":2}`, `"magic" is not known`},
		`"because":"x"`:             {`"because":""`, "because is empty"},
		`"kind":"box-dead"`[1:5]:    {`kinnd`, "kinnd"},
		`"weights":{"no-spark":2},`: {``, "weights are empty"},
		`{"format"`:                 {`{format`, "no JSON"},
	} {
		_, err := fault.Decode([]byte(strings.Replace(good, old, c[0], 1)))
		require.ErrorContains(t, err, c[1], old)
	}
	twice := strings.Replace(good, `[{`, `[{"id":"box-dead","kind":"box-dead","weights":{"no-spark":2},"because":"x"},{`, 1)
	_, err = fault.Decode([]byte(twice))
	require.ErrorContains(t, err, "stands twice")
}

// Doubles are seldomer than either of their faults where that alone has the complaint
// too, and say what joins them.
func TestDoublesAreSeldomerThanTheirFaults(t *testing.T) {
	faults, err := fault.Bundled()
	require.NoError(t, err)
	by, doubles := map[machine.Kind]fault.Fault{}, 0
	for _, f := range faults.Faults {
		if !f.Double() && !f.HotOnly {
			by[f.Kind] = f
		}
	}
	for _, f := range faults.Faults {
		if !f.Double() {
			continue
		}
		doubles++
		assert.Equal(t, 2, f.Parts().Size(), f.ID)
		assert.NotEmpty(t, f.Link, f.ID)
		for s, w := range f.Weights {
			alone := 0
			for _, k := range f.Kinds() {
				if single, ok := by[k].Weights[s]; ok {
					alone++
					assert.Less(t, w, single, "%s: %s", f.ID, s)
				}
				assert.True(t, f.Adds(by[k]))
			}
			assert.Positive(t, alone, "%s: nobody complains of %s for either of them alone", f.ID, s)
		}
		assert.False(t, f.Adds(f))
		assert.False(t, f.Adds(faults.Faults[0]), "no fault is no part of it")
	}
	assert.GreaterOrEqual(t, doubles, 4)
}

func TestABadDoubleSaysWhere(t *testing.T) {
	const good = `{"format":"coilbook faults","version":2,"faults":[{"id":"drain-and-battery-flat","kind":"drain","with":"battery-flat",` +
		`"weights":{"no-spark":2},"link":"it empties it","because":"x"}]}`
	list, err := fault.Decode([]byte(good))
	require.NoError(t, err)
	require.Equal(t, []machine.Kind{machine.Drain, machine.FlatBattery}, list.Faults[0].Kinds())
	require.Equal(t, fault.PartsOf(check.Battery, check.Wiring), list.Faults[0].Parts())
	for old, c := range map[string][2]string{
		`"version":2`:                   {`"version":1`, "version 1 does not know"},
		`"id":"drain-and-battery-flat"`: {`"id":"drain"`, `asks for the id "drain-and-battery-flat"`},
		`"link":"it empties it",`:       {``, "link is empty"},
		`"with":"battery-flat",`:        {`"with":"battery-flat","hotOnly":true,`, "hotOnly is for one kind"},
		`drain-and-battery-flat","kind":"drain","with":"battery-flat"`:       {`drain-and-feed-wire","kind":"drain","with":"feed-wire"`, "both kinds are of one part, the wiring"},
		`-and-battery-flat","kind":"drain","with":"battery-flat"`:            {`-and-gremlin","kind":"drain","with":"gremlin"`, `with "gremlin" is not known`},
		`"id":"drain-and-battery-flat","kind":"drain","with":"battery-flat"`: {`"id":"drain","kind":"drain"`, "link is for a double"},
	} {
		bad := strings.Replace(good, old, c[0], 1)
		require.NotEqual(t, good, bad, old)
		_, err := fault.Decode([]byte(bad))
		require.ErrorContains(t, err, c[1], old)
	}
	round := strings.Replace(good, `[{`, `[{"id":"battery-flat-and-drain","kind":"battery-flat","with":"drain","weights":{"no-spark":2},"link":"x","because":"x"},{`, 1)
	_, err = fault.Decode([]byte(round))
	require.ErrorContains(t, err, "the other way round")
}

func TestABadConfirmationSaysWhere(t *testing.T) {
	const good = `{"format":"coilbook faults","version":4,"slips":{"share":0.01,"because":"x"},` +
		`"faults":[{"id":"box-dead","kind":"box-dead","weights":{"no-spark":2},"confirm":["box-feed","coil-primary"],"because":"x"}]}`
	list, err := fault.Decode([]byte(good))
	require.NoError(t, err)
	require.Equal(t, []check.ID{"box-feed", "coil-primary"}, list.Faults[0].Confirm)
	for old, c := range map[string][2]string{
		`"version":4`:                       {`"version":3`, "use version 4"},
		`"box-feed"`:                        {`"box-fed"`, `check "box-fed" is none of any build`},
		`"coil-primary"`:                    {`"box-feed"`, `"box-feed" stands twice`},
		`"id":"box-dead","kind":"box-dead"`: {`"id":"none"`, "confirm is for a part"},
	} {
		bad := strings.Replace(good, old, c[0], 1)
		require.NotEqual(t, good, bad, old)
		_, err := fault.Decode([]byte(bad))
		require.ErrorContains(t, err, c[1], old)
	}
}

// What is bought is confirmed first. Too many volts say themselves what does not hold
// them down, and nobody is to run the engine for more of them; a flat battery is charged.
func TestWhatIsBoughtIsConfirmed(t *testing.T) {
	list, err := fault.Bundled()
	require.NoError(t, err)
	for _, f := range list.Faults {
		switch f.Kind.Part() {
		case check.Regulator, check.IgnitionBox, check.IgnitionCoil, check.Battery:
			if f.Kind != machine.NoRegulating && f.Kind != machine.FlatBattery && !f.HotOnly {
				require.NotEmpty(t, f.Confirm, f.ID)
			}
		}
	}
}

// A catalogue of an earlier version is read as it was.
func TestOlderCataloguesAreRead(t *testing.T) {
	for version, want := range map[int]struct{ faults, doubles int }{1: {49, 0}, 2: {55, 6}, 3: {55, 6}, 4: {55, 6}} {
		text, err := os.ReadFile(fmt.Sprintf("testdata/faults_v%d.json", version))
		require.NoError(t, err)
		list, err := fault.Decode(text)
		require.NoError(t, err)
		require.Len(t, list.Faults, want.faults)
		doubles := 0
		for _, f := range list.Faults {
			if f.Double() {
				doubles++
			}
		}
		require.Equal(t, want.doubles, doubles, "version %d", version)
	}
}

// Sets of parts are equal whatever order they are told in.
func TestSetsOfParts(t *testing.T) {
	both := fault.PartsOf(check.Regulator, check.Battery)
	require.Equal(t, fault.PartsOf(check.Battery, check.Regulator, "", check.Battery), both)
	require.Equal(t, []check.Part{check.Battery, check.Regulator}, both.List())
	require.Equal(t, "battery and regulator", both.String())
	none, one := fault.PartsOf(), fault.PartsOf(check.Battery)
	require.Equal(t, []int{0, 1, 2}, []int{none.Size(), one.Size(), both.Size()})
	require.Equal(t, none, fault.Parts{})
	require.True(t, none.None() && !one.None())
	require.True(t, one.Within(both) && none.Within(one) && !both.Within(one))
	require.True(t, both.Has(check.Regulator) && !both.Has(check.Wiring) && !one.Has(""))
	require.Negative(t, one.Compare(both))
	require.Panics(t, func() { fault.PartsOf(check.Battery, check.Regulator, check.Wiring) })
}
