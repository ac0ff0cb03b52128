//go:build !js

package main

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/session"
)

var rewrite = flag.Bool("update", false, "rewrite the sample sessions as Encode writes them, and their reports")

const samples = "../testdata/sessions"

func sampleFiles(t *testing.T) []string {
	t.Helper()
	all, err := filepath.Glob(samples + "/*.json")
	require.NoError(t, err)
	var sessions []string
	for _, name := range all {
		if !strings.HasSuffix(name, ".report.json") {
			sessions = append(sessions, name)
		}
	}
	require.GreaterOrEqual(t, len(sessions), 6)
	return sessions
}

func assessed(t *testing.T, stdin string, args ...string) (code int, stdout, stderr string) {
	t.Helper()
	var out, problems bytes.Buffer
	code = assessFile(args, strings.NewReader(stdin), &out, &problems)
	return code, out.String(), problems.String()
}

// The reports of whole sessions stay as they are. A report that differs is left
// beside the golden one as .got.
func TestSampleSessionsKeepTheirReports(t *testing.T) {
	for _, name := range sampleFiles(t) {
		base := strings.TrimSuffix(name, ".json")
		for ext, args := range map[string][]string{".report.json": {name}, ".report.txt": {"-table", name}} {
			code, out, problems := assessed(t, "", args...)
			require.Equal(t, exitDone, code, "%s: %s", name, problems)
			assert.Empty(t, problems)
			golden(t, base+ext, out)
		}
	}
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	if *rewrite {
		require.NoError(t, os.WriteFile(name, []byte(got), 0o644))
		return
	}
	want, err := os.ReadFile(name)
	if err == nil && string(want) == got {
		_ = os.Remove(name + ".got") // of an earlier run, if any
		return
	}
	require.NoError(t, os.WriteFile(name+".got", []byte(got), 0o644))
	assert.Equal(t, string(want), got, "%s differs; see %s.got, and -update if it is meant", name, name)
}

func TestSampleSessionsAreWrittenAsEncodeWrites(t *testing.T) {
	for _, name := range sampleFiles(t) {
		b, err := os.ReadFile(name)
		require.NoError(t, err)
		s, err := session.Decode(b)
		require.NoError(t, err, name)
		again, err := session.Encode(s)
		require.NoError(t, err)
		golden(t, name, string(again))
	}
}

func TestAssessReadsStandardInput(t *testing.T) {
	b, err := os.ReadFile(samples + "/corrected.json")
	require.NoError(t, err)
	_, fromFile, _ := assessed(t, "", samples+"/corrected.json")
	code, out, problems := assessed(t, string(b), "-")
	assert.Equal(t, exitDone, code)
	assert.Empty(t, problems)
	assert.Equal(t, fromFile, out)
}

func TestAssessTakesAnotherProfile(t *testing.T) {
	code, out, _ := assessed(t, "", "-profile", "ac-fed-ignition", samples+"/healthy-three-phase.json")
	assert.Equal(t, exitDone, code)
	assert.Contains(t, out, `"profile": "ac-fed-ignition"`)
}

// Input that cannot be used: one line that names file, field and reason, code 2,
// nothing on standard output.
func TestAssessRefusesInOneLine(t *testing.T) {
	dir := t.TempDir()
	sample, err := os.ReadFile(samples + "/corrected.json")
	require.NoError(t, err)
	change := func(old, new string) string {
		require.Contains(t, string(sample), old)
		return strings.Replace(string(sample), old, new, 1)
	}
	for _, c := range []struct{ name, content, field, reason string }{
		{"not-json.json", "0.6 ohms", "file", "is not JSON at byte"},
		{"empty.json", "", "file", "is empty or cut short"},
		{"cut-short.json", string(sample[:len(sample)/2]), "file", "is empty or cut short"},
		{"goes-on.json", string(sample) + "{}", "file", "is not JSON at byte"},
		{"other-format.json", change("coilbook session", "shopping list"), "format", `must be "coilbook session"`},
		{"newer.json", change(`"version": 4`, `"version": 5`), "version", "is 5, newer than this program's 4; update Coilbook"},
		{"unknown-field.json", change(`"aim"`, `"goal"`), "entries[0].goal", "is not a field"},
		{"two-bodies.json", change(`"setup": {`, `"mark": "finished", "setup": {`), "entries[0].entry", "has 2 contents"},
		{"meter.json", change(`"meter": "cheap"`, `"meter": "golden"`), "entries[0].setup.meter", "not described here"},
		{"time.json", change(`"at": "`, `"at": "on `), "entries[0].at", "is not a time"},
		{"entry-id.json", change(`"reading": {`, `"skip": null, "id": "7", "reading": {`), "entries[1].id", "is not a UUID"},
		{"no-text.json", change(`"text": "0.2"`, `"text": ""`), "entries[1].reading.text", "is empty"},
	} {
		name := filepath.Join(dir, c.name)
		require.NoError(t, os.WriteFile(name, []byte(c.content), 0o600))
		for _, args := range [][]string{{name}, {"-table", name}} {
			code, out, problems := assessed(t, "", args...)
			refusedInOneLine(t, code, out, problems, name, c.field+": ", c.reason)
		}
		code, out, problems := assessed(t, c.content, "-")
		refusedInOneLine(t, code, out, problems, "-", c.field+": ", c.reason)
	}
	code, out, problems := assessed(t, "", filepath.Join(dir, "missing.json"))
	refusedInOneLine(t, code, out, problems, "missing.json", "cannot be read", "no such file")
	code, out, problems = assessed(t, "", dir)
	refusedInOneLine(t, code, out, problems, dir, "cannot be read", "is a directory")
	code, out, problems = assessed(t, "", "-profile", "golden", samples+"/corrected.json")
	refusedInOneLine(t, code, out, problems, "corrected.json", "-profile: ", `"golden" is not bundled`)
}

func refusedInOneLine(t *testing.T, code int, out, problems string, parts ...string) {
	t.Helper()
	assert.Equal(t, exitUsage, code, problems)
	assert.Empty(t, out)
	assert.Equal(t, 1, strings.Count(problems, "\n"), "%q", problems)
	assert.True(t, strings.HasPrefix(problems, "coilbook: "), "%q", problems)
	for _, part := range parts {
		assert.Contains(t, problems, part)
	}
}

func TestAssessExplainsItself(t *testing.T) {
	code, out, problems := assessed(t, "")
	assert.Equal(t, exitUsage, code)
	assert.Empty(t, out)
	assert.Contains(t, problems, "usage: coilbook assess")
	code, _, problems = assessed(t, "", "-h")
	assert.Equal(t, exitDone, code)
	assert.Contains(t, problems, "usage: coilbook assess")
	code, _, _ = assessed(t, "", "-colour", "x")
	assert.Equal(t, exitUsage, code)
}

type brokenPipe struct{}

func (brokenPipe) Write([]byte) (int, error) { return 0, os.ErrClosed }

func TestAssessSaysWhenItCannotPrint(t *testing.T) {
	var problems bytes.Buffer
	code := assessFile([]string{samples + "/corrected.json"}, nil, brokenPipe{}, &problems)
	assert.Equal(t, exitFailed, code)
	assert.Equal(t, 1, strings.Count(problems.String(), "\n"))
}
