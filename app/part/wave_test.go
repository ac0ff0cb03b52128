package part

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/app/drawing"
)

// waves are shapes that strain the plot.
var waves = map[string][]float64{
	"steady":   {12, 12, 12},
	"zero":     {0, 0, 0, 0},
	"below":    {-3, -1, -2},
	"high":     {-9000, 20000, 4},
	"tiny":     {0.001, -0.001},
	"one step": {0, 0.3},
}

func TestTheWaveStaysInItsFrame(t *testing.T) {
	for name, volts := range waves {
		for _, step := range []float64{1e-6, 2e-4, 0.01} {
			p := Wave(volts, step, "said")
			assert.Equal(t, "said", p.Label)
			require.NotEmpty(t, p.Shapes, name)
			lines := 0
			for _, s := range p.Shapes {
				path, ok := s.(drawing.Path)
				if !ok {
					continue
				}
				for _, at := range path.Steps {
					assert.True(t, at.P[2].X >= 0 && at.P[2].X <= p.Width && at.P[2].Y >= 0 && at.P[2].Y <= p.Height, "%s: %v", name, at)
				}
				if path.Class == "wave-line" {
					lines++
					assert.Len(t, path.Steps, len(volts))
				}
			}
			assert.Equal(t, 1, lines, name)
		}
	}
	assert.Empty(t, Wave(nil, 1e-4, "").Shapes)
	assert.Empty(t, Wave([]float64{1, 2}, 0, "").Shapes)
}

// A higher voltage stands higher, and zero has its own line.
func TestTheWaveIsTrue(t *testing.T) {
	p := Wave([]float64{0, 5, -5, 0}, 1e-3, "")
	var line, zero drawing.Path
	for _, s := range p.Shapes {
		if path, ok := s.(drawing.Path); ok && path.Class == "wave-line" {
			line = path
		} else if ok && path.Class == "bar-axis" && path.Steps[0].P[2].Y == path.Steps[1].P[2].Y {
			zero = path
		}
	}
	require.Len(t, line.Steps, 4)
	y := func(i int) float64 { return line.Steps[i].P[2].Y }
	assert.InDelta(t, zero.Steps[0].P[2].Y, y(0), 1e-9)
	assert.InDelta(t, y(0)-y(1), y(2)-y(0), 1e-9)
	assert.Less(t, y(1), y(0))
	assert.InDelta(t, line.Steps[1].P[2].X-line.Steps[0].P[2].X, line.Steps[2].P[2].X-line.Steps[1].P[2].X, 1e-9)
}

func TestTicksAreRoundAndFew(t *testing.T) {
	for _, span := range [][2]float64{{0, 1}, {-20, 20}, {0, 13.7}, {-0.11, 0.11}, {0, 8e3}, {-3e3, 1e4}, {0, 0.06}} {
		list := ticks(span[0], span[1])
		assert.True(t, len(list) >= 2 && len(list) <= 6, "%v: %v", span, list)
		for _, v := range list {
			assert.True(t, v >= span[0]-1e-9 && v <= span[1]+1e-9, "%v: %v", span, v)
			scaled := math.Abs(v) / math.Pow(10, math.Floor(math.Log10(math.Max(span[1], -span[0])))-2)
			assert.InDelta(t, math.Round(scaled), scaled, 1e-6, "%v", v)
		}
	}
	assert.Equal(t, "−0.3", plainNumber(-0.30000000000000004))
	assert.Equal(t, "20000", plainNumber(20000))
}
