//go:build !js

package main

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/machine"
)

// Every ask says why, within the schema; the finding names the answers behind it.
func TestADialogueGivesItsReasons(t *testing.T) {
	schema := converseSchema(t)
	p := beside(t, `{"symptom":"no-spark"}`, machine.Fault{Kind: machine.ExciterOpen})
	for _, line := range p.heard[:len(p.heard)-1] {
		assertLine(t, schema, line)
		var l askLine
		require.NoError(t, json.Unmarshal([]byte(line), &l))
		w := l.Ask.Why
		require.NotNil(t, w)
		assert.GreaterOrEqual(t, w.Expected, w.Now)
		assert.Positive(t, w.Bits)
		sum := 0.0
		for i, o := range w.Outcomes {
			sum += o.Chance
			looked := l.Ask.Instrument == "eyes"
			assert.Equal(t, looked, o.Answer == answerYes || o.Answer == answerNo, o.Answer)
			assert.True(t, o.Answer == answerNumber || o.Low == nil && o.High == nil)
			if i > 0 && o.Low != nil && w.Outcomes[i-1].High != nil {
				assert.Equal(t, *w.Outcomes[i-1].High, *o.Low, "spans follow each other")
			}
		}
		assert.InDelta(t, 1, sum, 0.1)
	}
	last := p.heard[len(p.heard)-1]
	assertLine(t, schema, last)
	f := concluded(t, p.heard)
	require.NotEmpty(t, f.Reasons)
	assert.Equal(t, f.Suspects[0].Fault, f.Reasons[0].Fault)
	require.NotEmpty(t, f.Reasons[0].For)
	for _, s := range f.Reasons {
		for _, r := range s.For {
			assert.Positive(t, r.Bits)
		}
		for _, r := range s.Against {
			assert.LessOrEqual(t, r.Bits, 0.0)
		}
	}
}

func TestAReasonHoldsWhatWasRead(t *testing.T) {
	code, lines, _ := conversed(t, strings.Join([]string{
		`{"symptom":"wont-charge"}`, `{"check":"fuse","yes":true}`, `{"check":"battery-5000","reading":"12.3","unit":"V"}`,
		`{"check":"charge-core-1","reading":"OL"}`,
	}, "\n")+"\n")
	require.Equal(t, exitDone, code)
	f := concluded(t, lines)
	seen := map[check.ID]reason{}
	for _, s := range f.Reasons {
		for _, r := range append(s.For, s.Against...) {
			seen[r.Check] = r
		}
	}
	require.Contains(t, seen, check.ID("fuse"))
	assert.Equal(t, answerYes, seen["fuse"].Answer)
	require.NotNil(t, seen["fuse"].Yes)
	assert.Nil(t, seen["fuse"].Open)
	if r, ok := seen["battery-5000"]; ok {
		require.NotNil(t, r.Number)
		assert.InDelta(t, 12.3, *r.Number, 1e-9)
		assert.LessOrEqual(t, *r.Low, *r.High)
	}
}

// A stator on the bench is asked only what can be read there.
func TestTheBenchIsAskedAboutTheStatorAlone(t *testing.T) {
	_, lines, _ := conversed(t, `{"symptom":"bench"}`+"\n"+strings.Repeat(`{"refuse":true}`+"\n", 60))
	for _, line := range lines[:len(lines)-1] {
		var l askLine
		require.NoError(t, json.Unmarshal([]byte(line), &l))
		k, ok := check.Find(check.Whole(check.DefaultBuild()), l.Ask.Check)
		require.True(t, ok)
		assert.True(t, check.BareStator(k), k.ID)
		assert.Empty(t, l.Ask.Needs)
	}
	assert.Greater(t, len(lines), 5)
}

func TestANumberOfAReasonHasFourFigures(t *testing.T) {
	for v, want := range map[float64]float64{12.34567: 12.35, 0.000123456: 0.0001235, -999.86: -999.9, 0: 0, 1e300: 1e300} {
		require.NotNil(t, finite(v))
		assert.InEpsilon(t, want+1e-12, *finite(v)+1e-12, 1e-9)
	}
	assert.Nil(t, finite(math.Inf(1)))
	assert.Nil(t, finite(math.NaN()))
}
