package circuit

import "math"

// Arrangement is a winding and a rectifier, whole or with one fault.
type Arrangement int

const (
	// StarBridge is three phases in star before six diodes.
	StarBridge Arrangement = iota
	// StarDiodeOpen is a StarBridge of which one diode does not conduct.
	StarDiodeOpen
	// StarDiodeShorted is a StarBridge of which one diode conducts both ways.
	StarDiodeShorted
	// StarPhaseOpen is a StarBridge with one phase cut: the two others in series
	// before four diodes.
	StarPhaseOpen
	// DeltaBridge is three branches in delta before six diodes.
	DeltaBridge
	// DeltaBranchOpen is a DeltaBridge with one branch cut. Its open-circuit
	// voltages are those of the whole delta.
	DeltaBranchOpen
	// FullWave is one coil before four diodes.
	FullWave
	// HalfWave is one coil and one diode.
	HalfWave
	// FullWaveDiodeOpen is a FullWave of which one diode does not conduct.
	FullWaveDiodeOpen
	// FullWaveDiodeShorted is a FullWave of which one diode conducts both ways.
	FullWaveDiodeShorted

	arrangements int = iota
)

func (a Arrangement) known() bool { return a >= 0 && int(a) < arrangements }

// path is how an arrangement comes down to one of the tables.
type path struct {
	table     *table
	dropTable *table // the same with a drop in the shorted loop
	peak      float64
	impedance float64 // phase of the table over phase of the source
	drops     float64 // diodes that the current passes one after the other
	diodes    float64 // resistances of a diode in a phase of the table; fitted to an
	// integration where a phase has not always one and the same in series
}

var sqrt3 = math.Sqrt(3)

var paths = [arrangements]path{
	StarBridge:           {table: &starTable, peak: 1, impedance: 1, drops: 2, diodes: 1},
	StarDiodeOpen:        {table: &starOpenTable, peak: 1, impedance: 1, drops: 2, diodes: 1},
	StarDiodeShorted:     {table: &starShortedTable, dropTable: &starShortedDropTable, peak: 1, impedance: 1, drops: 1, diodes: 2. / 3},
	StarPhaseOpen:        {table: &singleTable, peak: sqrt3, impedance: 2, drops: 2, diodes: 2},
	DeltaBridge:          {table: &starTable, peak: 1 / sqrt3, impedance: 1. / 3, drops: 2, diodes: 1},
	DeltaBranchOpen:      {table: &veeTable, peak: 1, impedance: 1, drops: 2, diodes: 2.5},
	FullWave:             {table: &singleTable, peak: 1, impedance: 1, drops: 2, diodes: 2},
	HalfWave:             {table: &halfTable, peak: 1, impedance: 1, drops: 1, diodes: 1},
	FullWaveDiodeOpen:    {table: &halfTable, peak: 1, impedance: 1, drops: 2, diodes: 2},
	FullWaveDiodeShorted: {table: &singleShortedTable, dropTable: &singleShortedDropTable, peak: 1, impedance: 1, drops: 1, diodes: 1},
}

// phase is the source as the table has it, with the diodes' resistance.
func (p *path) phase(s Source, diode float64) Source {
	return Source{
		Peak:    s.Peak * p.peak,
		Ohms:    s.Ohms*p.impedance + diode*p.diodes,
		Henries: s.Henries * p.impedance,
		Hertz:   s.Hertz,
	}
}

// CutInRatio is the largest sink voltage, with the drops of the diodes in its way,
// that the arrangement drives current against, over the peak of a phase: √3 for a
// star, 1 for a coil or a delta. Behind a shorted diode that holds as long as the
// current of the shorted loop dies away in time, at ωL below about 2.5 times R, and
// less is reached beyond. NaN for an unknown arrangement.
func (a Arrangement) CutInRatio() float64 {
	switch a {
	case StarBridge, StarDiodeOpen, StarDiodeShorted, StarPhaseOpen:
		return sqrt3
	}
	if !a.known() {
		return math.NaN()
	}
	return 1
}

// Drops is how many diodes the charging current passes one after the other.
func (a Arrangement) Drops() int {
	if !a.known() {
		return 0
	}
	return int(paths[a].drops)
}
