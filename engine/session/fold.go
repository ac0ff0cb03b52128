package session

import (
	"slices"
	"time"

	"github.com/google/uuid"

	"coilbook/engine/check"
	"coilbook/engine/meter"
)

// State is what a session's entries add up to.
type State struct {
	ID       uuid.UUID
	Setup    Setup
	Current  map[check.ID]Entry   // latest reading or skip of each check
	Runs     map[check.ID][]Entry // readings of one point that count together, in order
	Earlier  map[check.ID][]Entry // what was replaced, oldest first
	Once     map[check.ID]bool    // readings that are not to be taken once more
	Notes    []Entry
	Finished bool
	Removed  bool
	Started  time.Time
	Changed  time.Time
}

// DefaultSetup is what holds until the user says otherwise.
func DefaultSetup() Setup {
	return Setup{Aim: check.Bench, Build: check.DefaultBuild(), Meter: meter.Cheap().ID}
}

// Fold replays a session.
func (s Session) Fold() State {
	st := State{ID: s.ID, Setup: DefaultSetup(), Current: map[check.ID]Entry{}, Runs: map[check.ID][]Entry{}, Earlier: map[check.ID][]Entry{}, Once: map[check.ID]bool{}}
	for _, e := range s.Entries {
		st.apply(e)
	}
	return st
}

func (st *State) apply(e Entry) {
	if st.Started.IsZero() {
		st.Started = e.At
	}
	st.Changed = e.At
	switch {
	case e.Setup != nil:
		st.Setup = *e.Setup
	case e.Reading != nil:
		st.answer(e.Reading.Check, e)
	case e.Skip != nil && e.Skip.Again && len(st.Runs[e.Skip.Check]) > 0:
		st.Once[e.Skip.Check] = true
	case e.Skip != nil:
		st.answer(e.Skip.Check, e)
	case e.Note != nil:
		st.Notes = append(st.Notes, e)
	case e.Mark != nil:
		st.mark(*e.Mark)
	}
}

func (st *State) answer(id check.ID, e Entry) {
	run := st.Runs[id]
	at := corrected(run, e)
	switch {
	case e.Reading == nil:
		st.replaced(id, st.answers(id)...)
		run = nil
	case e.Reading.Again && len(run) > 0:
		run = append(run, e)
	case at >= 0 && len(run) > 1:
		st.replaced(id, run[at])
		run = slices.Clone(run)
		run[at] = e
	default:
		st.replaced(id, st.answers(id)...)
		run = []Entry{e}
	}
	delete(st.Once, id)
	st.Runs[id], st.Current[id] = run, e
	st.Finished, st.Removed = false, false
}

// corrected is the place in a run of the reading that e names as corrected; -1
// for none.
func corrected(run []Entry, e Entry) int {
	if e.Reading == nil || e.Reading.Corrects == nil {
		return -1
	}
	return slices.IndexFunc(run, func(old Entry) bool { return old.ID == *e.Reading.Corrects })
}

// answers are the entries that answer a check now.
func (st *State) answers(id check.ID) []Entry {
	if run := st.Runs[id]; len(run) > 0 {
		return run
	}
	if old, ok := st.Current[id]; ok {
		return []Entry{old}
	}
	return nil
}

func (st *State) replaced(id check.ID, old ...Entry) {
	st.Earlier[id] = append(st.Earlier[id], old...)
}

func (st *State) mark(m Mark) {
	switch m {
	case Finished:
		st.Finished = true
	case Removed:
		st.Removed = true
	case Restored:
		st.Removed = false
	}
}

// Plan lists the checks that the set-up asks for.
func (st State) Plan() []check.Check {
	return check.Plan(st.Setup.Build, st.Setup.Aim, st.Setup.Methods...)
}

// Next is the first check without an answer; ok is false when all have one.
func (st State) Next() (c check.Check, ok bool) {
	for _, c := range st.Plan() {
		if _, done := st.Current[c.ID]; !done {
			return c, true
		}
	}
	return check.Check{}, false
}

// Answered counts the checks of the plan that have a reading or a refusal.
func (st State) Answered() (done, of int) {
	plan := st.Plan()
	for _, c := range plan {
		if _, ok := st.Current[c.ID]; ok {
			done++
		}
	}
	return done, len(plan)
}
