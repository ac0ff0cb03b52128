package part

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"coilbook/app/drawing"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

var inf = math.Inf(1)

// between is a verdict on a resistance with a limit in the given unit.
func between(u quantity.Unit, low, high, value, std float64) spec.Verdict {
	l := spec.Limit{Measurand: spec.PickupResistance, Kind: quantity.Resistance, Unit: u, Low: low, High: high}
	v := spec.Verdict{Value: value, Std: std, HasValue: true, Shown: value, HasShown: true, Limit: l, HasLimit: true}
	v.Outcome, v.Probability = spec.DecideBetween(value, std, low, high)
	return v
}

func shown(v spec.Verdict, shown float64) spec.Verdict {
	v.Shown, v.HasShown = shown, true
	return v
}

func because(v spec.Verdict, r spec.Reason) spec.Verdict {
	v.Outcome, v.Probability, v.Reason = spec.CannotTell, 0.5, r
	return v
}

func ratio(value, std float64) spec.Verdict {
	v := between(quantity.Unit{Name: "%", Factor: 0.01}, -0.1, 0.1, value, std)
	v.Limit.Low, v.Limit.Ratio, v.HasShown = -inf, true, false
	return v
}

func warm(from, value float64) spec.Verdict {
	v := between(quantity.DegreesC, from, 155, value, 4)
	v.Limit.Kind = quantity.Temperature
	return v
}

func openLimit(value, std float64) spec.Verdict {
	v := between(quantity.MegaOhms, 2e6, inf, value, std)
	v.Limit.Open = true
	return v
}

// unread is a verdict on a display that showed no number.
func unread(v spec.Verdict, o spec.Outcome, r spec.Reason) spec.Verdict {
	v.Outcome, v.Reason, v.HasValue, v.HasShown = o, r, false, false
	v.Probability = map[spec.Outcome]float64{spec.InSpec: 1, spec.CannotTell: 0.5}[o]
	return v
}

var bars = []struct {
	name string
	v    spec.Verdict
}{
	{"in", between(quantity.Ohms, 100, 200, 150, 8)},
	{"out low", between(quantity.Ohms, 100, 200, 60, 8)},
	{"out high", between(quantity.Ohms, 100, 200, 260, 8)},
	{"straddling low", between(quantity.Ohms, 100, 200, 103, 9)},
	{"straddling high", between(quantity.Ohms, 100, 200, 204, 9)},
	{"too coarse", between(quantity.Ohms, 100, 200, 150, 60)},
	{"far coarser", between(quantity.Ohms, 100, 200, 150, 600)},
	{"narrow limit", between(quantity.Ohms, 149.5, 150.5, 150, 0.2)},
	{"long figures", between(quantity.KiloOhms, 123450.55, 123456.25, 123453, 60)},
	{"tiny doubt", between(quantity.Ohms, 100, 200, 150, 0.1)},
	{"certain", between(quantity.Ohms, 100, 200, 150, 0)},
	{"far outside", between(quantity.Ohms, 100, 200, 1e7, 2)},
	{"far below", between(quantity.Ohms, 1000, 1100, 3, 0.1)},
	{"leads taken off", shown(between(quantity.Ohms, 0.05, 5, 0.6, 0.05), 0.9)},
	{"wide, low", shown(between(quantity.Ohms, 0.05, 5, 0.15, 0.05), 0.5)},
	{"wide, about zero", shown(between(quantity.Ohms, 0.05, 5, 0.02, 0.06), 0.3)},
	{"wide, high", between(quantity.Ohms, 0.05, 5, 12, 0.4)},
	{"wide, far below", between(quantity.Ohms, 0.05, 5, 1e-5, 1e-6)},
	{"wide, straddling", between(quantity.Ohms, 0.1, 4, 4.1, 0.3)},
	{"negative", because(between(quantity.Ohms, 0.05, 5, -0.5, 0.08), spec.NegativeOhms)},
	{"bad leads", because(between(quantity.Ohms, 100, 200, 190, 12), spec.BadLeads)},
	{"at least, in", between(quantity.Volts, 40, inf, 62, 4)},
	{"at least, out", between(quantity.Volts, 40, inf, 3, 0.8)},
	{"at least, straddling", shown(between(quantity.Volts, 80, inf, 86, 6), 70)},
	{"at least, far over", between(quantity.Volts, 40, inf, 300, 4)},
	{"at most, in", between(quantity.Ohms, -inf, 1, 0.3, 0.08)},
	{"at most, out", between(quantity.Ohms, -inf, 1, 1.6, 0.1)},
	{"at most, about zero", between(quantity.Ohms, -inf, 1, -0.05, 0.1)},
	{"at most, far over", between(quantity.Ohms, -inf, 1, 40, 0.4)},
	{"open, leaks", openLimit(3e5, 4e4)},
	{"open, straddling", openLimit(2.1e6, 2e5)},
	{"open as must", unread(openLimit(0, 0), spec.InSpec, spec.OpenAsMust)},
	{"line broken", unread(between(quantity.Ohms, 0.05, 5, 0, 0), spec.OutOfSpec, spec.LineBroken)},
	{"past range", unread(between(quantity.Volts, 40, inf, 0, 0), spec.InSpec, spec.PastRange)},
	{"over any range", unread(between(quantity.Volts, 5, 30, 0, 0), spec.OutOfSpec, spec.Above)},
	{"range too low", unread(between(quantity.Ohms, 100, 1000, 0, 0), spec.CannotTell, spec.RangeTooLow)},
	{"warm", warm(5, 90)},
	{"below freezing", warm(-5, 20)},
	{"cooler when hot", warm(15, 9)},
	{"ratio, in", ratio(0.02, 0.02)},
	{"ratio, out", ratio(-0.23, 0.03)},
	{"ratio, straddling", ratio(-0.09, 0.03)},
}

// TestPreview writes a page with the bars to the file named by BAR_PREVIEW, for
// the eye.
func TestPreview(t *testing.T) {
	file := os.Getenv("BAR_PREVIEW")
	if file == "" {
		t.Skip("BAR_PREVIEW names no file")
	}
	var page strings.Builder
	page.WriteString("<!doctype html><meta charset=utf-8><style>")
	for _, name := range []string{"style.css", "drawing.css"} {
		css, err := os.ReadFile("../../web/" + name)
		if err != nil {
			t.Fatal(err)
		}
		page.Write(css)
	}
	page.WriteString("body{display:flex}section{width:372px;padding:10px;background:var(--paper);color:var(--ink)}p{font-size:11px;margin:9px 0 0}</style>")
	for _, theme := range []string{"light", "dark"} {
		for half := range 2 {
			fmt.Fprintf(&page, "<section data-theme=%s>", theme)
			for i, c := range bars {
				if i*2/len(bars) == half {
					page.WriteString("<p>" + c.name + "</p>" + drawing.SVG(LimitBar(c.v)))
				}
			}
			page.WriteString("</section>")
		}
	}
	if err := os.WriteFile(file, []byte(page.String()), 0o600); err != nil {
		t.Fatal(err)
	}
}
