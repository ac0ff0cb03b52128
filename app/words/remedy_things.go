package words

import (
	"coilbook/engine/session"
)

// What parts must match and never meet. All of it: common practice, no source.

var (
	samePlug     = text("The same plug, with every lead on the same pin. Go by what each lead reads, not by its colour.")
	neverHalf    = text("A regulator for one lead, which wants the winding's other end on metal, with a winding that floats: its current has no way back.")
	neverFull    = text("A regulator for two or more leads with a winding whose end sits on metal: it would short through the regulator.")
	neverNoFeed  = text("An ignition box that an exciter feeds with a stator that has none: no spark, whatever else you change.")
	neverBatFed  = text("A box that an exciter feeds with battery volts on its feed pin, or a box for battery volts on an exciter, which gives over 100 V.")
	neverLithium = text("A lithium battery with a regulator that goes above about 14.6 V or a charger made for lead-acid alone.")
	neverUnread  = text("A new stator with a regulator that was not read: a shorted diode burns the next stator too.")
	neverNoBat   = text("A running engine with its battery taken off: the volts run away and take lamps and box along.")
)

var statorThing = thing{
	matchOn: func(s session.Setup) []string {
		b := s.Build
		out := []string{
			counted(s, "statorPoles", say("%d poles around the core", b.StatorPoles), say("count yours")),
			counted(s, "chargeLeads", chargeLeadsWords(b.ChargeLeads), say("count yours")),
		}
		if b.ChargeLeads == 3 {
			out = append(out, say("Star or delta need not match, and does not show from outside. The ohms between leads should lie near those of the old one when it was good."))
		}
		out = append(out, say("Outer and inner diameter, height and screw holes: measure the old core with a calliper."))
		exciter := say("Without an exciter: yours has none, the battery feeds the ignition")
		if b.Exciter {
			exciter = say("With an exciter (one pole wrapped in tape): it feeds your ignition box")
		}
		out = append(out, counted(s, "exciter", exciter, say("look at yours")))
		if b.Pickup {
			out = append(out, say("Is your pickup on the same plate, or in the same plug? Then the new one must bring one along."))
		}
		return append(out, samePlug, say("The same flywheel goes back over it: poles of core and magnets belong together."))
	},
	neverOn: func(s session.Setup) []string {
		out := []string{neverUnread}
		if s.Build.Exciter {
			out = append(out, neverNoFeed)
		}
		return append(out, halfOrFull(s))
	},
}

// counted writes what is known of the build, or asks to look once more.
func counted(s session.Setup, field, what, ask string) string {
	if unsureOf(s, field) {
		return say("%s. You were not sure: %s first.", what, ask)
	}
	return what + "."
}

func chargeLeadsWords(leads int) string {
	switch leads {
	case 1:
		return say("One charge lead, the winding's other end on the core (single phase)")
	case 2:
		return say("Two charge leads with one winding between them, free of the core (single phase)")
	case 3:
		return say("Three charge leads of one thickness, free of the core (three-phase)")
	}
	return say("Four charge leads, two windings that do not touch (two phases)")
}

func halfOrFull(s session.Setup) string {
	if s.Build.GroundedEnd() {
		return neverFull
	}
	return neverHalf
}

var regulatorThing = thing{
	matchOn: func(s session.Setup) []string {
		n := s.Build.ChargeLeads
		leads := say("%d AC leads", n)
		if n == 1 {
			leads = say("One AC lead")
		}
		return []string{
			counted(s, "chargeLeads", leads+", "+phaseWords(n), say("count yours")),
			say("6 V or 12 V as the battery, with a set point of about 14.2 to 14.6 V for a 12 V lead-acid battery."),
			say("The same way to ground: through its body, or by a lead of its own."),
			say("Shunt (it shorts what is too much) or series (it cuts off): hardly ever printed on it. Both work on a winding with magnets; a series one keeps the stator cooler."),
			say("Its wire for sensing, if the old one has one: it belongs behind the key."),
			say("Fins of the same size or larger, in the same wind, on bare metal."),
			samePlug,
		}
	},
	neverOn: func(s session.Setup) []string {
		out := []string{halfOrFull(s), neverLithium, neverNoBat}
		if s.Build.ChargeLeads == 3 {
			out = append(out, say("A single-phase regulator with three leads, one of them left bare: a third is lost, and the bare lead shorts."))
		}
		return out
	},
}

func phaseWords(leads int) string {
	switch leads {
	case 3:
		return say("three-phase")
	case 4:
		return say("two windings")
	}
	return say("single-phase")
}

var batteryThing = thing{
	match: []text{
		"The volts, and ampere-hours as printed on the old one or a little more.",
		"The kind: lead-acid stays lead-acid, unless the regulator is made for another.",
		"The size of the tray, the side of the plus post, and a place for the vent hose.",
		"Starting current as printed, where the machine has an electric starter.",
	},
	neverOn: func(session.Setup) []string {
		return []string{neverLithium, say("A new battery with a charging voltage that was not read: above 15 V it boils, below 13 V it stays empty.")}
	},
}

var chargerThing = thing{
	match: []text{
		"A charger for the battery's kind that gives about a tenth of its ampere-hours: 0.7 A for 7 Ah.",
		"Nothing to buy before you know why it went flat.",
	},
	neverOn: func(session.Setup) []string {
		return []string{neverLithium, say("A closed room with a battery on charge: the gas burns.")}
	},
}

