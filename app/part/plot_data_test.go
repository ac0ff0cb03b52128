package part

import (
	"encoding/xml"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/uuid"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/app/drawing"
	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/machine"
	"coilbook/engine/practice"
	"coilbook/engine/quantity"
	"coilbook/engine/session"
	"coilbook/engine/spec"
	"coilbook/specs"
)

var update = flag.Bool("update", false, "write the golden plots anew")

// goldenPlot compares a picture with the one that was looked at; one that differs is
// left beside as .got.
func goldenPlot(t *testing.T, name string, p drawing.Picture) {
	t.Helper()
	file, got := "testdata/"+name+".svg", drawing.SVG(p)
	if *update {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
	}
	want, err := os.ReadFile(file)
	if err != nil || string(want) != got {
		_ = os.WriteFile(file+".got", []byte(got), 0o644)
		t.Errorf("%s differs from %s.got (%v)", file, file, err)
	}
}

// benchOn is a session of a day with readings.
func benchOn(t *testing.T, day time.Time, profile string, readings ...[2]string) assess.Bench {
	t.Helper()
	profiles, err := specs.Bundled()
	require.NoError(t, err)
	setup := session.DefaultSetup()
	setup.Name, setup.Profile = "Works moped", profile
	s := session.Session{ID: uuid.NewSHA1(uuid.Nil, []byte(day.String()))}
	add := func(e session.Entry) {
		e.ID, e.At = uuid.NewSHA1(s.ID, []byte{byte(len(s.Entries))}), day.Add(time.Duration(len(s.Entries))*time.Minute)
		s = s.Append(e)
	}
	add(session.Entry{Setup: &setup})
	for _, r := range readings {
		add(session.Entry{Reading: &session.Reading{Check: check.ID(r[0]), Text: r[1]}})
	}
	return assess.Open(s.Fold(), profiles)
}

var noon = time.Date(2026, 5, 1, 12, 0, 0, 0, time.UTC)

// firstNumber is the number that a cell of a table begins with.
func firstNumber(t *testing.T, cell string) float64 {
	t.Helper()
	var v float64
	_, err := fmt.Sscan(strings.ReplaceAll(strings.ReplaceAll(cell, "−", "-"), "\u00a0", " "), &v)
	require.NoError(t, err, cell)
	return v
}

var testBand = []diagnose.Band{{RPM: 0, Low: 12.2, High: 13}, {RPM: 1500, Low: 12.6, High: 13.6}, {RPM: 3000, Low: 13.4, High: 14.6}, {RPM: 5000, Low: 13.6, High: 14.8}}

// Every reading over speed is drawn where the table says, in the band or out of it
// with all its doubt, or on its edge.
func TestOutputIsTheSameInPictureAndTable(t *testing.T) {
	b := benchOn(t, noon, "", [2]string{"battery-rest", "12.6"}, [2]string{"battery-idle", "13.6"}, [2]string{"battery-3000", "11.9"}, [2]string{"battery-5000", "15.9"},
		[2]string{"charge-ac-1-2", "40.1"}, [2]string{"pickup", "200"}, [2]string{"drop-plus", "0.2"})
	readings := BatteryOver(b)
	require.Len(t, readings, 4)
	require.Len(t, OpenOver(b), 1)
	p, table := OutputPlot("Title", readings, testBand)
	staysInside(t, "output", p.Picture())
	require.Len(t, table.Rows, 4)
	for i, row := range table.Rows {
		require.Len(t, row, len(table.Head))
		assert.InDelta(t, p.Dots[i].Y, firstNumber(t, row[2]), 0.006, row[2])
		_, after, _ := strings.Cut(row[2], "± ")
		assert.InDelta(t, p.Dots[i].Doubt, firstNumber(t, after), 0.006)
		assert.InDelta(t, testBand[i].Low, firstNumber(t, row[3]), 0.006)
		assert.Contains(t, p.Said, row[2])
	}
	var tones, means []string
	for i, d := range p.Dots {
		tones, means = append(tones, d.Tone), append(means, table.Rows[i][4])
	}
	assert.Equal(t, []string{"in", "unsure", "out", "out"}, tones)
	assert.Equal(t, []string{"inside", "on the edge", "lower", "higher"}, means)
	assert.Len(t, OutputLegend(p), 4)
	p.Dots = p.Dots[:1]
	assert.Len(t, OutputLegend(p), 2)
	_, _, where := inBand(testBand, 2000, 12, 0.1)
	assert.Empty(t, where, "no band is known there")
	goldenPlot(t, "output", func() drawing.Picture { p, _ := OutputPlot("Title", readings, testBand); return p.Picture() }())
	assert.Empty(t, BatteryOver(benchOn(t, noon, "", [2]string{"battery-rest", "won't settle"}, [2]string{"pickup", "200"})))
}

