package winding

// told is how many standard uncertainties tell a value from a bound: what lies
// on the wrong side of it strays so far once in twenty (normal quantile).
const told = 1.645

// SharePerDrop is the share of the turns of one phase that is shorted, over the
// part by which that lowers the reading of its own pair: exact for a star, and
// for a delta at small shares (derived). A large short in a delta lowers its
// pair by more, so that a limit from it is on the safe side.
func (c Connection) SharePerDrop() float64 {
	c.mustHaveThreeLeads()
	if c == Star {
		return 2
	}
	return 1.5
}

// DecisionLimit is the share of shorted turns of one phase from which on a
// reading is said to show a short, when the pair, or its ratio to another pair,
// has the relative standard uncertainty u (L_C of Currie 1968, from memory). A
// sound winding is accused in 5 % of cases; a short of just this size is found
// in half.
//
// The natural unbalance of phases and their difference in temperature belong
// into u: with a good method they are most of it. Above 1, no short is shown.
func (c Connection) DecisionLimit(u float64) float64 { return c.SharePerDrop() * told * u }

// DetectionLimit is the smallest share that is found in 95 % of cases (L_D of
// Currie 1968, from memory): what may be said not to be there when nothing was
// found. Above 1, nothing may.
func (c Connection) DetectionLimit(u float64) float64 { return c.SharePerDrop() * 2 * told * u }
