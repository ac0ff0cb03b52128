package winding

import (
	"fmt"

	"coilbook/engine/quantity"
	"coilbook/engine/uncertainty"
)

// TouchPlace is where a winding touches the core, as far as readings tell.
type TouchPlace int

// The places.
const (
	NoTouch          TouchPlace = iota // every lead reads an open line: none that shows at the meter's own voltage
	TouchAtLead                        // not told from one at the lead Lead
	TouchAtNeutral                     // not told from one at the common point of a star
	TouchInPhase                       // within the phase Phase, told from both its ends
	TouchSomewhere                     // the readings are too coarse for the place, or the winding is not whole
	TouchContradicts                   // no single touch reads so: a reading is wrong, or there are two touches
	TouchNotRead                       // a reading is missing
)

var touchPlaces = [...]string{
	"no touch", "at a lead", "at the neutral", "in a phase", "somewhere", "the readings contradict each other",
	"a reading is missing",
}

func (p TouchPlace) String() string { return touchPlaces[p] }

// Touch is what readings to the core tell of one touch.
type Touch struct {
	Place TouchPlace
	// Phase is the phase or branch touched, for TouchInPhase, otherwise -1.
	Phase int
	// Lead is the nearest lead, for TouchAtLead and TouchInPhase, otherwise -1.
	Lead int
	// Share is the part of the phase's turns between Lead and the touch, 0 to 1:
	// from any lead of the star for TouchAtNeutral, zero where the place is not
	// told. ShareStd is its standard uncertainty, by the law of propagation.
	Share, ShareStd float64
	// Resistance is that of the touch itself, without the winding, at zero or
	// above. Where a touch has no place, it is the lowest reading, of which some
	// may be the winding's.
	Resistance, ResistanceStd quantity.Ohm
	// Leak tells that the touch is told to have more than LeakFrom.
	Leak bool
}

// LeakFrom parts a touch of metal from a leak through dirt, moisture or charred
// varnish. An assumption, no source.
const LeakFrom quantity.Ohm = 100

// A place is told when the share is known to this part of the phase either way,
// in 90 % of cases. An assumption, no source.
const placeKnown = 0.25

// ReadTouch finds where a star, a delta or a single coil touches the core, from
// the readings of each lead to the core (A, B, C) and between the leads (AB, BC,
// CA, or AB alone), in ohm; +Inf is an open line, NaN a missing reading. Row and
// column i of cov are those of the readings in this order, those to the core
// first. What they share belongs into it: the gain of a meter cancels in a share,
// and what the leads have belongs off both.
//
// The resistance of the touch is in every reading to the core alike and cancels
// in their differences. With it gone, each pair is a divider of which the touch
// taps off the part (AB + A - B) / (2·AB), by the reciprocity of networks
// (derived; no source). The phases need not be alike. Three leads give one
// reading more than needed, which is fitted by least squares and shows what no
// single touch does.
//
// A leak is placed as a touch is, but its digits are seldom fine enough. It also
// wanders: readings of a leak that contradict each other are TouchSomewhere.
//
// Any two coils with nothing in common are two single coils. It panics on other
// connections and on a wrong number of readings; it has no other errors.
func ReadTouch(c Connection, toCore, between []quantity.Ohm, cov uncertainty.Covariance) Touch {
	c.mustSuitTouch(len(toCore), len(between), len(cov))
	r := touchReadingsOf(c, toCore, between, cov)
	switch {
	case r.missing():
		return Touch{Place: TouchNotRead, Phase: -1, Lead: -1}
	case r.openToCore() == c.Leads():
		return Touch{Place: NoTouch, Phase: -1, Lead: -1}
	case !r.whole():
		return r.unplaced(TouchSomewhere)
	case r.openToCore() > 0:
		return r.unplaced(TouchContradicts)
	}
	return r.place()
}

func (c Connection) mustSuitTouch(toCore, between, cov int) {
	pairs := 3
	if c == Single {
		pairs = 1
	} else {
		c.mustHaveThreeLeads()
	}
	if toCore != c.Leads() || between != pairs || cov != toCore+between {
		panic(fmt.Sprintf("winding: %d readings to the core and %d between leads of a %v, with covariance of %d",
			toCore, between, c, cov))
	}
}

// place weighs the phases in which the touch may be.
func (r touchReadings) place() Touch {
	fits := r.fits()
	best, others := likeliest(fits)
	switch {
	case len(fits) == 0:
		return r.unplaced(TouchSomewhere)
	case !best.holds():
		return r.unplaced(TouchContradicts)
	case !(told*best.shareStd <= placeKnown):
		return r.unplaced(TouchSomewhere)
	}
	from, to := r.of.ends(best.phase)
	atFrom := best.share() < told*best.shareStd || r.meets(others, from)
	atTo := best.share() > 1-told*best.shareStd || r.meets(others, to)
	switch {
	case atFrom && atTo:
		return r.unplaced(TouchSomewhere)
	case atFrom:
		return r.touchAt(best, from)
	case atTo:
		return r.touchAt(best, to)
	}
	return r.touchWithin(best)
}

// meets tells whether one of the other phases that fit ends at n: the touch is
// then not told from one at that end.
func (r touchReadings) meets(others []touchFit, n node) bool {
	for _, f := range others {
		if from, to := r.of.ends(f.phase); f.holds() && (from == n || to == n) {
			return true
		}
	}
	return false
}

func (r touchReadings) touchAt(f touchFit, n node) Touch {
	t := r.touchWithin(f)
	from, _ := r.of.ends(f.phase)
	t.Place, t.Phase, t.Lead, t.Share = TouchAtLead, -1, leadEnding(n), f.share()
	switch {
	case n == neutral:
		t.Place = TouchAtNeutral
	case n != from:
		t.Share = 1 - t.Share
	}
	return t
}

func (r touchReadings) touchWithin(f touchFit) Touch {
	from, to := r.of.ends(f.phase)
	t := Touch{Place: TouchInPhase, Phase: f.phase, Lead: leadEnding(from), Share: f.share(), ShareStd: f.shareStd}
	if t.Share > 0.5 && to != neutral {
		t.Lead, t.Share = leadEnding(to), 1-t.Share
	}
	t.Resistance = quantity.Ohm(f.y[touchOhms] * r.scale)
	t.ResistanceStd = quantity.Ohm(f.touchStd * r.scale)
	t.Leak = t.Resistance-told*t.ResistanceStd > LeakFrom
	return t
}

// unplaced is for a touch without a place. It is a leak when the lowest reading
// stays above LeakFrom with all of the winding taken off.
func (r touchReadings) unplaced(p TouchPlace) Touch {
	i := r.lowest()
	t := Touch{Place: p, Phase: -1, Lead: -1, Resistance: quantity.Ohm(max(r.x[i], 0) * r.scale),
		ResistanceStd: quantity.Ohm(r.cov.U(i) * r.scale)}
	t.Leak = t.Resistance-told*t.ResistanceStd-quantity.Ohm(r.largestPair()*r.scale) > LeakFrom
	if t.Leak {
		t.Place = TouchSomewhere
	}
	return t
}

// leadEnding is the lead at the end of a coil, -1 for the neutral.
func leadEnding(n node) int {
	if n == neutral {
		return -1
	}
	return int(n - endOf(0))
}
