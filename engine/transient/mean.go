package transient

import "math"

// Mean averages a quantity over time, taken as straight between its samples. The
// zero value is ready; Begin gives it the value from which the first sample
// comes.
type Mean struct {
	begun              bool
	last               float64
	time               float64
	sum, squares, size float64
	max, min           float64
}

// Begin sets the value at the start.
func (m *Mean) Begin(value float64) {
	m.last = value
	if !m.begun {
		m.begun, m.max, m.min = true, value, value
	}
}

// Add takes a value dt after the one before.
func (m *Mean) Add(value, dt float64) {
	if !m.begun {
		m.Begin(value)
	}
	a, b := m.last, value
	m.last = b
	m.time += dt
	m.sum += dt * (a + b) / 2
	m.squares += dt * (a*a + a*b + b*b) / 3
	m.size += dt * sizeBetween(a, b)
	m.max, m.min = max(m.max, b), min(m.min, b)
}

// sizeBetween is the mean magnitude of a straight line from a to b.
func sizeBetween(a, b float64) float64 {
	if a*b >= 0 {
		return math.Abs(a+b) / 2
	}
	return (a*a + b*b) / (2 * (math.Abs(a) + math.Abs(b)))
}

// Time is how long it was averaged.
func (m *Mean) Time() float64 { return m.time }

// Mean is NaN before the first Add, as are the other averages.
func (m *Mean) Mean() float64 { return m.sum / m.time }

// RMS is the root of the mean square.
func (m *Mean) RMS() float64 { return math.Sqrt(m.squares / m.time) }

// AbsMean is the mean magnitude.
func (m *Mean) AbsMean() float64 { return m.size / m.time }

// Max is the largest value.
func (m *Mean) Max() float64 { return m.max }

// Min is the least value.
func (m *Mean) Min() float64 { return m.min }
