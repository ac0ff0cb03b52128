package screen

import (
	"encoding/json"
	"fmt"
	"sync/atomic"
	"time"

	"coilbook/app/device"
	"coilbook/engine/assess"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
)

// models are the populations that readings are weighed against, one for each
// question that came up. All its methods run on the goroutine of the screens; the
// machines are drawn on another one, some at a time.
type models struct {
	post     func(func()) // later, on the goroutine of the screens
	revision int
	all      map[string]*grown
	turn     atomic.Int64 // goes up when nobody waits for what is being drawn
}

// grown is one population, done or under way.
type grown struct {
	question   diagnose.Question
	model      *diagnose.Model // once the drawing began
	ready, of  int             // cases
	busy, done bool
	err        error

	talk        *talk  // the last that was worked out
	key, wanted string // of that one, and of the one that is asked for
	sound       soundBands
}

func newModels(post func(func())) *models { return &models{post: post, all: map[string]*grown{}} }

// of is the population for a bench; it begins to be drawn when it is asked for.
func (m *models) of(s fault.Symptom, b assess.Bench) *grown {
	key := questionKey(s, b)
	g := m.all[key]
	if g == nil {
		g = begun(s, b)
		m.all[key] = g
	}
	if g.err == nil && !g.done && !g.busy {
		m.grow(g)
	}
	return g
}

// questionKey tells questions apart. A meter of one's own is all that its sheet
// and its self-check say.
func questionKey(s fault.Symptom, b assess.Bench) string {
	own, _ := json.Marshal(b.State.Setup.Own) // plain fields always encode
	return fmt.Sprintf("%s %+v %s %s %+v", s, b.State.Setup.Build, b.State.Setup.Meter, own, b.Kit())
}

func begun(s fault.Symptom, b assess.Bench) *grown {
	return &grown{question: diagnose.Question{Symptom: s, Build: b.State.Setup.Build, Meter: b.Meter, Kit: b.Kit()}, of: 1}
}

// progressEvery is how often it is said how far the drawing is: the screen is drawn anew
// for that, which takes longer than a turn.
const progressEvery = 200 * time.Millisecond

// grow draws what is left, in turns, and says now and then how far it is.
func (m *models) grow(g *grown) {
	g.busy = true
	waited := m.turn.Load()
	go func() {
		time.Sleep(aFrame) // the screen says so first
		err := g.begin()
		work, told := turns{began: time.Now()}, time.Now()
		for more := err == nil; more && m.turn.Load() == waited; work.rest() {
			more = g.model.Grow()
			if more && time.Since(told) < progressEvery {
				continue
			}
			told = time.Now()
			ready, of := g.model.Progress()
			m.post(func() {
				g.ready, g.of, g.done = ready, of, !more
				m.revision++
			})
		}
		m.post(func() {
			g.busy, g.err = false, err
			m.revision++
		})
	}()
}

// begin reads the catalogue and lists its cases, where that was not done.
func (g *grown) begin() error {
	if g.model != nil {
		return nil
	}
	faults, err := fault.Bundled()
	if err != nil {
		return err
	}
	device.Pause()
	g.model = diagnose.New(g.question, faults)
	device.Pause()
	return nil
}

// hush stops what nobody waits for; it goes on from there when it is asked for.
func (m *models) hush() { m.turn.Add(1) }
