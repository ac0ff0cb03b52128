package assess_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
	"coilbook/engine/spec"
	"coilbook/engine/winding"
	"coilbook/specs"
)

// display is a meter of one session, with leads: each range has a gain and an
// offset anywhere in its data sheet, every touch a contact of its own. Nothing
// of it is shared with engine/meter but the description.
type display struct {
	random       *rand.Rand
	m            meter.Meter
	gain, offset map[string]float64
	lead         float64
}

func newDisplay(random *rand.Rand, m meter.Meter) *display {
	lead := float64(m.Leads.Low) + random.Float64()*float64(m.Leads.High-m.Leads.Low)
	return &display{random, m, map[string]float64{}, map[string]float64{}, lead}
}

func (d *display) either(half float64) float64 { return half * (2*d.random.Float64() - 1) }

// on is what stands on the display, in steps of the range.
func (d *display) on(f meter.Function, r meter.Range, x float64) float64 {
	key := f.String() + r.Label
	if _, drawn := d.gain[key]; !drawn {
		d.gain[key], d.offset[key] = d.either(r.Accuracy.Percent/100), d.either((r.Accuracy.Digits-0.5)*r.Step)
	}
	return math.Round((x*(1+d.gain[key]) + d.offset[key]) / r.Step)
}

// shows takes the lowest range from the dial on that holds the value, as a meter
// that picks its range or a patient hand does.
func (d *display) shows(id check.ID, f meter.Function, dial meter.Range, x float64) session.Entry {
	for _, r := range d.m.Ranges[f] {
		if !d.m.Auto && r.Nominal < dial.Nominal {
			continue
		}
		if steps := d.on(f, r, x); math.Abs(steps*r.Step) <= r.Full*1.00001 {
			decimals := max(0, int(math.Round(-math.Log10(r.Step/r.Unit.Factor))))
			return in(id, strconv.FormatFloat(steps*r.Step/r.Unit.Factor, 'f', decimals, 64), r.Unit.Name, r.Label)
		}
	}
	return in(id, "OL", "", "")
}

// ohms reads a resistance through leads that are placed anew.
func (d *display) ohms(c check.Check, truth float64) session.Entry {
	dial, _ := c.Dial(d.m)
	return d.shows(c.ID, meter.Ohms, dial, truth+d.lead+d.either(float64(d.m.Leads.Contact)))
}

func (d *display) volts(id check.ID, truth float64) session.Entry {
	return d.shows(id, meter.VoltsDC, d.m.Ranges[meter.VoltsDC][0], truth)
}

// counted are verdicts and those of them that the truth contradicts.
type counted struct{ in, inWrong, out, outWrong, open int }

func (c *counted) verdict(o spec.Outcome, conforms bool) {
	switch o {
	case spec.InSpec:
		c.in++
		if !conforms {
			c.inWrong++
		}
	case spec.OutOfSpec:
		c.out++
		if conforms {
			c.outWrong++
		}
	case spec.CannotTell:
		c.open++
	}
}

func (c counted) mustBeHonest(t *testing.T, what string) {
	t.Helper()
	t.Logf("%-58s in spec %4d, wrong %.2f %%; out of spec %4d, wrong %.2f %%; cannot tell %4d", what,
		c.in, percent(c.inWrong, c.in), c.out, percent(c.outWrong, c.out), c.open)
	assert.LessOrEqual(t, percent(c.inWrong, c.in), 5.0, "%s: in spec, yet it is not", what)
	assert.LessOrEqual(t, percent(c.outWrong, c.out), 5.0, "%s: out of spec, yet it is in", what)
	require.Positive(t, c.in+c.out, "%s: no verdict at all would be honest and useless", what)
}

func percent(part, of int) float64 {
	if of == 0 {
		return 0
	}
	return 100 * float64(part) / float64(of)
}

func meterNamed(t *testing.T, id string) meter.Meter {
	t.Helper()
	m, ok := meter.ByID(id)
	require.True(t, ok, id)
	return m
}

