package screen

import (
	"testing"
	"time"

	"github.com/google/uuid"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/machine"
	"coilbook/engine/session"
	"coilbook/specs"
)

// complaint is a session that came for an aim, with entries a minute apart.
func complaint(t *testing.T, aim check.Aim, entries ...session.Entry) assess.Bench {
	t.Helper()
	profiles, err := specs.Bundled()
	require.NoError(t, err)
	setup := session.DefaultSetup()
	setup.Aim = aim
	s := session.Session{ID: uuid.Must(uuid.NewV7())}
	for i, e := range append([]session.Entry{{Setup: &setup}}, entries...) {
		e.ID, e.At = uuid.Must(uuid.NewV7()), time.Date(2026, 5, 1, 9, i, 0, 0, time.UTC)
		s = s.Append(e)
	}
	return assess.Open(s.Fold(), profiles)
}

func read(id check.ID, text, unit string) session.Entry {
	return session.Entry{Reading: &session.Reading{Check: id, Text: text, Unit: unit}}
}

// drawn waits for the population of a bench.
func drawn(t *testing.T, m *models, queue chan func(), b assess.Bench) *grown {
	t.Helper()
	s, ok := fault.Of(b.State.Setup.Aim)
	require.True(t, ok)
	late := time.After(30 * time.Second)
	for !m.of(s, b).done {
		select {
		case f := <-queue:
			f()
		case <-late:
			require.FailNow(t, "waited in vain")
		}
	}
	return m.of(s, b)
}

func newPopulations() (*models, chan func()) {
	queue := make(chan func(), 1000)
	return newModels(func(f func()) { queue <- f }), queue
}

func TestAnswersOfASessionAreHeard(t *testing.T) {
	m, queue := newPopulations()
	b := complaint(t, check.NoCharge,
		read("battery-rest", "12.4", "V"), read("battery-5000", "12300", "mV"), read("fuse", "yes", ""),
		session.Entry{Skip: &session.Skip{Check: "battery-idle"}}, read("charge-pair-1-2", "soup", "Ω"), read("no-such-check", "1", "V"))
	g := drawn(t, m, queue, b)
	talk := replay(g, b.State, b.Meter)
	assert.Equal(t, []check.ID{"battery-rest", "battery-5000", "fuse"}, talk.Done())
	require.Len(t, talk.said, 5)
	for i, want := range []string{"12.4 V", "12300 mV", words.Yes, words.NotDone, "soup"} {
		assert.Equal(t, want, talk.said[i].value)
		assert.Equal(t, want == "soup", talk.said[i].err != nil, want)
	}
	front := talk.Suspects().Faults[0]
	assert.Equal(t, machine.MainFuse, front.Fault.Kind)
	assert.Greater(t, front.Probability, 0.5)
	first, minutes := talk.before(g.model.Checks[0])
	assert.Empty(t, first)
	assert.Equal(t, g.model.Checks[0].Minutes, minutes)
	for _, group := range talk.others("") {
		for _, k := range group.checks {
			assert.NotContains(t, talk.Done(), k.ID)
		}
	}
}

// What cannot be done is not asked again.
func TestALeftOutCheckIsNotAskedAgain(t *testing.T) {
	m, queue := newPopulations()
	b := complaint(t, check.NoSpark)
	g := drawn(t, m, queue, b)
	asked, more := replay(g, b.State, b.Meter).Ask()
	require.True(t, more)
	b = complaint(t, check.NoSpark, session.Entry{Skip: &session.Skip{Check: asked.Check.ID}})
	next, more := replay(g, b.State, b.Meter).Ask()
	require.True(t, more)
	assert.NotEqual(t, asked.Check.ID, next.Check.ID)
}

