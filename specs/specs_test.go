package specs_test

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/fault"
	"coilbook/engine/session"
	"coilbook/engine/spec"
	"coilbook/specs"
)

func TestBundledProfilesAreRead(t *testing.T) {
	profiles, err := specs.Bundled()
	require.NoError(t, err)
	require.Equal(t, specs.DefaultID, profiles[0].ID, "the widest comes first")
	files, err := filepath.Glob("profiles/*.json")
	require.NoError(t, err)
	assert.Len(t, profiles, len(files), "every file is offered")
	for _, p := range profiles {
		assert.NotEmpty(t, p.Name)
		assert.NotEmpty(t, p.About)
		for m, l := range p.Limits {
			assert.Contains(t, []spec.Source{spec.CommonPractice, spec.FromMemory}, l.Provenance.Kind, "%s %s: what is bundled comes from no manual", p.ID, m)
			assert.NotEmpty(t, l.Provenance.Note, "%s %s", p.ID, m)
			assert.NotEmpty(t, l.Condition.State, "%s %s", p.ID, m)
		}
	}
}

// The widest profile is as wide as its name says.
func TestTheDefaultProfileHoldsTheOthers(t *testing.T) {
	profiles, err := specs.Bundled()
	require.NoError(t, err)
	for _, p := range profiles[1:] {
		for m, l := range p.Limits {
			wide, ok := profiles[0].Limit(m)
			require.True(t, ok, "%s", m)
			assert.LessOrEqual(t, wide.Low, l.Low, "%s %s", p.ID, m)
			assert.GreaterOrEqual(t, wide.High, l.High, "%s %s", p.ID, m)
		}
	}
}

// Figures of one machine are no common practice: what is bundled stays generic.
// These are the figures of the trade checks in testdata/outside/trade.json.
func TestNoBundledLimitIsThatOfATradeCheck(t *testing.T) {
	const thou = 25.4e-6
	figures := map[spec.Measurand][]float64{
		spec.PickupResistance: {130, 160}, spec.ExciterResist: {350, 600},
		spec.PickupGap: {8 * thou, 20 * thou}, spec.ExciterCranking: {50},
	}
	profiles, err := specs.Bundled()
	require.NoError(t, err)
	for _, p := range profiles {
		for m, own := range figures {
			for _, figure := range own {
				assert.False(t, near(p.Limits[m].Low, figure), "%s %s: %v", p.ID, m, figure)
				assert.False(t, near(p.Limits[m].High, figure), "%s %s: %v", p.ID, m, figure)
			}
		}
	}
}

func near(a, b float64) bool { return a > b*0.999 && a < b*1.001 }

func compiled(t *testing.T, format string) *jsonschema.Schema {
	t.Helper()
	text, err := specs.Schema(format)
	require.NoError(t, err)
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	id := doc.(map[string]any)["$id"].(string)
	assert.True(t, strings.HasPrefix(id, "urn:"), "no host name is needed to read a file")
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	require.NoError(t, c.AddResource(id, doc))
	if format == "report" { // it holds what converse says too
		text, err := specs.Schema("converse")
		require.NoError(t, err)
		doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
		require.NoError(t, err)
		require.NoError(t, c.AddResource(doc.(map[string]any)["$id"].(string), doc))
	}
	schema, err := c.Compile(id)
	require.NoError(t, err)
	return schema
}

// documents are all files of a format that the project holds.
func documents(t *testing.T, format string) map[string][]byte {
	t.Helper()
	patterns := map[string][]string{
		"session": {"../testdata/sessions/*.json", "../engine/session/testdata/session_v1.json", "../engine/session/testdata/session_v2.json", "../engine/session/testdata/session_v3.json", "../engine/session/testdata/session_v4.json"},
		"profile": {"profiles/*.json"},
		"report":  {"../testdata/sessions/*.report.json"},
		"faults":  {"../engine/fault/faults.json", "../engine/fault/testdata/*.json"},
	}
	out := map[string][]byte{}
	for _, pattern := range patterns[format] {
		names, err := filepath.Glob(pattern)
		require.NoError(t, err)
		for _, name := range names {
			if format == "session" && strings.HasSuffix(name, ".report.json") {
				continue
			}
			b, err := os.ReadFile(name)
			require.NoError(t, err)
			out[name] = b
		}
	}
	require.GreaterOrEqual(t, len(out), 3, format)
	return out
}

