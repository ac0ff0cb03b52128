//go:build !js

package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/rig"
	"coilbook/specs"
)

const dialogues = "../testdata/converse"

func conversed(t *testing.T, stdin string, args ...string) (code int, lines []string, problems string) {
	t.Helper()
	var out, bad bytes.Buffer
	code = converse(args, strings.NewReader(stdin), &out, &bad)
	if out.Len() > 0 {
		lines = strings.Split(strings.TrimSuffix(out.String(), "\n"), "\n")
	}
	return code, lines, bad.String()
}

func concluded(t *testing.T, lines []string) finding {
	t.Helper()
	require.NotEmpty(t, lines)
	var l findingLine
	require.NoError(t, json.Unmarshal([]byte(lines[len(lines)-1]), &l))
	require.NotEmpty(t, l.Finding.Action, "the last line is the finding")
	return l.Finding
}

// person sits beside a simulated machine: reads what the program asks and does it.
type person struct {
	t     *testing.T
	m     machine.Machine
	build check.Build
	with  rig.Instrument
	luck  machine.Chance
	habit []func(asked string) string // what is said instead at the first asks, "" for the truth
	said  []string
	heard []string
	left  string // of the line that is being said
}

func (p *person) Write(b []byte) (int, error) {
	p.heard = append(p.heard, strings.TrimSuffix(string(b), "\n"))
	return len(b), nil
}

func (p *person) Read(b []byte) (int, error) {
	if p.left == "" {
		line := p.says()
		p.said = append(p.said, line)
		p.left = line + "\n"
	}
	n := copy(b, p.left)
	p.left = p.left[n:]
	return n, nil
}

func (p *person) says() string {
	var l askLine
	require.NoError(p.t, json.Unmarshal([]byte(p.heard[len(p.heard)-1]), &l))
	c, ok := check.Find(check.Whole(p.build), l.Ask.Check)
	require.True(p.t, ok, l.Ask.Check)
	if len(p.habit) > 0 {
		say := p.habit[0](string(c.ID))
		p.habit = p.habit[1:]
		if say != "" {
			return say
		}
	}
	if l.Ask.Instrument == "eyes" {
		yes, err := rig.Seen(p.m, c, p.luck.Uniform())
		require.NoError(p.t, err)
		return fmt.Sprintf(`{"yes":%v}`, yes)
	}
	if c.Function == meter.AmpsDC {
		return fmt.Sprintf(`{"reading":"%.2f","unit":"A"}`, p.m.Predict(c, p.with.Meter, machine.Kit{}).Value)
	}
	d, err := rig.Check(p.m, c, p.with, machine.Kit{})
	require.NoError(p.t, err)
	if _, err := fmt.Sscanf(d.Typed(), "%f", new(float64)); err != nil {
		return fmt.Sprintf(`{"reading":%q}`, d.Typed())
	}
	return fmt.Sprintf(`{"reading":%q,"unit":%q}`, d.Typed(), d.Unit.Name)
}

// beside lets a person converse about a machine with one fault.
func beside(t *testing.T, first string, f machine.Fault, habit ...func(string) string) *person {
	t.Helper()
	return besideAll(t, first, []machine.Fault{f}, habit...)
}

// besideAll is beside with several faults at once.
func besideAll(t *testing.T, first string, all []machine.Fault, habit ...func(string) string) *person {
	t.Helper()
	b := machine.Usual()
	luck := machine.NewChance(41)
	m := machine.Drawn(b, luck)
	p := &person{t: t, m: m.With(all...), build: b.Known(), luck: luck, habit: habit, said: []string{first}, left: first + "\n"}
	p.with = rig.DrawnInstrument(meter.Cheap(), luck)
	var bad bytes.Buffer
	require.Equal(t, exitDone, converse(nil, p, p, &bad), bad.String())
	require.Empty(t, bad.String())
	return p
}

func saying(line string) func(string) string { return func(string) string { return line } }

