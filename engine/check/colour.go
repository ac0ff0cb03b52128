package check

import "slices"

// Colour of a lead's insulation. The names are those of IEC 60757 where it has one
// (from memory); light-green and light-blue are met in harnesses beside green and blue
// (common practice, no source).
type Colour string

// Colours of leads.
const (
	Black      Colour = "black"
	Brown      Colour = "brown"
	Red        Colour = "red"
	Orange     Colour = "orange"
	Yellow     Colour = "yellow"
	Green      Colour = "green"
	LightGreen Colour = "light-green"
	Blue       Colour = "blue"
	LightBlue  Colour = "light-blue"
	Violet     Colour = "violet"
	Grey       Colour = "grey"
	White      Colour = "white"
	Pink       Colour = "pink"
)

// Colours lists them.
func Colours() []Colour {
	return []Colour{Black, Brown, Red, Orange, Yellow, Green, LightGreen, Blue, LightBlue, Violet, Grey, White, Pink}
}

// Wire is how a lead looks: its colour, and that of a stripe along it; "" for none.
type Wire struct{ Base, Stripe Colour }

// PlugLeads lists the leads that a build has in the generator's plug, as they are
// asked for.
func PlugLeads(b Build) []Terminal {
	var out []Terminal
	for i := range b.ChargeLeads {
		out = append(out, Charge(i+1))
	}
	if b.Exciter {
		out = append(out, ExciterLead)
	}
	if b.Pickup {
		out = append(out, PickupA, PickupB)
	}
	if b.GroundLead {
		out = append(out, GroundLead)
	}
	return out
}

// everyPlugLead is that of a build with all there can be.
var everyPlugLead = PlugLeads(Build{ChargeLeads: MaxChargeLeads, Exciter: true, Pickup: true, GroundLead: true})

// IsPlugLead reports whether some build has a lead in the generator's plug.
func IsPlugLead(t Terminal) bool { return slices.Contains(everyPlugLead, t) }
