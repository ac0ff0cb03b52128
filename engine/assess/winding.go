package assess

import (
	"errors"

	"coilbook/engine/quantity"
	"coilbook/engine/spec"
	"coilbook/engine/uncertainty"
	"coilbook/engine/winding"
)

// Winding is what the readings of three charge leads tell of the coils behind
// them. Three resistances never tell star from delta: both are given.
type Winding struct {
	ByDrops bool // from the drops, not from the ohm range
	Star    Coils
	Delta   Coils
	// Sound says that a winding without a fault reads like this, by the natural
	// difference of phases and the doubt of the readings.
	Sound bool
	// Fits are the single faults that read like this; empty where Sound.
	Fits winding.Fits
}

// Coils are the phases of a star or the branches of a delta.
type Coils struct {
	Phases winding.Phases
	Std    [3]float64
	None   *winding.NoSolution // why there is no solution; nil where there is one
}

// winding reads the three pairs, by drops where all of those are there.
func (b Bench) winding(r Report, ohms []Line) *Winding {
	lines := pairsOf(r.Lines)
	byDrops := len(ohms) == 3
	if byDrops {
		lines = ohms
	}
	if len(lines) != 3 || b.State.Setup.Build.ChargeLeads != 3 || (b.badLeads && !byDrops) {
		return nil
	}
	pairs, cov, ok := pairsAndDoubt(lines)
	if !ok {
		return nil
	}
	out := &Winding{ByDrops: byDrops, Star: solved(winding.Star, pairs, cov), Delta: solved(winding.Delta, pairs, cov)}
	fits := winding.Read(pairs, cov.Plus(winding.NaturalSpread(pairs, winding.NaturalUnbalance)))
	if out.Sound = fits.Sound(); !out.Sound {
		out.Fits = fits
	}
	return out
}

func pairsOf(lines []Line) (out []Line) {
	for _, l := range lines {
		if l.Check.Measures == spec.ChargePair && l.Read() {
			out = append(out, l)
		}
	}
	return out
}

// pairsAndDoubt brings readings to pairs with their covariance. Digits that won't
// settle are no pair.
func pairsAndDoubt(lines []Line) (p winding.Pairs, cov uncertainty.Covariance, ok bool) {
	for _, l := range lines {
		if l.Measured.State == quantity.Unsettled {
			return p, nil, false
		}
	}
	copy(p[:], ohmsOf(lines))
	return p, covarianceOf(lines), true
}

func solved(c winding.Connection, p winding.Pairs, cov uncertainty.Covariance) Coils {
	phases, u, err := c.Solve(p, cov)
	var none *winding.NoSolution
	if errors.As(err, &none) {
		return Coils{None: none}
	}
	return Coils{Phases: phases, Std: [3]float64{u.U(0), u.U(1), u.U(2)}}
}