func truly(string) string { return "" }

// The dialogues in testdata are those of a person beside a simulated machine.
// They name the part, and are replayed to the letter.
func TestDialoguesNameThePart(t *testing.T) {
	schema := converseSchema(t)
	for _, c := range []struct {
		name, first string
		all         []machine.Fault
		parts       []check.Part
		id          fault.ID
		action      diagnose.Action
		habit       []func(string) string
	}{
		{"blown-fuse", `{"symptom":"wont-charge","meter":"cheap","leadsOhms":0.3}`, []machine.Fault{{Kind: machine.MainFuse}}, []check.Part{check.Wiring}, "main-fuse", diagnose.Repair, nil},
		{
			"open-exciter",
			`{"symptom":"no-spark","build":{"statorPoles":12,"chargeLeads":3,"exciter":true,"pickup":true,"groundLead":true},"meter":"cheap","cannot":["flywheel-cover"],"leadsOhms":0.3}`,
			[]machine.Fault{{Kind: machine.ExciterOpen}}, []check.Part{check.Exciter}, "exciter-open", diagnose.Replace,
			[]func(string) string{saying(`{"reading":"about five"}`), truly, saying(`{"reading":"about five"}`), truly, saying(`{"refuse":true}`), saying(`{"check":"battery-rest","reading":"12,51"}`)},
		},
		{
			"boiled-battery", `{"symptom":"overcharges","leadsOhms":0.3}`,
			[]machine.Fault{{Kind: machine.NoRegulating}, {Kind: machine.Sulphated, Size: 12}}, []check.Part{check.Battery, check.Regulator},
			"regulator-unbound-and-battery-sulphated", diagnose.Replace, nil,
		},
	} {
		p := besideAll(t, c.first, c.all, c.habit...)
		f := concluded(t, p.heard)
		assert.Equal(t, c.parts, f.Parts, c.name)
		assert.Equal(t, c.parts[0], f.Part, c.name)
		assert.Equal(t, c.id, f.Fault, c.name)
		assert.Equal(t, c.action, f.Action, c.name)
		assert.GreaterOrEqual(t, f.Probability, 0.9, c.name)
		for _, line := range append(append([]string{}, p.said...), p.heard...) {
			assertLine(t, schema, line)
		}
		said := dialogues + "/" + c.name + ".jsonl"
		golden(t, said, strings.Join(p.said, "\n")+"\n")
		code, again, bad := conversed(t, "", said)
		require.Equal(t, exitDone, code, bad)
		assert.Equal(t, p.heard, again, "a replay says the same")
		golden(t, dialogues+"/"+c.name+".replies.jsonl", strings.Join(again, "\n")+"\n")
	}
}

func converseSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	text, err := specs.Schema("converse")
	require.NoError(t, err)
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("urn:converse", doc))
	schema, err := c.Compile("urn:converse")
	require.NoError(t, err)
	return schema
}

// assertLine checks a line against the schema; one that the program refused is no
// line of it.
func assertLine(t *testing.T, schema *jsonschema.Schema, line string) {
	t.Helper()
	assert.NoError(t, valid(t, schema, line), line)
}

func valid(t *testing.T, schema *jsonschema.Schema, line string) error {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(line))
	require.NoError(t, err)
	return schema.Validate(doc)
}

// Every check of every build is asked for in the schema's words.
func TestEveryAskKeepsToTheSchema(t *testing.T) {
	schema := converseSchema(t)
	for leads := check.MinChargeLeads; leads <= check.MaxChargeLeads; leads++ {
		for flags := range 8 {
			b := check.Build{StatorPoles: 12, ChargeLeads: leads, Exciter: flags&1 > 0, Pickup: flags&2 > 0, GroundLead: flags&4 > 0}
			for _, c := range check.Whole(b) {
				for _, with := range meter.Bundled() {
					line, err := json.Marshal(askLine{askOf(diagnose.Choice{Check: c, Minutes: c.Minutes}, with), nil})
					require.NoError(t, err)
					assertLine(t, schema, strings.Replace(string(line), `"suspects":null`, `"suspects":[]`, 1))
				}
			}
		}
	}
}

