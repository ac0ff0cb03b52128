package meter

import (
	"fmt"
	"strconv"
)

// FieldError says which field of a stored description is wrong, why, and what to
// do.
type FieldError struct {
	Field  string
	Reason string
	WayOut string
}

func (e *FieldError) Error() string { return e.Field + ": " + e.Reason + "; " + e.WayOut }

// between refuses what lies outside two bounds, and NaN.
func between(field string, v, low, high float64) error {
	if v >= low && v <= high {
		return nil
	}
	return &FieldError{field, fmt.Sprintf("is %v", v), "use " + decimal(low) + " to " + decimal(high)}
}

// decimal writes a bound out, without an exponent.
func decimal(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func firstOf(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
