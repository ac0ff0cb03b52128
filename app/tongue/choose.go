package tongue

import "strings"

// chosen is the language that the environment asks for, by the rule of POSIX
// (Base Definitions, chapter 8.2): the first of three variables that is not empty
// decides. A language that the program does not speak gives English.
func chosen(env func(string) string) Language {
	for _, name := range []string{"LC_ALL", "LC_MESSAGES", "LANG"} {
		if locale := env(name); locale != "" {
			return speaking(locale)
		}
	}
	return languages[0]
}

// speaking finds the language of a locale such as es_ES.UTF-8, es-419 or C.
func speaking(locale string) Language {
	id, _, _ := strings.Cut(strings.ToLower(locale), "_")
	id, _, _ = strings.Cut(id, "-")
	id, _, _ = strings.Cut(id, ".")
	id, _, _ = strings.Cut(id, "@")
	for _, l := range languages {
		if l.ID == id {
			return l
		}
	}
	return languages[0]
}