// The schema lists the symptoms, accesses, faults' parts and meters that there are.
func TestTheSchemaKnowsEveryWord(t *testing.T) {
	schema := converseSchema(t)
	for _, s := range fault.Symptoms() {
		assertLine(t, schema, fmt.Sprintf(`{"symptom":%q}`, s))
	}
	for _, a := range check.Accesses() {
		assertLine(t, schema, fmt.Sprintf(`{"symptom":"bench","cannot":[%q]}`, a))
	}
	for _, m := range meter.Bundled() {
		assertLine(t, schema, fmt.Sprintf(`{"symptom":"bench","meter":%q}`, m.ID))
		sheet, err := json.Marshal(meter.SheetOf(m))
		require.NoError(t, err)
		assertLine(t, schema, fmt.Sprintf(`{"symptom":"bench","meter":%s}`, sheet))
		_, err = settingOf(fmt.Appendf(nil, `{"symptom":"bench","meter":%s}`, sheet))
		assert.NoError(t, err)
	}
	faults, err := fault.Bundled()
	require.NoError(t, err)
	for _, f := range faults.Faults {
		first, all := firstOf(f.Parts()), partsOf(f.Parts())
		one := finding{Part: first, Parts: all, Also: []also{}, Fault: f.ID, Action: diagnose.Repair, Suspects: []suspect{{f.ID, first, all, 1}}, Unsure: []fault.ID{f.ID}}
		line, err := json.Marshal(findingLine{one})
		require.NoError(t, err)
		assertLine(t, schema, string(line))
	}
	for _, line := range []string{
		`{"symptom":"hums"}`, `{"symptom":"bench","meter":"golden"}`, `{"symptom":"bench","build":{"statorPoles":0}}`, `{"reading":1}`, `{"yes":1}`,
		`{"refuse":false}`, `{"reading":"1","number":1}`, `{"unit":"V","number":1}`, `{"shrug":true}`, `{}`,
		`{"ask":{"check":"x"},"suspects":[]}`, `{"finding":{"part":""}}`,
	} {
		assert.Error(t, valid(t, schema, line), line)
	}
}

