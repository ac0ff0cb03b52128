package tongue

import (
	"errors"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/app/tongue/tonguetest"
	"coilbook/engine/meter"
	"coilbook/engine/practice"
	"coilbook/engine/quantity"
	"coilbook/engine/winding"
	"coilbook/specs"
)

var update = flag.Bool("update", false, "bring the catalogues up to the sentences of the source: new ones with an empty translation, gone ones out")

// wanted are the entries that the source asks for, in its order, without translation.
func wanted(t *testing.T) []entry {
	t.Helper()
	var out []entry
	seen := map[string]int{}
	add := func(from string, e entry) {
		if at, ok := seen[e.key(0)]; ok {
			require.Equal(t, out[at].plural, e.plural, "%q", e.id)
			return
		}
		seen[e.key(0)] = len(out)
		e.comments = []string{"#: " + from}
		out = append(out, e)
	}
	files, err := filepath.Glob("../words/*.go")
	require.NoError(t, err)
	for _, path := range files {
		if !strings.HasSuffix(path, "_test.go") {
			inSource(t, path, func(e entry) { add(filepath.Base(path), e) })
		}
	}
	for _, s := range toldByOthers(t) {
		add("engine and spec profiles", entry{id: TellKey(s)})
	}
	return out
}

// inSource finds the calls that say something, and the tables of what is said later. What
// they say stands there as it is: a sentence that is put together first cannot be found,
// and not be translated.
func inSource(t *testing.T, path string, add func(entry)) {
	file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
	require.NoError(t, err)
	ast.Inspect(file, func(n ast.Node) bool {
		if lit, ok := n.(*ast.CompositeLit); ok {
			inData(lit, add)
		}
		call, ok := n.(*ast.CallExpr)
		if !ok {
			return true
		}
		first := 0
		switch name(call.Fun) {
		case "say", "text", "tongue.Say", "inPicture":
		case "sayIn", "tongue.In":
			first = 1
		case "count", "tongue.Count":
			first = 1
		default:
			return true
		}
		text, ok := constant(call.Args[first])
		if handedOn(call.Args[first]) {
			return true
		}
		require.True(t, ok, "%s: %s is given a sentence that is put together", path, name(call.Fun))
		e := entry{id: text}
		switch {
		case name(call.Fun) == "inPicture":
			e.context = "in a picture"
		case strings.HasSuffix(name(call.Fun), "In"):
			e.context, _ = constant(call.Args[0])
		case first == 1:
			e.plural, _ = constant(call.Args[2])
			require.NotEmpty(t, e.plural, path)
		}
		add(e)
		return true
	})
}

// lettered is what a person would read: two small letters in a row.
var lettered = regexp.MustCompile(`[a-z]{2}`)

// inData finds the sentences in the rows of a table of package words, or in a list of
// them.
func inData(lit *ast.CompositeLit, add func(entry)) {
	of, isTable := lit.Type.(*ast.IndexListExpr)
	isTable = isTable && name(of.X) == "table"
	list, isList := lit.Type.(*ast.ArrayType)
	isList = isList && name(list.Elt) == "text"
	if !isTable && !isList {
		return
	}
	for _, value := range lit.Elts {
		if isTable {
			value = value.(*ast.CompositeLit).Elts[1]
		}
		ast.Inspect(value, func(n ast.Node) bool {
			if text, ok := n.(*ast.BasicLit); ok {
				if s, ok := constant(text); ok && lettered.MatchString(s) {
					add(entry{id: s})
				}
			}
			return true
		})
	}
}

// handedOn tells an argument that passes on a sentence found elsewhere: what its caller
// gave, or what stands in a table or a list.
func handedOn(e ast.Expr) bool {
	switch x := e.(type) {
	case *ast.Ident:
		return x.Name == "english" || x.Name == "one" || x.Name == "sentence"
	case *ast.StarExpr:
		return handedOn(x.X)
	case *ast.SelectorExpr:
		return handedOn(x.X)
	case *ast.IndexExpr:
		return name(x.X) == "likelihoods"
	case *ast.CallExpr:
		if name(x.Fun) == "cmp.Or" {
			return !slices.ContainsFunc(x.Args, func(e ast.Expr) bool { return !handedOn(e) })
		}
		return strings.HasSuffix(name(x.Fun), ".of")
	}
	return false
}

func name(e ast.Expr) string {
	switch x := e.(type) {
	case *ast.Ident:
		return x.Name
	case *ast.SelectorExpr:
		return name(x.X) + "." + x.Sel.Name
	}
	return ""
}

