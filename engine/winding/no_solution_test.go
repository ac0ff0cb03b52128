package winding_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/quantity"
	"coilbook/engine/uncertainty"
	"coilbook/engine/winding"
)

var openLine = quantity.Ohm(math.Inf(1))

func unsolved(t *testing.T, c winding.Connection, p winding.Pairs, u float64) *winding.NoSolution {
	t.Helper()
	_, _, err := c.Solve(p, uncertainty.Independent(u, u, u))
	var none *winding.NoSolution
	require.ErrorAs(t, err, &none, "%v %v", c, p)
	assert.Equal(t, c, none.Connection)
	return none
}

func TestNoSolutionSaysWhatItMeans(t *testing.T) {
	missing := quantity.Ohm(math.NaN())
	for _, c := range bothConnections {
		for meaning, all := range map[winding.Meaning][]winding.Pairs{
			winding.MissingReading: {{missing, 1, 1}, {openLine, openLine, missing}, {1, -openLine, 1}},
			winding.OpenLine:       {{openLine, 2, openLine}, {openLine, openLine, openLine}},
			winding.Contradiction:  {{openLine, 2, 2}, {1, 2.1, 1}, {-0.1, 2, 2}, {0, 1, 2}},
			winding.NothingLeft:    {{1, 2.001, 1}},
		} {
			for _, p := range all {
				assert.Equal(t, meaning, unsolved(t, c, p, 0.001).Meaning, "%v %v", c, p)
			}
		}
	}
}

func TestNoSolutionNamesTheTerminal(t *testing.T) {
	none := unsolved(t, winding.Star, winding.Pairs{2.1, 1, 1}, 0.001)
	assert.Equal(t, 2, none.Terminal, "AB is more than BC and CA: nothing is left for C")
	assert.InDelta(t, -0.05, none.Leg, 1e-12)
	assert.InEpsilon(t, math.Sqrt(3)/2*0.001, none.Std, 1e-6)
	assert.EqualError(t, none, "winding: no star: the readings contradict each other")

	assert.Equal(t, winding.NothingLeft, unsolved(t, winding.Star, winding.Pairs{2.1, 1, 1}, 0.05).Meaning,
		"the same with a coarser meter")
}

// A shorted phase solves a star, with nothing in that phase; the delta that reads
// the same has an open branch, which has no resistance to give.
func TestAPhaseOfNothing(t *testing.T) {
	p := winding.Pairs{1, 2, 1}
	star, _ := solved(t, winding.Star, p, uncertainty.Independent(0.001, 0.001, 0.001))
	assert.Equal(t, winding.Phases{0, 1, 1}, star)
	assert.Equal(t, winding.NothingLeft, unsolved(t, winding.Delta, p, 0.001).Meaning)
	assert.Equal(t, winding.NothingLeft, unsolved(t, winding.Delta, p, 0).Meaning)
}

// A delta is solved only while every leg is told from zero: here, leg A is 0.05.
func TestADeltaNeedsEveryLegToldFromZero(t *testing.T) {
	p := winding.Pairs{1.05, 2, 1.05}
	gain := math.Sqrt(3) / 2
	_, _, err := winding.Delta.Solve(p, uncertainty.Independent(0.05/1.646/gain, 0.05/1.646/gain, 0.05/1.646/gain))
	assert.NoError(t, err)
	assert.Equal(t, winding.NothingLeft, unsolved(t, winding.Delta, p, 0.05/1.644/gain).Meaning)
}