// limited is the widest profile with other limits for a pair.
func limited(t *testing.T, low, high float64) []spec.Profile {
	t.Helper()
	profiles, err := specs.Bundled()
	require.NoError(t, err)
	p := profiles[0]
	l, ok := p.Limit(spec.ChargePair)
	require.True(t, ok)
	l.Low, l.High = low, high
	p.Limits[spec.ChargePair] = l
	return []spec.Profile{p}
}

// setup asks for all that a simulated session may hold.
func (d *display) setup(leads int, warmth spec.Warmth, kit *session.Kit) session.Entry {
	e := withMethods(leads, kit, check.VoltAmp)
	e.Setup.Meter, e.Setup.Winding = d.m.ID, warmth
	return e
}

func openedWith(profiles []spec.Profile, entries ...session.Entry) assess.Bench {
	return assess.Open(session.Session{Entries: asTheScreenWrites(entries)}.Fold(), profiles)
}

// planned are the checks as a set-up aims them.
func planned(profiles []spec.Profile, e session.Entry) map[check.ID]check.Check {
	out := map[check.ID]check.Check{}
	for _, c := range openedWith(profiles, e).Plan {
		out[c.ID] = c
	}
	return out
}

// around draws a true value from both sides of the limits.
func around(random *rand.Rand, low, high float64) float64 {
	width := high - low
	from := max(low-width, low/10)
	return from + random.Float64()*(high+width-from)
}

// Of the verdicts on a pair at most one in twenty is wrong, with the winding
// anywhere in the temperatures that are said of it. Recomputed, fixed seed.
func TestSimulatedPairsAreHonest(t *testing.T) {
	for _, m := range []string{"cheap", "auto6000"} {
		for _, zeroed := range []bool{true, false} {
			for _, warmth := range []spec.Warmth{spec.Cold, spec.JustStopped} {
				for _, limits := range [][2]float64{{0.5, 1.5}, {90, 110}} {
					what := fmt.Sprintf("%s, %v Ω, lead zero %v, %q", m, limits, zeroed, warmth)
					simulatedPairs(t, what, m, zeroed, warmth, limits, 1).mustBeHonest(t, what)
				}
			}
		}
	}
}

// The mean of several readings is judged with its own doubt.
func TestSimulatedRepeatsAreHonest(t *testing.T) {
	for _, m := range []string{"cheap", "auto6000"} {
		for _, zeroed := range []bool{true, false} {
			for _, limits := range [][2]float64{{0.5, 0.8}, {0.5, 1.5}, {90, 110}} {
				what := fmt.Sprintf("%s, %v Ω, lead zero %v, mean of 4 to 6", m, limits, zeroed)
				simulatedPairs(t, what, m, zeroed, spec.Cold, limits, 4).mustBeHonest(t, what)
			}
		}
	}
}

func simulatedPairs(t *testing.T, what, m string, zeroed bool, warmth spec.Warmth, limits [2]float64, readings int) (c counted) {
	t.Helper()
	random := rand.New(rand.NewPCG(31, uint64(len(what))))
	profiles, described := limited(t, limits[0], limits[1]), meterNamed(t, m)
	var plan map[check.ID]check.Check
	for range 1000 {
		d := newDisplay(random, described)
		entries := []session.Entry{d.setup(2, warmth, nil)}
		if plan == nil {
			plan = planned(profiles, entries[0])
		}
		if zeroed {
			entries = append(entries, d.ohms(plan["lead-zero"], 0))
		}
		air := spec.TemperatureOf(warmth, (*quantity.Celsius)(entries[0].Setup.Ambient))
		truth := around(random, limits[0], limits[1])
		warm := truth * (234.5 + float64(air.At) + d.either(air.HalfWidth)) / 254.5
		n := readings
		if readings > 1 {
			n += random.IntN(3)
		}
		for range n {
			e := d.ohms(plan["charge-pair-1-2"], warm)
			e.Reading.Again = true
			entries = append(entries, e)
		}
		l := openedWith(profiles, entries...).Line(plan["charge-pair-1-2"])
		require.NoError(t, l.Unread)
		require.Equal(t, n, l.Repeats.Count)
		c.verdict(l.Verdict.Outcome, truth >= limits[0] && truth <= limits[1])
	}
	return c
}

