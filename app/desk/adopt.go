package desk

import (
	"slices"

	"github.com/google/uuid"

	"coilbook/engine/session"
)

// Adopt records sessions that were made elsewhere, entry by entry as they are.
// Entries that are here already are left alone; a session that was removed is
// brought back.
func (d *Desk) Adopt(sessions ...session.Session) {
	for _, s := range sessions {
		here := d.find(s.ID)
		for _, e := range s.Entries {
			if slices.ContainsFunc(here.Entries, func(known session.Entry) bool { return known.ID == e.ID }) {
				continue
			}
			d.pending = append(d.pending, pending{s.ID, e})
			d.fold(s.ID, e)
		}
		if here.Fold().Removed {
			d.Mark(s.ID, session.Restored)
		}
		if d.missing == s.ID {
			d.missing = uuid.Nil
		}
	}
	d.touch()
	d.save()
}

// find is the session of the list with an id, or an empty one.
func (d *Desk) find(id uuid.UUID) session.Session {
	for _, s := range d.sessions {
		if s.ID == id {
			return s
		}
	}
	return session.Session{ID: id}
}
