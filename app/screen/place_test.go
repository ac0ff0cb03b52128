package screen

import (
	"testing"

	"github.com/google/uuid"
	"github.com/stretchr/testify/require"

	"coilbook/app/words"
	"coilbook/engine/check"
)

func TestPlaces(t *testing.T) {
	id := uuid.MustParse("019ae000-0000-7000-8000-000000000001")
	for path, want := range map[string]place{
		"":                                       {name: "start"},
		"/":                                      {name: "start"},
		"sessions":                               {name: "sessions"},
		"about/":                                 {name: "about"},
		"phone":                                  {name: "phone"},
		"phone/x":                                {name: "nowhere"},
		"setup/bench":                            {name: "setup", aim: check.Bench},
		"setup":                                  {name: "nowhere"},
		"setup/other":                            {name: "nowhere"},
		"no/such":                                {name: "nowhere"},
		"s/1/sheet":                              {name: "nowhere"},
		"s/019ae000-0000-7000-8000-000000000001": {name: "nowhere"},
		"s/019ae000-0000-7000-8000-000000000001/gone":         {name: "nowhere"},
		"s/019ae000-0000-7000-8000-000000000001/check":        {name: "nowhere"},
		"s/019ae000-0000-7000-8000-000000000001/sheet":        {name: "sheet", session: id},
		"s/019ae000-0000-7000-8000-000000000001/check/pickup": {name: "check", session: id, check: "pickup"},
	} {
		require.Equal(t, want, placeOf(path), path)
	}
}

func TestEveryAddressLeadsBackToItsPlace(t *testing.T) {
	id := uuid.MustParse("019ae000-0000-7000-8000-000000000001")
	for name, path := range map[string]string{"check": checkPath(id, "pickup"), "sheet": sheetPath(id), "result": resultPath(id), "setup": setupPath(id), "find": findPath(id), "earlier": earlierPath(id)} {
		p := placeOf(path)
		require.Equal(t, name, p.name)
		require.Equal(t, id, p.session)
		require.NotEmpty(t, words.Title(name))
	}
}

func TestKeys(t *testing.T) {
	for _, c := range []struct{ text, key, want string }{
		{"", "4", "4"}, {"4", ".", "4."}, {"4.", ".", "4."}, {"4.2", keyErase, "4."}, {"", keyErase, ""},
		{"open line", "3", "3"}, {"open line", keyErase, ""}, {"won't settle", ".", "."}, {"123456789012", "3", "123456789012"},
	} {
		require.Equal(t, c.want, typed(c.text, c.key), "%q then %q", c.text, c.key)
	}
	for _, k := range []string{"0", ".", ",", keyEnter, keyErase, keyOpen} {
		require.True(t, padKey(k), k)
	}
	for _, k := range []string{"a", "Tab", "F5", "", "01"} {
		require.False(t, padKey(k), k)
	}
}
