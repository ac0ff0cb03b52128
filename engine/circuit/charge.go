package circuit

import "math"

// Source is a permanent-magnet generator, per phase: the peak of its sinusoidal
// open-circuit voltage, its resistance and inductance, and its frequency. In a star
// a phase lies between terminal and star point, in a delta it is a branch between
// two terminals; phases are alike and not coupled otherwise than through L (mutual
// inductance between the phases of a star is part of L).
type Source struct{ Peak, Ohms, Henries, Hertz float64 }

// Sink is what the generator charges: a voltage that nothing shifts (a battery), and
// the diodes before it, each a constant drop and a resistance.
type Sink struct{ Volts, DiodeVolts, DiodeOhms float64 }

// Fit says what a current rests on.
type Fit int

const (
	// Outside is no current at all: the inputs are not of a generator and a sink.
	Outside Fit = iota
	// Idle is zero: the peak does not reach the sink or, behind a shorted diode, too
	// little flows to be told from nothing.
	Idle
	// Tabulated is from the table of the arrangement.
	Tabulated
	// Strained is from the edge of the table, without a bound: a shorted diode, and
	// either less damping than the table holds (ωL above 32 times all resistance) or
	// a drop of more than 0.15 of the sink voltage.
	Strained
)

// Current is what flows into the sink. Mean is in amperes; Ripple is the rms value
// of what alternates about the mean, in amperes.
type Current struct {
	Mean, Ripple float64
	CutIn        bool // any current flows
	Fit          Fit
}

// Charging is the current into the sink in the steady state.
//
// Valid for Peak > 0, Ohms, Henries, Hertz ≥ 0 with some impedance between them,
// Volts and the drop of a diode ≥ 0, DiodeOhms ≥ 0; anything else gives Outside.
// From tables of exact solutions of the circuit with diodes of constant drop. Errors
// are shares of the value or of Peak over the impedance of a phase (for a delta,
// those of its star), whichever is more: Mean is within 0.5 % or 0.05 %, behind a
// shorted diode 1 % or 0.3 %; Ripple within 5 % or 0.5 %, and 5 % or 0.8 %. The
// resistance of diodes is counted to the phases: one of a tenth of the phase's costs
// no more than another 1 %, for StarDiodeShorted 3.5 %.
func (a Arrangement) Charging(s Source, k Sink) Current {
	if !a.known() || !s.valid() || !k.valid() {
		return Current{}
	}
	path := &paths[a]
	s = path.phase(s, k.DiodeOhms)
	return path.current(s, k.Volts+path.drops*k.DiodeVolts, k.DiodeVolts)
}

func (s Source) valid() bool {
	z := s.impedance()
	return s.Peak > 0 && s.Ohms >= 0 && s.Henries >= 0 && s.Hertz >= 0 && finite(s.Peak/z) && z > 0 && finite(z)
}

func (k Sink) valid() bool {
	return k.Volts >= 0 && k.DiodeVolts >= 0 && k.DiodeOhms >= 0 && finite(k.Volts+k.DiodeVolts+k.DiodeOhms)
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

func (s Source) impedance() float64 {
	x := s.reactance()
	return math.Sqrt(s.Ohms*s.Ohms + x*x)
}

func (s Source) reactance() float64 { return 2 * math.Pi * s.Hertz * s.Henries }

// current is that of a source whose phases include the diodes' resistance, against
// a voltage; drop is that in the loop that a shorted diode closes.
func (p *path) current(s Source, volts, drop float64) Current {
	x := volts / s.Peak
	if x >= p.table.cutIn {
		return Current{Fit: Idle}
	}
	if p.dropTable != nil {
		return p.shorted(s, x, drop/s.Peak)
	}
	reactance := s.reactance()
	most := s.Peak / s.impedance()
	share := around(reactance/(reactance+s.Ohms), 0, shareNodes)
	mean, variance := p.table.at(1-x/p.table.cutIn, share)
	return Current{Mean: most * mean, Ripple: most * math.Sqrt(variance), CutIn: true, Fit: Tabulated}
}

// Of the second table behind a shorted diode, and how far both are good.
const (
	tableDrop = 0.1 // drop in the shorted loop, over the sink voltage
	mostDrop  = 0.15
)

// shorted is the current behind a shorted diode. The drop in the shorted loop damps
// as a resistance does, and changes the current besides, in proportion.
func (p *path) shorted(s Source, x, drop float64) Current {
	reactance := s.reactance()
	most := s.Peak / s.impedance()
	damps := s.Ohms + drop*s.Peak/most
	fit, part := Tabulated, drop/math.Max(x, tiny)
	if reactance > shortedRatio*damps || part > mostDrop {
		fit = Strained
	}
	ratio := math.Min(reactance/damps, shortedRatio)
	share := around((1-1/math.Sqrt(1+ratio))/(1-1/math.Sqrt(1+shortedRatio)), 0, shareNodes)
	distance := 1 - x/p.table.cutIn
	root := math.Sqrt(distance)
	across := p.table.across(root, share) // both tables bend alike
	mean, variance := p.table.on(distance, distance*root, across, share)
	if of := math.Min(part, mostDrop) / tableDrop; of > 0 {
		m, v := p.dropTable.on(distance, distance*root, across, share)
		mean += of * (m - mean)
		variance += of * (v - variance)
	}
	if mean <= least {
		return Current{Fit: Idle}
	}
	held := 1 + x*ratio
	return Current{Mean: most * mean / held, Ripple: most * math.Sqrt(math.Max(variance, 0)/held), CutIn: true, Fit: fit}
}

const (
	tiny  = 1e-300
	least = 3e-3 // of what the tables hold, which they do not tell from none
)
