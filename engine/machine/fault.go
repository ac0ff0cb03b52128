package machine

import "math"

// Kind names what is wrong, by what it does to the parts.
type Kind string

// Faults of the charging side.
const (
	PhaseOpen       Kind = "phase-open"        // At: phase
	PhaseToCore     Kind = "phase-to-core"     // At: phase; Size: share of the wire before the touch
	PhaseShorted    Kind = "phase-turns"       // At: phase; Size: share of its turns
	PhaseToPhase    Kind = "phase-to-phase"    // At: lead that touches the next
	PhaseJoint      Kind = "phase-joint"       // At: phase; Size: Ω
	NeutralToCore   Kind = "neutral-to-core"   // of a star
	WeakMagnets     Kind = "weak-magnets"      // Size: share of the flux that is lost
	DiodeIsOpen     Kind = "diode-open"        // At: 1 to 8, uppers first
	DiodeIsShorted  Kind = "diode-shorted"     // At: likewise
	NoCharging      Kind = "regulator-dead"    // its thyristors keep all from the battery
	NoRegulating    Kind = "regulator-unbound" // they never hold the voltage down
	LowSetPoint     Kind = "set-point-low"     // Size: V
	RegulatorGround Kind = "regulator-ground"  // Size: Ω
	ChargePin       Kind = "charge-pin"        // At: lead; Size: Ω, some of it loose
	FeedWire        Kind = "feed-wire"         // Size: Ω
	MainFuse        Kind = "main-fuse"         // blown
	BatteryTerminal Kind = "battery-terminal"  // Size: Ω
	Sulphated       Kind = "battery-sulphated" // Size: times its resistance
	CellShorted     Kind = "battery-cell"      // one cell
	FlatBattery     Kind = "battery-flat"      // Size: state of charge left
	Drain           Kind = "drain"             // Size: A
	GroundStrap     Kind = "ground-strap"      // Size: Ω
)

// Faults of the ignition side.
const (
	PickupOpen     Kind = "pickup-open"
	PickupShorted  Kind = "pickup-turns" // Size: share of its turns
	PickupToCore   Kind = "pickup-to-core"
	GapWide        Kind = "pickup-gap" // Size: m more than usual
	PlugPin        Kind = "plug-pin"   // of pickup and exciter; Size: Ω, some of it loose
	ExciterOpen    Kind = "exciter-open"
	ExciterShorted Kind = "exciter-turns" // Size: share of its turns
	ExciterToCore  Kind = "exciter-to-core"
	BoxDead        Kind = "box-dead"
	BoxShorted     Kind = "box-shorted" // its input diode conducts both ways
	KillSwitch     Kind = "kill-switch" // stays closed
	KillWire       Kind = "kill-wire"   // chafed; Size: Ω to the core
	PrimaryOpen    Kind = "primary-open"
	PrimaryShorted Kind = "primary-turns" // Size: share of its turns
	SecondaryOpen  Kind = "secondary-open"
	SecondaryTurns Kind = "secondary-turns" // Size: share of its turns
	CapBroken      Kind = "cap-broken"
	PlugFouled     Kind = "plug-fouled"     // Size: Ω across the gap
	IgnitionGround Kind = "ignition-ground" // Size: Ω
	BoxFeed        Kind = "box-feed"        // Size: Ω
)

// Fault is one thing wrong: where (counted from 1) and how much of it.
type Fault struct {
	Kind    Kind
	At      int
	Size    float64
	HotOnly bool // only when warm
}

// With is the machine with faults. A fault of a part that the build lacks does
// nothing; Suits tells.
func (m Machine) With(faults ...Fault) Machine {
	m.Faults = append(append([]Fault(nil), m.Faults...), faults...)
	for _, f := range faults {
		if f.HotOnly {
			m.hotOnly = append(append([]Fault(nil), m.hotOnly...), f)
			continue
		}
		f.strike(&m)
	}
	return m
}

// Changed is the machine with parts exchanged for a moment, whatever it is warm:
// a good plug held to the lead, a wire taken off.
func (m Machine) Changed(parts func(*Machine)) Machine {
	parts(&m)
	return m
}

