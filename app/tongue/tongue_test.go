package tongue

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// in runs as if the program had been started in a language.
func in(t *testing.T, id string, c catalogue) {
	t.Helper()
	l, s := now, say
	t.Cleanup(func() { now, say = l, s })
	now, say = speaking(id), c
}

func TestTheEnvironmentChooses(t *testing.T) {
	for _, c := range []struct{ all, messages, lang, want string }{
		{"", "", "", "en"}, {"", "", "es_ES.UTF-8", "es"}, {"", "", "es-419", "es"}, {"", "", "ES", "es"}, {"", "", "es@euro", "es"}, {"", "", "es.UTF-8", "es"},
		{"", "", "C.UTF-8", "en"}, {"", "", "POSIX", "en"}, {"", "", "de_DE.UTF-8", "en"}, {"", "", "est_EE", "en"},
		{"C", "es_ES", "es_ES", "en"}, {"", "es_MX", "en_GB", "es"}, {"es_AR", "C", "C", "es"}, {"", "en_GB", "es_ES", "en"},
	} {
		env := map[string]string{"LC_ALL": c.all, "LC_MESSAGES": c.messages, "LANG": c.lang}
		assert.Equal(t, c.want, chosen(func(name string) string { return env[name] }).ID, "%+v", c)
	}
}

func TestWhatIsSaid(t *testing.T) {
	c, err := readPO(`msgid "Red on %s, black on %s."
msgstr "Negra en %[2]s, "
"roja en %[1]s."

# for those who translate
msgctxt "a button"
msgid "Read"
msgstr "Leer"

#, fuzzy
msgid "loose"
msgstr "flojo"

msgid "not yet"
msgstr ""

msgid "%d check"
msgid_plural "%d checks"
msgstr[0] "%d comprobación"
msgstr[1] "%d comprobaciones"

msgid "end of %s"
msgstr "fin de %s"

msgid "use %s to %s"
msgstr "usa de %s a %s"

msgid "100 %"
msgstr "el 100 %"
`)
	require.NoError(t, err)
	in(t, "es", c)
	assert.Equal(t, "Negra en B, roja en A.", Say("Red on %s, black on %s.", "A", "B"))
	assert.Equal(t, "Leer", In("a button", "Read"))
	assert.Equal(t, "Read", Say("Read"), "the context is part of the key")
	assert.Equal(t, "loose", Say("loose"), "fuzzy entries wait for a person")
	assert.Equal(t, "not yet", Say("not yet"))
	assert.Equal(t, "nowhere", Say("nowhere"))
	assert.Equal(t, "el 100 %", Say("100 %"))
	assert.Equal(t, "1 comprobación", Count(1, "%d check", "%d checks", 1))
	assert.Equal(t, "0 comprobaciones", Count(0, "%d check", "%d checks", 0))
	assert.Equal(t, "fin del cable", Say("end of %s", "el cable"))
	assert.Equal(t, "fin de la línea", Say("end of %s", "la línea"))
	assert.Equal(t, "usa de 0,001 a 1000", Told("use 0.001 to 1000"))
	assert.Equal(t, "use a code such as 0K7-QPM", Told("use a code such as 0K7-QPM"))

	in(t, "en", nil)
	assert.Equal(t, "Red on A, black on B.", Say("Red on %s, black on %s.", "A", "B"))
	assert.Equal(t, "2 checks", Count(2, "%d check", "%d checks", 2))
	assert.Equal(t, "use 0.001 to 1000", Told("use 0.001 to 1000"))
}

func TestABrokenCatalogueIsRefused(t *testing.T) {
	for _, text := range []string{"msgid open", "msgid \"a\"\nmsgstr \"b", "msgword \"a\"", "\"lost\""} {
		_, err := readPO(text)
		assert.ErrorContains(t, err, "line ", text)
	}
}

func TestNumbersAsPeopleWriteThem(t *testing.T) {
	in(t, "es", catalogue{})
	for printed, want := range map[string]string{
		"0.82 ± 0.10 Ω": "0,82 ± 0,10 Ω", "1000 Ω": "1000 Ω", "−3.5 V": "−3,5 V", "12.": "12.", ".5": ".5", "end. 5": "end. 5", "1.2.3": "1,2,3",
	} {
		assert.Equal(t, want, Number(printed))
	}
	assert.Equal(t, ",", Mark())
	assert.Equal(t, "1,5; 2,5", List([]string{Number("1.5"), Number("2.5")}))
	in(t, "en", nil)
	assert.Equal(t, "0.82 Ω", Number("0.82 Ω"))
	assert.Equal(t, ".", Mark())
	assert.Equal(t, "1.5, 2.5", List([]string{"1.5", "2.5"}))
}

func TestTheKeyOfWhatIsTold(t *testing.T) {
	for told, want := range map[string]string{
		"use 0.01 to 5": "use %s to %s", "holds 'x', which no code has": "holds %s, which no code has", `is "2V", which is none`: "is %s, which is none",
		"is not from 1 to 5 Ω": "is not from %s to %s Ω", "won't settle": "won't settle", "5 % of 2": "%s %% of %s", "such as 0K7-QPM": "such as 0K7-QPM",
		"a 2M range": "a 2M range",
	} {
		assert.Equal(t, want, TellKey(told))
	}
}

// Every entry of a catalogue can be said, with any values.
func TestEveryEntryCanBeSaid(t *testing.T) {
	for _, l := range languages[1:] {
		list, err := entries(l.catalogue)
		require.NoError(t, err)
		in(t, l.ID, opened(l))
		for _, e := range list {
			if e.id == "" || e.plural != "" || !strings.Contains(e.id, "%") || len(verbs(e.id)) == 0 {
				continue
			}
			var values []any
			for _, v := range verbs(e.id) {
				if strings.HasSuffix(v, "d") {
					values = append(values, 7)
				} else {
					values = append(values, "el cable")
				}
			}
			assert.NotContains(t, Say(e.id, values...), "%!", "%q", e.id)
		}
	}
}
