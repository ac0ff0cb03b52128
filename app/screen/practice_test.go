package screen

import (
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/app/drawing"
	"coilbook/app/words"
	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/practice"
	"coilbook/specs"
)

// stage is a room with its device and the goroutine of the screens.
type stage struct {
	*room
	t     *testing.T
	text  string
	queue chan func()
}

func newStage(t *testing.T) *stage {
	s := &stage{t: t, queue: make(chan func(), 1000)}
	s.room = newRoom(func(f func()) { s.queue <- f }, func(text string) { s.text = text }, func() string { return s.text })
	return s
}

// until runs what was posted until something holds.
func (s *stage) until(holds func() bool) {
	s.t.Helper()
	late := time.After(20 * time.Second)
	for !holds() {
		select {
		case f := <-s.queue:
			f()
		case <-late:
			require.FailNow(s.t, "waited in vain")
		}
	}
}

func (s *stage) readAt(red, black check.Terminal) {
	s.t.Helper()
	n := len(s.taken)
	s.take(true)
	s.probe(red)
	s.take(false)
	s.probe(black)
	s.read()
	s.until(func() bool { return len(s.taken) > n })
}

// goTo enters a bench and waits until it is drawn.
func (s *stage) goTo(code string) {
	s.t.Helper()
	require.NoError(s.t, s.enter(code))
	s.until(func() bool { return s.at(code) })
}

// atBench is a stage with the first bench that suits.
func atBench(t *testing.T, l practice.Level, suits func(practice.Bench) bool) *stage {
	t.Helper()
	s := newStage(t)
	for seed := range uint32(4000) {
		if b := practice.Open(l, seed); suits(b) {
			s.goTo(b.Code())
			return s
		}
	}
	require.FailNow(t, "no such bench")
	return nil
}

func charging(b practice.Bench) bool { return b.Complaint == practice.NotCharging }

func TestTheOtherProbeFollowsTheFirst(t *testing.T) {
	s := atBench(t, practice.Usual, charging)
	assert.True(t, s.handRed)
	assert.False(t, s.mayRead())
	s.probe(check.BatteryPlus)
	assert.False(t, s.handRed, "black is still in the hand")
	s.probe(check.BatteryMinus)
	assert.False(t, s.handRed, "both are placed: the hand stays")
	assert.True(t, s.mayRead())
	assert.Empty(t, s.taken, "placing probes reads nothing")
	s.probe(check.Frame)
	assert.Equal(t, [2]check.Terminal{check.BatteryPlus, check.Frame}, [2]check.Terminal{s.placed.Red, s.placed.Black})
}

func TestAnyChangeDarkensTheDisplay(t *testing.T) {
	for name, change := range map[string]func(*room){
		"probe": func(r *room) { r.probe(check.Frame) },
		"dial":  func(r *room) { r.function(meter.Ohms) },
		"state": func(r *room) { r.set(func(s *machine.State) { s.Key = true }) },
	} {
		s := atBench(t, practice.Usual, charging)
		s.readAt(check.BatteryPlus, check.BatteryMinus)
		require.NotNil(t, s.shown, name)
		change(s.room)
		assert.Nil(t, s.shown, name)
	}
}

func TestAnEngineThatTurnsHasItsKeyOn(t *testing.T) {
	s := atBench(t, practice.Usual, charging)
	s.set(func(m *machine.State) { m.Engine = check.At3000 })
	assert.True(t, s.placed.Key)
	s.set(func(m *machine.State) { m.Key = false })
	assert.Equal(t, check.Stopped, s.placed.Engine, "the key stops it")
	assert.False(t, s.placed.Key)
	s.set(func(m *machine.State) { m.Engine = check.Cranking })
	s.set(func(m *machine.State) { m.Engine = check.Stopped })
	assert.True(t, s.placed.Key, "the key stays on")
}