func constant(e ast.Expr) (string, bool) {
	switch x := e.(type) {
	case *ast.BasicLit:
		s, err := strconv.Unquote(x.Value)
		return s, err == nil
	case *ast.BinaryExpr:
		left, ok1 := constant(x.X)
		right, ok2 := constant(x.Y)
		return left + right, ok1 && ok2
	}
	return "", false
}

// toldByOthers are the sentences that come from the engine and the spec profiles.
// Those of the engine are met by doing what leads to them.
func toldByOthers(t *testing.T) (out []string) {
	profiles, err := specs.Bundled()
	require.NoError(t, err)
	for _, p := range profiles {
		out = append(out, p.Name)
		for _, l := range p.Limits {
			out = append(out, l.Condition.State, string(l.Provenance.Kind), l.Provenance.Note)
		}
	}
	examples, err := practice.Examples()
	require.NoError(t, err)
	for _, s := range examples {
		out = append(out, s.Fold().Setup.Name)
	}
	reasons := func(err error) {
		var read *quantity.UnreadableError
		var code *practice.CodeError
		var wire *winding.InputError
		var sheet *meter.FieldError
		switch {
		case errors.As(err, &read):
			out = append(out, read.Reason, read.WayOut)
		case errors.As(err, &code):
			out = append(out, code.Reason, code.WayOut)
		case errors.As(err, &wire):
			out = append(out, wire.Field, wire.Reason, wire.WayOut)
		case errors.As(err, &sheet):
			out = append(out, strings.Replace(sheet.WayOut, "use ", "type ", 1))
		default:
			require.Fail(t, "no reason", "%v", err)
		}
	}
	unreadable(reasons)
	badCodes(reasons)
	badWires(reasons)
	badSheets(reasons)
	out = append(out, "is more than any range of this meter shows", "check the dial and the unit", "is neither yes nor no", "choose one of them",
		"use -1 to 10 Ω, or try other leads", "is open line, which leads that work cannot read", "is won't settle, which leads that work cannot read",
		"is 50 Ω, which leads that work cannot read", "is -5 Ω, which leads that work cannot read", "is 5 kΩ, which leads that work cannot read", "is 5 MΩ, which leads that work cannot read")
	slices.Sort(out)
	return slices.DeleteFunc(slices.Compact(out), func(s string) bool { return s == "" })
}

// unreadable types what is no reading of each kind of quantity.
func unreadable(reasons func(error)) {
	for k := quantity.Kind(0); k.String() != "unknown quantity"; k++ {
		in := quantity.Units(k)[0]
		for _, text := range []string{"", "1.2.3", "abc", "9e99", strings.Repeat("9", 11) + "99999", "-1", "0.1234567891", "OL", "1 parsec"} {
			if _, err := quantity.Parse(k, text, in); err != nil {
				reasons(err)
			}
		}
	}
}

func badCodes(reasons func(error)) {
	for _, code := range []string{"0K7", "U00-000", "000-001"} {
		if _, err := practice.FromCode(code); err != nil {
			reasons(err)
		}
	}
}

func badWires(reasons func(error)) {
	for _, c := range []winding.Coil{{Resistance: 1e-9, ResistanceStd: 1e-12, InHand: 1}, {Resistance: 1, ResistanceStd: 1, InHand: 1}, {Resistance: 1, InHand: 0}, {Resistance: 1, InHand: 1}} {
		for _, v := range []float64{1e-9, 1e9, 1} {
			_, err1 := c.FromTurns(v, v/100, quantity.Metre(v), quantity.Metre(v/100))
			_, err2 := c.FromWeight(winding.Kilogram(v), winding.Kilogram(v/100))
			_, err3 := c.FromDiameter(quantity.Metre(v), quantity.Metre(v/100))
			_, err4 := c.FromTurns(1, 0.01, quantity.Metre(v), quantity.Metre(v/100))
			for _, err := range []error{err1, err2, err3, err4} {
				if err != nil {
					reasons(err)
				}
			}
		}
	}
}

func badSheets(reasons func(error)) {
	s := meter.SheetOf(meter.Cheap())
	s.ACLow = 0
	reasons(s.Valid())
}

