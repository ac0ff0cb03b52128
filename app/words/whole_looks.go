package words

import "coilbook/engine/check"

// Steps that the sparks share. Fuel vapour and a spark at the plug hole are a fire; a lead
// that hangs free makes the voltage look for another way.
const (
	noFuel       = "Outdoors, fuel tap shut, no smell of fuel."
	holeCovered  = noFuel + " Lay a rag over the plug hole."
	heldOnMetal  = "Press its thread firmly on bare engine metal with insulated pliers, far from plug hole and fuel."
	neverFree    = "Never let plug or lead hang free while it cranks: that kills the ignition box and hurts people."
	crankAndLook = "Key on, kill switch to run. The helper cranks three seconds. Look for a spark at the gap, in the shade."
	sparkAnswer  = "Yes: sparks jump again and again. No: none, or a single one."
)

// lookSteps says what to look for, and what is a yes.
func lookSteps(l check.Look) []string {
	switch l {
	case check.FuseBlown:
		return []string{
			"Key off. Take the main fuse out and hold it against the light.",
			"Look for a strip that is broken or melted, or glass that is black inside.",
			"Yes: broken or melted. No: whole from end to end.",
			"Put back only a fuse of the same rating, never wire or foil.",
		}
	case check.PlugBurnt:
		return []string{
			"Key off, plug apart. Shine a light into both halves.",
			"Look for brown or melted plastic, black or green pins, and a pin that has slipped back.",
			"Pull gently at each lead: none may move in its seat.",
			"Yes: any of it. No: clean and firm.",
		}
	case check.SparkAtPlug:
		return spark(holeCovered, "Spark plug out of the head, its own cap pushed on.", heldOnMetal)
	case check.SparkAtGoodPlug:
		return spark(holeCovered, "Put a good cap on the lead, if you have one, and a plug that is known to be good.", heldOnMetal)
	case check.SparkAtLead:
		return spark(noFuel+" The spark plug stays in its hole.", "Key off. Turn the cap off the spark lead.",
			"Hold the lead in insulated pliers, its end 5 mm from bare engine metal, far from fuel.")
	case check.SparkWithoutKill:
		return spark(holeCovered, "Key off. Take the kill wire off the ignition box and wrap its end: no key stops the engine now.",
			"The spark plug stays out of the head, its cap pushed on.", heldOnMetal)
	case check.SparkWarm:
		return spark(holeCovered, "Right after the ride, gloves on: plug out, good cap and good plug on the lead, within two minutes.", heldOnMetal)
	}
	return nil
}

func spark(ready ...string) []string {
	return append(ready, neverFree, crankAndLook, sparkAnswer)
}
