package diagnose

import (
	"coilbook/engine/check"
	"coilbook/engine/fault"
	"coilbook/engine/machine"
)

// DrawnSound is the n-th sound machine of a build's population, and beyond it.
func DrawnSound(b check.Build, n int) (machine.Machine, bool) {
	c := caseOf{fault: fault.Fault{ID: fault.None}}
	return c.machineOf(n, builds(b))
}