// Ohms by drops, with a bulb that burns steadily. A current that drifts between
// the two readings is not in the doubt: 1 % of it is shown, not held to.
func TestSimulatedDropsAreHonest(t *testing.T) {
	for _, m := range []string{"cheap", "auto6000"} {
		for _, tolerance := range []float64{1, 5} {
			for _, limits := range [][2]float64{{0.5, 0.6}, {0.3, 1.5}} {
				for _, drift := range []float64{0, 0.01} {
					what := fmt.Sprintf("%s, %v Ω, resistor within %v %%, drift to %v %%", m, limits, tolerance, 100*drift)
					c := simulatedDrops(t, what, m, tolerance, limits, drift)
					if drift == 0 {
						c.mustBeHonest(t, what)
						continue
					}
					t.Logf("%-58s in spec %4d, wrong %.2f %%; out of spec %4d, wrong %.2f %%", what,
						c.in, percent(c.inWrong, c.in), c.out, percent(c.outWrong, c.out))
				}
			}
		}
	}
}

func simulatedDrops(t *testing.T, what, m string, tolerance float64, limits [2]float64, drift float64) (c counted) {
	t.Helper()
	random := rand.New(rand.NewPCG(33, uint64(len(what))))
	profiles, described := limited(t, limits[0], limits[1]), meterNamed(t, m)
	for range 1000 {
		d := newDisplay(random, described)
		kit := &session.Kit{ResistorOhms: 0.47, ResistorPercent: tolerance}
		truth := around(random, limits[0], limits[1])
		warm := truth * (254.5 + d.either(5)) / 254.5
		current := 0.25 + 0.1*random.Float64()
		b := openedWith(profiles, d.setup(2, spec.Cold, kit),
			d.volts("volt-amp-known-1-2", current*0.47*(1+d.either(tolerance/100))),
			d.volts("volt-amp-winding-1-2", current*(1+drift)*warm))
		known, _ := check.Find(b.Plan, "volt-amp-known-1-2")
		l, ok := b.WorkedOut(b.Line(known))
		require.True(t, ok)
		c.verdict(l.Verdict.Outcome, truth >= limits[0] && truth <= limits[1])
	}
	return c
}

// generator is a charge winding at rest, each phase as warm as it is.
type generator struct {
	of     winding.Connection
	phases [3]float64
}

func (d *display) generator(of winding.Connection, phase, unbalance, kelvin float64) generator {
	g := generator{of: of}
	for i := range g.phases {
		g.phases[i] = phase * (1 + unbalance*d.random.NormFloat64()) * (1 + d.either(kelvin)/254.5)
	}
	return g
}

func (g generator) pairs(faults ...winding.Fault) winding.Pairs {
	return winding.Assemble(g.of, []quantity.Ohm{quantity.Ohm(g.phases[0]), quantity.Ohm(g.phases[1]), quantity.Ohm(g.phases[2])}, faults...).Pairs()
}

var pairNames = [3]string{"1-2", "2-3", "3-1"}

// byOhms reads the three pairs on the ohm range.
func (d *display) byOhms(plan map[check.ID]check.Check, p winding.Pairs) (out []session.Entry) {
	for i, name := range pairNames {
		out = append(out, d.ohms(plan[check.ID("charge-pair-"+name)], float64(p[i])))
	}
	return out
}

// byDrops reads them through a known resistor and one bulb, whose current is a
// little other from pair to pair.
func (d *display) byDrops(bulb, known float64, p winding.Pairs) (out []session.Entry) {
	for i, name := range pairNames {
		current := bulb * (1 + d.either(0.03))
		out = append(out, d.volts(check.ID("volt-amp-known-"+name), current*known), d.volts(check.ID("volt-amp-winding-"+name), current*float64(p[i])))
	}
	return out
}