func parsed(t *testing.T, b []byte) any {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(b))
	require.NoError(t, err)
	return doc
}

func TestAllFilesKeepToTheirSchemas(t *testing.T) {
	for _, format := range []string{"session", "profile", "report", "faults"} {
		schema := compiled(t, format)
		for name, b := range documents(t, format) {
			assert.NoError(t, schema.Validate(parsed(t, b)), name)
		}
	}
	_, err := specs.Schema("recipe")
	assert.Error(t, err)
}

// Each place of each file is doctored in turn: a field too many, a thing of
// another kind. The schema refuses all of them, and so does the reader.
func TestSchemasAndReadersRefuseDoctoredFiles(t *testing.T) {
	readers := map[string]func([]byte) error{
		"session": func(b []byte) error { _, err := session.Decode(b); return err },
		"profile": func(b []byte) error { _, err := spec.DecodeProfile(b); return err },
		"faults":  func(b []byte) error { _, err := fault.Decode(b); return err },
	}
	for _, format := range []string{"session", "profile", "report", "faults"} {
		schema := compiled(t, format)
		for name, b := range documents(t, format) {
			root := parsed(t, b)
			doctored := 0
			everyPlace(root, func(place string) {
				doctored++
				require.Error(t, schema.Validate(root), "%s: %s", name, place)
				if read := readers[format]; read != nil {
					text, err := json.Marshal(root)
					require.NoError(t, err)
					require.Error(t, read(text), "%s: %s", name, place)
				}
			})
			assert.Greater(t, doctored, 20, name)
			require.NoError(t, schema.Validate(root), "put back")
		}
	}
}

// everyPlace changes one place of a document at a time, calls try, and puts it
// back.
func everyPlace(node any, try func(place string)) {
	switch v := node.(type) {
	case map[string]any:
		v["spare"] = true
		try("a field too many")
		delete(v, "spare")
		for key, child := range v {
			v[key] = otherKind(child)
			try(key)
			v[key] = child
			everyPlace(child, func(place string) { try(key + "." + place) })
		}
	case []any:
		for i, child := range v {
			v[i] = otherKind(child)
			try("an item")
			v[i] = child
			everyPlace(child, func(place string) { try("item." + place) })
		}
	}
}

func otherKind(v any) any {
	switch v.(type) {
	case []any, map[string]any:
		return json.Number("7")
	}
	return []any{}
}

// Faults of meaning that the walk above does not make.
func TestSchemasRefuseWhatMakesNoSense(t *testing.T) {
	for _, c := range []struct{ format, file, old, new string }{
		{"session", "healthy-three-phase", `"version": 4`, `"version": 5`},
		{"session", "healthy-three-phase", `"coilbook session"`, `"coilbook report"`},
		{"session", "healthy-three-phase", `"chargeLeads": 3`, `"chargeLeads": 5`},
		{"session", "healthy-three-phase", `"statorPoles": 12`, `"statorPoles": 0`},
		{"session", "healthy-three-phase", `"ambientCelsius": 18`, `"ambientCelsius": 88`},
		{"session", "healthy-three-phase", `"meter": "cheap"`, `"meter": "golden"`},
		{"session", "healthy-three-phase", `"aim": "bench"`, `"aim": "speed"`},
		{"session", "healthy-three-phase", `"text": "0.2"`, `"text": ""`},
		{"session", "healthy-three-phase", `"mark": "finished"`, `"mark": "lost"`},
		{"session", "healthy-three-phase", `"mark": "finished"`, `"mark": "finished", "note": {"text": ""}`},
		{"session", "healthy-three-phase", `"name": "Gravel-pit quad"`, `"name": "Gravel-pit\nquad"`},
		{"session", "healthy-three-phase", `"at": "20`, `"at": "on 20`},
		{"report", "healthy-three-phase.report", `"outcome": "in spec"`, `"outcome": "fine"`},
		{"report", "healthy-three-phase.report", `"reason": "within"`, `"reason": "because"`},
		{"report", "healthy-three-phase.report", `"probabilityInSpec": 1`, `"probabilityInSpec": 1.1`},
		{"report", "healthy-three-phase.report", `"probabilityInSpec": 1`, `"probabilityInSpec": 0.5`},
		{"report", "corrected.report", `"skipped": true`, `"skipped": false`},
	} {
		b, err := os.ReadFile("../testdata/sessions/" + c.file + ".json")
		require.NoError(t, err)
		require.Contains(t, string(b), c.old)
		doctored := strings.Replace(string(b), c.old, c.new, 1)
		assert.Error(t, compiled(t, c.format).Validate(parsed(t, []byte(doctored))), "%s: %s", c.file, c.new)
	}
}

