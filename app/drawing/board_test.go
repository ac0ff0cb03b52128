package drawing

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
)

var boardWords = BoardWords{
	Machine: "machine", Generator: "generator", Regulator: "regulator", Box: "ignition box", Battery: "battery",
	Red: "red", Black: "black", InHand: "in your hand", Apart: "plug apart", Joined: "plug together", Unplugged: "regulator unplugged",
	EngineTurns: "engine turns", EngineStands: "engine stands", KeyOn: "key on", KeyOff: "key off",
	Fuse: "fuse", Key: "key", Lamp: "lamp", Coil: "ignition coil", Cap: "spark plug", Frame: "frame", Exciter: "exciter",
}

// boardLabel is as long as the words that the app has for the points.
func boardLabel(t check.Terminal) string {
	if n, ok := strings.CutPrefix(string(t), "regulator-"); ok && len(n) == 1 {
		return "reg " + n
	}
	short := map[check.Terminal]string{
		check.FuseIn: "fuse in", check.FuseOut: "fuse out", check.RegulatorPlus: "reg +", check.RegulatorBody: "reg body",
		check.PlusClamp: "clamp +", check.Frame: "frame", check.KeyOut: "key out", check.LightingLead: "lights", check.PickupTwo: "pickup 3",
		check.BoxExciter: "box exc", check.BoxPickup: "box trig", check.BoxGround: "box gnd", check.BoxFeed: "box feed", check.KillWire: "kill",
		check.CoilPrimary: "coil pin", check.SparkLead: "HT lead", check.CapEnd: "cap end", check.BoxOutput: "box out",
		check.BatteryPlus: "+", check.BatteryMinus: "−",
	}
	if s := short[t]; s != "" {
		return s
	}
	return plainLabel(t)
}

// everyMachine is each architecture that a board may show.
func everyMachine() []Machine {
	var out []Machine
	for leads := check.MinChargeLeads; leads <= check.MaxChargeLeads; leads++ {
		for bits := range 16 {
			out = append(out, Machine{
				Build:   check.Build{StatorPoles: []int{6, 12, 18}[bits%3], ChargeLeads: leads, Exciter: bits&1 != 0, Pickup: true, GroundLead: bits&2 != 0},
				Pickups: 1 + bits>>2&1, Lighting: bits&8 != 0, BatteryFed: bits&1 == 0,
			})
		}
	}
	return out
}

func laid(m Machine, s Scene) Board { return Laid(m, s, boardLabel, boardLabel, boardWords) }

// everyBoard calls f with each machine, bare and with a probe on each point.
func everyBoard(t *testing.T, f func(t *testing.T, m Machine, s Scene, b Board)) {
	t.Helper()
	for i, m := range everyMachine() {
		t.Run(fmt.Sprintf("%d %+v", i, m), func(t *testing.T) {
			f(t, m, Scene{}, laid(m, Scene{}))
			targets := laid(m, Scene{}).Targets
			for i, at := range targets {
				s := Scene{Red: at.At, Black: targets[(i+i/3)%len(targets)].At, Plug: check.Plug(i % 2), Turns: i%3 == 0, Key: i%4 < 2}
				f(t, m, s, laid(m, s))
			}
		})
	}
}

func TestEveryBoardIsSound(t *testing.T) {
	everyBoard(t, func(t *testing.T, _ Machine, _ Scene, b Board) { sound(t, b.Picture) })
}

// Every point lies in its own target, and no two targets share a cell.
func TestTargetsAreApart(t *testing.T) {
	everyBoard(t, func(t *testing.T, _ Machine, _ Scene, b Board) {
		taken := map[[2]int]check.Terminal{}
		require.Len(t, b.Anchors, len(b.Targets))
		for _, target := range b.Targets {
			at := b.Anchors[target.At]
			x, y := at.X/Cell-float64(target.Column), at.Y/Cell-float64(target.Row)
			assert.True(t, x > 0.2 && x < 1.8 && y > 0.2 && y < 1.8, "%s: %v in %+v", target.At, at, target)
			assert.True(t, target.Column >= 0 && target.Column+2 <= BoardColumns && target.Row >= 0 && target.Row+2 <= BoardRows, "%+v", target)
			for i := range 4 {
				cell := [2]int{target.Column + i%2, target.Row + i/2}
				assert.Empty(t, taken[cell], "%s and %s share a cell", taken[cell], target.At)
				taken[cell] = target.At
			}
		}
	})
}

func TestBoardProbesEndAtTheirPoints(t *testing.T) {
	everyBoard(t, func(t *testing.T, _ Machine, s Scene, b Board) {
		tips := map[string]Point{}
		for _, shape := range b.Shapes {
			if g, ok := shape.(Group); ok && len(g.Shapes) > 2 && strings.HasPrefix(class(g.Shapes[2]), "probe-") {
				tips[class(g.Shapes[2])] = g.Move
			}
		}
		if s.Red == check.Nowhere {
			assert.Empty(t, tips)
			return
		}
		assert.Equal(t, map[string]Point{"probe-red": b.Anchors[s.Red], "probe-black": b.Anchors[s.Black]}, tips)
	})
}

