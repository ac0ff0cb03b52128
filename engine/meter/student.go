package meter

import "math"

// studentTail is the chance that Student's t with the given degrees of freedom
// lies further from zero than t in either direction. Finite sums (Abramowitz and
// Stegun, 26.7.3 and 26.7.4, from memory; tested by integration).
func studentTail(t float64, freedom int) float64 {
	angle := math.Atan(t / math.Sqrt(float64(freedom)))
	cos := math.Cos(angle)
	term, sum, first := 1.0, 0.0, 2
	if freedom%2 == 1 {
		term, first = cos, 3
	}
	for k := first; k <= freedom; k += 2 {
		sum += term
		term *= cos * cos * float64(k-1) / float64(k)
	}
	inside := math.Sin(angle) * sum
	if freedom%2 == 1 {
		inside = 2 / math.Pi * (angle + inside)
	}
	return 1 - inside
}

// studentLimit is the t that is passed in either direction with the given
// chance.
func studentLimit(chance float64, freedom int) float64 {
	low, high := 0.0, 1e4
	for range 80 {
		middle := (low + high) / 2
		if studentTail(middle, freedom) > chance {
			low = middle
		} else {
			high = middle
		}
	}
	return high
}
