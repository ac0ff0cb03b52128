package desk

import (
	"context"
	"encoding/binary"
	"errors"
	"strings"
	"testing"
	"time"

	"github.com/google/uuid"
	"github.com/stretchr/testify/require"

	"coilbook/app/store"
	"coilbook/app/store/storetest"
	"coilbook/engine/check"
	"coilbook/engine/session"
	"coilbook/engine/spec"
	"coilbook/specs"
)

// table is a desk whose posted work runs when the test says so, as the page's
// event loop would.
type table struct {
	*Desk
	t     *testing.T
	posts chan func()
	clock time.Time
	ids   uint64
}

func newTable(t *testing.T, open func(context.Context) (store.Store, store.Where, error)) *table {
	profiles, err := specs.Bundled()
	require.NoError(t, err)
	tb := &table{t: t, posts: make(chan func(), 100), clock: time.Date(2026, 5, 1, 9, 0, 0, 0, time.UTC)}
	tb.Desk = New(World{
		Open:     open,
		Now:      func() time.Time { tb.clock = tb.clock.Add(time.Second); return tb.clock },
		NewID:    func() uuid.UUID { tb.ids++; var id uuid.UUID; binary.BigEndian.PutUint64(id[8:], tb.ids); return id },
		Profiles: func() []spec.Profile { return profiles },
		Post:     func(f func()) { tb.posts <- f },
	})
	return tb
}

func onDevice(s store.Store) func(context.Context) (store.Store, store.Where, error) {
	return func(context.Context) (store.Store, store.Where, error) { return s, store.OnDevice, nil }
}

// settle runs posted work until none comes for a while.
func (tb *table) settle() {
	for {
		select {
		case f := <-tb.posts:
			f()
		case <-time.After(30 * time.Millisecond):
			return
		}
	}
}

func reading(c check.ID, text string) session.Reading {
	return session.Reading{Check: c, Text: text, Unit: "Ω"}
}

func TestEntriesMadeBeforeTheStoreOpensAreSaved(t *testing.T) {
	memory := &store.Memory{}
	tb := newTable(t, onDevice(memory))
	id := tb.Begin(session.DefaultSetup())
	tb.Enter(id, reading("lead-zero", "0.3"))
	require.Equal(t, Opening, tb.Saving())
	tb.Start()
	tb.settle()
	require.Equal(t, Saved, tb.Saving())
	kept, err := memory.Load(context.Background(), id)
	require.NoError(t, err)
	require.Len(t, kept.Entries, 2)
}

func TestSavedIsSaidOnlyAfterTheStoreAgreed(t *testing.T) {
	gate := make(chan struct{})
	tb := newTable(t, onDevice(slow{&store.Memory{}, gate}))
	tb.Start()
	tb.settle()
	tb.Begin(session.DefaultSetup())
	tb.settle()
	require.Equal(t, Writing, tb.Saving())
	require.True(t, tb.AtRisk())
	close(gate)
	tb.settle()
	require.Equal(t, Saved, tb.Saving())
	require.False(t, tb.AtRisk())
}

// slow takes entries only once its gate is open.
type slow struct {
	store.Store
	gate chan struct{}
}

func (s slow) Append(ctx context.Context, id uuid.UUID, e ...session.Entry) error {
	<-s.gate
	return s.Store.Append(ctx, id, e...)
}

func TestACorrectionKeepsTheEarlierReading(t *testing.T) {
	tb := newTable(t, onDevice(&store.Memory{}))
	tb.Start()
	id := tb.Begin(session.DefaultSetup())
	tb.Enter(id, reading("lead-zero", "0.3"))
	tb.Enter(id, reading("lead-zero", "0.2"))
	tb.settle()
	b, ok := tb.Bench(id)
	require.True(t, ok)
	line := b.Line(b.Plan[0])
	require.Equal(t, "0.2", line.Answer.Reading.Text)
	require.Equal(t, 1, line.Earlier)
	require.Equal(t, b.State.Earlier["lead-zero"][0].ID, *line.Answer.Reading.Corrects)
}

