package words_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"coilbook/app/tongue"
	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/session"
	"coilbook/engine/spec"
)

// allSpoken is each check of every aim and method, and those of the whole
// machine.
func allSpoken() []check.Check {
	build := check.DefaultBuild()
	out := check.Whole(build)
	for _, aim := range []check.Aim{check.NoCharge, check.NoSpark, check.Bench, check.SelfCheck} {
		out = append(out, check.Plan(build, aim, check.Methods(build)...)...)
	}
	return out
}

// Every check can be heard in full: nothing that stands on the screen is left
// out, and no sign is left that a voice would spell.
func TestEveryCheckCanBeReadAloud(t *testing.T) {
	for _, m := range meter.Bundled() {
		for _, c := range allSpoken() {
			r, _ := c.Dial(m)
			said := words.Spoken(c, m, r)
			name := string(c.ID) + " with " + m.ID
			require.NotEmpty(t, said, name)
			for _, s := range said {
				require.NotEmpty(t, strings.TrimSpace(s), name)
				require.False(t, strings.ContainsAny(s, "Ω~=±·°µ“”…²"), "%s: %q", name, s)
				require.NotContains(t, s, "  ", name)
				require.NotContains(t, s, " .", name)
				require.False(t, strings.HasPrefix(s, "amperes"), "%s: %q", name, s)
				require.True(t, strings.HasSuffix(s, ".") || strings.HasSuffix(s, "?") || strings.HasSuffix(s, "!"), "%s: %q", name, s)
			}
			require.Len(t, said, 1+expected(c, m), name)
		}
	}
}

// expected is how many sentences follow the title.
func expected(c check.Check, m meter.Meter) int {
	n := len(words.Steps(c, m)) + len(c.Cautions)
	if len(c.Cautions) > 0 {
		n++
	}
	if c.Instrument == check.Multimeter {
		n += 2
		if c.Red != check.OtherProbe && !slices.ContainsFunc(words.Steps(c, m), func(s string) bool {
			return strings.Contains(s, tongue.Say("Red on %s, black on %s.", words.TerminalIn(c, c.Red), words.TerminalIn(c, c.Black)))
		}) {
			n++
		}
	}
	return n
}

func TestSpokenCheck(t *testing.T) {
	find := func(id check.ID) check.Check {
		c, ok := check.Find(allSpoken(), id)
		require.True(t, ok, id)
		return c
	}
	m := meter.Cheap()
	c := find("charge-pair-1-2")
	r, _ := c.Dial(m)
	require.Equal(t, []string{
		"Charge leads 1 and 2.", "Dial: ohms 200.", "Sockets: common and volts and ohms.",
		"Plug apart. Dial to ohms 200.", "Red on charge lead 1, black on charge lead 2.", "Let the digits rest, then type them.",
	}, words.Spoken(c, m, r)[:6])
	c = find("exciter-cranking")
	r, _ = c.Dial(m)
	said := words.Spoken(c, m, r)
	caution := slices.Index(said, words.Caution(c.Cautions[0]))
	crank := slices.IndexFunc(said, func(s string) bool { return strings.HasPrefix(s, "Crank three seconds") })
	require.Positive(t, caution)
	require.Greater(t, crank, caution, "where the engine turns, the cautions come first")
}

func TestSpokenVerdict(t *testing.T) {
	b := benchOf(t, session.DefaultSetup(), "lead-zero 0.3 Ω", "pickup 212 Ω", "charge-core-1 0.34 MΩ", "exciter-cranking 31.0 V")
	for id, want := range map[check.ID][]string{
		"pickup":           {"In spec.", "ohms, inside the limit."},
		"charge-core-1":    {"Out of spec.", "megohms"},
		"exciter-cranking": {"Cannot tell.", "plus or minus"},
	} {
		l := lineOf(t, b, id)
		said := words.SpokenVerdict(l.Check, l.Verdict)
		require.Equal(t, want[0], said[0], id)
		require.Contains(t, strings.Join(said, " "), want[1], id)
		require.False(t, strings.ContainsAny(strings.Join(said, ""), "Ω±~°"), "%v", said)
	}
	require.NotEqual(t, words.Outcome(spec.InSpec), words.Outcome(spec.OutOfSpec))
}
