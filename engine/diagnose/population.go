package diagnose

import (
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/fault"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
)

// Question is what is asked: what the machine does, how it is built as far as one
// can see, and with which meter it will be probed.
type Question struct {
	Symptom fault.Symptom
	Build   check.Build
	Meter   meter.Meter
	Kit     machine.Kit
}

// samples is how many machines a case is drawn with.
const samples = 64

// caseOf is one way in which a fault can be there.
type caseOf struct {
	fault  fault.Fault
	set    int // of parts, of the model's
	at     int // of a double's first kind; 0 for none to name, or any of them
	grade  int // of grades, the mildest first
	grades int
	weight float64
	views  []view      // by check
	kinds  []ofKind    // of regulators
	cov    [][]float64 // of the scaled numbers with a detector, by check

	drawing *drawing // nil before and after
}

// view is what a case's machines show at one check.
type view struct {
	means                []float64 // of the scaled numbers, by detector
	number, open, unrest float64   // shares; yes stands in open for a look
	rough                float64   // share of estimates
	vague                bool      // the formulas do not say
	counted              int       // machines that show a number
}

// builds lists architectures that look like a known build.
func builds(b check.Build) []machine.Build {
	var out []machine.Build
	add := func(c machine.Connection, r machine.Regulating, chemistry machine.Chemistry) {
		poles := max(b.StatorPoles-b.StatorPoles%2, 4)
		if poles > 12 {
			poles = 12
		}
		m := machine.Build{MagnetPoles: poles, StatorPoles: b.StatorPoles, Charge: c, Regulating: r, Battery: chemistry, Volts: 12,
			Ignition: machine.BatteryFed, Pickups: 1, GroundLead: b.GroundLead}
		if b.Exciter {
			m.Ignition = machine.ACFed
		}
		out = append(out, m)
	}
	switch b.ChargeLeads {
	case 1:
		add(machine.GroundedEnd, machine.HalfWave, machine.Flooded)
		add(machine.GroundedEnd, machine.HalfWave, machine.AGM)
	case 2:
		add(machine.SinglePhase, machine.Shunt, machine.AGM)
		add(machine.SinglePhase, machine.Series, machine.Flooded)
	case 4:
		add(machine.TwoPhase, machine.Shunt, machine.AGM)
	default:
		add(machine.Star, machine.Shunt, machine.AGM)
		add(machine.Star, machine.Shunt, machine.Flooded)
		add(machine.Delta, machine.Shunt, machine.AGM)
		add(machine.Star, machine.Series, machine.AGM)
	}
	return out
}

// sited are the kinds whose place the checks tell apart.
func sited(k machine.Kind) bool {
	switch k {
	case machine.PhaseOpen, machine.PhaseToCore, machine.PhaseShorted, machine.PhaseJoint, machine.ChargePin, machine.PhaseToPhase,
		machine.DiodeIsOpen, machine.DiodeIsShorted:
		return true
	}
	return false
}

// grades is how many gravities a kind is split into.
func grades(k machine.Kind) int {
	switch k {
	case machine.PhaseToCore, machine.PhaseShorted, machine.PhaseJoint, machine.WeakMagnets, machine.ChargePin, machine.FeedWire,
		machine.Sulphated, machine.GapWide, machine.PlugPin, machine.ExciterShorted, machine.KillWire, machine.PlugFouled,
		machine.IgnitionGround, machine.BoxFeed, machine.RegulatorGround, machine.BatteryTerminal, machine.PickupShorted, machine.Drain,
		machine.GroundStrap:
		return 2
	}
	return 1
}

// cases splits the faults that have a weight for the symptom.
func cases(faults []fault.Fault, q Question, builds []machine.Build) []*caseOf {
	var out []*caseOf
	for _, f := range faults {
		weight := f.Weights[q.Symptom]
		if weight == 0 {
			continue
		}
		var mine []*caseOf
		places, g := 1, 1
		if f.ID != fault.None && sited(f.Kind) {
			places = machine.Sites(f.Kind, builds[0])
		}
		if f.ID != fault.None && !f.Double() { // a double is seldom: all its sizes are one case
			g = grades(f.Kind)
		}
		for at := 1; at <= places; at++ {
			for grade := range g {
				c := &caseOf{fault: f, at: at, grade: grade, grades: g}
				if places == 1 {
					c.at = 0
				}
				if f.ID == fault.None || c.suits(builds) {
					mine = append(mine, c)
				}
			}
		}
		for _, c := range mine {
			c.weight = weight / float64(len(mine))
		}
		out = append(out, mine...)
	}
	return out
}

func (c *caseOf) suits(builds []machine.Build) bool {
	return slices.ContainsFunc(builds, func(b machine.Build) bool {
		first := machine.Fault{Kind: c.fault.Kind, At: max(c.at, 1)}
		if !c.fault.Double() {
			return first.Suits(b)
		}
		with := machine.Fault{Kind: c.fault.With, At: first.Beside(c.fault.With, b, machine.NewChance(0))}
		return first.Suits(b) && with.Suits(b)
	})
}

// machineOf is the n-th machine of a case: the luck of the n-th machine of every
// case is the same.
func (c *caseOf) machineOf(n int, builds []machine.Build) (machine.Machine, bool) {
	luck := machine.NewChance(uint64(n) + 1)
	b := builds[n%len(builds)]
	m := widened(machine.Drawn(b, luck), luck)
	if c.fault.ID == fault.None {
		return m, true
	}
	share := (float64(c.grade) + luck.Uniform()) / float64(c.grades)
	f := machine.Fault{Kind: c.fault.Kind, At: c.at, HotOnly: c.fault.HotOnly, Size: sizeOf(c.fault.Kind, b, share)}
	if f.At == 0 {
		f.At = 1 + luck.Pick(max(machine.Sites(f.Kind, b), 1))
	}
	if !c.fault.Double() {
		return m.With(f), f.Suits(b)
	}
	with := machine.Fault{Kind: c.fault.With, Size: machine.Size(c.fault.With, b, luck.Uniform()), At: f.Beside(c.fault.With, b, luck)}
	return m.With(f, with), f.Suits(b) && with.Suits(b)
}

// populate draws one more machine of a case, or works out some more of what it shows;
// more is false once that is done for all of them.
func (c *caseOf) populate(q Question, checks []check.Check, builds []machine.Build) (more bool) {
	if c.drawing == nil {
		c.drawing = &drawing{}
	}
	d := c.drawing
	if d.now != nil {
		if !d.now.goOn(q, checks) {
			d.shown, d.now = append(d.shown, d.now.shown), nil
		}
		return true
	}
	if d.next < samples {
		if m, ok := c.machineOf(d.next, builds); ok {
			d.now = look(m, q, checks, c.fault.ID == fault.None)
		}
		d.next++
		return true
	}
	c.views, c.cov = d.settle(checks, len(detectors(q.Meter)))
	c.kinds = d.kinds(checks)
	for i, row := range c.cov {
		for j := range row {
			row[j] += alike(checks[i], checks[j])
		}
	}
	if c.fault.ID != fault.None {
		c.weight *= d.complaint() * float64(len(d.shown)) / samples
	}
	c.drawing = nil
	return false
}
