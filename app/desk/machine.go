package desk

import (
	"github.com/google/uuid"

	"coilbook/engine/assess"
)

// Machine lays out the listed sessions on the machine of one of them, that one
// included, each on its own meter and limits. A session without a name is of no
// known machine.
func (d *Desk) Machine(id uuid.UUID) []assess.Bench {
	here, ok := d.Bench(id)
	if !ok {
		return nil
	}
	var out []assess.Bench
	for _, st := range d.Sessions() {
		if assess.SameMachine(st.Setup, here.State.Setup) {
			out = append(out, assess.Open(st, d.Profiles()))
		}
	}
	return out
}
