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

// The measurands of a whole machine.
const (
	BatteryRest     Measurand = "battery-rest"
	BatteryLamp     Measurand = "battery-lamp-on"
	BatteryCranking Measurand = "battery-cranking"
	BatteryIdle     Measurand = "battery-idle"
	Battery3000     Measurand = "battery-3000"
	Battery5000     Measurand = "battery-5000"
	DropPlus        Measurand = "drop-plus"
	DropGround      Measurand = "drop-ground"
	DropTerminal    Measurand = "drop-terminal"
	SupplyKey       Measurand = "supply-key-on"
	KeyOffCurrent   Measurand = "key-off-current"
	ChargeAC        Measurand = "charge-ac-open"
	PlugDrop        Measurand = "plug-drop"
	PickupToCore    Measurand = "pickup-to-core"
	PickupCranking  Measurand = "pickup-cranking-ac"
	PinPickup       Measurand = "pin-pickup" // across the plug that is together
	PinExciter      Measurand = "pin-exciter"
	ExciterFree     Measurand = "exciter-cranking-ac-free"
	KillWire        Measurand = "kill-wire-to-core"
	BoxGround       Measurand = "box-ground"
	BoxFeed         Measurand = "box-feed"
	BoxOutputAC     Measurand = "box-output-ac"
	CoilPrimary     Measurand = "coil-primary"
	CoilSecondary   Measurand = "coil-secondary"
	PlugCap         Measurand = "plug-cap"
	PlugLeak        Measurand = "plug-leak"
	DiodeToPlus     Measurand = "diode-to-plus"     // volts of a small current from a lead of the regulator to its plus
	DiodeFromGround Measurand = "diode-from-ground" // from its ground to a lead
)
