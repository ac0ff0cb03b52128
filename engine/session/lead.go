package session

import (
	"fmt"
	"slices"

	"coilbook/engine/check"
)

// Lead says what colour a lead of the generator's plug has on this machine.
type Lead struct {
	Lead   check.Terminal `json:"lead"`
	Colour check.Colour   `json:"colour"`
	Stripe check.Colour   `json:"stripe,omitempty"`
}

// Wires are the leads whose colour is known.
func (s Setup) Wires() map[check.Terminal]check.Wire {
	out := map[check.Terminal]check.Wire{}
	for _, l := range s.Leads {
		out[l.Lead] = check.Wire{Base: l.Colour, Stripe: l.Stripe}
	}
	return out
}

// Painted gives the leads with the colours of one of them changed; a wire without a
// colour is no longer listed. A stripe in the colour of its lead is none.
func Painted(leads []Lead, t check.Terminal, w check.Wire) []Lead {
	out := slices.DeleteFunc(slices.Clone(leads), func(l Lead) bool { return l.Lead == t })
	if w.Base == "" {
		return out
	}
	if w.Stripe == w.Base {
		w.Stripe = ""
	}
	return append(out, Lead{t, w.Base, w.Stripe})
}

func (s Setup) leadsValid() error {
	seen := map[check.Terminal]bool{}
	for i, l := range s.Leads {
		field := func(name string) string { return fmt.Sprintf("leads[%d].%s", i, name) }
		switch {
		case !check.IsPlugLead(l.Lead):
			return &FieldError{field("lead"), fmt.Sprintf("is %.40q", string(l.Lead)), "name a lead of the generator's plug such as charge-1"}
		case seen[l.Lead]:
			return &FieldError{field("lead"), "stands twice", "name each lead once"}
		case !slices.Contains(check.Colours(), l.Colour):
			return &FieldError{field("colour"), fmt.Sprintf("is %.40q", string(l.Colour)), "use one of the listed colours such as yellow"}
		case l.Stripe != "" && !slices.Contains(check.Colours(), l.Stripe):
			return &FieldError{field("stripe"), fmt.Sprintf("is %.40q", string(l.Stripe)), "use one of the listed colours, or leave it out"}
		case l.Stripe == l.Colour:
			return &FieldError{field("stripe"), "has the colour of its lead", "leave it out"}
		}
		seen[l.Lead] = true
	}
	return nil
}
