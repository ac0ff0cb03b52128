package trial_test

import (
	"flag"
	"fmt"
	"math"
	"os"
	"slices"
	"testing"

	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/rig"
)

var (
	count = flag.Int("machines", 40, "hidden machines for each symptom")
	seed  = flag.Uint64("seed", 1, "of the hidden machines")
	loud  = flag.Bool("loud", false, "tell of each machine that was named wrongly")
)

var hiddenBuilds = []machine.Build{
	machine.Usual(),
	{MagnetPoles: 12, StatorPoles: 18, Charge: machine.Star, Regulating: machine.Shunt, Battery: machine.Flooded, Volts: 12, Ignition: machine.BatteryFed, Pickups: 1},
	{MagnetPoles: 12, StatorPoles: 12, Charge: machine.Delta, Regulating: machine.Shunt, Battery: machine.AGM, Volts: 12, Ignition: machine.BatteryFed, Pickups: 1, GroundLead: true},
	{MagnetPoles: 8, StatorPoles: 8, Charge: machine.SinglePhase, Regulating: machine.Shunt, Battery: machine.AGM, Volts: 12, Ignition: machine.ACFed, Pickups: 1, GroundLead: true},
}

type hidden struct {
	m     machine.Machine
	f     fault.Fault
	in    rig.Instrument
	build machine.Build
}

// shifted is a machine whose figures lie wider and elsewhere than the diagnosis
// thinks.
func shifted(b machine.Build, c machine.Chance) machine.Machine {
	m := machine.Drawn(b, c)
	m.Magnets.Flux *= 0.97 * c.About(0.06)
	for i := range m.Phases {
		m.Phases[i].Ohms *= 1.05
		m.Phases[i].Henry *= 0.93 * c.About(0.08)
	}
	m.Exciter.Ohms *= c.About(0.12)
	m.Pickups[0].Ohms *= c.About(0.12)
	m.Battery.Ohms *= 1.1 * c.About(0.2)
	m.Battery.Accept *= 0.9 * c.About(0.2)
	m.Regulator.SetPoint += -0.1 + 0.1*c.Normal()
	m.Box.Trigger *= c.About(0.1)
	return m
}

func volts(m machine.Machine, e check.Engine) float64 {
	d, _ := rig.Show(m, machine.Probing{Red: check.PlusClamp, Black: check.Core, Function: meter.VoltsDC, State: machine.State{Plug: check.Together, Engine: e, Key: true}}, rig.Exact(meter.Auto6000()), "")
	return d.Value
}

func complains(m machine.Machine, s fault.Symptom) bool {
	st := machine.State{Plug: check.Together, Engine: check.Cranking, Key: true}
	switch s {
	case fault.WontCharge:
		return volts(m, check.At5000) < m.RestVolts()+0.5 || volts(m, check.Cranking) < 9.8 || m.Harness.Drain > 0.02 || m.Battery.Charge < 0.3
	case fault.Overcharges:
		return volts(m, check.At5000) > 15
	case fault.NoSpark:
		n, _ := rig.Sparks(m, st, 1)
		return n < 2
	case fault.CutsOutHot:
		n, _ := rig.Sparks(m, st, 1)
		st.Hot = true
		h, _ := rig.Sparks(m, st, 1)
		return n >= 2 && h < 2
	}
	return true
}

func draw(s fault.Symptom, faults []fault.Fault, c machine.Chance) hidden {
	for {
		total := 0.0
		for _, f := range faults {
			total += math.Pow(f.Weights[s], 0.85)
		}
		x := c.Uniform() * total
		var f fault.Fault
		for _, f = range faults {
			if x -= math.Pow(f.Weights[s], 0.85); x < 0 && f.Weights[s] > 0 {
				break
			}
		}
		b := hiddenBuilds[c.Pick(len(hiddenBuilds))]
		m := shifted(b, c)
		if f.ID != fault.None {
			one := machine.Fault{Kind: f.Kind, HotOnly: f.HotOnly, Size: machine.Size(f.Kind, b, math.Pow(c.Uniform(), 1.3)), At: 1 + c.Pick(max(machine.Sites(f.Kind, b), 1))}
			if !one.Suits(b) {
				continue
			}
			m = m.With(one)
			if !complains(m, s) {
				continue
			}
		}
		return hidden{m, f, rig.DrawnInstrument(meter.Cheap(), c), b}
	}
}

