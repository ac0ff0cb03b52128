package check_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"coilbook/engine/check"
	"coilbook/engine/meter"
)

// Each valve is read in the direction in which a sound diode conducts, plus and
// battery apart; a single lead has one thyristor and nothing below it.
func TestTheDiodesOfTheRegulator(t *testing.T) {
	for leads, want := range map[int]int{1: 1, 2: 4, 3: 6, 4: 8} {
		var got []check.ID
		for _, c := range check.Whole(check.Build{ChargeLeads: leads}) {
			if c.Function != meter.Diode || c.Instrument != check.Multimeter {
				continue
			}
			got = append(got, c.ID)
			lead := c.Leads[0]
			if c.Red == check.RegulatorBody {
				assert.Equal(t, check.ID(fmt.Sprintf("diode-ground-%d", lead)), c.ID)
				assert.Equal(t, check.RegulatorLead(lead), c.Black)
			} else {
				assert.Equal(t, check.ID(fmt.Sprintf("diode-plus-%d", lead)), c.ID)
				assert.Equal(t, check.RegulatorLead(lead), c.Red)
				assert.Equal(t, check.RegulatorPlus, c.Black)
			}
			assert.Equal(t, check.RegulatorApart, c.Plug, c.ID)
			assert.Contains(t, c.Needs, check.RegulatorParted, c.ID)
			assert.Contains(t, c.Traps, check.StillFed, c.ID)
			assert.Contains(t, c.Cautions, check.KeyOff, c.ID)
			assert.False(t, check.BareStator(c), c.ID)
			for _, m := range meter.Bundled() {
				r, ok := c.Dial(m)
				assert.True(t, ok)
				assert.Equal(t, "diode", r.Label)
			}
		}
		assert.Len(t, got, want, "%d leads: %v", leads, got)
	}
}