// bench of one simulated session: what stands before the pairs, and how pairs
// are read and balanced.
type bench struct {
	d        *display
	profiles []spec.Profile
	plan     map[check.ID]check.Check
	before   []session.Entry
	bulb     float64 // A
	known    float64 // Ω
	fine     bool
}

func (b bench) balance(t *testing.T, p winding.Pairs) *assess.Balance {
	t.Helper()
	if b.fine {
		r := openedWith(b.profiles, slices.Concat(b.before, b.d.byDrops(b.bulb, b.known, p))...).Report()
		require.Zero(t, r.Fine.Missing)
		return r.Fine
	}
	r := openedWith(b.profiles, slices.Concat(b.before, b.d.byOhms(b.plan, p))...).Report()
	require.Zero(t, r.Balance.Missing)
	return r.Balance
}

// sessions opens simulated sessions one after the other.
func sessions(t *testing.T, seed uint64, m string, zeroed, fine bool, n int, each func(b bench)) {
	t.Helper()
	random := rand.New(rand.NewPCG(seed, 7))
	profiles, described := limited(t, 0.05, 5), meterNamed(t, m)
	var plan map[check.ID]check.Check
	for range n {
		d := newDisplay(random, described)
		b := bench{d: d, profiles: profiles, before: []session.Entry{d.setup(3, spec.Cold, known47())}, fine: fine}
		b.bulb, b.known = 0.25+0.1*random.Float64(), 0.47*(1+d.either(0.01))
		if plan == nil {
			plan = planned(profiles, b.before[0])
		}
		b.plan = plan
		if zeroed {
			b.before = append(b.before, d.ohms(plan["lead-zero"], 0))
		}
		each(b)
	}
}

// Sound windings have phases 1 % apart and 2 K; few of them may be accused.
func TestSimulatedSoundWindingsAreNotAccused(t *testing.T) {
	for _, c := range []struct {
		m      string
		phase  float64
		zeroed bool
		fine   bool
	}{
		{"cheap", 0.3, false, true}, {"auto6000", 0.3, false, true}, {"cheap", 0.1, false, true},
		{"cheap", 0.3, true, false}, {"cheap", 20, true, false}, {"cheap", 0.3, false, false}, {"auto6000", 1, true, false},
	} {
		for _, of := range []winding.Connection{winding.Star, winding.Delta} {
			const n = 300
			var out, alike, apart int
			sessions(t, 41, c.m, c.zeroed, c.fine, n, func(b bench) {
				v := b.balance(t, b.d.generator(of, c.phase, 0.01, 2).pairs()).Verdict
				switch {
				case v.Outcome == spec.OutOfSpec:
					out++
				case v.Outcome == spec.InSpec:
					alike++
				case v.Reason == spec.CannotCompare:
					apart++
				}
			})
			what := fmt.Sprintf("%s, %v of %v Ω, fine %v, lead zero %v", c.m, of, c.phase, c.fine, c.zeroed)
			t.Logf("%-52s accused %.1f %%, told alike %.0f %%, on two ranges %.0f %%", what,
				percent(out, n), percent(alike, n), percent(apart, n))
			assert.LessOrEqual(t, percent(out, n), 5.0, what)
		}
	}
}

