// Package winding knows what copper windings measure: how resistance follows
// temperature, how much wire of which gauge a coil holds, what the leads of a
// star, a delta or separate coils read, sound and faulty, which faults three
// readings leave possible, and how small a fault they can show.
//
// A resistance is only comparable at a named temperature: ten kelvin move it by
// 4 %, more than an ohm range of ±(0.8 % + 5 digits of 0.1 Ω) leaves open on any
// coil above some 20 Ω (recomputed). So everything is compared at Reference,
// 20 °C, and a temperature that was guessed is paid for with RelativeDoubt
// rather than left out.
//
// It refuses to tell the gauge from a resistance, or the turns: one number cannot
// give two. The formulas are the resistance method of IEC 60034-1 and the wire
// gauge of ASTM B258 with the resistivity of IEC 60028, all from memory. Wire is
// taken to be copper; aluminium needs another Material and resistivity.
//
// It also refuses to tell a star from a delta by three ohm readings: every star
// has a delta that reads the same.
package winding
