package trial_test

import (
	"cmp"
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
	next func(c *diagnose.Conversation) (choice diagnose.Choice, ok bool)
}

var policies = []policy{
	{"ours", (*diagnose.Conversation).Ask},
	{"information per minute", bySheerInformation},
	{"checklist", untilSure(inOrder)},
	{"checklist in full", inOrder},
}

// bySheerInformation does what tells most in a minute, nothing twice.
func bySheerInformation(c *diagnose.Conversation) (diagnose.Choice, bool) {
	return untilSure(func(c *diagnose.Conversation) (diagnose.Choice, bool) {
		var best diagnose.Choice
		for _, one := range c.Choices() {
			if !one.Again && (best.Minutes == 0 || one.Worth() > best.Worth()) {
				best = one
			}
		}
		return c.Prepared(best), best.Minutes > 0 && best.Worth() >= fewBits
	})(c)
}

// fewBits in a minute are not worth it.
const fewBits = 0.009

// untilSure stops a policy where a conversation would.
func untilSure(of func(*diagnose.Conversation) (diagnose.Choice, bool)) func(*diagnose.Conversation) (diagnose.Choice, bool) {
	return func(c *diagnose.Conversation) (diagnose.Choice, bool) {
		if c.Suspects().Enough(len(c.Evidence())) {
			return diagnose.Choice{}, false
		}
		return of(c)
	}
}

// inOrder goes from what is got at easily to what is not.
func inOrder(c *diagnose.Conversation) (best diagnose.Choice, ok bool) {
	access := func(k check.Check) float64 {
		sum := 0.0
		for _, a := range k.Needs {
			sum += a.Minutes()
		}
		return sum
	}
	left := c.Left()
	if len(left) == 0 {
		return diagnose.Choice{}, false
	}
	first := slices.MinFunc(left, func(a, b check.Check) int { return cmp.Compare(access(a), access(b)) }) // the earlier of equals
	return c.Prepared(diagnose.Choice{Check: first}), true
}

// verdict is how a diagnosis ended.
type verdict struct {
	suspects diagnose.Suspects
	finding  diagnose.Finding
	checks   int
	minutes  float64
}

// mostAsked bounds a diagnosis, with the checks that a machine does not answer.
const mostAsked = 80

// diagnose holds a conversation with a patient, whose minutes count: a check that is
// refused costs none.
func (p policy) diagnose(m *diagnose.Model, of *patient) verdict {
	c := diagnose.Begin(m, nil)
	var out verdict
	for range mostAsked {
		choice, ok := p.next(c)
		if !ok {
			break
		}
		out.checks++
		of.answers(c, choice)
	}
	out.suspects, out.finding, out.minutes = c.Suspects(), c.Finding(), c.Minutes()
	return out
}

// tally is what many diagnoses come to.
type tally struct {
	n, part, fault, sure, wrongSure, sound, condemned, notListed, mayBe int
	doubles, both, oneOfTwo, extra                                      int
	checks                                                              []int
	minutes                                                             []float64
	bins                                                                [10]struct{ n, right, p float64 }
}

// add counts a diagnosis. The parts are right where all that are at fault are named and
// no other: of a double both. The probability that goes with them is of those that are
// named, whatever else is at fault, and is held to that.
func (t *tally) add(v verdict, truth fault.Fault) {
	parts, p := v.suspects.Named()
	is := truth.Parts()
	holds := parts == is || !parts.None() && parts.Within(is)
	t.n++
	switch {
	case !truth.Double() && parts.Size() > 1:
		t.extra++
	case truth.Double():
		t.doubles++
		if parts == is {
			t.both++
		} else if holds {
			t.oneOfTwo++
		}
	}
	t.checks = append(t.checks, v.checks)
	t.minutes = append(t.minutes, v.minutes)
	b := &t.bins[min(int(p*10), 9)]
	b.n++
	b.p += p
	if parts == is {
		t.part++
	}
	if holds {
		b.right++
	}
	if v.suspects.Faults[0].Fault.ID == truth.ID {
		t.fault++
	}
	if p >= 0.9 {
		t.sure++
		if !holds {
			t.wrongSure++
		}
	}
	if !is.Has(check.ChargeWinding) {
		t.sound++
		if parts.Has(check.ChargeWinding) && p >= 0.5 {
			t.condemned++
		}
	}
	switch {
	case v.finding.Action == diagnose.NotListed:
		t.notListed++
	case v.finding.Unlisted >= oneInTwenty:
		t.mayBe++
	}
}

// oneInTwenty is from where a finding says that the fault may be none of the list.
const oneInTwenty = 0.05

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

// goals are what the figures of our own policy should reach; 0 is none.
type goals struct {
	part, minutes, wrongSure, calibration, condemned float64
}

