package diagnose

import (
	"math"
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/fault"
)

// unconfirmed is the first check that the catalogue wants done before what is named is
// bought or mended, and that was not. It is asked for whatever it is expected to tell: a
// fault that nobody thought of may pass for the one that is named. Once one of the part's
// own has shown the fault, the others are left out.
func (c *Conversation) unconfirmed() (next Choice, ok bool) {
	f := c.Finding()
	if f.Action != Replace && f.Action != Repair {
		return Choice{}, false
	}
	at := slices.IndexFunc(f.Faults, func(s Suspect) bool { return s.Fault.ID == f.Fault })
	named := f.Faults[at].Fault
	if c.shown(named, named.Confirm) {
		return Choice{}, false
	}
	for _, id := range named.Confirm {
		if next, ok = c.Choice(id); ok && !next.Again {
			next.Confirms = true
			return next, true
		}
	}
	return Choice{}, false
}

// showsItself is how many bits an answer must speak for a fault to show it: eight times
// likelier with it than on a sound machine. An assumption, no source.
const showsItself = 3

// shown reports whether an answer to one of some checks, of the part itself, shows a
// fault.
func (c *Conversation) shown(f fault.Fault, by []check.ID) bool {
	m, first := c.model, c.atFirst()
	return slices.ContainsFunc(latest(c.Evidence()), func(e Evidence) bool {
		if !slices.Contains(by, e.Check) || !f.Parts().Has(m.Checks[m.index[e.Check]].Part) {
			return false
		}
		likes := c.alone(e)
		with := m.among(first, likes, func(h hypothesis) bool { return h.fault.ID == f.ID })
		sound := m.among(first, likes, func(h hypothesis) bool { return h.fault.ID == fault.None })
		return sound > 0 && math.Log2(with/sound) >= showsItself
	})
}
