package desk

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"

	"coilbook/app/store"
	"coilbook/engine/practice"
	"coilbook/engine/session"
)

// Sessions made elsewhere are taken as they are, once, and come back after they
// were removed.
func TestAdopt(t *testing.T) {
	memory := &store.Memory{}
	tb := newTable(t, onDevice(memory))
	tb.Start()
	tb.settle()
	examples, err := practice.Examples()
	require.NoError(t, err)
	tb.Adopt(examples...)
	tb.settle()
	require.Equal(t, Saved, tb.Saving())
	require.Len(t, tb.Sessions(), len(examples))
	for _, e := range examples {
		kept, err := memory.Load(context.Background(), e.ID)
		require.NoError(t, err)
		require.Equal(t, e.Entries, kept.Entries)
	}
	tb.Adopt(examples...)
	tb.settle()
	kept, err := memory.Load(context.Background(), examples[0].ID)
	require.NoError(t, err)
	require.Len(t, kept.Entries, len(examples[0].Entries), "nothing twice")

	tb.Mark(examples[0].ID, session.Removed)
	tb.settle()
	require.Len(t, tb.Sessions(), len(examples)-1)
	tb.Adopt(examples...)
	tb.settle()
	require.Len(t, tb.Sessions(), len(examples))
}
