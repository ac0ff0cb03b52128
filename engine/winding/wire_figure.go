package winding

import "strconv"

// figure is a number that was stated about a coil, in SI.
type figure struct {
	field       string
	value, std  float64
	least, most float64
	unit        string // with the space before it
	wayOut      string
}

// A figure may be off by a third of itself, one standard uncertainty: with more,
// it may as well be next to nothing, and the law of propagation does not hold. An
// assumption, no source.
const mostDoubt = 1.0 / 3

// usable parts figures into values and doubts; the error is an *InputError for
// the first that cannot be used.
func usable(figures []figure) (x, u []float64, err error) {
	for _, f := range figures {
		if err := f.check(); err != nil {
			return nil, nil, err
		}
		x, u = append(x, f.value), append(u, f.std)
	}
	return x, u, nil
}

// check says what is wrong. A NaN is on neither side of any bound.
func (f figure) check() error {
	switch {
	case !(f.value >= f.least && f.value <= f.most):
		return &InputError{f.field, "is not from " + decimal(f.least) + " to " + decimal(f.most) + f.unit, f.wayOut}
	case !(f.std >= 0):
		return &InputError{f.field, "has a doubt below zero, or none that is a number", "give its standard uncertainty"}
	case f.std > mostDoubt*f.value:
		return &InputError{f.field, "is known to no better than a third of itself", f.wayOut}
	}
	return nil
}

func decimal(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
