package screen

import (
	"errors"
	"slices"
	"sync/atomic"
	"time"

	"coilbook/app/device"
	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/practice"
	"coilbook/engine/rig"
)

// room holds the practice bench in hand: where the probes are, what was read, and
// what is told afterwards. All its methods run on the goroutine of the screens;
// what takes long is simulated on another one, a step at a time.
type room struct {
	post func(func()) // later, on the goroutine of the screens
	keep func(text string)
	kept func() string

	revision int
	open     bool
	drawing  string // the code of the bench that is being drawn
	entered  func() // called once a bench is drawn
	bench    practice.Bench
	taken    []*reading
	named    machine.Kind
	placed   practice.Taken
	handRed  bool // which probe a tap on a point moves
	busy     bool
	shown    *reading // what the display shows, until anything is changed
	trouble  error
	wave     wave
	seen     map[check.Caution]bool
	told     *telling
	turn     atomic.Int64 // goes up when what is being simulated is no longer wanted
}

// reading is one that was taken; its display is still on its way just after a
// reload.
type reading struct {
	practice.Taken
	probe practice.Probe
	done  bool
}

// wave is the waveform that is unfolded.
type wave struct {
	unfolded, busy, done bool
	trace                rig.Trace
	err                  error
}

func newRoom(post func(func()), keep func(string), kept func() string) *room {
	return &room{post: post, keep: keep, kept: kept, entered: func() {}}
}

func (r *room) touch() { r.revision++ }

// record is the one kept on the device; ok is false without one that can be read,
// and err says why.
func (r *room) record() (rec practice.Record, ok bool, err error) {
	text := r.kept()
	if text == "" {
		return practice.Record{}, false, nil
	}
	rec, err = practice.DecodeRecord(text)
	return rec, err == nil, err
}

// unfinished is the code of the bench that is kept and not named yet.
func (r *room) unfinished() (code string, ok bool) {
	if rec, ok, _ := r.record(); ok && rec.Named == "" {
		return rec.Code, true
	}
	return "", false
}

// enter goes to the bench of a code, as it was left, once it is drawn; at tells
// that. err is a *practice.CodeError.
func (r *room) enter(code string) error {
	code, err := practice.Spelled(code)
	if err != nil || r.at(code) || r.drawing == code {
		return err
	}
	r.turn.Add(1) // nobody waits for what another bench simulates
	r.open, r.drawing = false, code
	r.inBackground(func(alive func() bool) {
		b, err := practice.FromCodeIn(code, new(turns).rest)
		r.post(func() {
			if !alive() || err != nil {
				return
			}
			r.begin(b)
			if rec, ok, _ := r.record(); ok && rec.Code == code {
				r.restore(rec)
			}
			r.entered()
		})
	})
	return nil
}

// at reports whether the bench of a code, however it is spaced, is in hand.
func (r *room) at(code string) bool {
	code, err := practice.Spelled(code)
	return err == nil && r.open && r.bench.Code() == code
}

// begin puts a bench up anew: plug together, engine stopped, probes in the hand.
func (r *room) begin(b practice.Bench) {
	r.turn.Add(1)
	r.drawing = ""
	b.Instrument.Pause = new(turns).rest
	r.open, r.bench, r.taken, r.named, r.shown, r.busy, r.trouble = true, b, nil, "", nil, false, nil
	r.placed = practice.Taken{Probing: machine.Probing{Function: meter.VoltsDC, State: machine.State{Plug: check.Together}}}
	r.placed.Dial = r.usualDial(meter.VoltsDC)
	r.handRed, r.wave, r.seen, r.told = true, wave{}, map[check.Caution]bool{}, nil
	r.touch()
}

// again puts the same machine up with nothing read; what was kept of it goes.
func (r *room) again() {
	r.begin(r.bench)
	r.save()
}

// usualDial is the range that a meter with a dial starts from: the highest but for
// ohms, where the lowest is the usual one.
func (r *room) usualDial(f meter.Function) string {
	ranges := r.bench.Instrument.Meter.Ranges[f]
	if r.bench.Instrument.Meter.Auto || len(ranges) == 0 {
		return ""
	}
	switch f {
	case meter.Ohms:
		return ranges[0].Label
	case meter.VoltsDC:
		for _, g := range ranges {
			if g.Full > 15 {
				return g.Label
			}
		}
	}
	return ranges[len(ranges)-1].Label
}

func (r *room) restore(rec practice.Record) {
	r.named, r.placed = rec.Named, rec.Placed
	for _, t := range rec.Taken {
		r.taken = append(r.taken, &reading{Taken: t})
	}
	r.handRed = r.placed.Red == check.Nowhere || r.placed.Black != check.Nowhere
	bench, list := r.bench, slices.Clone(r.taken)
	r.inBackground(func(alive func() bool) {
		for _, one := range list {
			p, err := bench.Show(one.Probing, one.Dial)
			r.post(func() {
				if alive() {
					r.settle(one, p, err)
				}
			})
			device.Pause()
			if !alive() {
				return
			}
		}
	})
}

// inBackground runs work on another goroutine; alive says whether it is still
// wanted.
func (r *room) inBackground(work func(alive func() bool)) {
	turn := r.turn.Load()
	go work(func() bool { return r.turn.Load() == turn })
}

