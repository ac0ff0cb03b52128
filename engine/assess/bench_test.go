package assess_test

import (
	"math/rand/v2"
	"testing"
	"time"

	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/session"
	"coilbook/engine/spec"
)

// BenchmarkVerdict times one verdict, from the typed text to the outcome, and
// sets it against the plain alternative timed in the same run: drawing the true
// value 1000 times from the same doubt and counting those within the limit.
func BenchmarkVerdict(b *testing.B) {
	bench := opened(b, setup(check.DefaultBuild()))
	pair, _ := check.Find(bench.Plan, "charge-pair-1-2")
	reading := session.Reading{Check: pair.ID, Text: "1.1", Unit: "Ω"}
	var line assess.Line
	for b.Loop() {
		line = bench.Judge(pair, reading)
	}
	each := b.Elapsed() / time.Duration(b.N)

	const runs = 200
	random := rand.New(rand.NewPCG(1, 1))
	started := time.Now()
	for range runs {
		drawn(random, line.Verdict)
	}
	drawing := time.Since(started) / runs
	b.ReportMetric(float64(drawing)/float64(max(each, 1)), "x-faster-than-1000-draws")
}

func drawn(random *rand.Rand, v spec.Verdict) float64 {
	within := 0
	for range 1000 {
		if x := v.Value + v.Std*random.NormFloat64(); x >= v.Limit.Low && x <= v.Limit.High {
			within++
		}
	}
	return float64(within) / 1000
}

// BenchmarkReport times a whole session's report, balance and all.
func BenchmarkReport(b *testing.B) {
	bench := opened(b, setup(check.DefaultBuild()), read("lead-zero", "0.2"), read("charge-pair-1-2", "1.1"),
		read("charge-pair-2-3", "1.1"), read("charge-pair-3-1", "1.1"), read("pickup", "212"))
	for b.Loop() {
		bench.Report()
	}
}
