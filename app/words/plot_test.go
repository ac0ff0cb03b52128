package words

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"coilbook/engine/quantity"
	"coilbook/engine/spec"
)

func TestFiguresOfPlots(t *testing.T) {
	for want, got := range map[string]string{
		"at rest":                     Speed(0),
		"3000\u00a0rpm":               Speed(3000),
		"13.06 to 14.61 V":            FromTo(quantity.Volts, 13.06, 14.61),
		"980 to 1240 V":               FromTo(quantity.Volts, 980, 1240),
		"−3.5\u00a0A":                 FigureOf(quantity.Amperes, -3.46, 1),
		"0.0\u00a0A":                  FigureOf(quantity.Amperes, -0.01, 1),
		"12.60 ± 0.12 V":              WithDoubt(quantity.Volts, 12.6, 0.12),
		"0.340 ± 0.020 MΩ":            WithDoubt(quantity.MegaOhms, 0.34e6, 0.02e6),
		"Earlier readings":            EarlierOf(""),
		"Earlier readings: Ox":        EarlierOf("Ox"),
		"–":                           LimitOf(spec.Verdict{}),
		"All others of the list (17)": ShareOthers(17),
	} {
		assert.Equal(t, want, got)
	}
}

func TestAgainstTheBandIsSaidInOneWord(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range []struct {
		o     spec.Outcome
		above bool
	}{{spec.InSpec, false}, {spec.CannotTell, false}, {spec.OutOfSpec, true}, {spec.OutOfSpec, false}} {
		word := Against(c.o, c.above)
		assert.False(t, word == "" || seen[word], word)
		seen[word] = true
	}
	assert.Equal(t, "higher", Against(spec.OutOfSpec, true))
	assert.Equal(t, "lower", Against(spec.OutOfSpec, false))
}

func TestDatesUnderAnAxis(t *testing.T) {
	day := time.Date(2026, 2, 3, 0, 0, 0, 0, time.UTC)
	assert.Equal(t, []string{"3 Feb", "Feb 26", "2026"}, []string{AxisDay(day, "day"), AxisDay(day, "month"), AxisDay(day, "year")})
}
