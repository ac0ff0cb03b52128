package practice_test

import (
	"encoding/json"
	"fmt"
	"os"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/practice"
	"coilbook/engine/spec"
	"coilbook/specs"
)

func TestACodeOpensItsBench(t *testing.T) {
	for _, level := range practice.Levels() {
		for _, seed := range []uint32{0, 1, 77, 12345, practice.Seeds - 1} {
			b := practice.Open(level, seed)
			require.Equal(t, seed, b.Seed)
			for _, code := range []string{b.Code(), strings.ToLower(b.Code()), strings.ReplaceAll(b.Code(), "-", ""), " " + b.Code() + " "} {
				again, err := practice.FromCode(code)
				require.NoError(t, err, code)
				require.Equal(t, b.Truth(), again.Truth())
				require.Equal(t, b.Build, again.Build)
				require.Equal(t, b.Level, again.Level)
				require.Equal(t, b.Instrument, again.Instrument)
			}
		}
	}
}

func TestWrongCodesAreToldApart(t *testing.T) {
	good := practice.Open(practice.Usual, 4711).Code()
	for code, reason := range map[string]string{
		"":             "six characters",
		"123":          "six characters",
		good + "0":     "six characters",
		"U" + good[1:]: "which no code has",
	} {
		_, err := practice.FromCode(code)
		var wrong *practice.CodeError
		require.ErrorAs(t, err, &wrong, code)
		assert.Contains(t, err.Error(), reason)
		assert.Contains(t, err.Error(), code)
	}
	// Any one wrong character is noticed.
	for i := range good {
		for _, c := range "0123456789ABCDEFGHJKMNPQRSTVWXYZ" {
			if good[i] == '-' || rune(good[i]) == c {
				continue
			}
			_, err := practice.FromCode(good[:i] + string(c) + good[i+1:])
			require.Error(t, err, "%s with %c at %d", good, c, i)
		}
	}
}

func FuzzCode(f *testing.F) {
	for _, code := range []string{"0K7-QPM", practice.Open(practice.Sly, 9).Code(), "", "oil-lio", "ZZZZZZ"} {
		f.Add(code)
	}
	f.Fuzz(func(t *testing.T, code string) {
		b, err := practice.FromCode(code)
		if err == nil {
			again, err := practice.FromCode(b.Code())
			require.NoError(t, err)
			require.Equal(t, b.Truth(), again.Truth())
		}
	})
}

// Codes are shared between phones and kept: a code never comes to mean another
// machine. Who changes what machines are must give codes a new level or version.
func TestCodesMeanTheSameForEver(t *testing.T) {
	const file = "testdata/codes.json"
	type meaning struct {
		Kind machine.Kind `json:"kind"`
		At   int          `json:"at"`
		Size string       `json:"size"`
		Hot  bool         `json:"hot,omitempty"`
	}
	now := map[string]meaning{}
	for _, level := range practice.Levels() {
		for seed := uint32(7); seed < practice.Seeds; seed = 3*seed + 11 {
			b := practice.Open(level, seed)
			f := b.Truth()
			now[b.Code()] = meaning{f.Kind, f.At, fmt.Sprintf("%.6g", f.Size), f.HotOnly}
		}
	}
	if *update {
		text, err := json.MarshalIndent(now, "", "\t")
		require.NoError(t, err)
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(file, append(text, '\n'), 0o644))
	}
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	var then map[string]meaning
	require.NoError(t, json.Unmarshal(text, &then))
	require.Greater(t, len(then), 30)
	require.Equal(t, then, now)
}

// Every bench has a fault that its machine can have and that its complaint fits,
// and the levels differ in what they draw.
func TestBenchesAreFair(t *testing.T) {
	seen := map[practice.Level]map[machine.Kind]bool{}
	for _, level := range practice.Levels() {
		seen[level] = map[machine.Kind]bool{}
		for seed := range uint32(60) {
			b := practice.Open(level, seed)
			f := b.Truth()
			require.NoError(t, b.Build.Valid())
			require.True(t, f.Suits(b.Build), "%s: %v", b.Code(), f)
			require.Contains(t, b.Choices(), f.Kind)
			require.NotContains(t, b.Rivals(), f.Kind)
			require.Equal(t, practice.RightFault, b.Judge(f.Kind))
			seen[level][f.Kind] = true
			if level == practice.Plain {
				require.False(t, f.HotOnly)
				require.Equal(t, meter.Auto6000().ID, b.Instrument.Meter.ID)
			}
			if f.HotOnly {
				require.Equal(t, practice.FailsWarm, b.Complaint)
				require.Equal(t, f.Kind.Charging(), b.Aim() == check.NoCharge)
				require.Equal(t, !f.Kind.Charging(), b.Aim() == check.CutsOutHot)
			}
			if !f.Kind.Charging() && !f.HotOnly {
				require.Equal(t, practice.NoSpark, b.Complaint)
				require.Equal(t, check.NoSpark, b.Aim())
			}
		}
	}
	assert.Greater(t, len(seen[practice.Usual]), 20, "many faults turn up")
	assert.Less(t, len(seen[practice.Plain]), 15)
}

