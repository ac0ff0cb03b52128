package words

import (
	"coilbook/engine/check"
)

// Card is a titled list of sentences.
type Card struct {
	Title   string
	Lines   []string
	Warning bool
}

// About is the text of the about screen.
func About() []Card {
	return []Card{
		{Title: say("Before you touch anything"), Warning: true, Lines: safety()},
		{Title: say("How it judges"), Lines: []string{
			say("A reading is taken with the doubt of your meter, leads and the winding's temperature."),
			say("In spec and out of spec are said only when at least 95 % sure (after JCGM 106 and ISO 14253-1). Otherwise it says “cannot tell”, and what would decide it."),
			say("The bundled limits are wide, common practice, and not the figures of your machine. The service manual's figure is better."),
			say("A meter can find bad insulation. It cannot prove good insulation, and it cannot see a few shorted turns."),
		}},
		{Title: say("The practice bench"), Lines: []string{
			Simulated,
			say("On it nothing shocks, burns or breaks. On a real machine all of it does: the cautions it shows are meant."),
		}},
		{Title: say("Your records"), Lines: []string{
			say("Sessions stay on this phone. Nothing is sent anywhere; there is no server."),
			say("A correction keeps the earlier reading. “Save as file” makes a copy to keep or send."),
			say("To keep Coilbook at hand, add it to the home screen from the browser's menu. It then opens without signal."),
		}},
	}
}

func safety() []string {
	lines := []string{DeferToManual}
	for _, c := range []check.Caution{check.ShockIgnition, check.ShockExciter, check.MeterRating, check.InNeutral,
		check.RotatingParts, check.HotParts, check.ExhaustIndoor, check.BatteryGas, check.MagnetPull} {
		lines = append(lines, Caution(c))
	}
	return lines
}
