package practice

import (
	"time"

	"coilbook/engine/check"
	"coilbook/engine/machine"
	"coilbook/engine/meter"
	"coilbook/engine/rig"
	"coilbook/engine/session"
)

// Example sessions tell an invented story: a workshop's quad that has stopped
// charging, the same quad after its stator was wound anew, and a garden scooter
// without a spark. Their readings are simulated.
func Examples() ([]session.Session, error) {
	const warm = 18.0
	quad := machine.Drawn(machine.Usual(), machine.NewChance(1889))
	quad.Ambient = warm
	rewound := quad // the same machine with other copper on its charge winding
	rewound.Phases = machine.Drawn(machine.Usual(), machine.NewChance(1890)).Phases
	small := machine.Build{
		MagnetPoles: 8, StatorPoles: 8, Charge: machine.SinglePhase, Regulating: machine.Shunt, Battery: machine.Flooded, Volts: 12,
		Ignition: machine.ACFed, Pickups: 1, GroundLead: true,
	}
	scooter := machine.Drawn(small, machine.NewChance(1891))
	bench := rig.DrawnInstrument(meter.Cheap(), machine.NewChance(3))
	air := warm
	var out []session.Session
	for _, e := range []struct {
		m     machine.Machine
		setup session.Setup
		at    time.Time
	}{
		{
			quad.With(machine.Fault{Kind: machine.PhaseToCore, At: 2, Size: 0.4}),
			session.Setup{Name: "Example: workshop quad", Aim: check.NoCharge, Ambient: &air},
			time.Date(2026, 5, 4, 9, 30, 0, 0, time.UTC),
		},
		{
			rewound,
			session.Setup{Name: "Example: workshop quad, stator rewound", Aim: check.Bench, Ambient: &air,
				Methods: []check.Method{check.VoltAmp}, Kit: &session.Kit{ResistorOhms: Kit.ResistorOhms, ResistorPercent: 1}},
			time.Date(2026, 5, 18, 16, 0, 0, 0, time.UTC),
		},
		{
			scooter.With(machine.Fault{Kind: machine.ExciterOpen}),
			session.Setup{Name: "Example: garden scooter", Aim: check.NoSpark},
			time.Date(2026, 6, 2, 18, 15, 0, 0, time.UTC),
		},
	} {
		e.setup.Build, e.setup.Meter, e.setup.Profile = e.m.Build.Known(), bench.Meter.ID, "ac-fed-ignition"
		s, err := Recorded(e.m, bench, e.setup, e.at)
		if err != nil {
			return nil, err
		}
		out = append(out, s)
	}
	return out, nil
}
