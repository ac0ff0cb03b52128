package screen

import (
	"testing"

	"github.com/stretchr/testify/require"

	"coilbook/app/words"
	"coilbook/engine/quantity"
)

// The record keeps °C whatever the field is in: F = C·9/5 + 32, by definition.
func TestAirIsReadInTheChosenUnit(t *testing.T) {
	t.Cleanup(func() { words.WriteIn(quantity.Chosen{}) })
	for _, c := range []struct {
		fahrenheit bool
		text       string
		celsius    float64
	}{
		{false, "20", 20}, {false, "68 F", 20}, {false, "-4 °F", -20}, {true, "68", 20}, {true, "20 C", 20}, {true, "-40", -40}, {true, "140", 60}, {false, "21,5", 21.5},
	} {
		words.WriteIn(quantity.Chosen{Fahrenheit: c.fahrenheit})
		s := &setup{air: c.text}
		require.Empty(t, s.readAir(), c.text)
		require.InDelta(t, c.celsius, *s.form.Ambient, 1e-9, c.text)
	}
	for text, way := range map[string]string{"200": "140 °F", "61 C": "140 °F", "warm": "140 °F"} {
		s := &setup{air: text}
		words.WriteIn(quantity.Chosen{Fahrenheit: true})
		require.Contains(t, s.readAir(), way, text)
		require.Nil(t, s.form.Ambient)
	}
}

// A form that is opened in the other unit and kept as it is changes nothing, not
// even by rounding, and not after a slip that was taken back.
func TestAirThatIsNotTouchedStays(t *testing.T) {
	t.Cleanup(func() { words.WriteIn(quantity.Chosen{}) })
	words.WriteIn(quantity.Chosen{Fahrenheit: true})
	kept := 21.3
	s := &setup{air: words.Air(kept), airWas: words.Air(kept), given: &kept}
	require.Equal(t, "70.3", s.air)
	s.air = "7o"
	require.NotEmpty(t, s.readAir())
	s.air = "70.3"
	require.Empty(t, s.readAir())
	require.Equal(t, kept, *s.form.Ambient)
}
