package machine

// Firing is how often an engine fires, in 1/s, at a speed in rpm: each cylinder
// once in two turns of a four-stroke, once a turn of a two-stroke. A spark that a
// box gives at every turn of a four-stroke comes twice as often.
func Firing(rpm float64, strokes, cylinders int) float64 {
	return float64(cylinders) * rpm / 60 * 2 / float64(strokes)
}
