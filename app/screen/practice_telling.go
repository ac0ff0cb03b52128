package screen

import (
	"slices"
	"time"

	"coilbook/app/device"
	"coilbook/engine/machine"
	"coilbook/engine/practice"
	"coilbook/engine/spec"
)

// telling is what is worked out after a fault was named: what each reading spoke
// against, and how the guided checks would have gone.
type telling struct {
	rivals  []machine.Kind
	against [][]machine.Kind // by reading
	done    int              // of readings times rivals
	steps   []practice.Step
	guided  bool // the steps are all there
	trouble error
}

// all is how much there is to do.
func (t *telling) all() int { return len(t.rivals) * len(t.against) }

// over reports whether a reading was held against every rival.
func (t *telling) over(reading int) bool { return t.done >= len(t.rivals)*(reading+1) }

// left are the rivals that no reading spoke against.
func (t *telling) left() []machine.Kind {
	out := slices.Clone(t.rivals)
	for _, list := range t.against {
		out = slices.DeleteFunc(out, func(k machine.Kind) bool { return slices.Contains(list, k) })
	}
	return out
}

// found is the first step out of spec; ok is false where the guided checks see
// nothing.
func (t *telling) found() (s practice.Step, ok bool) {
	i := slices.IndexFunc(t.steps, func(s practice.Step) bool { return s.Finds })
	if i < 0 {
		return practice.Step{}, false
	}
	return t.steps[i], true
}

// tell begins to work everything out; it does nothing until a fault is named and
// all readings are there, or when it has begun already.
func (r *room) tell(profile string, profiles []spec.Profile) {
	if r.told != nil || r.named == "" || slices.ContainsFunc(r.taken, func(one *reading) bool { return !one.done }) {
		return
	}
	t := &telling{rivals: r.bench.Rivals(), against: make([][]machine.Kind, len(r.taken))}
	r.told = t
	bench := r.bench
	probes := make([]practice.Probe, len(r.taken))
	for i, one := range r.taken {
		probes[i] = one.probe
	}
	r.inBackground(func(alive func() bool) {
		mine := func() bool { return alive() && r.told == t }
		r.guide(t, bench.Route(time.Now(), profile), profiles, mine)
		r.hold(t, bench, probes, alive)
	})
}

// hush ends what tell began.
func (r *room) hush() {
	if r.told != nil {
		r.turn.Add(1)
		r.told = nil
	}
}

// guide goes through the guided checks.
func (r *room) guide(t *telling, route *practice.Route, profiles []spec.Profile, alive func() bool) {
	more, err := true, error(nil)
	for more && err == nil {
		more, err = route.Step()
		device.Pause()
	}
	r.post(func() {
		if alive() {
			t.steps, t.guided, t.trouble = practice.Steps(route.Session(), profiles), err == nil, err
			r.touch()
		}
	})
}

// often is how long results wait for each other before they are shown.
const often = 150 * time.Millisecond

// hold holds every reading against every rival, one simulation at a time.
func (r *room) hold(t *telling, bench practice.Bench, probes []practice.Probe, alive func() bool) {
	type result struct {
		reading int
		rival   machine.Kind
		against bool
	}
	var ready []result
	last := time.Now()
	flush := func() {
		some := ready
		ready, last = nil, time.Now()
		r.post(func() {
			if r.told != t {
				return
			}
			for _, one := range some {
				if t.done++; one.against {
					t.against[one.reading] = append(t.against[one.reading], one.rival)
				}
			}
			r.touch()
		})
	}
	for i, p := range probes {
		for _, rival := range t.rivals {
			against, ok := holds(bench, p, rival, alive)
			if !ok {
				return
			}
			if ready = append(ready, result{i, rival, against}); time.Since(last) > often {
				flush()
			}
		}
	}
	flush()
}

// holds reports whether a reading speaks against a rival; ok is false once nobody
// wants to know. What cannot be simulated speaks against nothing.
func holds(bench practice.Bench, p practice.Probe, rival machine.Kind, alive func() bool) (against, ok bool) {
	for _, f := range bench.Places(rival) {
		unlike, err := bench.Unlike(p, f)
		device.Pause()
		if !alive() {
			return false, false
		}
		if err != nil || !unlike {
			return false, true
		}
	}
	return true, true
}
