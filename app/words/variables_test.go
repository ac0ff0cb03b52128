package words_test

import (
	"flag"
	"fmt"
	"go/ast"
	"go/format"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "list the variables that hold a sentence anew")

// A variable whose sentence is not replaced when the program starts stays English.
func TestEveryVariableIsSaid(t *testing.T) {
	names := sentenceVariables(t)
	noCopies(t, names)
	require.Greater(t, len(names), 300, "where have the sentences gone?")
	list := "package words\n\n// variables hold a sentence each. Listed by go test ./app/words -update.\nvar variables = [...]*text{\n"
	for _, name := range names {
		list += fmt.Sprintf("\t&%s,\n", name)
	}
	want, err := format.Source([]byte(list + "}\n"))
	require.NoError(t, err)
	if *update {
		require.NoError(t, os.WriteFile("variables.go", want, 0o644))
	}
	have, err := os.ReadFile("variables.go")
	require.NoError(t, err)
	assert.Equal(t, string(want), string(have), "list them anew: go test ./app/words -run TestEveryVariableIsSaid -update")
}

// sentenceVariables are the variables of the package that are set to a text. A text in
// any other variable would have to be said by whoever reads it, so there it may not be
// handed out: only a table or a function of this package reads it.
func sentenceVariables(t *testing.T) (names []string) {
	everyVariable(t, func(path, name string, value ast.Expr) {
		call, ok := value.(*ast.CallExpr)
		switch {
		case ok && callee(call) == "text":
			names = append(names, name)
		case ast.IsExported(name):
			assert.False(t, holdsText(value), "%s: %s hands out a sentence in English", path, name)
		}
	})
	slices.Sort(names)
	return names
}

// everyVariable visits the variables of the package that are set where they stand.
func everyVariable(t *testing.T, visit func(path, name string, value ast.Expr)) {
	files, err := filepath.Glob("*.go")
	require.NoError(t, err)
	for _, path := range files {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		require.NoError(t, err)
		for _, d := range file.Decls {
			group, ok := d.(*ast.GenDecl)
			if !ok || group.Tok != token.VAR {
				continue
			}
			for _, spec := range group.Specs {
				v := spec.(*ast.ValueSpec)
				for i, value := range v.Values {
					visit(path, v.Names[i].Name, value)
				}
			}
		}
	}
}

// noCopies holds that no other variable takes over a sentence before it is replaced; the
// tables may, whose readers say it.
func noCopies(t *testing.T, names []string) {
	everyVariable(t, func(path, name string, value ast.Expr) {
		if lit, ok := value.(*ast.CompositeLit); ok && isTable(lit) {
			return
		}
		ast.Inspect(value, func(n ast.Node) bool {
			switch x := n.(type) {
			case *ast.FuncLit:
				return false // runs later
			case *ast.UnaryExpr:
				return x.Op != token.AND // the list itself
			case *ast.Ident:
				assert.False(t, slices.Contains(names, x.Name), "%s: %s copies %s, which is not said yet", path, name, x.Name)
			}
			return true
		})
	})
}

func holdsText(e ast.Expr) (found bool) {
	ast.Inspect(e, func(n ast.Node) bool {
		if call, ok := n.(*ast.CallExpr); ok && callee(call) == "text" {
			found = true
		}
		return !found
	})
	return found
}
