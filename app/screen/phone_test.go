package screen

import (
	"testing"

	"github.com/google/uuid"
	"github.com/stretchr/testify/require"

	"coilbook/app/device"
	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
	"coilbook/engine/spec"
	"coilbook/specs"
)

// toy is a phone that notes what it was told to do.
type toy struct {
	*phone
	said     [][]string
	patterns [][]int
	kept     map[string]string
	on       bool
	refuse   func()
	done     func()
	saves    bool
}

func newToy(t *testing.T, set device.Settings) *toy {
	t.Helper()
	t.Cleanup(func() { words.WriteIn(quantity.Chosen{}) })
	toy := &toy{kept: map[string]string{}, saves: true}
	toy.phone = &phone{
		post: func(f func()) { f() }, set: set, voice: device.HasVoice, vibrates: true, wakes: true,
		device: hands{
			say:     func(s []string, done func()) { toy.said, toy.done = append(toy.said, s), done },
			hush:    func() { toy.done = nil },
			vibrate: func(p ...int) { toy.patterns = append(toy.patterns, p) },
			awake:   func(on bool, refused func()) { toy.on, toy.refuse = on, refused },
			keep:    func(name, text string) bool { toy.kept[name] = text; return true },
			kept:    func(name string) string { return toy.kept[name] },
			save:    func(device.Settings) bool { return toy.saves },
		},
	}
	return toy
}

// benchWith is a bench with one reading on the default machine.
func benchWith(t *testing.T, id check.ID, text, unit string) (assess.Bench, assess.Line) {
	t.Helper()
	profiles, err := specs.Bundled()
	require.NoError(t, err)
	st := session.Session{}.Fold()
	st.Setup = session.DefaultSetup()
	b := assess.Open(st, profiles)
	c, ok := check.Find(b.Plan, id)
	require.True(t, ok)
	return b, b.Judge(c, session.Reading{Check: id, Text: text, Unit: unit})
}

// The three verdicts are felt apart and heard, each only where it was chosen.
func TestVerdictsAreFeltAndHeard(t *testing.T) {
	felt := map[spec.Outcome][]int{}
	for _, c := range []struct {
		id         check.ID
		text, unit string
		want       spec.Outcome
		heard      string
	}{
		{"pickup", "212", "Ω", spec.InSpec, "In spec."},
		{"charge-core-1", "0.34", "MΩ", spec.OutOfSpec, "Out of spec."},
		{"exciter-cranking", "31.0", "V", spec.CannotTell, "Cannot tell."},
	} {
		b, l := benchWith(t, c.id, c.text, c.unit)
		require.Equal(t, c.want, l.Verdict.Outcome)
		quiet := newToy(t, device.DefaultSettings())
		tellVerdict(quiet.phone, b, l)
		require.Empty(t, quiet.said)
		require.Empty(t, quiet.patterns)

		both := newToy(t, device.Settings{Aloud: true, Vibrate: true})
		tellVerdict(both.phone, b, l)
		require.Len(t, both.patterns, 1)
		felt[c.want] = both.patterns[0]
		require.Equal(t, c.heard, both.said[0][0])
		require.Equal(t, both.said[0], both.verdict)
		both.done()
		require.Nil(t, both.verdict)
	}
	require.Len(t, felt, 3)
	require.NotEqual(t, felt[spec.InSpec], felt[spec.CannotTell])
	require.NotEqual(t, felt[spec.OutOfSpec], felt[spec.CannotTell])
	require.NotEqual(t, felt[spec.InSpec], felt[spec.OutOfSpec])
}

// A reading that counts only with another one has no verdict to tell.
func TestWhatHasNoVerdictIsNotTold(t *testing.T) {
	toy := newToy(t, device.Settings{Aloud: true, Vibrate: true})
	b, l := benchWith(t, "pickup", "2,12,3", "Ω")
	require.Error(t, l.Unread)
	tellVerdict(toy.phone, b, l)
	require.Empty(t, toy.patterns)
	require.Empty(t, toy.said)
}