var goalsOf = map[fault.Symptom]goals{
	fault.WontCharge:  {part: 0.9, minutes: 16, wrongSure: 0.04, calibration: 0.05, condemned: 0.01},
	fault.NoSpark:     {part: 0.92, minutes: 22, wrongSure: 0.02, calibration: 0.03, condemned: 0.01},
	fault.Overcharges: {part: 0.97, condemned: 0.01},
	fault.CutsOutHot:  {part: 0.92, condemned: 0.01},
}

// figure reports a figure with its goal beside it.
func figure(b *testing.B, value float64, name, sign string, goal float64) {
	if goal > 0 {
		name += fmt.Sprintf("(%s%g)", sign, goal)
	}
	b.ReportMetric(value, name)
}

func (t *tally) report(b *testing.B, goal goals) {
	slices.Sort(t.minutes)
	slices.Sort(t.checks)
	b.ReportMetric(0, "ns/op")
	figure(b, t.share(t.part, t.n), "part-right", "≥", goal.part)
	figure(b, t.share(t.fault, t.n), "fault-right", "", 0)
	figure(b, t.mean(), "minutes-mean", "≤", goal.minutes)
	figure(b, t.minutes[t.n/2], "minutes-median", "", 0)
	figure(b, t.share(sum(t.checks), t.n), "checks-mean", "", 0)
	figure(b, float64(t.checks[t.n/2]), "checks-median", "", 0)
	figure(b, t.share(t.wrongSure, t.sure), "wrong-when-sure", "≤", goal.wrongSure)
	figure(b, t.calibration(), "calibration-error", "≤", goal.calibration)
	figure(b, t.share(t.condemned, t.sound), "sound-stator-condemned", "≤", goal.condemned)
	figure(b, t.share(t.notListed, t.n), "called-not-listed", "", 0)
	figure(b, t.share(t.extra, t.n-t.doubles), "singles-called-double", "", 0)
	t.reportDoubles(b)
}

// reportDoubles is how often both parts of a double are named, and how often one of
// them and no other.
func (t *tally) reportDoubles(b *testing.B) {
	if t.doubles == 0 {
		return
	}
	figure(b, t.share(t.part-t.both, t.n-t.doubles), "singles-part-right", "", 0)
	figure(b, float64(t.doubles), "doubles", "", 0)
	figure(b, t.share(t.both, t.doubles), "doubles-both-named", "", 0)
	figure(b, t.share(t.oneOfTwo, t.doubles), "doubles-one-of-two-named", "", 0)
}

func sum(list []int) int {
	out := 0
	for _, x := range list {
		out += x
	}
	return out
}

type modelKey struct {
	symptom fault.Symptom
	build   check.Build
	without fault.ID
	kit     machine.Kit
}

var (
	modelsLock sync.Mutex
	models     = map[modelKey]*diagnose.Model{}
)

// allDoubles leaves all of them out.
const allDoubles fault.ID = "doubles"

// modelFor is shared by all patients of a build; without leaves a fault out of the
// catalogue.
func modelFor(s fault.Symptom, b machine.Build, without fault.ID, kit machine.Kit) *diagnose.Model {
	modelsLock.Lock()
	defer modelsLock.Unlock()
	key := modelKey{s, b.Known(), without, kit}
	if models[key] == nil {
		from := bundled()
		from.Faults = slices.DeleteFunc(slices.Clone(from.Faults), func(f fault.Fault) bool { return f.ID == without || without == allDoubles && f.Double() })
		models[key] = diagnose.New(diagnose.Question{Symptom: s, Build: key.build, Meter: meter.Cheap(), Kit: kit}, from).Ready()
	}
	return models[key]
}

var bundled = sync.OnceValue(func() fault.Catalogue {
	out, err := fault.Bundled()
	if err != nil {
		panic(err)
	}
	return out
})

func catalogue() []fault.Fault { return bundled().Faults }

func patients(s fault.Symptom, n int, seed uint64) []*patient {
	return patientsOf(s, catalogue(), n, seed)
}

// patientsOf have faults of a catalogue.
func patientsOf(s fault.Symptom, faults []fault.Fault, n int, seed uint64) []*patient {
	out := make([]*patient, n)
	var group sync.WaitGroup
	for part := range 2 {
		group.Go(func() {
			for i := part; i < n; i += 2 {
				number := seed<<20 + uint64(i)<<4 + uint64(len(s))
				out[i] = &patient{hidden: draw(s, faults, machine.NewChance(number), machine.NewChance(^number)), number: number, told: map[said]diagnose.Evidence{}}
			}
		})
	}
	group.Wait()
	return out
}

