package screen

import "time"

// turns divides long work into turns of the page's only thread, with a breath after
// each in which the page draws and answers a touch. They are measured in time, so
// that a slow phone answers as soon as a quick one.
type turns struct{ began time.Time }

const (
	// turn is how long work goes on before the next breath: with what the page
	// then draws it stays below the 50 ms from which people feel a delay.
	turn = 12 * time.Millisecond
	// breath is how long the page has at least.
	breath = 2 * time.Millisecond
)

// over reports the end of a turn.
func (t *turns) over() bool { return time.Since(t.began) >= turn }

// rest takes a breath at the end of a turn, and goes on at once before it.
func (t *turns) rest() {
	if t.over() {
		time.Sleep(breath)
		t.began = time.Now()
	}
}
