package meter

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Two-sided 95 % limits of Student's t: JCGM 100:2008, table G.2, from memory.
var studentTable = map[int]float64{
	1: 12.71, 2: 4.30, 3: 3.18, 4: 2.78, 5: 2.57, 6: 2.45, 7: 2.36, 8: 2.31, 9: 2.26, 10: 2.23,
	12: 2.18, 15: 2.13, 20: 2.09, 30: 2.04, 50: 2.01, 100: 1.984,
}

func TestStudentIsThatOfTheTable(t *testing.T) {
	for freedom, want := range studentTable {
		assert.InDelta(t, want, studentLimit(0.05, freedom), 0.006, "%d degrees of freedom", freedom)
	}
	assert.InDelta(t, 1.95996, studentLimit(0.05, 100000), 5e-5, "normal in the end")
}

// The finite sums against the density, integrated by the midpoint rule after
// x = √ν·tan φ, which makes it (cos φ)^(ν−1) over an angle.
func TestStudentIsTheIntegralOfItsDensity(t *testing.T) {
	for _, freedom := range []int{1, 2, 3, 4, 5, 8, 13, 40} {
		weight := func(from, to float64) float64 {
			const n = 20000
			sum := 0.0
			for i := range n {
				sum += math.Pow(math.Cos(from+(to-from)*(float64(i)+0.5)/n), float64(freedom-1)) * (to - from) / n
			}
			return sum
		}
		for _, x := range []float64{0.1, 1, 2.5, 9} {
			angle := math.Atan(x / math.Sqrt(float64(freedom)))
			want := weight(angle, math.Pi/2) / weight(0, math.Pi/2)
			assert.InDelta(t, want, studentTail(x, freedom), 1e-7, "t %v, %d degrees of freedom", x, freedom)
		}
	}
}

// Critical values of Grubbs' test, two-sided, 5 %: as printed in ISO 5725-2,
// table 5, from memory. The three-decimal values are checked by calculation and
// by simulation below.
var grubbsTable = map[int]float64{
	4: 1.481, 5: 1.715, 6: 1.887, 7: 2.020, 8: 2.126, 9: 2.215, 10: 2.290,
	11: 2.355, 12: 2.412, 13: 2.462, 14: 2.507, 15: 2.549, 20: 2.709,
}

func TestGrubbsIsThatOfTheTable(t *testing.T) {
	for n, want := range grubbsTable {
		assert.InDelta(t, want, grubbs(n), 0.0015, "%d readings", n)
	}
	for n := leastForOutlier; n < 30; n++ {
		assert.Less(t, grubbs(n), float64(n-1)/math.Sqrt(float64(n)), "%d readings: it can be passed at all", n)
	}
}

// Honest readings are accused as often as the test says. Fixed seed.
func TestGrubbsAccusesOneInTwenty(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	for _, n := range []int{4, 5, 7, 10, 20} {
		accused, sets := 0, 20000
		for range sets {
			values := make([]float64, n)
			for i := range values {
				values[i] = 100 + random.NormFloat64()
			}
			if outlier(values, 0) >= 0 {
				accused++
			}
		}
		assert.InDelta(t, outlierChance, float64(accused)/float64(sets), 0.005, "%d readings", n)
	}
}

func TestOutliers(t *testing.T) {
	for _, c := range []struct {
		name   string
		values []float64
		want   int
	}{
		{"the last", []float64{1.1, 1.1, 1.2, 1.1, 1.9}, 4},
		{"the first, too low", []float64{0.2, 1.1, 1.2, 1.1, 1.1}, 0},
		{"of four, the third", []float64{1.1, 1.1, 1.9, 1.1}, 2},
		{"a flipping digit", []float64{1.1, 1.1, 1.1, 1.1, 1.2}, -1},
		{"a display at rest", []float64{1.1, 1.1, 1.1, 1.1}, -1},
		{"of three none", []float64{1.1, 1.1, 9.9}, -1},
		{"two hide each other", []float64{1.1, 1.1, 1.1, 5, 5}, -1},
		{"even scatter", []float64{1, 2, 3, 4, 5}, -1},
		{"none", nil, -1},
	} {
		assert.Equal(t, c.want, outlier(c.values, 0.1/math.Sqrt(12)), c.name)
		assert.Equal(t, c.want, outlier(scaled(c.values, 1e4), 1e3/math.Sqrt(12)), "%s, other units", c.name)
		assert.Equal(t, c.want, outlier(scaled(c.values, -1), 0.1/math.Sqrt(12)), "%s, other sign", c.name)
	}
}

func scaled(values []float64, k float64) []float64 {
	out := make([]float64, len(values))
	for i, v := range values {
		out[i] = k * v
	}
	return out
}

func TestMedian(t *testing.T) {
	assert.InDelta(t, 2, median([]float64{3, 1, 2}), 1e-15)
	assert.InDelta(t, 2.5, median([]float64{4, 1, 3, 2}), 1e-15)
}
