package trial_test

import (
	"flag"
	"fmt"
	"math"
	"runtime"
	"slices"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
)

var (
	machines = flag.Int("machines", 1000, "hidden machines for each symptom of the benchmark")
	seed     = flag.Uint64("seed", 1000, "of the hidden machines; never tune on 1000")
)

// policy picks the next check; ok is false when it is done.
type policy struct {
	name string
	next func(m *diagnose.Model, s diagnose.Suspects, ev []diagnose.Evidence, done []check.ID) (c diagnose.Choice, ok bool)
	full bool // goes on when it is sure
}

var policies = []policy{
	{name: "ours", next: mostPerMinute},
	{name: "checklist", next: inOrder},
	{name: "checklist in full", next: inOrder, full: true},
}

// mostPerMinute is the policy of a conversation.
func mostPerMinute(m *diagnose.Model, s diagnose.Suspects, ev []diagnose.Evidence, done []check.ID) (diagnose.Choice, bool) {
	return diagnose.Best(m.Next(s, ev, done, nil))
}

// inOrder goes from what is got at easily to what is not.
func inOrder(m *diagnose.Model, s diagnose.Suspects, ev []diagnose.Evidence, done []check.ID) (diagnose.Choice, bool) {
	next := m.Next(s, ev, done, nil)
	if len(next) == 0 {
		return diagnose.Choice{}, false
	}
	access := func(c diagnose.Choice) float64 {
		sum := 0.0
		for _, a := range c.Check.Needs {
			sum += a.Minutes()
		}
		return sum
	}
	return slices.MinFunc(next, func(a, b diagnose.Choice) int {
		switch d := access(a) - access(b); {
		case d < 0:
			return -1
		case d > 0:
			return 1
		}
		return slices.IndexFunc(m.Checks, func(c check.Check) bool { return c.ID == a.Check.ID }) -
			slices.IndexFunc(m.Checks, func(c check.Check) bool { return c.ID == b.Check.ID })
	}), true
}

// verdict is how a diagnosis ended.
type verdict struct {
	suspects diagnose.Suspects
	checks   int
	minutes  float64
}

// sureOf is from where a part is said to be named; mostChecks also counts those
// that a machine does not answer.
const (
	sureOf     = 0.95
	mostChecks = 25
)

func (p policy) diagnose(m *diagnose.Model, of *patient) verdict {
	var ev []diagnose.Evidence
	var done []check.ID
	var out verdict
	for {
		out.suspects = m.Weigh(ev)
		if !p.full && (out.suspects.Enough(len(ev)) || len(done) >= mostChecks) {
			return out
		}
		c, ok := p.next(m, out.suspects, ev, done)
		if !ok {
			return out
		}
		done = append(done, c.Check.ID)
		out.checks++
		out.minutes += c.Minutes
		if e, told := of.says(c.Check); told {
			ev = append(ev, e)
		}
	}
}

// tally is what many diagnoses come to.
type tally struct {
	n, part, fault, checks, sure, wrongSure, sound, condemned, strange int
	minutes                                                            []float64
	bins                                                               [10]struct{ n, right, p float64 }
}

func (t *tally) add(v verdict, truth fault.Fault) {
	part, p := v.suspects.Part()
	right := part == truth.Part()
	t.n++
	t.checks += v.checks
	t.minutes = append(t.minutes, v.minutes)
	b := &t.bins[min(int(p*10), 9)]
	b.n++
	b.p += p
	if right {
		t.part++
		b.right++
	}
	if v.suspects.Faults[0].Fault.ID == truth.ID {
		t.fault++
	}
	if p >= 0.9 {
		t.sure++
		if !right {
			t.wrongSure++
		}
	}
	if truth.Part() != check.ChargeWinding {
		t.sound++
		if part == check.ChargeWinding && p >= 0.5 {
			t.condemned++
		}
	}
	if v.suspects.Strange > 0.99 {
		t.strange++
	}
}

func (t *tally) share(n, of int) float64 { return float64(n) / math.Max(float64(of), 1) }

func (t *tally) calibration() float64 {
	off := 0.0
	for _, b := range t.bins {
		off += math.Abs(b.p-b.right) / float64(t.n)
	}
	return off
}

func (t *tally) mean() float64 {
	sum := 0.0
	for _, x := range t.minutes {
		sum += x / float64(len(t.minutes))
	}
	return sum
}

func (t *tally) report(b *testing.B) {
	slices.Sort(t.minutes)
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(t.share(t.part, t.n), "part-right")
	b.ReportMetric(t.share(t.fault, t.n), "fault-right")
	b.ReportMetric(t.mean(), "minutes-mean")
	b.ReportMetric(t.minutes[t.n/2], "minutes-median")
	b.ReportMetric(t.share(t.checks, t.n), "checks")
	b.ReportMetric(t.share(t.wrongSure, t.sure), "wrong-when-sure")
	b.ReportMetric(t.calibration(), "calibration-error")
	b.ReportMetric(t.share(t.condemned, t.sound), "sound-stator-condemned")
}

type modelKey struct {
	symptom fault.Symptom
	build   check.Build
	without fault.ID
}

var (
	modelsLock sync.Mutex
	models     = map[modelKey]*diagnose.Model{}
)

