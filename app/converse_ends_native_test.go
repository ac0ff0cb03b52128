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
	for _, s := range []fault.Symptom{fault.WontCharge, fault.NoSpark, fault.OnTheBench} {
		for _, says := range []string{
			`{"reading":"OL"}`, `{"reading":"jumps"}`, `{"number":0}`, `{"number":1}`, `{"number":1e6}`, `{"yes":true}`, `{"refuse":true}`, `soup`,
		} {
			code, out, bad := conversed(t, `{"symptom":"`+string(s)+`","adapterMicrofarads":1}`+"\n"+strings.Repeat(says+"\n", lines))
			require.Equal(t, exitDone, code, bad)
			asks := 0
			for _, line := range out {
				asks += strings.Count(line, `{"ask":`)
			}
			assert.Less(t, asks, 200, "%s: %s", s, says)
			f := concluded(t, out)
			assert.GreaterOrEqual(t, f.Probability+f.Unlisted, 0.0)
			if strings.HasPrefix(says, `{"refuse`) {
				assert.Equal(t, "not settled", string(f.Action), "%s", s)
			}
		}
	}
}

// A reading that decides much is asked for once more; the second answer counts
// beside the first, and a slip loses its say.
func TestAnEarlySlipIsAskedForAgain(t *testing.T) {
	first := `{"symptom":"wont-charge","leadsOhms":0.3}` + "\n" + `{"check":"battery-rest","reading":"12.6"}` + "\n" +
		`{"check":"charge-core-1","reading":"0.0005"}` + "\n" + `{"check":"charge-core-2","reading":"OL"}` + "\n"
	in := first
	again := 0
	for range 40 {
		code, out, bad := conversed(t, in)
		require.Equal(t, exitDone, code, bad)
		if len(out) < 2 {
			break
		}
		var last askLine
		require.NoError(t, json.Unmarshal([]byte(out[len(out)-2]), &last))
		if last.Ask.Check == "charge-core-1" && last.Ask.Again {
			again++
			with := in + `{"reading":"OL"}` + "\n"
			before, after := concluded(t, out), func() finding { _, o, _ := conversed(t, with); return concluded(t, o) }()
			assert.Equal(t, before.Checks+1, after.Checks, "it counts beside")
			part := func(f finding) (p float64) {
				for _, s := range f.Suspects {
					if s.Part == "charge-winding" {
						p += s.Probability
					}
				}
				return p
			}
			assert.Less(t, part(after), part(before)/2)
			break
		}
		if strings.Count(in, "\n") > 30 {
			break
		}
		in += `{"refuse":true}` + "\n"
	}
	assert.Equal(t, 1, again)
}
