//go:build !js

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/slim"
)

// strained works what Finish might have broken, and ends in a panic: stacks that
// grow while rubbish is collected, calls made by reflection, a method called
// through nil.
const strained = `package main

import (
	"fmt"
	"reflect"
	"runtime"
	"time"
)

func deep(n int) []int {
	kept := make([]int, 8)
	if n%100 == 0 {
		runtime.GC()
	}
	if n > 0 {
		kept[0] = 1 + deep(n - 1)[0]
	}
	return kept
}

func nilMethod() (reason any) {
	defer func() { reason = recover() }()
	return none.String()
}

var none fmt.Stringer = (*time.Time)(nil)

func reflected() string {
	add := reflect.MakeFunc(reflect.TypeFor[func(*int, string) string](), func(in []reflect.Value) []reflect.Value {
		deep(400)
		return []reflect.Value{reflect.ValueOf(fmt.Sprint(*in[0].Interface().(*int), in[1]))}
	}).Interface().(func(*int, string) string)
	bolts := 7
	method := reflect.ValueOf(box{&bolts}).Method(0).Interface().(func() string)
	return add(&bolts, "bolts") + " " + method()
}

type box struct{ n *int }

func (b box) Count() string { deep(400); return fmt.Sprint(*b.n) }

func loseBolt(list []int) int { return list[len(list)] }

func main() {
	answers := make(chan int)
	for range 20 {
		go func() { answers <- deep(2000)[0] }()
	}
	total := 0
	for range 20 {
		total += <-answers
	}
	fmt.Println("deep", total)
	fmt.Println("nil", nilMethod())
	fmt.Println("reflected", reflected())
	loseBolt(nil)
}
`

func TestFinishedProgramWorksAndNamesItsFunctions(t *testing.T) {
	root, err := exec.Command("go", "env", "GOROOT").Output()
	require.NoError(t, err)
	flags, err := slim.Prepare(strings.TrimSpace(string(root)), t.TempDir())
	require.NoError(t, err)
	source := filepath.Join(t.TempDir(), "main.go")
	require.NoError(t, os.WriteFile(source, []byte(strained), 0o644))
	linked, err := compile("build", append(flags, "-ldflags=-s", source)...)
	require.NoError(t, err)
	program, err := slim.Finish(linked)
	require.NoError(t, err)
	assert.Less(t, len(program), len(linked)*9/10)
	script, err := startScript()
	require.NoError(t, err)

	h := startSite(t, "/", siteOf(t, "/", program, script))
	b := newBrowser(t)
	b.load(h.url(""))
	assert.Contains(t, waitCrash(b), "index out of range [0] with length 0")
	said := b.written()
	for _, line := range []string{"deep 40000", "nil value method other.type.method called using nil *type pointer", "reflected 7 bolts 7", "main.loseBolt", "main.main"} {
		assert.Contains(t, said, line)
	}
	for _, name := range []string{"goPanicIndex", "runtime.main", "reflect."} {
		assert.NotContains(t, said, name)
	}
}