func TestAMachineWithoutSparkDoesNotRun(t *testing.T) {
	s := atBench(t, practice.Usual, func(b practice.Bench) bool { return b.Complaint == practice.NoSpark })
	s.set(func(m *machine.State) { m.Engine = check.Idling })
	assert.Equal(t, check.Stopped, s.placed.Engine)
	s.set(func(m *machine.State) { m.Engine = check.Cranking })
	assert.Equal(t, check.Cranking, s.placed.Engine)
	warm := atBench(t, practice.Sly, func(b practice.Bench) bool { return b.Complaint == practice.FailsWarm && b.Aim() == check.CutsOutHot })
	warm.set(func(m *machine.State) { m.Engine = check.Idling })
	assert.Equal(t, check.Idling, warm.placed.Engine)
	warm.set(func(m *machine.State) { m.Hot = true })
	assert.Equal(t, check.Stopped, warm.placed.Engine, "warm, it dies")
}

func TestABenchComesBackAsItWas(t *testing.T) {
	s := atBench(t, practice.Usual, charging)
	s.readAt(check.BatteryPlus, check.BatteryMinus)
	s.set(func(m *machine.State) { m.Engine = check.Cranking })
	s.read()
	s.until(func() bool { return len(s.taken) == 2 })
	code, ok := s.unfinished()
	assert.True(t, ok)
	assert.Equal(t, s.bench.Code(), code)

	again := newStage(t)
	again.text = s.text
	again.goTo(code)
	again.until(func() bool { return !slices.ContainsFunc(again.taken, func(r *reading) bool { return !r.done }) })
	require.Len(t, again.taken, 2)
	for i, r := range again.taken {
		assert.Equal(t, s.taken[i].probe, r.probe, i)
	}
	assert.Equal(t, s.placed, again.placed)
	assert.InDelta(t, s.minutes(), again.minutes(), 1e-9)
	assert.InDelta(t, 0.5+2.5, s.minutes(), 1e-9)
}

func TestAnotherBenchPushesNothingOutBeforeItsFirstReading(t *testing.T) {
	s := atBench(t, practice.Usual, charging)
	s.readAt(check.BatteryPlus, check.BatteryMinus)
	first := s.bench.Code()
	s.goTo(practice.CodeOf(practice.Plain, 5))
	s.probe(check.Core)
	code, _ := s.unfinished()
	assert.Equal(t, first, code)
	s.readAt(check.BatteryPlus, check.BatteryMinus)
	code, _ = s.unfinished()
	assert.NotEqual(t, first, code)
}

func TestADamagedRecordIsSaidAndIgnored(t *testing.T) {
	s := newStage(t)
	assert.NoError(t, s.lost())
	s.text = "{"
	assert.Equal(t, words.LostRecord, lostWords(s.lost()))
	_, ok := s.unfinished()
	assert.False(t, ok)
	s.text = `{"version":9}`
	assert.Equal(t, words.NewerRecord, lostWords(s.lost()))
	assert.Error(t, s.enter("no code"))
}

func TestTellingIsWhatTheEngineSays(t *testing.T) {
	s := atBench(t, practice.Plain, charging)
	s.function(meter.Ohms)
	s.set(func(m *machine.State) { m.Plug = check.Apart })
	s.readAt("charge-1", check.Core)
	s.readAt("charge-1", "charge-2")
	profiles, err := specs.Bundled()
	require.NoError(t, err)
	s.tell(specs.DefaultID, profiles)
	assert.Nil(t, s.told, "nothing is told before a fault is named")
	s.name(s.bench.Choices()[0])
	s.tell(specs.DefaultID, profiles)
	s.until(func() bool { return s.told.done == s.told.all() && s.told.guided })
	left := s.bench.Rivals()
	for i, r := range s.taken {
		for _, rival := range s.bench.Rivals() {
			want, err := s.bench.Speaks(r.probe, rival)
			require.NoError(t, err)
			assert.Equal(t, want, slices.Contains(s.told.against[i], rival), rival)
			if want {
				left = slices.DeleteFunc(left, func(k machine.Kind) bool { return k == rival })
			}
		}
	}
	assert.Equal(t, left, s.told.left())
	guided, err := s.bench.Guided(time.Now(), specs.DefaultID)
	require.NoError(t, err)
	steps := practice.Steps(guided, profiles)
	require.Len(t, s.told.steps, len(steps))
	for i, step := range steps {
		assert.Equal(t, step.Verdict, s.told.steps[i].Verdict)
		assert.Equal(t, step.Finds, s.told.steps[i].Finds)
	}
}

