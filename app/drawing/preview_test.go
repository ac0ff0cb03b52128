package drawing

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"coilbook/engine/check"
	"coilbook/engine/spec"
)

// TestPreview writes a page with the pictures to the file named by
// DRAWING_PREVIEW, for the eye.
func TestPreview(t *testing.T) {
	file := os.Getenv("DRAWING_PREVIEW")
	if file == "" {
		t.Skip("DRAWING_PREVIEW names no file")
	}
	css, err := os.ReadFile("../../web/drawing.css")
	if err != nil {
		t.Fatal(err)
	}
	var page strings.Builder
	fmt.Fprintf(&page, "<!doctype html><meta charset=utf-8><style>body{margin:0;display:flex}div{padding:10px;width:360px}"+
		"div[data-theme=light]{background:#fff}div[data-theme=dark]{background:#17130e;color:#f4f0e9}svg{display:inline-block!important;margin:4px 0}svg.w{width:340px}%s</style>", css)
	for _, theme := range []string{"light", "dark"} {
		fmt.Fprintf(&page, "<div data-theme=%s>", theme)
		for _, p := range previewPictures() {
			svg := SVG(p)
			if p.Width == stripW {
				svg = strings.Replace(svg, `width="360" height="170"`, `width="340"`, 1)
			}
			page.WriteString(svg)
		}
		page.WriteString("</div>")
	}
	if err := os.WriteFile(file, []byte(page.String()), 0o600); err != nil {
		t.Fatal(err)
	}
}

func previewPictures() []Picture {
	var out []Picture
	add := func(b check.Build, ids ...check.ID) {
		for _, c := range everyPlanned(b) {
			if slices.Contains(ids, c.ID) {
				out = append(out, ForCheck(c, b, plainLabel, English()))
			}
		}
	}
	b := check.DefaultBuild()
	add(b, "lead-zero", "core-continuity", "charge-pair-1-2", "charge-pair-3-1", "charge-core-2", "pickup", "pickup-gap", "exciter", "exciter-cranking")
	add(check.Build{StatorPoles: 18, ChargeLeads: 4, GroundLead: true}, "charge-pair-3-4", "phase-to-phase", "charge-core-4")
	add(check.Build{StatorPoles: 36, ChargeLeads: 2, Exciter: true}, "charge-pair-1-2", "exciter")
	add(check.Build{StatorPoles: 1, ChargeLeads: 1}, "charge-grounded-1")
	add(check.Build{StatorPoles: 6, ChargeLeads: 1, Exciter: true, GroundLead: true}, "charge-grounded-1")
	add(b, "battery-dc", "battery-ac", "battery-ac-swapped", "known-resistor", "volt-amp-known-1-2", "volt-amp-winding-1-2",
		"volt-amp-winding-3-1", "hot-exciter", "hot-pickup", "hot-charge-pair-1-2", "exciter-peak", "pickup-peak", "box-peak")
	for _, c := range check.Whole(b) {
		if (&sheet{check: c}).wholeMachine() != nil || c.Measures == spec.PickupToCore {
			out = append(out, ForCheck(c, b, plainLabel, English()))
		}
	}
	fed := check.Build{StatorPoles: 12, ChargeLeads: 1, Pickup: true, GroundLead: true}
	for _, c := range check.Whole(fed) {
		if c.ID == "box-feed" || c.ID == "charge-ac-1-core" {
			out = append(out, ForCheck(c, fed, plainLabel, English()))
		}
	}
	one := check.Build{StatorPoles: 1, ChargeLeads: 1}
	add(one, "volt-amp-known-1-core", "volt-amp-winding-1-core", "hot-charge-grounded-1", "box-peak")
	for _, n := range []int{1, 2, 3, 6, 8, 12, 18, 24, 36} {
		out = append(out, Stator(check.Build{StatorPoles: n, Exciter: n%4 != 0}, "stator"))
	}
	for _, n := range []string{"no-charge", "no-spark", "bench", "sessions", "about", "phone", "aloud", "hush", "share", "overcharges", "flat-after-standing", "weak-spark", "cuts-out-hot"} {
		out = append(out, Icon(n))
	}
	for _, n := range []string{"in", "out", "unsure", "skip", "todo"} {
		out = append(out, VerdictMark(n))
	}
	return out
}

func plainLabel(t check.Terminal) string {
	return map[check.Terminal]string{
		"charge-1": "1", "charge-2": "2", "charge-3": "3", "charge-4": "4", check.GroundLead: "ground",
		check.PickupA: "pickup 1", check.PickupB: "pickup 2", check.ExciterLead: "exciter", check.BoxPickup: "box trig", check.BoxExciter: "box exc", check.OtherProbe: "other probe",
		check.Core: "core", check.BatteryPlus: "battery +", check.BatteryMinus: "battery −",
		check.ResistorA: "resistor leg 1", check.ResistorB: "resistor leg 2", check.BoxOutput: "box output",
		"regulator-1": "reg 1", "regulator-2": "reg 2", "regulator-3": "reg 3", "regulator-4": "reg 4",
		check.PlusClamp: "clamp +", check.MinusClamp: "clamp −", check.RegulatorPlus: "reg +", check.RegulatorBody: "reg body", check.KeyOut: "key out",
		check.BoxGround: "box gnd", check.BoxFeed: "box feed", check.KillWire: "kill", check.CoilPrimary: "coil pin",
		check.SparkLead: "HT lead", check.CapScrew: "cap screw", check.CapEnd: "cap end", check.PlugTop: "plug top", check.PlugThread: "thread",
	}[t]
}
