//go:build !js

package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"coilbook/slim"
)

// everyDay is what people do after the start: a reading on the pad, the suspects
// and an answer, the result, a meter, the practice bench.
func (b *browser) everyDay(h *host) {
	b.press("aim-no-charge")
	b.waitFor(`!!document.getElementById("name")`)
	b.painted() // nobody presses what is not to be seen yet
	b.press("begin")
	b.waitFor(`!!document.getElementById("enter")`)
	b.typeOnPad("0.3")
	b.enter()
	b.open(h.url(b.sibling("find")))
	for n := 0; n < 10 && b.drawing(); n++ {
		time.Sleep(patience / 3)
	}
	b.waitFor(`!!document.getElementById("suspects")`)
	b.jump("battery-rest")
	b.fill("find-reading", "12.4")
	b.press("find-enter")
	b.waitText("said-battery-rest", "12.4 V")
	b.measure("charge-ac-1-2", "31.2")
	b.open(h.url(b.sibling("result")))
	b.waitFor(`!!document.querySelector("#verdicts article")`)
	b.open(h.url("meters"))
	b.open(h.url("practice/" + practised(b.t).Code()))
	b.waitFor(`!!document.getElementById("take")`)
	b.reach("red", "charge-1")
	b.reach("black", "core")
	b.takeReading(1)
}

// painted waits until the page shows what stands in it.
func (b *browser) painted() {
	b.t.Helper()
	b.waitFor(`new Promise(done => requestAnimationFrame(() => setTimeout(() => done(true))))`)
}

// drawing reports that machines are being drawn.
func (b *browser) drawing() bool { return evaluate[bool](b, `!!document.getElementById("growing")`) }

// most is how long the page may answer no touch: people feel more as a delay. A
// processor that is shared does the same work in up to half as much time again.
const (
	most   = 50 * time.Millisecond
	shared = most + most/2
)

// No task of the page's thread is longer than most, from the first visit through a
// day's work, with room for a processor that is shared: of the day, the best of three
// walks counts, because others on the machine only lengthen what they share. A great part of that is
// that the functions it needs are compiled beside it; those that the lists of slim/warm
// do not know are compiled on its own thread. With -update the lists are written anew: as
// the linker leaves it, the program has none, and all that it calls is compiled by the
// page.
func TestNothingHoldsThePage(t *testing.T) {
	program, err := compiled()
	require.NoError(t, err)
	if *rewrite {
		program.Wasm, err = linkApp()
		require.NoError(t, err)
	}
	walk := func() (start, rest, day traced) {
		h := startSite(t, "/", siteOf(t, "/", program.Wasm, program.Exec))
		b := newBrowser(t)
		start = b.trace(func() {
			b.open(h.url(""))
			b.painted()
			time.Sleep(time.Second) // what is left for later (afterStart) is none of it
		})
		rest = b.trace(func() {
			b.waitFor(kept)
			time.Sleep(2 * time.Second)
		})
		day = b.trace(func() { b.everyDay(h) })
		for _, part := range []traced{start, rest, day} {
			t.Logf("%d functions compiled by the page; beyond 50 ms, four times as slow: %s; longest tasks: %s", len(part.compiled), part.blocked(4), part.long(most/2))
		}
		return start, rest, day
	}
	start, rest, day := walk()
	if *rewrite {
		writeWarm(t, "start", start.compiled)
		writeWarm(t, "later", append(rest.compiled, day.compiled...))
		return
	}
	const anew = "write the lists anew: go test ./app -run TestNothingHoldsThePage -update"
	require.LessOrEqual(t, len(start.compiled), warmable("start")/8, anew)
	require.LessOrEqual(t, len(rest.compiled)+len(day.compiled), warmable("later")/4, anew)
	require.LessOrEqual(t, start.longest().took, shared, start.longest())
	require.LessOrEqual(t, rest.longest().took, shared, rest.longest())
	for walks := 1; day.longest().took > shared && walks < 3; walks++ {
		_, _, day = walk()
	}
	require.LessOrEqual(t, day.longest().took, shared, day.longest())
}

func warmFile(list string) string { return filepath.Join("..", "slim", "warm", list+".txt") }

// warmable is how many functions a list has.
func warmable(list string) int {
	text, err := os.ReadFile(warmFile(list))
	if err != nil {
		return 0
	}
	return strings.Count(string(text), "\n")
}

// writeWarm writes a list from what was compiled.
func writeWarm(t *testing.T, list string, functions []int) {
	t.Helper()
	linked, err := linkApp()
	require.NoError(t, err)
	names, imported, err := slim.Names(linked)
	require.NoError(t, err)
	var out []string
	for _, f := range functions {
		out = append(out, names[f-imported])
	}
	slices.Sort(out)
	require.NoError(t, os.WriteFile(warmFile(list), []byte(strings.Join(slices.Compact(out), "\n")+"\n"), 0o644))
}