// Suits reports whether the build has the part, and At points at one of it.
func (f Fault) Suits(b Build) bool {
	switch f.Kind {
	case PhaseOpen, PhaseToCore, PhaseShorted, PhaseJoint:
		return f.At >= 1 && f.At <= b.Charge.Phases()
	case PhaseToPhase:
		return f.At >= 1 && f.At < max(b.Charge.Leads(), 1)
	case NeutralToCore:
		return b.Charge == Star
	case ChargePin:
		return f.At >= 1 && f.At <= b.Charge.Leads()
	case DiodeIsOpen, DiodeIsShorted:
		if b.Regulating == HalfWave {
			return f.At == 1
		}
		return f.At >= 1 && f.At <= 2*b.Charge.Leads()
	case ExciterOpen, ExciterShorted, ExciterToCore, BoxShorted:
		return b.Exciter()
	case BoxFeed:
		return b.Ignition == BatteryFed
	}
	return strikes[f.Kind] != nil
}

// looseShare is how much of a bad pin's resistance comes and goes. An
// assumption, no source.
const looseShare = 0.4

func bad(ohms float64) Contact {
	return Contact{Ohms: ohms * (1 - looseShare), Loose: ohms * looseShare}
}

func (f Fault) strike(m *Machine) {
	if do := strikes[f.Kind]; do != nil && f.Suits(m.Build) {
		do(m, f)
	}
}

