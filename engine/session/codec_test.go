package session_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/session"
)

func TestSessionsComeBack(t *testing.T) {
	for _, s := range []session.Session{whole(), {ID: sessionID}} {
		b := text(t, s)
		got, err := session.Decode([]byte(b))
		require.NoError(t, err)
		assert.Equal(t, b, text(t, got))
		assert.Len(t, got.Entries, len(s.Entries))
		assert.True(t, strings.HasSuffix(b, "}\n"))
	}
	for _, e := range whole().Entries {
		b, err := session.EncodeEntry(e)
		require.NoError(t, err)
		assert.NotContains(t, string(b), "\n")
		got, err := session.DecodeEntry(b)
		require.NoError(t, err)
		assert.Equal(t, e, got)
	}
}

// The file of the first released version must open for ever, and mean the same.
func TestVersion1OpensForEver(t *testing.T) {
	b, err := os.ReadFile("testdata/session_v1.json")
	require.NoError(t, err)
	got, err := session.Decode(b)
	require.NoError(t, err)
	assert.Equal(t, text(t, whole()), text(t, got))
}

const id1, id2 = `"e0000000-0000-4000-8000-000000000001"`, `"e0000000-0000-4000-8000-000000000002"`

func file(entries ...string) string {
	return `{"format":"coilbook session","version":1,"id":"5e551000-0000-4000-8000-000000000000","entries":[` + strings.Join(entries, ",") + `]}`
}

func body(text string) string { return `{"id":` + id1 + `,"at":"2026-05-01T09:30:00Z",` + text + `}` }

func setupBody(more string) string {
	return body(`"setup":{"build":{"statorPoles":12,"chargeLeads":3,"exciter":true,"pickup":true,"groundLead":true},"meter":"cheap"` + more + `}`)
}

var finished = body(`"mark":"finished"`)