// A line that cannot be taken gives one sentence and the same question again.
func TestBadLinesLoseNothing(t *testing.T) {
	const first = `{"symptom":"overcharges"}` + "\n"
	for line, says := range map[string]string{
		``:                                      "line: is empty or cut short; send one object",
		`{"reading":`:                           "line: is empty or cut short",
		`reading 5`:                             "line: is not JSON at byte 1",
		`[1]`:                                   "line: is a JSON array",
		`null`:                                  "line: holds 0 answers; give one of reading, number, yes, refuse",
		`{"reading":"5"}{}`:                     "line: goes on after its object",
		`{"shrug":true}`:                        "shrug: is not a field here; leave it out",
		`{"reading":5}`:                         "reading: is a JSON number; use text in quotes",
		`{"yes":"no"}`:                          "yes: is a JSON string; use true or false",
		`{"number":"5"}`:                        "number: is a JSON string; use a number",
		`{"reading":"5","yes":true}`:            "line: holds 2 answers",
		`{"unit":"V","number":5}`:               "unit: goes with a reading only",
		`{"refuse":false}`:                      "refuse: is false",
		`{"check":"exciter","reading":""}`:      `reading: "" is empty: type the number on the display`,
		`{"check":"exciter","reading":"five"}`:  `reading: "five" is not a number`,
		`{"check":"exciter","reading":"1,234"}`: "can mean",
		`{"check":"exciter","reading":"5","unit":"V"}`:           `unit: is "V", which is none of resistance; leave it out or use Ω`,
		`{"check":"exciter","reading":"5","unit":"furlong"}`:     "unit: is \"furlong\"",
		`{"check":"exciter","number":1e300}`:                     "number: is 1e+300, which no meter shows",
		`{"check":"exciter","yes":true}`:                         "yes: is no answer to exciter, which is measured; give reading or number",
		`{"check":"flux","reading":"5"}`:                         `check: "flux" is none of this build's`,
		`{"check":"","reading":"5"}`:                             "check: is missing",
		`{"check":"fuse","reading":"5"}`:                         "reading: is no answer to fuse, which is looked at; give yes, true or false",
		`{"check":"fuse","number":1}`:                            "reading: is no answer to fuse",
		`{"check":"flux","refuse":true}`:                         `check: "flux"`,
		`{"check":"lead-zero","reading":"44"}`:                   "reading: is 44 Ω, which leads that work cannot read",
		`{"check":"exciter-cranking","number":-4}`:               "number: is -4, below zero, which no AC voltage can be",
		`{"check":"pickup-gap","reading":"won't settle"}`:        "is no length",
		"{\"reading\":\"\xff\"}":                                 "line: is not UTF-8",
		`{"reading":"` + strings.Repeat("5", longestLine) + `"}`: "line: is longer than 65536 bytes",
	} {
		code, lines, bad := conversed(t, first+line+"\n")
		require.Equal(t, exitDone, code, "%.60s: %s", line, bad)
		require.Len(t, lines, 4, "%.60s", line)
		var p problemLine
		require.NoError(t, json.Unmarshal([]byte(lines[1]), &p))
		assert.Contains(t, p.Problem, says, "%.60s", line)
		assert.NotContains(t, p.Problem, "\n")
		assert.Equal(t, lines[0], lines[2], "%.60s: the same question", line)
		assert.Zero(t, concluded(t, lines).Checks)
	}
}

// A first line that cannot be used ends it with one line and code 2.
func TestAnUnusableFirstLineIsRefused(t *testing.T) {
	for line, says := range map[string]string{
		``:                          "first line: is missing; send one with a symptom",
		"\n":                        "first line: is empty or cut short",
		`[`:                         "first line: is empty or cut short",
		`{}`:                        "symptom: is \"\", which is not known; use wont-charge",
		`{"symptom":"hums"}`:        `symptom: is "hums"`,
		`{"symptom":1}`:             "symptom: is a JSON number",
		`{"symptom":"bench","x":1}`: "x: is not a field here",
		`{"symptom":"bench","build":{"statorPoles":0}}`:   "build.statorPoles: is 0; use 1 to 36",
		`{"symptom":"bench","build":{"chargeLeads":5}}`:   "build.chargeLeads: is 5; use 1 to 4",
		`{"symptom":"bench","build":{"chargeLeads":2.5}}`: "build.chargeLeads: is a JSON number 2.5; use a whole number",
		`{"symptom":"bench","build":{"exciter":"yes"}}`:   "build.exciter: is a JSON string; use true or false",
		`{"symptom":"bench","cannot":["ladder"]}`:         `cannot[0]: is "ladder"`,
		`{"symptom":"bench","cannot":"helper"}`:           "cannot: is a JSON string; use a list",
		`{"symptom":"bench","meter":"golden"}`:            `meter: is "golden"`,
		`{"symptom":"bench","meter":7}`:                   "meter: is neither an id nor a data sheet",
		`{"symptom":"bench","meter":{"class":"golden"}}`:  `meter.class: is "golden"`,
		`{"symptom":"bench","meter":{"colour":"red"}}`:    "meter.colour: is not a field",
		`{"symptom":"bench","leadsOhms":"0.3"}`:           "leadsOhms: is a JSON string",
		`{"symptom":"bench","leadsOhms":30}`:              "leadsOhms: is 30.0 Ω",
	} {
		code, lines, bad := conversed(t, line)
		assert.Equal(t, exitUsage, code, line)
		assert.Empty(t, lines, line)
		assert.Equal(t, 1, strings.Count(bad, "\n"), bad)
		assert.Contains(t, bad, "coilbook: -: first line: ")
		assert.Contains(t, bad, says, line)
	}
}