// A double that makes no sense is refused alike by the schema and by the reader, as far
// as a schema can tell.
func TestSchemaAndReaderRefuseTheSameDoubles(t *testing.T) {
	const good = `{"format":"coilbook faults","version":2,"faults":[{"id":"drain-and-battery-flat","kind":"drain","with":"battery-flat",` +
		`"weights":{"no-spark":2},"link":"it empties it","because":"x"}]}`
	schema := compiled(t, "faults")
	require.NoError(t, schema.Validate(parsed(t, []byte(good))))
	for _, c := range []struct{ old, new string }{
		{`"version":2`, `"version":1`}, {`"version":2`, `"version":4`}, {`"link":"it empties it",`, ``}, {`"link":"it empties it"`, `"link":""`},
		{`"with":"battery-flat",`, ``}, {`"because":"x"`, `"because":""`}, {`"no-spark":2`, `"no-spark":0`}, {`"no-spark":2`, `"magic":2`},
		{`"no-spark":2`, ``}, {`"with"`, `"hotOnly":true,"with"`}, {`"kind":"drain",`, ``},
	} {
		bad := strings.Replace(good, c.old, c.new, 1)
		require.NotEqual(t, good, bad)
		assert.Error(t, schema.Validate(parsed(t, []byte(bad))), bad)
		_, err := fault.Decode([]byte(bad))
		assert.Error(t, err, bad)
	}
}

// What is supposed beside the faults is refused alike by the schema and by the reader.
func TestSchemaAndReaderRefuseTheSameSuppositions(t *testing.T) {
	const good = `{"format":"coilbook faults","version":3,"slips":{"share":0.01,"because":"x"},"unlisted":{"bench":{"share":0.02,"unseen":0.25,"because":"y"}},` +
		`"faults":[{"id":"box-dead","kind":"box-dead","weights":{"no-spark":2},"because":"x"}]}`
	schema := compiled(t, "faults")
	require.NoError(t, schema.Validate(parsed(t, []byte(good))))
	for _, c := range []struct{ old, new string }{
		{`"version":3`, `"version":2`}, {`"slips":{"share":0.01,"because":"x"},`, ``}, {`"share":0.01`, `"share":0`}, {`"share":0.01`, `"share":0.51`},
		{`"because":"x"}`, `"because":""}`}, {`"bench"`, `"magic"`}, {`"share":0.02`, `"share":1`}, {`"share":0.02`, `"share":-0.1`},
		{`"unseen":0.25`, `"unseen":1.1`}, {`"because":"y"`, `"because":""`},
	} {
		bad := strings.Replace(good, c.old, c.new, 1)
		require.NotEqual(t, good, bad)
		assert.Error(t, schema.Validate(parsed(t, []byte(bad))), bad)
		_, err := fault.Decode([]byte(bad))
		assert.Error(t, err, bad)
	}
}

func TestSchemaAndReaderRefuseTheSameConfirmations(t *testing.T) {
	const good = `{"format":"coilbook faults","version":4,"slips":{"share":0.01,"because":"x"},` +
		`"faults":[{"id":"box-dead","kind":"box-dead","weights":{"no-spark":2},"confirm":["box-feed","coil-primary"],"because":"x"}]}`
	schema := compiled(t, "faults")
	require.NoError(t, schema.Validate(parsed(t, []byte(good))))
	for _, c := range []struct{ old, new string }{
		{`"version":4`, `"version":3`}, {`"coil-primary"`, `"box-feed"`}, {`"box-feed"`, `"Box feed"`}, {`"box-feed"`, `7`},
		{`"id":"box-dead","kind":"box-dead"`, `"id":"none"`},
	} {
		bad := strings.Replace(good, c.old, c.new, 1)
		require.NotEqual(t, good, bad)
		assert.Error(t, schema.Validate(parsed(t, []byte(bad))), bad)
		_, err := fault.Decode([]byte(bad))
		assert.Error(t, err, bad)
	}
}