// Each thing wrong is named by its field, with a reason and a way out.
func TestWhatIsWrongIsNamed(t *testing.T) {
	for _, c := range []struct{ file, field, reason string }{
		{"", "file", "empty or cut short"},
		{"  \n", "file", "empty or cut short"},
		{file(finished)[:150], "file", "empty or cut short"},
		{"volts", "file", "is not JSON at byte 1"},
		{"[]", "file", "holds a list where an object belongs"},
		{"7", "file", "holds a number where an object belongs"},
		{"null", "format", "must be"},
		{file(finished) + "{}", "file", "is not JSON"},
		{strings.Repeat(" ", 8<<20+1), "file", "larger than 8 MB"},
		{`{"version":1}`, "format", `must be "coilbook session"`},
		{`{"format":7,"version":1}`, "format", "must be"},
		{`{"format":"coilbook report","version":1}`, "format", "must be"},
		{`{"format":"coilbook session"}`, "version", "whole number"},
		{`{"format":"coilbook session","version":"1"}`, "version", "whole number"},
		{`{"format":"coilbook session","version":0}`, "version", "whole number"},
		{`{"format":"coilbook session","version":1.5}`, "version", "whole number"},
		{`{"format":"coilbook session","version":5,"stages":[]}`, "version", "is 5, newer than this program's 4"},
		{`{"format":"coilbook session","version":1e300}`, "version", "newer than this program's 4"},
		{`{"format":"coilbook session","version":1,"entries":[]}`, "id", "is missing"},
		{`{"format":"coilbook session","version":1,"id":"5","entries":[]}`, "id", "is not a UUID"},
		{`{"format":"coilbook session","version":1,"id":5,"entries":[]}`, "id", "holds a number where a UUID belongs"},
		{strings.Replace(file(), `"id"`, `"owner":"","id"`, 1), "owner", "is not a field"},
		{strings.Replace(file(), `[]`, `{}`, 1), "entries", "holds an object where a list belongs"},
		{file(`null`), "entries[0].id", "is missing"},
		{file(`7`), "entries[0].file", "holds a number"},
		{file(finished, finished), "entries[1].id", "stands twice"},
		{file(`{"at":"2026-05-01T09:30:00Z","mark":"finished"}`), "entries[0].id", "is missing"},
		{file(`{"id":"x","at":"2026-05-01T09:30:00Z","mark":"finished"}`), "entries[0].id", "is not a UUID"},
		{file(`{"id":` + id1 + `,"mark":"finished"}`), "entries[0].at", "is missing"},
		{file(`{"id":` + id1 + `,"at":"yesterday","mark":"finished"}`), "entries[0].at", "is not a time"},
		{file(`{"id":` + id1 + `,"at":5,"mark":"finished"}`), "entries[0].at", "is not a time"},
		{file(body(`"colour":"red"`)), "entries[0].colour", "is not a field"},
		{file(body(`"note":null`)), "entries[0].entry", "has 0 contents"},
		{file(body(`"note":{"text":""},"mark":"finished"`)), "entries[0].entry", "has 2 contents"},
		{file(body(`"mark":"lost"`)), "entries[0].mark", `is "lost"`},
		{file(body(`"mark":7`)), "entries[0].mark", "holds a number where a text belongs"},
		{file(body(`"skip":{"check":""}`)), "entries[0].skip.check", "is missing"},
		{file(body(`"note":{"text":"` + strings.Repeat("x", 2001) + `"}`)), "entries[0].note.text", "is longer than 2000 bytes"},
		{file(body(`"reading":{"check":"pickup","text":"","unit":"Ω"}`)), "entries[0].reading.text", "is empty"},
		{file(body(`"reading":{"text":"1","unit":"Ω"}`)), "entries[0].reading.check", "is missing"},
		{file(body(`"reading":{"check":"pickup","text":"1","unit":7}`)), "entries[0].reading.unit", "holds a number where a text belongs"},
		{file(body(`"reading":{"check":"pickup","text":"1\u001b[2J","unit":"Ω"}`)), "entries[0].reading.text", "control character"},
		{file(body(`"reading":{"check":"pickup","text":"1","unit":"Ω","corrects":"2"}`)), "entries[0].reading.corrects", "is not a UUID"},
		{file(body(`"reading":{"check":"pickup","text":"1","unit":"Ω","corrects":"00000000-0000-0000-0000-000000000000"}`)), "entries[0].reading.corrects", "is an empty id"},
		{file(strings.Replace(setupBody(""), "12", "37", 1)), "entries[0].setup.build.statorPoles", "is 37"},
		{file(strings.Replace(setupBody(""), "12", "12.5", 1)), "entries[0].setup.build.statorPoles", "holds a number where a whole number belongs"},
		{file(strings.Replace(setupBody(""), `eads":3`, `eads":5`, 1)), "entries[0].setup.build.chargeLeads", "is 5"},
		{file(strings.Replace(setupBody(""), `eads":3`, `eads":0`, 1)), "entries[0].setup.build.chargeLeads", "is 0"},
		{file(strings.Replace(setupBody(""), `true`, `"yes"`, 1)), "entries[0].setup.build.exciter", "holds a text where true or false belongs"},
		{file(strings.Replace(setupBody(""), "cheap", "golden", 1)), "entries[0].setup.meter", `is "golden"`},
		{file(setupBody(`,"ambientCelsius":61`)), "entries[0].setup.ambientCelsius", "is 61 °C"},
		{file(setupBody(`,"ambientCelsius":-41`)), "entries[0].setup.ambientCelsius", "is -41 °C"},
		{file(setupBody(`,"ambientCelsius":"warm"`)), "entries[0].setup.ambientCelsius", "holds a text where a number belongs"},
		{file(setupBody(`,"aim":"speed"`)), "entries[0].setup.aim", `is "speed"`},
		{file(setupBody(`,"name":"two\nlines"`)), "entries[0].setup.name", "line break"},
		{file(setupBody(`,"unsure":["` + strings.Repeat(`x","`, 20) + `x"]`)), "entries[0].setup.unsure", "too many"},
		{file(setupBody(`,"profile":"` + strings.Repeat("x", 2001) + `"`)), "entries[0].setup.profile or unsure", "longer"},
	} {
		_, err := session.Decode([]byte(c.file))
		var f *session.FieldError
		require.ErrorAs(t, err, &f, "%.200s", c.file)
		assert.Equal(t, c.field, f.Field, "%.200s: %v", c.file, err)
		assert.Contains(t, f.Reason, c.reason, "%.200s", c.file)
		assert.NotEmpty(t, f.WayOut)
		assert.NotContains(t, err.Error(), "\n", "one line")
		assert.Less(t, len(err.Error()), 240)
	}
}

