package machine_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"coilbook/engine/machine"
)

// What a fault leads to sits on the same lead: its phase, its pin, its diode to ground.
func TestASecondFaultSitsBesideTheFirst(t *testing.T) {
	usual := machine.Usual()
	delta, two, half, single := usual, usual, usual, usual
	delta.Charge, two.Charge, single.Charge = machine.Delta, machine.TwoPhase, machine.SinglePhase
	half.Charge, half.Regulating = machine.GroundedEnd, machine.HalfWave
	for _, c := range []struct {
		first machine.Kind
		at    int
		with  machine.Kind
		build machine.Build
		want  int
	}{
		{machine.PhaseToCore, 2, machine.DiodeIsShorted, usual, 5},
		{machine.PhaseToCore, 3, machine.DiodeIsShorted, delta, 6},
		{machine.PhaseToCore, 2, machine.DiodeIsShorted, two, 7},
		{machine.PhaseToCore, 1, machine.DiodeIsShorted, single, 3},
		{machine.PhaseToCore, 1, machine.DiodeIsShorted, half, 0},
		{machine.ChargePin, 3, machine.PhaseShorted, usual, 3},
		{machine.ChargePin, 2, machine.PhaseShorted, single, 1},
		{machine.ChargePin, 3, machine.PhaseShorted, two, 2},
		{machine.ChargePin, 1, machine.PhaseShorted, half, 1},
		{machine.DiodeIsShorted, 5, machine.ChargePin, usual, 2},
		{machine.NoCharging, 1, machine.Sulphated, usual, 1},
		{machine.CellShorted, 1, machine.NoCharging, half, 1},
	} {
		what := fmt.Sprintf("%s at %d of a %s with %s", c.first, c.at, c.build.Charge, c.with)
		at := machine.Fault{Kind: c.first, At: c.at}.Beside(c.with, c.build, machine.NewChance(3))
		require.Equal(t, c.want, at, what)
		require.Equal(t, c.want > 0, machine.Fault{Kind: c.with, At: at}.Suits(c.build), what)
	}
	seen := map[int]bool{}
	luck := machine.NewChance(1)
	for range 60 {
		seen[machine.Fault{Kind: machine.Sulphated}.Beside(machine.PhaseOpen, usual, luck)] = true
	}
	require.Len(t, seen, 3, "what sits on no lead leads to any")
}
