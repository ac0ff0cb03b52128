package screen

import (
	"testing"

	"github.com/google/uuid"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/session"
)

func formOf(s meter.Sheet) *meterForm {
	m := &meterForm{}
	m.start("", s, nil)
	return m
}

func TestEveryClassAndCountGivesADataSheet(t *testing.T) {
	for _, class := range meter.Bundled() {
		for _, counts := range meter.SheetCounts() {
			s := sheetFor(class, counts)
			read, problem, _ := formOf(s).read()
			assert.Empty(t, problem, "%s %d", class.ID, counts)
			assert.ElementsMatch(t, s.Lines, read.Lines)
			for _, f := range meter.Functions() {
				assert.NotEmpty(t, statedFor(s, f), "%s %d %s", class.ID, counts, f)
			}
		}
		assert.Equal(t, meter.SheetOf(class), sheetFor(class, class.Counts))
	}
}

func TestAWrongFigureNamesItsLine(t *testing.T) {
	m := formOf(meter.SheetOf(meter.Cheap()))
	on := m.lines[1] // 20 Ω, which this class leaves out, stands first
	require.Equal(t, "200 Ω", on.label)
	for _, text := range []string{"", "x", "-1", "21", "0.8.1"} {
		on.percent = text
		_, problem, at := m.read()
		assert.Equal(t, "200 Ω range, percent: type 0 to 20.", problem, text)
		assert.Equal(t, meter.Ohms, at)
	}
	on.percent = "0,9"
	s, problem, _ := m.read()
	require.Empty(t, problem)
	assert.Equal(t, 0.9, s.Lines[0].Percent)
	m.acLow = "fast"
	_, problem, at := m.read()
	assert.Equal(t, "AC accuracy, from: type 1 to 1000 Hz.", problem)
	assert.Equal(t, meter.VoltsAC, at)
}

func TestAKnownResistorBringsItsCheck(t *testing.T) {
	m := formOf(meter.SheetOf(meter.Cheap()))
	m.resistor, m.tolerance = "100", "1"
	s := session.Setup{Kit: &session.Kit{AdapterMicrofarads: 0.1}}
	require.Empty(t, m.readKit(&s))
	require.Empty(t, m.readKit(&s), "once more, and it still stands once")
	assert.Equal(t, []check.Method{check.ResistorCheck}, s.Methods)
	assert.Equal(t, &session.Kit{ResistorOhms: 100, ResistorPercent: 1, AdapterMicrofarads: 0.1}, s.Kit)
	m.resistor = ""
	require.Empty(t, m.readKit(&s))
	assert.Empty(t, s.Methods)
	assert.Equal(t, &session.Kit{AdapterMicrofarads: 0.1}, s.Kit)
	m.resistor, m.tolerance = "100", ""
	assert.NotEmpty(t, m.readKit(&s))
}

func TestPlacesOfMeters(t *testing.T) {
	id := uuid.MustParse("019ae000-0000-7000-8000-000000000001")
	for path, want := range map[string]place{
		"meters": {name: "meters"}, "meter/new": {name: "meter"}, meterPath(id): {name: "meter", session: id},
		"meter": {name: "nowhere"}, "meter/1": {name: "nowhere"}, "meter/" + uuid.Nil.String(): {name: "nowhere"},
	} {
		assert.Equal(t, want, placeOf(path), path)
	}
}
