package assess

import (
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/spec"
	"coilbook/engine/winding"
)

// Balance is the verdict on leads that should read alike.
type Balance struct {
	Verdict spec.Verdict
	Checks  []check.Check // the readings compared, in order
	Missing int           // readings still to come
	// Half and Most are the shares of one phase's turns whose short would be told
	// in half of cases and in 95 %; above 1, none would. Zero without readings.
	Half, Most float64
}

// coarse compares the ohm readings of the lead pairs.
func (b Bench) coarse(lines []Line) *Balance {
	var pairs []Line
	missing := 0
	var all []check.Check
	for _, l := range lines {
		if l.Check.Measures != spec.ChargePair {
			continue
		}
		all = append(all, l.Check)
		if !l.Read() {
			missing++
			continue
		}
		pairs = append(pairs, l)
	}
	out := b.compared(spec.ChargeBalance, pairs, missing)
	if out != nil {
		out.Checks = all
		if b.badLeads && missing == 0 {
			out.Verdict = spec.LeadsFirst(out.Verdict)
		}
	}
	return out
}

// fine compares the ohms that were worked out from drops.
func (b Bench) fine(pairs []Line, missing int) *Balance {
	return b.compared(spec.FineBalance, pairs, missing)
}

func (b Bench) compared(m spec.Measurand, pairs []Line, missing int) *Balance {
	limit, ok := b.Profile.Limit(m)
	if !ok || len(pairs)+missing < 2 {
		return nil
	}
	out := &Balance{Missing: missing}
	out.Verdict = spec.Verdict{Reason: spec.CannotCompare, Probability: 0.5, Limit: limit, HasLimit: true}
	var readings []meter.Measurement
	for _, l := range pairs {
		out.Checks = append(out.Checks, l.Check)
		readings = append(readings, l.Measured)
	}
	if missing == 0 {
		out.Verdict = spec.JudgeBalance(limit, readings)
	}
	if out.Verdict.HasValue {
		out.Half, out.Most = shortSeen(limit, readings)
	}
	return out
}

// shortSeen takes the connection that hides a short best: three readings do not
// tell star from delta. Windings with next to no resistance show none.
func shortSeen(limit spec.Limit, readings []meter.Measurement) (half, most float64) {
	u := spec.DeviationDoubt(limit, readings)
	if !(u > 0) {
		return 1, 1
	}
	c := winding.Star
	if len(readings) == 2 {
		c = winding.Two
	}
	half, most = c.BalanceLimits(limit.High, u)
	coils := float64(len(readings))
	return ofSound(half, coils, limit.High), ofSound(most, coils, limit.High)
}

// ofSound mends a share that was worked out with the doubt as a part of the mean
// of the shorted winding. The doubt at hand is a part of that of a sound one; a
// short takes from the mean, not from the doubt. Derived: one coil of n with the
// share k shorted takes k/n from the mean, so that the odd reading is off by
// d = k/(n-k) of what is left, and off enough from k = n·d/(1+limit) on.
func ofSound(share, n, limit float64) float64 { return n * share / (n - share) / (1 + limit) }
