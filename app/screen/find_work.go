package screen

import (
	"time"

	"coilbook/app/device"
	"coilbook/engine/assess"
)

// talk is the diagnosis behind a bench's answers with all that is shown of it. It is
// worked out before the screen is drawn, which must not take long: until then it is
// that of the session's earlier answers, or nil.
func (m *models) talk(g *grown, b assess.Bench) *talk {
	if key := talkKey(g, b.State); g.key != key && g.wanted != key {
		g.wanted = key
		m.post(func() {
			m.work(g, b)
			m.revision++
		})
	}
	if g.talk != nil && g.talk.session == b.State.ID {
		return g.talk
	}
	return nil
}

// work is the same for a handler, which may take its time: the page has its turn in
// between, and what is tapped or typed meanwhile waits for the end.
func (m *models) work(g *grown, b assess.Bench) *talk {
	key := talkKey(g, b.State)
	if g.key == key {
		return g.talk
	}
	work := turns{began: time.Now(), length: promptly}
	t := replay(g, b.State, b.Meter)
	t.Resting(work.rest)
	next, more := t.Ask()
	for _, one := range leading(t.Suspects().Faults, len(t.Done())) {
		t.reasons(one.Fault.ID)
		work.rest()
	}
	if more {
		t.means(next.Check.ID)
		work.rest()
	}
	if plotted(b) {
		t.sound.of(b.State.Setup.Build, work.rest)
	}
	t.Resting(func() {}) // from now on it is asked for what to draw
	device.Pause()       // which has a turn of its own
	g.talk, g.key, g.wanted = t, key, key
	return t
}
