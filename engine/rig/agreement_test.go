package rig_test

import (
	"fmt"
	"iter"
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/fault"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/rig"
)

// probedPairs are where a tester would hold the probes.
var probedPairs = [][2]check.Terminal{
	{check.Charge(1), check.Charge(2)}, {check.Charge(2), check.Charge(3)}, {check.Charge(1), check.Core},
	{check.RegulatorLead(1), check.RegulatorLead(2)}, {check.BatteryPlus, check.BatteryMinus}, {check.RegulatorPlus, check.FuseIn},
	{check.RegulatorPlus, check.RegulatorBody}, {check.RegulatorBody, check.BatteryMinus}, {check.FuseIn, check.PlusClamp},
	{check.PlusClamp, check.BatteryPlus}, {check.KeyOut, check.Frame}, {check.PickupA, check.PickupB}, {check.ExciterLead, check.Core},
	{check.CoilPrimary, check.Core}, {check.SparkLead, check.Core}, {check.SparkLead, check.CapEnd}, {check.CapEnd, check.Core},
	{check.BoxGround, check.Core}, {check.KillWire, check.Core}, {check.BoxFeed, check.BoxGround}, {check.GroundLead, check.Core},
	{check.BoxPickup, check.BoxGround}, {check.LightingLead, check.Core},
}

var probedStates = []machine.State{
	{}, {Hot: true}, {Key: true, Plug: check.Together}, {Key: true, Engine: check.Cranking}, {Key: true, Engine: check.Cranking, Plug: check.Together},
	{Key: true, Engine: check.At3000}, {Key: true, Engine: check.Idling, Plug: check.Together},
	{Key: true, Engine: check.At3000, Plug: check.Together}, {Key: true, Engine: check.At5000, Plug: check.Together},
}

// class says how near formula and simulation must come: a share, or an absolute
// amount where there is next to nothing to read.
type class struct {
	name         string
	share, least float64
}

func classOf(f meter.Function, s machine.State) class {
	switch {
	case f == meter.Ohms:
		return class{"ohms", 0.005, 0.01}
	case s.Engine == check.Stopped:
		return class{"volts at rest", 0.002, 0.005}
	case f == meter.VoltsDC:
		return class{"volts DC, turning", 0.06, 0.35}
	}
	return class{"volts AC, turning", 0.05, 0.15}
}

// The formulas of engine/machine and this simulation describe the same machines:
// what one says a meter shows, the other shows, over builds, faults and doubles,
// points, dials and states, wherever there is a formula. A run takes one of many
// combinations.
func TestFormulasAgree(t *testing.T) {
	const oneOf = 11
	in, turn := fine(), 0
	compared, unknown, worst := map[string]int{}, map[string]int{}, map[string]float64{}
	for _, b := range someBuilds() {
		for k, m := range troubled(t, b) {
			for _, pair := range probedPairs {
				for _, s := range probedStates {
					for _, f := range []meter.Function{meter.Ohms, meter.VoltsDC, meter.VoltsAC} {
						if turn++; turn%oneOf != 0 || !b.Has(pair[0]) || !b.Has(pair[1]) || f == meter.Ohms && s.Engine != check.Stopped {
							continue
						}
						p := machine.Probing{Red: pair[0], Black: pair[1], Function: f, State: s}
						c := classOf(f, s)
						formula := m.Shows(p, in.Meter)
						if !formula.Known {
							unknown[c.name]++
							continue
						}
						d, err := rig.Show(m, p, in, "")
						require.NoError(t, err)
						compared[c.name]++
						what := fmt.Sprintf("%s, %s: %s to %s, %v, %+v: formula %.5g (open %v), simulation %v", b.Charge, k, p.Red, p.Black, f, s, formula.Value, formula.Open, d.Texts)
						switch {
						case d.Live: // an ohm range that means nothing
						case formula.Open || d.State == quantity.OverRange:
							assert.Equal(t, formula.Open, d.State == quantity.OverRange, what)
						default:
							off := math.Abs(formula.Value - d.Value)
							if loose(m) && s.Engine != check.Stopped {
								c.share = 0.1 // it is half way in the formula, and at random in time
							}
							bound := max(c.share*math.Abs(d.Value), c.least) + formula.Flicker*math.Abs(formula.Value) + swing(t, d)
							assert.LessOrEqual(t, off, bound, what)
							if math.Abs(d.Value) > 10*c.least && formula.Flicker == 0 {
								worst[c.name] = max(worst[c.name], off/math.Abs(d.Value))
							}
						}
					}
				}
			}
		}
	}
	for name, n := range compared {
		require.Greater(t, n, 100, name)
		t.Logf("%-18s %5d compared, %5d without a formula, worst %.2f %% of what is shown", name, n, unknown[name], 100*worst[name])
	}
}

// troubled are the typical machines of a build, by what is wrong with them: nothing,
// each kind of fault, each double of the catalogue.
func troubled(t testing.TB, b machine.Build) iter.Seq2[string, machine.Machine] {
	sound := machine.Typical(b)
	sound.Starter.Ripple = 0 // what it does to displays is a matter of their moments
	faults, err := fault.Bundled()
	require.NoError(t, err)
	return func(yield func(string, machine.Machine) bool) {
		if !yield("sound", sound) {
			return
		}
		for i, k := range machine.Kinds() {
			if f, ok := machine.NewChance(uint64(i+1)).Sized(k, b); ok && !yield(string(k), sound.With(f)) {
				return
			}
		}
		for i, f := range faults.Faults {
			if !f.Double() {
				continue
			}
			c := machine.NewChance(uint64(i))
			first, ok := c.Sized(f.Kind, b)
			second, too := c.Sized(f.With, b)
			if i%2 == 0 || f.With != machine.DiodeIsShorted { // else anywhere
				second.At = first.Beside(f.With, b, c)
			}
			if ok && too && second.Suits(b) && !yield(string(f.ID), sound.With(first, second)) {
				return
			}
		}
	}
}

func loose(m machine.Machine) bool {
	h := m.Harness
	return h.Plus.Loose+h.OtherPins.Loose+h.ChargePins[0].Loose+h.ChargePins[1].Loose+h.ChargePins[2].Loose > 0
}

// swing is how far the displays of one reading lie apart.
func swing(t testing.TB, d rig.Display) float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for _, text := range d.Texts {
		v, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err)
		low, high = min(low, v), max(high, v)
	}
	return high - low
}

// Behind a peak-hold adapter both say the same, ripple of the speed included.
func TestPeaksAgree(t *testing.T) {
	in, kit := fine(), machine.Kit{AdapterFarads: 1e-6, BleederOhms: 10e6}
	for _, ripple := range []float64{0, 0.2, 0.35} {
		for _, b := range someBuilds() {
			m := machine.Typical(b)
			m.Starter.Ripple = ripple
			for _, c := range check.Plan(b.Known(), check.NoSpark, check.PeakHold) {
				if !c.PeakHold {
					continue
				}
				formula := m.Predict(c, in.Meter, kit)
				if !formula.Known {
					continue
				}
				d, err := rig.Check(m, c, in, kit)
				require.NoError(t, err)
				assert.InEpsilon(t, d.Value, formula.Value, 0.06, "%s %s ripple %v: %v", b.Charge, c.ID, ripple, d.Texts)
			}
		}
	}
}
