package desk

import (
	"github.com/google/uuid"

	"coilbook/app/store"
	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/session"
	"coilbook/engine/spec"
)

// Saving says where the last entries are.
type Saving int

// States of the last entries.
const (
	Opening   Saving = iota // the store is not open yet
	Saved                   // all entries are durably on this device
	Writing                 // a transaction is under way
	NotSaved                // the store refused; entries are kept in hand
	HandsOnly               // there is no store on this device: memory only
)

// Saving tells the state of the last entries.
func (d *Desk) Saving() Saving {
	switch {
	case !d.ready:
		return Opening
	case d.where == store.MemoryOnly:
		return HandsOnly
	case d.saving:
		return Writing
	case len(d.pending) > 0:
		return NotSaved
	}
	return Saved
}

// AtRisk reports whether closing the app now would lose an answer.
func (d *Desk) AtRisk() bool {
	return len(d.pending) > 0 || d.where == store.MemoryOnly && len(d.Sessions()) > 0
}

// Trouble is the store's last error, nil when there is none.
func (d *Desk) Trouble() error { return d.trouble }

// Unreadable counts entries that this version cannot read; they are kept.
func (d *Desk) Unreadable() int {
	n := 0
	for _, p := range d.problems {
		n += p.Newer + p.Damaged
	}
	return n
}

// Profiles are the spec profiles on offer.
func (d *Desk) Profiles() []spec.Profile { return d.world.Profiles() }

// Bench lays out the open session. ok is false while it is not loaded.
func (d *Desk) Bench(id uuid.UUID) (b assess.Bench, ok bool) {
	if d.current.ID != id || id == uuid.Nil {
		return assess.Bench{}, false
	}
	return assess.Open(d.current.Fold(), d.Profiles()), true
}

// Missing reports whether a session was looked for in vain.
func (d *Desk) Missing(id uuid.UUID) bool { return d.missing == id }

// Failed reports whether a session could not be read; LookAgain tries anew.
func (d *Desk) Failed(id uuid.UUID) bool { return d.failed == id && id != uuid.Nil }

// Sessions lists the states of sessions on machines that hold at least one
// answer, the latest change first; removed ones are left out.
func (d *Desk) Sessions() []session.State {
	var out []session.State
	for _, s := range d.sessions {
		st := s.Fold()
		if !st.Removed && len(st.Current) > 0 && st.Setup.Aim != check.SelfCheck {
			out = append(out, st)
		}
	}
	return out
}

// Meters lists the meters that the user described, the latest change first, each
// with what its self-check told.
func (d *Desk) Meters() []session.Own {
	var out []session.Own
	for _, s := range d.sessions {
		st := s.Fold()
		if st.Removed || st.Setup.Aim != check.SelfCheck || st.Setup.Own == nil {
			continue
		}
		own := *st.Setup.Own
		if learned := assess.Open(st, d.Profiles()).Learned(); !learned.Nothing() {
			own.Learned = &learned
		}
		out = append(out, own)
	}
	return out
}

// Unfinished is the latest session with checks still to do; ok is false when
// there is none.
func (d *Desk) Unfinished() (st session.State, ok bool) {
	for _, st := range d.Sessions() {
		if _, more := st.Next(); more && !st.Finished {
			return st, true
		}
	}
	return session.State{}, false
}

// Listed reports whether the list of sessions has been read.
func (d *Desk) Listed() bool { return d.listRead }

// Draft is what was typed for a check and not entered.
func (d *Desk) Draft(id uuid.UUID, c check.ID) Draft { return d.drafts[draftKey{id, c}] }