// modelFor is shared by all patients of a build; without leaves a fault out of the
// catalogue.
func modelFor(s fault.Symptom, b machine.Build, without fault.ID) *diagnose.Model {
	modelsLock.Lock()
	defer modelsLock.Unlock()
	key := modelKey{s, b.Known(), without}
	if models[key] == nil {
		faults := slices.DeleteFunc(slices.Clone(catalogue()), func(f fault.Fault) bool { return f.ID == without })
		models[key] = diagnose.New(diagnose.Question{Symptom: s, Build: key.build, Meter: meter.Cheap()}, faults).Ready()
	}
	return models[key]
}

var catalogue = sync.OnceValue(func() []fault.Fault {
	faults, err := fault.Bundled()
	if err != nil {
		panic(err)
	}
	return faults
})

func patients(s fault.Symptom, n int, seed uint64) []*patient {
	out := make([]*patient, n)
	var group sync.WaitGroup
	for part := range 2 {
		group.Go(func() {
			for i := part; i < n; i += 2 {
				number := seed<<20 + uint64(i)<<4 + uint64(len(s))
				out[i] = &patient{hidden: draw(s, catalogue(), machine.NewChance(number)), number: number, answers: map[check.ID]diagnose.Evidence{}}
			}
		})
	}
	group.Wait()
	return out
}

// The benchmark of the diagnosis: the same hidden machines for every policy.
func BenchmarkDiagnosis(b *testing.B) {
	for _, s := range []fault.Symptom{fault.WontCharge, fault.NoSpark, fault.Overcharges, fault.CutsOutHot} {
		hidden := patients(s, *machines, *seed)
		for _, p := range policies {
			b.Run(fmt.Sprintf("%s/%s", s, p.name), func(b *testing.B) {
				for range b.N {
					var t tally
					for _, one := range hidden {
						t.add(p.diagnose(modelFor(s, one.build, ""), one), one.f)
					}
					t.report(b)
				}
			})
		}
	}
}

// What happens when the fault is none of the catalogue: the machine has one that
// was taken out of it.
func BenchmarkUnknownFault(b *testing.B) {
	for _, s := range []fault.Symptom{fault.WontCharge, fault.NoSpark} {
		b.Run(string(s), func(b *testing.B) {
			for range b.N {
				var t tally
				wrong := 0
				for _, one := range patients(s, min(*machines, 100), *seed+1) {
					if one.f.ID == fault.None {
						continue
					}
					v := policies[0].diagnose(modelFor(s, one.build, one.f.ID), one)
					t.add(v, one.f)
					if _, p := v.suspects.Part(); p >= sureOf && v.suspects.Strange <= 0.99 {
						wrong++
					}
				}
				b.ReportMetric(0, "ns/op")
				b.ReportMetric(t.share(t.strange, t.n), "called-strange")
				b.ReportMetric(t.share(wrong, t.n), "sure-of-something")
			}
		})
	}
}

// What one reading costs that is off by a place, or a false open line: a reading of
// those that were asked for, chosen at random.
func BenchmarkOneSlip(b *testing.B) {
	for _, s := range []fault.Symptom{fault.WontCharge, fault.NoSpark} {
		b.Run(string(s), func(b *testing.B) {
			for range b.N {
				var t tally
				for _, one := range patients(s, min(*machines, 300), *seed+2) {
					m := modelFor(s, one.build, "")
					policies[0].diagnose(m, one)
					one.slipOne(m)
					t.add(policies[0].diagnose(m, one), one.f)
				}
				b.ReportMetric(0, "ns/op")
				b.ReportMetric(t.share(t.part, t.n), "part-right")
				b.ReportMetric(t.share(t.wrongSure, t.sure), "wrong-when-sure")
			}
		})
	}
}

// slipOne spoils one of the readings that were asked for.
func (p *patient) slipOne(m *diagnose.Model) {
	var asked []check.ID
	for _, c := range m.Checks {
		if e, ok := p.answers[c.ID]; ok && e.Check != "" && c.Instrument == check.Multimeter {
			asked = append(asked, c.ID)
		}
	}
	if len(asked) == 0 {
		return
	}
	p.spoil = asked[machine.NewChance(p.number+1).Pick(len(asked))]
	delete(p.answers, p.spoil)
}

// A diagnosis with the policy finds most parts and is seldom wrong when sure: a
// small run of the benchmark, on machines of its own.
func TestTheDiagnosisFindsMostParts(t *testing.T) {
	if testing.Short() || runtime.GOOS == "js" {
		t.Skip("dozens of machines are simulated natively alone")
	}
	for _, c := range []struct {
		symptom fault.Symptom
		least   float64
	}{{fault.WontCharge, 0.8}, {fault.NoSpark, 0.75}} {
		var total tally
		for _, one := range patients(c.symptom, 48, 5) {
			total.add(policies[0].diagnose(modelFor(c.symptom, one.build, ""), one), one.f)
		}
		t.Logf("%s: part %.2f, %.1f minutes, wrong when sure %d of %d", c.symptom, total.share(total.part, total.n), total.mean(), total.wrongSure, total.sure)
		require.Equal(t, 48, total.n)
		assert.GreaterOrEqual(t, total.share(total.part, total.n), c.least, c.symptom)
		assert.LessOrEqual(t, total.wrongSure, 3, c.symptom)
	}
}

// Whoever asks a hidden machine twice gets the same answer.
func TestPatientsAreConstant(t *testing.T) {
	a, b := patients(fault.NoSpark, 2, 9), patients(fault.NoSpark, 2, 9)
	for i := range a {
		require.Equal(t, a[i].f, b[i].f)
		for _, c := range check.Whole(a[i].build.Known()) {
			x, _ := a[i].says(c)
			y, _ := b[i].says(c)
			require.Equal(t, x, y, c.ID)
		}
	}
}
