package machine

import "coilbook/engine/check"

// RunningAt is the machine with its throttle held: an engine that runs by itself
// does so at rpm (1/min), whatever speed its state names. For curves over speed;
// the formulas hold as far as those of the named speeds do. Zero or less gives the
// machine back.
func (m Machine) RunningAt(rpm float64) Machine {
	m.runs = max(rpm, 0)
	return m
}

// ChargeAt is ChargeState of an engine that runs by itself at rpm, everything
// plugged in and the key on; at zero it stands with the key off.
func (m Machine) ChargeAt(rpm float64, hot bool) Supply {
	s := State{Plug: check.Together, Hot: hot}
	if rpm > 0 {
		s.Engine, s.Key = check.At3000, true
	}
	return m.RunningAt(rpm).ChargeState(s)
}