func TestPopulationsAreDrawnOnce(t *testing.T) {
	m, queue := newPopulations()
	b := complaint(t, check.NoSpark)
	g := drawn(t, m, queue, b)
	assert.Same(t, g, drawn(t, m, queue, complaint(t, check.NoSpark, read("spark", "no", ""))))
	other := complaint(t, check.NoSpark)
	other.State.Setup.Build.Exciter = false
	assert.NotEqual(t, questionKey(fault.NoSpark, b), questionKey(fault.NoSpark, other))
	assert.NotEqual(t, questionKey(fault.NoSpark, b), questionKey(fault.WontCharge, b))
	own := complaint(t, check.NoSpark)
	own.State.Setup.Own = &session.Own{}
	assert.NotEqual(t, questionKey(fault.NoSpark, b), questionKey(fault.NoSpark, own))
	for _, aim := range []check.Aim{check.EveryPart, check.SelfCheck} {
		_, ok := fault.Of(aim)
		assert.False(t, ok, aim)
	}
}

// What nobody waits for stops, and goes on from there.
func TestDrawingStopsAndGoesOn(t *testing.T) {
	m, queue := newPopulations()
	b := complaint(t, check.NoSpark)
	g := m.of(fault.NoSpark, b)
	(<-queue)()
	m.hush()
	for g.busy {
		(<-queue)()
	}
	require.False(t, g.done)
	stopped := g.ready
	assert.GreaterOrEqual(t, drawn(t, m, queue, b).ready, stopped)
}

func TestACorrectionIsAnotherTalk(t *testing.T) {
	m, queue := newPopulations()
	b := complaint(t, check.NoSpark, read("spark", "no", ""))
	g := drawn(t, m, queue, b)
	again := complaint(t, check.NoSpark, read("spark", "yes", ""))
	assert.NotEqual(t, talkKey(g, b.State), talkKey(g, again.State))
	assert.Equal(t, talkKey(g, b.State), talkKey(g, b.State))
}

func TestThreeToFiveSuspects(t *testing.T) {
	var all []diagnose.Suspect
	for _, p := range []float64{0.9, 0.05, 0.02, 0.01, 0.01, 0.01} {
		all = append(all, diagnose.Suspect{Probability: p})
	}
	assert.Len(t, leading(all, 1), 3)
	for i := range all {
		all[i].Probability = 1.0 / 6
	}
	assert.Len(t, leading(all, 1), 5)
	assert.Len(t, leading(all, 0), 3, "nothing is read yet: the next check matters more")
	assert.Len(t, leading(all[:2], 1), 2)
	all[3].Probability = 0.09
	assert.Len(t, leading(all, 1), 3, "from the fourth on they must be possible")
}

func TestATalkIsWorkedOutBeforeItIsShown(t *testing.T) {
	m, queue := newPopulations()
	b := complaint(t, check.NoCharge)
	g := drawn(t, m, queue, b)
	for len(queue) > 0 {
		(<-queue)()
	}
	require.Nil(t, m.talk(g, b), "not while the screen is drawn")
	require.Nil(t, m.talk(g, b))
	require.Len(t, queue, 1, "asked for once")
	before := m.revision
	(<-queue)()
	first := m.talk(g, b)
	require.NotNil(t, first)
	assert.Equal(t, before+1, m.revision, "the screen is drawn anew")
	next, _ := first.Ask()
	assert.NotEmpty(t, first.outlook[next.Check.ID], "with what the next check's answers would mean")

	told := b
	told.State = complaint(t, check.NoCharge, read("battery-5000", "12.3", "V")).State
	told.State.ID = b.State.ID
	assert.Same(t, first, m.talk(g, told), "the earlier one until then")
	second := m.work(g, told)
	assert.Same(t, second, m.talk(g, told))
	assert.Equal(t, []check.ID{"battery-5000"}, second.Done())
	assert.NotEmpty(t, second.told, "with what speaks for the suspects")
	assert.NotNil(t, second.sound.battery, "with what sound machines show beside the reading")

	stranger := complaint(t, check.NoCharge)
	assert.Nil(t, m.talk(g, stranger), "never that of another session")
}
