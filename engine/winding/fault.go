package winding

import "fmt"

// FaultKind is what can be wrong with a winding.
type FaultKind int

// The faults. Share is 0 to 1 wherever it is used.
const (
	NoFault       FaultKind = iota
	PhaseOpen               // phase At is broken
	LeadOpen                // the lead At is broken, outside all other faults
	PoorJoint               // a joint in lead At takes the share Share of what it and a phase have together
	TurnsShorted            // the share Share of the turns of phase At is bypassed
	PhaseShorted            // all of phase At is
	Bridged                 // leads At and To touch
	LeadToCore              // lead At touches the core
	NeutralToCore           // the common point of a star touches the core
	PhaseToCore             // phase At touches the core at the share Share of its turns, from its first end
)

var faultNames = [...]string{
	"no fault", "phase open", "lead open", "poor joint", "turns shorted", "phase shorted",
	"leads bridged", "lead to core", "neutral to core", "phase to core",
}

func (k FaultKind) String() string { return faultNames[k] }

// Fault is one fault at one place. At counts leads or phases from 0, as its Kind
// says.
type Fault struct {
	Kind   FaultKind
	At, To int
	Share  float64
}

// mustSuit panics on a fault that the winding has no place for.
func (f Fault) mustSuit(c Connection) {
	places := c.Leads()
	switch f.Kind {
	case PhaseOpen, TurnsShorted, PhaseShorted, PhaseToCore:
		places = c.Phases()
	case NeutralToCore:
		if c != Star {
			places = 0
		}
	}
	if f.At < 0 || f.At >= places || f.To < 0 || f.To >= c.Leads() || !(f.Share >= 0 && f.Share <= 1) {
		panic(fmt.Sprintf("winding: a %v has no place for %+v", c, f))
	}
}