// TestCatalogues holds each catalogue to the sentences of the source.
func TestCatalogues(t *testing.T) {
	want := wanted(t)
	require.Greater(t, len(want), 1000, "where have the sentences gone?")
	for _, l := range languages[1:] {
		file := l.ID + ".po"
		have, err := entries(l.catalogue)
		require.NoError(t, err)
		if *update {
			require.NoError(t, os.WriteFile(file, []byte(merged(l, want, have)), 0o644))
			continue
		}
		byKey := map[string]entry{}
		for _, e := range have {
			_, twice := byKey[e.key(0)]
			assert.False(t, twice, "%s: %q stands twice", file, e.id)
			byKey[e.key(0)] = e
		}
		for _, w := range want {
			e, ok := byKey[w.key(0)]
			delete(byKey, w.key(0))
			if assert.True(t, ok, "%s lacks %q: go test ./app/tongue -update, then translate", file, w.id) {
				complete(t, file, e)
			}
		}
		delete(byKey, "")
		for _, e := range byKey {
			assert.Fail(t, "gone from the source", "%s: %q", file, e.id)
		}
	}
}

func complete(t *testing.T, file string, e entry) {
	assert.False(t, e.fuzzy, "%s: %q is fuzzy", file, e.id)
	forms := []string{e.forms[0]}
	if e.plural != "" {
		forms = e.forms[:2]
	}
	for i, s := range forms {
		english := e.id
		if i > 0 {
			english = e.plural
		}
		assert.NotEmpty(t, s, "%s: %q is not translated", file, english)
		assert.Equal(t, verbs(english), verbs(s), "%s: %q takes other values", file, s)
		assert.Equal(t, strings.HasSuffix(english, "."), strings.HasSuffix(s, "."), "%s: %q ends otherwise", file, s)
		assert.Equal(t, strings.TrimSpace(s), s, "%s: %q has a space at its end", file, s)
		assert.Empty(t, tonguetest.Leftover(s), "%s: English in %q", file, s)
		if dot := pointed.FindString(s); dot != "" && languageOf(file).comma {
			assert.Fail(t, "a decimal point", "%s: %q", file, s)
		}
	}
}

func languageOf(file string) Language { return speaking(strings.TrimSuffix(file, ".po")) }

var (
	verb    = regexp.MustCompile(`%(\[(\d)\])?([a-z])`)
	pointed = regexp.MustCompile(`\d\.\d`)
)

// verbs are the values that a format takes, in their order: "1s", "2d".
func verbs(format string) (out []string) {
	if !strings.Contains(format, "%s") && !strings.Contains(format, "%d") && !strings.Contains(format, "%[") {
		return nil
	}
	next := 1
	for _, m := range verb.FindAllStringSubmatch(strings.ReplaceAll(format, "%%", ""), -1) {
		if m[2] != "" {
			next, _ = strconv.Atoi(m[2])
		}
		out = append(out, fmt.Sprint(next, m[3]))
		next++
	}
	slices.Sort(out)
	return out
}

// merged is a catalogue with an entry for every sentence, and no other.
func merged(l Language, want, have []entry) string {
	old := map[string]entry{}
	for _, e := range have {
		old[e.key(0)] = e
	}
	var out strings.Builder
	fmt.Fprintf(&out, "# Sentences in %s; the English stands in the source.\nmsgid \"\"\nmsgstr \"\"\n\"Language: %s\\n\"\n\"MIME-Version: 1.0\\n\"\n"+
		"\"Content-Type: text/plain; charset=UTF-8\\n\"\n\"Content-Transfer-Encoding: 8bit\\n\"\n\"Plural-Forms: nplurals=2; plural=(n != 1);\\n\"\n", l.Name, l.ID)
	from := "" // named where it changes alone
	for _, w := range want {
		e := old[w.key(0)]
		out.WriteString("\n")
		for _, c := range e.comments {
			out.WriteString(c + "\n")
		}
		if from != w.comments[0] {
			from = w.comments[0]
			out.WriteString(from + "\n")
		}
		if e.fuzzy {
			out.WriteString("#, fuzzy\n")
		}
		if w.context != "" {
			fmt.Fprintf(&out, "msgctxt %s\n", quoted(w.context))
		}
		fmt.Fprintf(&out, "msgid %s\n", quoted(w.id))
		if w.plural == "" {
			fmt.Fprintf(&out, "msgstr %s\n", quoted(e.forms[0]))
			continue
		}
		fmt.Fprintf(&out, "msgid_plural %s\nmsgstr[0] %s\nmsgstr[1] %s\n", quoted(w.plural), quoted(e.forms[0]), quoted(e.forms[1]))
	}
	return out.String()
}

func quoted(s string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`, "\n", `\n`, "\t", `\t`).Replace(s) + `"`
}
