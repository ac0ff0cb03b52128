package words

import "coilbook/engine/check"

// Steps that the sparks share. Fuel vapour and a spark at the plug hole are a fire; a lead
// that hangs free makes the voltage look for another way.
var (
	noFuel       = text("Outdoors, fuel tap shut, no smell of fuel.")
	heldOnMetal  = text("Press its thread firmly on bare engine metal with insulated pliers, far from plug hole and fuel.")
	neverFree    = text("Never let plug or lead hang free while it cranks: that kills the ignition box and hurts people.")
	crankAndLook = text("Key on, kill switch to run. The helper cranks three seconds. Look for a spark at the gap, in the shade.")
	sparkAnswer  = text("Yes: sparks jump again and again. No: none, or a single one.")
)

// lookSteps says what to look for, and what is a yes.
func lookSteps(l check.Look) []string {
	switch l {
	case check.FuseBlown:
		return []string{
			say("Key off. Take the main fuse out and hold it against the light."),
			say("Look for a strip that is broken or melted, or glass that is black inside."),
			say("Yes: broken or melted. No: whole from end to end."),
			say("Put back only a fuse of the same rating, never wire or foil."),
		}
	case check.PlugBurnt:
		return []string{
			say("Key off, plug apart. Shine a light into both halves."),
			say("Look for brown or melted plastic, black or green pins, and a pin that has slipped back."),
			say("Pull gently at each lead: none may move in its seat."),
			say("Yes: any of it. No: clean and firm."),
		}
	case check.SparkAtPlug:
		return spark(holeCovered(), say("Spark plug out of the head, its own cap pushed on."), heldOnMetal)
	case check.SparkAtGoodPlug:
		return spark(holeCovered(), say("Put a good cap on the lead, if you have one, and a plug that is known to be good."), heldOnMetal)
	case check.SparkAtLead:
		return spark(say("%s The spark plug stays in its hole.", noFuel), say("Key off. Turn the cap off the spark lead."),
			say("Hold the lead in insulated pliers, its end 5 mm from bare engine metal, far from fuel."))
	case check.SparkWithoutKill:
		return spark(holeCovered(), say("Key off. Take the kill wire off the ignition box and wrap its end: no key stops the engine now."),
			say("The spark plug stays out of the head, its cap pushed on."), heldOnMetal)
	case check.SparkWarm:
		return spark(holeCovered(), say("Right after the ride, gloves on: plug out, good cap and good plug on the lead, within two minutes."), heldOnMetal)
	}
	return nil
}

func spark(ready ...string) []string {
	return append(ready, neverFree, crankAndLook, sparkAnswer)
}

func holeCovered() string { return say("%s Lay a rag over the plug hole.", noFuel) }