// No name of a point lies on another, and none under a wire.
func TestNamesOnTheBoardStayReadable(t *testing.T) {
	for _, m := range everyMachine() {
		for _, s := range []Scene{{}, {Plug: check.Together, Turns: true, Key: true}} {
			all := leaves(laid(m, s).Shapes, whole, 0)
			for i, l := range all {
				text, ok := l.shape.(Text)
				if !ok {
					continue
				}
				assert.False(t, text.Size < 12.5 || strings.Contains(text.Text, "…"), "%q is too small or cut", text.Text)
				for j, other := range all {
					if _, isText := other.shape.(Text); isText && j > i {
						assert.True(t, apart(l.corners(), other.corners()), "%+v: %#v and %#v overlap", m, l.shape, other.shape)
					}
					if path, isPath := other.shape.(Path); isPath && j > i && path.Width > 0 {
						for _, p := range path.sampled() {
							assert.False(t, l.box.overlaps(box{p.X - 1, p.Y - 1, p.X + 1, p.Y + 1}), "%+v: %s runs across %q", m, path.Class, text.Text)
						}
					}
				}
			}
		}
	}
}

func TestTheBoardSaysWhatItShows(t *testing.T) {
	m := Machine{Build: check.DefaultBuild(), Pickups: 1}
	assert.Equal(t, "machine: generator, regulator, fuse, key, lamp, battery, frame, ignition box, ignition coil, spark plug, exciter; "+
		"red: reg +, black: in your hand, plug together, engine stands, key on",
		laid(m, Scene{Red: check.RegulatorPlus, Plug: check.Together, Key: true}).Label)
	assert.Contains(t, laid(m, Scene{Turns: true}).Label, "plug apart, engine turns, key off")
}

func TestBoardPointsFollowTheBuild(t *testing.T) {
	has := func(m Machine, at check.Terminal) bool {
		_, ok := laid(m, Scene{}).Anchors[at]
		return ok
	}
	for _, m := range everyMachine() {
		assert.Equal(t, m.Exciter, has(m, check.ExciterLead))
		assert.Equal(t, m.Exciter, has(m, check.BoxExciter))
		assert.Equal(t, m.BatteryFed, has(m, check.BoxFeed))
		assert.Equal(t, m.GroundLead, has(m, check.GroundLead))
		assert.Equal(t, m.Lighting, has(m, check.LightingLead))
		assert.Equal(t, m.Pickups > 1, has(m, check.PickupTwo))
		assert.Equal(t, m.ChargeLeads > 2, has(m, "charge-3") && has(m, "regulator-3"))
	}
}

func TestGoldenBoards(t *testing.T) {
	three := Machine{Build: check.DefaultBuild(), Pickups: 1}
	kick := Machine{Build: check.Build{StatorPoles: 6, ChargeLeads: 1, Exciter: true, Pickup: true, GroundLead: true}, Pickups: 1, Lighting: true}
	for name, b := range map[string]Board{
		"board-apart":  laid(three, Scene{Red: "charge-1", Black: check.Core}),
		"board-joined": laid(kick, Scene{Red: check.BoxOutput, Black: check.BoxGround, Plug: check.Together, Turns: true, Key: true}),
	} {
		t.Run(name, func(t *testing.T) { golden(t, "testdata/"+name+".svg", SVG(b.Picture)) })
	}
}

// TestBoardPreview writes a page with boards to the file named by
// BOARD_PREVIEW, for the eye.
func TestBoardPreview(t *testing.T) {
	file := os.Getenv("BOARD_PREVIEW")
	if file == "" {
		t.Skip("BOARD_PREVIEW names no file")
	}
	css := readStyle(t)
	var page strings.Builder
	fmt.Fprintf(&page, "<!doctype html><meta charset=utf-8><style>body{margin:0}div{padding:6px;display:inline-block}"+
		"div[data-theme=light]{background:#fff}div[data-theme=dark]{background:#17130e;color:#f4f0e9}%s</style>", css)
	all := everyMachine()
	for i, m := range []Machine{{Build: check.DefaultBuild(), Pickups: 1}, all[9], all[16+4], all[63-16]} {
		theme := []string{"light", "dark"}[i%2]
		s := []Scene{{Red: "charge-1", Black: check.Core}, {Plug: check.Together, Turns: true, Key: true}, {Red: check.CapEnd, Black: check.BatteryMinus, Key: true}, {}}[i]
		fmt.Fprintf(&page, "<div data-theme=%s>%s</div>", theme, SVG(laid(m, s).Picture))
	}
	require.NoError(t, os.WriteFile(file, []byte(page.String()), 0o600))
}
