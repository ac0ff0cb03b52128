package web

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// Words need 7:1 (WCAG 2.2, 1.4.6 level AAA), lines and shapes 3:1 (1.4.11).
var pairs = []struct {
	over, under string
	least       float64
}{
	{"ink", "paper", 7}, {"ink", "bench", 7}, {"soft", "paper", 7}, {"soft", "bench", 7}, {"ink", "key", 7}, {"ink", "key-word", 7},
	{"ink", "accent-soft", 7}, {"ink", "warn-soft", 7}, {"on-bar", "bar", 7}, {"on-bar-soft", "bar", 7}, {"on-accent", "accent", 7},
	{"accent", "paper", 7}, {"accent", "bench", 7}, {"in", "in-soft", 7}, {"out", "out-soft", 7}, {"unsure", "unsure-soft", 7},
	{"out", "paper", 7}, {"out", "bench", 7}, {"out", "warn-soft", 7}, {"in", "paper", 7}, {"unsure", "paper", 7},
	{"on-red", "red", 7}, {"red", "keys", 3}, {"red", "key", 3},
	{"out", "in-soft", 3}, {"unsure", "in-soft", 3}, // a bell over the limit
	{"line", "paper", 3}, {"line", "bench", 3}, {"line", "keys", 3}, {"warn-line", "warn-soft", 3}, {"focus", "paper", 3}, {"focus", "bench", 3}, {"focus", "keys", 3},
}

func TestContrast(t *testing.T) {
	css, err := source.ReadFile("style.css")
	if err != nil {
		t.Fatal(err)
	}
	for _, theme := range []string{":root", `[data-theme="dark"]`} {
		tokens := tokensOf(t, string(css), theme)
		for _, p := range pairs {
			if got := contrast(t, tokens[p.over], tokens[p.under]); got < p.least {
				t.Errorf("%s: %s on %s is %.2f:1, needs %g:1", theme, p.over, p.under, got, p.least)
			}
		}
	}
}

func tokensOf(t *testing.T, css, theme string) map[string]string {
	t.Helper()
	_, rest, ok := strings.Cut(css, theme+" {")
	if !ok {
		t.Fatalf("no theme %s", theme)
	}
	block, _, _ := strings.Cut(rest, "}")
	tokens := map[string]string{}
	for _, m := range regexp.MustCompile(`--([a-z-]+): (#[0-9a-f]+);`).FindAllStringSubmatch(block, -1) {
		tokens[m[1]] = m[2]
	}
	return tokens
}

// contrast is the ratio of WCAG 2.2.
func contrast(t *testing.T, a, b string) float64 {
	t.Helper()
	x, y := luminance(t, a)+0.05, luminance(t, b)+0.05
	return max(x, y) / min(x, y)
}

func luminance(t *testing.T, colour string) float64 {
	t.Helper()
	hex := strings.TrimPrefix(colour, "#")
	if len(hex) == 3 {
		hex = strings.Join([]string{hex[:1], hex[:1], hex[1:2], hex[1:2], hex[2:], hex[2:]}, "")
	}
	v, err := strconv.ParseUint(hex, 16, 32)
	if err != nil || len(hex) != 6 {
		t.Fatalf("%q is no colour", colour)
	}
	channel := func(shift int) float64 {
		c := float64(v>>shift&0xff) / 255
		if c <= 0.04045 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	return 0.2126*channel(16) + 0.7152*channel(8) + 0.0722*channel(0)
}
