// Package transient follows a small switched circuit in time: windings with an
// emf behind resistance and inductance, capacitors, coupled coils, rectifier
// diodes, thyristors and switches, as on the bench of somebody who tests a
// generator.
//
// Every element is a conductance with a current source beside it, so that the
// unknowns are the node voltages alone. Steps are trapezoidal. A valve is a
// straight line above its knee and a leak below it; when it passes its knee the
// step is cut there and a very short backward-Euler step finds which valves
// conduct, and voltages that fit, before the next whole step. That is the damping
// of Marti and Lin (1989, from memory) with shorter steps: half-steps would cost
// more accuracy than all the rest.
//
// What does not conduct still leaks OffLeak, and every node leaks NodeLeak to
// ground, so that floating parts have a voltage. At rest both are smaller.
//
// Times are seconds, and all else is in SI units.
package transient

// The leaks that keep a circuit defined, in siemens: a valve or a switch that is
// off in a Run, a node to ground in a Run, and both in AtRest, where a reading of
// 100 MΩ must not suffer.
const (
	OffLeak  = 1e-9
	NodeLeak = 1e-11
	RestLeak = 1e-13
)

// LeastOhms is the floor of every resistance.
const LeastOhms = 1e-6
