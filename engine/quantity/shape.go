package quantity

import "strings"

// The shapes of texts, read by hand: a parser of patterns would make up a
// twentieth of the download. The tests hold each to the pattern in its comment.

// ^[+-]?
func withoutSign(s string) string {
	if s != "" && (s[0] == '+' || s[0] == '-') {
		return s[1:]
	}
	return s
}

// ^[from]*$
func only(s, from string) bool { return strings.Trim(s, from) == "" }

const (
	digit = "0123456789"
	blank = " \t\n\f\r"
)

// ^[+-]?[1-9]\d{0,2}(?:,\d{3})+$
func isGrouped(s string) bool {
	groups := strings.Split(withoutSign(s), ",")
	head := groups[0]
	if len(groups) < 2 || head == "" || len(head) > 3 || head[0] == '0' || !only(head, digit) {
		return false
	}
	for _, g := range groups[1:] {
		if len(g) != 3 || !only(g, digit) {
			return false
		}
	}
	return true
}

// ^[+-]?(?:\d+\.?\d*|\.\d+)$
func isNumber(s string) bool {
	whole, rest, _ := strings.Cut(withoutSign(s), ".")
	return whole+rest != "" && only(whole, digit) && only(rest, digit)
}

// ^[+-]?[\d.,]*
func numberHead(s string) string {
	sign := len(s) - len(withoutSign(s))
	return s[:len(s)-len(strings.TrimLeft(s[sign:], digit+".,"))]
}

// ^(\d*)([RrkKM])(\d+)$
func letterAsPoint(s string) (whole, letter, rest string, ok bool) {
	i := strings.IndexAny(s, "RrkKM")
	if i < 0 || i == len(s)-1 {
		return "", "", "", false
	}
	whole, letter, rest = s[:i], s[i:i+1], s[i+1:]
	return whole, letter, rest, only(whole, digit) && only(rest, digit)
}

// ^[+-]?[.]?[O0][.]?L[.]?$|^[+-]?[O0]\.[O0]?L$
func isOverLetters(s string) bool {
	s = withoutSign(s)
	switch s {
	case "O.OL", "O.0L", "0.OL", "0.0L":
		return true
	}
	s = strings.TrimSuffix(strings.TrimPrefix(s, "."), ".")
	return s == "OL" || s == "0L" || s == "O.L" || s == "0.L"
}

// ^\s*[+-]?[1I](?:[\s_-]{2,}|[\s_-]+\.[\s_-]*|\.[\s_-]{2,})$
func isOverBlank(s string) bool {
	s = withoutSign(strings.TrimLeft(s, blank))
	if s == "" || s[0] != '1' && s[0] != 'I' {
		return false
	}
	before, after, point := strings.Cut(s[1:], ".")
	enough := len(before) > 1 || point && (before != "" || len(after) > 1)
	return enough && only(before, blank+"_-") && only(after, blank+"_-")
}

var overUnits = []string{"K", "M", "Ω", ohmSign, "OHM", "OHMS", "MEG"}

// withoutUnits leaves out \s*(?:[KMΩ\x{2126}]|OHMS?|MEG)+$
func withoutUnits(s string) string {
	begin := len(s)
	starts := map[int]bool{len(s): true} // where only units follow
	for i := len(s); i > 0; i-- {
		for _, u := range overUnits {
			if starts[i] && strings.HasSuffix(s[:i], u) {
				begin = i - len(u)
				starts[begin] = true
			}
		}
	}
	if begin == len(s) {
		return s
	}
	for at := range starts {
		begin = min(begin, at)
	}
	return strings.TrimRight(s[:begin], blank)
}
