package desk

import (
	"context"
	"errors"
	"strings"
	"unicode"

	"github.com/google/uuid"

	"coilbook/app/store"
	"coilbook/engine/check"
	"coilbook/engine/session"
)

// Begin starts a session with a set-up and puts it in hand.
func (d *Desk) Begin(s session.Setup) uuid.UUID {
	id := d.world.NewID()
	d.current, d.loading = session.Session{ID: id}, uuid.Nil
	d.append(id, session.Entry{Setup: tidy(s, id)})
	return id
}

// tidy makes a set-up fit to be recorded. The record of a meter names itself.
func tidy(s session.Setup, id uuid.UUID) *session.Setup {
	s.Name = oneLine(s.Name)
	if s.Own != nil {
		own := *s.Own
		own.Sheet.Name = oneLine(own.Sheet.Name)
		if s.Aim == check.SelfCheck {
			own.Record = id
		}
		s.Own = &own
	}
	return &s
}

// Revise replaces the set-up of the session in hand.
func (d *Desk) Revise(id uuid.UUID, s session.Setup) {
	d.append(id, session.Entry{Setup: tidy(s, id)})
}

// Show puts a session in hand, reading it from the store when needed.
func (d *Desk) Show(id uuid.UUID) {
	if d.current.ID == id || d.loading == id || d.missing == id || d.failed == id || id == uuid.Nil || !d.ready {
		return
	}
	d.loading = id
	st := d.store
	go func() {
		s, err := st.Load(context.Background(), id)
		d.world.Post(func() { d.loaded(id, s, err) })
	}()
}

func (d *Desk) loaded(id uuid.UUID, s session.Session, err error) {
	if d.loading != id {
		return // something else was put in hand meanwhile
	}
	d.loading = uuid.Nil
	inHand := d.pendingOf(id)
	switch {
	case err == nil, errors.Is(err, store.ErrNotFound) && len(inHand) > 0:
		d.current = session.Session{ID: id, Entries: s.Entries}.Append(inHand...)
	case errors.Is(err, store.ErrNotFound):
		d.missing = id
	default:
		d.trouble, d.failed = err, id
	}
	d.touch()
}

func (d *Desk) pendingOf(id uuid.UUID) (entries []session.Entry) {
	for _, p := range d.pending {
		if p.session == id {
			entries = append(entries, p.entry)
		}
	}
	return entries
}

// LookAgain forgets that a session could not be read.
func (d *Desk) LookAgain() {
	d.failed = uuid.Nil
	d.touch()
}

// Keep remembers what is being typed for a check; nothing is recorded.
func (d *Desk) Keep(id uuid.UUID, c check.ID, draft Draft) {
	d.drafts[draftKey{id, c}] = draft
	d.touch()
}

// Enter records a reading. Where there is one already and r is not one more of
// the same point, the one that it names, or else the latest, is corrected: the
// earlier entry stays in the record.
func (d *Desk) Enter(id uuid.UUID, r session.Reading) {
	old, ok := d.current.Fold().Current[r.Check]
	if ok && old.Reading != nil && !r.Again && r.Corrects == nil {
		r.Corrects = &old.ID
	}
	delete(d.drafts, draftKey{id, r.Check})
	d.append(id, session.Entry{Reading: &r})
}

// Skip records that a check cannot be done.
func (d *Desk) Skip(id uuid.UUID, c check.ID) {
	delete(d.drafts, draftKey{id, c})
	d.append(id, session.Entry{Skip: &session.Skip{Check: c}})
}

// Leave records that a check is not done once more: what was read stands.
func (d *Desk) Leave(id uuid.UUID, c check.ID) {
	delete(d.drafts, draftKey{id, c})
	d.append(id, session.Entry{Skip: &session.Skip{Check: c, Again: true}})
}

// Mark finishes, removes or restores a session.
func (d *Desk) Mark(id uuid.UUID, m session.Mark) {
	d.append(id, session.Entry{Mark: &m})
}

// File gives the session in hand as a file to keep or send, and its name.
func (d *Desk) File(id uuid.UUID) (name string, data []byte, err error) {
	data, err = session.Encode(d.current)
	st := d.current.Fold()
	return "coilbook-" + plain(st.Setup.Name) + st.Started.Format("2006-01-02-1504") + ".json", data, err
}

// oneLine makes pasted text fit for a name: no line breaks, tabs or other
// characters that cannot be seen.
func oneLine(name string) string {
	return strings.Join(strings.FieldsFunc(name, func(r rune) bool { return unicode.IsSpace(r) || !unicode.IsPrint(r) }), " ")
}

// plain keeps letters and digits of a machine's name for a file name.
func plain(name string) string {
	var out strings.Builder
	for _, r := range name {
		switch {
		case unicode.IsLetter(r), unicode.IsDigit(r):
			out.WriteRune(unicode.ToLower(r))
		case out.Len() > 0 && !strings.HasSuffix(out.String(), "-"):
			out.WriteByte('-')
		}
	}
	if s := strings.Trim(out.String(), "-"); s != "" {
		return s + "-"
	}
	return ""
}
