// Package uncertainty is the arithmetic of measurement doubt, and nothing else:
// it turns what is known about some readings, including how far their errors
// move together, into what is known about a figure calculated from them.
//
// It holds that readings taken with one meter are never independent: a ratio of
// two of them is better than either, and a sum may be worse than the usual root
// of squares. So every calculation here takes a Covariance; there is no short
// form that leaves it out.
//
// The formulas are those of JCGM 100:2008, "Guide to the expression of
// uncertainty in measurement" (GUM); clause and equation numbers are given from
// memory. Standard uncertainties (one standard deviation) go in and come out:
// nothing here multiplies by a coverage factor, prints, rounds or decides.
// Units are the caller's. A mistake in the shape of the arguments panics.
package uncertainty
