package machine

// How the parts are joined. The formulas here and the simulation elsewhere each
// build their circuit from this list, by themselves.
//
// The core of the engine is the reference; "a –X– b" is a resistance X between
// two points, named as check's terminals.
//
// Charge winding. Star: phase i from its lead charge-i to the neutral. Delta:
// phase i from charge-i to the next lead. Single phase: from charge-1 to
// charge-2. Grounded end: from charge-1 to core. Two phases: charge-1 to
// charge-2 and charge-3 to charge-4, a quarter period apart. The emf of a phase
// rises towards its first end, the lead named first; phase 1 leads phase 2 by a
// third of a period, phase 2 phase 3. A Joint sits at the first end; a Ground
// touch counts its share of the wire from there. Bridge lies between two leads
// at the plug.
//
// Turns of one pile (one pole's coil) share their flux, those of different piles do
// not: within a pile inductance goes with the square of the turns, and two parts
// of it couple by PileCoupling. Shorted turns are whole piles first.
//
// Plug. charge-i –ChargePins[i]– regulator-i, exciter –OtherPins– box-exciter,
// pickup-a –OtherPins– box-pickup and pickup-b –OtherPins– box-ground only while
// it is together; those of exciter and pickup also while the engine runs by itself,
// which it could not without them. ground-lead –GroundLead– core always.
//
// Other windings. Lighting: from lighting to core. Exciter: from exciter to core.
// First pickup: from pickup-a to pickup-b. Second: from pickup-2 to core; it is
// not connected to the box.
//
// Regulator. It acts on the voltage from regulator-plus to regulator-body,
// smoothed over SenseTime, so that it holds the mean and not the tops. Upper
// diodes from regulator-i to regulator-plus, lower ones from regulator-body to
// regulator-i. Shunt: a thyristor from each regulator-i to regulator-body, fired
// while that voltage is above the set point. Series: thyristors in place of the
// upper diodes, fired while it is below. Half-wave: one thyristor from
// regulator-1 to regulator-plus, fired likewise, and no diodes; Upper[0] is its
// state. regulator-body –Ground– frame. Unplugged, regulator-1 … and
// regulator-plus hang on nothing else; its body stays bolted on.
//
// Supply. regulator-plus –Feed– fuse-in –Fuse– plus-clamp, which is fuse-out too,
// –Plus– battery-plus. Battery: rest volts, Ohms, and on charge Accept more with
// Layer across it; a discharge meets Ohms alone. battery-minus –Minus– core.
// core –Strap– frame. fuse-in –Key– key-out while the key is on; key-out –Lamp–
// frame. fuse-in –(nominal volts / Drain)– frame. Starter from plus-clamp to core
// while it cranks; below TurnsFrom of the nominal voltage at the posts it turns
// nothing over.
//
// Ignition, AC-fed. box-exciter is the kill-wire too. A diode from box-exciter to
// the capacitor's charged side, one from box-ground to box-exciter (the half wave
// that is not used). The capacitor from there to box-output, which is coil-primary
// too. A thyristor from the charged side to box-ground, fired while box-pickup is
// above box-ground by Trigger, and a diode the other way. A clamp at Clamp volts
// from the charged side to box-ground. box-pickup –Input– box-ground –Ground– core.
//
// Ignition, battery-fed. key-out –Feed– box-feed –Draw– box-ground. A source of
// Volts·(volts from box-feed to box-ground / nominal volts), nothing below ConvertsFrom of
// nominal and for a moment after each discharge, behind Source and a diode onto the
// charged side; the rest as above.
// kill-wire –KillPull– box-feed; grounded, the box does not fire.
//
// Kill. kill-wire –KillContact– core while the switch is closed: with the key
// off, or Stuck. kill-wire –Chafed– core.
//
// Spark. Primary from coil-primary to core, coupled with the secondary from
// spark-lead to core; a share s of shorted turns leaves PassesShort·(1-s) of the
// coupling. spark-lead –Cap– cap-end –Fouling– core, and a gap that
// breaks down at Kilovolts. cap-screw is spark-lead, plug-top cap-end, plug-thread
// core: by themselves, where State.Off says that the cap or the plug is off. A cap
// that is off is off the plug too; its other end meets nothing.
const (
	KillPull    = 10e3   // Ω inside a battery-fed box
	KillContact = 0.1    // Ω of a closed kill switch
	SenseTime   = 1.5e-3 // s
	TurnsFrom   = 0.5
	// Assumptions, no source: how turns of one pile couple, how much of an ignition
	// coil's coupling shorted turns let pass besides the share of them, from which
	// share of the nominal voltage the converter of a battery-fed box works.
	PileCoupling = 0.95
	PassesShort  = 0.5
	ConvertsFrom = 0.6
)
