package practice_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/practice"
)

// A reading at an unplugged regulator is kept as it was taken, and older records,
// which know nothing of it, are as they were.
func TestAnUnpluggedRegulatorIsKept(t *testing.T) {
	at := practice.Taken{Dial: "diode", Probing: machine.Probing{
		Red: check.RegulatorBody, Black: check.RegulatorLead(1), Function: meter.Diode, State: machine.State{Plug: check.RegulatorApart}}}
	together, apart := at, at
	together.Plug, apart.Plug = check.Together, check.Apart
	in := practice.Record{Code: "800-4GM", Taken: []practice.Taken{at, together, apart}, Placed: at}
	text, err := in.Encode()
	require.NoError(t, err)
	out, err := practice.DecodeRecord(text)
	require.NoError(t, err)
	assert.Equal(t, in, out)
	free := practice.Probe{Probing: at.Probing}
	plugged := practice.Probe{Probing: together.Probing}
	assert.Greater(t, free.Minutes(&plugged), (practice.Probe{Probing: apart.Probing}).Minutes(&plugged), "there are more plugs to part")
}
