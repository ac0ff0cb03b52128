package winding

import "fmt"

// BalanceLimits are the shares of shorted turns of one phase from which on a
// balance rule finds the short: in half of the cases, and in 95 % of them. They
// are the decision and the detection limit (Currie 1968, from memory) of this
// rule: each reading is compared with the mean of all, and one is said to differ
// when the furthest is off by more than limit with 95 % probability.
//
// The readings are those between the leads of a star or delta, or of the coils
// of a pair. limit is a fraction of the mean, u the standard uncertainty of one
// deviation from the mean as such a fraction, without what the readings share,
// both from 0. A natural unbalance of the phases belongs into u, where the limit
// has not been drawn wide enough for it. Above 1, no short is found so.
//
// The limits hold for doubts small against the limit. Where they are not, a
// reading may be off by chance too, and somewhat smaller shorts are found: these
// limits are then on the safe side. It panics on a single coil.
func (c Connection) BalanceLimits(limit, u float64) (decision, detection float64) {
	return c.shareOff(limit + told*u), c.shareOff(limit + 2*told*u)
}

// shareOff is the share of shorted turns that puts the furthest reading off the
// mean by the fraction d. Derived from the signatures: of a star 2-k, 2, 2-k, the
// odd pair is off by k/(3-k), upwards; of a delta 2(1-k), 2-k, 2-k, over 3-k, its
// own pair by k/(3-2k), downwards; of two coils 1-k, 1, both by k/(2-k).
func (c Connection) shareOff(d float64) float64 {
	switch c {
	case Star:
		return 3 / (1/d + 1)
	case Delta:
		return 3 / (1/d + 2)
	case Two, TwoGrounded:
		return 2 / (1/d + 1)
	}
	panic(fmt.Sprintf("winding: a %v has nothing to be compared with", c))
}
