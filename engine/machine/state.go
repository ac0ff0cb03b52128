package machine

import (
	"coilbook/engine/check"
	"coilbook/engine/meter"
)

// State is what the machine is doing.
type State struct {
	Plug   check.Plug // the generator's plug
	Engine check.Engine
	Key    bool // the key is on; an engine that turns needs it
	Hot    bool // windings as after a run
	Off    check.Off
}

// Probing is two probes, a dial and a state of the machine.
type Probing struct {
	Red, Black check.Terminal
	Function   meter.Function
	State
}

// BoxPlugged reports whether exciter and pickup reach the box: an engine that runs
// by itself has that part of the plug together, whatever the charge leads have.
func (s State) BoxPlugged() bool { return s.Plug == check.Together || Running(s.Engine) > 0 }

// Of is how a check of the catalogue probes.
func Of(c check.Check) Probing {
	return Probing{
		Red: c.Red, Black: c.Black, Function: c.Function,
		State: State{Plug: c.Plug, Engine: c.Engine, Key: c.Key || c.Engine != check.Stopped, Hot: c.Hot || c.Method == check.HotWinding, Off: c.Off},
	}
}

// Speeds of an engine that runs, in rpm. Common practice, no source.
const (
	IdleSpeed  = 1500
	MidSpeed   = 3000
	QuickSpeed = 5000
)

// Running is the speed of an engine that runs by itself, 0 for others.
func Running(e check.Engine) float64 {
	switch e {
	case check.Idling:
		return IdleSpeed
	case check.At3000:
		return MidSpeed
	case check.At5000:
		return QuickSpeed
	}
	return 0
}

// InState is the machine as it is in a state: warm or cold, with what fails only
// when hot. What it gives has its windings' ohms at their temperature, its flux
// at its temperature, and nothing left to apply.
func (m Machine) InState(s State) Machine {
	t := m.Ambient
	if s.Hot {
		t += m.Rise
		if len(m.hotOnly) > 0 {
			m = m.struckHot()
		}
	}
	warm := 1 + copperPerKelvin*(t-20)
	for i := range m.Phases {
		m.Phases[i].Ohms *= warm
	}
	for i := range m.Pickups {
		m.Pickups[i].Ohms *= warm
	}
	m.Lighting.Ohms *= warm
	m.Exciter.Ohms *= warm
	m.Spark.Primary.Ohms *= warm
	m.Spark.Secondary.Ohms *= warm
	m.Regulator.Silicon.Volts -= voltsPerKelvin * (t - 20)
	// The magnets turn in the air and stay cooler than the copper: half the rise.
	// An assumption, no source.
	cooler := m.Ambient + (t-m.Ambient)/2
	m.Magnets.Flux *= m.Magnets.Strength * (1 + m.Magnets.PerKelv*(cooler-20))
	m.Magnets.PerKelv, m.Magnets.Strength, m.hotOnly = 0, 1, nil
	return m
}

// struckHot is apart from InState so that a machine that fails at no temperature
// is not put on the heap.
func (m Machine) struckHot() Machine {
	for _, f := range m.hotOnly {
		f.strike(&m)
	}
	return m
}

// voltsPerKelvin is what a silicon junction loses at a small current. The usual
// figure, from memory.
const voltsPerKelvin = 2e-3

// copperPerKelvin at 20 °C is IEC 60028's 0.00393 (from memory).
const copperPerKelvin = 0.00393
