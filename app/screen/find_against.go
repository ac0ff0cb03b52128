package screen

import (
	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/machine"
	"coilbook/engine/spec"
)

// speaksAgainst are the readings that would be in spec without a fault, the plainest
// first. Common practice, no source.
var speaksAgainst = map[machine.Kind][]spec.Measurand{
	machine.PhaseOpen:       {spec.ChargePair, spec.ChargeGrounded, spec.ChargeAC},
	machine.PhaseToCore:     {spec.ChargeToCore, spec.ChargeGrounded, spec.ChargeAC},
	machine.PhaseShorted:    {spec.ChargeAC, spec.ChargePair, spec.ChargeGrounded},
	machine.PhaseToPhase:    {spec.PhaseToPhase, spec.ChargeAC, spec.ChargePair},
	machine.PhaseJoint:      {spec.ChargePair, spec.ChargeGrounded, spec.ChargeAC},
	machine.NeutralToCore:   {spec.ChargeToCore, spec.ChargeAC},
	machine.WeakMagnets:     {spec.ChargeAC, spec.ExciterFree},
	machine.DiodeIsOpen:     {spec.Battery5000, spec.Battery3000},
	machine.DiodeIsShorted:  {spec.Battery5000, spec.KeyOffCurrent},
	machine.NoCharging:      {spec.Battery5000, spec.Battery3000},
	machine.NoRegulating:    {spec.Battery5000},
	machine.LowSetPoint:     {spec.Battery5000, spec.Battery3000},
	machine.RegulatorGround: {spec.DropGround},
	machine.ChargePin:       {spec.PlugDrop, spec.Measurand(check.PlugBurnt)},
	machine.FeedWire:        {spec.DropPlus},
	machine.MainFuse:        {spec.Measurand(check.FuseBlown), spec.SupplyKey},
	machine.BatteryTerminal: {spec.DropTerminal, spec.DropPlus},
	machine.Sulphated:       {spec.BatteryCranking, spec.BatteryLamp},
	machine.CellShorted:     {spec.BatteryRest, spec.BatteryCranking},
	machine.FlatBattery:     {spec.BatteryRest, spec.BatteryLamp},
	machine.Drain:           {spec.KeyOffCurrent},
	machine.GroundStrap:     {spec.DropGround, spec.BatteryCranking},
	machine.PickupOpen:      {spec.PickupResistance, spec.PickupCranking},
	machine.PickupShorted:   {spec.PickupResistance, spec.PickupCranking},
	machine.PickupToCore:    {spec.PickupToCore, spec.PickupCranking},
	machine.GapWide:         {spec.PickupGap},
	machine.PlugPin:         {spec.ExciterCranking, spec.Measurand(check.PlugBurnt)},
	machine.ExciterOpen:     {spec.ExciterResist, spec.ExciterFree},
	machine.ExciterShorted:  {spec.ExciterResist, spec.ExciterFree},
	machine.ExciterToCore:   {spec.ExciterResist, spec.ExciterFree},
	machine.BoxDead:         {spec.BoxOutputAC},
	machine.BoxShorted:      {spec.ExciterCranking, spec.BoxOutputAC},
	machine.KillSwitch:      {spec.KillWire},
	machine.KillWire:        {spec.KillWire},
	machine.PrimaryOpen:     {spec.CoilPrimary},
	machine.PrimaryShorted:  {spec.CoilPrimary},
	machine.SecondaryOpen:   {spec.CoilSecondary},
	machine.SecondaryTurns:  {spec.CoilSecondary},
	machine.CapBroken:       {spec.PlugCap},
	machine.PlugFouled:      {spec.PlugLeak},
	machine.IgnitionGround:  {spec.BoxGround},
	machine.BoxFeed:         {spec.BoxFeed, spec.BoxOutputAC},
}

// against is the check that would speak against a kind of fault: one that was not
// done yet, or else, once more, the plainest.
func (t *talk) against(k machine.Kind) (c check.Check, again, ok bool) {
	for _, m := range speaksAgainst[k] {
		for _, one := range t.checks {
			if one.Measures != m {
				continue
			}
			if s, done := t.answer(one.ID); !done || s.entry.Reading == nil {
				return one, false, true
			}
			if !ok {
				c, again, ok = one, true, true
			}
		}
	}
	return c, again, ok
}

// kindOf is the kind of the fault that a finding names.
func kindOf(f diagnose.Finding) machine.Kind {
	for _, s := range f.Faults {
		if s.Fault.ID == f.Fault {
			return s.Fault.Kind
		}
	}
	return ""
}
