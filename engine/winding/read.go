package winding

import (
	"math"
	"sort"

	"coilbook/engine/quantity"
	"coilbook/engine/uncertainty"
)

// Fit is a winding, with one fault or none, that three pairs may well have been
// read on.
type Fit struct {
	Connection Connection
	Fault      Fault        // with its Share fitted, where the kind has one
	Phase      quantity.Ohm // each phase or branch without the fault, all taken to be alike
	PhaseStd   quantity.Ohm
	ShareStd   float64
	Misfit     float64 // chi-square: what is left over, in squared standard uncertainties
	Free       int     // how many readings were left to disagree with the fit
}

// Fits are several of them: those with the least to choose first, then those
// with the least misfit.
type Fits []Fit

// Sound is whether a winding without a fault is among them.
func (f Fits) Sound() bool {
	for _, fit := range f {
		if fit.Fault.Kind == NoFault {
			return true
		}
	}
	return false
}

// Connection is the one that all of them share; false when they do not, or there
// are none. A sound winding never tells it. A fault may, as long as it is the only
// one and the phases are alike.
func (f Fits) Connection() (c Connection, known bool) {
	for i, fit := range f {
		if i > 0 && fit.Connection != c {
			return 0, false
		}
		c = fit.Connection
	}
	return c, len(f) > 0
}

// The greatest misfits that a true cause leaves in 95 % of cases, by the number
// of readings left to disagree (quantiles of chi-square).
var greatestMisfit = [...]float64{1e-9, 3.8415, 5.9915}

// Read finds which stars and deltas with at most one fault fit three pairs within
// their doubt. Several do as a rule: a star and a delta without a fault always
// together; a shorted phase of a star and an open branch of a delta; shorted
// turns of a delta and a poor joint in the lead across. None does when one
// reading is wrong, when all are open or there are two other faults, or when the
// phases are not alike: their NaturalSpread belongs into cov.
//
// Faults to the core are not among them. None of them moves a pair.
func Read(p Pairs, cov uncertainty.Covariance) Fits {
	var out Fits
	s := sampleOf(p, cov)
	for _, c := range []Connection{Star, Delta} {
		for _, f := range faultsOfPairs() {
			if fit := s.fit(c, f); fit.holds() {
				out = append(out, fit)
			}
		}
	}
	sort.SliceStable(out, func(i, j int) bool {
		if out[i].Free != out[j].Free {
			return out[i].Free > out[j].Free
		}
		return out[i].Misfit < out[j].Misfit
	})
	return out
}

// faultsOfPairs are the faults that pairs can show, at all places.
func faultsOfPairs() []Fault {
	out := []Fault{{Kind: NoFault}}
	for i := range 3 {
		for _, k := range []FaultKind{PhaseOpen, LeadOpen, PhaseShorted} {
			out = append(out, Fault{Kind: k, At: i})
		}
		out = append(out, Fault{Kind: Bridged, At: i, To: (i + 1) % 3},
			Fault{Kind: TurnsShorted, At: i}, Fault{Kind: PoorJoint, At: i})
	}
	return out
}

// holds tells whether a fit is good enough. A share at the end of its scale is
// another fault, or none, and that one is tried on its own.
func (f Fit) holds() bool {
	if f.Free < 0 || !(f.Phase > 0) || !(f.Misfit <= greatestMisfit[f.Free]) {
		return false
	}
	graded := f.Fault.Kind == TurnsShorted || f.Fault.Kind == PoorJoint
	return !graded || math.Abs(f.Fault.Share-0.5) < 0.5-endOfScale
}

const endOfScale = 1e-6
