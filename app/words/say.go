package words

import (
	"coilbook/app/tongue"
	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// say puts a sentence into the language of this run; see tongue.Say.
func say(english string, values ...any) string { return tongue.Say(english, values...) }

// text is a sentence that stands as data, in English: what it marks in a variable is
// replaced below, what it marks elsewhere is given to say when it is read. A variable
// that say fills would be code that runs when the program starts, and a thousand of
// them are a function that a browser needs a second of its processor to optimise.
type text = string

func init() {
	for _, sentence := range variables {
		*sentence = say(*sentence)
	}
}

// table has what stands beside a key. It is data, where a map would be built each
// time that the program starts.
type table[K comparable, V any] []struct {
	key   K
	value V
}

// of is the zero value where nothing stands beside the key.
func (t table[K, V]) of(key K) (value V) {
	for _, row := range t {
		if row.key == key {
			return row.value
		}
	}
	return value
}

// said says each of a list.
func said(list []text) []string {
	if len(list) == 0 {
		return nil
	}
	out := make([]string, len(list))
	for i, sentence := range list {
		out[i] = say(sentence)
	}
	return out
}

// count says how many of something there are. Both forms hold one %d.
func count(n int, one, more string) string { return tongue.Count(n, one, more, n) }

// told puts what the engine or a spec profile says in English into the language of
// this run; see tongue.Told.
func told(english string) string { return tongue.Told(english) }

// ProfileName names a spec profile.
func ProfileName(p spec.Profile) string { return told(p.Name) }

// rangeLabel is what a meter's range is called on its dial.
func rangeLabel(r meter.Range) string { return tongue.Number(r.Label) }
