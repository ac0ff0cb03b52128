package fault_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/fault"
	"coilbook/engine/machine"
)

// Every kind of fault that a machine can have is in the catalogue, with a weight
// for some complaint; every complaint has faults and the possibility of none.
func TestTheCatalogueIsWhole(t *testing.T) {
	faults, err := fault.Bundled()
	require.NoError(t, err)
	kinds, symptoms, none := map[machine.Kind]bool{}, map[fault.Symptom]int{}, map[fault.Symptom]bool{}
	for _, f := range faults {
		kinds[f.Kind] = true
		for s := range f.Weights {
			symptoms[s]++
			none[s] = none[s] || f.ID == fault.None
		}
		assert.Equal(t, f.ID == fault.None, f.Part() == "")
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
		`"version":1`:               {`"version":2`, "version 2"},
		`"id":"box-dead"`:           {`"id":"box"`, `asks for the id "box-dead"`},
		`"kind":"box-dead"`:         {`"kind":"gremlin"`, `fault "box-dead"`},
		`"no-spark":2`:              {`"no-spark":0`, "not above zero"},
		`{"no-spark":2}`:            {`{"magic":2}`, `"magic" is not known`},
		`"because":"x"`:             {`"because":""`, "because is empty"},
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
