package store

import (
	"context"
	"sync"

	"github.com/google/uuid"

	"coilbook/engine/session"
)

// Memory keeps records for as long as the program runs. It holds the same rows
// as the browser does, so that both read them the same way. Its zero value is
// empty and ready.
type Memory struct {
	mu   sync.Mutex
	rows map[[2]string]string
}

// Append implements Store.
func (m *Memory) Append(ctx context.Context, id uuid.UUID, entries ...session.Entry) error {
	rows, err := encode(id, entries)
	if err != nil {
		return err
	}
	if err := ctx.Err(); err != nil {
		return err
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.rows == nil {
		m.rows = map[[2]string]string{}
	}
	for _, r := range rows {
		key := [2]string{r.session, r.entry}
		if _, there := m.rows[key]; !there {
			m.rows[key] = r.text
		}
	}
	return nil
}

// Load implements Store.
func (m *Memory) Load(ctx context.Context, id uuid.UUID) (session.Session, error) {
	if err := ctx.Err(); err != nil {
		return session.Session{}, err
	}
	return read(m.snapshot()).one(id)
}

// List implements Store.
func (m *Memory) List(ctx context.Context) ([]session.Session, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	return read(m.snapshot()).all(), nil
}

// Problems implements Store.
func (m *Memory) Problems(ctx context.Context) ([]Problem, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	return read(m.snapshot()).allProblems(), nil
}

func (m *Memory) snapshot() []row {
	m.mu.Lock()
	defer m.mu.Unlock()
	rows := make([]row, 0, len(m.rows))
	for key, text := range m.rows {
		rows = append(rows, row{session: key[0], entry: key[1], text: text})
	}
	return rows
}