func TestLeavingEndsTheTelling(t *testing.T) {
	s := atBench(t, practice.Plain, charging)
	s.readAt(check.BatteryPlus, check.BatteryMinus)
	s.name(s.bench.Choices()[0])
	profiles, err := specs.Bundled()
	require.NoError(t, err)
	s.tell(specs.DefaultID, profiles)
	s.hush()
	assert.Nil(t, s.told)
	time.Sleep(50 * time.Millisecond)
	for len(s.queue) > 0 {
		(<-s.queue)()
	}
	assert.Nil(t, s.told)
	s.tell(specs.DefaultID, profiles)
	s.until(func() bool { return s.told.done == s.told.all() })
}

func TestCautionsFollowStateAndPoints(t *testing.T) {
	at := func(e check.Engine, hot bool, red check.Terminal) machine.Probing {
		return machine.Probing{Red: red, Black: check.Core, State: machine.State{Engine: e, Hot: hot}}
	}
	for _, c := range []struct {
		p    machine.Probing
		want []check.Caution
	}{
		{at(check.Stopped, false, check.SparkLead), nil},
		{at(check.Stopped, true, check.ExciterLead), []check.Caution{check.HotParts}},
		{at(check.Cranking, false, check.BatteryPlus), []check.Caution{check.RotatingParts, check.InNeutral}},
		{at(check.At5000, false, check.BatteryPlus), []check.Caution{check.RotatingParts, check.ExhaustIndoor}},
		{at(check.Cranking, false, check.BoxExciter), []check.Caution{check.RotatingParts, check.InNeutral, check.ShockExciter, check.MeterRating}},
		{at(check.Idling, false, check.CapEnd), []check.Caution{check.RotatingParts, check.ExhaustIndoor, check.ShockIgnition, check.MeterRating}},
	} {
		assert.Equal(t, c.want, cautionsOf(c.p), "%+v", c.p)
	}
}

// Every point of a machine is on the board, and nothing else.
func TestTheBoardHasThePointsOfTheMachine(t *testing.T) {
	connections := []machine.Connection{machine.Star, machine.Delta, machine.SinglePhase, machine.GroundedEnd, machine.TwoPhase}
	for _, c := range connections {
		for bits := range 16 {
			b := machine.Usual()
			b.Charge, b.GroundLead, b.Lighting, b.Pickups = c, bits&1 != 0, bits&2 != 0, 1+bits>>2&1
			if bits&8 != 0 {
				b.Ignition = machine.BatteryFed
			}
			board := drawing.Laid(boardOf(b), drawing.Scene{}, words.ShortTerminal, words.Terminal, words.DrawnBoard())
			var got []check.Terminal
			for _, target := range board.Targets {
				got = append(got, target.At)
			}
			assert.ElementsMatch(t, b.Points(), got, "%+v", b)
		}
	}
}

func TestPracticePlaces(t *testing.T) {
	for path, want := range map[string]place{
		"practice":               {name: "practice"},
		"/practice/":             {name: "practice"},
		"practice/0K7-QPM":       {name: "bench", code: "0K7-QPM"},
		"practice/0K7-QPM/name":  {name: "naming", code: "0K7-QPM"},
		"practice/0K7-QPM/truth": {name: "truth", code: "0K7-QPM"},
		"practice/0K7-QPM/other": {name: "nowhere"},
		"practice/a/truth/more":  {name: "nowhere"},
	} {
		got := placeOf(path)
		assert.Equal(t, want, got, path)
		assert.NotEmpty(t, words.Title(got.name), path)
	}
	for name, path := range map[string]string{"bench": benchPath("x"), "naming": namingPath("x"), "truth": truthPath("x")} {
		assert.Equal(t, name, placeOf(path).name)
	}
}

// Every fault of every bench is offered once.
func TestFaultsAreGroupedWhole(t *testing.T) {
	for seed := range uint32(30) {
		choices := practice.Open(practice.Usual, seed).Choices()
		var got []machine.Kind
		for _, g := range grouped(choices) {
			assert.NotEmpty(t, g.title)
			got = append(got, g.kinds...)
		}
		assert.ElementsMatch(t, choices, got)
	}
}
