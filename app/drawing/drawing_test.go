package drawing

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"testing"

	"coilbook/engine/check"
)

// everyBuild is each architecture with the pole counts that strain the drawing.
func everyBuild() []check.Build {
	var out []check.Build
	for _, poles := range []int{1, 2, 6, 12, 18, 36} {
		for leads := check.MinChargeLeads; leads <= check.MaxChargeLeads; leads++ {
			for bits := range 8 {
				out = append(out, check.Build{StatorPoles: poles, ChargeLeads: leads,
					Exciter: bits&1 != 0, Pickup: bits&2 != 0, GroundLead: bits&4 != 0})
			}
		}
	}
	return out
}

// everyPlanned is each check that a build can ask for, with all methods and the
// meter's self-check.
func everyPlanned(b check.Build) []check.Check {
	plan := check.Plan(b, check.Bench, check.Methods(b)...)
	plan = append(plan, check.Plan(b, check.SelfCheck, check.ResistorCheck)[1:]...)
	for _, c := range check.Whole(b) {
		if _, also := check.Find(plan, c.ID); !also {
			plan = append(plan, c)
		}
	}
	return plan
}

// everyCheck calls f with the picture of each check of each build.
func everyCheck(t *testing.T, f func(t *testing.T, c check.Check, p Picture)) {
	t.Helper()
	for _, b := range everyBuild() {
		for _, c := range everyPlanned(b) {
			t.Run(fmt.Sprintf("%+v/%s", b, c.ID), func(t *testing.T) {
				f(t, c, ForCheck(c, b, plainLabel, English()))
			})
		}
	}
}

// otherPictures are those that belong to no check.
func otherPictures() []Picture {
	var out []Picture
	for poles := check.MinPoles; poles <= check.MaxPoles; poles++ {
		out = append(out, Stator(check.Build{StatorPoles: poles, Exciter: true}, "stator"), Stator(check.Build{StatorPoles: poles}, "stator"))
	}
	for _, name := range []string{"no-charge", "no-spark", "bench", "sessions", "about", "phone", "aloud", "hush", "share", "overcharges", "flat-after-standing", "weak-spark", "cuts-out-hot"} {
		out = append(out, Icon(name))
	}
	for _, name := range []string{"in", "out", "unsure", "skip", "todo"} {
		out = append(out, VerdictMark(name))
	}
	return out
}

func TestEveryPictureIsSound(t *testing.T) {
	everyCheck(t, func(t *testing.T, _ check.Check, p Picture) { sound(t, p) })
	for _, p := range otherPictures() {
		t.Run(p.Label, func(t *testing.T) { sound(t, p) })
	}
}

// sound checks what holds for any picture.
func sound(t *testing.T, p Picture) {
	t.Helper()
	if p.Label == "" || len(p.Shapes) == 0 {
		t.Fatalf("empty picture %q", p.Label)
	}
	for _, l := range leaves(p.Shapes, whole, 0) {
		if b := l.box; !(b.x0 >= 0 && b.y0 >= 0 && b.x1 <= p.Width && b.y1 <= p.Height) {
			t.Errorf("%#v leaves the picture: %.2f", l.shape, b)
		}
		if !slices.Contains(Classes, class(l.shape)) {
			t.Errorf("class %q is not listed", class(l.shape))
		}
	}
	wellFormed(t, SVG(p))
}

func wellFormed(t *testing.T, svg string) {
	t.Helper()
	if strings.Contains(svg, "style") || strings.Contains(svg, "NaN") || strings.Contains(svg, "Inf") {
		t.Errorf("style or bad number in %s", svg)
	}
	d := xml.NewDecoder(strings.NewReader(svg))
	for {
		_, err := d.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
	}
}

func TestProbesEndAtTheirTerminals(t *testing.T) {
	everyCheck(t, func(t *testing.T, c check.Check, p Picture) {
		tips := map[string]Point{}
		for _, s := range p.Shapes {
			if g, ok := s.(Group); ok && len(g.Shapes) > 2 {
				if body := class(g.Shapes[2]); strings.HasPrefix(body, "probe-") {
					tips[body] = g.Move
				}
			}
		}
		for body, terminal := range map[string]check.Terminal{"probe-red": c.Red, "probe-black": c.Black} {
			tip, drawn := tips[body]
			switch want, marked := p.Anchors[terminal]; {
			case c.Instrument != check.Multimeter && !drawn:
			case !drawn || !marked || math.Hypot(tip.X-want.X, tip.Y-want.Y) > 1e-9:
				t.Errorf("%s ends at %v (drawn %v), %q is at %v", body, tip, drawn, terminal, want)
			}
		}
	})
}

func TestFeelerLeafStandsInTheGap(t *testing.T) {
	c, _ := check.Find(check.Plan(check.DefaultBuild(), check.Bench), "pickup-gap")
	p := ForCheck(c, check.DefaultBuild(), plainLabel, English())
	at := p.Anchors[check.ReluctorGap]
	for _, l := range leaves(p.Shapes, whole, 0) {
		if class(l.shape) == "leaf" && l.deep == 0 && l.box.overlaps(box{at.X, at.Y, at.X + 1, at.Y + 1}) {
			return
		}
	}
	t.Error("no leaf at the gap")
}

