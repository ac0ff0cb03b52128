// Package tonguetest lets tests choose the language that they run in, which is
// fixed before a test begins: the test program is started once more with another
// environment.
package tonguetest

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"regexp"
	"strings"
	"testing"
)

// asked names the language of a test program that Run started.
const asked = "COILBOOK_TEST_LANGUAGE"

// Main runs the tests of a package in English, whatever this machine speaks, or in
// the language that Run asked for; now is the language of this run. What the tests
// share is ended by after. Call it from TestMain.
func Main(m *testing.M, now string, after ...func()) {
	want := os.Getenv(asked)
	if want == "" {
		want = "en"
	}
	if now == want {
		code := m.Run()
		for _, end := range after {
			end()
		}
		os.Exit(code)
	}
	again := exec.Command(os.Args[0], os.Args[1:]...)
	again.Env = In(want)
	again.Stdin, again.Stdout, again.Stderr = os.Stdin, os.Stdout, os.Stderr
	err := again.Run()
	var exit *exec.ExitError
	switch {
	case errors.As(err, &exit):
		os.Exit(exit.ExitCode())
	case err != nil:
		fmt.Fprintln(os.Stderr, "starting the tests in", want+":", err)
		os.Exit(1)
	}
	os.Exit(0)
}

// In is this environment with another language.
func In(language string) []string {
	return append(os.Environ(), "LC_ALL="+language, asked+"="+language)
}

// Run runs the test that calls it once more in another language, and fails with it.
// In the run that it started it says so, and does nothing.
func Run(t *testing.T, language string) (here bool) {
	t.Helper()
	if os.Getenv(asked) == language {
		return true
	}
	Others(t, language, t.Name())
	return false
}

// Others runs other tests of the package in another language.
func Others(t *testing.T, language string, names ...string) {
	t.Helper()
	args := []string{"-test.run=^(" + strings.Join(names, "|") + ")$", "-test.v"}
	for _, a := range os.Args[1:] {
		if !strings.HasPrefix(a, "-test.") {
			args = append(args, a) // a flag of the tests themselves, such as -update
		}
	}
	test := exec.Command(os.Args[0], args...)
	test.Env = In(language)
	out, err := test.CombinedOutput()
	if err != nil {
		t.Errorf("in %s: %v\n%s", language, err, out)
	}
	for _, name := range names {
		if err == nil && !strings.Contains(string(out), "--- PASS: "+name+" ") {
			t.Errorf("in %s %s did not run:\n%s", language, name, out)
		}
	}
}

// english are words that no sentence in another language holds by chance.
var english = regexp.MustCompile(`(?i)\b(the|and|with|of|is|are|from|to|or|by|at|on|off|it|not|this|that|your|you|must|leads?|plug|winding|checks?|battery|engine|readings?|read|spark|wire|meter)\b`)

// Leftover finds English in a text that should hold none; "" where there is none.
func Leftover(text string) string { return english.FindString(text) }
