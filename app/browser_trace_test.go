//go:build !js

package main

import (
	"encoding/json"
	"fmt"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/tracing"
)

// traced is what the page's own thread did while something was tried. Times are
// those that the thread had a processor for: what other programs take on a busy
// machine does not count.
type traced struct {
	tasks    []task
	compiled []int // functions of the program, by WebAssembly's number, as they were compiled
}

// task is a turn of the thread; nothing is drawn and no touch is answered in it.
type task struct {
	began, took time.Duration
	in          string // what took most of it, as the browser names it
}

func (t task) String() string {
	return fmt.Sprintf("%s at %s, most of it %s", t.took.Round(100*time.Microsecond), t.began.Round(time.Millisecond), t.in)
}

// longest is the longest task.
func (t traced) longest() (out task) {
	for _, one := range t.tasks {
		if one.took > out.took {
			out = one
		}
	}
	return out
}

// long lists the tasks above a length.
func (t traced) long(limit time.Duration) (out []task) {
	for _, one := range t.tasks {
		if one.took > limit {
			out = append(out, one)
		}
	}
	return out
}

// worked is what all tasks took together.
func (t traced) worked() (sum time.Duration) {
	for _, one := range t.tasks {
		sum += one.took
	}
	return sum
}

// blocked is what tasks take beyond 50 ms, on a processor that is so many times as
// slow.
func (t traced) blocked(slower int) (sum time.Duration) {
	for _, one := range t.tasks {
		sum += max(0, time.Duration(slower)*one.took-50*time.Millisecond)
	}
	return sum
}

// event is one of a trace (the Trace Event Format of Chromium); times in µs.
type event struct {
	Name    string `json:"name"`
	Phase   string `json:"ph"`
	Process int    `json:"pid"`
	Thread  int    `json:"tid"`
	At      int64  `json:"ts"`
	Wall    int64  `json:"dur"`
	Took    int64  `json:"tdur"`
	Args    struct {
		Name     string `json:"name"`
		Function int    `json:"func_index"`
	} `json:"args"`
}

// trace watches the page's thread while work is done.
func (b *browser) trace(work func()) traced {
	b.t.Helper()
	b.mu.Lock()
	b.events, b.traceEnd = nil, make(chan struct{})
	b.mu.Unlock()
	call(b, tracing.Start, tracing.StartParams{TransferMode: tracing.StartTransferModeReportEvents, TraceConfig: &tracing.TraceConfig{
		IncludedCategories: []string{"disabled-by-default-devtools.timeline", "devtools.timeline", "v8.wasm"}, ExcludedCategories: []string{"*"},
	}})
	work()
	call(b, tracing.End, cdp.Empty{})
	select {
	case <-b.traceEnd:
	case <-time.After(patience):
		b.t.Fatal("the browser does not end its trace")
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	return tracedIn(b.t, b.events)
}

// tracedIn finds the page's thread: of those that pages have, the one that did
// most.
func tracedIn(t testing.TB, events []event) traced {
	t.Helper()
	type thread struct{ process, id int }
	worked, pages := map[thread]int64{}, map[thread]bool{}
	for _, e := range events {
		who := thread{e.Process, e.Thread}
		switch {
		case e.Name == "thread_name" && e.Args.Name == "CrRendererMain":
			pages[who] = true
		case e.Name == "RunTask":
			worked[who] += e.Took
		}
	}
	var page thread
	for who := range pages {
		if worked[who] > worked[page] {
			page = who
		}
	}
	if worked[page] == 0 {
		t.Fatal("the trace shows no page at work")
	}
	var out traced
	var inner []event
	first := int64(0)
	for _, e := range events {
		if (thread{e.Process, e.Thread}) != page || e.Phase != "X" {
			continue
		}
		if first == 0 || e.At < first {
			first = e.At
		}
		inner = append(inner, e)
		if e.Name == "wasm.CompileLazy" {
			out.compiled = append(out.compiled, e.Args.Function)
		}
	}
	for _, e := range inner {
		if e.Name == "RunTask" {
			one := task{began: micros(e.At - first), took: micros(e.Took)}
			if one.took > most/4 {
				one.in = mostOf(e, inner)
			}
			out.tasks = append(out.tasks, one)
		}
	}
	return out
}

// mostOf names the longest event inside a task.
func mostOf(t event, events []event) (name string) {
	longest := int64(0)
	for _, e := range events {
		if e.Name != "RunTask" && e.At >= t.At && e.At+e.Wall <= t.At+t.Wall && e.Took > longest {
			name, longest = e.Name, e.Took
		}
	}
	return name
}

func micros(n int64) time.Duration { return time.Duration(n) * time.Microsecond }

// hearTrace takes a part of a trace.
func (b *browser) hearTrace(e *tracing.EventDataCollected) {
	b.mu.Lock()
	defer b.mu.Unlock()
	for _, raw := range e.Value {
		var one event
		if json.Unmarshal(raw, &one) == nil { // other kinds of event have other arguments
			b.events = append(b.events, one)
		}
	}
}