func TestNoVoiceNoReading(t *testing.T) {
	toy := newToy(t, device.Settings{Aloud: true})
	toy.voice = device.OtherLanguage
	toy.tell(spec.InSpec, []string{"In spec."})
	require.Empty(t, toy.said)
	require.NotEqual(t, noVoice(device.NoVoice), noVoice(device.OtherLanguage))
}

func TestTheScreenStaysOnDuringASessionOnly(t *testing.T) {
	id := uuid.MustParse("019ae000-0000-7000-8000-000000000001")
	for path, want := range map[string]bool{
		"": false, "sessions": false, "about": false, "phone": false, resultPath(id): false, "practice": false,
		checkPath(id, "pickup"): true, findPath(id): true, sheetPath(id): true, "setup/bench": true, "practice/800-4GM": true,
	} {
		toy := newToy(t, device.DefaultSettings())
		toy.during(placeOf(path))
		require.Equal(t, want, toy.on, path)
		toy = newToy(t, device.Settings{})
		toy.during(placeOf(path))
		require.False(t, toy.on, "switched off, at %s", path)
	}
}

func TestARefusalIsToldOnce(t *testing.T) {
	toy := newToy(t, device.DefaultSettings())
	toy.during(placeOf("setup/bench"))
	toy.refuse()
	require.True(t, toy.dark)
	toy.dark = false // put away
	toy.refuse()
	require.False(t, toy.dark)
}

func TestAChoiceCountsAtOnce(t *testing.T) {
	toy := newToy(t, device.DefaultSettings())
	before := toy.revision
	toy.choose(func(s *device.Settings) { s.Thousandths = true })
	require.Equal(t, quantity.Chosen{Thousandths: true}, words.Units())
	require.Greater(t, toy.revision, before)
	require.False(t, toy.unkept)
	toy.saves = false
	toy.choose(func(s *device.Settings) { s.Fahrenheit = true })
	require.True(t, toy.unkept)
	require.Equal(t, quantity.Chosen{Thousandths: true, Fahrenheit: true}, words.Units(), "not kept, and in force all the same")
}

// The hint is given once after a first result, and only where there is a way.
func TestTheInstallHintIsGivenOnce(t *testing.T) {
	toy := newToy(t, device.DefaultSettings())
	toy.install = device.AskBrowser
	require.False(t, toy.hint(), "before any result")
	toy.worthInstalling()
	toy.install = device.NoWay
	require.False(t, toy.hint(), "without a way")
	toy.install = device.Installed
	require.False(t, toy.hint(), "installed already")
	toy.install = device.ByShareMenu
	require.True(t, toy.hint())
	require.False(t, toy.hint(), "twice")
	toy.worthInstalling()
	require.False(t, toy.hint(), "after another result")
}

// Digits without a unit are taken in the chosen one; the entry says which.
func TestTheUsualUnitIsTheChosenOne(t *testing.T) {
	b, _ := benchWith(t, "pickup-gap", "0.4", "mm")
	c, _ := check.Find(b.Plan, "pickup-gap")
	ohms, _ := check.Find(b.Plan, "pickup")
	t.Cleanup(func() { words.WriteIn(quantity.Chosen{}) })
	for _, thou := range []bool{false, true} {
		words.WriteIn(quantity.Chosen{Thousandths: thou})
		want := map[bool]string{false: "mm", true: "thou"}[thou]
		require.Equal(t, want, usualUnit(c, b.Meter).Name)
		require.Equal(t, ohms.Unit(b.Meter), usualUnit(ohms, b.Meter))
		require.Empty(t, unitAgain(c, &session.Reading{Unit: "mm"}))
		require.Equal(t, "kΩ", unitAgain(ohms, &session.Reading{Unit: "kΩ"}))
		require.Equal(t, spec.InSpec, b.Judge(c, session.Reading{Check: c.ID, Text: map[bool]string{false: "0.4", true: "16"}[thou], Unit: want}).Verdict.Outcome)
	}
}
