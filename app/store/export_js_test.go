package store

import "time"

// Hurry shortens the times that the store waits for the browser.
func Hurry(all time.Duration) (restore func()) {
	p, s, f := patience, silence, farewell
	patience, silence, farewell = all, all, all
	return func() { patience, silence, farewell = p, s, f }
}