// A reading is inside or outside only with all of its doubt.
func TestTheDoubtDecidesOnTheEdge(t *testing.T) {
	for _, c := range []struct {
		v, doubt float64
		want     spec.Outcome
		above    bool
	}{
		{14, 0.3, spec.InSpec, false}, {14.7, 0.2, spec.CannotTell, false}, {14.9, 0.2, spec.CannotTell, false}, {15.1, 0.2, spec.OutOfSpec, true},
		{13.7, 0.2, spec.CannotTell, false}, {13.5, 0.2, spec.CannotTell, false}, {13.3, 0.2, spec.OutOfSpec, false}, {14, 2, spec.CannotTell, false},
	} {
		o, above, where := inBand(testBand, 5000, c.v, c.doubt)
		assert.Equal(t, c.want, o, "%v ± %v", c.v, c.doubt)
		assert.Equal(t, c.above, above, "%v ± %v", c.v, c.doubt)
		assert.Equal(t, "13.60 to 14.80 V", where)
	}
}

// A table is well formed whatever its cells hold, with a scope for each heading.
func TestTablesAreWellFormed(t *testing.T) {
	table := Table{Head: []string{"<a>", "b & c"}, Rows: [][]string{{`"quoted"`, "1 < 2"}, {"row", "–"}}}
	got := table.markup("Title & <more>")
	d := xml.NewDecoder(strings.NewReader(got))
	cells, scopes := 0, 0
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		require.NoError(t, err)
		if e, ok := token.(xml.StartElement); ok && (e.Name.Local == "th" || e.Name.Local == "td") {
			cells++
			scopes += len(e.Attr)
		}
	}
	assert.Equal(t, 6, cells)
	assert.Equal(t, 4, scopes)
	assert.NotContains(t, got, "<a>")
	c := &Choose{ID: "x", Label: `"&`, List: []Choice{{"", "none"}, {"red", "<red>"}}}
	assert.Equal(t, `<select class="field" id="x" aria-label="&#34;&amp;"><option value="">none</option><option value="red">&lt;red&gt;</option></select>`, c.markup())
}

// The curves draw what the table says, and a machine whose fault is one of the
// ignition has one curve on the other.
func TestCurvesAreTheSameInPictureAndTable(t *testing.T) {
	b, err := practice.FromCode("800-4GM")
	require.NoError(t, err)
	amps := func(s machine.Supply) float64 { return s.BatteryAmps }
	p, table := CurvePlot("Current", quantity.Amperes, b.Curve(), amps)
	staysInside(t, "curve", p.Picture())
	require.Len(t, table.Rows, len(p.Lines[0].Points))
	for i, row := range table.Rows {
		assert.InDelta(t, p.Lines[1].Points[i].Y, firstNumber(t, row[1]), 0.051)
		assert.InDelta(t, p.Lines[0].Points[i].Y, firstNumber(t, row[2]), 0.051)
		assert.InDelta(t, p.Lines[0].Points[i].X, firstNumber(t, row[0]), 1e-9)
	}
	assert.True(t, p.Lines[0].Dashed && !p.Lines[1].Dashed)
	assert.Contains(t, p.Said, "5000")
	assert.True(t, p.Up.Low < 0 && p.Up.High > 0, "zero amps has its line")
	p, _ = CurvePlot("Volts", quantity.Volts, b.Curve(), func(s machine.Supply) float64 { return s.BatteryVolts })
	assert.Greater(t, p.Up.Low, 5.0, "volts need no zero")
}

