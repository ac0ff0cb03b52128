package screen

import (
	"cmp"
	"time"

	"coilbook/app/device"
)

// turns divides long work into turns of the page's only thread, with a breath after
// each in which the page draws and answers a touch. They are measured in time, so
// that a slow phone answers as soon as a quick one.
type turns struct {
	began  time.Time
	length time.Duration // of a turn, if not the usual
}

const (
	// turn is how long work goes on before the next breath: with what the page
	// then draws it stays below the 50 ms from which people feel a delay.
	turn = 12 * time.Millisecond
	// promptly is how long it goes on where somebody waits for the end of it: each
	// breath makes that later.
	promptly = 30 * time.Millisecond
	// aFrame is long enough for the page to show that work has begun.
	aFrame = 20 * time.Millisecond
)

// over reports the end of a turn.
func (t *turns) over() bool { return time.Since(t.began) >= cmp.Or(t.length, turn) }

// rest gives the page its turn at the end of one, and goes on at once before it. It does
// not sleep: what the runtime does by itself, cleaning up, may take longer than a short
// sleep, and then the next turn begins before the page has had its own.
func (t *turns) rest() {
	if t.over() {
		device.Pause()
		t.began = time.Now()
	}
}
