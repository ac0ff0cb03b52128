package words

import (
	"coilbook/app/tongue"
	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// say puts a sentence into the language of this run; see tongue.Say.
func say(english string, values ...any) string { return tongue.Say(english, values...) }

// count says how many of something there are. Both forms hold one %d.
func count(n int, one, more string) string { return tongue.Count(n, one, more, n) }

// told puts what the engine or a spec profile says in English into the language of
// this run; see tongue.Told.
func told(english string) string { return tongue.Told(english) }

// ProfileName names a spec profile.
func ProfileName(p spec.Profile) string { return told(p.Name) }

// rangeLabel is what a meter's range is called on its dial.
func rangeLabel(r meter.Range) string { return tongue.Number(r.Label) }
