package spec

// Measurand names what a limit limits: one property of one part in one state.
type Measurand string

// The measurands of the bench and connector checks.
const (
	LeadZero         Measurand = "lead-zero"
	CoreContinuity   Measurand = "core-continuity"
	ChargePair       Measurand = "charge-pair-resistance"
	ChargeGrounded   Measurand = "charge-grounded-resistance"
	ChargeToCore     Measurand = "charge-to-core"
	PhaseToPhase     Measurand = "phase-to-phase"
	ChargeBalance    Measurand = "charge-balance"
	PickupResistance Measurand = "pickup-resistance"
	PickupGap        Measurand = "pickup-gap"
	ExciterResist    Measurand = "exciter-resistance"
	ExciterCranking  Measurand = "exciter-cranking-ac"
)

// The measurands of better methods with the same meter.
const (
	ResistorDrop  Measurand = "resistor-drop"         // volts over a known resistor
	WindingDrop   Measurand = "winding-drop"          // volts over a winding in the same circuit
	FineBalance   Measurand = "charge-balance-fine"   // windings compared by their drops
	HotResistance Measurand = "hot-resistance"        // of a winding right after a run
	WindingHeat   Measurand = "winding-temperature"   // worked out from cold and hot
	ExciterPeak   Measurand = "exciter-cranking-peak" // behind a peak-hold adapter
	PickupPeak    Measurand = "pickup-cranking-peak"  // likewise
	BoxPeak       Measurand = "ignition-box-peak"     // likewise
)

// The measurands of a meter's self-check.
const (
	BatteryVolts  Measurand = "battery-dc"
	BatteryOnAC   Measurand = "battery-on-ac"
	KnownResistor Measurand = "known-resistor"
)