func TestTooManyEntries(t *testing.T) {
	_, err := session.Decode([]byte(file(strings.Repeat("{},", 20000) + "{}")))
	assert.ErrorContains(t, err, "entries: holds more than 20000 entries")
}

func TestAFieldErrorWithoutAWayOut(t *testing.T) {
	assert.Equal(t, "at: is wrong", (&session.FieldError{Field: "at", Reason: "is wrong"}).Error())
}

func TestTheSameIsAcceptedWithoutTheFault(t *testing.T) {
	for _, good := range []string{file(), file(finished), file(setupBody("")), file(setupBody(`,"aim":"no-spark","ambientCelsius":-40`)),
		file(body(`"reading":{"check":"pickup","text":"1","unit":"Ω","corrects":` + id2 + `}`)), file(body(`"note":{"text":"two\nlines"}`))} {
		_, err := session.Decode([]byte(good))
		assert.NoError(t, err, good)
	}
}

// FuzzDecode: no bytes panic; what opens is written and opens again, the same;
// what does not is refused with one line that names a field.
func FuzzDecode(f *testing.F) {
	b, err := session.Encode(whole())
	require.NoError(f, err)
	f.Add(b)
	for _, seed := range []string{file(finished), file(setupBody("")), string(v2(f)), `{"format":"coilbook session","version":5}`, "null"} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, b []byte) {
		s, err := session.Decode(b)
		if err != nil {
			mustNameAField(t, err)
			return
		}
		first := text(t, s)
		again, err := session.Decode([]byte(first))
		if err != nil {
			t.Fatalf("what was written does not open: %v\n%s", err, first)
		}
		if second := text(t, again); first != second {
			t.Fatalf("opened again it differs:\n%s\n%s", first, second)
		}
		_ = s.Fold().Plan()
	})
}

// FuzzDecodeEntry: the same for an entry, which the device keeps on one line.
func FuzzDecodeEntry(f *testing.F) {
	for _, e := range append(whole().Entries, fresh().Entries...) {
		b, err := session.EncodeEntry(e)
		require.NoError(f, err)
		f.Add(b)
	}
	f.Add([]byte(`{"id":"0"}`))
	f.Fuzz(func(t *testing.T, b []byte) {
		e, err := session.DecodeEntry(b)
		if err != nil {
			mustNameAField(t, err)
			return
		}
		first, err := session.EncodeEntry(e)
		if err != nil || bytes.ContainsRune(first, '\n') || !json.Valid(first) {
			t.Fatalf("%v: %q", err, first)
		}
		again, err := session.DecodeEntry(first)
		if err != nil {
			t.Fatalf("what was written does not open: %v\n%s", err, first)
		}
		if second, _ := session.EncodeEntry(again); !bytes.Equal(first, second) {
			t.Fatalf("opened again it differs:\n%s\n%s", first, second)
		}
	})
}

func mustNameAField(t *testing.T, err error) {
	t.Helper()
	var f *session.FieldError
	if !errors.As(err, &f) || f.Field == "" || f.Reason == "" || strings.ContainsAny(err.Error(), "\n\x1b") {
		t.Fatalf("refused without one plain line that names a field: %q", err)
	}
}