var strikes = map[Kind]func(*Machine, Fault){
	PhaseOpen:      func(m *Machine, f Fault) { m.Phases[f.At-1].Joint = math.Inf(1) },
	PhaseToCore:    func(m *Machine, f Fault) { m.Phases[f.At-1].Ground = Touch{At: f.Size, Ohms: touchOhms} },
	PhaseShorted:   func(m *Machine, f Fault) { m.Phases[f.At-1].Short.Share = f.Size },
	PhaseToPhase:   func(m *Machine, f Fault) { m.Bridge = Bridge{From: f.At, To: f.At + 1, Ohms: touchOhms} },
	PhaseJoint:     func(m *Machine, f Fault) { m.Phases[f.At-1].Joint += f.Size },
	NeutralToCore:  func(m *Machine, _ Fault) { m.Neutral = Touch{Ohms: touchOhms} },
	WeakMagnets:    func(m *Machine, f Fault) { m.Magnets.Strength *= 1 - f.Size },
	DiodeIsOpen:    func(m *Machine, f Fault) { *m.diode(f.At) = DiodeOpen },
	DiodeIsShorted: func(m *Machine, f Fault) { *m.diode(f.At) = DiodeShorted },
	NoCharging: func(m *Machine, _ Fault) {
		m.Regulator.Thyristors = NeverFire
		if m.Build.Regulating == Shunt {
			m.Regulator.Thyristors = AlwaysFire
		}
	},
	NoRegulating: func(m *Machine, _ Fault) {
		m.Regulator.Thyristors = AlwaysFire
		if m.Build.Regulating == Shunt {
			m.Regulator.Thyristors = NeverFire
		}
	},
	LowSetPoint:     func(m *Machine, f Fault) { m.Regulator.SetPoint = f.Size },
	RegulatorGround: func(m *Machine, f Fault) { m.Regulator.Ground = Contact{Ohms: f.Size} },
	ChargePin:       func(m *Machine, f Fault) { m.Harness.ChargePins[f.At-1] = bad(f.Size) },
	FeedWire:        func(m *Machine, f Fault) { m.Harness.Feed = Contact{Ohms: f.Size} },
	MainFuse:        func(m *Machine, _ Fault) { m.Harness.Fuse = Contact{Ohms: math.Inf(1)} },
	BatteryTerminal: func(m *Machine, f Fault) { m.Harness.Plus = bad(f.Size) },
	Sulphated: func(m *Machine, f Fault) {
		m.Battery.Ohms *= f.Size
		m.Battery.Accept *= f.Size
	},
	CellShorted: func(m *Machine, _ Fault) { m.Battery.Shorted = 1 },
	FlatBattery: func(m *Machine, f Fault) { m.Battery.Charge = f.Size },
	Drain:       func(m *Machine, f Fault) { m.Harness.Drain = f.Size },
	GroundStrap: func(m *Machine, f Fault) { m.Harness.Strap = Contact{Ohms: f.Size} },

	PickupOpen:     func(m *Machine, _ Fault) { m.Pickups[0].Joint = math.Inf(1) },
	PickupShorted:  func(m *Machine, f Fault) { m.Pickups[0].Short.Share = f.Size },
	PickupToCore:   func(m *Machine, _ Fault) { m.Pickups[0].Ground = Touch{At: 0.3, Ohms: touchOhms} },
	GapWide:        func(m *Machine, f Fault) { m.Reluctor.Gap = m.Reluctor.Usual + f.Size },
	PlugPin:        func(m *Machine, f Fault) { m.Harness.OtherPins = bad(f.Size) },
	ExciterOpen:    func(m *Machine, _ Fault) { m.Exciter.Joint = math.Inf(1) },
	ExciterShorted: func(m *Machine, f Fault) { m.Exciter.Short.Share = f.Size },
	ExciterToCore:  func(m *Machine, _ Fault) { m.Exciter.Ground = Touch{At: 0.2, Ohms: touchOhms} },
	BoxDead:        func(m *Machine, _ Fault) { m.Box.Dead = true },
	BoxShorted:     func(m *Machine, _ Fault) { m.Box.Shorted = true },
	KillSwitch:     func(m *Machine, _ Fault) { m.Kill.Stuck = true },
	KillWire:       func(m *Machine, f Fault) { m.Kill.Chafed = f.Size },
	PrimaryOpen:    func(m *Machine, _ Fault) { m.Spark.Primary.Joint = math.Inf(1) },
	PrimaryShorted: func(m *Machine, f Fault) { m.Spark.Primary.Short.Share = f.Size },
	SecondaryOpen:  func(m *Machine, _ Fault) { m.Spark.Secondary.Joint = math.Inf(1) },
	SecondaryTurns: func(m *Machine, f Fault) { m.Spark.Secondary.Short.Share = f.Size },
	CapBroken:      func(m *Machine, _ Fault) { m.Spark.Cap = math.Inf(1) },
	PlugFouled:     func(m *Machine, f Fault) { m.Spark.Fouling = f.Size },
	IgnitionGround: func(m *Machine, f Fault) { m.Box.Ground = Contact{Ohms: f.Size} },
	BoxFeed:        func(m *Machine, f Fault) { m.Box.Feed = Contact{Ohms: f.Size} },
}

// touchOhms is the contact of bare copper that lies on the core. An assumption,
// no source.
const touchOhms = 0.05

// diode counts the uppers by lead and then the lowers.
func (m *Machine) diode(n int) *Diode {
	if leads := m.Build.Charge.Leads(); n > leads {
		return &m.Regulator.Lower[n-leads-1]
	}
	return &m.Regulator.Upper[n-1]
}

// Kinds lists every fault there is, in a fixed order.
func Kinds() []Kind {
	return []Kind{
		PhaseOpen, PhaseToCore, PhaseShorted, PhaseToPhase, PhaseJoint, NeutralToCore, WeakMagnets, DiodeIsOpen, DiodeIsShorted,
		NoCharging, NoRegulating, LowSetPoint, RegulatorGround, ChargePin, FeedWire, MainFuse, BatteryTerminal, Sulphated,
		CellShorted, FlatBattery, Drain, GroundStrap, PickupOpen, PickupShorted, PickupToCore, GapWide, PlugPin, ExciterOpen,
		ExciterShorted, ExciterToCore, BoxDead, BoxShorted, KillSwitch, KillWire, PrimaryOpen, PrimaryShorted, SecondaryOpen,
		SecondaryTurns, CapBroken, PlugFouled, IgnitionGround, BoxFeed,
	}
}