// answer is what the hidden machine answers, as typed.
func (h hidden) answer(c check.Check, k machine.Kit, luck machine.Chance) (diagnose.Evidence, bool) {
	e := diagnose.Evidence{Check: c.ID}
	if c.Instrument == check.Eyes {
		yes, err := rig.Seen(h.m, c, luck.Uniform())
		if yes {
			e.Value = 1
		}
		return e, err == nil
	}
	var d rig.Display
	var err error
	if c.Function == meter.AmpsDC && c.Instrument == check.Multimeter {
		v := h.m.Predict(c, h.in.Meter, k).Value
		d = rig.Display{Value: math.Round(v/0.01) * 0.01, Range: meter.Range{Step: 0.01}}
	} else {
		d, err = rig.Check(h.m, c, h.in, k)
	}
	if err != nil || d.Unread {
		return e, false
	}
	e.State, e.Value = d.State, d.Value
	if luck.Uniform() < 0.01 { // a slip
		switch luck.Pick(3) {
		case 0:
			e.Value *= 10
		case 1:
			e.Value /= 10
		case 2:
			e.State = quantity.OverRange
		}
	}
	if c.Function == meter.Ohms && c.Instrument == check.Multimeter && e.State == quantity.Number {
		e.Value = math.Max(e.Value-0.25, 0)
		e.Doubt = 0.12
	}
	a := d.Range.Accuracy
	e.Doubt = math.Hypot(e.Doubt, a.HalfWidth(e.Value, d.Range.Step)/math.Sqrt(3))
	return e, true
}

type score struct {
	n, part, faultRight, checks, sure, wrongSure int
	minutes                                      []float64
}

func TestTrial(t *testing.T) {
	if os.Getenv("TRIAL") == "" {
		t.Skip("run with TRIAL=1")
	}
	faults, err := fault.Bundled()
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range symptoms() {
		var sc score
		bins := [10]struct{ n, right, p float64 }{}
		models := map[check.Build]*diagnose.Model{}
		missed := map[string]int{}
		for i := range *count {
			c := machine.NewChance(*seed*1e6 + uint64(i)*7 + uint64(len(s)))
			h := draw(s, faults, c)
			k := h.build.Known()
			if models[k] == nil {
				models[k] = diagnose.New(diagnose.Question{Symptom: s, Build: k, Meter: meter.Cheap()}, faults).Ready()
			}
			m := models[k]
			var ev []diagnose.Evidence
			var done []check.ID
			minutes := 0.0
			var last diagnose.Suspects
			for {
				last = m.Weigh(ev)
				_, p := last.Part()
				if p >= 0.95 && len(ev) > 1 || len(done) > 25 {
					break
				}
				next := m.Next(last, ev, done, nil)
				if len(next) == 0 {
					break
				}
				best := next[0]
				worth := false
				for _, n := range next {
					worth = worth || n.Gain*90 > n.Minutes
				}
				if !worth && best.Worth() < 0.004 {
					break
				}
				e, ok := h.answer(best.Check, machine.Kit{}, c)
				done = append(done, best.Check.ID)
				minutes += best.Minutes
				if ok {
					ev = append(ev, e)
				}
			}
			part, p := last.Part()
			right := part == h.f.Part()
			sc.n++
			sc.checks += len(done)
			sc.minutes = append(sc.minutes, minutes)
			if right {
				sc.part++
			}
			if last.Faults[0].Fault.ID == h.f.ID {
				sc.faultRight++
			}
			if p >= 0.9 {
				sc.sure++
				if !right {
					sc.wrongSure++
				}
			}
			b := &bins[min(int(p*10), 9)]
			b.n++
			b.p += p
			if right {
				b.right++
			} else {
				missed[string(h.f.ID)+" as "+string(last.Faults[0].Fault.ID)]++
				if *loud {
					fmt.Printf("%s %v %v named %s %.2f strange %.2f\n", h.f.ID, h.build.Charge, h.m.Faults, last.Faults[0].Fault.ID, p, last.Strange)
					for _, e := range ev {
						fmt.Printf("   %s %v %.4g\n", e.Check, e.State, e.Value)
					}
				}
			}
		}
		mean := 0.0
		for _, x := range sc.minutes {
			mean += x / float64(sc.n)
		}
		slices.Sort(sc.minutes)
		off := 0.0
		for _, b := range bins {
			off += math.Abs(b.p-b.right) / float64(sc.n)
		}
		fmt.Printf("%s: part %.3f fault %.3f checks %.1f minutes %.1f median %.1f sure %d wrong %d (%.3f) calibration %.3f\n   missed %v\n", s, float64(sc.part)/float64(sc.n), float64(sc.faultRight)/float64(sc.n),
			float64(sc.checks)/float64(sc.n), mean, sc.minutes[sc.n/2], sc.sure, sc.wrongSure, float64(sc.wrongSure)/float64(max(sc.sure, 1)), off, missed)
	}
}

func symptoms() []fault.Symptom {
	if s := os.Getenv("SYMPTOM"); s != "" {
		return []fault.Symptom{fault.Symptom(s)}
	}
	return []fault.Symptom{fault.WontCharge, fault.NoSpark}
}
