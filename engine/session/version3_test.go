package session_test

import (
	"os"
	"strings"
	"testing"

	"github.com/google/uuid"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/session"
)

// everyAim is a session of version 3: the aim changes with each entry.
func everyAim() session.Session {
	s := session.Session{ID: uuid.MustParse("5e551000-0000-4000-8000-000000000003")}
	for i, a := range []check.Aim{check.Overcharges, check.FlatStanding, check.WeakSpark, check.CutsOutHot} {
		s = s.Append(entry(1+i, setup(3, a)))
	}
	return s.Append(entry(9, reading("battery-rest", "12.4")))
}

func TestVersion3OpensForEver(t *testing.T) {
	const name = "testdata/session_v3.json"
	b, err := os.ReadFile(name)
	require.NoError(t, err)
	got, err := session.Decode(b)
	require.NoError(t, err)
	assert.Equal(t, everyAim(), got)
	assert.Equal(t, strings.Replace(string(b), `"version": 3`, `"version": 4`, 1), text(t, got), "only the version changes")
	assert.Equal(t, check.CutsOutHot, got.Fold().Setup.Aim)
}

func TestAnAimThatIsNotKnownIsNamedWithTheWayOut(t *testing.T) {
	for _, a := range append(check.Aims(), check.EveryPart) {
		require.NoError(t, entry(1, setup(3, a)).Valid(), a)
	}
	err := entry(1, setup(3, check.Aim(strings.Repeat("x", 90)))).Valid()
	require.ErrorContains(t, err, "setup.aim")
	require.ErrorContains(t, err, "flat-after-standing")
	assert.Less(t, len(err.Error()), 260)
}