// settle gives a reading its display; one that cannot be simulated is dropped.
func (r *room) settle(one *reading, p practice.Probe, err error) {
	one.probe, one.done = p, err == nil
	if r.trouble = err; err != nil {
		r.taken = slices.DeleteFunc(slices.Clone(r.taken), func(o *reading) bool { return o == one })
	}
	r.touch()
}

// save keeps the bench on the device. One on which nothing was read yet does not
// push out another that is under way.
func (r *room) save() {
	if len(r.taken) == 0 {
		if old, ok, _ := r.record(); ok && old.Code != r.bench.Code() && old.Named == "" && len(old.Taken) > 0 {
			return
		}
	}
	rec := practice.Record{Code: r.bench.Code(), Named: r.named, Placed: r.placed}
	for _, one := range r.taken {
		rec.Taken = append(rec.Taken, one.Taken)
	}
	if text, err := rec.Encode(); err == nil {
		r.keep(text)
	}
}

// changed follows any change of probes, dial or state: the display goes dark.
func (r *room) changed() {
	r.shown, r.wave = nil, wave{unfolded: r.wave.unfolded}
	r.touch()
	r.save()
	if r.wave.unfolded {
		r.look()
	}
}

// take chooses the probe in the hand.
func (r *room) take(red bool) {
	r.handRed = red
	r.touch()
}

// probe moves the probe in the hand to a point. After the first of two the other
// one is in the hand.
func (r *room) probe(t check.Terminal) {
	if r.handRed {
		r.placed.Red = t
		r.handRed = r.placed.Black != check.Nowhere
	} else {
		r.placed.Black = t
		r.handRed = r.placed.Red == check.Nowhere
	}
	r.changed()
}

// dial turns the dial.
func (r *room) dial(f meter.Function, label string) {
	r.placed.Function, r.placed.Dial = f, label
	r.changed()
}

// function turns the dial to a function.
func (r *room) function(f meter.Function) {
	if f != r.placed.Function {
		r.dial(f, r.usualDial(f))
	}
}

// set changes the machine's state. An engine that turns has its key on.
func (r *room) set(change func(*machine.State)) {
	before := r.placed.Engine
	change(&r.placed.State)
	s := &r.placed.State
	switch {
	case s.Engine > check.Cranking && !r.bench.Starts(s.Hot):
		s.Engine = check.Stopped
	case s.Engine != check.Stopped && !s.Key && before != check.Stopped:
		s.Engine = check.Stopped
	case s.Engine != check.Stopped:
		s.Key = true
	}
	r.changed()
}

func (r *room) ready() bool {
	return r.placed.Red != check.Nowhere && r.placed.Black != check.Nowhere
}

// mayRead says whether a reading can be taken now.
func (r *room) mayRead() bool { return r.ready() && !r.busy && len(r.taken) < practice.MostTaken }

// read takes a reading and logs it.
func (r *room) read() {
	if !r.mayRead() {
		return
	}
	r.busy = true
	r.touch()
	one, bench := &reading{Taken: r.placed}, r.bench
	r.inBackground(func(alive func() bool) {
		time.Sleep(aFrame) // the screen says that it reads
		p, err := bench.Show(one.Probing, one.Dial)
		r.post(func() {
			if !alive() {
				return
			}
			r.busy = false
			if r.settle(one, p, err); err != nil {
				return
			}
			r.taken = append(r.taken, one)
			if one.Taken == r.placed {
				r.shown = one
			}
			r.save()
		})
	})
}

// minutes is what the readings would have cost.
func (r *room) minutes() float64 {
	sum := 0.0
	for i := range r.taken {
		sum += r.minutesOf(i)
	}
	return sum
}

func (r *room) minutesOf(i int) float64 {
	p := practice.Probe{Probing: r.taken[i].Probing}
	if i == 0 {
		return p.Minutes(nil)
	}
	return p.Minutes(&practice.Probe{Probing: r.taken[i-1].Probing})
}

// unfold shows or hides the waveform.
func (r *room) unfold() {
	r.wave = wave{unfolded: !r.wave.unfolded}
	r.touch()
	if r.wave.unfolded {
		r.look()
	}
}

// look simulates the waveform between the probes.
func (r *room) look() {
	if !r.ready() {
		return
	}
	r.wave.busy = true
	at, bench := r.placed, r.bench
	r.inBackground(func(alive func() bool) {
		time.Sleep(aFrame)
		t, err := bench.Trace(at.Probing)
		r.post(func() {
			if alive() && r.placed == at && r.wave.unfolded {
				r.wave = wave{unfolded: true, done: err == nil, trace: t, err: err}
				r.touch()
			}
		})
	})
}

// name says which fault it is; afterwards all is told.
func (r *room) name(k machine.Kind) {
	r.named = k
	r.touch()
	r.save()
}

// lost says why the record on the device cannot be used: nil where it can, or
// where there is none.
func (r *room) lost() error {
	_, _, err := r.record()
	return err
}

// newer reports whether a newer version kept the record.
func newer(err error) bool { return errors.Is(err, practice.ErrNewerRecord) }