// Of the charging faults that are hard to see, and of the others, all turn up
// somewhere: none is refused by the machine's complaint for ever.
func TestEveryFaultOfThePoolTurnsUp(t *testing.T) {
	if testing.Short() || runtime.GOOS == "js" {
		t.Skip("hundreds of machines are simulated natively alone")
	}
	missing := map[machine.Kind]bool{}
	for _, k := range machine.Kinds() {
		missing[k] = k != machine.Drain // no dial here finds one
	}
	open := len(machine.Kinds()) - 1
	for seed := uint32(0); seed < 1200 && open > 0; seed++ {
		for _, l := range []practice.Level{practice.Usual, practice.Sly} {
			if k := practice.Open(l, seed).Truth().Kind; missing[k] {
				missing[k] = false
				open--
			}
		}
	}
	for k, not := range missing {
		assert.False(t, not, "%s never turns up", k)
	}
}

// bench finds the first bench of a level with a kind of fault.
func bench(t testing.TB, level practice.Level, k machine.Kind) practice.Bench {
	t.Helper()
	for seed := range uint32(800) {
		if b := practice.Open(level, seed); b.Truth().Kind == k && b.Build.Exciter() && b.Build.Charge == machine.Star && !b.Truth().HotOnly {
			return b
		}
	}
	t.Fatalf("no bench with %s", k)
	return practice.Bench{}
}

// A reading speaks against the faults under which it would have been another.
func TestWhatAReadingCouldTell(t *testing.T) {
	b := bench(t, practice.Plain, machine.ExciterOpen)
	ohms := machine.Probing{Red: check.ExciterLead, Black: check.Core, Function: meter.Ohms}
	p, err := b.Show(ohms, "")
	require.NoError(t, err)
	assert.Equal(t, "OL", p.Display.Typed())
	for rival, want := range map[machine.Kind]bool{
		machine.PhaseOpen: true, machine.BoxDead: true, machine.ExciterToCore: true, machine.MainFuse: true,
	} {
		against, err := b.Speaks(p, rival)
		require.NoError(t, err)
		assert.Equal(t, want, against, rival)
	}
	// The pickup's ohms say nothing about the exciter, and nothing about a phase.
	p, err = b.Show(machine.Probing{Red: check.PickupA, Black: check.PickupB, Function: meter.Ohms}, "")
	require.NoError(t, err)
	against, err := b.Speaks(p, machine.PhaseOpen)
	require.NoError(t, err)
	assert.False(t, against)
	against, err = b.Speaks(p, machine.PickupOpen)
	require.NoError(t, err)
	assert.True(t, against)
	assert.Equal(t, practice.RightPart, b.Judge(machine.ExciterShorted))
	assert.Equal(t, practice.WrongPart, b.Judge(machine.MainFuse))
}

// The guided checks find what they can see, in order, and the same reading costs
// the same again.
func TestHowTheGuidedRouteGoes(t *testing.T) {
	profiles, err := specs.Bundled()
	require.NoError(t, err)
	at := time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)
	b := bench(t, practice.Plain, machine.ExciterOpen)
	s, err := b.Guided(at, "ac-fed-ignition")
	require.NoError(t, err)
	again, err := b.Guided(at, "ac-fed-ignition")
	require.NoError(t, err)
	require.Equal(t, s, again)
	for _, e := range s.Entries {
		require.NoError(t, e.Valid())
	}
	steps := practice.Steps(s, profiles)
	require.Len(t, steps, len(check.Plan(b.Build.Known(), b.Aim())))
	var found []check.ID
	last := 0.0
	for _, step := range steps {
		require.Greater(t, step.Minutes, last)
		last = step.Minutes
		if step.Finds {
			found = append(found, step.Check.ID)
		}
	}
	assert.Equal(t, []check.ID{"exciter"}, found)
	fuse := bench(t, practice.Plain, machine.MainFuse)
	s, err = fuse.Guided(at, "any-small-machine")
	require.NoError(t, err)
	for _, step := range practice.Steps(s, profiles) {
		assert.NotEqual(t, spec.OutOfSpec, step.Verdict.Outcome, "%s: no check of the winding sees a fuse", step.Check.ID)
	}
}

func TestMinutes(t *testing.T) {
	ohms := practice.Probe{Probing: machine.Probing{State: machine.State{Plug: check.Apart}}}
	cranked := practice.Probe{Probing: machine.Probing{State: machine.State{Plug: check.Together, Engine: check.Cranking}}}
	warm := cranked
	warm.Hot = true
	assert.InDelta(t, 1.5, ohms.Minutes(nil), 1e-9, "the plug is parted first")
	assert.InDelta(t, 0.5, ohms.Minutes(&ohms), 1e-9)
	assert.InDelta(t, 3.5, cranked.Minutes(&ohms), 1e-9)
	assert.InDelta(t, 15.5, warm.Minutes(&cranked), 1e-9)
	assert.InDelta(t, 30.5, cranked.Minutes(&warm), 1e-9, "it has to cool down")
}
