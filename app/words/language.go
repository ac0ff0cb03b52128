package words

import "coilbook/app/tongue"

// LanguageTitle is over the choice of a language.
var LanguageTitle = text("Language")

// Languages are those on offer, each by its own name.
func Languages() (out []Choice) {
	for _, l := range tongue.Languages() {
		out = append(out, Choice{l.ID, l.Name})
	}
	return out
}

// Language is the id of the one that everything is said in.
func Language() string { return tongue.Now().ID }
