package fault_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/fault"
)

// The bundled catalogue says for each complaint how often the fault is none of it, and
// why that is thought; one of before it could say so is weighed as it was then.
func TestWhatIsSupposedBesideTheFaults(t *testing.T) {
	now, err := fault.Bundled()
	require.NoError(t, err)
	text, err := os.ReadFile("testdata/faults_v2.json")
	require.NoError(t, err)
	then, err := fault.Decode(text)
	require.NoError(t, err)
	for _, s := range fault.Symptoms() {
		u := now.Unlisted[s]
		assert.NotEmpty(t, u.Because, s)
		assert.True(t, u.Share > 0 && u.Share <= 0.1, s)
		assert.Less(t, u.Unseen, 1.0, s)
		assert.Equal(t, 0.04, then.Unlisted[s].Share, s)
		assert.Zero(t, then.Unlisted[s].Unseen, s)
	}
	assert.Equal(t, 0.015, then.Slips.Share)
	assert.NotEmpty(t, now.Slips.Because)
}

func TestABadSuppositionSaysWhere(t *testing.T) {
	const good = `{"format":"coilbook faults","version":3,"slips":{"share":0.01,"because":"x"},` +
		`"unlisted":{"no-spark":{"share":0.02,"unseen":0.25,"because":"y"}},` +
		`"faults":[{"id":"box-dead","kind":"box-dead","weights":{"no-spark":2},"because":"x"}]}`
	list, err := fault.Decode([]byte(good))
	require.NoError(t, err)
	require.Equal(t, fault.Unlisted{Share: 0.02, Unseen: 0.25, Because: "y"}, list.Unlisted[fault.NoSpark])
	require.Zero(t, list.Unlisted[fault.WontCharge], "left out: the list is whole")
	for old, c := range map[string][2]string{
		`"version":3`:                           {`"version":2`, "use version 3"},
		`"slips":{"share":0.01,"because":"x"},`: {``, "slips are missing"},
		`"slips":{"share":0.01`:                 {`"slips":{"share":0.6`, "slips: share 0.6"},
		`"slips":{"share":0.01,"because":"x"}`:  {`"slips":{"share":0.01,"because":""}`, "slips: because is empty"},
		`"unlisted":{"no-spark"`:                {`"unlisted":{"magic"`, `symptom "magic"`},
		`"share":0.02`:                          {`"share":1`, "share 1 for no-spark"},
		`"unseen":0.25`:                         {`"unseen":-0.1`, "unseen -0.1 for no-spark"},
		`"because":"y"`:                         {`"because":""`, "because is empty for no-spark"},
		`"share":0.02,"unseen"`:                 {`"share":0.02,"unsen"`, "unsen"},
	} {
		bad := strings.Replace(good, old, c[0], 1)
		require.NotEqual(t, good, bad, old)
		_, err := fault.Decode([]byte(bad))
		require.ErrorContains(t, err, c[1], old)
	}
}
