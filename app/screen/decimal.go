package screen

import (
	"math"
	"strconv"
	"strings"
)

// decimal reads a plain number with a point or a comma; an empty text is
// unsaid.
func decimal(text string, unsaid float64) (v float64, ok bool) {
	text = strings.TrimSpace(text)
	if text == "" {
		return unsaid, true
	}
	v, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	return v, err == nil && !math.IsNaN(v) && !math.IsInf(v, 0)
}
