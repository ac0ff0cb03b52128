//go:build !js

package main

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/fault"
)

// Whoever says the same to everything still gets a finding, and long before the
// patience of the other side ends: what cannot be used is left out.
func TestDialoguesEndWhateverIsSaid(t *testing.T) {
	const lines = 300
	for _, s := range []fault.Symptom{fault.NoSpark, fault.OnTheBench} {
		for _, says := range []string{
			`{"reading":"OL"}`, `{"reading":"jumps"}`, `{"number":1}`, `{"yes":true}`, `{"refuse":true}`, `soup`,
		} {
			code, out, bad := conversed(t, `{"symptom":"`+string(s)+`","adapterMicrofarads":1}`+"\n"+strings.Repeat(says+"\n", lines))
			require.Equal(t, exitDone, code, bad)
			asks := 0
			for _, line := range out {
				asks += strings.Count(line, `{"ask":`)
			}
			assert.Less(t, asks, 200, "%s: %s", s, says)
			f := concluded(t, out)
			whole := f.Unlisted
			for _, one := range f.Suspects {
				whole += one.Probability
			}
			assert.Len(t, f.Suspects, named, "%s: %s", s, says)
			assert.Greater(t, whole, 0.4, "%s: %s: the likeliest and the unlisted hold most", s, says)
			assert.LessOrEqual(t, whole, 1+1e-3, "%s: %s", s, says)
			if strings.HasPrefix(says, `{"refuse`) {
				assert.Equal(t, "not settled", string(f.Action), "%s", s)
			}
		}
	}
}

// A reading that decides much is asked for once more; the second answer counts
// beside the first, and a slip loses its say.
func TestAnEarlySlipIsAskedForAgain(t *testing.T) {
	in := []string{
		`{"symptom":"wont-charge","leadsOhms":0.3}`, `{"check":"battery-rest","reading":"12.6"}`, `{"check":"charge-core-1","reading":"0.0005"}`,
	}
	code, first, bad := conversed(t, strings.Join(in, "\n"))
	require.Equal(t, exitDone, code, bad)
	var l askLine
	require.NoError(t, json.Unmarshal([]byte(first[len(first)-2]), &l))
	require.Equal(t, "charge-core-1", string(l.Ask.Check))
	require.True(t, l.Ask.Again)
	_, second, _ := conversed(t, strings.Join(append(in, `{"reading":"OL"}`), "\n"))
	before, after := concluded(t, first), concluded(t, second)
	winding := func(f finding) (p float64) {
		for _, s := range f.Suspects {
			if s.Part == "charge-winding" {
				p += s.Probability
			}
		}
		return p
	}
	assert.Equal(t, before.Checks+1, after.Checks, "it counts beside")
	assert.Less(t, winding(after), winding(before)/2)
}