func TestAClockSetBackDoesNotUndoACorrection(t *testing.T) {
	tb := newTable(t, onDevice(&store.Memory{}))
	tb.Start()
	id := tb.Begin(session.DefaultSetup())
	tb.Enter(id, reading("lead-zero", "0.3"))
	tb.clock = tb.clock.Add(-time.Hour)
	tb.Enter(id, reading("lead-zero", "0.2"))
	b, _ := tb.Bench(id)
	require.Equal(t, "0.2", b.Line(b.Plan[0]).Answer.Reading.Text)
	tb.settle()
	tb.Mark(id, session.Removed)
	require.Empty(t, tb.Sessions())
}

func TestDraftsSurviveGoingBackAndForth(t *testing.T) {
	tb := newTable(t, onDevice(&store.Memory{}))
	id := tb.Begin(session.DefaultSetup())
	tb.Keep(id, "pickup", Draft{Text: "21"})
	tb.Keep(id, "exciter", Draft{Text: "3"})
	require.Equal(t, "21", tb.Draft(id, "pickup").Text)
	tb.Enter(id, reading("pickup", "212"))
	require.Empty(t, tb.Draft(id, "pickup").Text)
	require.Equal(t, "3", tb.Draft(id, "exciter").Text)
}

func TestAnotherVisitFindsTheSession(t *testing.T) {
	memory := &store.Memory{}
	tb := newTable(t, onDevice(memory))
	tb.Start()
	id := tb.Begin(session.DefaultSetup())
	tb.Enter(id, reading("lead-zero", "0.3"))
	tb.settle()
	next := newTable(t, onDevice(memory))
	next.Start()
	next.settle()
	st, ok := next.Unfinished()
	require.True(t, ok)
	require.Equal(t, id, st.ID)
	next.Show(id)
	next.settle()
	_, ok = next.Bench(id)
	require.True(t, ok)
	next.Show(uuid.Max)
	next.settle()
	require.True(t, next.Missing(uuid.Max))
}

func TestRemovedSessionsComeBack(t *testing.T) {
	tb := newTable(t, onDevice(&store.Memory{}))
	tb.Start()
	id := tb.Begin(session.DefaultSetup())
	require.Empty(t, tb.Sessions(), "a session without an answer is no record yet")
	tb.Skip(id, "lead-zero")
	require.Len(t, tb.Sessions(), 1)
	tb.Mark(id, session.Removed)
	require.Empty(t, tb.Sessions())
	tb.settle()
	tb.Refresh()
	tb.settle()
	require.Empty(t, tb.Sessions())
	tb.Mark(id, session.Restored)
	require.Len(t, tb.Sessions(), 1)
}

func TestWithoutAStoreEverythingStillWorks(t *testing.T) {
	tb := newTable(t, func(context.Context) (store.Store, store.Where, error) {
		return &store.Memory{}, store.MemoryOnly, errors.New("private mode")
	})
	tb.Start()
	id := tb.Begin(session.DefaultSetup())
	tb.Enter(id, reading("lead-zero", "0.3"))
	tb.settle()
	require.Equal(t, HandsOnly, tb.Saving())
	require.True(t, tb.AtRisk())
	name, data, err := tb.File(id)
	require.NoError(t, err)
	require.True(t, strings.HasPrefix(name, "coilbook-2026-05-01"), name)
	s, err := session.Decode(data)
	require.NoError(t, err)
	require.Len(t, s.Entries, 2)
}

// Every operation of the store fails once, for every place in the sequence;
// afterwards, and after trying again, nothing entered is lost.
func TestNoFailureLosesAnEntry(t *testing.T) {
	for n := 0; ; n++ {
		memory := &store.Memory{}
		faulty := &storetest.Faulty{Store: memory, FailAt: n/2 + 1, After: n%2 == 1}
		tb := newTable(t, onDevice(faulty))
		tb.Start()
		id := tb.Begin(session.DefaultSetup())
		for i, c := range []check.ID{"lead-zero", "core-continuity", "pickup"} {
			tb.Enter(id, reading(c, "0."+string(rune('1'+i))))
			tb.settle()
			_, ok := tb.Bench(id)
			require.True(t, ok)
		}
		for range 3 {
			tb.Retry()
			tb.settle()
		}
		require.Equal(t, Saved, tb.Saving(), "failing operation %d", n)
		kept, err := memory.Load(context.Background(), id)
		require.NoError(t, err)
		require.Len(t, kept.Entries, 4, "failing operation %d", n)
		if !faulty.Met() {
			return
		}
	}
}

