package drawing

import (
	"flag"
	"os"
	"testing"

	"coilbook/engine/check"
)

var update = flag.Bool("update", false, "write the golden pictures anew")

// TestGolden compares a few pictures byte for byte with those that were looked
// at; one that differs is left beside as .got.
func TestGolden(t *testing.T) {
	b := check.DefaultBuild()
	four := check.Build{StatorPoles: 18, ChargeLeads: 4, GroundLead: true}
	pictures := map[string]Picture{"stator": Stator(b, statorLabel(b)), "verdict-out": VerdictMark("out")}
	for id, build := range map[check.ID]check.Build{
		"lead-zero": b, "charge-pair-3-1": b, "charge-core-4": four, "pickup": b, "pickup-gap": b, "exciter-cranking": b,
		"battery-dc": b, "battery-ac-swapped": b, "known-resistor": b, "volt-amp-known-1-2": b, "volt-amp-winding-3-4": four,
		"volt-amp-winding-1-core": {StatorPoles: 6, ChargeLeads: 1}, "hot-exciter": b, "hot-pickup": b,
		"exciter-peak": b, "pickup-peak": b, "box-peak": b,
		"battery-lamp": b, "battery-cranking": b, "drop-plus": b, "drop-ground": b, "drop-terminal": b, "key-off-current": b, "supply-key": b,
		"charge-ac-3-1": b, "plug-drop-2": b, "pickup-core": b, "pickup-cranking": b, "exciter-free-cranking": b,
		"kill-wire": b, "box-ground": b, "box-feed": four, "box-output": b, "coil-primary": b, "plug-cap": b, "plug-leak": b, "diode-plus-2": b, "diode-ground-3": four,
		"fuse": b, "plug-burnt": b, "spark": b, "spark-bare-lead": b, "spark-kill-off": b, "spark-warm": b,
	} {
		c, ok := check.Find(everyPlanned(build), id)
		if !ok {
			t.Fatalf("no check %s", id)
		}
		pictures[string(id)] = ForCheck(c, build, plainLabel, English())
	}
	for name, p := range pictures {
		t.Run(name, func(t *testing.T) { golden(t, "testdata/"+name+".svg", SVG(p)) })
	}
}

func golden(t *testing.T, file, got string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err == nil && string(want) == got {
		return
	}
	if err := os.WriteFile(file+".got", []byte(got), 0o644); err != nil {
		t.Error(err)
	}
	t.Errorf("%s differs from %s.got (%v)", file, file, err)
}