// What version 2 adds is refused alike by the schema and by the reader.
func TestSchemaAndReaderRefuseTheSameOfVersion2(t *testing.T) {
	text, err := os.ReadFile("../engine/session/testdata/session_v2.json")
	require.NoError(t, err)
	good, schema := string(text), compiled(t, "session")
	require.NoError(t, schema.Validate(parsed(t, text)))
	from, to := strings.Index(good, `"ownMeter"`), strings.Index(good, `"winding"`)
	for _, c := range []struct{ old, new string }{
		{`"version": 2`, `"version": 5`},
		{`"meter": "own"`, `"meter": "cheap"`},
		{good[from:to], ""},
		{`"record": "0e7e0000`, `"record": "0e7e`},
		{`"old yellow one"`, `"old\nyellow"`},
		{`"old yellow one"`, `"old\u2028yellow"`},
		{`"old yellow one"`, `"` + strings.Repeat("x", 61) + `"`},
		{`"class": "cheap"`, `"class": "golden"`},
		{`"counts": 1999`, `"counts": 2000`},
		{`"acLowHz": 40`, `"acLowHz": 0`},
		{`"acHighHz": 400`, `"acHighHz": 1e7`},
		{`"inputDCOhms": 1000000`, `"inputDCOhms": 10`},
		{`"inputACOhms": 450000`, `"inputACOhms": 1e10`},
		{`"function": "ohms"`, `"function": "farads"`},
		{`"nominal": 200`, `"nominal": -200`},
		{`"nominal": 200`, `"nominal": 2000`},
		{`"percent": 0.8`, `"percent": 21`},
		{`"digits": 5`, `"digits": 0`},
		{`"half-wave"`, `"by ear"`},
		{`"half-wave"`, `"half-wave", "half-wave"`},
		{`"leads": "good"`, `"noneFits": true`},
		{`"leads": "good"`, `"leads": "lost"`},
		{`"resistor": "off"`, `"resistor": "agrees"`},
		{`"resistor": "off",`, ``},
		{`"bound": 0.13,`, ``},
		{`"bound": 0.13`, `"bound": 0`},
		{`"bound": 0.13`, `"bound": 11`},
		{`"winding": "engine-warm"`, `"winding": "lukewarm"`},
		{`"winding": "just-stopped"`, `"winding": "lukewarm"`},
		{`"volt-amp"`, `"magic"`},
		{`"volt-amp"`, `"peak-hold"`},
		{`"resistorOhms": 0.47`, `"resistorOhms": 0.001`},
		{`"resistorPercent": 1`, `"resistorPercent": 21`},
		{`"adapterMicrofarads": 0.22`, `"adapterMicrofarads": 101`},
		{`"bleederMegohms": 10`, `"bleederMegohms": 1001`},
	} {
		require.Contains(t, good, c.old)
		refuseAlike(t, schema, strings.Replace(good, c.old, c.new, 1), c.old+" -> "+c.new)
	}
	refuseAlike(t, schema, strings.ReplaceAll(good, `"function": "ohms"`, `"function": "volts-dc"`), "no range of ohms")
}

// What version 4 adds is refused alike too.
func TestSchemaAndReaderRefuseTheSameOfVersion4(t *testing.T) {
	text, err := os.ReadFile("../engine/session/testdata/session_v4.json")
	require.NoError(t, err)
	good, schema := string(text), compiled(t, "session")
	require.NoError(t, schema.Validate(parsed(t, text)))
	for _, c := range []struct{ old, new string }{
		{`"colour": "yellow"`, `"colour": "mauve"`},
		{`"colour": "yellow",`, ``},
		{`"stripe": "red"`, `"stripe": "Red"`},
		{`"lead": "charge-1"`, `"lead": "charge-5"`},
		{`"lead": "charge-1"`, `"lead": "battery-plus"`},
		{`"lead": "charge-1"`, `"wire": "charge-1"`},
	} {
		require.Contains(t, good, c.old)
		refuseAlike(t, schema, strings.Replace(good, c.old, c.new, 1), c.old+" -> "+c.new)
	}
}

func refuseAlike(t *testing.T, schema *jsonschema.Schema, doctored, says string) {
	t.Helper()
	assert.Error(t, schema.Validate(parsed(t, []byte(doctored))), "schema: %s", says)
	_, err := session.Decode([]byte(doctored))
	assert.Error(t, err, "reader: %s", says)
}
