// Package tongue puts sentences into the language of whoever reads them. English
// stands in the source and is the key; other languages are gettext catalogues
// (PO files) beside it. The language is fixed when the program starts, so that
// sentences may be kept in variables. It is pure but for one look at the
// environment, and in a browser one at what the page hands over.
package tongue

import (
	"fmt"
	"os"
	"strconv"
	"strings"
)

// Language is one that the program speaks.
type Language struct {
	ID   string // BCP 47, two letters
	Name string // in itself

	catalogue string              // PO file; "" for the language of the source
	comma     bool                // decimals follow a comma
	plural    func(n int) int     // which form counts n; the order is that of the catalogue
	join      func(string) string // what words do to each other where a sentence takes others in
}

// languages are all of them; the source's is first.
var languages = []Language{
	{ID: "en", Name: "English", plural: oneOrMany, join: asItIs},
	{ID: "es", Name: "Español", catalogue: spanish, comma: true, plural: oneOrMany, join: contracted},
}

// Languages lists what the program speaks.
func Languages() []Language { return languages }

var (
	now = chosen(os.Getenv)
	say = opened(now)
)

// Now is the language of this run.
func Now() Language { return now }

func opened(l Language) catalogue {
	if l.catalogue == "" {
		return nil
	}
	c, err := readPO(l.catalogue)
	if err != nil {
		panic("the catalogue of " + l.Name + ": " + err.Error())
	}
	return c
}

// Say gives a sentence in the language of this run. Without values it is taken as
// it stands; with them it is a format of package fmt, whose verbs a translation may
// put in another order (%[2]s). What a catalogue lacks stays English.
func Say(english string, values ...any) string {
	return filled(say.of(english), values)
}

// In is Say for a word that means different things in different places: context
// says which one, for the translator alone.
func In(context, english string) string {
	if s, ok := say[context+inContext+english]; ok {
		return s
	}
	return english
}

// Count is Say for a sentence about n things, with a form for one and one for more
// (or none). Both are given the same values.
func Count(n int, one, more string, values ...any) string {
	form := now.plural(n)
	if s, ok := say[one+inForm+strconv.Itoa(form)]; ok {
		return filled(s, values)
	}
	if n == 1 {
		return filled(one, values)
	}
	return filled(more, values)
}

func filled(s string, values []any) string {
	if len(values) == 0 {
		return s
	}
	return now.join(fmt.Sprintf(s, values...))
}

func oneOrMany(n int) int {
	if n == 1 {
		return 0
	}
	return 1
}

func asItIs(s string) string { return s }

var contractions = strings.NewReplacer(" de el ", " del ", "De el ", "Del ", " a el ", " al ", "A el ", "Al ")

// contracted joins preposition and article, which Spanish never leaves apart.
func contracted(s string) string { return contractions.Replace(s) }
