package spec_test

import (
	"flag"
	"fmt"
	"os"
	"testing"

	"coilbook/engine/spec"
)

var reasonsSeen = map[spec.Reason]bool{}

func seen(r spec.Reason) { reasonsSeen[r] = true }

// everyReason must come out of some judgement in the tables of this package.
var everyReason = []spec.Reason{spec.Within, spec.Below, spec.Above, spec.NearLimit, spec.TooCoarse, spec.OpenAsMust, spec.Leaks,
	spec.LineBroken, spec.RangeTooLow, spec.PastRange, spec.WontSettle, spec.NoLimit, spec.AllAlike, spec.OneDiffers,
	spec.CannotCompare, spec.NegativeOhms}

// TestMain looks after a full run whether each reason was reached.
func TestMain(m *testing.M) {
	flag.Parse()
	code := m.Run()
	if flag.Lookup("test.run").Value.String() == "" && code == 0 {
		for _, r := range everyReason {
			if !reasonsSeen[r] {
				fmt.Printf("FAIL: no test reaches the reason %q\n", r)
				code = 1
			}
		}
	}
	os.Exit(code)
}
