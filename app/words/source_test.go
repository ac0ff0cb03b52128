package words_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// wordy is what a person would read: two small letters in a row.
var wordy = regexp.MustCompile(`[a-z]{2}`)

// unsaid are texts in this package that nobody reads as a sentence, and why.
var unsaid = map[string][]string{
	"the name":                      {"Coilbook"},
	"ids of points and checks":      {"charge-", "regulator-", "yes"},
	"ids of looks":                  {"light", "dark", "system"},
	"ids of ways to a wire":         {"turns", "turn", "weight", "diameter", "in-hand"},
	"fields of a set-up":            {"statorPoles", "chargeLeads", "exciter"},
	"fields of a data sheet":        {".percent", ".digits", "name", "acLowHz", "acHighHz", "inputDCOhms", "inputACOhms", "lines"},
	"how the engine asks, changed":  {"use ", "type "},
	"codes for programs":            {"coilbook report", "in spec", "out of spec", "cannot tell"},
	"names of the examples":         {"Example: "},
	"units":                         {" min", "mm"},
	"ids of meters, as keys":        {"cheap", "auto4000", "auto6000", "engine-warm", "just-stopped"},
	"signs, as keys":                {"thou", "rpm", "mm²"},
	"steps of an axis":              {"day", "month"},
	"ids of double faults, as keys": {"phase-to-core-and-diode-shorted", "charge-pin-and-phase-turns", "regulator-dead-and-battery-sulphated", "battery-cell-and-regulator-dead", "regulator-unbound-and-battery-sulphated", "weak-magnets-and-pickup-gap"},
	"ids of screens, as keys": {"start", "setup", "check", "sheet", "result", "sessions", "about", "meters", "meter", "nowhere", "method", "wire", "earlier", "phone",
		"find", "practice", "bench", "naming", "truth"},
}

// Every text of this package goes through say, count or told, or has its reason here;
// a screen has no text of its own.
func TestEverySentenceIsSaid(t *testing.T) {
	free := map[string]bool{}
	for _, list := range unsaid {
		for _, text := range list {
			free[text] = true
		}
	}
	met := map[string]bool{}
	for path, texts := range textsOutsideOfCalls(t, ".", wordy) {
		for _, text := range texts {
			met[text] = true
			assert.True(t, free[text], "%s: %q is not said: wrap it in say, or give a reason in this test", path, text)
		}
	}
	for text := range free {
		assert.True(t, met[text], "%q needs no reason any more", text)
	}
}

// sentence is what a screen may not hold: words with a space, from a capital on.
var sentence = regexp.MustCompile(`^[A-Z“][^ ]* [a-z]|[a-z]{2}[.!?…]$`)

func TestScreensHoldNoSentence(t *testing.T) {
	for _, room := range []string{"screen", "part", "drawing", "desk"} {
		for path, texts := range textsOutsideOfCalls(t, filepath.Join("..", room), sentence) {
			if !strings.HasPrefix(filepath.Base(path), "gallery") {
				assert.Empty(t, texts, "%s: sentences belong into package words", path)
			}
		}
	}
}

// textsOutsideOfCalls finds the texts of a package that look so and are not said.
func textsOutsideOfCalls(t *testing.T, dir string, looksSo *regexp.Regexp) map[string][]string {
	t.Helper()
	out := map[string][]string{}
	files, err := filepath.Glob(filepath.Join(dir, "*.go"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, path := range files {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		require.NoError(t, err)
		said := map[ast.Node]bool{}
		ast.Inspect(file, func(n ast.Node) bool {
			switch x := n.(type) {
			case *ast.CallExpr:
				for _, at := range sentencesOf[callee(x)] {
					said[x.Args[at]] = true
				}
			case *ast.CompositeLit:
				for _, text := range textsOfData(x) {
					said[text] = true
				}
			case *ast.ImportSpec, *ast.Field:
				return false
			case *ast.BasicLit:
				if text, err := strconv.Unquote(x.Value); err == nil && x.Kind == token.STRING && looksSo.MatchString(text) && !said[x] {
					out[path] = append(out[path], text)
				}
			}
			return true
		})
	}
	return out
}

// A table says one thing beside a key: of a key that stands twice the second is never met.
func TestNoKeyOfATableStandsTwice(t *testing.T) {
	files, err := filepath.Glob("*.go")
	require.NoError(t, err)
	tables := 0
	for _, path := range files {
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		require.NoError(t, err)
		ast.Inspect(file, func(n ast.Node) bool {
			lit, ok := n.(*ast.CompositeLit)
			if !ok || !isTable(lit) {
				return true
			}
			tables++
			seen := map[string]bool{}
			for _, row := range lit.Elts {
				key := types.ExprString(row.(*ast.CompositeLit).Elts[0])
				assert.False(t, seen[key], "%s: %s", path, key)
				seen[key] = true
			}
			return true
		})
	}
	require.Greater(t, tables, 20)
}

// isTable tells the literal of a table.
func isTable(lit *ast.CompositeLit) bool {
	of, ok := lit.Type.(*ast.IndexListExpr)
	if !ok {
		return false
	}
	id, ok := of.X.(*ast.Ident)
	return ok && id.Name == "table"
}

// textsOfData are the texts of a list, or beside the keys of a table, which their readers
// say.
func textsOfData(lit *ast.CompositeLit) (out []ast.Node) {
	list, isList := lit.Type.(*ast.ArrayType)
	if isList {
		id, ok := list.Elt.(*ast.Ident)
		isList = ok && id.Name == "text"
	}
	if !isList && !isTable(lit) {
		return nil
	}
	for _, value := range lit.Elts {
		if !isList {
			value = value.(*ast.CompositeLit).Elts[1]
		}
		ast.Inspect(value, func(n ast.Node) bool {
			if text, ok := n.(*ast.BasicLit); ok {
				out = append(out, text)
			}
			return true
		})
	}
	return out
}

// sentencesOf are the arguments that a call takes as sentences.
var sentencesOf = map[string][]int{"say": {0}, "text": {0}, "inPicture": {0}, "count": {1, 2}, "tongue.Say": {0}, "tongue.In": {0, 1}, "tongue.Count": {1, 2}}

func callee(call *ast.CallExpr) string {
	switch f := call.Fun.(type) {
	case *ast.Ident:
		return f.Name
	case *ast.SelectorExpr:
		if room, ok := f.X.(*ast.Ident); ok {
			return room.Name + "." + f.Sel.Name
		}
	}
	return ""
}

// A number that is printed elsewhere keeps its point in every language.
func TestNumbersArePrintedInOnePlace(t *testing.T) {
	for _, room := range []string{".", "../screen", "../part"} {
		files, err := filepath.Glob(filepath.Join(room, "*.go"))
		require.NoError(t, err)
		for _, path := range files {
			if strings.HasSuffix(path, "_test.go") || path == "numbers.go" {
				continue
			}
			file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
			require.NoError(t, err)
			ast.Inspect(file, func(n ast.Node) bool {
				switch x := n.(type) {
				case *ast.CallExpr:
					switch name := callee(x); name {
					case "quantity.Decimal", "quantity.Print", "quantity.PrintIn", "strconv.FormatFloat":
						assert.Fail(t, "a number with a point", "%s calls %s: numbers.go has one for people", path, name)
					}
				case *ast.BasicLit:
					assert.NotRegexp(t, `%[0-9.]*[efg]`, x.Value, path)
				}
				return true
			})
		}
	}
}
