package diagnose

import (
	"coilbook/engine/check"
	"coilbook/engine/fault"
	"coilbook/engine/machine"
)

// Action is what a finding asks to be done.
type Action string

// Actions.
const (
	Replace   Action = "replace"
	Repair    Action = "repair"
	NoFault   Action = "no fault found"
	NotListed Action = "not on the list" // the readings fit no fault of the catalogue
	Open      Action = "not settled"     // no part is likelier than all others
)

// Finding is how a conversation ends.
type Finding struct {
	Part        check.Part // "" for no fault
	Fault       fault.ID   // the likeliest of the part's
	Probability float64    // of the part
	Faults      []Suspect  // of all parts, the likeliest first
	Strange     float64
	Unlisted    float64 // that it is none of the catalogue's
	Minutes     float64
	Checks      int // that were answered
	Action      Action
	Unsure      []fault.ID // others that it may be too, the likeliest first
	Slip        check.ID   // a reading that is likelier a mistake than not; "" for none
	SlipChance  float64
}

// Bounds of a finding. Assumptions, no source: readings that hardly any machine of
// any fault would show, and enough of them, mean a fault that is not in the
// catalogue; one possibility in twenty is still one.
const (
	tooStrange    = 0.99
	settledFrom   = 0.5
	strangeFrom   = 4 // answers
	stillPossible = 0.05
	likelySlip    = 0.5
)

// Finding is what the answers so far come to, at any time.
func (c *Conversation) Finding() Finding {
	s := c.Suspects()
	f := Finding{Faults: s.Faults, Strange: s.Strange, Unlisted: s.Unlisted, Minutes: c.minutes, Checks: len(c.answers)}
	f.Part, f.Probability = s.Part()
	named := false
	for _, x := range s.Faults {
		switch {
		case !named && x.Fault.Part() == f.Part:
			f.Fault, f.Action, named = x.Fault.ID, remedy(x.Fault), true
		case x.Probability >= stillPossible:
			f.Unsure = append(f.Unsure, x.Fault.ID)
		}
	}
	if f.Probability < settledFrom || len(c.answers) == 0 {
		f.Action = Open
	}
	if len(c.answers) >= strangeFrom && (s.Unlisted > f.Probability || s.Strange >= tooStrange) {
		f.Action = NotListed
	}
	for _, a := range c.answers {
		if p := s.Slips[a.check.ID]; p >= likelySlip && p > f.SlipChance {
			f.Slip, f.SlipChance = a.check.ID, p
		}
	}
	return f
}

// remedy is what is done about a fault. Wires, contacts and grounds are mended, a
// joint soldered, a gap set, a flat battery charged; the rest is replaced. Common
// practice, no source.
func remedy(f fault.Fault) Action {
	if f.ID == fault.None {
		return NoFault
	}
	switch f.Part() {
	case check.Wiring, check.KillCircuit:
		return Repair
	}
	switch f.Kind {
	case machine.PhaseJoint, machine.GapWide, machine.FlatBattery:
		return Repair
	}
	return Replace
}
