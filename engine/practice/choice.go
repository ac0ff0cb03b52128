package practice

import "coilbook/engine/machine"

// Choices are the faults that the user can name: all that the build can have, so
// that the list tells nothing about the level's pool.
func (b Bench) Choices() []machine.Kind {
	var out []machine.Kind
	for _, k := range machine.Kinds() {
		if (machine.Fault{Kind: k, At: 1}).Suits(b.Build) {
			out = append(out, k)
		}
	}
	return out
}

// Outcome is how near a named fault comes.
type Outcome int

// Outcomes.
const (
	WrongPart Outcome = iota
	RightPart
	RightFault
)

// Truth is what was wrong with the machine.
func (b Bench) Truth() machine.Fault { return b.fault }

// Judge says how near a named fault comes to the truth.
func (b Bench) Judge(named machine.Kind) Outcome {
	switch {
	case named == b.fault.Kind:
		return RightFault
	case named.Part() == b.fault.Kind.Part():
		return RightPart
	}
	return WrongPart
}