// All bars together are everything there is, and the table has their figures.
func TestSharesSumToOne(t *testing.T) {
	faults, err := fault.Bundled()
	require.NoError(t, err)
	s := diagnose.Suspects{Unlisted: 0.05}
	left := 0.95
	for i, f := range faults.Faults[:12] {
		share := left / 2
		if i == 11 {
			share = left
		}
		s.Faults = append(s.Faults, diagnose.Suspect{Fault: f, Probability: share})
		left -= share
	}
	p, table := Shares(s)
	staysInside(t, "shares", p)
	sum := 0.0
	for _, shape := range p.Shapes {
		if r, ok := shape.(drawing.Rect); ok && r.H == barsHigh {
			sum += r.W / (barsRight - barsLeft)
		}
	}
	assert.InDelta(t, 1, sum, 0.02)
	require.Len(t, table.Rows, mostBars+2)
	assert.Equal(t, words.OffTheList, table.Rows[len(table.Rows)-1][0])
	assert.Equal(t, "5 %", table.Rows[len(table.Rows)-1][1])
	assert.Equal(t, words.ShareOthers(6), table.Rows[mostBars][0])
	for _, row := range table.Rows {
		assert.Contains(t, p.Label, words.BarSaid(row[0], row[1]))
	}
	goldenPlot(t, "shares", p)
	s.Faults = s.Faults[:1]
	_, table = Shares(s)
	assert.Len(t, table.Rows, 2, "no bar for others where there are none")
}

// A trend draws each reading on its day, an open line above all, and the latest limit.
func TestTrendsAreTheSameInPictureAndTable(t *testing.T) {
	visits := []assess.Bench{
		benchOn(t, noon, "ac-fed-ignition", [2]string{"pickup", "190"}, [2]string{"exciter-cranking", "64"}),
		benchOn(t, noon.AddDate(0, -3, 0), "ac-fed-ignition", [2]string{"pickup", "OL"}, [2]string{"exciter-cranking", "31"}),
		benchOn(t, noon.AddDate(-1, 0, 0), "ac-fed-ignition", [2]string{"pickup", "205"}, [2]string{"exciter-cranking", "66"}),
	}
	for _, track := range assess.Tracks(visits) {
		p, table := TrendPlot(track)
		staysInside(t, string(track.Check.ID), p.Picture())
		require.Len(t, table.Rows, 3)
		for i, row := range table.Rows {
			require.Len(t, row, len(table.Head))
			assert.True(t, i == 0 || p.Dots[i].X > p.Dots[i-1].X)
			assert.Contains(t, p.Said, row[0])
			if p.Dots[i].Open {
				assert.Equal(t, words.OpenLine, row[1])
				continue
			}
			assert.InDelta(t, p.Dots[i].Y, firstNumber(t, row[1]), 0.6, row[1])
		}
		assert.NotEmpty(t, p.Band, track.Check.ID)
		assert.Contains(t, legendNames(p), words.TrendBand)
		goldenPlot(t, "trend-"+string(track.Check.ID), p.Picture())
	}
}

// legendNames are the names in a trend's legend.
func legendNames(p *Plot) []string {
	var out []string
	for _, s := range TrendLegend(p) {
		out = append(out, s.Name)
	}
	return out
}

// Whatever time lies between two sessions, the marks are few, begin a day, a month or
// a year, and stand in order inside the axis.
func TestDatesOnTheAxisAreFewAndRound(t *testing.T) {
	for _, long := range []time.Duration{0, time.Hour, 20 * time.Hour, 3 * 24 * time.Hour, 13 * 24 * time.Hour, 45 * 24 * time.Hour, 200 * 24 * time.Hour,
		800 * 24 * time.Hour, 5 * 365 * 24 * time.Hour, 40 * 365 * 24 * time.Hour} {
		for _, first := range []time.Time{noon, time.Date(2025, 12, 31, 23, 59, 0, 0, time.UTC), time.Date(2024, 2, 29, 0, 0, 0, 0, time.UTC)} {
			a := days(first, first.Add(long))
			require.Less(t, a.Low, dayOf(first))
			require.Greater(t, a.High, dayOf(first.Add(long)))
			require.NotEmpty(t, a.Marks, "%v", long)
			require.LessOrEqual(t, len(a.Marks), 6, "%v", long)
			for i, m := range a.Marks {
				require.True(t, m.At >= a.Low && m.At <= a.High && m.At == float64(int(m.At)))
				require.True(t, i == 0 || m.At > a.Marks[i-1].At)
			}
			texts := []string{}
			for _, m := range a.Marks {
				require.False(t, slices.Contains(texts, m.Text), "%v: %s stands twice", long, m.Text)
				texts = append(texts, m.Text)
			}
		}
	}
}
