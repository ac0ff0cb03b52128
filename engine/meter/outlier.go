package meter

import (
	"math"
	"slices"
)

const (
	// outlierChance is how often honest readings are asked for again. Two-sided
	// Grubbs test at the usual level (Grubbs 1969; ISO 5725-2, 7.3.4, from
	// memory).
	outlierChance = 0.05
	// outlierOwn is how many own doubts of one reading an outlier lies at least
	// from the middle of all: a last digit that flips between two numbers is
	// 3.46 away. An assumption, no source.
	outlierOwn = 4
	// leastForOutlier: of three readings none can be accused (the largest
	// possible value of the test hardly passes its critical one).
	leastForOutlier = 4
)

// outlier finds the reading that the others speak against, or -1. It finds one
// at a time: two that agree with each other hide each other.
func outlier(values []float64, own float64) int {
	n := len(values)
	if n < leastForOutlier {
		return -1
	}
	mean, scatter := meanAndScatter(values)
	furthest, middle := 0, median(values)
	for i, v := range values {
		if math.Abs(v-mean) > math.Abs(values[furthest]-mean) {
			furthest = i
		}
	}
	v := values[furthest]
	if math.Abs(v-mean) > grubbs(n)*scatter && math.Abs(v-middle) > outlierOwn*own {
		return furthest
	}
	return -1
}

// grubbs is the critical value of the largest distance from the mean over the
// scatter of n readings.
func grubbs(n int) float64 {
	t := studentLimit(outlierChance/float64(n), n-2)
	count := float64(n)
	return (count - 1) / math.Sqrt(count) * math.Sqrt(t*t/(count-2+t*t))
}

// meanAndScatter gives the mean and the experimental standard deviation (JCGM
// 100:2008, 4.2.1 and 4.2.2, from memory); of one reading nothing scatters.
func meanAndScatter(values []float64) (mean, scatter float64) {
	n := float64(len(values))
	for _, v := range values {
		mean += v / n
	}
	if len(values) < 2 {
		return mean, 0
	}
	sum := 0.0
	for _, v := range values {
		sum += (v - mean) * (v - mean)
	}
	return mean, math.Sqrt(sum / (n - 1))
}

func median(values []float64) float64 {
	sorted := slices.Sorted(slices.Values(values))
	n := len(sorted)
	return (sorted[(n-1)/2] + sorted[n/2]) / 2
}