func TestContactsAreApart(t *testing.T) {
	everyCheck(t, func(t *testing.T, _ check.Check, p Picture) {
		for a, at := range p.Anchors {
			for b, other := range p.Anchors {
				if a != b && math.Hypot(at.X-other.X, at.Y-other.Y) < 20 {
					t.Errorf("%q and %q are too close", a, b)
				}
			}
		}
	})
}

// TestWordsStayReadable: no word on another, none under a cable or a lead.
func TestWordsStayReadable(t *testing.T) {
	everyCheck(t, func(t *testing.T, _ check.Check, p Picture) {
		all := leaves(p.Shapes, whole, 0)
		for i, l := range all {
			text, ok := l.shape.(Text)
			if !ok {
				continue
			}
			if text.Size < 12.5 || strings.Contains(text.Text, "…") {
				t.Errorf("%q is too small or cut", text.Text)
			}
			for j, other := range all {
				_, isText := other.shape.(Text)
				if isText && j > i && !apart(l.corners(), other.corners()) {
					t.Errorf("%#v and %#v overlap", l.shape, other.shape)
				}
				if l.deep == 0 && crosses(other, l.box) {
					t.Errorf("%s runs across %q", class(other.shape), text.Text)
				}
			}
		}
	})
}

func crosses(l leaf, b box) bool {
	path, ok := l.shape.(Path)
	thick := path.Class == "ink" && path.Width >= 5
	if !ok || !thick && !strings.HasPrefix(path.Class, "cable") && !strings.HasPrefix(path.Class, "lead") {
		return false
	}
	for _, p := range path.sampled() {
		if b.overlaps(box{p.X - 1, p.Y - 1, p.X + 1, p.Y + 1}) {
			return true
		}
	}
	return false
}

func TestLongWordsAreCutAndEscaped(t *testing.T) {
	long := Words{Red: "a very long word for red", Black: "a very long word for black", Core: strings.Repeat("bare ", 12),
		Case: strings.Repeat("case ", 12), Apart: "apart", Joined: strings.Repeat("joined ", 12), Turns: strings.Repeat("turns ", 12),
		Gap: strings.Repeat("gap ", 12), Leaf: strings.Repeat("leaf ", 12), Pickup: strings.Repeat("pickup ", 12),
		Battery: strings.Repeat("battery ", 12), Fuse: strings.Repeat("fuse ", 12), Bulb: strings.Repeat("bulb ", 12),
		Resistor: strings.Repeat("resistor ", 12), Series: "ring", Inside: "inside", Swapped: "swapped", Hot: strings.Repeat("hot ", 12),
		Adapter: strings.Repeat("adapter ", 12), Box: strings.Repeat("box ", 12), Coil: strings.Repeat("coil ", 12),
		Idles: strings.Repeat("idles ", 12), At3000: strings.Repeat("3000 ", 12), At5000: strings.Repeat("5000 ", 12),
		KeyOn: strings.Repeat("key ", 12), Lamp: strings.Repeat("lamp ", 12), NeverCrank: strings.Repeat("series ", 12),
		Regulator: strings.Repeat("regulator ", 12), SparkPlug: strings.Repeat("spark ", 12), GoodPlug: strings.Repeat("good ", 12),
		BareLead: strings.Repeat("bare ", 12), Cap: strings.Repeat("cap ", 12), KillOff: strings.Repeat("off ", 12),
		Eyes: strings.Repeat("eyes ", 12), Yes: strings.Repeat("yes ", 12), No: strings.Repeat("no ", 12)}
	label := func(check.Terminal) string { return `<yellow & "white" / red>` }
	b := check.DefaultBuild()
	for _, c := range everyPlanned(b) {
		p := ForCheck(c, b, label, long)
		sound(t, p)
		if svg := SVG(p); strings.Contains(svg, "<yellow") || strings.Contains(svg, "& ") {
			t.Errorf("%s: not escaped", c.ID)
		}
	}
}

func TestAnOlderSessionsCheckIsDrawn(t *testing.T) {
	c, _ := check.Find(check.Plan(check.DefaultBuild(), check.Bench), "charge-pair-3-1")
	p := ForCheck(c, check.Build{StatorPoles: 6, ChargeLeads: 1}, plainLabel, English())
	sound(t, p)
	if _, ok := p.Anchors["charge-3"]; !ok {
		t.Error("lead 3 has no contact")
	}
}

func TestUnknownNamesGiveEmptyPictures(t *testing.T) {
	if len(Icon("?").Shapes)+len(VerdictMark("?").Shapes) != 0 {
		t.Error("something was drawn")
	}
}

func TestNumberIsShortAndStable(t *testing.T) {
	for x, want := range map[float64]string{0: "0", -0.001: "0", 1: "1", 1.5: "1.5", 2.345: "2.35", 2.344999999999: "2.35", -2.5: "-2.5", 100: "100"} {
		if got := Number(x); got != want {
			t.Errorf("Number(%v) = %q, want %q", x, got, want)
		}
	}
}