// A short of the share that a session's own report promises to see is seen.
// Two pairs that are alike to the digit are also rounded alike, which the doubt
// does not know: at some sizes 92 % are seen, over sizes within a tenth 95 %.
// Sampling leaves 400 cases of that within 3 %, not quite three standard deviations.
func TestSimulatedShortsAreSeenAsPromised(t *testing.T) {
	for _, c := range []struct {
		m     string
		phase float64
		fine  bool
	}{
		{"cheap", 20, false}, {"auto6000", 20, false}, {"cheap", 3, false}, {"cheap", 0.3, true}, {"auto6000", 0.3, true},
	} {
		for _, of := range []winding.Connection{winding.Star, winding.Delta} {
			const n = 400 // sessions
			var promised, most, half int
			var sum float64
			sessions(t, 43, c.m, true, c.fine, n, func(b bench) {
				g := b.d.generator(of, c.phase*(1+b.d.either(0.1)), 0, 0)
				limits := b.balance(t, g.pairs())
				if limits.Most >= 1 || !limits.Verdict.HasValue {
					return
				}
				found := b.balance(t, g.pairs(short(limits.Most))).Verdict
				if found.Reason == spec.CannotCompare {
					return // the meter changed its range between the pairs, and says so
				}
				promised++
				sum += limits.Most
				if found.Outcome == spec.OutOfSpec {
					most++
				}
				if b.balance(t, g.pairs(short(limits.Half))).Verdict.Outcome == spec.OutOfSpec {
					half++
				}
			})
			what := fmt.Sprintf("%s, %v of %v Ω, fine %v", c.m, of, c.phase, c.fine)
			t.Logf("%-44s %d promised, on average %.1f %% of turns; most seen %.1f %%, half seen %.1f %%", what,
				promised, 100*sum/float64(max(promised, 1)), percent(most, promised), percent(half, promised))
			if promised == 0 {
				continue
			}
			assert.GreaterOrEqual(t, percent(most, promised), 92.0, what)
			assert.GreaterOrEqual(t, percent(half, promised), 42.0, what)
		}
	}
}

func short(share float64) winding.Fault {
	return winding.Fault{Kind: winding.TurnsShorted, At: 1, Share: share}
}

// onBattery is what each detector makes of a steady voltage: behind a capacitor
// nothing, without one the mean magnitude, or that of one direction, by the
// factor that makes a sine right.
func onBattery(d meter.Detector, volts float64) float64 {
	switch d {
	case meter.AverageDC:
		return math.Abs(volts) * math.Pi / (2 * math.Sqrt2)
	case meter.HalfWave:
		return max(volts, 0) * math.Pi / math.Sqrt2
	case meter.AverageAC, meter.TrueRMS:
	}
	return 0
}

// The detector that a meter truly has is not ruled out by its self-check.
func TestSimulatedDetectorIsKept(t *testing.T) {
	profiles, err := specs.Bundled()
	require.NoError(t, err)
	for _, m := range []string{"cheap", "auto6000"} {
		for _, truth := range []meter.Detector{meter.AverageAC, meter.AverageDC, meter.HalfWave, meter.TrueRMS} {
			random := rand.New(rand.NewPCG(47, uint64(truth)))
			const n = 1000
			kept, told := 0, 0
			for range n {
				d := newDisplay(random, meterNamed(t, m))
				volts := 11.5 + 2*random.Float64()
				if random.IntN(2) == 0 {
					volts = -volts
				}
				e := selfCheck(nil, d.shows("battery-dc", meter.VoltsDC, d.m.Ranges[meter.VoltsDC][2], volts),
					d.onAC("battery-ac", onBattery(truth, volts)), d.onAC("battery-ac-swapped", onBattery(truth, -volts)))
				e[0].Setup.Meter = m
				l := openedWith(profiles, e...).Learned()
				if !l.NoneFits && (l.Detectors == nil || slices.Contains(l.Detectors, truth)) {
					kept++
				}
				if l.Detectors != nil {
					told++
				}
			}
			t.Logf("%s, %v: kept %.1f %%, told apart from some %.0f %%", m, truth, percent(kept, n), percent(told, n))
			assert.GreaterOrEqual(t, percent(kept, n), 99.0, "%s, %v", m, truth)
			assert.Greater(t, percent(told, n), 50.0, "%s, %v: nothing told would be honest and useless", m, truth)
		}
	}
}

// onAC shows no sign on the AC ranges.
func (d *display) onAC(id check.ID, x float64) session.Entry {
	e := d.shows(id, meter.VoltsAC, d.m.Ranges[meter.VoltsAC][0], x)
	e.Reading.Text = strings.TrimPrefix(e.Reading.Text, "-")
	return e
}
