package practice_test

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/practice"
	"coilbook/engine/session"
	"coilbook/engine/spec"
	"coilbook/specs"
)

var update = flag.Bool("update", false, "write the example sessions anew")

// The examples are kept as files, so that a change of the simulation that changes
// what they show is seen.
func TestExamplesAreThoseOnFile(t *testing.T) {
	sessions, err := practice.Examples()
	require.NoError(t, err)
	require.Len(t, sessions, 3)
	for _, s := range sessions {
		text, err := session.Encode(s)
		require.NoError(t, err)
		name := strings.ReplaceAll(strings.TrimPrefix(s.Fold().Setup.Name, "Example: "), ", ", "-")
		file := filepath.Join("..", "..", "testdata", "sessions", "example-"+strings.ReplaceAll(name, " ", "-")+".json")
		if *update {
			require.NoError(t, os.WriteFile(file, text, 0o644))
		}
		want, err := os.ReadFile(file)
		require.NoError(t, err)
		require.Equal(t, string(want), string(text))
	}
}

// What the examples are there to show: a fault that is found, a stator that passes,
// and another fault.
func TestExamplesTellTheirStory(t *testing.T) {
	sessions, err := practice.Examples()
	require.NoError(t, err)
	profiles, err := specs.Bundled()
	require.NoError(t, err)
	var found []string
	for _, s := range sessions {
		var out []string
		for _, step := range practice.Steps(s, profiles) {
			if step.Judged() && step.Verdict.Outcome == spec.OutOfSpec {
				out = append(out, string(step.Check.ID))
			}
		}
		found = append(found, strings.Join(out, " "))
	}
	assert.Equal(t, []string{"charge-core-1 charge-core-2 charge-core-3", "", "exciter exciter-cranking"}, found)
}