func TestFileNamesAreSafe(t *testing.T) {
	require.Equal(t, "gravel-pit-quad-2-", plain("  Gravel pit / quad #2 "))
	require.Equal(t, "", plain("../.."))
	require.Equal(t, "größe-", plain("Größe"))
}

func TestAPastedTabDoesNotBlockTheRecords(t *testing.T) {
	tb := newTable(t, onDevice(&store.Memory{}))
	tb.Start()
	s := session.DefaultSetup()
	s.Name = " gravel\tpit\r\nquad\x00 "
	id := tb.Begin(s)
	tb.settle()
	require.Equal(t, Saved, tb.Saving())
	b, _ := tb.Bench(id)
	require.Equal(t, "gravel pit quad", b.State.Setup.Name)
}

func TestAnUnsavedSessionIsNotMissing(t *testing.T) {
	memory := &store.Memory{}
	tb := newTable(t, onDevice(full{memory}))
	tb.Start()
	tb.settle()
	a := tb.Begin(session.DefaultSetup())
	tb.Enter(a, reading("lead-zero", "0.3"))
	other := tb.Begin(session.DefaultSetup())
	tb.settle()
	require.Equal(t, NotSaved, tb.Saving())
	tb.Show(a)
	tb.settle()
	require.False(t, tb.Missing(a))
	b, ok := tb.Bench(a)
	require.True(t, ok)
	require.Equal(t, "0.3", b.Line(b.Plan[0]).Answer.Reading.Text)
	require.NotEqual(t, a, other)
}

// full takes nothing.
type full struct{ store.Store }

func (f full) Append(context.Context, uuid.UUID, ...session.Entry) error { return store.ErrFull }

func TestASessionThatCannotBeReadIsTriedAgainOnlyOnRequest(t *testing.T) {
	memory := &store.Memory{}
	id := uuid.MustParse("019ae000-0000-7000-8000-000000000009")
	broken := &counting{Store: memory, err: errors.New("device error")}
	tb := newTable(t, onDevice(broken))
	tb.Start()
	tb.settle()
	for range 5 {
		tb.Show(id)
		tb.settle()
	}
	require.True(t, tb.Failed(id))
	require.Equal(t, 1, broken.loads)
	tb.LookAgain()
	tb.Show(id)
	tb.settle()
	require.Equal(t, 2, broken.loads)
}

type counting struct {
	store.Store
	err   error
	loads int
}

func (c *counting) Load(context.Context, uuid.UUID) (session.Session, error) {
	c.loads++
	return session.Session{}, c.err
}

func TestALateReadingDoesNotReplaceANewSession(t *testing.T) {
	memory := &store.Memory{}
	tb := newTable(t, onDevice(memory))
	tb.Start()
	old := tb.Begin(session.DefaultSetup())
	tb.settle()
	again := newTable(t, onDevice(memory))
	again.Start()
	again.settle()
	again.ids = 100
	again.Show(old)
	fresh := again.Begin(session.DefaultSetup())
	again.settle()
	_, ok := again.Bench(fresh)
	require.True(t, ok)
}

func TestAnotherTabsEntriesArriveWithTheList(t *testing.T) {
	memory := &store.Memory{}
	tb := newTable(t, onDevice(memory))
	tb.Start()
	id := tb.Begin(session.DefaultSetup())
	tb.settle()
	mark := session.Skip{Check: "lead-zero"}
	require.NoError(t, memory.Append(context.Background(), id, session.Entry{ID: uuid.Max, At: tb.clock.Add(time.Minute), Skip: &mark}))
	tb.Refresh()
	tb.settle()
	b, _ := tb.Bench(id)
	require.True(t, b.Line(b.Plan[0]).Skipped)
}

func TestAnAnswerBringsARemovedSessionBack(t *testing.T) {
	tb := newTable(t, onDevice(&store.Memory{}))
	tb.Start()
	id := tb.Begin(session.DefaultSetup())
	tb.Enter(id, reading("lead-zero", "0.3"))
	tb.Mark(id, session.Removed)
	tb.Enter(id, reading("core-continuity", "0.4"))
	require.Len(t, tb.Sessions(), 1)
}
