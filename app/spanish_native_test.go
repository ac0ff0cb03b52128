//go:build !js

package main

import (
	"encoding/json"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/app/tongue"
	"coilbook/app/tongue/tonguetest"
)

// spanishSamples have a golden report in Spanish: faults and drops, hot and peak
// readings, and a meter's self-check.
var spanishSamples = []string{"example-workshop-quad", "hot-and-peak", "meter-self-check", "grounded-winding", "corrected"}

func TestReportsInSpanish(t *testing.T) {
	if !tonguetest.Run(t, "es") {
		return
	}
	for _, name := range spanishSamples {
		code, out, problems := assessed(t, "", "-table", samples+"/"+name+".json")
		require.Equal(t, exitDone, code, problems)
		golden(t, samples+"/"+name+".report.es.txt", out)
	}
}

// report is what programs read of a report.
type report struct {
	Checks []struct {
		Check, Name string
		Verdict     *struct {
			Outcome, Reason, Because string
			ProbabilityInSpec        float64
			Value, Low, High         *float64
		}
	}
	Parts []struct{ Part, Outcome string }
}

// Programs read the same figures and codes in every language; what people read of it
// is in theirs.
func TestAReportForProgramsIsTheSameInSpanish(t *testing.T) {
	var english, here report
	text, err := os.ReadFile(samples + "/grounded-winding.report.json")
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(text, &english))
	if !tonguetest.Run(t, "es") {
		return
	}
	code, out, problems := assessed(t, "", samples+"/grounded-winding.json")
	require.Equal(t, exitDone, code, problems)
	require.NoError(t, json.Unmarshal([]byte(out), &here))
	require.Len(t, here.Checks, len(english.Checks))
	for i, c := range here.Checks {
		assert.NotEqual(t, english.Checks[i].Name, c.Name)
		if c.Verdict != nil {
			assert.NotEqual(t, english.Checks[i].Verdict.Because, c.Verdict.Because)
			c.Verdict.Because = english.Checks[i].Verdict.Because
		}
		c.Name = english.Checks[i].Name
		assert.Equal(t, english.Checks[i], c)
	}
	assert.Equal(t, english.Parts, here.Parts)
}

// What a style sheet adds to a page would be in one language.
func TestStyleSheetsHoldNoWords(t *testing.T) {
	for _, name := range []string{"style.css", "drawing.css"} {
		text, err := os.ReadFile("../web/" + name)
		require.NoError(t, err)
		for _, m := range regexp.MustCompile(`content: *"[^;]*`).FindAllString(string(text), -1) {
			said := regexp.MustCompile(`\\[0-9a-f]{4}|attr\([a-z-]*\)|content:`).ReplaceAllString(m, "")
			assert.NotRegexp(t, `[a-zA-Z]`, said, name)
		}
	}
}

// The page speaks before the program does, and when it has stopped: in the same
// languages.
func TestThePageSpeaksEveryLanguage(t *testing.T) {
	read := func(name string) string {
		text, err := os.ReadFile("../web/" + name)
		require.NoError(t, err)
		return string(text)
	}
	var ids []string
	keys := map[string][]string{}
	boot, shell := read("boot.js"), read("shell.html")
	for _, l := range tongue.Languages() {
		ids = append(ids, `"`+l.ID+`"`)
		table := regexp.MustCompile(`(?s)\n    ` + l.ID + `: \{\n(.*?)\n    \},`).FindStringSubmatch(boot)
		require.Len(t, table, 2, "boot.js has no words in %s", l.Name)
		for _, m := range regexp.MustCompile(`(?m)^      (\w+): `).FindAllStringSubmatch(table[1], -1) {
			keys[l.ID] = append(keys[l.ID], m[1])
		}
		if l.ID != "en" {
			assert.Empty(t, tonguetest.Leftover(regexp.MustCompile(`\$\{\w+\}|reason|code`).ReplaceAllString(table[1], "")), l.Name)
		}
		pieces := regexp.MustCompile(`<(p|span)[^>]* lang="`+l.ID+`"`).FindAllString(shell, -1)
		assert.Len(t, pieces, 3, "the page shell in %s", l.Name)
	}
	assert.Contains(t, read("language.js"), "const spoken = ["+strings.Join(ids, ", ")+"]")
	for _, l := range tongue.Languages() {
		assert.Equal(t, keys["en"], keys[l.ID], "words of boot.js in %s", l.Name)
	}
	assert.Greater(t, len(keys["en"]), 4)
}
