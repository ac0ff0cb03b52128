package store

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/google/uuid"

	"coilbook/engine/session"
)

// row is one entry as it is kept: the two halves of its key, and its JSON text.
type row struct{ session, entry, text string }

// errNewer marks text that is well-formed but holds something unknown.
var errNewer = errors.New("written by a newer version")

// encode gives the rows of entries, and refuses what decode would not read back.
func encode(id uuid.UUID, entries []session.Entry) ([]row, error) {
	rows := make([]row, 0, len(entries))
	for _, e := range entries {
		text, err := session.EncodeEntry(e)
		if err != nil {
			return nil, fmt.Errorf("encoding entry %s: %w: %w", e.ID, ErrInvalid, err)
		}
		r := row{session: id.String(), entry: e.ID.String(), text: string(text)}
		if _, err := decode(r); err != nil || id == uuid.Nil || e.ID == uuid.Nil {
			return nil, fmt.Errorf("encoding entry %s: %w", e.ID, ErrInvalid)
		}
		rows = append(rows, r)
	}
	return rows, nil
}

func decode(r row) (session.Entry, error) {
	var known struct {
		ID uuid.UUID `json:"id"`
	}
	if err := json.Unmarshal([]byte(r.text), &known); err != nil {
		return session.Entry{}, fmt.Errorf("decoding row: %w", err)
	}
	if known.ID.String() != r.entry {
		return session.Entry{}, errors.New("row holds another entry than its key says")
	}
	e, err := session.DecodeEntry([]byte(r.text))
	if err != nil {
		return session.Entry{}, errNewer
	}
	return e, nil
}

// book is what a set of rows adds up to.
type book struct {
	sessions map[string]session.Session
	problems map[string]Problem
}

func read(rows []row) book {
	b := book{sessions: map[string]session.Session{}, problems: map[string]Problem{}}
	entries := map[string][]session.Entry{}
	for _, r := range rows {
		id, err := uuid.Parse(r.session)
		if err != nil {
			continue
		}
		b.sessions[r.session] = session.Session{ID: id}
		if e, err := decode(r); err != nil {
			b.report(r.session, id, err)
		} else {
			entries[r.session] = append(entries[r.session], e)
		}
	}
	for key, list := range entries {
		b.sessions[key] = b.sessions[key].Append(list...)
	}
	return b
}

func (b book) report(key string, id uuid.UUID, err error) {
	p := b.problems[key]
	p.Session = id
	if errors.Is(err, errNewer) {
		p.Newer++
	} else {
		p.Damaged++
	}
	b.problems[key] = p
}

func (b book) one(id uuid.UUID) (session.Session, error) {
	s, ok := b.sessions[id.String()]
	if !ok {
		return session.Session{}, fmt.Errorf("session %s: %w", id, ErrNotFound)
	}
	return s, nil
}

func (b book) all() []session.Session {
	list := make([]session.Session, 0, len(b.sessions))
	for _, s := range b.sessions {
		list = append(list, s)
	}
	slices.SortFunc(list, func(x, y session.Session) int {
		if c := changed(y).Compare(changed(x)); c != 0 {
			return c
		}
		return strings.Compare(x.ID.String(), y.ID.String())
	})
	return list
}

func (b book) allProblems() []Problem {
	list := make([]Problem, 0, len(b.problems))
	for _, p := range b.problems {
		list = append(list, p)
	}
	slices.SortFunc(list, func(x, y Problem) int {
		return strings.Compare(x.Session.String(), y.Session.String())
	})
	return list
}

func changed(s session.Session) time.Time {
	if len(s.Entries) == 0 {
		return time.Time{}
	}
	return s.Entries[len(s.Entries)-1].At
}
