package session_test

import (
	"flag"
	"os"
	"strings"
	"testing"

	"github.com/google/uuid"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/session"
)

var update = flag.Bool("update", false, "write the fixture of version 4 anew")

// coloured is a session of version 4: leads with their colours.
func coloured() session.Session {
	e := setup(3, check.NoCharge)
	for _, l := range []session.Lead{{"charge-1", check.Yellow, check.Red}, {"charge-2", check.LightGreen, ""}, {"ground-lead", check.Black, check.White}} {
		e.Setup.Leads = session.Painted(e.Setup.Leads, l.Lead, check.Wire{Base: l.Colour, Stripe: l.Stripe})
	}
	return session.Session{ID: uuid.MustParse("5e551000-0000-4000-8000-000000000004")}.Append(entry(1, e), entry(2, reading("battery-rest", "12.4")))
}

func TestVersion4OpensForEver(t *testing.T) {
	const name = "testdata/session_v4.json"
	if *update {
		require.NoError(t, os.WriteFile(name, []byte(text(t, coloured())), 0o644))
	}
	b, err := os.ReadFile(name)
	require.NoError(t, err)
	got, err := session.Decode(b)
	require.NoError(t, err)
	assert.Equal(t, coloured(), got)
	assert.Equal(t, string(b), text(t, got), "it is written as it was read")
	assert.Equal(t, map[check.Terminal]check.Wire{"charge-1": {Base: check.Yellow, Stripe: check.Red}, "charge-2": {Base: check.LightGreen}, "ground-lead": {Base: check.Black, Stripe: check.White}},
		got.Fold().Setup.Wires())
}

func TestALeadIsPaintedAndStripped(t *testing.T) {
	var leads []session.Lead
	paint := func(lead check.Terminal, base, stripe check.Colour) {
		leads = session.Painted(leads, lead, check.Wire{Base: base, Stripe: stripe})
	}
	paint("charge-1", check.White, "")
	paint("charge-2", check.White, check.Green)
	before := leads
	paint("charge-1", check.Yellow, check.Yellow)
	assert.Equal(t, []session.Lead{{"charge-2", check.White, check.Green}, {"charge-1", check.Yellow, ""}}, leads, "a stripe in its own colour is none")
	assert.Equal(t, check.White, before[0].Colour, "what was handed out stays")
	paint("charge-2", "", check.Green)
	assert.Equal(t, []session.Lead{{"charge-1", check.Yellow, ""}}, leads)
}

func TestLeadsThatMakeNoSenseAreNamed(t *testing.T) {
	for field, leads := range map[string][]session.Lead{
		"setup.leads[0].lead":   {{"battery-plus", check.Red, ""}},
		"setup.leads[1].lead":   {{"charge-1", check.Red, ""}, {"charge-1", check.Blue, ""}},
		"setup.leads[0].colour": {{"charge-1", "", check.Red}},
		"setup.leads[0].stripe": {{"charge-1", check.Red, check.Red}},
		"setup.leads[2].stripe": {{"charge-1", check.Red, ""}, {"charge-2", check.Red, ""}, {"exciter", check.Red, check.Colour(strings.Repeat("x", 90))}},
	} {
		e := entry(1, setup(3, check.NoCharge))
		e.Setup.Leads = leads
		err := e.Valid()
		var f *session.FieldError
		require.ErrorAs(t, err, &f, field)
		assert.Equal(t, field, f.Field)
		assert.NotEmpty(t, f.WayOut)
		assert.Less(t, len(err.Error()), 200)
	}
}

// A reading that is not taken once more stands; a new one may be asked for again.
func TestAReadingThatIsNotTakenOnceMoreStands(t *testing.T) {
	leave := entry(3, session.Entry{Skip: &session.Skip{Check: "battery-rest", Again: true}})
	s := session.Session{ID: uuid.MustParse("5e551000-0000-4000-8000-000000000005")}.Append(entry(1, setup(3, check.NoCharge)), entry(2, reading("battery-rest", "12.4")), leave)
	b, err := session.Encode(s)
	require.NoError(t, err)
	s, err = session.Decode(b)
	require.NoError(t, err)
	st := s.Fold()
	assert.True(t, st.Once["battery-rest"])
	assert.Equal(t, "12.4", st.Current["battery-rest"].Reading.Text)
	assert.Empty(t, st.Earlier["battery-rest"])
	assert.Empty(t, s.Append(entry(4, reading("battery-rest", "12.5"))).Fold().Once)
	alone := session.Session{ID: s.ID}.Append(entry(1, setup(3, check.NoCharge)), leave).Fold()
	assert.NotNil(t, alone.Current["battery-rest"].Skip, "with nothing read before it is a check that cannot be done")
}
