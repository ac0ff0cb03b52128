package drawing

import (
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

func readStyle(t *testing.T) string {
	t.Helper()
	css, err := os.ReadFile("../../web/drawing.css")
	if err != nil {
		t.Fatal(err)
	}
	return string(css)
}

func TestStyleColoursEveryClass(t *testing.T) {
	css := readStyle(t)
	for _, c := range Classes {
		if !strings.Contains(css, ".drawing ."+c+" {") {
			t.Errorf("class %q has no rule", c)
		}
	}
	for _, m := range regexp.MustCompile(`\.drawing \.([a-z-]+)`).FindAllStringSubmatch(css, -1) {
		if !strings.Contains(" "+strings.Join(Classes, " ")+" ", " "+m[1]+" ") {
			t.Errorf("rule for unknown class %q", m[1])
		}
	}
}

// themes reads the colour variables of the light and the dark theme.
func themes(t *testing.T) map[string]map[string]string {
	t.Helper()
	out := map[string]map[string]string{}
	blocks := regexp.MustCompile(`(?s)\{([^}]*--d-paper:[^}]*)\}`).FindAllStringSubmatch(readStyle(t), -1)
	if len(blocks) != 2 {
		t.Fatalf("%d themes", len(blocks))
	}
	for i, name := range []string{"light", "dark"} {
		out[name] = map[string]string{"bench": map[string]string{"light": "#f4f0e9", "dark": "#17130e"}[name]}
		for _, m := range regexp.MustCompile(`--d-([a-z-]+): (#[0-9a-f]+)`).FindAllStringSubmatch(blocks[i][1], -1) {
			out[name][m[1]] = m[2]
		}
	}
	return out
}

func TestContrast(t *testing.T) {
	shapes := strings.Fields("line metal iron magnet copper wrap-line tip black-edge red accent grey leaf ink")
	words := [][2]string{{"ink", "paper"}, {"ink", "bench"}, {"ink", "plug"}, {"ink", "meter"}, {"soft", "meter"},
		{"accent-word", "meter"}, {"red-word", "red"}, {"black-word", "black"}}
	for name, colours := range themes(t) {
		need := func(front, back string, least float64) {
			if c := contrast(t, colours[front], colours[back]); c < least {
				t.Errorf("%s: %s on %s is %.2f, want %.1f", name, front, back, c, least)
			}
		}
		for _, s := range shapes {
			need(s, "paper", 3)
			need(s, "bench", 3)
		}
		for _, s := range strings.Fields("line black-edge red accent") {
			need(s, "plug", 3)
			need(s, "meter", 3)
		}
		need("pin", "hole", 3)
		need("turn", "copper", 2)
		for _, w := range words {
			need(w[0], w[1], 7)
		}
		if c := contrast(t, "#17130e", colours["screen"]); c < 7 {
			t.Errorf("%s: on the screen %.2f", name, c)
		}
	}
}

func contrast(t *testing.T, a, b string) float64 {
	t.Helper()
	x, y := luminance(t, a), luminance(t, b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// luminance is the relative luminance of WCAG 2.
func luminance(t *testing.T, hex string) float64 {
	t.Helper()
	hex = strings.TrimPrefix(hex, "#")
	if len(hex) == 3 {
		hex = string([]byte{hex[0], hex[0], hex[1], hex[1], hex[2], hex[2]})
	}
	n, err := strconv.ParseUint(hex, 16, 24)
	if err != nil {
		t.Fatal(err)
	}
	linear := func(shift int) float64 {
		c := float64(n>>shift&255) / 255
		if c <= 0.04045 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(16) + 0.7152*linear(8) + 0.0722*linear(0)
}
