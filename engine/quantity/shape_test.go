package quantity

import (
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"
)

// Each shape is held to its pattern on texts made of the pattern's own pieces.
func TestShapesAreTheirPatterns(t *testing.T) {
	point := regexp.MustCompile(`^(\d*)([RrkKM])(\d+)$`)
	head := regexp.MustCompile(`^[+-]?[\d.,]*`)
	tail := regexp.MustCompile(`\s*(?:[KMΩ\x{2126}]|OHMS?|MEG)+$`)
	yes := func(p string, is func(string) bool) func(string) (string, string) {
		pattern := regexp.MustCompile(p)
		return func(s string) (got, want string) { return word(is(s)), word(pattern.MatchString(s)) }
	}
	for name, c := range map[string]struct {
		pieces string // between spaces; _ stands for a space
		both   func(string) (got, want string)
	}{
		"grouped":      {`1 0 12 ,345 ,000 , + - .`, yes(`^[+-]?[1-9]\d{0,2}(?:,\d{3})+$`, isGrouped)},
		"number":       {`1 05 . + - x ,`, yes(`^[+-]?(?:\d+\.?\d*|\.\d+)$`, isNumber)},
		"over letters": {`O 0 . L + -`, yes(`^[+-]?[.]?[O0][.]?L[.]?$|^[+-]?[O0]\.[O0]?L$`, isOverLetters)},
		"over blank": {"1 I . _ - + \t x \u00a0",
			yes(`^\s*[+-]?[1I](?:[\s_-]{2,}|[\s_-]+\.[\s_-]*|\.[\s_-]{2,})$`, isOverBlank)},
		"number head": {`1 . , + - k Ω`, func(s string) (string, string) { return numberHead(s), head.FindString(s) }},
		"units":       {"K M Ω \u2126 OHM S MEG E _ OL \t H", func(s string) (string, string) { return withoutUnits(s), tail.ReplaceAllString(s, "") }},
		"letter as point": {`1 20 R k K M . Ω`, func(s string) (string, string) {
			whole, letter, rest, ok := letterAsPoint(s)
			got := []string{s, whole, letter, rest}
			if !ok {
				got = nil
			}
			return strings.Join(got, "|"), strings.Join(point.FindStringSubmatch(s), "|")
		}},
	} {
		pieces := strings.Split(strings.ReplaceAll(c.pieces, "_", "_ "), " ")
		pieces = append(pieces, " ")
		random := rand.New(rand.NewPCG(1, 2))
		matched := 0
		for range 20000 {
			var b strings.Builder
			for range random.IntN(7) {
				b.WriteString(pieces[random.IntN(len(pieces))])
			}
			got, want := c.both(b.String())
			if got != want {
				t.Fatalf("%s: %q gives %q, the pattern %q", name, b.String(), got, want)
			}
			if want != "" && want != b.String() {
				matched++
			}
		}
		if matched < 20 {
			t.Errorf("%s: only %d texts match", name, matched)
		}
	}
}

func word(yes bool) string {
	if yes {
		return "matches"
	}
	return ""
}
