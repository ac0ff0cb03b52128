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
