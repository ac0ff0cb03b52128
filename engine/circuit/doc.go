// Package circuit is the mathematics of the forward model: what a generator, its
// leads, its rectifier and an ignition do by the laws of circuits, in closed form
// or from a table, quick enough to be asked many times a second.
//
// All is in SI units, plain float64, named by its unit. Nothing is allocated in a
// solve. The parts:
//
//   - Network: resistors and real supplies, what a meter reads between two nodes.
//   - Phasors: the same at one frequency, with inductance and phase.
//   - Arrangement.Charging: the mean current that a permanent-magnet generator
//     drives through a rectifier, whole or broken, into a fixed voltage.
//   - Frequency, EMF and the ideal rectifiers.
//   - Exciter: how a coil fills the capacitor of an ignition through a diode.
//
// The generator is linear: no saturation, no saliency, and a magnet that gives the
// same flux whatever the current. A large direct current in a winding, as behind a
// shorted diode, saturates real teeth, so a real fault current is below the one
// worked out here.
package circuit

//go:generate go run generate_tables.go
