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

func record() practice.Record {
	taken := func(red, black check.Terminal, f meter.Function, dial string, s machine.State) practice.Taken {
		return practice.Taken{Probing: machine.Probing{Red: red, Black: black, Function: f, State: s}, Dial: dial}
	}
	b := practice.Open(practice.Usual, 7)
	return practice.Record{
		Code: b.Code(), Named: b.Choices()[3],
		Taken: []practice.Taken{
			taken("charge-1", check.Core, meter.Ohms, "200 Ω", machine.State{Plug: check.Apart}),
			taken(check.BatteryPlus, check.BatteryMinus, meter.VoltsDC, "20 V", machine.State{Plug: check.Together, Engine: check.At5000, Key: true, Hot: true}),
			taken(check.BoxOutput, check.BoxGround, meter.VoltsAC, "", machine.State{Plug: check.Together, Engine: check.Cranking, Key: true}),
		},
		Placed: taken(check.BatteryPlus, check.Nowhere, meter.VoltsDC, "20 V", machine.State{Plug: check.Together}),
	}
}

func TestARecordComesBackWhole(t *testing.T) {
	want := record()
	text, err := want.Encode()
	require.NoError(t, err)
	got, err := practice.DecodeRecord(text)
	require.NoError(t, err)
	assert.Equal(t, want, got)
	for e := check.Stopped; e <= check.At5000; e++ {
		one := practice.Record{Code: want.Code, Placed: practice.Taken{Probing: machine.Probing{State: machine.State{Engine: e}}}}
		text, err := one.Encode()
		require.NoError(t, err)
		back, err := practice.DecodeRecord(text)
		require.NoError(t, err)
		assert.Equal(t, e, back.Placed.Engine)
	}
}

func TestABadRecordIsRefused(t *testing.T) {
	code := record().Code
	for text, want := range map[string]error{
		"": practice.ErrBadRecord, "{": practice.ErrBadRecord, "[]": practice.ErrBadRecord,
		`{"version":2}`:                  practice.ErrNewerRecord,
		`{"version":1,"code":"000-001"}`: practice.ErrBadRecord,
		`{"version":1,"code":"` + code + `","placed":{"function":"ohms","engine":"flying"}}`:            practice.ErrBadRecord,
		`{"version":1,"code":"` + code + `","placed":{"function":"lumens"}}`:                            practice.ErrBadRecord,
		`{"version":1,"code":"` + code + `","named":"gremlins","placed":{"function":"ohms"}}`:           practice.ErrBadRecord,
		`{"version":1,"code":"` + code + `","readings":[{"function":""}],"placed":{"function":"ohms"}}`: practice.ErrBadRecord,
	} {
		_, err := practice.DecodeRecord(text)
		assert.ErrorIs(t, err, want, text)
	}
	_, err := practice.DecodeRecord(`{"version":1,"code":"` + code + `","placed":{"function":"ohms"}}`)
	assert.NoError(t, err)
}
