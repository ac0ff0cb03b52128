package diagnose

import (
	"cmp"
	"slices"

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
	Parts       fault.Parts // that are named; none for no fault
	Fault       fault.ID    // the likeliest of these parts
	Probability float64     // that all of them are at fault
	Also        []AlsoPart  // parts that may be at fault with them, the likeliest first
	Faults      []Suspect   // of all parts, the likeliest first
	Strange     float64
	Unlisted    float64 // that it is none of the catalogue's
	Minutes     float64
	Checks      int // that were answered
	Action      Action
	Unsure      []fault.ID // others that it may be too, the likeliest first
	Slip        check.ID   // a reading that is likelier a mistake than not; "" for none
	SlipChance  float64
}

// AlsoPart is a part that may be at fault with those that are named.
type AlsoPart struct {
	Part  check.Part
	Share float64 // of the cases in which those are: how often this one is too
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
	f.Parts, f.Probability = s.Named()
	f.Also = s.also(f.Parts)
	named := false
	for _, x := range s.Faults {
		switch {
		case !named && f.Parts == x.Fault.Parts():
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

// also are the parts that may be at fault beside those that are named.
func (s Suspects) also(named fault.Parts) []AlsoPart {
	whole := s.Of(named)
	if named.None() || whole == 0 {
		return nil
	}
	by := map[check.Part]float64{}
	for _, set := range s.sets() {
		if !named.Within(set) {
			continue
		}
		for _, part := range set.List() {
			if !named.Has(part) {
				by[part] += s.Parts[set] / whole
			}
		}
	}
	var out []AlsoPart
	for part, share := range by {
		if share >= stillPossible {
			out = append(out, AlsoPart{part, share})
		}
	}
	slices.SortFunc(out, func(a, b AlsoPart) int { return cmp.Or(cmp.Compare(b.Share, a.Share), cmp.Compare(a.Part, b.Part)) })
	return out
}

// remedy is what is done about a fault. Wires, contacts and grounds are mended, a
// joint soldered, a gap set, a flat battery charged; the rest is replaced, and of a
// double one part is enough for that. Common practice, no source.
func remedy(f fault.Fault) Action {
	if f.ID == fault.None {
		return NoFault
	}
	if slices.ContainsFunc(f.Kinds(), replaced) {
		return Replace
	}
	return Repair
}

func replaced(k machine.Kind) bool {
	switch k.Part() {
	case check.Wiring, check.KillCircuit:
		return false
	}
	switch k {
	case machine.PhaseJoint, machine.GapWide, machine.FlatBattery:
		return false
	}
	return true
}
