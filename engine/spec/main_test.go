package spec_test

import (
	"flag"
	"fmt"
	"os"
	"regexp"
	"testing"

	"coilbook/engine/spec"
)

var reasonsSeen = map[spec.Reason]bool{}

func seen(r spec.Reason) { reasonsSeen[r] = true }

var reasonInSource = regexp.MustCompile(`(?m)^\t\w+ +Reason = "([a-z-]+)"`)

// everyReason is read from the source, so that a new one needs a test.
func everyReason() (all []spec.Reason) {
	source, err := os.ReadFile("judge.go")
	for _, m := range reasonInSource.FindAllSubmatch(source, -1) {
		all = append(all, spec.Reason(m[1]))
	}
	if err != nil || len(all) < 20 {
		panic(fmt.Sprintf("reasons in judge.go: %v %v", all, err))
	}
	return all
}

// TestMain looks after a full run whether some judgement came to each reason.
func TestMain(m *testing.M) {
	flag.Parse()
	code := m.Run()
	if flag.Lookup("test.run").Value.String() == "" && code == 0 {
		for _, r := range everyReason() {
			if !reasonsSeen[r] {
				fmt.Printf("FAIL: no test reaches the reason %q\n", r)
				code = 1
			}
		}
	}
	os.Exit(code)
}