var flywheelThing = thing{
	match: []text{
		"The taper and its key, and the thread for the puller.",
		"The count of magnets, and the bump for the pickup: its length and place set the moment of the spark.",
		"Height and inner diameter, and the screws of the starter clutch.",
	},
	never: []text{"A flywheel made for another stator: magnets and poles that do not match give little, and spark at the wrong moment."},
}

var pickupThing = thing{
	match: []text{
		"Leads: two, or one and its own metal.",
		"Ohms within about a fifth of a good old one, at the same warmth.",
		"Screw holes, the height of its tip, and the lead's length.",
		"The way round: the same lead on the same pin of the plug.",
	},
	never: []text{
		"A pickup with its two leads swapped: it sparks late, kicks back or misfires.",
		"A pickup for another kind of box: one that counts a long bump does not fire on a short one.",
	},
}

var gapThing = thing{
	matchOn: func(session.Setup) []string {
		return []string{say("A feeler gauge. The manual has the gap; common is %s.", gap(0.3e-3, 1e-3))}
	},
	never: []text{"A tip that touches: turn the flywheel once around by hand before you start it."},
}

var boxThing = thing{
	matchOn: func(s session.Setup) []string {
		feed := say("Fed by the battery behind the key (DC)")
		if s.Build.Exciter {
			feed = say("Fed by the exciter (AC)")
		}
		return []string{
			counted(s, "exciter", feed, say("look for a wrapped pole")),
			say("Pins: their count, their order, and what each is for."),
			say("The pickup's way round: the same half-wave first."),
			say("The kind of coil it drives: a capacitor box or a switching box."),
			say("Its own speed limit and advance, as the manual says."),
		}
	},
	neverOn: func(s session.Setup) []string {
		out := []string{neverBatFed, say("A capacitor box with a coil for a switching box, or the other way round: weak spark, or a burnt box.")}
		if s.Build.Exciter {
			out = append(out, neverNoFeed)
		}
		return out
	},
}

var switchThing = thing{
	match: []text{"A switch of the same sense: most such machines stop by closing to ground, some by opening."},
	never: []text{
		"A switch that opens in the place of one that closes: the engine cannot be stopped.",
		"The kill wire with battery plus: it kills the ignition box.",
	},
}

var coilThing = thing{
	matchOn: func(s session.Setup) []string {
		primary := say("Small pin to ground some 2 to 5 Ω if the box only switches the battery; under 1 Ω if it is a capacitor box.")
		if s.Build.Exciter {
			primary = say("Small pin to ground well under 1.5 Ω, as capacitor boxes want: an exciter feeds yours.")
		}
		return []string{
			primary,
			say("One spark lead or two."),
			say("How its core is grounded: by its screws, or by a second small pin."),
			say("Holes, and a lead that reaches the plug without a stretch."),
		}
	},
	never: []text{
		"A coil of a switching box with a capacitor box: weak spark.",
		"A coil of under 1 Ω where the battery is switched through it: coil or box burn.",
	},
}

var capThing = thing{
	match: []text{
		"Its ohms as printed, 5 kΩ on most.",
		"For the spark plug's top: with a nut or the bare thread.",
		"Its angle and rubber: water must stay out.",
	},
	never: []text{
		"A cap or plug without any resistor with an electronic box: its noise upsets the box.",
		"A spark lead with a wire core and a cap made for another kind: the screw does not bite.",
	},
}

var sparkPlugThing = thing{
	matchOn: func(session.Setup) []string {
		return []string{say("Thread, reach and seat as the old one, by the manual."), say("Heat range as the manual says, and its gap: %s on most.", gap(0.6e-3, 0.8e-3)), say("With or without resistor as before.")}
	},
	never: []text{"A plug with a longer reach: the piston meets it.", "A hotter plug as a cure for soot: look for the rich mixture first."},
}

var fuseThing = thing{
	match: []text{"The same kind and the same amperes as printed, and one to spare."},
	never: []text{"A larger fuse, foil or wire in its holder: the harness burns in its place."},
}

var pinThing = thing{
	match: []text{
		"Pins and plug of the same width, for the thickness of the leads: 1.5 mm² or more for charge leads.",
		"A crimping tool, and grease against water.",
	},
	never: []text{"Solder alone on a charge lead's pin: it runs out when the pin grows hot.", "Old brown plastic with new pins: it has lost its grip."},
}

var wireThing = thing{
	match: []text{
		"Wire of the same thickness or one more: 2.5 mm² from regulator to battery on most.",
		"Crimps or solder, and tube that shrinks over them.",
	},
	never: []text{"A new wire around the fuse: it must pass through it."},
}

var contactThing = thing{
	match: []text{"A wire brush or emery, a tooth washer, grease.", "A new eyelet or strap of the same thickness, if the old one is green or stiff."},
	never: []text{"Paint, or a stainless washer alone, between a ground and its metal."},
}

var insulationThing = thing{
	match: []text{"Heat-proof tape or sleeve: near the engine it must stand 150 °C.", "A clip or tie, so that it does not chafe again."},
	never: []text{"Household tape on anything inside the engine cover: it melts and creeps."},
}

var solderThing = thing{
	match: []text{"Solder for 200 °C and more, flux for enamelled wire, an iron of 60 W or more.", "Heat-proof sleeve and lacing cord."},
	neverOn: func(session.Setup) []string {
		return []string{say("Soft plumbing solder with acid flux in a winding: it eats the wire."), neverUnread}
	},
}

var nothingThing = thing{
	match: []text{"Nothing yet: find the circuit first, then mend or replace what is in it."},
	never: []text{"A meter in the 10 A socket with the starter: it is gone at once."},
}