// The benchmark of the diagnosis: the same hidden machines for every policy.
func BenchmarkDiagnosis(b *testing.B) {
	for _, s := range fault.Symptoms() {
		hidden := patients(s, *machines, *seed)
		for i, p := range policies {
			b.Run(fmt.Sprintf("%s/%s", s, p.name), func(b *testing.B) {
				goal := goals{}
				if i == 0 {
					goal = goalsOf[s]
				}
				for range b.N {
					var t tally
					for _, one := range hidden {
						t.add(p.diagnose(modelFor(s, one.build, "", machine.Kit{}), one), one.f)
					}
					t.report(b, goal)
				}
			})
		}
	}
}

// Doubles alone, by the catalogue as it is and by one that has none: what it is worth
// to expect them. The machines are the same.
func BenchmarkDoubles(b *testing.B) {
	twos := slices.DeleteFunc(slices.Clone(catalogue()), single)
	for _, s := range fault.Symptoms() {
		if often(s, twos, double) == 0 {
			continue
		}
		hidden := patientsOf(s, twos, min(*machines, 200), *seed+3)
		for _, by := range []struct {
			name    string
			without fault.ID
		}{{"expected", ""}, {"not expected", allDoubles}} {
			b.Run(fmt.Sprintf("%s/%s", s, by.name), func(b *testing.B) {
				for range b.N {
					var t tally
					for _, one := range hidden {
						t.add(policies[0].diagnose(modelFor(s, one.build, by.without, machine.Kit{}), one), one.f)
					}
					t.report(b, goals{})
				}
			})
		}
	}
}

// What a peak-hold adapter is worth: the same machines without a spark, and a kit
// that has one.
func BenchmarkWithAnAdapter(b *testing.B) {
	kit := machine.Kit{AdapterFarads: 1e-6, BleederOhms: 10e6}
	for range b.N {
		var t tally
		for _, one := range patients(fault.NoSpark, *machines, *seed) {
			one.kit = kit
			t.add(policies[0].diagnose(modelFor(fault.NoSpark, one.build, "", kit), one), one.f)
		}
		t.report(b, goalsOf[fault.NoSpark])
	}
}

// What happens when the fault is none of the catalogue: the machine has one that
// was taken out of it. What is not flagged may still name the right part, by a fault
// that is like it.
func BenchmarkUnknownFault(b *testing.B) {
	for _, s := range []fault.Symptom{fault.WontCharge, fault.NoSpark} {
		b.Run(string(s), func(b *testing.B) {
			for range b.N {
				var t tally
				right, wrong := 0, 0
				for _, one := range patients(s, min(*machines, 200), *seed+1) {
					if one.f.ID == fault.None {
						continue
					}
					v := policies[0].diagnose(modelFor(s, one.build, one.f.ID, machine.Kit{}), one)
					t.add(v, one.f)
					if v.finding.Action == diagnose.NotListed || v.finding.Unlisted >= oneInTwenty {
						continue
					}
					switch {
					case v.finding.Parts == one.f.Parts():
						right++
					case v.finding.Probability >= sureOf:
						wrong++
					}
				}
				b.ReportMetric(0, "ns/op")
				figure(b, t.share(t.notListed+t.mayBe, t.n), "flagged", "≥", 0.5)
				figure(b, t.share(right, t.n), "unflagged-part-right", "", 0)
				figure(b, t.share(wrong, t.n), "unflagged-sure-of-a-wrong-part", "", 0)
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
					m := modelFor(s, one.build, "", machine.Kit{})
					policies[0].diagnose(m, one)
					one.slipOne(m)
					t.add(policies[0].diagnose(m, one), one.f)
				}
				b.ReportMetric(0, "ns/op")
				figure(b, t.share(t.part, t.n), "part-right", "≥", 0.85)
				figure(b, t.share(t.wrongSure, t.sure), "wrong-when-sure", "", 0)
				t.reportDoubles(b)
			}
		})
	}
}

// sureOf is from where a part is said to be named.
const sureOf = 0.95

// slipOne spoils one of the readings that were asked for.
func (p *patient) slipOne(m *diagnose.Model) {
	var asked []check.ID
	for _, c := range m.Checks {
		if e, ok := p.told[said{c.ID, 0}]; ok && e.Check != "" && c.Instrument == check.Multimeter && c.ID != "lead-zero" {
			asked = append(asked, c.ID)
		}
	}
	if len(asked) == 0 {
		return
	}
	p.spoil = asked[machine.NewChance(p.number+1).Pick(len(asked))]
	delete(p.told, said{p.spoil, 0})
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
			total.add(policies[0].diagnose(modelFor(c.symptom, one.build, "", machine.Kit{}), one), one.f)
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
			x, _ := a[i].says(c, 0)
			y, _ := b[i].says(c, 0)
			require.Equal(t, x, y, c.ID)
		}
	}
}
