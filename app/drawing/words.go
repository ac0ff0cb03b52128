package drawing

import "strings"

// textSize is the size of all words in the strip: at 340 px on a phone still
// read at arm's length.
const textSize = 13

// textWidth is the width of a text in a usual bold face, rather too wide than
// too narrow.
func textWidth(s string, size float64) float64 {
	ems := 0.0
	for _, r := range s {
		switch {
		case strings.ContainsRune("iljI.,:;'|! ", r):
			ems += 0.4
		case strings.ContainsRune("tfr()1-", r):
			ems += 0.5
		case strings.ContainsRune("mwMWΩ@%", r):
			ems += 1
		case r >= 0x2e80: // ideographs
			ems += 1.1
		case r >= 'A' && r <= 'Z':
			ems += 0.8
		default:
			ems += 0.68
		}
	}
	return ems * size
}

// fit cuts a text that would be wider than there is room for.
func fit(s string, size, room float64) string {
	if textWidth(s, size) <= room {
		return s
	}
	runes := []rune(s)
	for len(runes) > 0 && textWidth(string(runes)+"…", size) > room {
		runes = runes[:len(runes)-1]
	}
	return strings.TrimSpace(string(runes)) + "…"
}

func words(class string, a Anchor, x, y float64, s string) Text {
	return Text{class, Point{x, y}, textSize, a, s}
}