func TestConverseExplainsItself(t *testing.T) {
	code, _, bad := conversed(t, "", "-h")
	assert.Equal(t, exitDone, code)
	assert.Contains(t, bad, "usage: coilbook converse")
	code, _, bad = conversed(t, "", "a", "b")
	assert.Equal(t, exitUsage, code)
	assert.Contains(t, bad, "usage: coilbook converse")
	code, _, _ = conversed(t, "", "-colour")
	assert.Equal(t, exitUsage, code)
	code, lines, bad := conversed(t, "", "nothing-here.jsonl")
	refusedInOneLine(t, code, strings.Join(lines, ""), bad, "nothing-here.jsonl", "cannot be read")
}

func TestConverseSaysWhenItCannotPrint(t *testing.T) {
	var bad bytes.Buffer
	assert.Equal(t, exitFailed, converse(nil, strings.NewReader(`{"symptom":"overcharges"}`), brokenPipe{}, &bad))
	assert.Equal(t, 1, strings.Count(bad.String(), "\n"))
}

// Who refuses everything still gets a finding, of what was known before.
func TestRefusingEverythingEnds(t *testing.T) {
	code, lines, bad := conversed(t, `{"symptom":"overcharges"}`+"\n"+strings.Repeat(`{"refuse":true}`+"\n", 200))
	require.Equal(t, exitDone, code, bad)
	asked := map[string]bool{}
	for _, line := range lines[:len(lines)-1] {
		var l askLine
		require.NoError(t, json.Unmarshal([]byte(line), &l))
		require.False(t, asked[string(l.Ask.Check)], "%s is not asked for again", l.Ask.Check)
		asked[string(l.Ask.Check)] = true
	}
	assert.NotEmpty(t, asked)
	f := concluded(t, lines)
	assert.Zero(t, f.Checks)
	assert.Zero(t, f.Minutes)
	assert.Zero(t, f.Strange)
}

// What cannot be got at is never asked for.
func TestWhatIsOutOfReachIsNotAskedFor(t *testing.T) {
	code, lines, _ := conversed(t, `{"symptom":"no-spark","cannot":["helper","plug-parted"]}`+"\n"+strings.Repeat(`{"refuse":true}`+"\n", 200))
	require.Equal(t, exitDone, code)
	require.Greater(t, len(lines), 2)
	for _, line := range lines {
		assert.NotContains(t, line, `"helper"`)
		assert.NotContains(t, line, `"plug-parted"`)
	}
}

// The end of the input at any place gives a finding, also within a line.
func TestTheEndComesAtAnyPlace(t *testing.T) {
	whole, err := os.ReadFile(dialogues + "/blown-fuse.jsonl")
	require.NoError(t, err)
	lines := strings.SplitAfter(string(whole), "\n")
	for n := 1; n < len(lines); n++ {
		code, out, bad := conversed(t, strings.Join(lines[:n], ""))
		require.Equal(t, exitDone, code, bad)
		assert.Equal(t, n-1, concluded(t, out).Checks)
	}
	code, out, _ := conversed(t, strings.TrimSuffix(lines[0], "\n"))
	assert.Equal(t, exitDone, code)
	assert.Len(t, out, 2)
	code, out, _ = conversed(t, lines[0]+`{"reading":"1`)
	assert.Equal(t, exitDone, code)
	assert.Len(t, out, 4, "the piece of a line is a problem")
}

// Probabilities have four decimals at most.
func TestProbabilitiesAreRounded(t *testing.T) {
	for _, p := range []float64{0, 1, 1.0 / 3, 0.99996} {
		assert.InDelta(t, p, chance(p), 5e-5)
		assert.InDelta(t, math.Round(chance(p)*1e4), chance(p)*1e4, 1e-9)
	}
}
