package check

// Build is what is known of the generator's architecture. The zero value is not
// useful; start from DefaultBuild. A field that the user is not sure of keeps
// its default and is listed in Unsure.
type Build struct {
	StatorPoles int  `json:"statorPoles"`
	ChargeLeads int  `json:"chargeLeads"` // 1 to 4, see Phases
	Exciter     bool `json:"exciter"`     // a wrapped pole that feeds the ignition box
	Pickup      bool `json:"pickup"`
	GroundLead  bool `json:"groundLead"` // a lead of the plug that goes to the core
}

// Limits of what a Build may hold.
const (
	MinPoles, MaxPoles             = 1, 36
	MinChargeLeads, MaxChargeLeads = 1, 4
)

// DefaultBuild is the commonest small generator: three charge leads, wrapped
// exciter pole, pickup, ground lead. Common practice, no source.
func DefaultBuild() Build {
	return Build{StatorPoles: 12, ChargeLeads: 3, Exciter: true, Pickup: true, GroundLead: true}
}

// Phases of the charge winding by the number of its leads: one lead is a single
// phase whose other end sits on the core, two leads a single phase, three a
// three-phase winding, four two separate phases.
func (b Build) Phases() int {
	return [...]int{0, 1, 1, 3, 2}[b.ChargeLeads]
}

// Pairs lists the lead pairs that have a winding between them.
func (b Build) Pairs() [][2]int {
	switch b.ChargeLeads {
	case 2:
		return [][2]int{{1, 2}}
	case 3:
		return [][2]int{{1, 2}, {2, 3}, {3, 1}}
	case 4:
		return [][2]int{{1, 2}, {3, 4}}
	}
	return nil
}

// GroundedEnd reports whether the charge winding is connected to the core by
// design, so that a lead must not read open to it.
func (b Build) GroundedEnd() bool { return b.ChargeLeads == 1 }
